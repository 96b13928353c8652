package figure

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"testing"
)

// What is painted has the area that geometry gives it: a square of 10 by 10 pixels, a
// hole in it, and a stroke with round ends (a rectangle and a circle).
func TestRasterPaintsAreas(t *testing.T) {
	square := polygon(Point{X: 1, Y: 1}, Point{X: 2, Y: 1}, Point{X: 2, Y: 2}, Point{X: 1, Y: 2})
	hole := polygon(Point{X: 1.25, Y: 1.25}, Point{X: 1.25, Y: 1.75}, Point{X: 1.75, Y: 1.75}, Point{X: 1.75, Y: 1.25})
	line := polygon(Point{X: 1, Y: 1.5}, Point{X: 2, Y: 1.5})
	for name, c := range map[string]struct {
		shape Shape
		area  float64 // pixels
	}{
		"square": {Shape{Paths: []Path{square}}, 100},
		"hole":   {Shape{Paths: []Path{square, hole}}, 75},
		"stroke": {Shape{Paths: []Path{line}, Stroke: true, Width: 0.4}, 40 + math.Pi*4},
	} {
		r := Raster{Image: image.NewRGBA(image.Rect(0, 0, 40, 40)), Scale: 10, Left: 0.3, Base: 30.6}
		draw.Draw(r.Image, r.Image.Bounds(), image.White, image.Point{}, draw.Src)
		r.Inks[Near] = color.RGBA{A: 255}
		r.Draw(Drawing{Shapes: []Shape{c.shape}})
		dark := 0.0
		for y := range 40 {
			for x := range 40 {
				dark += 1 - float64(r.Image.RGBAAt(x, y).R)/255
			}
		}
		if math.Abs(dark-c.area) > 0.02*c.area {
			t.Errorf("%s: %.1f pixels are dark, want %.1f", name, dark, c.area)
		}
	}
}
