package planner

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
)

// triesOf lists a program's tries by week: the exercises, and the days they lie on.
func triesOf(t *testing.T, p *program.Program) (exercises []string, days []program.Date) {
	for _, w := range p.Weeks {
		for _, s := range w.Sessions {
			for _, it := range s.Items {
				if !it.Try {
					continue
				}
				exercises, days = append(exercises, it.Exercise), append(days, s.Date)
				if it.Role != program.RoleTest || it.Sets != 3 || it.Hold != 0 || it.Reps != 0 || !it.StraightArm || it.Max || it.Check {
					t.Errorf("week %d: %+v", w.Number, it)
				}
				if isMain(&it) || !isArm(&it) || counted(it) != 0 {
					t.Errorf("week %d: a try taken for main work, or counted", w.Number)
				}
				if w.Kind != program.WeekBuild && (w.Kind != program.WeekTest || s.Date != w.Sessions[len(w.Sessions)-1].Date) {
					t.Errorf("week %d, %s: a try on %s", w.Number, w.Kind, s.Date)
				}
			}
		}
	}
	return exercises, days
}

// A first-timer tries the first step in each build week and on the test's day, with
// light toes as long as it is out of reach and with both feet off the floor as soon as
// a few seconds are near (common practice); frog balance fills the way.
func TestFirstTimerTriesTheFirstStep(t *testing.T) {
	heavy := clientOf(t, untrained, on(tue, fri), func(a *program.Assessment) {
		a.Athlete.Sex, a.Athlete.Mass, a.Athlete.Height, a.Athlete.ArmSpan = program.SexMale, 94, 1.90, 0
		a.Kit = []string{"wall", "pull-up bar"}
	})
	p := programOf(t, heavy)
	tries, days := triesOf(t, &p)
	if kinds(&p) != "bbbbbdbbbbbt" || len(tries) != 11 {
		t.Fatalf("%s: tries %v", kinds(&p), tries)
	}
	if tries[0] != "toe-assisted-tuck" || tries[10] != "tuck-hold" {
		t.Errorf("tries %v", tries)
	}
	if last := p.Weeks[11].Sessions[1].Date; days[10] != last || days[9] > last-7 {
		t.Errorf("tries on %v", days)
	}
	if !slices.ContainsFunc(p.Weeks, func(w program.Week) bool {
		return slices.ContainsFunc(items(&w), func(i program.Prescription) bool { return i.Exercise == "frog-balance" })
	}) {
		t.Error("no frog balance in the block")
	}
	for _, w := range p.Weeks {
		for _, it := range items(&w) {
			if it.Try && it.Exercise == "toe-assisted-tuck" && (it.Step != "" || it.Help != 0) {
				t.Errorf("week %d: toes that nobody weighs count as %q", w.Number, it.Step)
			}
		}
	}
}

// The help of a try, by what there is: kilograms under the toes, a band, or the toes on
// the floor for who is under sixteen or sore; none for sore elbows or without a grip.
func TestHelpOfATry(t *testing.T) {
	first := func(c program.Assessment) *program.Prescription {
		p := programOf(t, c)
		triesOf(t, &p)
		for _, it := range items(&p.Weeks[0]) {
			if it.Try {
				return &it
			}
		}
		return nil
	}
	kit := func(kit ...string) func(*program.Assessment) {
		return func(a *program.Assessment) { a.Kit = kit }
	}
	if it := first(clientOf(t, untrained, kit("parallettes", "bathroom scale"))); it == nil || it.Exercise != "tuck-on-scale" || it.Step != "tuck" || it.Scale < 9.8 {
		t.Errorf("on a scale: %+v", it)
	}
	banded := programOf(t, clientOf(t, untrained, kit("parallettes"), func(a *program.Assessment) {
		a.Bands, a.Athlete.Mass, a.Athlete.Height, a.Athlete.ArmSpan = maren(t).Bands, 94, 1.90, 0
	}))
	triesOf(t, &banded)
	help := math.Inf(1)
	for _, w := range banded.Weeks[:7] { // later the tuck itself is the work
		for _, it := range items(&w) {
			if it.Try && (it.Exercise != "tuck-hold" || it.Help <= 0 || it.Help >= help) {
				t.Errorf("week %d: %+v after %.1f N", w.Number, it, help)
			}
			if it.Try {
				help = it.Help
			}
		}
	}
	if help > 20 {
		t.Errorf("two months on the try still has %.1f N", help)
	}
	for name, c := range map[string]program.Assessment{
		"nothing":             clientOf(t, untrained),
		"fifteen":             clientOf(t, untrained, aged(15), kit("parallettes", "bathroom scale")),
		"sore wrists, a grip": clientOf(t, untrained, soreWrists, kit("parallettes", "bathroom scale")),
	} {
		if it := first(c); it == nil || it.Exercise != "toe-assisted-tuck" {
			t.Errorf("%s: %+v", name, it)
		}
	}
	for name, c := range map[string]program.Assessment{
		"sore elbows":             clientOf(t, untrained, soreElbows, kit("parallettes", "bathroom scale")),
		"sore wrists and no grip": clientOf(t, untrained, soreWrists),
		"holds it already":        clientOf(t),
	} {
		p := programOf(t, c)
		if tries, _ := triesOf(t, &p); len(tries) > 0 {
			t.Errorf("%s: tries %v", name, tries)
		}
	}
}

// A week of tries is read as what it is: one tuck tried and not held moves nobody up,
// and the week's main work is still the lean.
func TestTriesAreRead(t *testing.T) {
	a := clientOf(t, untrained, on(tue, fri))
	p := programOf(t, a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	a.Log = asPrinted(&p, 0)
	before, _, _ := Read(library(t), &a, wall, p.Weeks[0].Start+6)
	a.Log.Entries = append(a.Log.Entries, program.Entry{Date: p.Weeks[0].Sessions[0].Date, Exercise: "tuck-hold", Step: "tuck", RigGiven: true,
		Sets: []program.SetDone{{Number: 1, Clean: program.CleanNo}}})
	after, q, _ := Read(library(t), &a, wall, p.Weeks[0].Start+6)
	if math.IsNaN(after.After.Held12) || after.After.Held12 > before.After.Held12+1e-9 {
		t.Errorf("%.2f N·m, with a tuck not held %.2f", before.After.Held12, after.After.Held12)
	}
	if q.Weeks[1].Exercise != "planche-lean" {
		t.Errorf("week 2 does %s", q.Weeks[1].Exercise)
	}
}

// A boy of fifteen, one day a week, sore wrists, no kit: something moves every other
// week, no session is that of the week before or the one before that, and the block
// ends with a test.
func TestOnceAWeekWithNothing(t *testing.T) {
	p := programOf(t, clientOf(t, untrained, soreWrists, aged(15), on(sat), minutes(45)))
	if kinds(&p) != "bbbbbbdbbbbt" {
		t.Error(kinds(&p))
	}
	var seen []string
	exercises := map[string]bool{}
	for _, w := range p.Weeks {
		var card []string
		for _, it := range w.Sessions[0].Items {
			if it.Role == program.RolePrepare {
				continue
			}
			exercises[it.Exercise] = true
			card = append(card, fmt.Sprintf("%s %d×%d+%d", it.Exercise, it.Sets, it.Hold, it.Reps))
		}
		if now := strings.Join(card, " "); w.Kind == program.WeekBuild {
			if slices.Contains(seen, now) {
				t.Errorf("week %d is as one before: %s", w.Number, now)
			}
			seen = append(seen, now)
		}
	}
	if len(exercises) < 11 {
		t.Errorf("%d exercises in twelve weeks", len(exercises))
	}
	if hold := tested(&p)[0].Hold; hold != 35 { // 25 s in week one, 35 by week five
		t.Errorf("the test is %d s", hold)
	}
	kit := map[string]string{}
	for _, n := range p.Notes {
		if n.Code == noteKitWouldOpen {
			kit[n.Values[0].Text] = n.Values[1].Text
		}
	}
	if len(kit) != 2 || kit["kit.towel"] != "towel-row" || kit["kit.table"] != "low-bar-row" || !hasNote(p.Notes, noteNoHands) {
		t.Errorf("kit that would open work: %v", kit)
	}
	with := programOf(t, clientOf(t, untrained, func(a *program.Assessment) { a.Kit = []string{"towel"} }))
	if hasNote(with.Notes, noteKitWouldOpen) {
		t.Error("a towel is there, and asked for")
	}
}
