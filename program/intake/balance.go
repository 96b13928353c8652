package intake

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// # Balance
//
// A road map with load: balance has no pose and no load. Its steps say how the body stands,
// and their gates of how many tries so many reach the seconds; a gate of a single try is a
// step that is held, as the line at a wall is. Tests and logs have the best of some tries and
// how many of them reached: "4 of 10".

// mostTries is as many tries as one session has room for (our judgement).
const mostTries = 50

// usualReached is the share of the tries that a gate asks for where its file says nothing: six of ten
// (our judgement).
const usualReached = 60 // per cent

// gateFields are sets, or the tries of a balance.
func (v value) gateFields(g *program.Gate) []field {
	return append(v.amountFields(must("sets", "3", whole(&g.Sets, 1, 10)), may("tries", "10", whole(&g.Sets, 1, 20))),
		may("reached", "6", whole(&g.Reached, 1, 20)))
}

// checkBalance sees that a step says how the body stands, and its gate of how many tries;
// or, of another road map, that no step does.
func (s *source) checkBalance(m *program.RoadMap) {
	refuse := func(at string, keys ...string) {
		for _, key := range keys {
			if s.given(at + "." + key) {
				s.say(s.at("%s.%s", at, key), fmt.Sprintf("%s is for a road map of another load than this one's", quote(key[strings.LastIndex(key, ".")+1:])), "Take it away.")
			}
		}
	}
	if m.Load == program.LoadBalance && m.Hands == program.HandsHang {
		s.say(s.at("hands"), "nobody balances in a hang", "Write hands: support")
	}
	for i := range m.Steps {
		at, step := fmt.Sprintf("steps[%d]", i), &m.Steps[i]
		if m.Load != program.LoadBalance {
			refuse(at, "stand", "gate.tries", "gate.reached")
			continue
		}
		if !s.hasKeys(at) {
			continue // no group: said already
		}
		refuse(at, "pose", "press", "lift", "allowance", "sides", "gate.sets", "gate.reps", "gate.then", "gate.rpe", "stand.trunk", "stand.feet", "stand.hands", "stand.lower")
		s.standing(at, step)
	}
}

// standing asks for what a step of balance has, and fills in what its gate leaves out.
func (s *source) standing(at string, step *program.Step) {
	need := func(at string, f field) {
		if s.hasKeys(at) && !s.given(at+"."+f.key) {
			s.lacks(at, f)
		}
	}
	need(at, must("stand", "{rest: wall, gap: 15 cm}", nil))
	need(at+".gate", must("tries", "10", nil))
	need(at+".gate", must("hold", "10 s", nil))
	if rest := step.Press.Rest; rest == program.PressOnToes || rest == program.PressOnKnees {
		s.say(s.at("%s.stand.rest", at), "whoever has the feet on the floor has nothing to balance", "Write rest: wall, rest: heels or rest: nothing")
	}
	g := &step.Gate
	if g.RPEMax = 0; g.Reached == 0 {
		g.Reached = (g.Sets*usualReached + 99) / 100
	}
	if g.Reached > g.Sets && g.Sets > 0 {
		s.say(s.at("%s.gate.reached", at), "more tries reach the seconds than there are", fmt.Sprintf("Expected at most %d.", g.Sets))
	}
}

// balances reports whether the goal's road map is one of balance.
func (c *client) balances() bool {
	return c.roadMap != nil && c.roadMap.Load == program.LoadBalance
}

// checkSought asks for a goal of the seconds that its step is for.
func (c *client) checkSought() {
	if !c.balances() {
		return
	}
	at := c.at("goal.hold") // a minute is not unusual here
	c.problems = slices.DeleteFunc(c.problems, func(p program.Problem) bool { return p.Warning && p.Place == at })
	if s, ok := c.roadMap.Step(c.Goal.Step); ok && c.given("goal.hold") && c.Goal.Hold != float64(s.Gate.Hold) {
		c.wrong("goal.hold", "goal_seconds", "step", quote(s.Name), "seconds", strconv.Itoa(s.Gate.Hold))
	}
}

// checkTries looks at the test of a step of balance, whose best and number have to agree.
func (c *client) checkTries(path string, h *program.Hold, has func(string) bool) {
	s, ok := (*program.Step)(nil), false
	if c.balances() {
		s, ok = c.roadMap.Step(h.Step)
	}
	switch {
	case !ok || !s.Gate.Tried():
		c.only(path, "step", has, "reached")
	case has("reached") && has("hold"):
		if wrong := unlikeTries(h.Tries, h.Seconds, s.Gate.Hold); wrong != nil {
			c.wrong(path+".reached", wrong...)
		}
	}
	if c.balances() {
		c.only(path, "step", has, "bands", "drop", "stopped")
	}
}

// unlikeTries is what is wrong with tries whose best is another than their number tells.
func unlikeTries(t program.Tries, best float64, seeks int) fault {
	if t.Of > 0 && (t.Reached > 0) != (best >= float64(seeks)) {
		return fault{"tries_best", "reached", strconv.Itoa(t.Reached), "of", strconv.Itoa(t.Of), "best", short(best), "seconds", strconv.Itoa(seeks)}
	}
	return nil
}

// tries reads "4 of 10", in an assessment.
func tries(into *program.Tries) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		var wrong fault
		if *into, wrong = triesIn(v.words(), s); wrong != nil {
			v.fault(wrong...)
		}
	}
}

// triesIn reads "4 of 10" or "4/10", the word between them in English or the studio's
// language.
func triesIn(words program.Words, written string) (t program.Tries, wrong fault) {
	fields := strings.Fields(strings.ReplaceAll(written, "/", " of "))
	if len(fields) != 3 || fields[1] != "of" && fold(fields[1]) != fold(words["log.of"]) {
		if wrong := damage(written); wrong != nil {
			return t, wrong
		}
		return t, fault{"tries_form", "written", quote(written)}
	}
	reached, err := strconv.ParseUint(fields[0], 10, 8)
	of, err2 := strconv.ParseUint(fields[2], 10, 8)
	switch t = (program.Tries{Reached: int(reached), Of: int(of)}); {
	case err != nil || err2 != nil || t.Of < 1 || t.Of > mostTries:
		return program.Tries{}, fault{"tries_number", "written", quote(written), "most", strconv.Itoa(mostTries)}
	case t.Reached > t.Of:
		return program.Tries{}, fault{"tries_more", "written", quote(written)}
	}
	return t, nil
}

// readTries reads a line of several tries of a step: the best under hold_s, and how many
// reached under reps. Not ok where the line is no such thing.
func (l *logLine) readTries(e *program.Entry) (ok bool) {
	seeks, written := l.known.seeks[e.Step], l.cell(columnReps)
	if seeks == 0 || written == "" || isDash(written) {
		return false
	}
	tries, wrong := triesIn(l.words.said(), written)
	if wrong != nil && l.known.steps[fold(l.cell(columnExercise))] == "" {
		e.Step = "" // its exercise, done as a drill of another step
		return false
	}
	e.Sets = l.sets(1)
	s := &e.Sets[0]
	best, fine := l.amounts(columnHold)
	switch s.Tries = tries; {
	case wrong != nil:
		l.fault(l.at(columnReps), wrong...)
	case !fine:
	case best.n > 1:
		l.fault(l.at(columnHold), "tries_several")
	case l.cell(columnSet) != "":
		l.fault(l.at(columnSet), "tries_set")
	case best.n == 1 && best.x[0] != unsaid:
		s.Seconds = best.x[0]
		if wrong := unlikeTries(s.Tries, s.Seconds, seeks); wrong != nil {
			l.fault(l.at(columnReps), wrong...)
		}
	}
	l.readRPE(e.Sets)
	l.readClean(e.Sets)
	l.readPain(e.Sets)
	return true
}

// triesCell writes how many tries reached.
func triesCell(sets []program.SetDone) string {
	if len(sets) != 1 || sets[0].Tries.Of == 0 {
		return ""
	}
	return fmt.Sprintf("%d of %d", sets[0].Tries.Reached, sets[0].Tries.Of)
}
