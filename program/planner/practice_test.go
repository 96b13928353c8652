package planner_test

import (
	"slices"
	"testing"
	"time"

	"gatepost/program"
	"gatepost/program/planner"
)

// balancing is somebody who practises the free handstand of the library on five days.
func balancing(t *testing.T, tests ...program.Hold) (*program.Library, program.Assessment) {
	t.Helper()
	studio, _ := demo()
	a := program.Assessment{Slug: "x", Measured: program.NewDate(2027, 1, 4),
		Athlete:  program.Athlete{Name: "X", Sex: program.SexFemale, Born: program.NewDate(1995, 1, 1), Mass: 60, Height: 1.66},
		Training: program.Training{Experience: 45, Days: []time.Weekday{1, 2, 4, 5, 6}, Minutes: 60},
		Health:   program.Health{Wrists: program.JointFine, Elbows: program.JointFine, Shoulders: program.JointFine},
		Goal:     program.Goal{Skill: "free-handstand", Step: "long-stand", Hold: 30, By: program.NewDate(2027, 12, 1)},
		Kit:      []string{"wall", "box", "pull-up bar"}, Places: program.Places{}, Tests: tests}
	return &studio.Library, a
}

func reached(step string, best float64, reached int) program.Hold {
	return program.Hold{Step: step, Seconds: best, Tries: program.Tries{Reached: reached, Of: 10}}
}

// onSteps are a session's items of a step; none: nothing.
func onSteps(s *program.Session) (all []program.Prescription) {
	for _, item := range s.Items {
		if item.Step != "" {
			all = append(all, item)
		}
	}
	return all
}

// Ten tries, ten to fifteen minutes of a build week's day, first after the preparation, on
// five days, half in a deload; one step for the whole block and no date (common practice;
// the numbers are our judgement).
func TestPracticeIsFreshShortAndOften(t *testing.T) {
	lib, a := balancing(t, reached("kick-up", 9, 7), reached("short-stand", 12, 4))
	p, problems := planner.Plan(lib, &a)
	if len(problems) > 0 || len(p.Weeks) != 12 || len(p.Forecasts) != 0 || p.Place != "short-stand" {
		t.Fatal(problems, p.Withheld, p.Forecasts, p.Place)
	}
	tries := []int{10, 11, 10, 5, 10, 11, 10, 5, 10, 11, 10, 10} // gates in weeks 3, 7 and 11, deloads in 4 and 8, the test in 12
	for i, w := range p.Weeks {
		if w.Step != "short-stand" || w.Sets != tries[i] || w.Hold != 10 || w.Gate != slices.Contains([]int{3, 7, 11}, w.Number) {
			t.Errorf("week %d: %s, %d tries for %d s, gate %v", w.Number, w.Step, w.Sets, w.Hold, w.Gate)
		}
		for _, s := range w.Sessions {
			first := slices.IndexFunc(s.Items, func(i program.Prescription) bool { return i.Role != program.RolePrepare })
			item := s.Items[first]
			if item.Step != "short-stand" || !item.Try || item.Max || item.Check || len(onSteps(&s)) != 1 {
				t.Errorf("%s begins with %+v", s.Date, item)
			}
			if seconds := item.Sets * (item.Hold + item.Rest); w.Kind == program.WeekBuild && (seconds < 600 || seconds > 900) {
				t.Errorf("%s: %d s of practice", s.Date, seconds)
			}
		}
	}
}

// Where tests place somebody: after what six of ten reached, at what two of ten reach,
// below what hardly one does.
func TestWhereTestsPlaceThePractice(t *testing.T) {
	for _, c := range []struct {
		tests []program.Hold
		want  string
	}{
		{nil, "wall-line"},
		{[]program.Hold{{Step: "wall-line", Seconds: 44}}, "wall-line"},
		{[]program.Hold{{Step: "wall-line", Seconds: 45}}, "toe-pull"},
		{[]program.Hold{reached("kick-up", 4, 5)}, "kick-up"},
		{[]program.Hold{reached("kick-up", 4, 6)}, "short-stand"},
		{[]program.Hold{reached("short-stand", 11, 2)}, "short-stand"},
		{[]program.Hold{reached("short-stand", 11, 1)}, "kick-up"},
		{[]program.Hold{reached("long-stand", 31, 6)}, "long-stand"}, // the goal, shown
	} {
		entry := []program.Hold{{Exercise: "lying-handstand-line", Seconds: 40}, {Exercise: "box-handstand-line", Seconds: 40}}
		lib, a := balancing(t, append(entry, c.tests...)...)
		if p, _ := planner.Plan(lib, &a); p.Place != c.want || p.Goal.Met != (c.want == "long-stand") {
			t.Errorf("%+v: %s, met %v; want %s", c.tests, p.Place, p.Goal.Met, c.want)
		}
	}
}

// A line that was held for 25 s is trained at 15 s and a second more each build week, never
// at more than nine tenths of what was shown; its gate week opens with a hold that leaves two
// seconds.
func TestALineIsHeldAndNotTried(t *testing.T) {
	lib, a := balancing(t, program.Hold{Exercise: "lying-handstand-line", Seconds: 40}, program.Hold{Exercise: "box-handstand-line", Seconds: 40}, program.Hold{Step: "wall-line", Seconds: 25})
	p, _ := planner.Plan(lib, &a)
	for i, want := range []int{15, 16, 17, 18, 18, 19, 20, 21, 21, 22, 22} {
		if w := p.Weeks[i]; w.Step != "wall-line" || w.Hold != want {
			t.Errorf("week %d: %s %d s, want %d", w.Number, w.Step, w.Hold, want)
		}
	}
	if open := onSteps(&p.Weeks[2].Sessions[0])[0]; !open.Check || open.Hold != 0 || open.Sets != 1 {
		t.Errorf("the gate week opens with %+v", open)
	}
}

// Nobody is upside down before the entry was shown, with a condition that nobody has looked
// at, or on a sore wrist without handles.
func TestWhoStaysOnTheFeet(t *testing.T) {
	lib, a := balancing(t)
	p, _ := planner.Plan(lib, &a)
	for _, w := range p.Weeks {
		for _, s := range w.Sessions {
			if len(onSteps(&s)) > 0 || slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Exercise == "wall-handstand-line" }) {
				t.Errorf("%s, before the entry: %+v", s.Date, s.Items)
			}
		}
	}
	lib, a = balancing(t, reached("short-stand", 12, 4))
	a.Health.Conditions = []string{"reflux"}
	if p, _ = planner.Plan(lib, &a); len(p.Withheld) != 1 || len(p.Weeks) > 0 {
		t.Errorf("with reflux: %v", p.Withheld)
	}
	a.Health.Conditions, a.Health.Wrists = nil, program.JointSore
	p, _ = planner.Plan(lib, &a)
	for _, w := range p.Weeks {
		if w.Step != "" {
			t.Errorf("week %d practises the %s on sore wrists", w.Number, w.Step)
		}
	}
}

// tried is a line of the log.
func tried(day int, step, exercise string, reached int, pain int) program.Entry {
	best := 2.0
	if reached > 0 {
		best = 12
	}
	s := program.SetDone{Seconds: best, Tries: program.Tries{Reached: reached, Of: 10}}
	if pain > 0 {
		s.Pain = program.Pain{Given: true, Wrists: pain, Elbows: -1, Shoulders: -1, Other: -1}
	}
	return program.Entry{Date: program.NewDate(2027, 1, day), Step: step, Exercise: exercise, Sets: []program.SetDone{s}}
}

func short(day, reached int) program.Entry {
	return tried(day, "short-stand", "short-free-handstand", reached, 0)
}

// The step after the gate and never before; two weeks in which not a fifth reach on any day
// lead back. Six of ten on two days 48 hours apart is the gate.
func TestTheLogLeadsThePractice(t *testing.T) {
	hurt := tried(13, "short-stand", "short-free-handstand", 7, 3)
	two := short(8, 6)
	two.Sets = nil
	for _, x := range []float64{11, 10, 0, 12, 3, 10, 14, 2, 10, 9} { // six of ten, one by one
		clean := program.CleanUnsaid
		if x == 0 {
			clean = program.CleanNo
		}
		two.Sets = append(two.Sets, program.SetDone{Seconds: x, Clean: clean})
	}
	for _, c := range []struct {
		name string
		log  []program.Entry
		want string
		flag string
	}{
		{"six of ten on two days", []program.Entry{short(11, 6), short(13, 7)}, "long-stand", "flag-gate-passed"},
		{"ten tries, each written", []program.Entry{two, short(11, 6)}, "long-stand", "flag-gate-passed"},
		{"only a day apart", []program.Entry{short(11, 6), short(12, 7)}, "short-stand", ""},
		{"five of ten", []program.Entry{short(11, 6), short(13, 5)}, "short-stand", ""},
		{"with pain, and no handles", []program.Entry{short(11, 6), hurt}, "", "flag-pain-sore"},
		{"two poor weeks", []program.Entry{short(5, 1), short(8, 0), short(12, 1), short(15, 1)}, "kick-up", "flag-practice-back"},
		{"one poor week", []program.Entry{short(5, 2), short(8, 0), short(12, 1), short(15, 1)}, "short-stand", ""},
	} {
		lib, a := balancing(t, reached("kick-up", 9, 7), reached("short-stand", 12, 4))
		a.Log.Entries = c.log
		r, p, _ := planner.Read(lib, &a, nil, program.NewDate(2027, 1, 17))
		var flags []string
		for _, f := range r.Flags {
			flags = append(flags, f.Code)
		}
		if got := p.Weeks[2].Step; got != c.want || c.flag != "" && !slices.Contains(flags, c.flag) {
			t.Errorf("%s: week 3 on the %s, want the %s; flags %v", c.name, got, c.want, flags)
		}
	}
}

// What the coach signs counts as shown, and is kept.
func TestASignedGateOfTries(t *testing.T) {
	lib, a := balancing(t, reached("kick-up", 9, 7), reached("short-stand", 12, 4))
	a.Log.Entries = []program.Entry{short(5, 5)}
	r, p, _ := planner.Read(lib, &a, nil, program.NewDate(2027, 1, 9), "short-stand")
	if p.Weeks[1].Step != "long-stand" || p.Version != 2 || !slices.ContainsFunc(r.Gates, func(g program.GateRead) bool { return g.Step == "short-stand" && g.Signed }) {
		t.Errorf("%s, version %d, %+v", p.Weeks[1].Step, p.Version, r.Gates)
	}
}

// Bad news never makes the practice harder: with fewer tries that reach, pain, a missed
// week or a sore joint no day that comes has a harder step, or as many tries of the same.
func TestBadNewsNeverHardensThePractice(t *testing.T) {
	lib, good := balancing(t, reached("kick-up", 9, 7), reached("short-stand", 12, 4))
	for _, d := range []int{4, 5, 7, 8, 9, 11, 12, 14, 15, 16, 18, 19, 21, 22, 23} {
		good.Log.Entries = append(good.Log.Entries, short(d, 6))
	}
	on := program.NewDate(2027, 1, 24)
	_, before, _ := planner.Read(lib, &good, nil, on)
	order := []string{"", "wall-line", "toe-pull", "kick-up", "short-stand", "long-stand"}
	compare := func(name string, a *program.Assessment) {
		_, after, _ := planner.Read(lib, a, nil, on)
		for i, w := range after.Weeks {
			for j := range w.Sessions {
				if w.Sessions[j].Date <= on {
					continue
				}
				was, is := onSteps(&before.Weeks[i].Sessions[j]), onSteps(&w.Sessions[j])
				for k, item := range is {
					if len(was) <= k {
						t.Errorf("%s: %s has practice that it had not", name, w.Sessions[j].Date)
					} else if x, y := slices.Index(order, item.Step), slices.Index(order, was[k].Step); x > y || x == y && item.Sets > was[k].Sets {
						t.Errorf("%s: %s has %d tries of the %s instead of %d of the %s", name, w.Sessions[j].Date, item.Sets, item.Step, was[k].Sets, was[k].Step)
					}
				}
			}
		}
	}
	for n := range good.Log.Entries {
		for name, change := range map[string]func(*program.SetDone){
			"none reached": func(s *program.SetDone) { s.Tries.Reached, s.Seconds = 0, 2 },
			"pain 3":       func(s *program.SetDone) { s.Pain = program.Pain{Given: true, Wrists: 3} },
			"pain 6":       func(s *program.SetDone) { s.Pain = program.Pain{Given: true, Shoulders: 6} },
		} {
			bad := good
			bad.Log.Entries = slices.Clone(good.Log.Entries)
			e := &bad.Log.Entries[n]
			e.Sets = slices.Clone(e.Sets)
			change(&e.Sets[0])
			compare(e.Date.String()+" "+name, &bad)
		}
	}
	for monday := 4; monday <= 18; monday += 7 {
		for weeks := 1; weeks <= 2; weeks++ {
			bad := good
			bad.Log.Entries = slices.DeleteFunc(slices.Clone(good.Log.Entries), func(e program.Entry) bool {
				return e.Date >= program.NewDate(2027, 1, monday) && e.Date < program.NewDate(2027, 1, monday+7*weeks)
			})
			compare("weeks off", &bad)
		}
	}
	bad := good
	bad.Health.Elbows = program.JointSore
	compare("sore elbows", &bad)
}

// Every public level is on what it is called after, and shows no date.
func TestLevelsOfBalance(t *testing.T) {
	studio, _ := demo()
	i := slices.IndexFunc(studio.Public, func(p program.PublicProgram) bool { return p.ID == "off-the-wall" })
	levels, problems := planner.Levels(&studio.Library, &studio.Public[i])
	if len(problems) > 0 || len(levels) != 6 || len(levels[0].Entry) != 2 {
		t.Fatal(problems, len(levels))
	}
	for _, l := range levels[1:] {
		if w := l.Program.Weeks[0]; w.Step != l.Next || len(l.Program.Forecasts) > 0 {
			t.Errorf("level %d, %s: trains the %s", l.Number, l.Next, w.Step)
		}
	}
}

func BenchmarkPractice(b *testing.B) {
	studio, _ := demo()
	a := program.Assessment{Measured: program.NewDate(2027, 1, 4), Athlete: program.Athlete{Name: "X", Born: program.NewDate(1995, 1, 1), Mass: 60, Height: 1.66},
		Training: program.Training{Experience: 45, Days: []time.Weekday{1, 2, 4, 5, 6}, Minutes: 60},
		Goal:     program.Goal{Skill: "free-handstand", Step: "long-stand", Hold: 30, By: program.NewDate(2027, 12, 1)},
		Kit:      []string{"wall", "box"}, Tests: []program.Hold{reached("short-stand", 12, 4)}}
	for b.Loop() {
		planner.Plan(&studio.Library, &a)
	}
}

// A girl of fifteen whose wrists are sore practises nothing on her hands; the block ends with a
// clean hollow hold, as long as it came to.
func TestWithoutHandsBalanceTestsTheTrunk(t *testing.T) {
	lib, a := balancing(t, program.Hold{Step: "wall-line", Seconds: 18})
	a.Athlete.Born, a.Health.Wrists, a.Health.Guardian = program.NewDate(2011, 8, 1), program.JointSore, "B. X"
	a.Kit, a.Training.Days = []string{"wall"}, []time.Weekday{3}
	p, _ := planner.Plan(lib, &a)
	last := p.Weeks[11].Sessions
	i := slices.IndexFunc(last[0].Items, func(i program.Prescription) bool { return i.Role == program.RoleTest })
	if len(last) != 1 || i < 0 || last[0].Items[i].Exercise != "hollow-hold" || !last[0].Items[i].Check || last[0].Items[i].Hold < 25 {
		t.Errorf("%+v", last)
	}
}
