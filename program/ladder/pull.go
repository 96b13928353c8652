package ladder

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// # Bands that nobody measured
//
// Such a band is hung by the pull and not by the strap: hooked to a luggage scale and drawn
// down to where the body will be, on a strap that lets the scale read so many kilograms. It
// then pulls as much wherever the hips come to rest, near enough: a few centimetres more or
// less of a band stretched by its own length change its pull by a few per cent. Whole
// kilograms are what can be set so, and a tenth of the body's weight is what nearly any band
// gives without being torn (our judgement).

const (
	pullStep   = 1.0  // kg
	pullMost   = 0.10 // of body weight
	highAnchor = 2.5  // m above the floor, where nobody says how high the anchor is
)

// pulled are the ways to do a step with one band that was never measured.
func (r *Rung) pulled() (all []Aid) {
	for i := range r.body.Bands {
		if r.body.Bands[i].Measured() {
			continue
		}
		for kg := pullStep; Newtons(kg) <= pullMost*r.body.Weight; kg += pullStep {
			all = append(all, r.body.withPull(r, Newtons(kg), i))
		}
	}
	return all
}

// withPull is a step with a band, by its place in the assessment, that pulls so many newtons.
func (b *Body) withPull(r *Rung, newtons float64, i int) Aid {
	band := &b.Bands[i]
	hang := mechanics.Rig{At: placed(band.At), Height: b.Hanging.Anchor, Offset: b.Hanging.Offset, Pull: newtons}
	if !b.support.Hang {
		hang.Height = cmp.Or(hang.Height, highAnchor)
	}
	o := b.hung(r, &hang)
	o.Rig = program.Rig{Bands: []string{band.Name}, Folded: band.Folded, Pull: newtons}
	if hang.At != mechanics.AtHip {
		o.Rig.At = band.At
	}
	o.until = band.Retired
	return o
}

// hung is a step under a rig: how it is held, what helps, and what is left of the load.
func (b *Body) hung(r *Rung, hang *mechanics.Rig) Aid {
	hold := mechanics.Solve(b.Body, r.pose, b.support, hang)
	help := hold.Help
	if hang.At != mechanics.AtHip { // as much as a band at the hip would have to help
		help = (r.FreeHold.Torque - hold.Torque) / r.hipReach()
	}
	return Aid{Hold: hold, Help: int(math.Round(10 * help)), Load: hold.Torque * allowance(r.Step)}
}

// namedPull is a step with a band as somebody hung it by a scale; free where the band is no
// longer the client's.
func (b *Body) namedPull(r *Rung, rig program.Rig) Aid {
	i := slices.IndexFunc(b.Bands, func(band program.Band) bool { return slices.Contains(rig.Bands, band.Name) })
	if i < 0 {
		return r.Free()
	}
	o := b.withPull(r, rig.Pull, i)
	o.Site = r.site
	return o
}

// Unweighed reports whether a rig names a band that was never measured and not what it pulls.
func (b *Body) Unweighed(rig program.Rig) bool {
	return rig.Pull == 0 && slices.ContainsFunc(b.Bands, func(band program.Band) bool {
		return !band.Measured() && slices.Contains(rig.Bands, band.Name)
	})
}
