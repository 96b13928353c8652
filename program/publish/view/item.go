package view

import (
	"strconv"

	"gatepost/program"
)

// Item is one line of a session.
type Item struct {
	ExerciseID, Exercise string
	StepID, Step         string
	Role                 string // "Main hold"
	RoleKey              program.Role
	Sets                 int
	Hold                 int    // s, for a timer; 0: repetitions, or as long as it stays clean
	Pause                int    // s between sets, for a timer
	Up                   bool   // a hold that ends when it ends: a timer counts up
	Enough               int    // s, where such a hold is enough all the same; 0: nowhere
	Amount               string // "4 × 12 s", "3 × 8"
	Sides                string // "2 a side"; "left 3, right 2", the one that begins first; empty where both work at once
	Begins               Side   // of an odd number of sets by turns
	Dose                 string // the two: "4 × 40 s, 2 a side"
	Rig                  string // "narrow + middle, strap 20 cm"; "free"; a lean; empty where no help could be
	Help                 string // "6.5 kg"
	OnScale              bool   // which a scale reads
	Spot                 string // "hands 26 cm ahead of the spot under the anchor"
	Rest                 string // "2½ min"
	Clock                string // the same as a clock shows it: "2:30"
	Remark               string // "in the rests of the main hold"
	Full                 string // Amount, of a find on a card, whose boxes name the marks
	Found                string // what it becomes by the mark that was found: "good at 6: 4 cm · 10: 8 cm"
	Cue                  string // the exercise's first cue
	Cues                 []string
	StraightArm          bool
	Open                 bool   // it ends when it ends: Amount is a sentence, and what it came to is written down
	Line                 string // "4 × 12 s, narrow + middle"
	Answer               Answer // what a page takes down of it
}

// Name is what the item is called: its step where it holds one.
func (i Item) Name() string {
	if i.Step != "" {
		return i.Step
	}
	return i.Exercise
}

// item writes one line; least is what an open set of its week lasts at the least.
func (s *speech) item(p program.Prescription, least string) Item {
	v := Item{
		ExerciseID: p.Exercise, Exercise: s.exercise(p.Exercise), StepID: p.Step,
		Role: s.say("role." + string(p.Role)), RoleKey: p.Role, Sets: p.Sets, Hold: p.Hold, Pause: p.Rest, Amount: s.amount(p),
		Spot: s.spot(p), Rest: s.pause(p.Rest), Clock: s.clock(p.Rest), Remark: s.remark(p), Found: s.found(p), StraightArm: p.StraightArm, Open: open(p),
		Answer: s.answer(p),
	}
	if practised(p) {
		v.Role = s.say("role.practice")
	}
	if v.Open && !p.Find.Any() || p.Reps > 0 {
		v.Hold = 0 // no timer that counts down
	}
	if v.Up = s.up(p); v.Up && p.Check {
		v.Enough = p.Hold
	}
	if p.Check && least != "" {
		v.Role, v.Amount = capital(s.say("week.open")), s.say("amount.open_set", "hold", least)
	}
	switch {
	case p.Find.Any() && p.Rig.Pull > 0:
		v.Rig = s.say("find_mark.hang", "band", s.rig(p.Rig))
	case p.Find.Any(): // the marks are in its sentence
	case p.Ahead > 0:
		v.Rig = join(s.say("rig.lean", "length", s.centimetres(p.Ahead)), s.wall(p.Ahead))
	case p.Scale > 0:
		v.Rig, v.Help, v.OnScale = s.say("rig.on_scale"), s.kilograms(p.Scale), true
	case p.Step != "" && !s.balances():
		if v.Rig = join(s.rig(p.Rig), s.drop(p.Rig)); p.Rig.Pull == 0 {
			v.Help = s.kilograms(p.Help)
		}
	}
	if p.Step != "" {
		v.Step = s.step(p.Step)
	}
	if e, ok := s.lib.Exercise(p.Exercise); ok && len(e.Cues) > 0 {
		v.Cue, v.Cues = e.Cues[0], e.Cues
	}
	v.share(s.sides(p))
	return v
}

// open says that an item's sets are of no printed length: a test, a check hold, a try, a
// find, which ends by its RPE.
func open(p program.Prescription) bool {
	return p.Max || p.Check || p.Try || p.Find.Any() || counted(p)
}

// up reports whether an item is held for as long as it lasts.
func (s *speech) up(p program.Prescription) bool {
	return open(p) && !p.Find.Any() && p.Reps == 0 && !s.counts(p.Step)
}

// counted says that a test is one of repetitions.
func counted(p program.Prescription) bool { return p.Role == program.RoleTest && p.Reps > 0 }

// amount writes sets and what a set is.
func (s *speech) amount(p program.Prescription) string {
	key := "amount.reps"
	switch {
	case p.Find.Any():
		return s.finding(p)
	case s.counts(p.Step) && (p.Max || p.Check):
		return s.openReps(p)
	case practised(p):
		return s.practice(p)
	case p.Try:
		return s.say(s.plural("amount.tries", p.Sets), "sets", strconv.Itoa(p.Sets))
	case p.Max:
		return s.say("amount.max_hold")
	case p.Check && p.Hold > 0: // nothing is tested to its end
		return s.say("amount.check_for", "hold", strconv.Itoa(p.Hold))
	case p.Check:
		return s.say("amount.check_hold")
	case counted(p):
		key = "amount.test_reps"
	case p.Hold > 0 && p.Reps == 0:
		key = "amount.holds"
	}
	return s.say(key, "sets", strconv.Itoa(p.Sets), "hold", strconv.Itoa(p.Hold), "reps", strconv.Itoa(p.Reps))
}

// openReps writes a test or a check set of a step that is repeated.
func (s *speech) openReps(p program.Prescription) string {
	switch {
	case p.Max:
		return s.say("amount.max_reps")
	case p.Hold > 0:
		return s.say("amount.check_so_many", "reps", strconv.Itoa(p.Hold/program.SecondsPerRep))
	}
	return s.say("amount.check_reps")
}

// spot says where the hands go under a band, and how high the hips have to be over
// the floor.
func (s *speech) spot(p program.Prescription) string {
	l, _ := load(s.program, p.Step)
	return join(s.hands(p), s.raised(l))
}

// raised says how far hips are above the shoulders for the floor's sake.
func (s *speech) raised(l program.StepLoad) string {
	if round(100*l.Raised) < 1 {
		return ""
	}
	return s.say("rig.hips", "length", s.centimetres(l.Raised))
}

func (s *speech) hands(p program.Prescription) string {
	cm := round(100 * p.HandsAhead)
	switch {
	case len(p.Rig.Bands) == 0, s.road.Hands == program.HandsHang: // no anchor to stand under, or the hands are where the bar is
		return ""
	case cm > 0:
		return s.say("rig.hands_ahead", "length", s.centimetres(p.HandsAhead))
	case cm < 0:
		return s.say("rig.hands_behind", "length", s.centimetres(-p.HandsAhead))
	}
	return s.say("rig.hands_under")
}

func (s *speech) remark(p program.Prescription) string {
	rests := ""
	if p.InRests {
		rests = s.say("amount.in_rests")
	}
	return join(rests, s.byCoach(p.ByCoach))
}
