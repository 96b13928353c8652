package paper

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"

	"pgregory.net/rapid"
)

// stood is a body of the chart's head where the page has it.
type stood struct {
	program.Stance
	at placed
}

// bodies finds the head's figures of a chart on its page, from the layout's own
// numbers: the pictures stand in the order of the view's positions.
func bodies(t *rapid.T, v *view.View, page *Page) []stood {
	c := &chart{v: v}
	all := c.positions()
	var found []stood
	for _, m := range page.Marks {
		p, ok := m.(Picture)
		if !ok {
			continue
		}
		s := all[len(found)]
		d := figure.Draw(s.Stance, figure.Options{Headroom: bandShown, Help: s.Help})
		scale := p.W / d.Width()
		if math.Abs(scale*d.Height()-p.H) > 0.01 {
			t.Fatalf("%s is stretched: %.2f mm high, %.2f as wide", s.Step, p.H, scale*d.Height())
		}
		found = append(found, stood{s.Stance, placed{scale, Point{p.X - scale*d.Min.X, p.Y + scale*d.Max.Y}}})
	}
	if len(found) != len(all) {
		t.Fatalf("%d figures of %d positions", len(found), len(all))
	}
	return found
}

func (s *stood) length(a, b program.Point) float64 {
	p, q := s.at.at(a), s.at.at(b)
	return math.Hypot(p.X-q.X, p.Y-q.Y)
}

// On paper the hand is under the centre of mass within 1 mm, where nothing but the
// hands carries; and upper arm, forearm and shank (knee to ankle joint centre) keep
// the published shares of stature, within 0.1 mm (de Leva 1996, table 4: 281.7,
// 268.9 and 440.3 mm of 1.741 m, women 275.1, 264.3 and 438.6 mm of 1.735 m; these
// clients' arm span is their height).
func TestFiguresOnPaperKeepTheStatics(t *testing.T) {
	coach := demo(t).Coach
	rapid.Check(t, func(t *rapid.T) {
		a := clients.Draw(t, "client")
		v := viewOf(t, coach, &a)
		if len(v.Weeks) == 0 {
			t.Skip("no program")
		}
		for _, s := range bodies(t, v, layChart(setter(), v, A3)) {
			if s.Help == 0 && s.ToesCarry == 0 {
				if off := math.Abs(s.at.at(s.CoM).X - s.at.at(program.Point{}).X); off > 1 {
					t.Errorf("the hands are %.2f mm from under the centre of mass", off)
				}
			}
			s.checkSegments(t, &a)
		}
	})
}

func (s *stood) checkSegments(t *rapid.T, a *program.Assessment) {
	table := map[program.Sex][3]float64{ // upper arm, forearm, shank over stature
		program.SexMale: {.2817 / 1.741, .2689 / 1.741, .4403 / 1.741}, program.SexFemale: {.2751 / 1.735, .2643 / 1.735, .4386 / 1.735},
	}
	ratios, ok := table[a.Athlete.Sex]
	if !ok {
		return // a mean of both
	}
	scale := s.at.scale * a.Athlete.Height
	for i, pair := range [][2]program.Point{{s.Shoulder, s.Elbow}, {s.Elbow, s.Wrist}} {
		if got, want := s.length(pair[0], pair[1]), ratios[i]*scale; math.Abs(got-want) > 0.1 {
			t.Errorf("segment %d is %.2f mm long, the table has %.2f", i, got, want)
		}
	}
	for leg := range s.Knees {
		if s.KneesOut[leg] != 0 || s.AnklesOut[leg] != 0 {
			continue // foreshortened
		}
		if got, want := s.length(s.Knees[leg], s.Ankles[leg]), ratios[2]*scale; math.Abs(got-want) > 0.1 {
			t.Errorf("the shank is %.2f mm long, the table has %.2f", got, want)
		}
	}
}
