package planner

import (
	"cmp"
	"encoding/json"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// threeBands are those of the demo's client with the most.
func threeBands() []program.Band {
	studio, _ := repo()
	var most []program.Band
	for _, c := range studio.Clients {
		if len(c.Bands) > len(most) {
			most = c.Bands
		}
	}
	return most
}

// publics draws any public program that intake would let through.
var publics = rapid.Custom(func(t *rapid.T) program.PublicProgram {
	p := program.PublicProgram{
		ID:      "open-hours",
		Goal:    program.Goal{Skill: "planche", Step: rapid.SampledFrom(stepIDs).Draw(t, "goal"), Hold: float64(rapid.IntRange(3, 20).Draw(t, "hold"))},
		Kit:     subsetOf(t, allKit, "kit"),
		Hanging: hangings.Draw(t, "hanging"),
		Places:  program.Places{},
	}
	if rapid.Bool().Draw(t, "bands") {
		p.Bands = threeBands()
	}
	p.Training.Weeks = rapid.SampledFrom([]int{0, 4, 9, 16}).Draw(t, "weeks")
	p.Training.Minutes = rapid.SampledFrom([]int{20, 45, 60, 120}).Draw(t, "minutes")
	days := [][]time.Weekday{{1}, {1, 4}, {1, 3, 5}, {1, 2, 4, 6}, {1, 2, 3, 4, 5, 6}}
	p.Training.Days = rapid.SampledFrom(days).Draw(t, "days")
	return p
})

// What holds for every client's program holds for every level's.
func TestInvariantsOfLevels(t *testing.T) {
	lib := library(t)
	rapid.Check(t, func(t *rapid.T) {
		from := publics.Draw(t, "program")
		starts, problems := startsOf(lib, &from)
		if problems.Stop() || len(starts) == 0 {
			t.Fatalf("%d levels, %v", len(starts), problems)
		}
		for i, s := range starts {
			p, _ := Plan(lib, &s.reader)
			for _, c := range checkers {
				for _, fault := range c.check(lib, &s.reader, &p) {
					t.Errorf("level %d, %s: %s", i+1, c.name, fault)
				}
			}
		}
	})
}

// Levels lead from one to the next without a gap, up to the goal, whoever
// starts higher never starts with lighter work, and all are careful.
func TestLevelsClimb(t *testing.T) {
	lib := library(t)
	rapid.Check(t, func(t *rapid.T) {
		from := publics.Draw(t, "program")
		levels, _ := Levels(lib, &from)
		torque := map[string]float64{"": 0}
		for _, s := range levels[0].Program.Steps {
			torque[s.ID] = s.Torque
		}
		for i, l := range levels {
			switch {
			case l.Number != i+1 || len(l.Program.Weeks) == 0:
				t.Errorf("level %d has number %d and %d weeks", i+1, l.Number, len(l.Program.Weeks))
			case i == 0 && l.Step != "":
				t.Errorf("level 1 asks for the %s", l.Step)
			case i > 0 && (l.Step != levels[i-1].Next || l.Hold != levels[i-1].NextFor):
				t.Errorf("level %d starts at %s for %d s, the one before ends at %s for %d s", i+1, l.Step, l.Hold, levels[i-1].Next, levels[i-1].NextFor)
			case i > 0 && torque[l.Next] <= torque[l.Step]:
				t.Errorf("level %d goes from %s down to %s", i+1, l.Step, l.Next)
			case i > 0 && l.Program.Weeks[0].Capacity < levels[i-1].Program.Weeks[0].Capacity:
				t.Errorf("level %d reckons with less than the one before", i+1)
			}
		}
		if last := levels[len(levels)-1]; last.Next != from.Goal.Step || last.NextFor != int(from.Goal.Hold) {
			t.Errorf("the last level ends at %s for %d s", last.Next, last.NextFor)
		}
		for i := range levels {
			careful(t, &levels[i])
		}
	})
}

// Lowering at the wall weighs more than the whole press on pads, so the level that ends with
// it trains that and is named for it, as is the level that lifts from higher blocks down to
// 30 cm; no other level of the demo is trained past its end. Twelve weeks on a floor do not
// reach the half-open tuck from ten seconds of the tuck: that level is named for the tuck, and
// two others for what they train as well.
func TestLevelsAreNamedForWhatTheyTrain(t *testing.T) {
	lib := library(t)
	studio, _ := repo()
	for _, from := range studio.Public {
		levels, _ := Levels(lib, &from)
		for _, l := range levels {
			want := map[string]string{"up-the-wall lowering": "wall", "off-the-block block-40": "block-30"}[from.ID+" "+l.Next]
			if l.Helped != want {
				t.Errorf("%s, level %d: trained past its end is %q, want %q", from.ID, l.Number, l.Helped, want)
			}
			longer := map[string]string{"bare-floor half-open-tuck": "tuck", "bare-floor open-tuck": "half-open-tuck",
				"ropes-and-bands open-half-lay": "one-leg-half-lay"}[from.ID+" "+l.Next]
			if l.Longer != longer {
				t.Errorf("%s, level %d: trained for longer is %q, want %q", from.ID, l.Number, l.Longer, longer)
			}
			if name := cmp.Or(l.Longer, l.Helped, l.Next); name != "" && !trains(l.Program.Weeks, name) {
				t.Errorf("%s, level %d is named for the %s and does not train it", from.ID, l.Number, name)
			}
		}
	}
}

// careful: nothing heavy for elbows that nobody has seen, and no note about a person, a
// test or a date.
func careful(t *rapid.T, l *program.Level) {
	for i := range l.Program.Weeks {
		for _, it := range items(&l.Program.Weeks[i]) {
			if it.Role == program.RoleAhead {
				t.Errorf("level %d, week %d: heavy work", l.Number, i+1)
			}
		}
	}
	for _, n := range l.Program.Notes {
		if len(n.Values) > 0 {
			t.Errorf("level %d: note %s", l.Number, n.Code)
		}
	}
}

func TestLevelsAreTheSameEveryTime(t *testing.T) {
	lib := library(t)
	from := program.PublicProgram{Goal: program.Goal{Skill: "planche", Step: "straddle", Hold: 10}, Bands: threeBands(),
		Hanging: program.Hanging{Anchor: 2.15, Support: 0.10}, Training: program.Training{Days: []time.Weekday{1, 3, 5}, Minutes: 60}}
	one, _ := Levels(lib, &from)
	two, _ := Levels(lib, &from)
	a, _ := json.Marshal(one)
	b, _ := json.Marshal(two)
	if string(a) != string(b) || len(a) < 1000 {
		t.Error("two runs differ")
	}
}

// The table of help rests on geometric similarity, which the statics must show:
// a body of another mass and the same shape, on a band stiffer by as much, leans
// the same and keeps the same share of its load.
func TestHelpGrowsWithTheWeight(t *testing.T) {
	pull := mechanics.Curve{A: 20, B: 9, Rest: 1}
	pose := mechanics.Pose{Legs: mechanics.Both(mechanics.Leg{Hip: math.Pi / 2, Knee: math.Pi / 2}), Rounding: 0.04, Depression: 0.02}
	share := func(mass float64) (load, help, lean float64) {
		b, err := mechanics.NewBody(mechanics.Unspecified, mass, readerHeight, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		k := mass / readerMass
		rig := mechanics.Rig{Bands: []mechanics.Curve{{A: k * pull.A, B: k * pull.B, Rest: pull.Rest}}, Anchor: 2.05}
		free := mechanics.Solve(b, pose, mechanics.Support{Grip: true, Height: 0.1}, nil)
		held := mechanics.Solve(b, pose, mechanics.Support{Grip: true, Height: 0.1}, &rig)
		return held.Torque / free.Torque, held.Help / (mass * mechanics.Gravity), held.Lean
	}
	load, help, lean := share(readerMass)
	if help <= 0.01 {
		t.Fatalf("the band helps with %.3f of body weight", help)
	}
	for _, mass := range readerMasses {
		l, h, a := share(mass)
		if math.Abs(l-load) > 1e-9 || math.Abs(h-help) > 1e-9 || math.Abs(a-lean) > 1e-9 {
			t.Errorf("%v kg: load %.4f, help %.4f, lean %.4f; at the mean %.4f, %.4f, %.4f", mass, l, h, a, load, help, lean)
		}
	}
}

// Worked by hand: a tenth of body weight is 5 kg of 50 kg and 9 kg of 90 kg.
func TestHelpByMass(t *testing.T) {
	tenth := 0.1 * readerMass * mechanics.Gravity
	week := func(n int, kind program.WeekKind, help float64) program.Week {
		return program.Week{Number: n, Kind: kind, Step: "tuck", Help: help}
	}
	rows := helpByMass(&program.Program{Weeks: []program.Week{week(1, program.WeekBuild, tenth), week(2, program.WeekDeload, tenth),
		week(3, program.WeekBuild, tenth), week(4, program.WeekBuild, tenth/2), week(5, program.WeekBuild, 0), week(6, program.WeekTest, tenth)}})
	if len(rows) != 2 || rows[0].From != 1 || rows[0].To != 3 || rows[1].From != 4 || rows[1].To != 4 {
		t.Fatalf("%+v", rows)
	}
	kg := func(newtons float64) float64 { return math.Round(newtons/9.80665*100) / 100 }
	if kg(rows[0].Help[0]) != 5 || kg(rows[0].Help[4]) != 9 || kg(rows[1].Help[0]) != 2.5 {
		t.Errorf("%+v", rows)
	}
}
