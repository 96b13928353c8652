package posture_test

import (
	"encoding/xml"
	"fmt"
	"math"
	"slices"
	"sync"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/mechanics"
	"gatepost/program/posture"
)

// A centimetre is not seen on a card; what is further off is a mistake.
const seen = 0.01

// drawn is one figure on one body.
type drawn struct {
	name   string
	figure *program.Figure // as the page says it
	whole  []program.Thing // with what the first figure said
	program.Placed
	flesh [][]figure.Point // from the side: outlines of the body
}

// bodies are de Leva's mean woman and man (1996), and somebody small and somebody tall.
func bodies(t testing.TB) map[string]mechanics.Body {
	t.Helper()
	all := map[string]mechanics.Body{}
	for name, b := range map[string]struct {
		sex          mechanics.Sex
		mass, height float64
	}{"woman": {mechanics.Female, 61.9, 1.735}, "man": {mechanics.Male, 73, 1.741}, "average": {mechanics.Unspecified, 67.5, 1.738},
		"small": {mechanics.Female, 47, 1.50}, "tall": {mechanics.Male, 92, 1.98}} {
		body, err := mechanics.NewBody(b.sex, b.mass, b.height, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = body
	}
	return all
}

// everything is every figure on both sexes' bodies and the one that pages show.
func everything(t testing.TB) []drawn {
	t.Helper()
	once.Do(func() { figures = draw(t) })
	if len(figures) < 3*40 {
		t.Fatalf("only %d figures", len(figures))
	}
	return figures
}

var (
	once    sync.Once
	figures []drawn
)

func draw(t testing.TB) []drawn {
	t.Helper()
	var all []drawn
	lib, people := library(t), bodies(t)
	for _, who := range []string{"woman", "man", "average"} {
		body := people[who]
		for i := range lib.Exercises {
			e := &lib.Exercises[i]
			placed, _ := posture.Place(&body, e.Figures)
			for k := range placed {
				d := drawn{name: fmt.Sprintf("%s %d %s", e.ID, k+1, who), figure: &e.Figures[k], Placed: placed[k]}
				d.whole = slices.Clone(e.Figures[0].Things)
				for _, t := range e.Figures[k].Things {
					d.whole = slices.DeleteFunc(d.whole, func(o program.Thing) bool { return o.Kind == t.Kind })
					if !t.Gone {
						d.whole = append(d.whole, t)
					}
				}
				if d.fromSide() {
					d.flesh = outlines(figure.Show(program.Picture{Placed: d.Placed}, figure.Options{}))
				}
				all = append(all, d)
			}
		}
	}
	return all
}

func (d *drawn) fromSide() bool { return d.View == "" || d.View == program.FromSide }

// outlines are the flesh of a drawing, as points close together (by the Bernstein
// polynomials).
func outlines(d figure.Drawing) [][]figure.Point {
	var all [][]figure.Point
	for _, s := range d.Shapes {
		if s.Stroke || s.Ink != figure.Near && !(s.Ink == figure.Far && len(s.Paths) > 1) { // a cushion is one path
			continue
		}
		for _, p := range s.Paths {
			points, from := []figure.Point{p.From}, p.From
			for _, c := range p.Curves {
				for i := 1; i <= 8; i++ {
					v := float64(i) / 8
					u := 1 - v
					a, b, e, f := u*u*u, 3*u*u*v, 3*u*v*v, v*v*v
					points = append(points, figure.Point{X: a*from.X + b*c.A.X + e*c.B.X + f*c.To.X, Y: a*from.Y + b*c.A.Y + e*c.B.Y + f*c.To.Y})
				}
				from = c.To
			}
			all = append(all, points)
		}
	}
	return all
}

// lowest is the flesh nearest to a surface, within some reach of a place along it.
func (d *drawn) lowest(at program.Space, reach float64, off func(figure.Point) float64, away func(figure.Point) float64) float64 {
	low := math.Inf(1)
	for _, path := range d.flesh {
		for _, p := range path {
			if away(p) <= reach {
				low = math.Min(low, off(p))
			}
		}
	}
	return low
}

// nearTo is a joint of a part.
func (d *drawn) nearTo(part program.Part, side int) program.Space {
	a, l := &d.Arms[side], &d.Legs[side]
	switch part {
	case program.PartHands:
		return a.Wrist
	case program.PartFingers:
		return a.Knuckle
	case program.PartFists:
		return a.Grip
	case program.PartForearms, program.PartElbows:
		return a.Elbow
	case program.PartFeet, program.PartToes:
		return l.Ball
	case program.PartTips:
		return l.Toe
	case program.PartHeels:
		return l.Heel
	case program.PartShins, program.PartKnees:
		return l.Knee
	case program.PartThighs:
		return program.Space{X: (l.Hip.X + l.Knee.X) / 2, Y: (l.Hip.Y + l.Knee.Y) / 2}
	case program.PartShoulders:
		return d.Top
	case program.PartHead:
		return d.Head
	case program.PartCrown:
		return d.Crown
	case program.PartBack, program.PartBelly:
		return program.Space{X: (d.Top.X + d.Hip.X) / 2, Y: (d.Top.Y + d.Hip.Y) / 2}
	}
	return d.Hip
}

// set is where a thing of a kind stands.
func (d *drawn) set(kind program.ThingKind) *program.Set {
	for i := range d.Set {
		if d.Set[i].Kind == kind {
			return &d.Set[i]
		}
	}
	return nil
}

// What a page says touches does, to a centimetre: drawn flesh on floor, box and wall, and
// hands around what they hold.
func TestPartsTouch(t *testing.T) {
	for _, d := range everything(t) {
		for _, thing := range d.whole {
			if thing.Kind.Carried() {
				continue
			}
			for _, part := range thing.Parts {
				of, sides := part.Side()
				for _, side := range sides {
					if off := d.off(t, &thing, of, side); off > seen {
						t.Errorf("%s: %s on the %s are %.1f cm off", d.name, part, thing.Kind, 100*off)
					}
				}
			}
		}
	}
}

func (d *drawn) off(t *testing.T, thing *program.Thing, of program.Part, side int) float64 {
	t.Helper()
	at, set := d.nearTo(of, side), d.set(thing.Kind)
	if thing.Kind != program.ThingFloor && set == nil {
		t.Fatalf("%s: no %s stands there", d.name, thing.Kind)
	}
	if thing.Kind.Gripped() {
		a := &d.Arms[side]
		return math.Hypot(a.Grip.X-set.From.X, a.Grip.Y-set.From.Y)
	}
	if !d.fromSide() {
		return 0 // the rounds are seen to by TestNothingIsWrong
	}
	reach := 0.08 * d.Height
	if of == program.PartBack || of == program.PartBelly {
		reach = 0.20 * d.Height
	}
	alongFloor := func(p figure.Point) float64 { return math.Abs(p.X - at.X) }
	switch {
	case thing.Kind == program.ThingFloor:
		return math.Abs(d.lowest(at, reach, func(p figure.Point) float64 { return p.Y }, alongFloor))
	case thing.Kind == program.ThingWall:
		return math.Abs(d.lowest(at, reach, func(p figure.Point) float64 { return set.Side * (p.X - set.From.X) },
			func(p figure.Point) float64 { return math.Abs(p.Y - at.Y) }))
	}
	nearest := math.Inf(1) // under it may be other flesh, beside the box
	for _, path := range d.flesh {
		for _, p := range path {
			if alongFloor(p) <= reach {
				nearest = math.Min(nearest, math.Abs(p.Y-set.To.Y))
			}
		}
	}
	return nearest
}

// No limb and no trunk is in the floor or in a wall, far limbs with what they are drawn
// beside.
func TestNothingGoesThroughFloorAndWalls(t *testing.T) {
	for _, d := range everything(t) {
		if !d.fromSide() {
			continue
		}
		everywhere := func(figure.Point) float64 { return 0 }
		if d.OnFloor {
			if low := d.lowest(d.Hip, 1, func(p figure.Point) float64 { return p.Y }, everywhere); low < -seen {
				t.Errorf("%s: %.1f cm are under the floor", d.name, -100*low)
			}
		}
		if wall := d.set(program.ThingWall); wall != nil {
			if into := d.lowest(d.Hip, 1, func(p figure.Point) float64 { return wall.Side * (p.X - wall.From.X) }, everywhere); into < -seen {
				t.Errorf("%s: %.1f cm are in the wall", d.name, -100*into)
			}
		}
	}
}

// Forearms and shanks go through no trunk and no head. Common practice: of stature a trunk
// is a ninth deep and a head two fifteenths high, so an axis that comes nearer than half of
// that, less what is pressed flat, is inside.
func TestLimbsStayOutOfTheBody(t *testing.T) {
	for _, d := range everything(t) {
		for i := range d.Arms {
			a, l := &d.Arms[i], &d.Legs[i]
			for name, limb := range map[string][2]program.Space{"forearm": {a.Elbow, a.Grip}, "shank": {l.Knee, l.Ankle}} {
				if gap := between(limb, [2]program.Space{d.Top, d.Hip}); gap < 0.045*d.Height {
					t.Errorf("%s: a %s is in the trunk, %.1f cm from its middle", d.name, name, 100*gap)
				}
				if gap := between(limb, [2]program.Space{d.Head, d.Head}); gap < 0.05*d.Height {
					t.Errorf("%s: a %s is in the head, %.1f cm from its middle", d.name, name, 100*gap)
				}
			}
		}
	}
}

// between is the least distance of two straight pieces, tried at many places.
func between(p, q [2]program.Space) float64 {
	const n = 24
	at := func(s [2]program.Space, k int) program.Space {
		v := float64(k) / n
		return program.Space{X: s[0].X + v*(s[1].X-s[0].X), Y: s[0].Y + v*(s[1].Y-s[0].Y), Z: s[0].Z + v*(s[1].Z-s[0].Z)}
	}
	least := math.Inf(1)
	for i := range n + 1 {
		for k := range n + 1 {
			least = math.Min(least, far(at(p, i), at(q, k)))
		}
	}
	return least
}

func far(p, q program.Space) float64 {
	return math.Sqrt((p.X-q.X)*(p.X-q.X) + (p.Y-q.Y)*(p.Y-q.Y) + (p.Z-q.Z)*(p.Z-q.Z))
}

// Where a page says that the sides differ, they are apart in the drawing by a hand's
// breadth somewhere.
func TestLeftAndRightAreApart(t *testing.T) {
	for _, d := range everything(t) {
		if len(d.figure.Sides[0])+len(d.figure.Sides[1]) == 0 {
			continue
		}
		apart := 0.0
		for _, pair := range [][2]program.Space{{d.Arms[0].Elbow, d.Arms[1].Elbow}, {d.Arms[0].Wrist, d.Arms[1].Wrist},
			{d.Legs[0].Knee, d.Legs[1].Knee}, {d.Legs[0].Ankle, d.Legs[1].Ankle}} {
			apart = math.Max(apart, math.Hypot(pair[0].X-pair[1].X, pair[0].Y-pair[1].Y))
		}
		if apart < 0.08 {
			t.Errorf("%s: left and right are only %.0f cm apart", d.name, 100*apart)
		}
	}
}

// moved is how far a body has moved between two drawings at the most.
func moved(p, q *program.Placed) float64 {
	most := math.Max(far(p.Hip, q.Hip), math.Max(far(p.Top, q.Top), far(p.Crown, q.Crown)))
	for i := range p.Arms {
		a, b, l, m := &p.Arms[i], &q.Arms[i], &p.Legs[i], &q.Legs[i]
		for _, pair := range [][2]program.Space{{a.Shoulder, b.Shoulder}, {a.Elbow, b.Elbow}, {a.Wrist, b.Wrist}, {a.Tip, b.Tip}, {l.Knee, m.Knee}, {l.Ankle, m.Ankle}, {l.Toe, m.Toe}} {
			most = math.Max(most, far(pair[0], pair[1]))
		}
	}
	return most
}

// What is done in repetitions has a start and an end that can be told apart.
func TestStartAndEndDiffer(t *testing.T) {
	lib := library(t)
	pictures := posture.NewAlbum(lib)
	for _, e := range lib.Exercises {
		p := pictures.Of(e.ID)
		if e.Dose.Reps > 0 && len(e.Figures) == 1 {
			t.Errorf("%s: repetitions have one drawing", e.ID)
		}
		if len(p) == 2 && p[0].Placed.Height > 0 {
			if most := moved(&p[0].Placed, &p[1].Placed); most < 0.05 {
				t.Errorf("%s: start and end differ by %.1f cm", e.ID, 100*most)
			}
		}
	}
}

// Every body takes every figure as its page says.
func TestNothingIsWrong(t *testing.T) {
	lib := library(t)
	for who, body := range bodies(t) {
		for i := range lib.Exercises {
			_, problems := posture.Place(&body, lib.Exercises[i].Figures)
			for _, p := range problems {
				t.Errorf("%s: %v", who, p)
			}
		}
	}
}

// A hold of a road map has its angles there, and nowhere else.
func TestHoldsAreDrawnByTheirRoadMap(t *testing.T) {
	lib := library(t)
	pictures := posture.NewAlbum(lib)
	for _, m := range lib.RoadMaps {
		for _, s := range m.Steps {
			e, _ := lib.Exercise(s.Exercise)
			if m.Load == program.LoadHold || m.Load == "" {
				if len(e.Figures) > 0 {
					t.Errorf("%s: figures: says again what the road map %s says", e.ID, m.ID)
				}
			}
			if len(pictures.Of(e.ID)) == 0 {
				t.Errorf("%s of %s is not drawn", e.ID, m.ID)
			}
		}
	}
}

// What turns about a forearm that is seen from its side goes round narrow, and as wide as high
// where it is looked at along the axis.
func TestTurnsGoRoundTheForearm(t *testing.T) {
	pictures := posture.NewAlbum(library(t))
	for id, want := range map[string][2]float64{"forearm-turns": {.2, .6}, "wrist-circles": {.9, 1.1}} {
		for _, s := range figure.Show(pictures.Of(id)[0], figure.Options{}).Shapes {
			if s.Ink != figure.Accent || !s.Stroke {
				continue
			}
			low, high := s.Paths[0].From, s.Paths[0].From
			for _, c := range s.Paths[0].Curves {
				low = figure.Point{X: math.Min(low.X, c.To.X), Y: math.Min(low.Y, c.To.Y)}
				high = figure.Point{X: math.Max(high.X, c.To.X), Y: math.Max(high.Y, c.To.Y)}
			}
			if got := (high.X - low.X) / (high.Y - low.Y); got < want[0] || got > want[1] {
				t.Errorf("%s: %.2f as wide as high", id, got)
			}
		}
	}
}

// An image for a page is well-formed and costs it 8 KB at the most; the frames of one
// exercise are equal, so that it is drawn to one scale, and hold all that is drawn.
func TestPicturesAreDrawings(t *testing.T) {
	lib := library(t)
	pictures := posture.NewAlbum(lib)
	for _, e := range lib.Exercises {
		frames := figure.Frames(pictures.Of(e.ID), figure.Options{})
		for i, d := range frames {
			if d.Min != frames[0].Min || d.Max != frames[0].Max || d.Width() < .3 {
				t.Errorf("%s: frame %d is from %v to %v", e.ID, i+1, d.Min, d.Max)
			}
			for _, path := range outlines(d) {
				for _, p := range path {
					if math.IsNaN(p.X+p.Y) || p.X < d.Min.X-1e-9 || p.X > d.Max.X+1e-9 || p.Y < d.Min.Y-1e-9 || p.Y > d.Max.Y+1e-9 {
						t.Fatalf("%s: %v is outside the frame %d", e.ID, p, i+1)
					}
				}
			}
			svg := figure.SVG(d, e.Name, "told", figure.SVGOptions{Scale: 250})
			if err := xml.Unmarshal(svg, new(struct{})); err != nil || len(svg) > 8<<10 {
				t.Errorf("%s: %v, %d bytes", e.ID, err, len(svg))
			}
		}
	}
}

// Every exercise is drawn.
func TestEveryExerciseIsDrawn(t *testing.T) {
	lib := library(t)
	pictures := posture.NewAlbum(lib)
	var left []string
	for _, e := range lib.Exercises {
		if len(pictures.Of(e.ID)) == 0 || e.Dose.Reps > 0 && len(pictures.Of(e.ID)) < 2 {
			left = append(left, e.ID)
		}
	}
	if len(left) > 0 {
		t.Errorf("%d are not drawn: %v", len(left), left)
	}
}
