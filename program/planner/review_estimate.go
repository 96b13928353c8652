package planner

import (
	"math"

	"gatepost/program"
	"gatepost/program/strength"
)

// estimate follows a client's strength from the assessment through the log, week
// by week: a day's sets are read together, and the week's end adds what its
// sessions are counted on to bring.
//
// How a set is read:
//
//   - a maximal test is exact; a check hold stopped with two seconds left;
//   - a set that reached its seconds would have lasted at least as long, within
//     what its RPE says was left; one that stopped short at RPE 9.5 or more is
//     exact, and without an RPE would not have lasted four seconds more;
//   - where the form broke, the clean hold was up to four seconds shorter than
//     the one written, and the RPE is left aside;
//   - where pain of three or more was written the hold is "at least": it is the
//     joint that stopped it, and the RPE speaks of the joint as well;
//   - a lean is "at least" with a spread of 0.15;
//   - repetitions of a press tell by their change, see press.
type estimate struct {
	body   *body
	state  strength.State
	career strength.Career
	lost   float64 // ln C lost in weeks off and not yet back
	off    int     // weeks off in a row
	place  string  // where the last hold was, for what has no place of its own
	rig    string
	press  map[string]float64 // ln of the load, N·m, that an exercise is worth
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
	brokenForm  = 4.0 // s of a hold that may not have been clean any more
	painStops   = 3   // of ten, from which a joint and not strength ends a set
	checkLeft   = 2.0 // s left in a check hold, as it is asked for
	checkRPE    = 10 - checkLeft/secondsPerRPE
	pressSpread = 0.15

	secondsPerRPE = 2.5  // s of a hold that a point of RPE leaves
	readLeast     = 1e-4 // of ln C: less is no move
)

func newEstimate(a *program.Assessment, b *body, state strength.State) *estimate {
	return &estimate{body: b, state: state, career: career(a, b), press: map[string]float64{}}
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
	e.settle(list)
	e.state = e.state.Observe(list)
	for i, s := range from {
		e.note(s, list[i], e.state.Moved[i])
	}
	for _, i := range e.state.Doubted {
		e.doubted = append(e.doubted, program.Move{Set: from[i].SetRead})
	}
	e.weighPresses(d)
}

// settle gives leans and presses the place of the day's holds: their own spread
// covers the change, which the filter would add doubt for.
func (e *estimate) settle(list []strength.Observation) {
	for _, o := range list {
		if o.Spread == 0 {
			e.place, e.rig = o.Position, o.Rig
		}
	}
	for i := range list {
		if list[i].Spread > 0 {
			list[i].Position, list[i].Rig = e.place, e.rig
		}
	}
}

// note keeps what a set did to the estimate.
func (e *estimate) note(s *setRead, o strength.Observation, moved float64) {
	e.tested = e.tested || o.Spread == 0
	if o.Max {
		e.tests = append(e.tests, program.TestRead{Date: s.Date, Held12: heldTwelve(o)})
	}
	if math.Abs(moved) > readLeast {
		e.moves = append(e.moves, move{s, moved})
	}
}

// observation turns a set into a load held for a time.
func (e *estimate) observation(s *setRead) (strength.Observation, bool) {
	o := strength.Observation{Position: s.Exercise, Seconds: s.Done.Seconds, RPE: s.Done.RPE}
	if !s.said() {
		return o, false
	}
	switch {
	case s.Done.Reps > 0:
		return e.pressed(s, o)
	case s.Step != "":
		o.Position = s.Step
		if !e.held(s, &o) {
			return o, false
		}
	case s.item != nil && s.item.Ahead > 0:
		o.Load, o.AtLeast, o.Spread = e.body.PlancheLean(s.item.Ahead, e.body.support).Torque, true, leanSpread
	default:
		return o, false // a hold that no model weighs: trunk, mobility, handstand
	}
	return discounted(s, o), o.Load > 0
}

// held gives the load of a step as it was hung.
func (e *estimate) held(s *setRead, o *strength.Observation) bool {
	if s.Rig.Drop == rigPrinted && len(e.body.bands) > 0 || s.Rig.Drop == dropPrinted {
		e.unread = append(e.unread, note(noteSetUnplaced, exercise("exercise", s.Exercise), date("date", s.Date)))
		return false
	}
	if s.Rig.Drop < 0 {
		s.Rig.Drop = 0
	}
	for i := range e.body.all {
		r := &e.body.all[i]
		if r.ID != s.Step {
			continue
		}
		hung, ok := e.body.hungAs(r, s.Rig)
		if !ok {
			e.unread = append(e.unread, note(noteBandGone, exercise("exercise", s.Exercise), date("date", s.Date)))
			return false
		}
		o.Load, o.Rig = hung.load, rigName(hung.rig)
		if s.item != nil && s.item.Scale > 0 {
			o.Load -= s.item.Scale * r.toesReach() * allowance(r.Step)
		}
		return true
	}
	return false
}

// hungAs is the option of a rig; not ok where a band is no longer the client's.
func (b *body) hungAs(r *rung, rig program.Rig) (option, bool) {
	for i := range r.rigs() {
		if sameRig(rig, r.rigs()[i].rig) {
			return r.rigs()[i], true
		}
	}
	o := b.named(r, rig)
	return o, len(o.rig.Bands) == len(rig.Bands)
}

// discounted applies what the item asked for, broken form and pain.
func discounted(s *setRead, o strength.Observation) strength.Observation {
	if s.item != nil && s.item.Max && !o.AtLeast {
		o.Max = true
	}
	o.Failed = s.short()
	switch {
	case s.Done.Pain.Worst() >= painStops:
		o.RPE, o.Max, o.Failed, o.AtLeast = 0, false, false, true
	case s.Done.Clean == program.CleanNo && o.Seconds > 0:
		o.Seconds, o.RPE, o.Max = max(0.5, o.Seconds-brokenForm), 0, false
		o.Failed = !o.AtLeast
	case o.Max:
	case s.item != nil && s.item.Check && s.item.Hold == 0 && o.RPE == 0:
		o.RPE = checkRPE
	}
	return o
}

// pressed reads repetitions of a push or raise. Nobody knows what torque a press
// is worth, so its first set with an RPE says so: the load that the client, as
// then believed, could hold for three seconds a repetition. Later sets tell by
// their change since the last, with a spread of 0.15, as a lean does: with gains
// that differ by about 0.10 between clients, that is a correlation of a half
// between press and hold. After each day the worth is set anew, so that a wrong
// first guess cannot pull for ever.
func (e *estimate) pressed(s *setRead, o strength.Observation) (strength.Observation, bool) {
	worth, known := e.press[s.Exercise]
	if !known || s.Done.RPE == 0 || s.Done.Clean == program.CleanNo || s.Done.Pain.Worst() >= painStops || !isPress(s) {
		return o, false
	}
	o.Load, o.Spread = math.Exp(worth), pressSpread
	o.Seconds = strength.HoldOf(float64(s.Done.Reps))
	o.Failed = s.Printed > 0 && s.Done.Reps < s.Printed
	return o, true
}

func isPress(s *setRead) bool { return s.item != nil && s.item.Role == program.RoleStrength }

// weighPresses sets the worth of the day's presses by what is believed after it.
// Of a day's sets of one press the one that could have gone on longest counts.
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
		e.press[name] = math.Log(strength.LoadFor(e.state.C12(), strength.HoldOf(most[name]), e.state.K()))
	}
}

// trained ends a week with so many straight-arm sessions done.
func (e *estimate) trained(kind program.WeekKind, sessions int) {
	gain := strength.DefaultLaw.WeekGain(e.career.AgeAt(e.state.C), sessions)
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
