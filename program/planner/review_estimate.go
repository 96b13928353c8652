package planner

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/strength"
)

// estimate follows a client's strength from the assessment through the log, week
// by week: a day's sets are read together, and the week's end adds what its
// sessions are counted on to bring.
//
// How a set is read:
//
//   - a maximal test is exact, "at least" where it ended at its printed seconds; a
//     first try was held to its end too; a check hold stopped with two seconds left;
//   - holds, leans and sets on a scale alike: one that reached its seconds would
//     have lasted as much longer as its RPE says, on both sides; without an RPE as
//     if that were 7.5 ± 1.5, and never as bad news; one that stopped short at RPE
//     9.5 or more is exact, and without an RPE would not have lasted four seconds
//     more;
//   - a try at a mark that is to be found ended by its RPE, as it was to: it is no set
//     that stopped short;
//   - where the form broke, the clean hold was up to four seconds shorter than
//     the one written, whatever its RPE; so it was in the sets before it on its line
//     of which nobody says more;
//   - pain changes nothing here: if it was the joint that stopped a hold, strength is
//     underrated until a hold without pain, and never overrated by a bad word;
//   - each step, lean, scale hold, press and rig has an offset of its own, see
//     package strength;
//   - repetitions of a press tell by their change, see pressed.
type estimate struct {
	body   *ladder.Body
	heldAs func(exercise string) string // of a lean that is repeated
	state  strength.State
	career strength.Career
	lost   float64            // ln C lost in weeks off and not yet back
	off    int                // weeks off in a row
	press  map[string]float64 // N·m that an exercise counts as, since it was first done
	tested bool               // a hold was read
	tests  []program.TestRead

	moves   []move
	doubted []program.Move
	unread  []program.Note
}

// move is how far a set moved the estimate.
type move struct {
	set   *setRead
	moved float64 // of ln C12
}

// Discounts of a reading (our judgement).
const (
	checkLeft = 2.0 // s left in a check hold, as it is asked for
	checkRPE  = 10 - checkLeft/secondsPerRPE

	heldToTheEnd = 9.5 // RPE from which nothing was left in a try; without a word too

	secondsPerRPE = 2.5  // s of a hold that a point of RPE leaves
	readLeast     = 1e-4 // of ln C: less is no move
)

func newEstimate(m *measures, state strength.State) *estimate {
	e := &estimate{body: m.body, heldAs: m.heldAs, state: state, career: career(m.athlete, m.body), press: map[string]float64{}}
	for i := range m.athlete.Tests {
		if t := &m.athlete.Tests[i]; m.presses(t) {
			e.weigh(t.Exercise, float64(t.Reps))
		}
	}
	return e
}

// day reads one day's sets.
func (e *estimate) day(d *dayRead) {
	var list []strength.Observation
	var from []*setRead
	for i := range d.sets {
		s := &d.sets[i]
		o, ok := e.observation(s)
		if !ok {
			continue
		}
		o.Index = len(list)
		list, from = append(list, o), append(from, s)
	}
	if len(list) == 0 {
		e.weighPresses(d)
		return
	}
	ladder.PairUp(list)
	e.state = e.state.Observe(list)
	for i, s := range from {
		e.note(s, list[i], e.state.Moved[i])
	}
	for _, i := range e.state.Doubted {
		e.doubted = append(e.doubted, program.Move{Set: from[i].SetRead})
	}
	e.weighPresses(d)
}

// note keeps what a set did to the estimate.
func (e *estimate) note(s *setRead, o strength.Observation, moved float64) {
	shows := s.Step != "" || s.finds() // a lean shows no step, but where it was to find a mark
	e.tested = e.tested || shows && o.Seconds >= 1 && !o.Broken
	if o.Max {
		e.tests = append(e.tests, program.TestRead{Date: s.Date, Held12: heldTwelve(o)})
	}
	if math.Abs(moved) > readLeast {
		e.moves = append(e.moves, move{s, moved})
	}
}

// observation turns a set into a load held for a time.
func (e *estimate) observation(s *setRead) (strength.Observation, bool) {
	o := strength.Observation{Seconds: s.Done.Seconds, RPE: s.Done.RPE}
	if !s.said() {
		return o, false
	}
	switch {
	case s.Done.Reps > 0 && s.finds(): // in and out of a lean, three seconds each
		o.Seconds = s.seconds()
		e.body.Leant(&o, e.heldAs(s.Exercise), s.Ahead)
	case s.Done.Reps > 0:
		return e.pressed(s, o)
	case s.Step != "":
		if !e.held(s, &o) {
			return o, false
		}
	case s.Ahead > 0:
		e.body.Leant(&o, s.Exercise, s.Ahead)
	default:
		return o, false // a hold that no model weighs: trunk, mobility, handstand
	}
	return discounted(s, o), o.Load > 0
}

// held gives the load of a step as it was hung.
func (e *estimate) held(s *setRead, o *strength.Observation) bool {
	switch {
	case s.Rig.Drop == rigPrinted && len(e.body.Bands) > 0:
		return e.skip(s, noteSetUnplaced)
	case s.Rig.Drop == ladder.DropPrinted:
		return e.skip(s, noteStrapUnsaid)
	case e.body.Unweighed(s.Rig):
		return e.skip(s, notePullUnsaid)
	}
	if s.Rig.Drop < 0 {
		s.Rig.Drop = 0
	}
	for i := range e.body.All {
		r := &e.body.All[i]
		if r.ID != s.Step {
			continue
		}
		hung, ok := e.body.HungAs(r, s.Rig)
		if !ok {
			return e.skip(s, noteBandGone)
		}
		e.body.Held(o, r, r.Carried(hung, s.Scale))
		return true
	}
	return false
}

// skip says why a set is not read, once for an exercise and a day.
func (e *estimate) skip(s *setRead, why string) bool {
	n := note(why, exercise("exercise", s.Exercise), date("date", s.Date))
	if !slices.ContainsFunc(e.unread, func(o program.Note) bool { return o.Code == n.Code && slices.Equal(o.Values, n.Values) }) {
		e.unread = append(e.unread, n)
	}
	return false
}

// discounted applies what the item asked for, and broken form.
func discounted(s *setRead, o strength.Observation) strength.Observation {
	o.Max = s.item != nil && s.item.Max
	o.Failed = s.short()
	switch {
	case (s.doubtful || broke(s.Done)) && o.Seconds > 0:
		o.Max, o.Broken = false, true
	case o.Max:
		o.AtLeast = s.Printed > 0 && !o.Failed
		o.Max = !o.AtLeast
	case s.item != nil && s.item.Try && (o.RPE == 0 || o.RPE >= heldToTheEnd):
		o.Failed, o.RPE = true, 10
	case s.item != nil && s.item.Check && s.item.Hold == 0 && o.RPE == 0:
		o.RPE = checkRPE
	}
	return o
}

// pressed reads repetitions of a push or raise. Nobody knows what torque a press
// is worth, so its first set with an RPE says so: the load that the client, as
// then believed, could hold for three seconds a repetition. Later sets tell by
// their change since, with an offset that begins as doubtful as strength then was
// and 0.10 more: between clients that gain differently a press then says about half
// of what a hold does.
func (e *estimate) pressed(s *setRead, o strength.Observation) (strength.Observation, bool) {
	worth, known := e.press[s.Exercise]
	broken := s.Done.Clean == program.CleanNo
	if !known || s.Done.RPE == 0 && !broken || !isPress(s) {
		return o, false
	}
	o.Broken = broken
	o.Load, o.Model, o.Position = worth, strength.PressModel, s.Exercise
	o.Seconds = strength.HoldOf(float64(s.Done.Reps))
	o.Failed = s.Printed > 0 && s.Done.Reps < s.Printed
	return o, true
}

func isPress(s *setRead) bool { return s.item != nil && s.item.Role == program.RoleStrength }

// weighPresses says what the day's new presses are worth, by what is believed after
// it. Of a day's sets of one press the one that could have gone on longest counts.
func (e *estimate) weighPresses(d *dayRead) {
	most := map[string]float64{}
	var order []string
	for i := range d.sets {
		s := &d.sets[i]
		if s.Done.Reps == 0 || s.Done.RPE == 0 || s.Done.Clean == program.CleanNo || !isPress(s) {
			continue
		}
		if most[s.Exercise] == 0 {
			order = append(order, s.Exercise)
		}
		most[s.Exercise] = max(most[s.Exercise], float64(s.Done.Reps)+10-s.Done.RPE)
	}
	for _, name := range order {
		e.weigh(name, most[name])
	}
}

// weigh gives a press its worth, where it has none yet.
func (e *estimate) weigh(name string, reps float64) {
	if e.press[name] > 0 {
		return
	}
	e.press[name] = strength.LoadFor(e.state.C12(), strength.HoldOf(reps), e.state.K())
	e.state = e.state.Anchor(strength.Site{Model: strength.PressModel, Position: name})
}

// trained ends a week with so many straight-arm sessions done, whose counted work
// earns a share of the gain; without any it earns none, and nothing is lost.
func (e *estimate) trained(kind program.WeekKind, sessions int, earned float64) {
	gain := earned * e.career.WeekGain(strength.DefaultLaw, e.state.C, sessions)
	if kind == program.WeekDeload || kind == program.WeekTest {
		gain *= strength.DeloadShare
	}
	e.state = e.state.Trained(gain)
	back := math.Min(e.lost, strength.Returning)
	e.state.C += back
	e.lost -= back
	e.off = 0
	e.career.Age++
}

// rested ends a week in which nothing was done. A week missed costs a little at
// once (our judgement: it is seldom pure rest); a planned one only from the
// second on; ill in bed it is double (see package strength for the sources).
func (e *estimate) rested(a *program.Assessment, monday program.Date) {
	e.off++
	kind := strength.Away
	if illIn(a, monday) {
		kind = strength.Ill
	}
	lost := strength.Lose(e.lost, kind, e.off)
	if kind == strength.Away && e.off == 1 && daysAway(a, monday) < deloadAway {
		lost = e.lost + strength.RestLoss
	}
	e.state = e.state.Rested(lost - e.lost)
	e.lost = lost
}

func illIn(a *program.Assessment, monday program.Date) bool {
	for _, v := range a.Training.Ill {
		if v.From < monday+7 && v.To >= monday {
			return true
		}
	}
	return false
}
