package planner

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"gatepost/program"
)

// limitsOf are the limits of a client in a block that starts on the day of the tests.
func limitsOf(t *testing.T, bend ...func(*program.Assessment)) limits {
	a := clientOf(t, bend...)
	return newLimits(&a, a.Measured)
}

// spell is a present spell of so many weeks on the day of the tests.
func spell(weeks int) func(*program.Assessment) {
	return func(a *program.Assessment) {
		a.Training.Experience, a.Training.Since = float64(weeks), a.Measured-program.Date(7*weeks)
	}
}

func soreShoulders(a *program.Assessment) { a.Health.Shoulders = program.JointSore }

func injured(bend func(*program.Assessment)) func(*program.Assessment) {
	return func(a *program.Assessment) {
		bend(a)
		for _, j := range []*program.Joint{&a.Health.Wrists, &a.Health.Elbows, &a.Health.Shoulders} {
			if *j == program.JointSore {
				*j = program.JointInjured
			}
		}
		a.Health.ClearedBy = program.Clearance{Name: "A. Name", On: a.Measured}
	}
}

// The rules by age and by joint, in literal numbers (our judgement; the younger and
// the older of common practice). Effort is the share of the predicted hold, rest the
// days before the test, days the straight-arm days a week after three years.
func TestLimits(t *testing.T) {
	type rules struct {
		effort                            float64
		rest, days                        int
		neutral, maxTests, ahead, elbowed bool
	}
	usual := rules{0.70, 2, 4, false, true, true, false}
	young := rules{0.60, 2, 3, true, false, false, false}
	older := rules{0.70, 3, 4, false, true, true, false}
	wrists := rules{0.60, 2, 4, true, false, false, false}
	elbows := rules{0.60, 2, 4, false, false, false, true}
	shoulders := rules{0.60, 2, 4, false, false, false, false}
	for name, c := range map[string]struct {
		bend []func(*program.Assessment)
		want rules
	}{
		"30":                 {nil, usual},
		"15, the day before": {[]func(*program.Assessment){aged(16), dayBefore}, young},
		"16":                 {[]func(*program.Assessment){aged(16)}, usual},
		"17":                 {[]func(*program.Assessment){aged(17)}, usual},
		"44, the day before": {[]func(*program.Assessment){aged(45), dayBefore}, usual},
		"45":                 {[]func(*program.Assessment){aged(45)}, older},
		"46":                 {[]func(*program.Assessment){aged(46)}, older},
		"sore wrists":        {[]func(*program.Assessment){soreWrists}, wrists},
		"sore elbows":        {[]func(*program.Assessment){soreElbows}, elbows},
		"sore shoulders":     {[]func(*program.Assessment){soreShoulders}, shoulders},
		"injured wrists":     {[]func(*program.Assessment){injured(soreWrists)}, wrists},
		"injured elbows":     {[]func(*program.Assessment){injured(soreElbows)}, elbows},
		"injured shoulders":  {[]func(*program.Assessment){injured(soreShoulders)}, shoulders},
	} {
		l := limitsOf(t, append([]func(*program.Assessment){spell(156)}, c.bend...)...)
		got := rules{l.effortIn(5), l.testRest, l.straightDays, l.neutralOnly, l.maxTests, l.heavy, l.elbowSore}
		if got != c.want {
			t.Errorf("%s: %+v, want %+v", name, got, c.want)
		}
	}
}

// Heavy work comes after 26 weeks of the present spell, the fourth day after 104, and
// gentle effort ends with the third week after a lay-off, whose first two hold less. Until the
// thirteenth week deloads come every third week.
func TestLimitsBySpell(t *testing.T) {
	for weeks, want := range map[int]struct {
		ahead bool
		days  int
	}{25: {false, 3}, 26: {true, 3}, 103: {true, 3}, 104: {true, 4}} {
		if l := limitsOf(t, spell(weeks)); l.heavy != want.ahead || l.straightDays != want.days {
			t.Errorf("%d weeks: heavy work %v, %d days", weeks, l.heavy, l.straightDays)
		}
	}
	l := limitsOf(t, back(0))
	for week, want := range []float64{0.60, 0.60, 0.60, 0.70, 0.70} {
		if got := l.effortIn(week); got != want {
			t.Errorf("week %d back: effort %.2f, want %.2f", week+1, got, want)
		}
	}
	for weeks, want := range map[int]struct{ deload, easy int }{0: {3, 2}, 1: {3, 1}, 2: {3, 0}, 12: {3, 0}, 13: {4, 0}} {
		if l := limitsOf(t, back(weeks)); l.deloadEvery != want.deload || l.easyWeeks != want.easy {
			t.Errorf("back for %d weeks: a deload every %d, %d easy weeks", weeks, l.deloadEvery, l.easyWeeks)
		}
	}
	if l := limitsOf(t, back(2)); l.effortIn(0) != 0.60 || l.effortIn(1) != 0.70 {
		t.Error("the third week back is gentle, the fourth is not")
	}
}

// A plan for a seventeen-year-old wants a guardian, from the eighteenth birthday on not.
func TestOfAge(t *testing.T) {
	for name, c := range map[string]struct {
		bend     []func(*program.Assessment)
		withheld bool
	}{
		"17": {[]func(*program.Assessment){aged(18), dayBefore}, true},
		"18": {[]func(*program.Assessment){aged(18)}, false},
	} {
		a := clientOf(t, c.bend...)
		a.Health.Guardian = ""
		if p, _ := Plan(library(t), &a); (len(p.Withheld) > 0) != c.withheld {
			t.Errorf("%s: withheld %v", name, p.Withheld)
		}
	}
}

// Counted straight-arm seconds a week, start and ceiling, by weeks of the present
// spell; and what shrinks them, of several the two smallest (our judgement).
func TestWeeklySeconds(t *testing.T) {
	for weeks, want := range map[int][2]int{
		0: {90, 180}, 12: {90, 180}, 13: {130, 220}, 25: {130, 220}, 26: {170, 300}, 51: {170, 300},
		52: {210, 360}, 103: {210, 360}, 104: {260, 450}, 207: {260, 450}, 208: {300, 540}, 1000: {300, 540},
	} {
		l := limitsOf(t, spell(weeks))
		if got := [2]int{l.startVolume(false) / 2, l.ceiling(0, false) / 2}; got != want {
			t.Errorf("%d weeks: %v s, want %v", weeks, got, want)
		}
	}
	if l := limitsOf(t, spell(10)); l.ceiling(2, false) != 2*180 || l.ceiling(3, false) != 2*220 {
		t.Error("the ceiling rises as the spell goes on")
	}
	for name, c := range map[string]struct {
		bend  []func(*program.Assessment)
		after bool // four weeks off
		want  int  // of 100 s
	}{
		"nothing":                       {nil, false, 100},
		"sore elbows":                   {[]func(*program.Assessment){soreElbows}, false, 50},
		"sore wrists":                   {[]func(*program.Assessment){soreWrists}, false, 50},
		"sore shoulders":                {[]func(*program.Assessment){soreShoulders}, false, 100},
		"both sore":                     {[]func(*program.Assessment){soreElbows, soreWrists}, false, 50},
		"fifteen":                       {[]func(*program.Assessment){aged(15)}, false, 75},
		"sixteen":                       {[]func(*program.Assessment){aged(16)}, false, 100},
		"44":                            {[]func(*program.Assessment){aged(44)}, false, 100},
		"45":                            {[]func(*program.Assessment){aged(45)}, false, 80},
		"off":                           {nil, true, 60},
		"fifteen and sore":              {[]func(*program.Assessment){aged(15), soreWrists}, false, 37}, // 37.5
		"45 and sore":                   {[]func(*program.Assessment){aged(45), soreWrists}, false, 40},
		"45 and off":                    {[]func(*program.Assessment){aged(45)}, true, 48},
		"45, sore and off: two of them": {[]func(*program.Assessment){aged(45), soreElbows}, true, 30},
	} {
		l := limitsOf(t, append([]func(*program.Assessment){spell(400)}, c.bend...)...)
		if got := l.startVolume(c.after) / 6; got != c.want {
			t.Errorf("%s: %d of 100 s, want %d", name, got, c.want)
		}
	}
}

// No straight arms for 48 hours before the test, 72 from 45 years on.
func TestRestBeforeTheTest(t *testing.T) {
	for age, want := range map[int]program.Date{44: 2, 45: 3, 60: 3} {
		p := programOf(t, clientOf(t, aged(age), on(mon, tue, wed, thu, fri)))
		var last, test program.Date
		for i, s := range p.Weeks[11].Sessions {
			test = s.Date
			arms := func(i program.Prescription) bool { return i.StraightArm && i.Role != program.RolePrepare }
			if i < 4 && slices.ContainsFunc(s.Items, arms) {
				last = s.Date
			}
		}
		if test-last < want {
			t.Errorf("%d years: straight arms %d days before the test", age, test-last)
		}
	}
}

// Two kilograms more on the toes are two kilograms less to hold: each takes 9.81 N
// times its distance behind the shoulder off the load, wherever a scale is read.
func TestToesOnAScaleTakeLoadAway(t *testing.T) {
	a := clientOf(t, func(a *program.Assessment) { a.Kit = append(slices.Clone(a.Kit), "bathroom scale") })
	p := retraced(library(t), &a)
	tuck := &p.body.Steps[0]
	reach := tuck.FreeHold.Joints.Shoulder.X - tuck.FreeHold.Joints.Toes[0].X
	if reach < 0.3 || reach > 0.8 { // of a trunk of half a metre, legs folded
		t.Fatalf("the toes are %.2f m behind the shoulders", reach)
	}
	const tenKilograms = 98.0665 // N
	want := tuck.FreeHold.Torque - tenKilograms*reach
	if want < 0.2*tuck.FreeHold.Torque || want > 0.9*tuck.FreeHold.Torque {
		t.Fatalf("%.1f of %.1f N·m are left", want, tuck.FreeHold.Torque)
	}
	tested, _ := p.body.Observe(&program.Hold{Step: "tuck", Seconds: 10, Scale: tenKilograms})
	set := setRead{SetRead: program.SetRead{Step: "tuck", Scale: tenKilograms}, item: &program.Prescription{Step: "tuck", Scale: tenKilograms}}
	done := observationOf(&p.measures, &set)
	printed := p.workOf(set.item).aid.Load
	var tried float64
	for _, w := range p.helped(tuck) {
		if math.Abs(w.aid.Scale-tenKilograms) < 1e-9 {
			tried = w.aid.Load
		}
	}
	for name, got := range map[string]float64{"tested": tested.Load, "done": done, "printed": printed, "tried": tried} {
		if math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %.2f N·m, want %.2f", name, got, want)
		}
	}
}

// observationOf is the load of a set as the log's reading has it.
func observationOf(m *measures, s *setRead) float64 {
	s.Done.Seconds, s.Done.Clean = 10, program.CleanYes
	state, _ := m.assess(m.athlete.Tests)
	o, _ := newEstimate(m, state).observation(s)
	return o.Load
}

// Elbows of readers are unknown: who would have trained a year to a level is taken to have
// trained for twenty weeks, who would have for twelve for those.
func TestSpellOfReaders(t *testing.T) {
	p := capableOf(t, 20, nil)
	tuck := &p.body.Steps[0]
	for weeks, want := range map[float64]program.Date{52: 140, 12: 84} {
		a := startedAbove(tuck, program.Assessment{Measured: monday}, map[string]float64{tuck.ID: weeks})
		if got := monday - a.Training.Since; got != want || a.Training.Experience != weeks {
			t.Errorf("%.0f weeks: trained for %d days", weeks, got)
		}
	}
}

// Who starts at a level is planned as holding the step before three seconds longer
// than is asked: 12 s of a tuck whose gate is 10 s stand for 15, 14 s of one of 12 s for 17;
// of what is repeated two more than the gate's repetitions, at three seconds each.
func TestLevelReserve(t *testing.T) {
	studio, _ := repo()
	asked := map[string]int{"planche": 12, "front-lever": 14, "handstand-push-up": 36, "press-to-handstand": 15}
	for i := range studio.Public {
		from := &studio.Public[i]
		starts, _ := startsOf(library(t), from)
		at := slices.IndexFunc(starts, func(s start) bool { return s.level.Step != "" })
		if at < 0 || from.Goal.Skill == "free-handstand" { // tries are shown by their number, with nothing to spare
			continue
		}
		l, r := starts[at].level, starts[at].reader
		first := map[string]string{"handstand-push-up": "pike", "press-to-handstand": "block-40"}[from.Goal.Skill]
		if l.Step != cmp.Or(first, "tuck") || l.Hold != asked[from.Goal.Skill] || r.Tests[len(r.Tests)-1].Seconds != float64(l.Hold+3) {
			t.Errorf("%s: %s for %d s is planned as %+v", from.ID, l.Step, l.Hold, r.Tests)
		}
		if l.RPE != 8 {
			t.Errorf("%s: a level is shown at RPE %g", from.ID, l.RPE)
		}
	}
}

// Whoever hangs begins with the entry, and is taken to show half of it; then come tries of
// the tuck once a build week, before it can be held. Our judgement.
func TestLevelsBeginWithTheEntry(t *testing.T) {
	studio, _ := repo()
	i := slices.IndexFunc(studio.Public, func(p program.PublicProgram) bool { return p.Goal.Skill == "front-lever" })
	if i < 0 {
		t.Fatal("no public program hangs")
	}
	starts, _ := startsOf(library(t), &studio.Public[i])
	levels, _ := Levels(library(t), &studio.Public[i])
	entry, tuck := &levels[0], &levels[1]
	if len(entry.Entry) != 3 || entry.Next != "" || tuck.Step != "" || tuck.Next != "tuck" || len(tuck.Entry) != 0 {
		t.Errorf("begins with %+v, then %+v", entry.Entry, tuck.Next)
	}
	if half := starts[0].reader.Tests; half[0].Seconds != 15 || half[1].Reps != 5 || half[2].Reps != 4 {
		t.Errorf("of 30 s, 10 and 8 half is %+v", half)
	}
	for _, w := range tuck.Program.Weeks {
		tries := 0
		for _, it := range items(&w) {
			if it.Try && it.Step == "tuck" {
				tries += it.Sets
			}
		}
		if w.Kind == program.WeekBuild && tries != 3 {
			t.Errorf("week %d has %d tries of the tuck", w.Number, tries)
		}
	}
	for _, w := range entry.Program.Weeks {
		for _, it := range items(&w) {
			if it.Step != "" {
				t.Errorf("week %d of the entry holds the %s", w.Number, it.Step)
			}
		}
	}
}

// Five minutes of preparation, then four sets of 10 s with 150 s between them and a
// minute to set up: 300 + 60 + 4·10 + 3·150 = 850 s; in sessions of twenty minutes a
// minute less.
func TestTimeOfASession(t *testing.T) {
	for minutes, want := range map[int]int{60: 850, 25: 850, 21: 850, 20: 790} {
		items := []program.Prescription{{Role: program.RolePrepare, Sets: 2, Reps: 10}, {Role: program.RoleMain, Sets: 4, Hold: 10, Rest: 150}, {Role: program.RolePull, Sets: 2, Reps: 10, InRests: true}}
		if got := lengthIn(minutes, items); got != want {
			t.Errorf("%d minutes: %d s, want %d", minutes, got, want)
		}
	}
}

// What a studio sets otherwise holds, and where age, joints or a lay-off ask for something
// more careful that; ten per cent over 200 half seconds are 220, five 210, and half of a
// ceiling of 540 s is 270.
func TestRulesThatAStudioSets(t *testing.T) {
	type want struct {
		deload  int
		effort  float64 // of a later week, and the most of it
		most    float64
		days    int
		heavy   bool
		rest    int
		next    int
		ceiling int // s
	}
	usual := want{4, 0.70, 0.75, 4, true, 2, 220, 540}
	bend := func(change func(*want)) want {
		w := usual
		change(&w)
		return w
	}
	for name, c := range map[string]struct {
		rules program.Rules
		bend  func(*program.Assessment)
		want  want
	}{
		"nothing":                 {program.Rules{}, nil, usual},
		"a deload every fifth":    {program.Rules{DeloadEvery: 5}, nil, bend(func(w *want) { w.deload = 5 })},
		"every fifth, at 45":      {program.Rules{DeloadEvery: 5}, aged(45), bend(func(w *want) { w.deload, w.rest, w.ceiling = 3, 3, 432 })},
		"every second, at 45":     {program.Rules{DeloadEvery: 2}, aged(45), bend(func(w *want) { w.deload, w.rest, w.ceiling = 2, 3, 432 })},
		"effort of .65":           {program.Rules{Effort: 0.65}, nil, bend(func(w *want) { w.effort, w.most = 0.65, 0.70 })},
		"effort of .65, shoulder": {program.Rules{Effort: 0.65}, soreShoulders, bend(func(w *want) { w.deload, w.effort, w.most, w.heavy = 3, 0.60, 0.60, false })},
		"two days":                {program.Rules{ArmDays: 2}, nil, bend(func(w *want) { w.days = 2 })},
		"four days, too early":    {program.Rules{ArmDays: 4}, spell(103), bend(func(w *want) { w.days, w.ceiling = 3, 360 })},
		"heavy after a year":      {program.Rules{HeavyAfter: 52}, spell(51), bend(func(w *want) { w.days, w.heavy, w.ceiling = 3, false, 300 })},
		"heavy after a year, is":  {program.Rules{HeavyAfter: 52}, spell(52), bend(func(w *want) { w.days, w.ceiling = 3, 360 })},
		"four days' rest":         {program.Rules{TestRest: 4}, aged(45), bend(func(w *want) { w.deload, w.rest, w.ceiling = 3, 4, 432 })},
		"two days' rest, at 45":   {program.Rules{TestRest: 2}, aged(45), bend(func(w *want) { w.deload, w.rest, w.ceiling = 3, 3, 432 })},
		"five per cent":           {program.Rules{Rise: 5}, nil, bend(func(w *want) { w.next = 210 })},
		"half of the seconds":     {program.Rules{Ceiling: 50}, nil, bend(func(w *want) { w.ceiling = 270 })},
		"older from 40":           {program.Rules{Older: 40}, aged(40), bend(func(w *want) { w.deload, w.rest, w.ceiling = 3, 3, 432 })},
	} {
		if c.bend == nil {
			c.bend = func(*program.Assessment) {}
		}
		l := limitsOf(t, spell(400), c.bend, func(a *program.Assessment) { a.Rules = c.rules })
		v := volume{limits: l}
		v.add(weekDone{program.WeekBuild, 200, 200, false})
		got := want{l.deloadEvery, l.effortIn(5), math.Round(100*l.mostEffortIn(5)) / 100, l.straightDays, l.heavy, l.testRest, v.next(1, work{hold: 4, share: 0.65}), l.ceiling(0, false) / 2}
		if got != c.want {
			t.Errorf("%s: %+v, want %+v", name, got, c.want)
		}
	}
}
