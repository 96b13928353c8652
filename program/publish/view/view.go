// Package view is the one place where a training program becomes text: order,
// rounding, units, and dates in words. Every renderer (chart, card, page,
// calendar, terminal) prints the strings of one View, so that the same
// "4 × 12 s, narrow + middle" stands on all of them.
//
// Rules of writing:
//   - Help is kilograms, newtons / 9.80665, to the nearest half.
//   - Holds are whole seconds, rests seconds below two minutes and then minutes.
//   - Leans and straps are whole centimetres; a lean also in hand-breadths.
//   - Shares of the full position are whole per cent.
//   - Forecasts name months, never days, and never one date alone; chances are
//     words: unlikely (below 20 %), open (to 60), likely (to 85), very likely.
//
// Words for readers, units and × among them, come from the words file, which
// puts no-break spaces between a number and its unit. Body mass, health, birth date and
// torques have no field in a View, and so cannot be printed.
package view

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"gatepost/program"
)

// View is a program in words. Empty strings and lists mean that there is
// nothing to say, and renderers leave their place out.
type View struct {
	Title    string // "Planche program for Maren"
	Client   string // full name
	First    string // what the client is called, for pages
	Short    string // of a level its number, where its name has no room; a client has none
	Slug     string // for file names; never on the site
	Page     string // random part of the page's address
	Public   bool   // the client agreed to a page on the site
	Plain    bool   // the page shows no preparation
	Large    bool   // printed for weak eyes
	SkillID  string
	Skill    string // "Planche"
	Goal     string // "Straddle for 10 s by 30 November 2027"
	GoalStep string // step id
	Coach    program.Coach
	Lang     string // BCP 47 tag of the words
	Measured program.Date
	On       string // the day measured, in words
	Start    program.Date
	Block    string // "12 weeks, 11 January – 4 April 2027"
	Number   string // of the plan that was kept, "1" before any was: for others to read

	Withheld []string // why no program may be made yet; no weeks then

	Where    string // where the client is today, one sentence
	Forecast Forecast
	Ladder   []Rung // this body's order of steps
	Weeks    []Week
	Other    []OtherDay // the client's other training
	Turns    string     // how sides share an odd number of sets of a step; empty: no step is held so
	Pictures []Picture  // the block's positions and the goal's
	Gates    []Gate
	Outline  []string // the road from here to the goal
	After    string   // the same in a line
	Notes    []string // about the whole program, none of joints or age
	AllNotes []string // the same with those: for the coach's own eyes
	LeftOut  []string // of Notes, what the kit leaves out of the ladder, and what opens it

	Cue      string // the one cue of the block
	CueWorth []CueWorth
	Advice   Advice
	Labels   Labels

	ChartTerms, PageTerms []string // what wall chart and one-page plan have words for, explained

	Made   program.Date // the day the plan on the wall was made; of the first, the day measured
	Events []Event      // of its calendar, in order

	Progress Progress // what was done so far; nothing where there is no log

	Cards    []Card // one a session
	CardText CardWords

	ForCoach CoachPage // no other sheet or page may print it

	data    func() ([]byte, error) // see JSON
	version func() string          // see Version

	Places program.Places // where the assessment's values were written, for warnings; New leaves it empty
}

// OtherDay is a weekday with training of another kind: "bell practice, hard".
type OtherDay struct {
	Day  time.Weekday
	Line string // "Tue: bell practice"
	What string
}

// CueWorth is what a better position saves: "worth about 2 kg of band help".
type CueWorth struct{ Cue, Worth string }

// Advice is what every handout repeats, each under its title.
type Advice struct {
	DayTitle     string
	DayRule      []string // how a day's sets answer to RPE
	DayShort     string   // the same in one sentence
	StopTitle    string
	StopRule     []string // phrases: "sharp pain anywhere"
	StopLine     string   // the phrases in a line
	StopShort    string   // the same in one sentence
	PainTitle    string
	PainRule     []string // what a pain of so much of ten means
	MissedTitle  string
	Missed       []string // a session missed, a week ill
	CautionTitle string
	Cautions     []string
	NotMedical   string // who decides
}

// Forecast is the goal's date as a range, and its chance in words.
type Forecast struct {
	Early, Likely, Late string // "August 2027"; empty: more than three years away
	EarlyOn, LikelyOn   program.Date
	LateOn, GoalOn      program.Date
	Range               string // the three in a phrase
	Chance              string // "open"; empty when the goal is met already
	ChanceKey           string // "unlikely", "open", "likely", "very_likely" or ""
	ChanceLine          string // "By 30 November 2027: open (between 1 in 5 and 3 in 5)"
	Sentence            string // all of it
}

// Rung is one step of the ladder.
type Rung struct {
	StepID, Step string
	ExerciseID   string
	Share        string // of the full position, "75 %"
	ShareOf1     float64
	State        RungState
	StateWord    string
	When         string         // "most likely about June 2027"; empty when held or not forecast
	Month        string         // "Jun 2027"
	Stance       program.Stance // held free
}

// RungState says where a step stands for the client.
type RungState string

const (
	RungHeld   RungState = "held"   // shown, for the goal's seconds
	RungBehind RungState = "behind" // below the first week's step, not shown so long
	RungNow    RungState = "now"    // the first week's step
	RungBlock  RungState = "block"  // trained in this block
	RungLater  RungState = "later"
	RungGoal   RungState = "goal"
)

// Gate is what must be shown before the next step.
type Gate struct {
	StepID, Step string
	Dose         string   // "3 × 10 s"; with a longer set "3 × 8 s, then one of 10 s"
	Sets, Longer string   // its two parts; none of balance
	Terms        []string // "3 × 10 s, without a band", "clean in a side-view video" …
	Words        string   // the terms in a line
	Short        string   // "advanced tuck: 3 × 10 s free"
	Week         int      // last week on the step; 0: not in this block
}

// New writes a program in the words of the library. Kept are all plans of the
// client that were kept, in order, the last of them the program's own; none where
// it is the first. Problems name each missing word once, with the words file; the
// View is complete but for those.
func New(coach program.Coach, lib *program.Library, p *program.Program, kept ...program.PlanVersion) (*View, program.Problems) {
	s := newSpeech(coach, lib, p)
	wall := program.PlanVersion{Version: 1, On: p.Measured, Clock: p.Client.Clock}
	if n := len(kept); n > 0 {
		wall, kept = kept[n-1], kept[:n-1]
	}
	days, turns := s.before(kept)
	s.turns = turns
	v := s.view(coach, p)
	if len(v.Withheld) == 0 {
		v.ForCoach = s.coachPage(p)
		v.Made, v.Events = wall.On, s.calendar(days, v, &wall)
	}
	return v, append(s.problems(), s.wishProblems(p.Wishes)...)
}

func (s *speech) view(coach program.Coach, p *program.Program) *View {
	v := &View{
		Client: p.Client.Name, First: first(p), Slug: p.Client.Slug, Page: p.Client.Page,
		Public: p.Client.Share == program.ShareSite && p.Client.Page != "",
		Plain:  p.Client.Plain,
		Large:  p.Client.Large, Coach: coach, Lang: s.lang, SkillID: p.Skill, Skill: s.skill(), GoalStep: p.Goal.Step,
		Measured: p.Measured, On: s.date(p.Measured), Start: p.Start, Number: strconv.Itoa(max(1, p.Version)),
	}
	v.of(s.lib, p)
	v.Title = s.say("plan.title", "skill", v.Skill, "name", v.Client)
	v.Goal = capital(s.say("plan.goal", "step", s.step(p.Goal.Step), "hold", s.length(p.Goal.Hold), "date", s.date(p.Goal.By)))
	v.Advice, v.Labels = s.advice(), s.labels(v, p)
	if len(p.Withheld) > 0 {
		v.Withheld = s.notes(p.Withheld)
		return v
	}
	v.Block = s.block(p)
	v.Where = s.where(p)
	v.Forecast = s.forecast(p)
	v.Ladder = s.ladder(p)
	v.Weeks = s.weeks(p.Weeks, s.turns.after(p.Weeks))
	v.Other = s.other(p)
	v.Turns = s.takingTurns(p.Weeks)
	v.Pictures = s.pictures(p)
	v.Gates = s.gates(p)
	v.Outline = s.outline(p)
	v.After = sentence(strings.Join(v.Outline, "; "))
	v.Notes, v.AllNotes = s.notes(public(p.Notes)), s.notes(p.Notes)
	v.LeftOut = s.notes(slices.DeleteFunc(public(p.Notes), func(n program.Note) bool { return !strings.HasPrefix(n.Code, "left-out-") }))
	v.Cue = s.cue(p)
	v.CueWorth = s.cueWorth(p)
	v.ChartTerms, v.PageTerms = s.blockTerms(v, true), s.blockTerms(v, false)
	v.Cards, v.CardText = s.cards(p, v.Weeks, coach), s.cardWords(v)
	for i := range v.Cards { // a code leads to its day, where that has a page
		v.Cards[i].Link = cmp.Or(dayAddress(v, v.Cards[i].day), v.Cards[i].Link)
	}
	return v
}

// of says which program a view is of. It is written as JSON when that is first asked for,
// and once: sites have no use for it.
func (v *View) of(lib *program.Library, p *program.Program) {
	data := sync.OnceValues(func() ([]byte, error) { return JSON(lib, p) })
	v.data, v.version = data, sync.OnceValue(func() string {
		text, err := data()
		if err != nil {
			return ""
		}
		sum := sha256.Sum256(text)
		return hex.EncodeToString(sum[:])[:7]
	})
}

// JSON is the program for machines.
func (v *View) JSON() ([]byte, error) { return v.data() }

// Version is seven characters of the program's hash, by which an old chart on the wall is
// told from a new one: for paper, as it tells of the whole program. What is shared has the
// plan's number.
func (v *View) Version() string {
	if v.version == nil {
		return v.Number
	}
	return v.version()
}

// VersionLine is "Version 3b1ed0f"; of plans that were kept with their number.
func (v *View) VersionLine() string {
	return strings.Replace(v.Labels.version, "{version}", v.Version(), 1)
}
