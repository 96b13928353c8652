package planner

import (
	"slices"
	"testing"
	"time"

	"gatepost/program"
)

// What a coach expects of each key of their file, in literal numbers: the demo client Maren,
// three days a week from 4 January 2027, her week away at the gate.

// asked is her plan with some wishes, and without them.
func asked(t *testing.T, bend func(*program.Assessment), wishes ...program.Wish) (with, without program.Program) {
	t.Helper()
	a := maren(t)
	a.Wishes = nil
	if bend != nil {
		bend(&a)
	}
	without, problems := Plan(library(t), &a)
	if problems.Stop() {
		t.Fatal(problems)
	}
	for i := range wishes {
		if wishes[i].Kind == program.WishAt {
			wishes[i].AllKit = wishes[i].Kit == nil
		}
	}
	a.Wishes = wishes
	for i := range wishes {
		setRule(&a.Rules, &wishes[i])
	}
	with, _ = Plan(library(t), &a)
	if len(with.Wishes) != len(wishes) {
		t.Fatalf("%d wishes, %d answers", len(wishes), len(with.Wishes))
	}
	return with, without
}

// is reports a wish that came out otherwise than it was to; why are the codes of its reasons.
func is(t *testing.T, r program.WishRead, state program.WishState, why ...string) {
	t.Helper()
	if got := codes(r.Why); r.State != state || !slices.Equal(got, why) {
		t.Errorf("%s %s%s: %s %v, want %s %v", r.Kind, r.Exercise, r.Rule, r.State, got, state, why)
	}
}

func january(day int) program.Date { return program.NewDate(2027, 1, day) }

func youth(a *program.Assessment) {
	a.Athlete.Born, a.Health.Guardian = program.NewDate(2011, 6, 1), "A. Parent"
}

// mainsOf are the main work of all weeks, as a client reads it.
func mainsOf(p *program.Program) (all []program.Week) {
	for _, w := range p.Weeks {
		all = append(all, program.Week{Step: w.Step, Rig: w.Rig, Hold: w.Hold, Sets: w.Sets, Kind: w.Kind, Gate: w.Gate})
	}
	return all
}

func sameMain(x, y program.Week) bool {
	return x.Step == y.Step && x.Hold == y.Hold && x.Sets == y.Sets && x.Kind == y.Kind && slices.Equal(x.Rig.Bands, y.Rig.Bands) && x.Rig.Drop == y.Rig.Drop
}

// Pull-ups are never taken; what else pulls takes their place, and the main work stays.
func TestAvoided(t *testing.T) {
	with, without := asked(t, nil, program.Wish{Kind: program.WishAvoid, Exercise: "pull-up"}, program.Wish{Kind: program.WishAvoid, Exercise: "hollow-hold"})
	had := false
	for i := range with.Weeks {
		had = had || holdsExercise(&without.Weeks[i], "pull-up") && holdsExercise(&without.Weeks[i], "hollow-hold")
		if holdsExercise(&with.Weeks[i], "pull-up") || holdsExercise(&with.Weeks[i], "hollow-hold") {
			t.Errorf("week %d has what is avoided", i+1)
		}
	}
	if !had || !slices.EqualFunc(mainsOf(&with), mainsOf(&without), sameMain) {
		t.Error("the main work changed, or nothing was there to avoid")
	}
	is(t, with.Wishes[0], program.WishDone)
	is(t, with.Wishes[1], program.WishDone)
}

// A step that is avoided is passed over: the block never trains it. The one that the goal
// is shown in cannot be, nor the last exercise that prepares the elbows.
func TestWhatCannotBeAvoided(t *testing.T) {
	avoid := func(id string) program.Wish { return program.Wish{Kind: program.WishAvoid, Exercise: id} }
	with, without := asked(t, nil, avoid("half-open-tuck-hold"), avoid("straddle-hold"), avoid("light-band-curl"), avoid("forearm-turns"))
	weeksOn := func(p program.Program) (weeks int) {
		for _, w := range p.Weeks {
			if w.Step == "half-open-tuck" {
				weeks++
			}
		}
		return weeks
	}
	if weeksOn(without) == 0 || weeksOn(with) > 0 {
		t.Errorf("%d weeks on the half-open tuck, %d without the wish", weeksOn(with), weeksOn(without))
	}
	is(t, with.Wishes[0], program.WishDone)
	is(t, with.Wishes[1], program.WishRefused, noteWishGoal)
	is(t, with.Wishes[2], program.WishDone)
	is(t, with.Wishes[3], program.WishRefused, noteWishPrepare)
}

// Hollow rocks wherever the trunk is trained, in every week and marked, and never their
// harder version; ring rows need rings; nobody else's hang is anything she does.
func TestPreferred(t *testing.T) {
	with, _ := asked(t, nil, program.Wish{Kind: program.WishPrefer, Purpose: program.ForTrunk, Exercise: "hollow-rock"},
		program.Wish{Kind: program.WishPrefer, Purpose: program.ForRow, Exercise: "ring-row"},
		program.Wish{Kind: program.WishPrefer, Purpose: program.ForHang, Exercise: "still-hang"})
	for _, w := range with.Weeks {
		for _, it := range items(&w) {
			if e, _ := library(t).Exercise(it.Exercise); e.Trains[0] == program.ForTrunk && (it.Exercise != "hollow-rock" || !it.ByCoach) {
				t.Errorf("week %d: %s for the trunk, marked %v", w.Number, it.Exercise, it.ByCoach)
			}
		}
	}
	is(t, with.Wishes[0], program.WishDone)
	is(t, with.Wishes[1], program.WishRefused, noteWishKit)
	is(t, with.Wishes[2], program.WishOver, noteWishUnused)
}

// On Monday 18 January push-ups of the shoulder blades stand in the place of the pseudo
// planche push-ups, as many sets of their own ten; on a day without the one there is
// nothing to do. Nobody trains on a Tuesday, and a test stays a test.
func TestInstead(t *testing.T) {
	instead := func(date program.Date, what, use string) program.Wish {
		return program.Wish{Kind: program.WishInstead, From: date, To: date, Exercise: what, Use: use}
	}
	with, without := asked(t, nil, instead(january(18), "pseudo-planche-push-up", "scapular-push-up"), instead(january(20), "pseudo-planche-push-up", "scapular-push-up"),
		instead(january(19), "pull-up", "band-row"), instead(program.NewDate(2027, 3, 26), "half-open-tuck-hold", "hollow-hold"), instead(january(18), "hollow-hold", "tuck-hold"))
	was, now := itemOf(sessionOn(&without.Weeks[2], january(18)), "pseudo-planche-push-up"), sessionOn(&with.Weeks[2], january(18))
	i := slices.IndexFunc(now.Items, func(it program.Prescription) bool { return it.ByCoach })
	if was == nil || i < 0 || itemOf(now, "pseudo-planche-push-up") != nil {
		t.Fatalf("%+v\n%+v", was, now)
	}
	if it := now.Items[i]; it.Exercise != "scapular-push-up" || it.Sets != was.Sets || it.Reps != 10 || it.Role != program.RoleStrength {
		t.Errorf("%+v", it)
	}
	is(t, with.Wishes[0], program.WishDone)
	is(t, with.Wishes[1], program.WishOver, noteWishNotThere)
	is(t, with.Wishes[2], program.WishOver, noteWishNoSession)
	is(t, with.Wishes[3], program.WishRefused, noteWishTest)
	if r := with.Wishes[4]; r.State == program.WishDone {
		t.Error("a step took the place of a drill")
	}
}

// The third week is four sets of ten seconds in the narrow band, on each main day, marked
// and without a check hold; the weeks before and after stay what they were.
func TestSetByHand(t *testing.T) {
	with, without := asked(t, nil, program.Wish{Kind: program.WishSet, Week: 3, Hold: 10, Sets: 4, Rig: &program.Rig{Bands: []string{"narrow"}, Drop: program.AnyDrop}})
	w := with.Weeks[2]
	if w.Hold != 10 || w.Sets != 4 || w.SetsLeast != 4 || !slices.Equal(w.Rig.Bands, []string{"narrow"}) || !w.ByCoach {
		t.Errorf("%+v", w)
	}
	for _, it := range items(&w) {
		if isMain(&it) && (!it.ByCoach || it.Check || it.Hold != 10) {
			t.Errorf("%+v", it)
		}
	}
	for i := range with.Weeks {
		if i != 2 && (with.Weeks[i].ByCoach || i < 2 && !sameMain(with.Weeks[i], without.Weeks[i])) {
			t.Errorf("week %d changed: %+v", i+1, with.Weeks[i])
		}
	}
	is(t, with.Wishes[0], program.WishDone)
}

// What breaks a rule of training is done, and the rule is named: six sets of fifteen
// seconds, free, are more than the week may count and over three quarters of the hold that
// is predicted. Week 7 is away, and the block has twelve.
func TestRulesThatAreBroken(t *testing.T) {
	set := func(week, sets, hold int) program.Wish {
		return program.Wish{Kind: program.WishSet, Week: week, Sets: sets, Hold: hold, Rig: &program.Rig{Drop: program.AnyDrop}}
	}
	with, _ := asked(t, nil, set(3, 6, 15), set(7, 3, 10), set(13, 3, 10), program.Wish{Kind: program.WishSet, Week: 4, Sets: 5})
	if w := with.Weeks[2]; w.Hold != 15 || w.Sets != 6 || w.Help != 0 {
		t.Errorf("%+v", w)
	}
	is(t, with.Wishes[0], program.WishDone, noteWishEffort, noteWishSeconds)
	is(t, with.Wishes[1], program.WishOver, noteWishAway)
	is(t, with.Wishes[2], program.WishOver, noteWishBeyond)
	is(t, with.Wishes[3], program.WishDone, noteWishEasyWeek, noteWishMoreHelp)
}

// A gate is shown in another week than the one that is set by hand.
func TestASetWeekShowsNoGate(t *testing.T) {
	_, without := asked(t, nil, program.Wish{Kind: program.WishSay, From: january(4), To: january(4), Text: "x"})
	gate := slices.IndexFunc(without.Weeks, func(w program.Week) bool { return w.Gate }) + 1
	with, _ := asked(t, nil, program.Wish{Kind: program.WishSet, Week: gate, Sets: 2})
	if gate == 0 || with.Weeks[gate-1].Gate || with.Weeks[gate-1].Sets != 2 {
		t.Errorf("week %d: %+v", gate, with.Weeks[gate-1])
	}
}

// Two sets of thirty seconds at the wall on Fridays, one in easy weeks, and no line beside
// them; on Tuesdays nobody trains. With sets that no session has room for, or of a step,
// nothing is added.
func TestAdded(t *testing.T) {
	add := func(day time.Weekday, id string, sets, hold int) program.Wish {
		return program.Wish{Kind: program.WishAdd, Days: []time.Weekday{day}, Exercise: id, Sets: sets, Hold: hold}
	}
	with, _ := asked(t, nil, add(time.Friday, "wall-handstand-line", 2, 30), add(time.Tuesday, "hollow-hold", 2, 30), add(time.Monday, "seated-straddle-lean", 10, 300), add(time.Monday, "tuck-hold", 1, 10))
	for _, w := range with.Weeks {
		for _, s := range w.Sessions {
			want := map[program.WeekKind]int{program.WeekBuild: 2, program.WeekDeload: 1, program.WeekTest: 1}[w.Kind]
			if it := itemOf(&s, "wall-handstand-line"); s.Date.Weekday() == time.Friday && (it == nil || it.Sets != want || it.Hold != 30 || !it.ByCoach) {
				t.Errorf("%s: %+v", s.Date, it)
			}
			n := 0
			for _, it := range s.Items {
				if it.Exercise == "wall-handstand-line" {
					n++
				}
			}
			if n > 1 {
				t.Errorf("%s has it twice", s.Date)
			}
		}
	}
	is(t, with.Wishes[0], program.WishDone)
	is(t, with.Wishes[1], program.WishOver, noteWishNoSession)
	is(t, with.Wishes[2], program.WishPart, noteWishNoTime) // in easy weeks, with half of the sets
	is(t, with.Wishes[3], program.WishRefused, noteWishMain)
}

// The coach's words stand on the three cards of their days and on no other.
func TestSaid(t *testing.T) {
	with, _ := asked(t, nil, program.Wish{Kind: program.WishSay, From: january(11), To: january(17), Text: "Film the side view on Friday."},
		program.Wish{Kind: program.WishSay, From: program.NewDate(2027, 2, 16), To: program.NewDate(2027, 2, 17), Text: "Away."})
	said := 0
	for _, w := range with.Weeks {
		for _, s := range w.Sessions {
			if said += len(s.Say); len(s.Say) > 0 != (s.Date >= january(11) && s.Date <= january(17)) {
				t.Errorf("%s: %v", s.Date, s.Say)
			}
		}
	}
	if said != 3 {
		t.Errorf("said %d times", said)
	}
	is(t, with.Wishes[0], program.WishDone)
	is(t, with.Wishes[1], program.WishOver, noteWishNoSession)
}

// A week of travel with a wall: its sessions on Tuesday and Thursday last thirty minutes and
// need nothing but a wall, main work is free; the week after is in bands again.
func TestAnotherPlace(t *testing.T) {
	from := january(18)
	with, without := asked(t, nil, program.Wish{Kind: program.WishAt, From: from, To: from + 6, Kit: []string{"wall"}, Minutes: 30, Days: []time.Weekday{time.Tuesday, time.Thursday}})
	w := with.Weeks[2]
	if len(w.Sessions) != 2 || w.Sessions[0].Date != from+1 || w.Sessions[1].Date != from+3 {
		t.Fatalf("%+v", w.Sessions)
	}
	for _, s := range w.Sessions {
		if s.Minutes > 30 {
			t.Errorf("%s takes %d min", s.Date, s.Minutes)
		}
		for _, it := range s.Items {
			e, _ := library(t).Exercise(it.Exercise)
			for _, oneOf := range e.Kit {
				if !slices.Contains(oneOf, "wall") {
					t.Errorf("%s: %s needs %v", s.Date, it.Exercise, oneOf)
				}
			}
			if !it.Rig.Free() {
				t.Errorf("%s: %s in %v", s.Date, it.Exercise, it.Rig.Bands)
			}
		}
	}
	if !w.Rig.Free() || w.Hold == 0 || !w.ByCoach || w.HalfSeconds > without.Weeks[2].HalfSeconds {
		t.Errorf("%+v", w)
	}
	if !sameMain(with.Weeks[3], without.Weeks[3]) && with.Weeks[3].Kind != program.WeekDeload {
		t.Errorf("the week after: %+v, was %+v", with.Weeks[3], without.Weeks[3])
	}
	if next := with.Weeks[4]; next.Rig.Free() && !without.Weeks[4].Rig.Free() || len(next.Sessions) != 3 {
		t.Errorf("two weeks after: %+v", next)
	}
	is(t, with.Wishes[0], program.WishDone)
}

// Mondays of forty-five minutes, and never more than three main sets a day but for a gate;
// nobody trains on a Saturday.
func TestMinutesAndSets(t *testing.T) {
	rule := func(rule string, n int, days ...time.Weekday) program.Wish {
		return program.Wish{Kind: program.WishRule, Rule: rule, Number: n, Days: days}
	}
	short := func(a *program.Assessment) { a.Training.Minutes = 30 }
	with, without := asked(t, short, rule(ruleMinutes, 75, time.Monday), rule(ruleMainSets, 3), rule(ruleMinutes, 90, time.Saturday))
	longest := 0
	for i, w := range with.Weeks {
		if w.Sets > 3 && !w.Gate {
			t.Errorf("week %d: %d sets", w.Number, w.Sets)
		}
		for j, s := range w.Sessions {
			if s.Date.Weekday() == time.Monday {
				longest = max(longest, s.Minutes)
			} else if s.Minutes > 30 {
				t.Errorf("%s takes %d min", s.Date, s.Minutes)
			}
			if without.Weeks[i].Sessions[j].Minutes > 30 {
				t.Errorf("%s took %d min before", s.Date, without.Weeks[i].Sessions[j].Minutes)
			}
		}
	}
	if longest <= 30 || longest > 75 {
		t.Errorf("Mondays of %d min at the most", longest)
	}
	is(t, with.Wishes[0], program.WishDone)
	is(t, with.Wishes[1], program.WishDone)
	is(t, with.Wishes[2], program.WishOver, noteWishNoSession)
}

// A deload every fifth week, longer holds and two days of straight arms are done for who is
// well, the first two named; a sore shoulder keeps its deload every third week and its six
// tenths, and from forty-five on three days of rest before the test stay.
func TestRulesThatAreSet(t *testing.T) {
	rule := func(rule string, n int) program.Wish {
		return program.Wish{Kind: program.WishRule, Rule: rule, Number: n}
	}
	all := func() []program.Wish {
		return []program.Wish{rule(ruleDeload, 5), rule(ruleEffort, 72), rule("arm_days", 2), rule(ruleTestRest, 2)}
	}
	kinds := func(p program.Program) (all []program.WeekKind) {
		for _, w := range p.Weeks {
			all = append(all, w.Kind)
		}
		return all
	}
	well := func(a *program.Assessment) { a.Training.Away = nil }
	with, _ := asked(t, well, all()...)
	if k := kinds(with); k[3] != program.WeekBuild || k[4] != program.WeekDeload {
		t.Errorf("%v", k)
	}
	for _, w := range with.Weeks {
		days := 0
		for _, s := range w.Sessions {
			if slices.ContainsFunc(s.Items, isArmItem) {
				days++
			}
		}
		if days > 2 && w.Kind != program.WeekTest {
			t.Errorf("week %d: %d days of straight arms", w.Number, days)
		}
	}
	is(t, with.Wishes[0], program.WishDone, noteWishDeload)
	is(t, with.Wishes[1], program.WishDone, noteWishPlanned)
	is(t, with.Wishes[2], program.WishDone)
	is(t, with.Wishes[3], program.WishDone)
	with, without := asked(t, func(a *program.Assessment) { well(a); a.Health.Shoulders = program.JointSore }, all()...)
	if !slices.Equal(kinds(with), kinds(without)) || with.Weeks[0].Effort != 0.60 {
		t.Errorf("%v, effort %.2f", kinds(with), with.Weeks[0].Effort)
	}
	is(t, with.Wishes[0], program.WishRefused, noteWishDeloadKept)
	is(t, with.Wishes[1], program.WishRefused, noteWishEffortKept)
	with, _ = asked(t, func(a *program.Assessment) { well(a); a.Athlete.Born = program.NewDate(1977, 6, 1) }, all()...)
	is(t, with.Wishes[3], program.WishRefused, noteWishRestKept)
}

// What is asked for one client goes before what is asked for the studio.
func TestTheClientsOwnComesFirst(t *testing.T) {
	with, _ := asked(t, nil, program.Wish{Kind: program.WishAvoid, Exercise: "hollow-rock", Studio: true},
		program.Wish{Kind: program.WishPrefer, Purpose: program.ForStraddle, Exercise: "prone-straddle", Studio: true},
		program.Wish{Kind: program.WishRule, Rule: ruleMainSets, Number: 2, Studio: true},
		program.Wish{Kind: program.WishPrefer, Purpose: program.ForTrunk, Exercise: "hollow-rock"},
		program.Wish{Kind: program.WishPrefer, Purpose: program.ForStraddle, Exercise: "wall-straddle"},
		program.Wish{Kind: program.WishRule, Rule: ruleMainSets, Number: 4})
	for i := range 3 {
		is(t, with.Wishes[i], program.WishOver, noteWishOwn)
		is(t, with.Wishes[i+3], program.WishDone)
	}
}

// Health comes first. A fifteen-year-old with sore wrists gets no set over six tenths of the
// hold that is predicted nor more seconds than the joints bear, no hands flat at the wall, no
// push on the wrists and no straight arms on a further day; sore elbows keep their band and
// their step.
func TestHealthRefuses(t *testing.T) {
	tiny := func(a *program.Assessment) {
		youth(a)
		soreWrists(a)
		a.Training.Days = []time.Weekday{time.Monday, time.Tuesday, time.Thursday, time.Saturday}
	}
	set := program.Wish{Kind: program.WishSet, Week: 2, Sets: 6, Hold: 15}
	add := func(day time.Weekday, id string) program.Wish {
		return program.Wish{Kind: program.WishAdd, Days: []time.Weekday{day}, Exercise: id}
	}
	with, without := asked(t, tiny, set, add(time.Monday, "wall-handstand-line"), add(time.Monday, "push-up"), add(time.Tuesday, "wall-straight-arm-press"),
		program.Wish{Kind: program.WishPrefer, Purpose: program.ForHandstand, Exercise: "wall-handstand-line"})
	is(t, with.Wishes[0], program.WishRefused, noteWishGentle, noteWishBear)
	is(t, with.Wishes[1], program.WishRefused, noteWishWrists, "wish-joint")
	is(t, with.Wishes[2], program.WishRefused, noteWishJoint)
	is(t, with.Wishes[4], program.WishRefused, noteWishWrists)
	if r := with.Wishes[3]; r.State == program.WishDone {
		t.Errorf("straight arms on a further day: %s %v", r.State, r.Why)
	}
	if !sameMain(with.Weeks[1], without.Weeks[1]) || with.Weeks[1].ByCoach {
		t.Errorf("%+v", with.Weeks[1])
	}
	wide := program.Wish{Kind: program.WishSet, Week: 2, Sets: 1, Hold: 5, Rig: &program.Rig{Bands: []string{"wide"}, Drop: program.AnyDrop}}
	with, _ = asked(t, soreElbows, wide, program.Wish{Kind: program.WishPrefer, Purpose: program.ForStraightPull, Exercise: "band-straight-arm-pull"})
	is(t, with.Wishes[0], program.WishRefused, noteWishElbowLoad, noteWishElbowStep)
	is(t, with.Wishes[1], program.WishRefused, noteWishJoint)
}

// From forty-five years on an easy week stays easy and the arms rest before the test;
// at thirty both are done, and named.
func TestOlderKeepTheirRests(t *testing.T) {
	easy := program.Wish{Kind: program.WishSet, Week: 3, Sets: 5}
	near := program.Wish{Kind: program.WishAdd, Days: []time.Weekday{time.Wednesday}, Exercise: "wall-straight-arm-press", From: program.NewDate(2027, 3, 22), To: program.NewDate(2027, 3, 28)}
	older := func(a *program.Assessment) { a.Athlete.Born = program.NewDate(1977, 6, 1) }
	with, _ := asked(t, older, easy, near)
	if with.Weeks[2].Kind != program.WeekDeload {
		t.Fatal(with.Weeks[2].Kind)
	}
	is(t, with.Wishes[0], program.WishRefused, noteWishEasyKept)
	is(t, with.Wishes[1], program.WishRefused, noteWishRestKept)
	easy.Week, near.Days = 4, []time.Weekday{time.Wednesday}
	with, _ = asked(t, func(a *program.Assessment) {
		a.Training.Days = []time.Weekday{time.Monday, time.Wednesday, time.Thursday}
	}, easy, near)
	is(t, with.Wishes[0], program.WishDone, noteWishEasyWeek)
	is(t, with.Wishes[1], program.WishDone, noteWishTestRest)
}

// Sore elbows never pull with straight arms, whatever that takes the place of: not even a
// push-up of the shoulder blades, which loads elbows as well (common practice).
func TestSoreElbowsDoNotPullStraightInsteadOfAPush(t *testing.T) {
	with, _ := asked(t, soreElbows, program.Wish{Kind: program.WishInstead, From: january(18), To: january(18), Exercise: "scapular-push-up", Use: "floor-straight-arm-pull"})
	is(t, with.Wishes[0], program.WishRefused, noteWishJoint)
	if itemOf(sessionOn(&with.Weeks[2], january(18)), "floor-straight-arm-pull") != nil {
		t.Error("it is on the card all the same")
	}
}
