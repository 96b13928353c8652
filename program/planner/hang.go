package planner

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// options are all ways to hang at most two bands at a step, free first, that
// pull at all and leave weight on the hands.
func (b *body) options(r *rung) []option {
	out := []option{{hold: r.free, load: r.load}}
	for i := range b.bands {
		out = append(out, b.hung(r, i)...)
	}
	for i := range b.bands {
		for j := i + 1; j < len(b.bands); j++ {
			out = append(out, b.hung(r, i, j)...)
		}
	}
	return out
}

// hung tries some bands on every length of strap.
func (b *body) hung(r *rung, bands ...int) []option {
	var out []option
	for _, drop := range b.hanging.Lengths() {
		o := b.withRig(r, drop, bands...)
		if o.help > 0 && o.load > 0 && !o.hold.Unbalanced {
			out = append(out, o)
		}
	}
	return out
}

func (b *body) withRig(r *rung, drop float64, bands ...int) option {
	hang := mechanics.Rig{Drop: drop, Anchor: b.hanging.Anchor - b.support.Height, Offset: b.hanging.Offset}
	rig := program.Rig{Drop: drop}
	for _, i := range bands {
		hang.Bands = append(hang.Bands, b.curves[i])
		rig.Bands = append(rig.Bands, b.bands[i].Name)
	}
	hold := mechanics.Solve(b.Body, r.pose, b.support, &hang)
	return option{rig: rig, hold: hold, help: int(math.Round(10 * hold.Help)), load: hold.Torque * allowance(r.Step)}
}

// named is the option of a rig as an assessment names it.
func (b *body) named(r *rung, rig program.Rig) option {
	if rig.Free() {
		return r.rigs[0]
	}
	for i := range r.rigs {
		if sameRig(rig, r.rigs[i].rig) {
			return r.rigs[i]
		}
	}
	var indices []int
	for i, band := range b.bands {
		if slices.Contains(rig.Bands, band.Name) {
			indices = append(indices, i)
		}
	}
	o := b.withRig(r, rig.Drop, indices...)
	o.site = r.rigs[0].site
	return o
}
