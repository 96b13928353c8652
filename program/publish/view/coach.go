package view

import (
	"math"
	"slices"
	"strconv"

	"gatepost/program"
)

// CoachPage is what only the coach sees: the block as charts, what better
// positions are worth, and everything the planner noted, joints and age among it.
type CoachPage struct {
	Title string // "For the coach"
	Lead  string

	HelpTitle, SecondsTitle, ForecastTitle, WorthTitle, NotesTitle, WeeksTitle, DroppedTitle string

	Weeks     []WeekValue
	Legend    string // how the charts by weeks tell the kinds of weeks apart
	HelpAxis  Axis   // kg
	HoldAxis  Axis   // s
	WorkAxis  Axis   // counted straight-arm seconds
	Ceiling   string
	Arrivals  []Arrival
	DateAxis  Axis // days
	GoalDate  string
	Worth     []Worth
	WorthAxis Axis // kg
	WorthLead string

	Rig      Picture // the first banded week, drawn to its anchor; not Drawn without
	RigTitle string
	RigWords []string

	AsksTitle, OffsetsTitle, WishesTitle string
	Asks                                 []string // what the coach has to answer
	Wishes                               []string // of the coach's own hand, and what became of them
	Offsets                              []string // "tuck: held about 6 % heavier than drawn: hips lower?"

	WeekNotes []string // "Week 3: …"
	Dropped   []string
}

// WeekValue is a week in numbers, each with its words.
type WeekValue struct {
	Name          string
	Kind          program.WeekKind
	Hold          int
	HoldText      string
	HelpKG        float64
	HelpText      string
	Seconds, Most float64 // counted straight-arm seconds, and the most allowed; 0: not limited
	SecondsText   string
}

// Arrival is when a step is likely to be held.
type Arrival struct {
	Step                string
	Early, Likely, Late program.Date
	Text                string
	Held, Goal          bool
}

// Worth is a better position in band help, or of a lift in block.
type Worth struct {
	Cue  string
	Help float64 // kg, or cm
	Text string
}

func (s *speech) coachPage(p *program.Program) CoachPage {
	say := func(name string) string { return s.say("coach." + name) }
	c := CoachPage{
		Title: say("title"), Lead: say("lead"), HelpTitle: say("help"), SecondsTitle: say("seconds"),
		ForecastTitle: say("forecast"), WorthTitle: say("worth"), NotesTitle: say("notes"), WeeksTitle: say("weeks"),
		DroppedTitle: say("dropped"), Ceiling: say("ceiling"), Legend: say("legend"), GoalDate: s.date(p.Goal.By), RigTitle: say("rig"),
	}
	c.Weeks = s.weekValues(p)
	if !s.balances() && !slices.ContainsFunc(c.Weeks, func(w WeekValue) bool { return w.HelpKG > 0 }) {
		c.HelpTitle = say("help_none")
	}
	if !s.balances() {
		c.Arrivals, c.DateAxis = s.arrivals(p), s.dateAxis(p)
	}
	c.worths(s, p)
	c.rig(s, p)
	c.axes(s)
	c.AsksTitle, c.OffsetsTitle, c.WishesTitle = say("asks"), say("offsets"), s.say("wish.title")
	c.Wishes = s.wishes(p.Wishes)
	c.Asks, c.Offsets = s.notes(p.Asks), s.offsets(p.Offsets)
	c.WeekNotes, c.Dropped = s.weekNotes(p), s.dropped(p)
	return c
}

func (s *speech) weekValues(p *program.Program) []WeekValue {
	var all []WeekValue
	for _, w := range p.Weeks {
		v := WeekValue{Name: strconv.Itoa(w.Number), Kind: w.Kind, Hold: w.Hold, HelpKG: HalfKilograms(w.Help + w.Scale),
			HelpText: s.kilograms(w.Help + w.Scale), Seconds: float64(w.HalfSeconds) / 2, Most: float64(w.MostHalf) / 2}
		if s.inTries(w.Step) {
			v.Hold = w.Sets
		}
		if v.Hold > 0 {
			v.HoldText = strconv.Itoa(v.Hold)
		}
		if w.HalfSeconds > 0 {
			v.SecondsText = strconv.Itoa(round(v.Seconds))
		}
		all = append(all, v)
	}
	return all
}

func (c *CoachPage) axes(s *speech) {
	var help, hold, work float64
	for _, w := range c.Weeks {
		help, hold = max(help, w.HelpKG), max(hold, float64(w.Hold))
		work = max(work, w.Seconds, w.Most)
	}
	c.HelpAxis = s.axis("help_axis", 1.3*help, 3) // room for words above the line
	c.HoldAxis = s.axis("hold_axis", 1.1*hold, 3)
	c.WorkAxis = s.axis("seconds_axis", 1.1*work, 5)
}

// arrivals are the ladder's steps up to the goal.
func (s *speech) arrivals(p *program.Program) []Arrival {
	var all []Arrival
	for _, l := range p.Steps {
		f := forecastOf(p, l.ID)
		a := Arrival{Step: s.step(l.ID), Early: f.Early, Likely: f.Likely, Late: f.Late, Held: f.Held, Goal: l.ID == p.Goal.Step}
		switch {
		case f.Held:
			a.Text = s.say("rung.held")
		case f.Likely == 0:
			a.Text = s.say("paper.far")
		default:
			a.Text = s.say("date.month", "month", s.monthShort(f.Likely), "year", strconv.Itoa(f.Likely.Time().Year()))
		}
		all = append(all, a)
		if a.Goal {
			break
		}
	}
	return all
}

// worths are the cues as band help, largest first. Mass is none of them.
func (c *CoachPage) worths(s *speech, p *program.Program) {
	most := 0.0
	for _, cue := range p.Cues {
		w := Worth{Cue: s.say("coach.cue_"+cue.Cue, "tried", s.tried(cue)), Help: HalfKilograms(cue.Help), Text: s.kilograms(cue.Help)}
		if cue.Rig.Block > 0 {
			w.Help, w.Text = math.Round(100*cue.Rig.Block), s.say("coach.worth_block", "length", s.centimetres(cue.Rig.Block), "share", s.percent(cue.Saves))
		} else if strap := s.drop(cue.Rig); strap != "" {
			w.Text = s.say("coach.about_strap", "help", w.Text, "band", s.rig(cue.Rig), "strap", strap)
		} else if !cue.Rig.Free() {
			w.Text = s.say("coach.about", "help", w.Text, "band", s.rig(cue.Rig))
		}
		most = max(most, w.Help)
		c.Worth = append(c.Worth, w)
	}
	slices.SortStableFunc(c.Worth, func(a, b Worth) int { return int(2*b.Help) - int(2*a.Help) })
	c.WorthAxis = s.axis("worth_axis", most, 4)
	c.WorthLead = s.say("coach.worth_lead", "step", s.step(p.Goal.Step))
}

// tried is the size of the change that a cue was tried with.
func (s *speech) tried(c program.CueWorth) string {
	switch c.Cue {
	case "depression":
		return s.centimetres(c.Tried)
	case "straddle", "fold":
		return s.unit("degrees", strconv.Itoa(round(c.Tried*180/math.Pi)))
	}
	return s.percent(c.Tried)
}

// rig is the first week that has a band.
func (c *CoachPage) rig(s *speech, p *program.Program) {
	for _, w := range p.Weeks {
		if w.Rig.Free() || !w.Stance.Drawn() {
			continue
		}
		c.Rig = Picture{Stance: w.Stance, Step: s.name(w), When: s.say("week.number", "number", strconv.Itoa(w.Number)), Help: s.kilograms(w.Help)}
		c.RigWords = []string{c.Rig.When + ": " + join(c.Rig.Step, s.rig(w.Rig), s.drop(w.Rig)), s.spotIn(w)}
		return
	}
}

// spotIn says where the hands go in a week's main hold.
func (s *speech) spotIn(w program.Week) string {
	for item := range itemsOf(w) {
		if spot := s.spot(item); item.Role == program.RoleMain && !item.Rig.Free() && spot != "" {
			return capital(spot) + "."
		}
	}
	return ""
}

// offsetSeen is the least share of a load that an offset is worth a word for (our
// judgement: a hip bent by five degrees less).
const offsetSeen = 0.03

// offsets says what is known of how a client's holds differ from the model: those
// that are larger than their own doubt.
func (s *speech) offsets(all []program.Offset) []string {
	var out []string
	for _, o := range all {
		share := math.Expm1(o.Ln)
		if math.Abs(share) < offsetSeen || math.Abs(o.Ln) < o.Spread {
			continue
		}
		key, what := "coach.offset_step", s.step(o.Step)
		if o.Step == "" {
			key, what = "coach.offset_exercise", s.exercise(o.Exercise)
		}
		if share < 0 {
			key += "_lighter"
		}
		out = append(out, s.say(key, "what", capital(what), "share", s.percent(math.Abs(share))))
	}
	return out
}

// weekNotes are what weeks have to say, each thing once, with the weeks it is said of.
func (s *speech) weekNotes(p *program.Program) []string {
	said, weeks := s.gathered(p, func(w program.Week) []program.Note { return w.Notes })
	for i, note := range said {
		key, name := "week.number", "number"
		if len(weeks[note]) > 1 {
			key, name = "week.numbers", "numbers"
		}
		said[i] = s.say(key, name, runs(weeks[note])) + ": " + note
	}
	return said
}

// gathered are notes of weeks in words, each thing once, and for each the week of every
// time that it is said.
func (s *speech) gathered(p *program.Program, of func(program.Week) []program.Note) (said []string, weeks map[string][]int) {
	weeks = map[string][]int{}
	for _, w := range p.Weeks {
		for _, note := range s.notes(of(w)) {
			if weeks[note] == nil {
				said = append(said, note)
			}
			weeks[note] = append(weeks[note], w.Number)
		}
	}
	return said, weeks
}

// runs writes numbers that rise, those in a row as one: "1–3, 5".
func runs(numbers []int) string {
	var all []string
	for i := 0; i < len(numbers); {
		last := i
		for last+1 < len(numbers) && numbers[last+1] <= numbers[last]+1 {
			last++
		}
		run := strconv.Itoa(numbers[i])
		if numbers[last] > numbers[i] {
			run += "–" + strconv.Itoa(numbers[last])
		}
		all, i = append(all, run), last+1
	}
	return join(all...)
}

// dropped is what sessions had no room for, each thing once, with how often.
func (s *speech) dropped(p *program.Program) []string {
	said, weeks := s.gathered(p, func(w program.Week) (all []program.Note) {
		for _, session := range w.Sessions {
			all = append(all, session.Dropped...)
		}
		return all
	})
	for i, note := range said {
		said[i] = s.say("coach.times", "what", note, "count", strconv.Itoa(len(weeks[note])))
	}
	return said
}
