package paper

import (
	"runtime"
	"slices"
	"sync"
	"weak"

	"gatepost/program"
	"gatepost/program/figure"
)

// frames are an exercise's drawings, of one size: a hold, or how it begins and ends.
type frames struct {
	all    []figure.Drawing
	plates sync.Map // plateKey → *Plate
}

type plateKey struct {
	frame int
	scale float64
}

const frameGap = 4 // mm between start and end

// seen has the frames of pictures while these are somewhere: most clients' sheets show the
// same exercises.
var seen sync.Map // weak.Pointer[program.Picture], of the first → *frames

// framesOf draws pictures, which nobody may change. Of a hold's band so much is shown as on
// cards.
func framesOf(pictures []program.Picture) *frames {
	if len(pictures) == 0 {
		return &frames{}
	}
	key := weak.Make(&pictures[0])
	if f, ok := seen.Load(key); ok {
		return f.(*frames)
	}
	o := figure.Options{}
	for i := range pictures {
		o.Headroom = max(o.Headroom, headroom*pictures[i].Stance.Height)
	}
	all := slices.DeleteFunc(figure.Frames(pictures, o), func(d figure.Drawing) bool { return d.Empty() })
	f, known := seen.LoadOrStore(key, &frames{all: all})
	if !known {
		runtime.AddCleanup(&pictures[0], func(key weak.Pointer[program.Picture]) { seen.Delete(key) }, key)
	}
	return f.(*frames)
}

// width is how wide they are beside each other, mm at so many mm a metre.
func (f *frames) width(scale float64) float64 {
	if len(f.all) == 0 {
		return 0
	}
	n := float64(len(f.all))
	return n*scale*f.all[0].Width() + (n-1)*frameGap
}

func (f *frames) height(scale float64) float64 {
	if len(f.all) == 0 {
		return 0
	}
	return scale * f.all[0].Height()
}

// scale is the largest at which they fit beside each other; without any, nothing.
func (f *frames) scale(width, height float64) float64 {
	if len(f.all) == 0 {
		return 0
	}
	return f.all[0].Scale((width-f.width(0))/float64(len(f.all)), height)
}

// at puts them beside each other, from a corner on.
func (f *frames) at(corner Point, scale float64) []Mark {
	var marks []Mark
	for i := range f.all {
		plate := f.plate(i, scale)
		marks = append(marks, Picture{Box{corner.X, corner.Y, plate.Width, plate.Height}, plate})
		corner.X += plate.Width + frameGap
	}
	return marks
}

func (f *frames) plate(i int, scale float64) *Plate {
	key := plateKey{i, scale}
	plate, ok := f.plates.Load(key)
	if !ok {
		d := &f.all[i]
		plate, _ = f.plates.LoadOrStore(key, figurePlate(*d, scale*d.Width(), scale*d.Height()))
	}
	return plate.(*Plate)
}
