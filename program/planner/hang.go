package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/mechanics"
	"gatepost/program/strength"
)

// alikeHelp is how close the help of two rigs may be before the plainer one stands
// for both, in N (our judgement: fifty grams, less than a knot).
const alikeHelp = 0.5

// rigs are the ways to hang at most two bands at a step that pull at all, leave
// weight on the hands and help no more than any work allows: free first, then by
// their help. Of rigs that help alike the one with fewer bands stays, or else the one
// with the shorter strap.
//
// A strap of any length makes hundreds of rigs, of which few plans look at more than
// those of three steps: they are solved when they are asked for, and only those that
// the pull at the free hold's hip tells apart.
func (r *rung) rigs() []option {
	if r.hung == nil {
		r.hung = []option{r.heldFree()}
		for _, h := range r.body.hangings(r.free.Joints.Hip) {
			if o := r.body.withRig(r, h.drop, h.bands...); o.help > 0 && o.load > 0 && !o.hold.Unbalanced {
				o.site = r.body.newSite(strength.Site{Model: strength.StepModel, Position: r.ID, Rig: rigName(o.rig)})
				r.hung = append(r.hung, o)
			}
		}
		slices.SortStableFunc(r.hung, func(x, y option) int { return cmp.Compare(x.help, y.help) })
	}
	return r.hung
}

func (r *rung) heldFree() option { return option{hold: r.free, load: r.load, site: r.site} }

// mostHelp is the most that bands help at any work, of body weight (our judgement).
const mostHelp = 0.30

// hanging is some bands on one length of strap, and their pull on a hip at rest.
type hanging struct {
	bands []int
	drop  float64 // m
	pull  float64 // N
	until program.Date
}

// hangings are all that pull on a hip at a place, one for each half newton.
func (b *body) hangings(hip mechanics.Point) []hanging {
	var all []hanging
	for i := range b.bands {
		all = b.onEachStrap(all, hip, i)
		for j := i + 1; j < len(b.bands); j++ {
			all = b.onEachStrap(all, hip, i, j)
		}
	}
	slices.SortStableFunc(all, func(x, y hanging) int { return cmp.Compare(x.pull, y.pull) })
	var out []hanging
	for _, h := range all {
		switch last := len(out) - 1; {
		case last < 0 || h.pull-out[last].pull >= alikeHelp || h.until != out[last].until:
			out = append(out, h)
		case cmp.Or(cmp.Compare(len(h.bands), len(out[last].bands)), cmp.Compare(h.drop, out[last].drop)) < 0:
			out[last] = h
		}
	}
	return out
}

func (b *body) onEachStrap(all []hanging, hip mechanics.Point, bands ...int) []hanging {
	for _, drop := range b.hanging.Lengths() {
		h := hanging{bands: bands, drop: drop}
		rig := b.hungBy(drop)
		length := rig.Length(hip, b.support)
		for _, i := range bands {
			h.pull += b.curves[i].Force(length)
			h.until = earlier(h.until, b.bands[i].Retired)
		}
		if h.pull > 0 && h.pull <= mostHelp*b.weight {
			all = append(all, h)
		}
	}
	return all
}

// earlier is the earlier of two dates, where 0 is none.
func earlier(a, b program.Date) program.Date {
	if a == 0 || b != 0 && b < a {
		return b
	}
	return a
}

// hungBy is a rig on a length of strap, without its bands yet.
func (b *body) hungBy(drop float64) mechanics.Rig {
	return mechanics.Rig{Drop: drop, Height: b.hanging.Anchor, Offset: b.hanging.Offset}
}

func (b *body) withRig(r *rung, drop float64, bands ...int) option {
	hang := b.hungBy(drop)
	rig := program.Rig{Drop: drop}
	until := program.Date(0)
	for _, i := range bands {
		hang.Bands = append(hang.Bands, b.curves[i])
		rig.Bands = append(rig.Bands, b.bands[i].Name)
		until = earlier(until, b.bands[i].Retired)
	}
	hold := mechanics.Solve(b.Body, r.pose, b.support, &hang)
	return option{rig: rig, hold: hold, help: int(math.Round(10 * hold.Help)), load: hold.Torque * allowance(r.Step), until: until}
}

// named is the option of a rig as an assessment names it.
func (b *body) named(r *rung, rig program.Rig) option {
	if rig.Free() {
		return r.heldFree()
	}
	if i := slices.IndexFunc(r.rigs(), func(o option) bool { return sameRig(rig, o.rig) }); i >= 0 {
		return r.rigs()[i]
	}
	var indices []int
	for i, band := range b.bands {
		if slices.Contains(rig.Bands, band.Name) {
			indices = append(indices, i)
		}
	}
	o := b.withRig(r, rig.Drop, indices...)
	o.site = r.site
	return o
}

// hangsIn reports whether a rig may hang in the week of a Monday: none of its bands is
// retired on any of its days.
func (o *option) hangsIn(monday program.Date) bool { return o.until == 0 || monday+6 < o.until }
