package figure_test

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
)

// hung are the steps of the front lever on both bodies.
func hung(t *testing.T) []posed {
	t.Helper()
	var all []posed
	for _, s := range stances(t) {
		if s.Hang {
			all = append(all, s)
		}
	}
	if len(all) < 18 {
		t.Fatalf("only %d bodies hang", len(all))
	}
	return all
}

// A bar of 3 cm (common practice) is seen from its end, in the hands and not behind
// them.
func TestTheBarIsSeenInTheHands(t *testing.T) {
	for _, s := range hung(t) {
		d := figure.Draw(s.Stance, figure.Options{Plain: true})
		bar := d.Shapes[len(d.Shapes)-1]
		if bar.Ink != figure.Line || bar.Stroke || bar.Edge == 0 {
			t.Errorf("%s: the last shape is no bar: %+v", s.name, bar)
			continue
		}
		for _, p := range flat(bar.Paths)[0] {
			if r := math.Hypot(p.X, p.Y); math.Abs(r-0.015) > 0.0005 {
				t.Errorf("%s: the bar's edge is %.4f m from the middle of the hands", s.name, r)
			}
		}
	}
}

// What a band helps is written where neither arms nor legs are, whatever the step: of
// "12.5 kg" in letters of 8.5 cm the box is about 30 cm wide.
func TestHelpIsWrittenBesideAHangingBody(t *testing.T) {
	for _, s := range hung(t) {
		s.Help, s.Anchor = 100, program.Point{Y: 0.10}
		d := figure.Draw(s.Stance, figure.Options{Help: "12.5 kg", Text: 0.085})
		if len(d.Labels) != 1 || d.Labels[0].Align != figure.End {
			t.Fatalf("%s: %+v", s.name, d.Labels)
		}
		at := d.Labels[0].At
		for _, shape := range d.Shapes {
			if shape.Ink != figure.Near && shape.Ink != figure.Far {
				continue
			}
			for _, p := range []figure.Point{at, {X: at.X - 0.15, Y: at.Y}, {X: at.X - 0.30, Y: at.Y}, {X: at.X, Y: at.Y + 0.06}, {X: at.X - 0.30, Y: at.Y + 0.06}} {
				if winding(flat(shape.Paths), p) != 0 {
					t.Errorf("%s: the body is at %.2f, %.2f, where the help is written", s.name, p.X, p.Y)
				}
			}
		}
	}
}

// A band from the bar is drawn up to it, however little headroom there is: the hands
// are above the hip.
func TestABandFromTheBarReachesIt(t *testing.T) {
	for _, s := range hung(t) {
		s.Help, s.Anchor = 100, program.Point{Y: 0.10}
		top := math.Inf(-1)
		for _, shape := range figure.Draw(s.Stance, figure.Options{Headroom: 0.3, Plain: true}).Shapes {
			if shape.Ink == figure.Accent {
				for _, p := range shape.Paths {
					top = math.Max(top, p.From.Y)
				}
			}
		}
		if math.Abs(top-0.10) > 0.02 {
			t.Errorf("%s: the band ends %.2f m above the bar", s.name, top)
		}
	}
}
