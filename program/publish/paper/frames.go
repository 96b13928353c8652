package paper

import (
	"slices"

	"gatepost/program"
	"gatepost/program/figure"
)

// frames are an exercise's drawings, of one size: a hold, or how it begins and ends.
type frames []figure.Drawing

const frameGap = 4 // mm between start and end

// framesOf draws pictures. Of a hold's band so much is shown as on cards.
func framesOf(pictures []program.Picture) frames {
	o := figure.Options{}
	for i := range pictures {
		o.Headroom = max(o.Headroom, headroom*pictures[i].Stance.Height)
	}
	return slices.DeleteFunc(figure.Frames(pictures, o), func(d figure.Drawing) bool { return d.Empty() })
}

// width is how wide they are beside each other, mm at so many mm a metre.
func (f frames) width(scale float64) float64 {
	if len(f) == 0 {
		return 0
	}
	n := float64(len(f))
	return n*scale*f[0].Width() + (n-1)*frameGap
}

func (f frames) height(scale float64) float64 {
	if len(f) == 0 {
		return 0
	}
	return scale * f[0].Height()
}

// scale is the largest at which they fit beside each other; without any, nothing.
func (f frames) scale(width, height float64) float64 {
	if len(f) == 0 {
		return 0
	}
	return f[0].Scale((width-f.width(0))/float64(len(f)), height)
}

// frames puts them beside each other, from a corner on.
func (ts *typesetter) frames(all frames, at Point, scale float64) []Mark {
	var marks []Mark
	for _, d := range all {
		w := scale * d.Width()
		marks = append(marks, ts.drawn(d, Box{at.X, at.Y, w, scale * d.Height()})...)
		at.X += w + frameGap
	}
	return marks
}
