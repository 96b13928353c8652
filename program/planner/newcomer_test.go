package planner_test

import (
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
)

// printedOf counts the days of a block on which an exercise stands.
func printedOf(p *program.Program, exercise string) (n int) {
	for i := range p.Weeks {
		for _, s := range p.Weeks[i].Sessions {
			for _, item := range s.Items {
				if item.Exercise == exercise {
					n++
				}
			}
		}
	}
	return n
}

// A first-timer of 112 kg with a wall leans for a planche, or hangs for a lever: nobody has
// seen the handstand, so the line is drawn lying, for all twelve weeks, and the push beside
// a lever is not the one that leans over the hands. Who has shown a line of 30 s at the
// wall does it there, three times 25 s (common practice: nobody new is turned upside down
// on a guess).
func TestNobodyNewIsTurnedUpsideDown(t *testing.T) {
	first := readPanel(t, []string{"testdata/panel/25-scale-only.txt"})[0]
	lib, a := first.library, *first.assessment
	a.Athlete.Mass, a.Athlete.Height = 112, 1.81
	a.Kit, a.Tests = []string{"wall"}, nil
	p, _ := planner.Plan(lib, &a)
	if wall, lying := printedOf(&p, "wall-handstand-line"), printedOf(&p, "lying-handstand-line"); wall != 0 || lying < 15 {
		t.Errorf("untested: %d days at the wall, %d lying", wall, lying)
	}
	a.Tests = []program.Hold{{Exercise: "wall-handstand-line", Seconds: 30}}
	p, _ = planner.Plan(lib, &a)
	if got := p.Weeks[0].Sessions[0].Items; got[len(got)-1].Exercise != "wall-handstand-line" || got[len(got)-1].Sets != 3 || got[len(got)-1].Hold != 25 {
		t.Errorf("with a line of 30 s: %+v", got[len(got)-1])
	}
	lever := *readPanel(t, []string{"testdata/panel/31-lever-first-timer.txt"})[0].assessment
	p, _ = planner.Plan(lib, &lever)
	if n := printedOf(&p, "pseudo-planche-push-up"); n != 0 {
		t.Errorf("before the entry of a lever: %d days of pushing far over the hands", n)
	}
}

// Who wants to press and has never tried the line at the wall draws it lying, once a
// session, then over a box, if there is one; the wall itself stands on the last day, as
// what the entry asks for (our judgement).
func TestTheEntryGoesOverTheBox(t *testing.T) {
	c := readPanel(t, []string{"testdata/panel/34-press-beginner.txt"})[0]
	for _, kit := range [][]string{{"wall", "box"}, {"wall"}} {
		a := *c.assessment
		a.Kit = kit
		p, _ := planner.Plan(c.library, &a)
		lying, box, wall := printedOf(&p, "lying-handstand-line"), printedOf(&p, "box-handstand-line"), printedOf(&p, "wall-handstand-line")
		if wall != 1 || len(kit) == 2 && (lying != 15 || box != 8) || len(kit) == 1 && (lying != 23 || box != 0) {
			t.Errorf("%v: %d days lying, %d over the box, %d at the wall", kit, lying, box, wall)
		}
	}
}

// Who has lifted twice from a block stands on the hands: what goes beside the work on the floor is
// the line at the wall, on the days it stands, and never the one that lies.
func TestWhoLiftsDrawsTheLineAtTheWall(t *testing.T) {
	c := readPanel(t, []string{"testdata/panel/35-lift-beginner.txt"})[0]
	a := *c.assessment
	a.Tests = []program.Hold{{Step: "block-40", Reps: 2}}
	p, _ := planner.Plan(c.library, &a)
	if wall, lying := printedOf(&p, "wall-handstand-line"), printedOf(&p, "lying-handstand-line"); wall < 12 || lying != 0 {
		t.Errorf("%d days at the wall, %d lying", wall, lying)
	}
}
