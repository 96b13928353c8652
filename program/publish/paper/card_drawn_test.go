package paper

import (
	"math"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// cardMarks is a card with its exercises' drawings, or without.
func cardMarks(v *view.View, n int, drawn bool) []Mark {
	c := v.Cards[n]
	c.Items = append([]view.CardItem(nil), c.Items...)
	for i := range c.Items {
		if !drawn {
			c.Items[i].Pictures = nil
		}
	}
	page := A4.portrait("", leastCard)
	layCard(page, setter(), v, &c, place(A4, 0, false), map[any]*Plate{})
	return page.Marks
}

// likeOf is a mark as it is compared: a picture by where it is.
func likeOf(m Mark) any {
	if p, ok := m.(Picture); ok {
		return p.Box
	}
	return m
}

// Drawings take what is free: every other mark of a card is where it is without them, and
// none is under one.
func TestDrawingsMoveNothingOnCards(t *testing.T) {
	many := 0
	eachDemo(t, func(name string, v *view.View) {
		for n := range v.Cards {
			bare, marks := cardMarks(v, n, false), cardMarks(v, n, true)
			for _, m := range marks {
				if len(bare) > 0 && reflect.DeepEqual(likeOf(m), likeOf(bare[0])) {
					bare = bare[1:]
					continue
				}
				p, ok := m.(Picture)
				if !ok {
					t.Fatalf("%s, card %d: %+v is there only because of a drawing", name, n+1, m)
				}
				many++
				for _, o := range marks {
					if likeOf(o) != likeOf(m) && inked(o).overlaps(p.Box) {
						t.Errorf("%s, card %d: a drawing is over %+v", name, n+1, o)
					}
				}
				if !p.within(place(A4, 0, false).Inset(cardMargin, cardMargin)) || p.H < 4 {
					t.Errorf("%s, card %d: a drawing at %+v", name, n+1, p.Box)
				}
			}
			if len(bare) > 0 {
				t.Errorf("%s, card %d: without drawings there is also %+v", name, n+1, bare[0])
			}
		}
	})
	if many < 50 {
		t.Errorf("only %d drawings", many)
	}
}

// Of a day without a hold of the road map a card shows the exercise that it is about, at
// its start and at its end.
func TestACardShowsWhatItsSessionIsAbout(t *testing.T) {
	v := demoView(t, "anselm")
	for n := range v.Cards {
		if main := v.Cards[n].Items[v.Cards[n].Main]; main.ExerciseID == "ring-row" && !main.Shown {
			if more := len(cardMarks(v, n, true)) - len(cardMarks(v, n, false)); more != 2 {
				t.Errorf("card %d has %d drawings of ring rows", n+1, more)
			}
			return
		}
	}
	t.Fatal("no day of ring rows")
}

// What is new is drawn the first time, and then no more.
func TestWhatIsNewIsShownOnce(t *testing.T) {
	v := demoView(t, "maren")
	times := map[string]int{}
	for _, c := range v.Cards {
		for i, item := range c.Items {
			if len(item.Pictures) > 0 && i != c.Main {
				times[item.ExerciseID]++
			}
			if item.Shown && item.Pictures != nil {
				t.Errorf("%s has a figure and drawings", item.Name)
			}
		}
	}
	for exercise, n := range times {
		if n > 1 {
			t.Errorf("%s is new %d times", exercise, n)
		}
	}
	if len(times) < 5 {
		t.Errorf("only %v are new", times)
	}
}

// A drawing is the same on paper and on a page: each point of the image in the files of a
// website (SVG 1.1, path data: M absolute, l and c relative) is one of the PDF's (ISO
// 32000-1, 8.5.2: m and c), and the other way round, within what both round by.
func TestPaperAndPagesDrawTheSamePoints(t *testing.T) {
	studio := demo(t)
	for i := range studio.Library.Exercises {
		e := &studio.Library.Exercises[i]
		for _, d := range framesOf(album().Of(e.ID)).all {
			const scale = 100 // mm a metre
			onPaper, onPage := pdfPoints(d, scale), svgPoints(figure.SVG(d, "t", "d", figure.SVGOptions{Margin: 1e-9}))
			for _, pair := range [][2][]program.Point{{onPaper, onPage}, {onPage, onPaper}} {
				for _, p := range pair[0] {
					if off := nearest(p, pair[1]); off > .0025 {
						t.Fatalf("%s: a point is %.1f mm off", e.ID, 1000*off)
					}
				}
			}
		}
	}
}

func nearest(p program.Point, all []program.Point) float64 {
	off := math.Inf(1)
	for _, q := range all {
		off = min(off, math.Hypot(p.X-q.X, p.Y-q.Y))
	}
	return off
}

var operators = regexp.MustCompile(`(?m)^(-?[\d.]+(?: -?[\d.]+)*) ([mlc])$`)

// pdfPoints are those of a plate, in metres from the drawing's top-left corner.
func pdfPoints(d figure.Drawing, scale float64) []program.Point {
	plate := figurePlate(d, scale*d.Width(), scale*d.Height())
	p := &pen{height: plate.Height, shades: shades}
	plate.draw(p)
	var points []program.Point
	for _, m := range operators.FindAllStringSubmatch(string(p.out), -1) {
		numbers := strings.Fields(m[1])
		for i := 0; i+1 < len(numbers); i += 2 {
			x, _ := strconv.ParseFloat(numbers[i], 64)
			y, _ := strconv.ParseFloat(numbers[i+1], 64)
			points = append(points, program.Point{X: x * mmPerPoint / scale, Y: (y*mmPerPoint - plate.Height) / scale})
		}
	}
	return points
}

var (
	pathData = regexp.MustCompile(` d="([^"]*)"`)
	commands = regexp.MustCompile(`([Mlc])([-\d ]+)`)
	integers = regexp.MustCompile(`-?\d+`)
)

// svgPoints are those of an image of 1000 units a metre.
func svgPoints(svg []byte) (points []program.Point) {
	for _, path := range pathData.FindAllSubmatch(svg, -1) {
		at := program.Point{}
		for _, c := range commands.FindAllSubmatch(path[1], -1) {
			numbers := integers.FindAllString(string(c[2]), -1)
			from := at
			if c[1][0] == 'M' {
				from = program.Point{}
			}
			for i := 0; i+1 < len(numbers); i += 2 {
				x, _ := strconv.Atoi(numbers[i])
				y, _ := strconv.Atoi(numbers[i+1])
				at = program.Point{X: from.X + float64(x)/1000, Y: from.Y - float64(y)/1000}
				points = append(points, at)
			}
		}
	}
	return points
}
