package site

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"html/template"
	"strconv"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// planData is an exercise plan for machines: JSON-LD in the vocabulary of
// schema.org, whose type is ExercisePlan. Empty properties are left out.
type planData struct {
	Context      string     `json:"@context"`
	Type         string     `json:"@type"`
	Name         string     `json:"name"`
	Description  string     `json:"description,omitempty"`
	URL          string     `json:"url,omitempty"`
	Language     string     `json:"inLanguage"`
	Author       *partyData `json:"author,omitempty"`
	ExerciseType string     `json:"exerciseType,omitempty"`
	Duration     string     `json:"activityDuration,omitempty"` // ISO 8601
	Repetitions  int        `json:"repetitions,omitempty"`
	Rest         string     `json:"restPeriods,omitempty"`
	Intensity    string     `json:"intensity,omitempty"`
}

type partyData struct {
	Type string `json:"@type"`
	Name string `json:"name"`
}

// plan begins the data of a page.
func (b *builder) plan(f *frame) *planData {
	return &planData{
		Context: "https://schema.org", Type: "ExercisePlan",
		Name: f.Heading, URL: f.Canonical, Language: f.Lang,
		Author: &partyData{"Organization", f.Mark},
	}
}

// exercisePlan is one exercise's usual dose.
func (b *builder) exercisePlan(f *frame, e *program.Exercise) {
	p := b.plan(f)
	p.ExerciseType = b.words.word("role." + string(e.Role))
	p.Repetitions = e.Dose.Reps
	p.Duration = isoSeconds(e.Dose.Hold)
	p.Intensity = b.dose(e)
	if e.Dose.Rest > 0 {
		p.Rest = b.rest(e.Dose.Rest)
	}
	if len(e.Cues) > 0 {
		p.Description = e.Cues[0]
	}
	f.carry(p)
}

// programPlan is a block of weeks.
func (b *builder) programPlan(f *frame, v *view.View) {
	p := b.plan(f)
	p.ExerciseType, p.Description = v.Skill, v.Block
	if len(v.Weeks) > 0 {
		p.Duration = "P" + strconv.Itoa(len(v.Weeks)) + "W"
		p.Intensity = v.Weeks[0].Line
	}
	f.carry(p)
}

// carry puts a plan on a page, and its hash into the page's policy: it is never
// run, but a checker cannot know that.
func (f *frame) carry(p *planData) {
	text, _ := json.Marshal(p) // strings and counts only: nothing can fail; escapes < and >
	sum := sha256.Sum256(text)
	f.Plan, f.PlanHash = template.JS(text), base64.StdEncoding.EncodeToString(sum[:])
}

// isoSeconds is an ISO 8601 duration; empty for none.
func isoSeconds(n int) string {
	if n == 0 {
		return ""
	}
	return "PT" + strconv.Itoa(n) + "S"
}
