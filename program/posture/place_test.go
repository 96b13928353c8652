package posture_test

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/mechanics"
	"gatepost/program/posture"
)

const degree = math.Pi / 180

func onFloor(parts ...program.Part) []program.Thing {
	return []program.Thing{{Kind: program.ThingFloor, Parts: parts}}
}

func bends(pairs ...any) map[program.Bend]float64 {
	all := map[program.Bend]float64{}
	for i := 0; i < len(pairs); i += 2 {
		all[pairs[i].(program.Bend)] = float64(pairs[i+1].(int)) * degree
	}
	return all
}

// Source: de Leva (1996), Table 4, lengths as shares of stature: trunk, upper arm, forearm,
// thigh, shank. Whatever is bent keeps its length.
func TestPlacedSegmentsAreAsLongAsTheTableSays(t *testing.T) {
	table := map[string][5]float64{"woman": {.2870, .1586, .1523, .2124, .2528}, "man": {.2961, .1618, .1545, .2425, .2529}}
	for _, d := range everything(t) {
		for who, want := range table {
			if len(d.name) < len(who) || d.name[len(d.name)-len(who)-1:] != " "+who {
				continue
			}
			for i := range 2 {
				a, l := &d.Arms[i], &d.Legs[i]
				got := [5]float64{far(d.Top, d.Hip), far(a.Shoulder, a.Elbow), far(a.Elbow, a.Wrist), far(l.Hip, l.Knee), far(l.Knee, l.Ankle)}
				if d.Spine != 0 { // whose chord is shorter
					got[0] = want[0] * d.Height
				}
				for k := range want {
					if math.Abs(got[k]/d.Height-want[k]) > 1e-4 {
						t.Errorf("%s: segment %d is %.4f of stature, the table says %.4f", d.name, k, got[k]/d.Height, want[k])
					}
				}
			}
		}
	}
}

// Worked by hand for the man of 1.741 m: on all fours with arms and thighs upright the
// shoulders are as high as the arm is long, (.1618+.1545)·1.741 = .5507 m, the hips as high
// as the thigh with the flesh under the shin, (.2425+.028)·1.741 = .4709 m; over a trunk of
// .2961·1.741 = .5155 m it rises to the shoulders by asin(.0798/.5155) = 8.9°.
func TestAllFoursByTrigonometry(t *testing.T) {
	body, _ := mechanics.NewBody(mechanics.Male, 73, 1.741, 0, 0)
	f := program.Figure{Things: onFloor(program.PartHands, program.PartShins),
		Angles: bends(program.BendTrunk, 80, program.BendShoulder, 80, program.BendElbow, 0, program.BendHip, 80, program.BendKnee, 90, program.BendAnkle, 80)}
	placed, wrong := posture.Place(&body, []program.Figure{f})
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	p := placed[0]
	if math.Abs(p.Arms[0].Shoulder.Y-.5507) > .004 || math.Abs(p.Hip.Y-.4709) > .004 {
		t.Errorf("shoulders %.4f m, hips %.4f m", p.Arms[0].Shoulder.Y, p.Hip.Y)
	}
	if rise := math.Asin((p.Top.Y-p.Hip.Y)/.5155) / degree; math.Abs(rise-8.9) > 1 {
		t.Errorf("the trunk rises by %.1f°", rise)
	}
	if head := p.Crown; head.X < p.Hip.X {
		t.Error("who is face down looks to the right, head first")
	}
}

// What touches the floor in both drawings stays where it was, unless it slides.
func TestWhatTouchesStays(t *testing.T) {
	body, _ := mechanics.NewBody(mechanics.Female, 61.9, 1.735, 0, 0)
	start := program.Figure{Things: onFloor(program.PartHands, program.PartToes),
		Angles: bends(program.BendTrunk, 72, program.BendShoulder, 75, program.BendElbow, 0, program.BendHip, 0, program.BendKnee, 0)}
	end := program.Figure{Angles: bends(program.BendElbow, 90, program.BendHip, 0, program.BendKnee, 0)}
	stays, _ := posture.Place(&body, []program.Figure{start, end})
	if slid := math.Abs(stays[1].Arms[0].Wrist.X - stays[0].Arms[0].Wrist.X); slid > .002 {
		t.Errorf("the hands slid by %.1f cm", 100*slid)
	}
	if drop := stays[0].Top.Y - stays[1].Top.Y; drop < .1 {
		t.Errorf("bent arms let the shoulders down by %.2f m", drop)
	}
	end = program.Figure{Slides: []program.Part{program.PartToes}, Angles: bends(program.BendTrunk, 120, program.BendHip, 70, program.BendKnee, 0, program.BendShoulder, 130, program.BendElbow, 0)}
	slides, wrong := posture.Place(&body, []program.Figure{start, end})
	if slid := slides[1].Legs[0].Ball.X - slides[0].Legs[0].Ball.X; slid < .1 || len(wrong) > 0 {
		t.Errorf("the toes came in by %.2f m: %v", slid, wrong)
	}
}

// A body that hangs from its hands alone has its weight under them (statics).
func TestWhoHangsIsUnderTheBar(t *testing.T) {
	for who, body := range bodies(t) {
		f := program.Figure{Things: []program.Thing{{Kind: program.ThingBar, Parts: []program.Part{program.PartHands}}},
			Angles: bends(program.BendShoulder, 170, program.BendHip, 60, program.BendKnee, 0, program.BendElbow, 0)}
		placed, _ := posture.Place(&body, []program.Figure{f})
		p := &placed[0]
		ahead := (p.Legs[0].Knee.X + p.Legs[0].Ankle.X) / 2
		if ahead < .1 || p.Hip.X > -.02 {
			t.Errorf("%s: legs that are lifted ahead (%.2f m) push the hips back, not to %.2f m", who, ahead, p.Hip.X)
		}
	}
}

// What cannot be is said, with where it is written and what to do.
func TestWhatCannotBeIsSaid(t *testing.T) {
	body, _ := mechanics.NewBody(mechanics.Female, 61.9, 1.735, 0, 0)
	at := program.Place{File: "content/exercises/own.md", Line: 9, Column: 5}
	f := program.Figure{Place: at, Things: onFloor(program.PartFeet, program.PartHands),
		Angles: bends(program.BendTrunk, 0, program.BendShoulder, 0, program.BendElbow, 0, program.BendHip, 0, program.BendKnee, 0)}
	_, wrong := posture.Place(&body, []program.Figure{f})
	if len(wrong) == 0 {
		t.Fatal("upright hands touch the floor")
	}
	for _, p := range wrong {
		if p.Place != at || p.Advice == "" {
			t.Errorf("%v", p)
		}
	}
}

// Palms that are lifted leave the fingers on the floor. Worked by hand for the man of 1.741 m,
// whose hand is 18.8 cm long (de Leva 1996): half of that, raised by 40°, is 6.0 cm, and the
// knuckles are a centimetre and a half thick (common practice).
func TestPalmsAreLiftedFromTheFingers(t *testing.T) {
	body, _ := mechanics.NewBody(mechanics.Male, 73, 1.741, 0, 0)
	angles := bends(program.BendTrunk, 80, program.BendShoulder, 80, program.BendElbow, 0, program.BendHip, 80, program.BendKnee, 90)
	placed, wrong := posture.Place(&body, []program.Figure{
		{Things: onFloor(program.PartHands, program.PartShins), Angles: angles},
		{Things: onFloor(program.PartFingers, program.PartShins), Angles: bends(program.BendElbow, 0)}})
	a := placed[1].Arms[0]
	if math.Abs(a.Wrist.Y-a.Knuckle.Y-.060) > .003 || a.Tip.Y != a.Knuckle.Y || a.Knuckle.Y > .02 {
		t.Errorf("wrist %.3f m, knuckles %.3f, tips %.3f: %v", a.Wrist.Y, a.Knuckle.Y, a.Tip.Y, wrong)
	}
}

// What is untouched stands where it stood, and what never stood is said.
func TestUntouchedThingsStay(t *testing.T) {
	body, _ := mechanics.NewBody(mechanics.Female, 61.9, 1.735, 0, 0)
	wall := program.Thing{Kind: program.ThingWall, Parts: []program.Part{program.PartHands}}
	leans := program.Figure{Things: append(onFloor(program.PartFeet), wall), Angles: bends(program.BendShoulder, 90, program.BendElbow, 0, program.BendTrunk, 10)}
	stands := program.Figure{Things: []program.Thing{{Kind: program.ThingWall}}, Angles: bends(program.BendShoulder, 0)}
	placed, wrong := posture.Place(&body, []program.Figure{leans, stands})
	if p := placed[1]; len(p.Set) != 1 || p.Set[0].From != placed[0].Set[0].From || p.Set[0].To != placed[0].Set[0].To || p.Arms[0].Wrist.X > p.Set[0].From.X-.2 || len(wrong) > 0 {
		t.Errorf("the wall of %v is %v, the hands at %.2f m: %v", placed[0].Set, p.Set, p.Arms[0].Wrist.X, wrong)
	}
	stands.Things = append(stands.Things, onFloor(program.PartFeet)...)
	stands.Press = []program.Part{program.PartHands}
	if _, wrong = posture.Place(&body, []program.Figure{stands}); len(wrong) != 2 {
		t.Errorf("an untouched wall alone, and hands that press on nothing: %v", wrong)
	}
}

// Who presses pushes away from the body (mechanics): into the floor, and into a wall.
func TestArrowsOfWhoPresses(t *testing.T) {
	body, _ := mechanics.NewBody(mechanics.Female, 61.9, 1.735, 0, 0)
	fists := []program.Part{program.PartFists}
	f := program.Figure{Things: append(onFloor(program.PartFeet), program.Thing{Kind: program.ThingWall, Parts: fists}),
		Angles: bends(program.BendShoulder, 25, program.BendElbow, 0, program.BendHip, 0, program.BendKnee, 0), Press: fists}
	placed, _ := posture.Place(&body, []program.Figure{f})
	if a, p := placed[0].Arrows, placed[0]; len(a) != 1 || math.Abs(a[0].From.X-p.Set[0].From.X) > .01 || a[0].To.X < a[0].From.X+.1 || a[0].To.Y != a[0].From.Y {
		t.Errorf("into a wall at %v: %v", p.Set, a)
	}
	f = program.Figure{Things: onFloor(program.PartBack, program.PartFeet, program.PartFists), Angles: bends(program.BendElbow, 0, program.BendKnee, 100), Press: fists}
	placed, _ = posture.Place(&body, []program.Figure{f})
	if a := placed[0].Arrows; len(a) != 1 || math.Abs(a[0].From.Y) > .01 || a[0].To.Y > -.1 || a[0].To.X != a[0].From.X {
		t.Errorf("into the floor: %v", a)
	}
}

// Common practice: in a curl with the thumbs up a dumbbell points along the arm's swing, with
// the palms up from side to side.
func TestDumbbellsLieInTheHand(t *testing.T) {
	body, _ := mechanics.NewBody(mechanics.Female, 61.9, 1.735, 0, 0)
	for across, want := range map[bool]program.Space{false: {Y: 1}, true: {Z: 1}} {
		f := program.Figure{Things: append(onFloor(program.PartFeet), program.Thing{Kind: program.ThingDumbbells, Parts: []program.Part{program.PartHands}, Across: across}),
			Angles: bends(program.BendElbow, 90)}
		placed, _ := posture.Place(&body, []program.Figure{f})
		s := placed[0].Set[0]
		long := far(s.From, s.To)
		if got := math.Abs((s.To.Y-s.From.Y)*want.Y+(s.To.Z-s.From.Z)*want.Z) / long; got < .98 {
			t.Errorf("across %v: from %v to %v", across, s.From, s.To)
		}
	}
}

// Who has no handles is drawn without: every exercise with flat hands on the floor, and
// as well as with them.
func TestFlatHands(t *testing.T) {
	lib := library(t)
	album := posture.NewAlbum(lib)
	for i := range lib.Exercises {
		id := lib.Exercises[i].ID
		flat, usual := album.Flat(id), album.Of(id)
		if len(flat) != len(usual) {
			t.Errorf("%s: %d drawings with flat hands, %d on handles", id, len(flat), len(usual))
		}
		for _, p := range flat {
			if p.Stance.Grip && !p.Stance.Hang {
				t.Errorf("%s: stands on handles", id)
			}
			for _, thing := range p.Placed.Set {
				if thing.Kind == program.ThingHandles {
					t.Errorf("%s: handles stand there", id)
				}
			}
		}
	}
	for _, problem := range album.FlatProblems() {
		t.Error(problem)
	}
}
