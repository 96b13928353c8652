package view

import (
	"slices"
	"strconv"

	"gatepost/program"
)

// Week is one column of the chart, one row of the page.
type Week struct {
	Number      int
	Title       string // "Week 3"
	Start       program.Date
	Dates       string // "25 to 31 Jan"
	From        string // "25 Jan"
	Kind        string // "Build"; "Gate" in a gate week
	KindKey     program.WeekKind
	Gate        bool
	Asked       string // "Gate week: on 2 days the open tuck is shown …"
	StepID      string // empty on the floor rungs
	Step        string // "advanced tuck", or the floor rung's exercise
	ExerciseID  string
	Main        string // "4 × 12 s", of the day with most sets; empty in a week without main work
	Range       string // "3–4 × 12 s" where the days differ, else as Main
	Sets, Hold  int
	Rig         string // "narrow + middle", "free", or the lean's centimetres
	Free        bool   // a step held without help
	Bands       []string
	Drop        string // "strap 20 cm"
	Help        string // "6.5 kg"; empty when free or on a lean
	HelpKG      float64
	LeanCM      int    // shoulder ahead of the wrist crease; 0: no lean
	Rest        string // "2:30 min"
	Line        string // "4 × 12 s, narrow + middle, strap 20 cm"
	Test        string // "tested: open tuck, advanced tuck"
	Check       string // "check hold", in a week that opens with one
	Provisional bool   // stands until the next check hold has spoken
	Stance      program.Stance
	Sessions    []Session
	Notes       []string
}

// Session is one day.
type Session struct {
	Number  int // in the week, from 1
	Date    program.Date
	Title   string // "Monday 11 January"
	Day     string // "Mon"
	DayDate string // "Mon 11"
	Short   string // the same, and where the day has fewer main sets than the week's most: "Mon 11, 3 ×"
	Minutes string // "57 min"
	Items   []Item
	Dropped []string
}

// Item is one line of a session.
type Item struct {
	ExerciseID, Exercise string
	StepID, Step         string
	Role                 string // "Main hold"
	RoleKey              program.Role
	Sets                 int
	Hold                 int    // s, for a timer; 0: repetitions, or as long as it stays clean
	Pause                int    // s between sets, for a timer
	Amount               string // "4 × 12 s", "3 × 8"
	Sides                string // "2 a side"; "left 3, right 2", the one that begins first; empty where both work at once
	Begins               Side   // of an odd number of sets by turns
	Dose                 string // the two: "4 × 40 s, 2 a side"
	Rig                  string // "narrow + middle, strap 20 cm"; "free"; a lean; empty where no help could be
	Help                 string // "6.5 kg"
	Spot                 string // "hands 26 cm ahead of the spot under the anchor"
	Rest                 string
	Remark               string // "in the rests of the main hold"
	Cue                  string // the exercise's first cue
	Cues                 []string
	StraightArm          bool
	Max                  bool
	Line                 string // "4 × 12 s, narrow + middle"
}

// Name is what the item is called: its step where it holds one.
func (i Item) Name() string {
	if i.Step != "" {
		return i.Step
	}
	return i.Exercise
}

// weeks writes a block; turns are who gets the odd set in it.
func (s *speech) weeks(from []program.Week, turns turns) []Week {
	var all []Week
	for _, w := range from {
		all = append(all, s.week(w))
	}
	s.oddSides(all, from, turns)
	return all
}

func (s *speech) week(w program.Week) Week {
	v := Week{
		Number: w.Number, Title: s.say("week.number", "number", strconv.Itoa(w.Number)),
		Start: w.Start, Dates: s.span(w.Start, w.Start+6), From: s.brief(w.Start),
		Kind: s.kind(w), KindKey: w.Kind, Gate: w.Gate,
		StepID: w.Step, ExerciseID: w.Exercise, Sets: w.Sets, Hold: w.Hold,
		Provisional: w.Provisional, Notes: s.notes(w.Notes), Test: s.test(w), Check: s.check(w),
	}
	v.Step, v.Stance = s.name(w), w.Stance
	if w.Sets > 0 && w.Hold > 0 {
		v.Main, v.Rest = s.holds(w.Sets, w.Hold), s.pause(w.Rest)
		v.Range = s.setsRange(w)
		s.helpOf(&v, w)
	} else if lead, ok := leading(w); ok && w.Hold == 0 {
		v.ExerciseID, v.Step, v.Rest = lead.Exercise, s.exercise(lead.Exercise), s.pause(lead.Rest)
		v.Main = join(s.amount(lead), s.sides(lead))
		v.Range = v.Main
	}
	if i := slices.IndexFunc(w.Notes, func(n program.Note) bool { return n.Code == "gate-week" }); i >= 0 {
		v.Asked = s.notes(w.Notes[i : i+1])[0]
	}
	v.Line = join(v.Range, v.Rig, v.Drop)
	for i, session := range w.Sessions {
		v.Sessions = append(v.Sessions, s.session(i+1, session))
		v.Sessions[i].Short += s.fewer(w, session)
	}
	return v
}

// kind is what a week is called.
func (s *speech) kind(w program.Week) string {
	if w.Gate {
		return s.say("week.gate")
	}
	return s.say("week." + string(w.Kind))
}

// leading is what stands for the main work in a week without weight on the
// hands: its first strength drill.
func leading(w program.Week) (program.Prescription, bool) {
	for _, session := range w.Sessions {
		for _, item := range session.Items {
			if item.Role == program.RoleStrength {
				return item, true
			}
		}
	}
	return program.Prescription{}, false
}

// helpOf writes what carries part of the load: bands, toes on a scale, or, in a
// lean, the feet.
func (s *speech) helpOf(v *Week, w program.Week) {
	switch {
	case w.Ahead > 0:
		v.LeanCM = round(100 * w.Ahead)
		v.Rig, v.Drop = s.say("rig.lean_short", "length", s.centimetres(w.Ahead)), s.wall(w.Ahead)
	case w.Scale > 0:
		v.Rig, v.Help, v.HelpKG = s.say("rig.on_scale"), s.kilograms(w.Scale), HalfKilograms(w.Scale)
	case w.Step != "":
		v.Rig, v.Drop, v.Bands, v.Free = s.rig(w.Rig), s.drop(w.Rig), w.Rig.Bands, w.Rig.Free()
		v.Help, v.HelpKG = s.kilograms(w.Help), HalfKilograms(w.Help)
	}
}

// test names the steps and exercises that a week tests.
func (s *speech) test(w program.Week) string {
	var names []string
	for _, session := range w.Sessions {
		for _, item := range session.Items {
			if item.Role != program.RoleTest || item.Check {
				continue
			}
			name := s.exercise(item.Exercise)
			if item.Step != "" {
				name = s.step(item.Step)
			}
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if names == nil {
		return ""
	}
	return s.say("week.tests", "what", join(names...))
}

// check says that a week has a check hold.
func (s *speech) check(w program.Week) string {
	for _, session := range w.Sessions {
		if slices.ContainsFunc(session.Items, func(p program.Prescription) bool { return p.Check }) {
			return s.say("week.check")
		}
	}
	return ""
}

func (s *speech) session(number int, from program.Session) Session {
	brief := s.say("date.brief", "weekday", s.weekdayShort(from.Date), "day", strconv.Itoa(from.Date.Time().Day()))
	v := Session{Number: number, Date: from.Date, Title: s.day(from.Date), Day: s.weekdayShort(from.Date),
		DayDate: brief, Short: brief,
		Minutes: s.minutes(from.Minutes), Dropped: s.notes(from.Dropped)}
	for _, item := range from.Items {
		v.Items = append(v.Items, s.item(item))
	}
	return v
}

func (s *speech) item(p program.Prescription) Item {
	v := Item{
		ExerciseID: p.Exercise, Exercise: s.exercise(p.Exercise), StepID: p.Step,
		Role: s.say("role." + string(p.Role)), RoleKey: p.Role, Sets: p.Sets, Hold: p.Hold, Pause: p.Rest, Amount: s.amount(p),
		Spot: s.spot(p), Rest: s.pause(p.Rest), Remark: s.remark(p), StraightArm: p.StraightArm, Max: p.Max,
	}
	if p.Max || p.Check {
		v.Hold = 0 // the hold ends when it ends
	}
	switch {
	case p.Ahead > 0:
		v.Rig = join(s.say("rig.lean", "length", s.centimetres(p.Ahead)), s.wall(p.Ahead))
	case p.Scale > 0:
		v.Rig, v.Help = s.say("rig.on_scale"), s.kilograms(p.Scale)
	case p.Step != "":
		v.Rig, v.Help = join(s.rig(p.Rig), s.drop(p.Rig)), s.kilograms(p.Help)
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

// holds writes sets of seconds: "4 × 12 s".
func (s *speech) holds(sets, hold int) string {
	return s.say("amount.holds", "sets", strconv.Itoa(sets), "hold", strconv.Itoa(hold))
}

// setsRange writes a week's main work where its days differ: "3–4 × 12 s".
func (s *speech) setsRange(w program.Week) string {
	if w.SetsLeast == 0 || w.SetsLeast == w.Sets {
		return s.holds(w.Sets, w.Hold)
	}
	return s.say("amount.holds_range", "least", strconv.Itoa(w.SetsLeast), "sets", strconv.Itoa(w.Sets), "hold", strconv.Itoa(w.Hold))
}

// fewer says, beside a day's name, that its main sets are fewer than the week's
// most: ", 3 ×".
func (s *speech) fewer(w program.Week, session program.Session) string {
	sets := 0
	for _, item := range session.Items {
		if item.Role == program.RoleMain || item.Check && w.Kind == program.WeekBuild {
			sets += item.Sets
		}
	}
	if sets == 0 || sets == w.Sets {
		return ""
	}
	return s.say("amount.fewer", "sets", strconv.Itoa(sets))
}

// amount writes sets and what a set is.
func (s *speech) amount(p program.Prescription) string {
	key := "amount.reps"
	switch {
	case p.Max:
		return s.say("amount.max_hold")
	case p.Check && p.Hold > 0: // nothing is tested to its end
		return s.say("amount.check_for", "hold", strconv.Itoa(p.Hold))
	case p.Check:
		return s.say("amount.check_hold")
	case p.Hold > 0:
		key = "amount.holds"
	}
	return s.say(key, "sets", strconv.Itoa(p.Sets), "hold", strconv.Itoa(p.Hold), "reps", strconv.Itoa(p.Reps))
}

// spot says where the hands go under a band.
func (s *speech) spot(p program.Prescription) string {
	cm := round(100 * p.HandsAhead)
	switch {
	case p.Rig.Free():
		return ""
	case cm > 0:
		return s.say("rig.hands_ahead", "length", s.centimetres(p.HandsAhead))
	case cm < 0:
		return s.say("rig.hands_behind", "length", s.centimetres(-p.HandsAhead))
	}
	return s.say("rig.hands_under")
}

func (s *speech) remark(p program.Prescription) string {
	if p.InRests {
		return s.say("amount.in_rests")
	}
	return ""
}
