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

// Aids are the ways to do a step: free first, then by their help, each of which leaves
// weight on the hands and helps no more than any work allows. What is repeated has pads or
// blocks; a hold at most two bands, or one that was never measured. Of rigs that help alike the one with fewer bands stays, or else the one
// with the shorter strap.
//
// A strap of any length makes hundreds of rigs, of which few plans look at more than
// those of three steps: they are solved when they are asked for, and only those that
// the pull at the free hold's hip tells apart.
func (r *Rung) Aids() []Aid {
	if r.hung == nil {
		ways := r.ways()
		r.hung = append(make([]Aid, 0, 1+len(ways)), r.Free())
		for _, o := range ways {
			if o.Help > 0 && o.Load > 0 && !o.Hold.Unbalanced {
				o.Site = r.body.newSite(strength.Site{Model: strength.StepModel, Position: r.ID, Rig: RigName(o.Rig)})
				r.hung = append(r.hung, o)
			}
		}
		slices.SortStableFunc(r.hung, func(x, y Aid) int { return cmp.Compare(x.Help, y.Help) })
	}
	return r.hung
}

// ways are all ways to be helped at a step, of use or not.
func (r *Rung) ways() []Aid {
	if r.body.Repeats() {
		return r.onHeights()
	}
	hangings := r.body.hangings(&r.FreeHold.Joints)
	all := slices.Grow(r.pulled(), len(hangings))
	for _, h := range hangings {
		all = append(all, r.body.WithRig(r, h.drop, h.bands...))
	}
	return all
}

// Free is a step without help.
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

// hangings are all that pull on a body held still, one for each half newton at a place.
// Two bands hang together only where they act on the same place, laid alike.
func (b *Body) hangings(at *mechanics.Joints) []hanging {
	var all []hanging
	for i, band := range b.Bands {
		if !band.Measured() {
			continue
		}
		all = b.onEachStrap(all, at, i)
		for j := i + 1; j < len(b.Bands); j++ {
			if other := b.Bands[j]; other.Measured() && placed(other.At) == placed(band.At) && other.Folded == band.Folded {
				all = b.onEachStrap(all, at, i, j)
			}
		}
	}
	slices.SortStableFunc(all, func(x, y hanging) int { return cmp.Compare(x.pull, y.pull) })
	var out []hanging
	for _, h := range all {
		switch last := len(out) - 1; {
		case last < 0 || h.pull-out[last].pull >= alikeHelp || h.until != out[last].until || b.placeOf(h.bands) != b.placeOf(out[last].bands):
			out = append(out, h)
		case cmp.Or(cmp.Compare(len(h.bands), len(out[last].bands)), cmp.Compare(h.drop, out[last].drop)) < 0:
			out[last] = h
		}
	}
	return out
}

func (b *Body) onEachStrap(all []hanging, at *mechanics.Joints, bands ...int) []hanging {
	for _, drop := range b.Hanging.Lengths() {
		h := hanging{bands: bands, drop: drop}
		rig := b.hungBy(drop, bands)
		length := rig.Length(actsOn(rig.At, at), b.support)
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

func placed(at program.BandAt) mechanics.Place {
	switch at {
	case program.AtThigh:
		return mechanics.AtThigh
	case program.AtAnkle:
		return mechanics.AtAnkle
	}
	return mechanics.AtHip
}

// placeOf is where bands act that hang together; the hip for none.
func (b *Body) placeOf(bands []int) mechanics.Place {
	if len(bands) == 0 {
		return mechanics.AtHip
	}
	return placed(b.Bands[bands[0]].At)
}

// actsOn is a place on a body held still: of the leg that reaches further, as in
// package mechanics.
func actsOn(place mechanics.Place, j *mechanics.Joints) mechanics.Point {
	if place == mechanics.AtHip {
		return j.Hip
	}
	var far mechanics.Point
	most := -1.0
	for i := range j.Ankles {
		at := j.Ankles[i]
		if place == mechanics.AtThigh {
			at = mechanics.Point{X: (j.Hip.X + j.Knees[i].X) / 2, Y: (j.Hip.Y + j.Knees[i].Y) / 2}
		}
		if d := math.Hypot(at.X-j.Shoulder.X, at.Y-j.Shoulder.Y); d > most {
			far, most = at, d
		}
	}
	return far
}

// earlier is the earlier of two dates, where 0 is none.
func earlier(a, b program.Date) program.Date {
	if a == 0 || b != 0 && b < a {
		return b
	}
	return a
}

// hungBy is the rig of some bands on a length of strap, without their curves yet.
func (b *Body) hungBy(drop float64, bands []int) mechanics.Rig {
	return mechanics.Rig{At: b.placeOf(bands), Drop: drop, Height: b.Hanging.Anchor, Offset: b.Hanging.Offset}
}

// WithRig is a step with bands, by their places in the assessment, on m of strap.
func (b *Body) WithRig(r *Rung, drop float64, bands ...int) Aid {
	hang := b.hungBy(drop, bands)
	rig := program.Rig{Drop: drop}
	until := program.Date(0)
	for _, i := range bands {
		hang.Bands = append(hang.Bands, b.Curves[i])
		rig.Bands = append(rig.Bands, b.Bands[i].Name)
		if rig.Folded = b.Bands[i].Folded; hang.At != mechanics.AtHip {
			rig.At = b.Bands[i].At
		}
		until = earlier(until, b.Bands[i].Retired)
	}
	o := b.hung(r, &hang)
	o.Rig, o.until = rig, until
	return o
}

// Named is the aid of a rig as an assessment names it.
func (b *Body) Named(r *Rung, rig program.Rig) Aid {
	if rig.Free() {
		return r.Free()
	}
	if i := slices.IndexFunc(r.Aids(), func(o Aid) bool { return SameRig(rig, o.Rig) }); i >= 0 {
		return r.Aids()[i]
	}
	if b.Repeats() {
		a, _ := r.onHeight(max(rig.Pad, rig.Block))
		return a
	}
	if rig.Pull > 0 {
		return b.namedPull(r, rig)
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
