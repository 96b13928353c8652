package posture_test

import (
	"math"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/posture"
)

// Where a page says that the hands lie with their fingers turned out, and where only there,
// they lie so, each to its own side, and the first drawing has them from above as well: two
// hands in a frame that touches no flesh, the right one below and its fingers further down,
// the left one above and its fingers further up, each off a line from its wrist straight
// ahead. Half of a right angle is common practice for these exercises.
func TestTurnedOutHandsAreSeenFromAbove(t *testing.T) {
	lib, album := library(t), posture.NewAlbum(library(t))
	for i := range lib.Exercises {
		e := &lib.Exercises[i]
		pictures := album.Of(e.ID)
		if len(e.Figures) == 0 || len(pictures) == 0 {
			continue
		}
		shapes := len(figure.Frames(pictures, figure.Options{})[0].Shapes) - len(figure.Show(pictures[0], figure.Options{}).Shapes)
		if says := strings.Contains(strings.Join(strings.Fields(e.SetUp), " "), "fingers turned out"); says != (shapes > 0) {
			t.Errorf("%s: the page says turned out: %t, and the drawing has %d more shapes", e.ID, says, shapes)
		}
		if shapes == 0 {
			continue
		}
		for side, sign := range []float64{1, -1} {
			a := pictures[0].Placed.Arms[side]
			if turned := math.Atan2(sign*(a.Tip.Z-a.Wrist.Z), a.Tip.X-a.Wrist.X); math.Abs(turned-math.Pi/4) > 0.01 {
				t.Errorf("%s: a hand is turned out by %.0f°", e.ID, turned*180/math.Pi)
			}
		}
		checkHands(t, e, pictures)
	}
}

func checkHands(t *testing.T, e *program.Exercise, pictures []program.Picture) {
	t.Helper()
	all := figure.Frames(pictures, figure.Options{})
	bodies := figure.Show(pictures[0], figure.Options{})
	added := all[0].Shapes[len(bodies.Shapes):]
	frame, ahead, hands := added[0], added[1], added[2]
	if len(all) > 1 && len(all[1].Shapes) != len(figure.Show(pictures[1], figure.Options{}).Shapes) {
		t.Errorf("%s: hands from above in the second drawing, too", e.ID)
	}
	low, left, right := math.Inf(1), math.Inf(1), math.Inf(-1)
	for _, c := range frame.Paths[0].Curves {
		low, left, right = math.Min(low, c.To.Y), math.Min(left, c.To.X), math.Max(right, c.To.X)
	}
	for _, path := range outlines(bodies) {
		for _, p := range path {
			if left < p.X && p.X < right && p.Y > low {
				t.Fatalf("%s: the frame is over flesh", e.ID)
			}
		}
	}
	half := len(hands.Paths) / 2
	for side, up := range []float64{-1, 1} {
		line := ahead.Paths[side]
		if line.Curves[0].To.Y != line.From.Y || line.Curves[0].To.X <= line.From.X {
			t.Errorf("%s: ahead is not to the right", e.ID)
		}
		furthest := 0.0
		for _, p := range hands.Paths[side*half : (side+1)*half] {
			for _, c := range p.Curves {
				furthest = math.Max(furthest, up*(c.To.Y-line.From.Y))
			}
		}
		if furthest < 0.15 {
			t.Errorf("%s: fingers are only %.2f m off straight ahead", e.ID, furthest)
		}
	}
	if ahead.Paths[0].From.Y >= ahead.Paths[1].From.Y {
		t.Errorf("%s: the right hand is not below", e.ID)
	}
}
