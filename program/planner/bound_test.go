package planner

import (
	"math"
	"slices"
	"testing"
	"time"

	"gatepost/program"
	"gatepost/program/ladder"
)

// Four leans of fifteen seconds, that were printed at .49 of the maximum, which weighs
// nothing, and are at .51 by today's estimate: the same four leans ask no more than
// themselves, a fifth would.
func TestSetsAreWeighedByOneEstimate(t *testing.T) {
	p := capableOf(t, 20, nil)
	lean := program.Prescription{Exercise: "planche-lean", Role: program.RoleMain, Sets: 4, Hold: 15, Ahead: 0.14, StraightArm: true, MaxHold: 75, Load: 0.51}
	then := lean
	then.Load = 0.49
	for _, sets := range []int{4, 5} {
		lean.Sets = sets
		got := p.boundTo(p.armWorkOf([]program.Prescription{then}, 0), []group{{"role.main", []program.Prescription{lean}}}, 0)
		if len(got) != 1 || len(got[0].items) != 1 || got[0].items[0].Sets != 4 {
			t.Errorf("of %d leans, four of them printed: %+v", sets, got)
		}
	}
}

// Tries of a lean are weighed by today's estimate as well, whatever their plan printed: at 8
// and 12 cm they weigh nothing for who holds a tuck for twenty seconds, at 30 and 34 they do.
func TestTriesAreWeighedByOneEstimate(t *testing.T) {
	p := capableOf(t, 20, nil)
	lean := program.Prescription{Exercise: "planche-lean", Role: program.RoleSecond, Sets: 2, Hold: 15, Ahead: 0.10, StraightArm: true}
	lean.Find.For = 15
	for _, c := range []struct {
		marks [2]float64 // m
		then  float64    // the load that was printed
		want  bool
	}{{[2]float64{0.08, 0.12}, 0.6, false}, {[2]float64{0.30, 0.34}, 0.4, true}} {
		lean.Find.Marks = []program.Mark{{At: c.marks[0], Load: c.then}, {At: c.marks[1], Load: c.then}}
		if got := p.weighs(&lean, 0); got != c.want {
			t.Errorf("tries at %v m weigh: %v", c.marks, got)
		}
	}
}

// Whoever trains on Tuesday and Wednesday has straight-arm work on one of them. Where the
// plan without some bad news has it on Wednesday, this one does too; on Tuesday, which
// that plan rests on, all of it would be taken away.
func TestDaysFollowTheOtherPlan(t *testing.T) {
	a := maren(t)
	a.Training.Days, a.Training.Away = []time.Weekday{time.Tuesday, time.Wednesday}, nil
	p := retraced(library(t), &a)
	w := &p.weeks[0]
	tuesday, wednesday := w.start+1, w.start+2
	if !slices.Equal(w.straight, []program.Date{tuesday}) {
		t.Fatalf("straight-arm days %v", w.straight)
	}
	lean := program.Prescription{Exercise: "planche-lean", Role: program.RoleMain, Sets: 3, Hold: 15, Ahead: 0.14, StraightArm: true, MaxHold: 25, Load: 0.7}
	other := program.Week{Start: w.start, Kind: program.WeekBuild, Sessions: []program.Session{{Date: tuesday}, {Date: wednesday, Items: []program.Prescription{lean}}}}
	p.gentlerThan = []otherPlan{{weeks: []program.Week{other}}}
	if p.alike(); !slices.Equal(w.straight, []program.Date{wednesday}) || w.fresh != wednesday {
		t.Errorf("straight-arm days %v, the freshest %s", w.straight, w.fresh)
	}
}

// Held to a plan of longer holds at an easier step, on the wall since before some weeks off:
// the same number of sets weighs more there, and still the week rises by a tenth or one
// main set at the most.
func TestOtherWorkIsHeldToTheSeconds(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away, a.Training.Experience, a.Training.Since = nil, 40, 0
	a.Tests = []program.Hold{{Step: "tuck", Seconds: 14}}
	hung, _ := Plan(lib, &a)
	a.Tests = []program.Hold{{Step: "tuck", Seconds: 16}}
	out, m, _ := begin(lib, &a)
	p, _ := firstPlan(m, out.Start)
	p.gentlerThan = []otherPlan{{weeks: hung.Weeks, wall: true}}
	p.fill(&out, nil)
	for _, fault := range checkVolume(lib, &a, &out) {
		t.Error(fault)
	}
}

// Beside a check hold to its end, two longer sets of the same lean are no more; beside
// sets of fifteen seconds alone they are.
func TestAHoldToItsEndIsTheLongest(t *testing.T) {
	a := maren(t)
	p := retraced(library(t), &a)
	lean := program.Prescription{Exercise: "planche-lean", Role: program.RoleMain, Sets: 3, Hold: 15, Ahead: 0.02}
	check := lean
	check.Role, check.Hold, check.Check = program.RoleTest, 0, true
	second := lean
	second.Role, second.Hold = program.RoleSecond, 16
	if got := p.longestOf(&second, []program.Prescription{lean}); got != 15 {
		t.Errorf("beside 15 s: %d s at the most", got)
	}
	if got := p.longestOf(&second, []program.Prescription{check, lean}); got != 0 {
		t.Errorf("beside a hold to its end: %d s at the most", got)
	}
}

// Sore elbows whose lean has come to four fifths of the maximum, since the sets went badly,
// are not kept at it: what a band leaves at three quarters is easier. At half it stays.
func TestSoreElbowsLeaveALeanTooHeavy(t *testing.T) {
	p := capableOf(t, 20, func(a *program.Assessment) { a.Health.Elbows = program.JointSore })
	banded := p.loads[1].main
	if banded.step() != "half-open-tuck" || banded.share > 0.75 {
		t.Fatalf("week 2 holds %q at %.2f", banded.step(), banded.share)
	}
	for share, want := range map[float64]string{0.80: "half-open-tuck", 0.50: ""} {
		lean := p.leanAt(p.floorRung(program.RungLean), p.leans[0], 1)
		for i := 1; lean.share < share; i++ {
			lean = p.leanAt(lean.floor, p.leans[i], 1)
		}
		p.loads[0].main, p.loads[1].main = lean, banded
		if p.stayEased(1, 0); p.loads[1].main.step() != want {
			t.Errorf("after a lean at %.2f: %q at %.2f", lean.share, p.loads[1].main.step(), p.loads[1].main.share)
		}
	}
}

// A deload after weeks of holds, by whoever may not carry the body on the hands since: its
// lighter work goes as the main work does.
func TestADeloadWithoutHandsHasNoHolds(t *testing.T) {
	a := maren(t)
	a.Training.Away = nil
	p := retraced(library(t), &a)
	i := slices.IndexFunc(p.weeks, func(w week) bool { return w.kind == program.WeekDeload })
	v := volume{limits: p.limits}
	if l := p.dosed(i, i-1, &v); l.second.none() {
		t.Fatal("the deload has no lighter work to lose")
	}
	p.main[i] = work{}
	if l := p.dosed(i, i-1, &v); !l.second.none() || total(l.sets) > 0 {
		t.Errorf("%d sets, of %s", total(l.sets), l.second.exercise())
	}
}

// Fifty-nine newtons on the toes help less than sixty-four, so that test is heavier,
// although the tries of the tuck beside it are heavier than both.
func TestATestIsHeldToItsOwnKind(t *testing.T) {
	a := maren(t)
	a.Kit = append(slices.Clone(a.Kit), scaleKit)
	p := retraced(library(t), &a)
	toes := program.Prescription{Exercise: "tuck-on-scale", Step: "tuck", Role: program.RoleTest, StraightArm: true, Max: true, Sets: 1, Scale: 63.7}
	try := program.Prescription{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleTest, StraightArm: true, Max: true, Try: true, Sets: 3}
	heavier := toes
	heavier.Scale = 58.8
	than := []program.Prescription{toes, try}
	if !p.heavierTest(&heavier, than, 0) || p.heavierTest(&toes, than, 0) || p.heavierTest(&try, than, 0) {
		t.Error("six kilograms on the toes, six and a half before: not heavier")
	}
}

// Kilograms on the toes help as a band does: beside a tuck with 3 kg of band that lasts
// 12 s, one with 2.5 kg on the toes that lasts 17 asks no more, one that lasts 10 does.
func TestAScaleIsHelpToo(t *testing.T) {
	p := capableOf(t, 20, nil)
	tuck := &p.body.Steps[0]
	banded := work{rung: tuck, aid: ladder.Aid{Help: 300}, max: 120, hold: 8}
	for max, want := range map[int]bool{170: false, 100: true} {
		if got := (work{rung: tuck, aid: ladder.Aid{Scale: 25}, max: max, hold: 10}).asksMoreThan(banded); got != want {
			t.Errorf("on a scale for %d tenths: asks more %t", max, got)
		}
	}
}

// A printed tuck that would last a second less than was reckoned holds the new plan where
// it trains; 15 s of 30 do not.
func TestWorkThatIsTooEasyHoldsNothing(t *testing.T) {
	for seconds, want := range map[float64]bool{20: true, 30: false} {
		p := capableOf(t, seconds, nil)
		printed := p.at(&p.body.Steps[0], p.body.Steps[0].Free(), 0)
		printed.max += 10
		if got := p.fallen(&printed, 0); got != want {
			t.Errorf("%d s of %g: holds the plan %t", printed.hold, seconds, got)
		}
	}
}

// Every set of the half-open tuck broke at 3 s: the tuck is trained, for ten seconds or
// more. Sets that broke at 6 s are made of six.
func TestAStepThatBrokeAtOnceGoesBack(t *testing.T) {
	p := capableOf(t, 40, nil)
	open := &p.body.Steps[1]
	for longest, want := range map[float64]string{3: "tuck", 6: open.ID} {
		w := p.at(open, open.Free(), 0)
		p.past.short = []tooLong{{exercise: open.Exercise, step: open.ID, rig: ladder.RigName(w.aid.Rig), longest: longest}}
		p.asReached(&w, 0)
		if w.step() != want || want == "tuck" && (w.hold < 10 || w.aid.Help > 0) || want != "tuck" && w.hold != 6 {
			t.Errorf("broken at %g s: %s for %d s with %d", longest, w.step(), w.hold, w.aid.Help)
		}
	}
}

// Every set with five kilograms on the toes broke at a second: seven are left on them, as
// marks lie two apart, for ten seconds or more. Sets that broke at 6 s are made of six.
func TestToesThatBrokeAtOnceCarryMore(t *testing.T) {
	p := capableOf(t, 8, nil)
	p.athlete.Kit = append(slices.Clone(p.athlete.Kit), scaleKit)
	for longest, want := range map[float64]float64{1: 7, 6: 5} {
		w := p.onScale(0, ladder.Newtons(5))
		p.past.short = []tooLong{{exercise: w.exercise(), step: "tuck", rig: ladder.RigName(w.aid.Rig), scale: w.aid.Scale, longest: longest}}
		p.asReached(&w, 0)
		if math.Abs(w.aid.Scale-ladder.Newtons(want)) > 0.01 || want == 7 && w.hold < 10 || want == 5 && w.hold != 6 {
			t.Errorf("broken at %g s: %.1f N on the toes for %d s", longest, w.aid.Scale, w.hold)
		}
	}
}

// A free tuck that broke at 3 s has no step below: work is on the floor, and no hold of four
// seconds.
func TestAFirstStepThatBrokeAtOnceGoesToTheFloor(t *testing.T) {
	p := capableOf(t, 20, nil)
	tuck := &p.body.Steps[0]
	w := p.at(tuck, tuck.Free(), 0)
	p.past.short = []tooLong{{exercise: tuck.Exercise, step: "tuck", rig: ladder.RigName(w.aid.Rig), longest: 3}}
	if p.asReached(&w, 0); w.exercise() != "planche-lean" || w.hold < 10 {
		t.Errorf("%s for %d s", w.exercise(), w.hold)
	}
}

// A step that another plan does not do yet gives way to that plan's; its six seconds are short
// sets here as well, so that the week says why (a client with an old injury of the wrist had
// two repetitions of a lift, and no word).
func TestShortSetsOfAnotherPlanAreShortHere(t *testing.T) {
	p := capableOf(t, 20, nil)
	for i, want := range map[int]bool{6: true, 10: false} {
		tuck, open := &p.body.Steps[0], &p.body.Steps[1]
		l, than := load{main: p.at(open, open.Free(), 0)}, load{main: p.at(tuck, tuck.Free(), 0)}
		than.main.hold = i
		if p.boundWork(0, &l, &than); l.main.step() != "tuck" || l.main.hold != i || l.main.short != want {
			t.Errorf("%s for %d s, short %t, wanted %d s", l.main.step(), l.main.hold, l.main.short, i)
		}
	}
}

// The free tuck is what a third plan asks at the most; one on the wall with a band that is
// predicted to last shorter, as its own sets broke, does not take its place.
func TestAThirdPlanIsNotPassed(t *testing.T) {
	p := capableOf(t, 20, nil)
	tuck := &p.body.Steps[0]
	l := load{main: p.at(tuck, tuck.Free(), 0)}
	banded := l
	banded.main.aid.Help, banded.main.aid.Load = 101, 1.02*tuck.Load
	p.least = [][]work{{l.main}}
	if p.boundWork(0, &l, &banded); l.main.aid.Help != 0 {
		t.Errorf("held to %d tenths of a newton of help that last %d", l.main.aid.Help, l.main.max)
	}
}

// A lean that was gone into twice of five times is taken as five, not as five seconds; a
// hold of six seconds of ten as ten.
func TestBadSetsAreTakenAsPrinted(t *testing.T) {
	for _, c := range []struct{ done, want program.SetDone }{
		{program.SetDone{Number: 1, Reps: 2, RPE: 10}, program.SetDone{Number: 1, Reps: 5}},
		{program.SetDone{Number: 1, Seconds: 6, RPE: 10}, program.SetDone{Number: 1, Seconds: 10}},
	} {
		sets := []program.SetDone{c.done}
		spareSet(sets, &setRead{SetRead: program.SetRead{Done: c.done, Printed: c.want.Reps + int(c.want.Seconds)}})
		if sets[0] != c.want {
			t.Errorf("%+v is taken as %+v", c.done, sets[0])
		}
	}
}

// A tuck that is held 8.0 s free is the heavy work. Where another plan has it with 7.3 N of
// help in that week, lasting 7.5 s there, a free one would have less: it is the next step
// with 26.9 N, for 7.6 s. Where that one would last 15 s there is nothing heavy.
func TestHeavyWorkHasNoLessHelp(t *testing.T) {
	p := capableOf(t, 8, nil)
	tuck := &p.body.Steps[0]
	main, helped := p.at(tuck, tuck.Aids()[4], 0), work{rung: tuck, aid: tuck.Aids()[1]}
	for _, c := range []struct {
		there     int
		step      string
		help, max int
	}{{0, "tuck", 0, 80}, {75, "half-open-tuck", 269, 76}, {150, "", 0, 0}} {
		if helped.max = c.there; c.there > 0 {
			p.leastHeavy = [][]work{{helped}}
		}
		if got := p.heavyWork(main, 0); got.step() != c.step || got.aid.Help != c.help || got.max != c.max {
			t.Errorf("there %d tenths: %s with %d for %d tenths, wanted %s with %d for %d", c.there, got.step(), got.aid.Help, got.max, c.step, c.help, c.max)
		}
	}
}

// Elbows that hurt 7 in a session are left out in thought, and taken as at 4 as well, which
// leaves them work: who was at 4 that day already may not be asked more at 7. Elbows at 4
// are left out alone.
func TestPainIsTakenAsMilderToo(t *testing.T) {
	lib, a := library(t), maren(t)
	p, _ := Plan(lib, &a)
	day := p.Weeks[0].Sessions[2].Date
	for pain, want := range map[int][]int{4: {-1}, 7: {-1, 4}} {
		a.Log.Entries = []program.Entry{painful(day, pain)}
		_, m, _ := begin(lib, &a)
		r := newReading(m, []program.PlanVersion{Version(&p, 1, a.Measured)}, day)
		_, eased := r.painFlags()
		var got []int
		var ahead plan
		ahead.athlete, ahead.past.rest = &eased, r.restAfter()
		for _, n := range r.withoutOne(&ahead) {
			if n.quiet[0].date == day {
				without := n.leaveOut(r.athlete, r.wall)
				got = append(got, without.Log.Entries[0].Sets[0].Pain.Elbows)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("elbows at %d: taken as %v, wanted %v", pain, got, want)
		}
	}
}

// Where another plan has leans of 6 cm alone on a day, a tuck is too heavy for it: the card
// has lighter work, and says that the main work is left out.
func TestADayWithoutItsMainWorkSaysSo(t *testing.T) {
	p := capableOf(t, 20, nil)
	date := p.weeks[0].straight[0]
	there := program.Session{Date: date, Items: []program.Prescription{{Exercise: "planche-lean", Role: program.RoleSecond, Sets: 3, Hold: 15, Ahead: 0.06, StraightArm: true}}}
	for _, bound := range []bool{false, true} {
		p.bounds = bounds{}
		if bound {
			p.bounds.days = []*program.Week{{Start: p.weeks[0].start, Kind: program.WeekBuild, Sessions: []program.Session{there}}}
		}
		s := p.session(p.day(0, date, 0, false))
		main := slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Role == program.RoleMain })
		if main == bound || hasNote(s.Dropped, noteLightDay) != bound {
			t.Errorf("held to leans: %t; main work: %t, dropped %v", bound, main, s.Dropped)
		}
	}
}

// One plan has nothing for straight arms on a day, another tests the tuck there: the card tests
// nothing, whichever of the two is asked first. Held to the second alone it does.
func TestATestThatAnotherPlanLacksIsNone(t *testing.T) {
	p := capableOf(t, 20, nil)
	last := len(p.weeks) - 1
	date := p.weeks[last].straight[len(p.weeks[last].straight)-1]
	on := func(items ...program.Prescription) *program.Week {
		return &program.Week{Start: p.weeks[last].start, Sessions: []program.Session{{Date: date, Items: items}}}
	}
	none := on()
	test := on(program.Prescription{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleTest, Sets: 1, MaxHold: 20, Max: true, StraightArm: true})
	heavy := []group{{"role.main", []program.Prescription{{Exercise: "straddle-hold", Step: "straddle", Role: program.RoleMain, Sets: 3, Hold: 10, StraightArm: true}}}}
	for _, c := range []struct {
		days []*program.Week
		want bool
	}{{[]*program.Week{test}, true}, {[]*program.Week{none, test}, false}, {[]*program.Week{test, none}, false}} {
		p.bounds.days = c.days
		d := day{date: date, kind: program.WeekTest, straight: true, week: last, test: true, load: &load{main: p.at(&p.body.Steps[0], p.body.Steps[0].Aids()[0], last)}}
		if got := tests(p.bound(d, heavy)); got != c.want {
			t.Errorf("held to %d plans: a test %t", len(c.days), got)
		}
	}
}

// Work that may be no heavier than a hold of thirty seconds is of the same step with the least help
// that lasts so long, or of the step below: a minute and a half are beyond every band on the harder one.
func TestNoHeavierThanAnotherPlansHold(t *testing.T) {
	p := capableOf(t, 20, nil)
	tuck, next := &p.body.Steps[0], &p.body.Steps[1]
	for _, c := range []struct {
		max  int // tenths of a second
		step string
	}{{300, next.ID}, {900, tuck.ID}} {
		w := p.noHeavier(p.at(next, next.Aids()[0], 0), c.max, 0)
		if w.step() != c.step || w.max < c.max {
			t.Errorf("%d tenths: %s for %d", c.max, w.step(), w.max)
		}
		for _, aid := range w.rung.Aids() {
			if at := p.at(w.rung, aid, 0); aid.Help < w.aid.Help && at.max >= c.max && at.hold > 0 {
				t.Errorf("%d tenths: %d is less help than %d, and lasts %d", c.max, aid.Help, w.aid.Help, at.max)
			}
		}
	}
}
