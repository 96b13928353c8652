package planner

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"gatepost/program"
	"gatepost/program/steady"
)

// wishing draws clients of a skill with one to six wishes of any kind, some of them of the
// studio, as intake would let them through: names are of the library, bands and steps the
// client's. Whatever else they ask for is theirs to ask.
func wishing(lib *program.Library, drawn *rapid.Generator[program.Assessment]) *rapid.Generator[program.Assessment] {
	return rapid.Custom(func(t *rapid.T) program.Assessment {
		a := drawn.Draw(t, "who")
		for n := range rapid.IntRange(1, 6).Draw(t, "wishes") {
			w := wishDrawn(t, lib, &a)
			w.Place.Line = n + 1
			a.Wishes = append(a.Wishes, w)
		}
		slices.SortStableFunc(a.Wishes, func(x, y program.Wish) int { // the studio's come first
			if x.Studio == y.Studio {
				return 0
			} else if x.Studio {
				return -1
			}
			return 1
		})
		for _, w := range a.Wishes {
			setRule(&a.Rules, &w)
		}
		return a
	})
}

// setRule puts a wish where intake puts it.
func setRule(r *program.Rules, w *program.Wish) {
	switch w.Rule {
	case ruleDeload:
		r.DeloadEvery = w.Number
	case ruleEffort:
		r.Effort = float64(w.Number) / 100
	case ruleTestRest:
		r.TestRest = w.Number
	case ruleCeiling:
		r.Ceiling = w.Number
	case ruleRise:
		r.Rise = w.Number
	case ruleHeavyAfter:
		r.HeavyAfter = w.Number
	case "arm_days":
		r.ArmDays = w.Number
	case "older":
		r.Older = w.Number
	}
}

func anExercise(t *rapid.T, lib *program.Library) string {
	return lib.Exercises[rapid.IntRange(0, len(lib.Exercises)-1).Draw(t, "exercise")].ID
}

func wishDrawn(t *rapid.T, lib *program.Library, a *program.Assessment) program.Wish {
	w := program.Wish{AllKit: true, Exercise: anExercise(t, lib), Studio: rapid.IntRange(0, 3).Draw(t, "studio") == 0}
	w.Kind = rapid.SampledFrom([]program.WishKind{program.WishAvoid, program.WishPrefer, program.WishInstead, program.WishSet, program.WishSet,
		program.WishAdd, program.WishSay, program.WishAt, program.WishRule}).Draw(t, "kind")
	from := a.Measured + program.Date(rapid.IntRange(-20, 100).Draw(t, "from"))
	to := from + program.Date(rapid.IntRange(0, 20).Draw(t, "days"))
	dates := func() { w.From, w.To = from, to }
	e, _ := lib.Exercise(w.Exercise)
	switch w.Kind {
	case program.WishPrefer:
		w.Purpose = rapid.SampledFrom(e.Trains).Draw(t, "purpose")
		if w.Purpose == program.ForStep || w.Purpose == program.ForLean {
			w.Kind, w.Purpose = program.WishAvoid, ""
		}
	case program.WishInstead:
		w.From, w.To, w.Use = from, from, anExercise(t, lib)
		w.Exercise = rapid.SampledFrom([]string{w.Exercise, "scapular-push-up", "hollow-hold", "prone-raises", "pseudo-planche-push-up", "floor-elbow-drive"}).Draw(t, "what")
	case program.WishSet:
		w.Studio, w.Exercise = false, ""
		setDrawn(t, lib, a, &w)
	case program.WishAdd:
		w.Days = daysDrawn(t)
		w.Sets = rapid.IntRange(0, 6).Draw(t, "sets")
		if rapid.Bool().Draw(t, "dated") {
			dates()
		}
	case program.WishSay:
		w.Exercise, w.Text = "", "Words."
		dates()
	case program.WishAt:
		w.Exercise = ""
		dates()
		if w.AllKit = rapid.Bool().Draw(t, "all kit"); !w.AllKit {
			w.Kit = subsetOf(t, append([]string{bandsKit, "wall", "towel"}, a.Kit...), "kit there")
		}
		w.Minutes = rapid.SampledFrom([]int{0, 20, 30, 90}).Draw(t, "minutes there")
		if rapid.Bool().Draw(t, "other days") {
			w.Days = daysDrawn(t)
		}
	case program.WishRule:
		w.Exercise = ""
		ruleDrawn(t, &w)
	}
	return w
}

func daysDrawn(t *rapid.T) []time.Weekday {
	var days []time.Weekday
	for _, d := range subsetOf(t, []int{1, 2, 3, 4, 5, 6, 0}, "weekdays") {
		days = append(days, time.Weekday(d))
	}
	if len(days) == 0 {
		days = []time.Weekday{time.Weekday(rapid.IntRange(0, 6).Draw(t, "weekday"))}
	}
	return days
}

func setDrawn(t *rapid.T, lib *program.Library, a *program.Assessment, w *program.Wish) {
	road, _ := lib.RoadMap(a.Goal.Skill)
	w.Week = rapid.IntRange(1, 16).Draw(t, "week")
	w.Sets = rapid.IntRange(0, 10).Draw(t, "sets")
	if road.Load.Repeats() {
		w.Reps = rapid.IntRange(0, 12).Draw(t, "reps")
		w.Hold = program.SecondsPerRep * w.Reps
	} else {
		w.Hold = rapid.SampledFrom([]int{0, 3, 5, 10, 15, 30, 60}).Draw(t, "hold")
	}
	if rapid.IntRange(0, 2).Draw(t, "step too") == 0 {
		w.Step = rapid.SampledFrom(road.Steps).Draw(t, "step").ID
	}
	switch {
	case rapid.Bool().Draw(t, "rig as planned"):
	case road.Load == program.LoadPress:
		w.Rig = &program.Rig{Pad: rapid.SampledFrom(append([]float64{0, 0.05}, a.Hanging.Pads...)).Draw(t, "pad"), Drop: program.AnyDrop}
	case road.Load == program.LoadLift:
		w.Rig = &program.Rig{Block: rapid.SampledFrom(append([]float64{0, 0.05}, a.Hanging.Blocks...)).Draw(t, "block"), Drop: program.AnyDrop}
	case road.Load == program.LoadBalance:
	default:
		w.Rig = &program.Rig{Drop: rapid.SampledFrom([]float64{program.AnyDrop, program.AnyDrop, 0, 0.2}).Draw(t, "drop")}
		for _, b := range subsetOf(t, a.Bands, "bands") {
			if len(w.Rig.Bands) < 2 {
				w.Rig.Bands = append(w.Rig.Bands, b.Name)
			}
		}
	}
	if road.Load == program.LoadHold && rapid.IntRange(0, 5).Draw(t, "lean") == 0 {
		w.Ahead, w.Step, w.Rig = float64(rapid.IntRange(1, 20).Draw(t, "ahead"))/50, "", nil
	}
}

func ruleDrawn(t *rapid.T, w *program.Wish) {
	between := func(least, most int) { w.Number = rapid.IntRange(least, most).Draw(t, "number") }
	switch w.Rule = rapid.SampledFrom([]string{ruleMinutes, ruleMainSets, ruleDeload, ruleEffort, ruleTestRest, ruleCeiling, ruleRise, ruleHeavyAfter, "arm_days", "older"}).Draw(t, "rule"); w.Rule {
	case ruleDeload:
		between(2, 6)
	case ruleEffort:
		between(60, 72)
	case ruleTestRest:
		between(2, 4)
	case ruleCeiling:
		between(50, 100)
	case ruleRise:
		between(5, 10)
	case ruleHeavyAfter:
		between(26, 104)
	case "arm_days":
		between(1, 3)
	case "older":
		between(40, 45)
	case ruleMinutes:
		w.Days, w.Number = daysDrawn(t)[:1], rapid.SampledFrom([]int{20, 45, 90}).Draw(t, "minutes")
	case ruleMainSets:
		w.Number = rapid.IntRange(1, 5).Draw(t, "most")
	}
}

// checkWished: no wish is lost. Each is there with its state, and whatever is not done says
// why. What is said to be done is to be seen on the cards still to come.
func checkWished(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	v.want(len(p.Wishes) == len(a.Wishes), "%d wishes, %d answers", len(a.Wishes), len(p.Wishes))
	for i := range p.Wishes {
		r := &p.Wishes[i]
		v.want(r.Place == a.Wishes[i].Place, "wish %d is another one", i)
		v.want(r.State == program.WishDone || len(r.Why) > 0, "%s: %s without a reason", r.Kind, r.State)
		v.want(slices.Contains([]program.WishState{program.WishDone, program.WishPart, program.WishRefused, program.WishOver}, r.State), "%s: state %q", r.Kind, r.State)
		if r.State == program.WishDone {
			v = append(v, seenDone(lib, p, r)...)
		}
	}
	return v
}

// seenDone looks for a wish on the cards.
func seenDone(lib *program.Library, p *program.Program, r *program.WishRead) (v verdict) {
	found := 0
	for _, w := range ahead(p) {
		if r.Kind == program.WishSet && w.Start == p.Start+program.Date(7*(r.Week-1)) {
			found++
			v.want(w.ByCoach, "week %d is not marked", r.Week)
			v.want(r.Hold == 0 || w.Hold == r.Hold, "week %d: %d s, set to %d", r.Week, w.Hold, r.Hold)
			v.want(r.Sets == 0 || w.Sets == r.Sets && w.SetsLeast == r.Sets, "week %d: %d to %d sets, set to %d", r.Week, w.SetsLeast, w.Sets, r.Sets)
			v.want(r.Step == "" || w.Step == r.Step, "week %d: %s, set to %s", r.Week, w.Step, r.Step)
		}
		for _, s := range w.Sessions {
			has := func(id string) bool {
				return slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Exercise == id })
			}
			byCoach := func(id string) bool {
				return slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Exercise == id && i.ByCoach })
			}
			switch r.Kind {
			case program.WishAvoid:
				found++
				v.want(!has(r.Exercise) || byCoach(r.Exercise), "%s: %s is avoided", s.Date, r.Exercise)
			case program.WishPrefer:
				if has(r.Exercise) {
					found++
				}
			case program.WishInstead:
				if s.Date == r.From {
					found++
					v.want(byCoach(r.Use), "%s: no %s", s.Date, r.Use)
				}
			case program.WishAdd:
				if r.Has(s.Date) {
					found++
					v.want(byCoach(r.Exercise), "%s: %s is not added", s.Date, r.Exercise)
				}
			case program.WishSay:
				if r.Within(s.Date) {
					found++
					v.want(slices.Contains(s.Say, r.Text), "%s: nothing is said", s.Date)
				}
			case program.WishAt:
				if placeOn(program.Wishes{r.Wish}, s.Date) != nil {
					found++
				}
			default:
				found++
			}
		}
	}
	v.want(found > 0 || len(ahead(p)) == 0 || p.From != 0, "%s is said to be done, and is nowhere", r.Kind)
	return v
}

// checkWishedDays: sessions lie on the client's days, or on those of the place where the
// client is then, never on days away, and fit the minutes of the day.
func checkWishedDays(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	for _, w := range ahead(p) {
		for _, s := range w.Sessions {
			days, minutes, kit, all := a.Training.Days, minutesAt(a, s.Date, 0), []string(nil), true
			for _, wish := range a.Wishes { // what is asked for the client comes last, and counts
				if wish.Kind == program.WishAt && wish.From <= s.Date && s.Date <= wish.To {
					kit, all = wish.Kit, wish.AllKit
					days, minutes = a.Training.Days, minutesAt(a, s.Date, wish.Minutes)
					if len(wish.Days) > 0 {
						days = wish.Days
					}
				}
			}
			v.want(slices.Contains(days, s.Date.Weekday()), "%s is no training day", s.Date)
			v.want(!away(a, s.Date), "%s is away", s.Date)
			v.want(s.Minutes <= minutes, "%s takes %d of %d min", s.Date, s.Minutes, minutes)
			for _, it := range s.Items {
				e, _ := lib.Exercise(it.Exercise)
				for _, oneOf := range e.Kit {
					v.want(all || slices.ContainsFunc(oneOf, func(k string) bool { return slices.Contains(kit, k) }), "%s: %s needs %v, and there is %v", s.Date, it.Exercise, oneOf, kit)
				}
				v.want(all || len(it.Rig.Bands) == 0 || slices.Contains(kit, "bands"), "%s: bands are at home", s.Date)
			}
		}
	}
	return v
}

// minutesAt are the minutes of a place, or else of the weekday.
func minutesAt(a *program.Assessment, d program.Date, there int) int {
	if there > 0 {
		return there
	}
	minutes := a.Training.Minutes
	for _, wish := range a.Wishes {
		if wish.Kind == program.WishRule && wish.Rule == ruleMinutes && slices.Contains(wish.Days, d.Weekday()) {
			minutes = wish.Number
		}
	}
	return minutes
}

// Whatever a coach asks for, of whatever client in whatever skill: the rules of health hold,
// sessions lie where the client is and fit the minutes, no wish is lost, and the same wishes
// give the same plan.
func TestWishesAndHealth(t *testing.T) {
	lib := library(t)
	states := map[string]int{}
	for _, skill := range append(everySkill(lib), skillDrawn{id: "free-handstand", clients: balancers(lib)}) {
		t.Run(skill.id, func(t *testing.T) {
			all := wishing(lib, skill.clients)
			rapid.Check(t, func(t *rapid.T) {
				a := all.Draw(t, "client")
				p, problems := Plan(lib, &a)
				if problems.Stop() {
					t.Skip("a body that fits nothing")
				}
				for _, r := range p.Wishes {
					states[fmt.Sprint(r.Kind, " ", r.State)]++
				}
				if len(p.Withheld) > 0 {
					for _, fault := range checkWished(lib, &a, &p) {
						t.Error(fault)
					}
					return
				}
				for _, check := range []func(*program.Library, *program.Assessment, *program.Program) verdict{checkHealth, checkWishedDays, checkWished, checkEntry} {
					for _, fault := range check(lib, &a, &p) {
						t.Error(fault)
					}
				}
				if again, _ := Plan(lib, &a); fmt.Sprint(again) != fmt.Sprint(p) {
					t.Error("another plan the second time")
				}
			})
		})
	}
	for _, kind := range []program.WishKind{program.WishAvoid, program.WishPrefer, program.WishInstead, program.WishSet, program.WishAdd, program.WishSay, program.WishAt, program.WishRule} {
		if steady.Ordinary() && states[fmt.Sprint(kind, " ", program.WishDone)] == 0 {
			t.Errorf("%s was never done: %v", kind, states)
		}
	}
}

// balancers draws clients of the free handstand, of any tries.
func balancers(lib *program.Library) *rapid.Generator[program.Assessment] {
	road, _ := lib.RoadMap("free-handstand")
	return rapid.Custom(func(t *rapid.T) program.Assessment {
		a := clients.Draw(t, "somebody")
		last := road.Steps[len(road.Steps)-1]
		a.Goal.Skill, a.Goal.Step, a.Goal.Hold = road.ID, last.ID, float64(last.Gate.Hold)
		a.Kit = append(a.Kit, "wall")
		a.Tests, a.Training.Best = entryShown(t, road), nil
		for range rapid.IntRange(0, 2).Draw(t, "steps tested") {
			of := rapid.IntRange(1, 20).Draw(t, "tries")
			a.Tests = append(a.Tests, program.Hold{Step: rapid.SampledFrom(road.Steps).Draw(t, "step").ID, Seconds: float64(rapid.IntRange(0, 60).Draw(t, "best")), Tries: program.Tries{Reached: rapid.IntRange(0, of).Draw(t, "reached"), Of: of}})
		}
		return a
	})
}

// With the same wishes on both sides bad news makes no plan harder, in whatever skill and
// whatever life came before; the weeks planned anew keep the rules of health, and no wish is
// lost.
func TestWishesAndBadNews(t *testing.T) {
	lib := library(t)
	for _, skill := range everySkill(lib) {
		t.Run(skill.id, func(t *testing.T) {
			skill.clients = wishing(lib, skill.clients)
			all := skill.lives(lib)
			if skill.id == "planche" {
				all = livesOf(lib, skill.clients)
			}
			steady.Fewer(t, 10)
			tried := 0
			rapid.Check(t, func(t *rapid.T) {
				if wishesAskNoMore(t, lib, all.Draw(t, "life")) {
					tried++
				}
			})
			if steady.Ordinary() && tried < 3 {
				t.Errorf("tried %d times", tried)
			}
		})
	}
}

// wishesAskNoMore brings bad news over a life with wishes, and reports whether there was a
// plan to hold to the one without it.
func wishesAskNoMore(t *rapid.T, lib *program.Library, l life) bool {
	k := badNews[rapid.IntRange(0, len(badNews)-1).Draw(t, "news")]
	m := l
	if !k.do(t, &l, &m) {
		t.Skip("not this one")
	}
	p := Replan(lib, &l.a, l.wall, l.on)
	q, by := m.planned(lib)
	if len(p.Withheld)+len(q.Withheld) > 0 || len(q.Weeks) == 0 || len(by.look.low) == 0 {
		return false
	}
	for _, more := range harder(by, &p, &q) {
		t.Errorf("%s: %s", k.name, more)
	}
	eased := *by.athlete
	for _, check := range []func(*program.Library, *program.Assessment, *program.Program) verdict{checkHealth, checkWishedDays, checkWished} {
		for _, fault := range check(lib, &eased, &q) {
			t.Error(fault)
		}
	}
	return true
}
