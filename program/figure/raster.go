package figure

import (
	"image"
	"image/color"
	"math"
	"slices"
)

// Raster paints drawings into an image of pixels, for those who take no other. Letters
// and dashes are left out.
type Raster struct {
	Image *image.RGBA
	Inks  [Paper + 1]color.RGBA
	Scale float64 // pixels in a metre
	Left  float64 // pixels, where X is nothing
	Base  float64 // pixels from the top, where Y is nothing
}

// Draw paints a drawing over what is there.
func (r *Raster) Draw(d Drawing) {
	for _, s := range d.Shapes {
		if s.Edge > 0 {
			r.fill(r.strokes(s.Paths, s.Width+2*s.Edge), r.Inks[Paper])
		}
		if s.Stroke {
			r.fill(r.strokes(s.Paths, s.Width), r.Inks[s.Ink])
		} else {
			r.fill(r.outlines(s.Paths), r.Inks[s.Ink])
		}
	}
}

// outlines are paths as polygons in pixels.
func (r *Raster) outlines(paths []Path) [][]Point {
	const pieces = 12 // of a curve
	var all [][]Point
	for _, p := range paths {
		line, at := []Point{r.pixel(p.From)}, p.From
		for _, c := range p.Curves {
			for i := 1; i <= pieces; i++ {
				line = append(line, r.pixel(bezier(at, c, float64(i)/pieces)))
			}
			at = c.To
		}
		all = append(all, line)
	}
	return all
}

func (r *Raster) pixel(p Point) Point {
	return Point{X: r.Left + p.X*r.Scale, Y: r.Base - p.Y*r.Scale}
}

func bezier(from Point, c Curve, t float64) Point {
	u := 1 - t
	a, b, d, e := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{X: a*from.X + b*c.A.X + d*c.B.X + e*c.To.X, Y: a*from.Y + b*c.A.Y + d*c.B.Y + e*c.To.Y}
}

// strokes are strokes with round ends and corners as polygons that all turn the same way,
// so that those that lie over each other are filled together.
func (r *Raster) strokes(paths []Path, width float64) [][]Point {
	half := math.Max(width*r.Scale, 1.5) / 2
	var all [][]Point
	for _, line := range r.outlines(paths) {
		for i, p := range line {
			all = append(all, ring(p, half))
			if i == 0 || p == line[i-1] {
				continue
			}
			from, length := line[i-1], math.Hypot(p.X-line[i-1].X, p.Y-line[i-1].Y)
			x, y := half*(p.X-from.X)/length, half*(p.Y-from.Y)/length
			all = append(all, []Point{{X: from.X + y, Y: from.Y - x}, {X: p.X + y, Y: p.Y - x}, {X: p.X - y, Y: p.Y + x}, {X: from.X - y, Y: from.Y + x}})
		}
	}
	return all
}

func ring(at Point, radius float64) []Point {
	const corners = 16
	all := make([]Point, corners)
	for i := range all {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		all[i] = Point{X: at.X + radius*cos, Y: at.Y + radius*sin}
	}
	return all
}

// rows are the lines into which each row of pixels is cut.
const rows = 4

// strip is a polygon, and the rows of pixels that it lies in.
type strip struct {
	polygon     []Point
	top, bottom float64
}

func stripOf(polygon []Point) strip {
	s := strip{polygon, math.Inf(1), math.Inf(-1)}
	for _, p := range polygon {
		s.top, s.bottom = math.Min(s.top, p.Y), math.Max(s.bottom, p.Y)
	}
	return s
}

// fill paints what polygons wind around, row by row; edges are soft.
func (r *Raster) fill(polygons [][]Point, ink color.RGBA) {
	var strips []strip
	all := strip{top: math.Inf(1), bottom: math.Inf(-1)}
	for _, polygon := range polygons {
		s := stripOf(polygon)
		strips = append(strips, s)
		all.top, all.bottom = math.Min(all.top, s.top), math.Max(all.bottom, s.bottom)
	}
	box := r.Image.Bounds()
	cover := make([]float64, box.Dx())
	for y := max(int(all.top), box.Min.Y); y < min(int(all.bottom)+1, box.Max.Y); y++ {
		clear(cover)
		for i := range rows {
			coverLine(strips, float64(y)+(float64(i)+0.5)/rows, cover)
		}
		for x, c := range cover {
			if c > 0 {
				r.blend(x, y, math.Min(c/rows, 1)*float64(ink.A)/255, ink)
			}
		}
	}
}

// coverLine adds how much of each pixel of a line lies within.
func coverLine(strips []strip, y float64, cover []float64) {
	type crossing struct {
		x    float64
		turn int
	}
	var all []crossing
	for _, s := range strips {
		if y < s.top || y > s.bottom {
			continue
		}
		last := s.polygon[len(s.polygon)-1]
		for _, p := range s.polygon {
			if (last.Y <= y) != (p.Y <= y) {
				turn := 1
				if p.Y <= y {
					turn = -1
				}
				all = append(all, crossing{last.X + (p.X-last.X)*(y-last.Y)/(p.Y-last.Y), turn})
			}
			last = p
		}
	}
	slices.SortFunc(all, func(a, b crossing) int { return int(math.Copysign(1, a.x-b.x)) })
	for i, winding := 0, 0; i+1 < len(all); i++ {
		if winding += all[i].turn; winding == 0 {
			continue
		}
		for x := max(int(all[i].x), 0); x < len(cover) && float64(x) < all[i+1].x; x++ {
			cover[x] += math.Max(0, math.Min(all[i+1].x, float64(x+1))-math.Max(all[i].x, float64(x)))
		}
	}
}

func (r *Raster) blend(x, y int, share float64, ink color.RGBA) {
	was := r.Image.RGBAAt(x, y)
	mix := func(a, b uint8) uint8 { return uint8(math.Round(float64(a) + share*(float64(b)-float64(a)))) }
	r.Image.SetRGBA(x, y, color.RGBA{mix(was.R, ink.R), mix(was.G, ink.G), mix(was.B, ink.B), 255})
}
