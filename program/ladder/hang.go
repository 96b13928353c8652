package ladder

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

// Aids are the ways to hang at most two bands at a step that pull at all, leave
// weight on the hands and help no more than any work allows: free first, then by
// their help. Of rigs that help alike the one with fewer bands stays, or else the one
// with the shorter strap.
//
// A strap of any length makes hundreds of rigs, of which few plans look at more than
// those of three steps: they are solved when they are asked for, and only those that
// the pull at the free hold's hip tells apart.
func (r *Rung) Aids() []Aid {
	if r.hung == nil {
		r.hung = []Aid{r.Free()}
		for _, h := range r.body.hangings(r.FreeHold.Joints.Hip) {
			if o := r.body.WithRig(r, h.drop, h.bands...); o.Help > 0 && o.Load > 0 && !o.Hold.Unbalanced {
				o.Site = r.body.newSite(strength.Site{Model: strength.StepModel, Position: r.ID, Rig: RigName(o.Rig)})
				r.hung = append(r.hung, o)
			}
		}
		slices.SortStableFunc(r.hung, func(x, y Aid) int { return cmp.Compare(x.Help, y.Help) })
	}
	return r.hung
}

func (r *Rung) Free() Aid { return Aid{Hold: r.FreeHold, Load: r.Load, Site: r.site} }

// MostHelp is the most that bands help at any work, of body weight (our judgement).
const MostHelp = 0.30

// hanging is some bands on one length of strap, and their pull on a hip at rest.
type hanging struct {
	bands []int
	drop  float64 // m
	pull  float64 // N
	until program.Date
}

// hangings are all that pull on a hip at a place, one for each half newton.
func (b *Body) hangings(hip mechanics.Point) []hanging {
	var all []hanging
	for i := range b.Bands {
		all = b.onEachStrap(all, hip, i)
		for j := i + 1; j < len(b.Bands); j++ {
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

func (b *Body) onEachStrap(all []hanging, hip mechanics.Point, bands ...int) []hanging {
	for _, drop := range b.Hanging.Lengths() {
		h := hanging{bands: bands, drop: drop}
		rig := b.hungBy(drop)
		length := rig.Length(hip, b.support)
		for _, i := range bands {
			h.pull += b.Curves[i].Force(length)
			h.until = earlier(h.until, b.Bands[i].Retired)
		}
		if h.pull > 0 && h.pull <= MostHelp*b.Weight {
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
func (b *Body) hungBy(drop float64) mechanics.Rig {
	return mechanics.Rig{Drop: drop, Height: b.Hanging.Anchor, Offset: b.Hanging.Offset}
}

func (b *Body) WithRig(r *Rung, drop float64, bands ...int) Aid {
	hang := b.hungBy(drop)
	rig := program.Rig{Drop: drop}
	until := program.Date(0)
	for _, i := range bands {
		hang.Bands = append(hang.Bands, b.Curves[i])
		rig.Bands = append(rig.Bands, b.Bands[i].Name)
		until = earlier(until, b.Bands[i].Retired)
	}
	hold := mechanics.Solve(b.Body, r.pose, b.support, &hang)
	return Aid{Rig: rig, Hold: hold, Help: int(math.Round(10 * hold.Help)), Load: hold.Torque * allowance(r.Step), until: until}
}

// Named is the option of a rig as an assessment names it.
func (b *Body) Named(r *Rung, rig program.Rig) Aid {
	if rig.Free() {
		return r.Free()
	}
	if i := slices.IndexFunc(r.Aids(), func(o Aid) bool { return SameRig(rig, o.Rig) }); i >= 0 {
		return r.Aids()[i]
	}
	var indices []int
	for i, band := range b.Bands {
		if slices.Contains(rig.Bands, band.Name) {
			indices = append(indices, i)
		}
	}
	o := b.WithRig(r, rig.Drop, indices...)
	o.Site = r.site
	return o
}

// HangsIn reports whether a rig may hang in the week of a Monday: none of its bands is
// retired on any of its days.
func (o *Aid) HangsIn(monday program.Date) bool { return o.until == 0 || monday+6 < o.until }
