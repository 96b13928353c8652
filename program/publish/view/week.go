package view

import (
	"cmp"
	"iter"
	"slices"
	"strconv"
	"strings"

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
	Main        string // "4 × 12 s", of the day with most sets; empty in a week without main work, or that finds a mark
	Then        string // "then one of 10 s": the longer set that a gate has after the others; usually empty
	Range       string // "3–4 × 12 s" where the days differ, else as Main; with Then
	Sets, Hold  int
	Rig         string // "narrow + middle", "free", or the lean's centimetres
	Free        bool   // a step held without help
	Bands       []string
	Drop        string // "strap 20 cm"
	Help        string // "6.5 kg"; empty when free or on a lean
	Helped      string // the same in a line: "6.5 kg of help"
	HelpKG      float64
	OnScale     bool   // the help is what a scale reads
	LeanCM      int    // shoulder ahead of the wrist crease; 0: no lean
	Rest        string // "2:30 min"
	Mark        string // "by the coach"; empty where the plan chose the main work
	Line        string // "4 × 12 s, narrow + middle, strap 20 cm", with its mark
	Test        string // "tested: open tuck, advanced tuck"
	Check       string // "check hold", in a week that opens with one; "gate's open set"
	CheckShort  string // the same for a narrow column
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
	Length  int    // min
	Work    string // what it is about: "4 × 12 s open tuck, narrow + middle"
	After   int    // days after the block's first Monday
	Items   []Item
	Say     []string // the coach's own words: "Tilda: Film the side view."
	Dropped []string
}

// weeks writes a block; turns are who gets the odd set in it.
func (s *speech) weeks(from []program.Week, turns turns) []Week {
	var all []Week
	for _, w := range from {
		all = append(all, s.week(w))
	}
	s.oddSides(all, from, turns)
	s.works(all)
	return all
}

func (s *speech) week(w program.Week) Week {
	if w.Kind == program.WeekAway && len(w.Sessions) == 0 { // nobody trains, whatever was planned
		w.Step, w.Exercise, w.Sets, w.Hold, w.ByCoach = "", "", 0, 0, false
	}
	v := Week{
		Number: w.Number, Title: s.say("week.number", "number", strconv.Itoa(w.Number)),
		Start: w.Start, Dates: s.span(w.Start, w.Start+6), From: s.brief(w.Start),
		Kind: s.kind(w), KindKey: w.Kind, Gate: w.Gate,
		StepID: w.Step, ExerciseID: w.Exercise, Sets: w.Sets, Hold: w.Hold,
		Provisional: w.Provisional, Notes: s.notes(w.Notes), Test: s.test(w), Check: s.check(w),
	}
	if v.CheckShort = v.Check; v.Check == s.say("week.check") {
		v.CheckShort = s.say("week.check_short")
	}
	v.Step, v.Stance = s.name(w), w.Stance
	if w.Sets > 0 && w.Hold > 0 {
		v.Main, v.Rest = s.dose(s.counts(w.Step), w.Sets, w.Hold), s.pause(w.Rest)
		v.Range = s.setsRange(w)
		if s.inTries(w.Step) {
			v.Main = s.tries(w.Sets)
			v.Range = v.Main
		}
		if g := s.longerGate(w); g.Longer != "" {
			v.Main, v.Then, v.Range = g.Sets, g.Longer, g.Dose
		}
		s.helpOf(&v, w)
		s.seeks(&v, w)
	} else if lead, ok := leading(w); ok && w.Exercise == "" {
		v.ExerciseID, v.Step, v.Rest = lead.Exercise, s.exercise(lead.Exercise), s.pause(lead.Rest)
		v.Main = join(s.amount(lead), s.sides(lead))
		v.Range = v.Main
	}
	v.Asked = strings.TrimSpace(cmp.Or(s.noted(w, "gate-week"), s.noted(w, "gate-week-longer"), s.noted(w, "gate-week-tries"), s.noted(w, "gate-week-held")) + " " + s.noted(w, "gate-days"))
	v.Mark = s.byCoach(w.ByCoach)
	v.Line = join(v.Range, v.Rig, v.Drop, v.Mark)
	for i, session := range w.Sessions {
		v.Sessions = append(v.Sessions, s.session(i+1, session, w))
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
	for item := range itemsOf(w) {
		if item.Role == program.RoleStrength {
			return item, true
		}
	}
	return program.Prescription{}, false
}

// itemsOf goes through what weeks' sessions have, in order.
func itemsOf(weeks ...program.Week) iter.Seq[program.Prescription] {
	return func(yield func(program.Prescription) bool) {
		for i := range weeks {
			for _, session := range weeks[i].Sessions {
				for _, item := range session.Items {
					if !yield(item) {
						return
					}
				}
			}
		}
	}
}

// seeks says in place of sets that a week finds a mark, where no day of it has sets of the
// main work.
func (s *speech) seeks(v *Week, w program.Week) {
	var find program.Prescription
	for p := range itemsOf(w) {
		switch {
		case p.Exercise != w.Exercise || p.Role != program.RoleMain && !p.Check:
		case p.Find.Any():
			find = p
		default:
			return
		}
	}
	if !find.Find.Any() {
		return
	}
	v.Main, v.Range, v.LeanCM, v.HelpKG = "", "", 0, 0
	v.Rig, v.Drop, v.Help, v.Helped = s.say("find_mark.week", "marks", s.marks(find)), "", "", ""
	if find.Rig.Pull > 0 {
		v.Rig = join(s.rig(find.Rig), v.Rig)
	}
}

// helpOf writes what carries part of the load: bands, toes on a scale, or, in a
// lean, the feet.
func (s *speech) helpOf(v *Week, w program.Week) {
	switch {
	case s.inTries(w.Step): // nothing helps
		v.Rig = s.say("rig.sought", "hold", s.seconds(w.Hold))
	case s.balances():
	case w.Ahead > 0:
		v.LeanCM = round(100 * w.Ahead)
		v.Rig, v.Drop = s.say("rig.lean_short", "length", s.centimetres(w.Ahead)), s.wall(w.Ahead)
	case w.Scale > 0:
		v.Rig, v.Help, v.HelpKG, v.OnScale = s.say("rig.on_scale"), s.kilograms(w.Scale), HalfKilograms(w.Scale), true
		v.Helped = v.Help
	case w.Step != "":
		v.Rig, v.Drop, v.Bands, v.Free = s.rig(w.Rig), s.dropShort(w.Rig), w.Rig.Bands, w.Rig.Free()
		v.Help, v.HelpKG = s.kilograms(w.Help), HalfKilograms(w.Help)
		if w.Rig.Pull == 0 { // of a pull the rig says it
			v.Helped = s.ofHelp(v.Help)
		}
	}
}

// test names the steps and exercises that a week tests.
func (s *speech) test(w program.Week) string {
	var names []string
	for item := range itemsOf(w) {
		try := item.Try && w.Kind != program.WeekTest                          // every week has one, and nobody is tested by it
		check := item.Check && (item.Step != "" || w.Kind != program.WeekTest) // which is said on its own
		if item.Role != program.RoleTest || check || try {
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
	if names == nil {
		return ""
	}
	return s.say("week.tests", "what", join(names...))
}

// check says that a week has a check hold, or a gate's open set.
func (s *speech) check(w program.Week) string {
	for _, session := range w.Sessions {
		if slices.ContainsFunc(session.Items, func(p program.Prescription) bool { return p.Check }) {
			if s.openLeast(w) != "" {
				return s.say("week.open")
			}
			return s.say("week.check")
		}
	}
	return ""
}

// openLeast is what a gate week's open set lasts at the least; empty in any other week,
// whose check hold has no least.
func (s *speech) openLeast(w program.Week) string {
	if i := slices.IndexFunc(w.Notes, func(n program.Note) bool { return n.Code == "open-set" }); i >= 0 {
		return s.value(w.Notes[i].Values[0])
	}
	return ""
}

func (s *speech) session(number int, from program.Session, w program.Week) Session {
	brief := s.say("date.brief", "weekday", s.weekdayShort(from.Date), "day", strconv.Itoa(from.Date.Time().Day()))
	v := Session{Number: number, Date: from.Date, Title: s.day(from.Date), Day: s.weekdayShort(from.Date),
		DayDate: brief, Short: brief,
		Minutes: s.minutes(from.Minutes), Length: from.Minutes, Say: s.said(from.Say), Dropped: s.notes(from.Dropped),
		After: int(from.Date-w.Start) + 7*(w.Number-1), Items: make([]Item, 0, len(from.Items))}
	for _, item := range from.Items {
		v.Items = append(v.Items, s.item(item, s.openLeast(w)))
	}
	return v
}

// other is what else the client's weeks hold, Monday first.
func (s *speech) other(p *program.Program) []OtherDay {
	var all []OtherDay
	for _, o := range p.Other {
		v := OtherDay{Day: o.Day, What: o.What}
		if o.Hard {
			v.What = s.say("other.hard", "what", o.What)
		}
		v.Line = s.say("other.day", "day", s.say(weekdays[(o.Day+6)%7]), "what", v.What)
		all = append(all, v)
	}
	slices.SortStableFunc(all, func(a, b OtherDay) int { return int(a.Day+6)%7 - int(b.Day+6)%7 })
	return all
}

// dose writes sets of seconds: "4 × 12 s"; of what is counted "4 × 4".
func (s *speech) dose(counted bool, sets, hold int) string {
	if counted {
		return s.say("amount.reps", "sets", strconv.Itoa(sets), "reps", strconv.Itoa(hold/program.SecondsPerRep))
	}
	return s.say("amount.holds", "sets", strconv.Itoa(sets), "hold", strconv.Itoa(hold))
}

// setsRange writes a week's main work where its days differ: "3–4 × 12 s".
func (s *speech) setsRange(w program.Week) string {
	if w.SetsLeast == 0 || w.SetsLeast == w.Sets {
		return s.dose(s.counts(w.Step), w.Sets, w.Hold)
	}
	if s.counts(w.Step) {
		return s.say("amount.reps_range", "least", strconv.Itoa(w.SetsLeast), "sets", strconv.Itoa(w.Sets), "reps", strconv.Itoa(w.Hold/program.SecondsPerRep))
	}
	return s.say("amount.holds_range", "least", strconv.Itoa(w.SetsLeast), "sets", strconv.Itoa(w.Sets), "hold", strconv.Itoa(w.Hold))
}

// longerGate is what a gate week asks whose gate has a longer set after the others;
// none in any other week.
func (s *speech) longerGate(w program.Week) Gate {
	for _, g := range s.program.Gates {
		if w.Gate && g.Step == w.Step && g.Single > 0 {
			return s.gate(g)
		}
	}
	return Gate{}
}

// fewer says, beside a day's name, that its main sets are fewer than the week's
// most: ", 3 ×".
func (s *speech) fewer(w program.Week, session program.Session) string {
	sets := 0
	for _, item := range session.Items {
		if item.Role == program.RoleMain || item.Check && item.Exercise == w.Exercise && w.Kind == program.WeekBuild {
			sets += item.Sets
		}
	}
	if sets == 0 || sets == w.Sets || s.inTries(w.Step) {
		return ""
	}
	return s.say("amount.fewer", "sets", strconv.Itoa(sets))
}
