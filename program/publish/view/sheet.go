package view

import (
	"slices"
	"strings"

	"gatepost/program"
)

// Sheet is the blank form of an assessment, its fields in the order of the
// assessment file.
type Sheet struct {
	Title  string
	Lead   string    // how to fill it in
	Whose  [2]string // "Name", "Measured": on every page, since sheets part
	Coach  program.Coach
	Lang   string
	Parts  []SheetPart
	Bands  SheetTable
	Rig    SheetPart // under the bands
	Tests  SheetTable
	How    string // title of the drawings
	Panels SheetPanels
	Drawn  []SheetPanel // where nothing is hung: what is tested first, before lean and straddle if there is room
	Notes  string       // title of what is left of the first page, where there are no bands
	Marks  SheetMarks
	Stop   string // when to stop a test
	Foot   string // who decides
	Labels Labels // of which a sheet has PageOf only
}

// SheetPart is a group of fields under a title.
type SheetPart struct {
	Title  string
	Fields []Field
}

// Field is one thing to write: in a line that ends in its unit, or by ticking a
// choice.
type Field struct {
	Label   string
	How     string
	Unit    string
	Choices []string
}

// SheetTable is a group of like things, a row each.
type SheetTable struct {
	Title   string
	How     string
	Columns []string
	First   []string // what stands in the first column already, a row each
}

// SheetPanel is what a drawing of measuring explains; of an exercise its own drawing.
type SheetPanel struct{ Title, Text, ExerciseID string }

// SheetPanels are the drawings. Of who hangs the second is the straight hang, not the lean.
type SheetPanels struct{ Rig, Second, Board, Straddle SheetPanel }

// SheetMarks are the words within the drawings.
type SheetMarks struct{ Anchor, Support, Bar, Lean, Edges, Point, Scale string }

// NewSheet writes the form for a road map in the words of the library: what a hang asks
// for where its hands hang, and its entry in the first rows of the tests. Without one
// it is the form of those who rest on their hands.
func NewSheet(coach program.Coach, lib *program.Library, skill string) (*Sheet, program.Problems) {
	s := newSpeech(coach, lib, &program.Program{Skill: skill})
	hangs := s.road.Hands == program.HandsHang
	sheet := &Sheet{Title: s.say("sheet.title"), Lead: s.say("sheet.lead"), Coach: coach, Lang: s.lang,
		Stop: s.say("stop_rule.short"), Foot: s.say("caution.not_medical")}
	joint := []string{"joint_state.fine", "joint_state.sore", "joint_state.injured"}
	sheet.Parts = []SheetPart{
		s.part("client", s.field("name", ""), s.field("sex", "", "sex.female", "sex.male", "sex.unspecified"),
			s.field("born", "sheet.day"), s.field("measured", "sheet.day"), s.field("share", "", "sheet.share_print", "sheet.share_site")),
		s.part("body", s.bodyFields()...),
		s.part("training", s.field("experience", "sheet.months"), s.field("since", "sheet.day"), s.field("best", "sheet.s"),
			s.field("other", ""), s.field("days", "", weekdays...), s.field("minutes", "sheet.min"), s.field("away", "")),
		s.part("health", s.field("wrists", "", joint...), s.field("elbows", "", joint...), s.field("shoulders", "", joint...),
			s.field("guardian", ""), s.field("conditions", ""), s.field("cleared_by", "")),
		s.part("goal", s.field("step", ""), s.field("hold", "sheet.s"), s.field("by", "sheet.day")),
		s.part("kit", s.field("kit", "")),
	}
	sheet.Bands = s.table("bands", "band", "rest", "at", "force", "at", "force", "at", "force")
	sheet.Rig = s.part("rig", s.field("anchor", "sheet.cm"), s.field("offset", "sheet.cm"), s.field("support", "sheet.cm"),
		s.field("bar", "sheet.cm"), s.field("drops", "sheet.cm"))
	if s.repeats() || s.balances() { // no band hangs, and no lever is reckoned
		sheet.Bands, sheet.Rig, sheet.Drawn, sheet.Notes = SheetTable{}, SheetPart{}, s.drawnFirst(), s.say("card.notes")
	}
	switch {
	case s.lifts():
		sheet.Rig = s.part("blocks", s.field("blocks", "sheet.cm"))
	case s.repeats():
		sheet.Rig = s.part("pads", s.field("pads", "sheet.cm"))
	}
	sheet.Whose = [2]string{s.say("sheet.name"), s.say("sheet.measured")}
	counted, second := []string{"reps", "ahead", "scale"}, "lean"
	if s.repeats() {
		counted = []string{"ahead"}
	}
	if hangs {
		sheet.Rig = s.part("rig", s.field("bar", "sheet.cm"), s.field("anchor", "sheet.cm"), s.field("drops", "sheet.cm"))
		counted, second = []string{"reps"}, "entry"
	}
	sheet.Tests = s.table("tests", slices.Concat([]string{"tested", "bands_drop", "held"}, counted, []string{"rpe", "pain", "clean"})...)
	if s.balances() {
		sheet.Tests = s.table("tests", "tested", "best", "reached", "pain")
	} else if skill != "" {
		sheet.Tests.How += " " + s.say("sheet.steps_listed", "steps", join(s.stepNames()...))
	}
	for _, h := range s.road.Entry {
		sheet.Tests.First = append(sheet.Tests.First, s.say("level.asked", "exercise", s.exercise(h.Exercise), "amount", s.asked(h)))
	}
	for i := 0; i < len(s.road.Steps) && s.balances(); i++ {
		step := &s.road.Steps[i]
		sheet.Tests.First = append(sheet.Tests.First, s.say("level.asked", "exercise", capital(step.Name), "amount", s.reach(step.Gate)))
	}
	sheet.How = s.say("sheet.how")
	sheet.Panels = SheetPanels{s.panel("rig"), s.panel(second), s.panel("board"), s.panel("straddle")}
	say := func(name string) string { return s.say("sheet.mark_" + name) }
	sheet.Marks = SheetMarks{say("anchor"), say("support"), say("bar"), say("lean"), say("edges"), say("point"), say("scale")}
	sheet.Labels.pageOf = s.pageOf()
	return sheet, s.problems()
}

// stepNames are the steps of the road map, easiest first.
func (s *speech) stepNames() []string {
	var all []string
	for i := range s.road.Steps {
		all = append(all, s.road.Steps[i].Name)
	}
	return all
}

// bodyFields are the measures of a body that the road map works with.
func (s *speech) bodyFields() []Field {
	all := []Field{s.field("mass", "sheet.kg"), s.field("height", "sheet.cm"), s.field("arm_span", "sheet.cm")}
	if s.balances() || s.repeats() && !s.lifts() {
		return all
	}
	all = append(all, s.field("straddle", "sheet.degrees"))
	if s.lifts() {
		return append(all, s.field("fold", "sheet.degrees"))
	}
	return append(all, s.field("balance_point", "sheet.cm"))
}

var weekdays = []string{"weekday_short.monday", "weekday_short.tuesday", "weekday_short.wednesday",
	"weekday_short.thursday", "weekday_short.friday", "weekday_short.saturday", "weekday_short.sunday"}

func (s *speech) part(name string, fields ...Field) SheetPart {
	return SheetPart{Title: s.say("sheet.part_" + name), Fields: fields}
}

func (s *speech) field(name, unit string, choices ...string) Field {
	f := Field{Label: s.say("sheet." + name), How: s.say("sheet." + name + "_how")}
	if unit != "" {
		f.Unit = s.say(unit)
	}
	for _, key := range choices {
		f.Choices = append(f.Choices, s.say(key))
	}
	return f
}

func (s *speech) table(name string, columns ...string) SheetTable {
	t := SheetTable{Title: s.say("sheet.part_" + name), How: s.say("sheet." + name + "_how")}
	for _, c := range columns {
		t.Columns = append(t.Columns, s.say("sheet.column_"+c))
	}
	return t
}

func (s *speech) panel(name string) SheetPanel {
	return SheetPanel{Title: s.say("sheet.how_" + name), Text: s.say("sheet.how_" + name + "_text")}
}

// mostPanels is how many drawings the second page has room for; of a lift, which has a lean
// and a straddle to measure, how many beside those.
const mostPanels, mostOfLift = 4, 2

// drawnFirst are the exercises of the entry, and then of the first steps, with their cues.
func (s *speech) drawnFirst() []SheetPanel {
	var all []SheetPanel
	most := mostPanels
	if s.lifts() {
		most = mostOfLift
	}
	add := func(id, title string) {
		e, ok := s.lib.Exercise(id)
		if !ok || len(all) == most || slices.ContainsFunc(all, func(p SheetPanel) bool { return p.ExerciseID == id }) {
			return
		}
		all = append(all, SheetPanel{Title: title, Text: strings.Join(e.Cues, ". ") + ".", ExerciseID: id})
	}
	for _, h := range s.road.Entry {
		add(h.Exercise, s.say("level.asked", "exercise", s.exercise(h.Exercise), "amount", s.asked(h)))
	}
	for i := range s.road.Steps {
		add(s.road.Steps[i].Exercise, capital(s.road.Steps[i].Name))
	}
	return all
}
