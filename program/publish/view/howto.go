package view

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"gatepost/program"
)

// HowTo is how this client's exercises of the block are done, in the order of a session.
type HowTo struct {
	Title  string // "How to do it: Maren"
	Name   string // "How to do it"
	Lead   string
	Guides []Guide
	Labels GuideLabels
}

// GuideLabels are the captions of an exercise's parts.
type GuideLabels struct{ SetUp, Cues, Faults, Easier, Harder string }

// Guide is one exercise in the client's language, in plain text.
type Guide struct {
	ExerciseID, Name string
	Role             string            // "Main hold"
	Pictures         []program.Picture // how it begins and ends; none: it is not drawn
	SetUp            []string          // paragraphs
	Cues, Faults     []string
	Easier, Harder   []string // paragraphs
}

// NewHowTo writes how a program's exercises are done; drawn gives the pictures of an
// exercise on a day. Problems name the words that are missing; a withheld program has no
// guides.
func NewHowTo(coach program.Coach, lib *program.Library, p *program.Program, drawn Drawn) (*HowTo, program.Problems) {
	s := newSpeech(coach, lib, p)
	h := &HowTo{Title: s.say("howto.of", "name", p.Client.Name), Name: s.say("howto.title"), Lead: s.say("howto.lead"),
		Labels: GuideLabels{s.say("exercise.set_up"), s.say("exercise.cues"), s.say("exercise.faults"), s.say("exercise.easier"), s.say("exercise.harder")}}
	for _, item := range exercisesOf(p) {
		e, ok := lib.Exercise(item.Exercise)
		if !ok {
			continue
		}
		h.Guides = append(h.Guides, Guide{
			ExerciseID: e.ID, Name: e.Name, Role: s.say("role." + string(item.Role)), Pictures: guidePictures(p, e.ID, drawn),
			SetUp: paragraphs(e.SetUp), Cues: e.Cues, Faults: e.Faults, Easier: paragraphs(e.MakeEasier), Harder: paragraphs(e.MakeHarder),
		})
	}
	return h, s.problems()
}

// SessionOrder is the order of a session's parts; a test is of what is trained.
var SessionOrder = []program.Role{program.RolePrepare, program.RoleAhead, program.RoleMain, program.RoleSecond, program.RoleTest,
	program.RoleStrength, program.RolePull, program.RolePush, program.RoleTrunk, program.RoleMobility}

// exercisesOf are a block's exercises, of one planned anew those from the week on in which that
// was, each where it first plays the earliest of its parts.
func exercisesOf(p *program.Program) []program.Prescription {
	var all []program.Prescription
	rank := func(i program.Prescription) int { return slices.Index(SessionOrder, i.Role) }
	weeks := slices.DeleteFunc(slices.Clone(p.Weeks), func(w program.Week) bool { return w.Start+7 < p.From })
	for item := range itemsOf(weeks...) {
		n := slices.IndexFunc(all, func(i program.Prescription) bool { return i.Exercise == item.Exercise })
		switch {
		case n < 0:
			all = append(all, item)
		case rank(item) < rank(all[n]):
			all[n] = item
		}
	}
	slices.SortStableFunc(all, func(x, y program.Prescription) int { return cmp.Compare(rank(x), rank(y)) })
	return all
}

// guidePictures are of an exercise where the client always is, or, where it is only done
// elsewhere, of the kit there.
func guidePictures(p *program.Program, exercise string, drawn Drawn) (away []program.Picture) {
	for _, w := range p.Weeks {
		for _, day := range w.Sessions {
			if !slices.ContainsFunc(day.Items, func(i program.Prescription) bool { return i.Exercise == exercise }) {
				continue
			}
			of, otherwise := drawn(day.Date)
			if !otherwise {
				return fuller(ownPictures(p, exercise), of(exercise))
			}
			if away == nil {
				away = of(exercise)
			}
		}
	}
	return away
}

// fuller are the client's own pictures, or the page's where those show more: of a press its
// lowest point, too.
func fuller(own, page []program.Picture) []program.Picture {
	if len(own) < len(page) {
		return page
	}
	return own
}

// ownPictures are the client's own body in an exercise, as the block's weeks have it: with
// the first rig that helps, and free.
func ownPictures(p *program.Program, exercise string) []program.Picture {
	var all []program.Picture
	step := heldAs(p, exercise)
	for _, w := range p.Weeks {
		if w.Exercise == exercise && w.Stance.Drawn() {
			all, step = append(all, program.Picture{Stance: w.Stance}), cmp.Or(w.Step, step)
			break
		}
	}
	if l, ok := load(p, step); ok && l.Stance.Drawn() && (len(all) == 0 || all[0].Stance.Help > 0) {
		all = append(all, program.Picture{Stance: l.Stance})
	}
	return all
}

// heldAs is the first step that a block's items hold by an exercise.
func heldAs(p *program.Program, exercise string) string {
	for item := range itemsOf(p.Weeks...) {
		if item.Exercise == exercise && item.Step != "" {
			return item.Step
		}
	}
	return ""
}

var (
	linked     = regexp.MustCompile(`\[([^\]]*)\]\([^)]*\)`)
	emphasised = regexp.MustCompile(`(\*\*|\*|__|_)(\S(?:.*?\S)?)(\*\*|\*|__|_)`)
	blankLine  = regexp.MustCompile(`\n[ \t]*\n`)
)

// paragraphs are an exercise's Markdown as plain text: links by their words, no emphasis.
func paragraphs(markdown string) []string {
	var all []string
	for _, part := range blankLine.Split(strings.TrimSpace(markdown), -1) {
		text := linked.ReplaceAllString(strings.Join(strings.Fields(part), " "), "$1")
		if text = emphasised.ReplaceAllString(text, "$2"); text != "" {
			all = append(all, text)
		}
	}
	return all
}
