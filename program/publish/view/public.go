package view

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// Public is a public program in words: what it needs, the test that finds a
// reader's level, and a program for each level.
type Public struct {
	ID      string // of its file, for addresses
	Title   string
	Blurb   string
	SkillID string
	Skill   string // "Planche"
	Goal    string // "Straddle for 10 s"
	Facts   []Fact
	Bands   []string // the coach's bands, to compare with: "narrow: 1.6 kg at 130 cm, 3 kg at 190 cm"
	Levels  []Level
}

// Fact is something to know, under a label.
type Fact struct{ Label, Text string }

// Level is a starting level. Its View has neither a client nor a date: Client is
// the level's name and Skill the program's, weeks have no days of the year,
// sessions only a weekday, and nothing is forecast for a reader that nobody has
// measured.
type Level struct {
	*View
	Number int
	Name   string // "Level 3"
	Short  string // "tuck to half-open tuck": what its weeks train and try
	Shown  string // what a reader shows to start here, one sentence
	Tests  []Test // what shows that the level is behind: all of them
	Help   HelpTable
}

// Test is one hold, or some repetitions, that finds the level.
type Test struct {
	StepID     string // empty: of an exercise
	Name       string // "half-open tuck"
	ExerciseID string
	Hold       string // "12 s", "8 times"
	RPE        string // "8"
	Seconds    int    // of the hold, for a timer; 0: it is none, or ends when it ends
	Tries      int    // of balance, for a timer; 0: it is a hold, or repetitions
}

// HelpTable is band help by body mass. No rows: the level needs none.
type HelpTable struct {
	Head []string  // of its columns: "weeks 1 to 3, tuck"
	Rows []HelpRow // by mass
	Mean string    // "67 kg", the mass that the weeks are written for
}

// HelpRow is the help for one body, a cell for each column.
type HelpRow struct {
	Mass string
	Help []string
}

// NewPublic writes a public program in the words of the library. Problems are
// those of New.
func NewPublic(coach program.Coach, lib *program.Library, from *program.PublicProgram, levels []program.Level) (*Public, program.Problems) {
	s := newSpeech(coach, lib, &program.Program{Skill: from.Goal.Skill})
	p := &Public{
		ID: from.ID, Title: from.Title, Blurb: from.Blurb, SkillID: from.Goal.Skill, Skill: s.skill(),
		Goal: s.goalOf(from), Facts: s.facts(from),
	}
	for _, b := range from.Bands {
		p.Bands = append(p.Bands, s.band(b))
	}
	for i := range levels {
		s.program = &levels[i].Program
		p.Levels = append(p.Levels, s.level(coach, from, &levels[i], i == len(levels)-1))
	}
	return p, s.problems()
}

func (s *speech) goalOf(from *program.PublicProgram) string {
	return capital(s.say("level.goal", "step", s.step(from.Goal.Step), "hold", s.length(round(from.Goal.Hold))))
}

// facts are what a reader has to have: time and kit.
func (s *speech) facts(from *program.PublicProgram) []Fact {
	t := from.Training
	days := make([]string, len(t.Days))
	for i, day := range t.Days {
		days[i] = s.say("weekday_short." + strings.ToLower(day.String()))
	}
	bands := s.say("find.without_bands")
	if n := len(from.Bands); n > 0 {
		bands = s.say(s.plural("find.with_bands", n), "number", strconv.Itoa(n))
	}
	return []Fact{
		{s.say("find.goal"), s.goalOf(from)},
		{s.say("find.days"), s.say("find.days_a_week", "number", strconv.Itoa(len(t.Days)), "days", strings.Join(days, ", "))},
		{s.say("find.session"), s.minutes(t.Minutes)},
		{s.say("find.kit"), s.kit(from.Kit)},
		{s.say("find.bands"), bands},
	}
}

// kit lists what is needed.
func (s *speech) kit(kit []string) string {
	var names []string
	for _, thing := range kit {
		names = append(names, s.thing(thing))
	}
	return cmp.Or(join(names...), s.say("exercise.no_kit"))
}

// band tells what a band pulls, for readers to compare theirs with.
func (s *speech) band(b program.Band) string {
	var pulls []string
	for _, p := range b.Pulls {
		pulls = append(pulls, s.say("find.pull", "force", s.unit("kilograms", s.decimal(tenth(p.Force/standardGravity))), "length", s.centimetres(p.At)))
	}
	return s.say("find.band", "name", b.Name, "rest", s.centimetres(b.Rest), "pulls", strings.Join(pulls, ", "))
}

func tenth(x float64) float64 { return float64(round(10*x)) / 10 }

// level writes one level.
func (s *speech) level(coach program.Coach, from *program.PublicProgram, l *program.Level, last bool) Level {
	number := strconv.Itoa(l.Number)
	v := Level{
		Number: l.Number, Name: s.say("level.name", "number", number), Short: s.levelOf(l),
		Tests: s.tests(l), Help: s.helpTable(l),
	}
	next := []string{"hold", s.levelFor(l.Next, l.NextFor), "rpe", s.decimal(l.RPE), "number", strconv.Itoa(l.Number + 1)}
	after := "level.after_entry"
	if l.Next != "" {
		after = "level.after"
		next = append(next, "step", s.step(l.Next))
	}
	if l.Longer != "" {
		v.Short = s.say("level.longer", "step", s.step(l.Longer))
	}
	if last {
		after = "level.after_last"
	}
	v.Shown = s.shown(l)
	v.View = s.undated(coach, from, l, &v)
	v.After = s.say(after, next...)
	return v
}

// levelOf names a level after what its weeks train, from the first to the last, its
// next step among it where they try that: "planche lean to tuck".
func (s *speech) levelOf(l *program.Level) string {
	var names []string
	last := ""
	for _, w := range l.Program.Weeks {
		if name := s.name(w); w.Sets > 0 && !slices.Contains(names, name) {
			names, last = append(names, name), w.Step
		}
	}
	next := s.step(l.Next)
	switch {
	case l.Next != "" && !slices.Contains(names, next) && tries(&l.Program, l.Next):
		names = append(names, next)
	case last != "" && last != l.Next && (last == l.Helped || helped(&l.Program, last)): // past the next step, with help
		names[len(names)-1] = s.say("level.helped", "step", s.step(last))
	}
	switch len(names) {
	case 0:
		return s.say("level.entry")
	case 1:
		return names[0]
	}
	return s.say("level.from_to", "from", names[0], "to", names[len(names)-1])
}

// helped reports whether a program trains a step with help only.
func helped(p *program.Program, step string) bool {
	return !slices.ContainsFunc(p.Weeks, func(w program.Week) bool { return w.Step == step && w.Rig.Free() })
}

// tries reports whether any session of a program tests a step.
func tries(p *program.Program, step string) bool {
	for item := range itemsOf(p.Weeks...) {
		if item.Role == program.RoleTest && item.Step == step {
			return true
		}
	}
	return false
}

// tests are what shows that a level is behind: its next step, or all of the entry.
func (s *speech) tests(l *program.Level) []Test {
	if step, ok := s.road.Step(l.Next); ok && s.balances() {
		return []Test{{StepID: l.Next, Name: s.step(l.Next), ExerciseID: step.Exercise, Hold: s.reach(step.Gate), Tries: step.Gate.Sets}}
	} else if ok {
		t := Test{StepID: l.Next, Name: s.step(l.Next), ExerciseID: step.Exercise, Hold: s.length(l.NextFor), RPE: s.decimal(l.RPE)}
		if !s.repeats() {
			t.Seconds = l.NextFor
		}
		return []Test{t}
	}
	var all []Test
	for _, h := range l.Entry {
		t := Test{Name: s.exercise(h.Exercise), ExerciseID: h.Exercise, Hold: s.asked(h), RPE: s.decimal(l.RPE)}
		if h.Reps == 0 && h.Fold == 0 {
			t.Seconds = round(h.Seconds)
		}
		all = append(all, t)
	}
	return all
}

// levelFor is how long a step is held to show a level, or of balance how many tries reach.
func (s *speech) levelFor(step string, hold int) string {
	if found, ok := s.road.Step(step); ok && s.balances() {
		return s.reach(found.Gate)
	}
	return s.length(hold)
}

// asked writes how much of something is asked for: "30 s", "8 times", "18 cm, 15 s", "130°".
func (s *speech) asked(h program.Hold) string {
	switch {
	case h.Reps > 0:
		return s.say(s.plural("unit.times", h.Reps), "number", strconv.Itoa(h.Reps))
	case h.Fold > 0:
		return s.unit("degrees", strconv.Itoa(round(h.Fold*180/math.Pi)))
	case h.Ahead > 0:
		return join(s.centimetres(h.Ahead), s.seconds(round(h.Seconds)))
	}
	return s.seconds(round(h.Seconds))
}

// shown says what somebody shows to start at a level, and what not yet.
func (s *speech) shown(l *program.Level) string {
	next := []string{"next", s.step(l.Next), "next_hold", s.levelFor(l.Next, l.NextFor)}
	switch {
	case len(l.Entry) > 0:
		return s.say("level.from_entry", "entry", s.entry())
	case l.Step == "" && len(s.road.Entry) > 0:
		return s.say("level.from_entered", next...)
	case l.Step == "":
		return s.say("level.from_floor", next...)
	}
	return s.say("level.from_step", append(next, "step", s.step(l.Step), "hold", s.levelFor(l.Step, l.Hold), "rpe", s.decimal(l.RPE))...)
}

// entry is what a road map asks for before its steps: "still active hang for 30 s, …".
func (s *speech) entry() string {
	var all []string
	for _, h := range s.road.Entry {
		all = append(all, s.say("level.asked", "exercise", s.exercise(h.Exercise), "amount", s.asked(h)))
	}
	return strings.Join(all, "; ")
}

// undated is the view of a level's program, for every renderer: that of a client,
// with what only a client has left out.
func (s *speech) undated(coach program.Coach, from *program.PublicProgram, l *program.Level, level *Level) *View {
	p := l.Program
	p.Client, p.Outline, p.Forecasts = program.Client{}, nil, heldOnly(p.Forecasts)
	v := s.view(coach, &p)
	v.Client = s.say("level.heading", "level", level.Name, "step", level.Short)
	v.First, v.Short, v.Skill = v.Client, level.Name, from.Title
	v.Title = s.say("level.title", "program", from.Title, "level", level.Name)
	v.Goal, v.Where = s.goalOf(from), level.Shown
	v.of(s.lib, &l.Program)
	v.Block = s.say(s.plural("level.block", len(p.Weeks)), "weeks", strconv.Itoa(len(p.Weeks)))
	v.Measured, v.On, v.Start, v.Places = 0, "", 0, from.Places
	v.Forecast = Forecast{Range: s.say("level.no_date")}
	v.CueWorth, v.ForCoach = nil, CoachPage{} // the body they speak of is not the reader's
	v.Labels.Measured, v.Labels.Dates = "", ""
	v.Labels.MadeFor, v.Labels.Ladder = s.say("level.made_for"), s.say("level.ladder")
	s.takeDates(v)
	return v
}

// takeDates leaves of all dates only the weekdays.
func (s *speech) takeDates(v *View) {
	var days []string
	for i := range v.Weeks {
		w := &v.Weeks[i]
		w.Start, w.Dates, w.From = 0, "", ""
		for j := range w.Sessions {
			d := &w.Sessions[j]
			d.Title, d.DayDate, d.Short = s.weekday(d.Date), d.Day, d.Day
			d.Date = 0
			days = append(days, d.Title)
		}
	}
	for i := range v.Cards { // one for each session
		v.Cards[i].Date = days[i]
	}
	v.CardText.Foot = v.Skill
}

// heldOnly keeps of forecasts what a level has shown.
func heldOnly(all []program.Forecast) []program.Forecast {
	kept := make([]program.Forecast, len(all))
	for i, f := range all {
		kept[i] = program.Forecast{Step: f.Step, Held: f.Held}
	}
	return kept
}

// helpTable has a row for each mass and a column for each stretch of weeks.
func (s *speech) helpTable(l *program.Level) HelpTable {
	t := HelpTable{Mean: s.unit("kilograms", strconv.Itoa(round(l.Mass)))}
	for _, h := range l.Help {
		weeks := s.say("level.weeks", "from", strconv.Itoa(h.From), "to", strconv.Itoa(h.To))
		if h.From == h.To {
			weeks = s.say("week.number", "number", strconv.Itoa(h.From))
		}
		t.Head = append(t.Head, capital(join(weeks, s.step(h.Step))))
		for i, mass := range h.Mass {
			if i == len(t.Rows) {
				t.Rows = append(t.Rows, HelpRow{Mass: s.unit("kilograms", s.decimal(mass))})
			}
			t.Rows[i].Help = append(t.Rows[i].Help, s.kilograms(h.Help[i]))
		}
	}
	return t
}
