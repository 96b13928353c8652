package site

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"html/template"
	"strconv"

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
	Intensity    string     `json:"intensity,omitempty"`
}

type partyData struct {
	Type string `json:"@type"`
	Name string `json:"name"`
}

// crumbs are the way from the front page to a page, as machines read it.
type crumbs struct {
	Context string  `json:"@context"`
	Type    string  `json:"@type"`
	Items   []crumb `json:"itemListElement"`
}

type crumb struct {
	Type     string `json:"@type"`
	Position int    `json:"position"`
	Name     string `json:"name"`
	Item     string `json:"item"`
}

// programPlan is a block of weeks.
func (b *builder) programPlan(f *frame, v *view.View) {
	p := planData{
		Context: schema, Type: "ExercisePlan", Name: f.Heading, URL: f.Canonical, Language: f.Lang,
		Author: &partyData{"Organization", f.Mark}, ExerciseType: v.Skill, Description: v.Block,
	}
	if len(v.Weeks) > 0 {
		p.Duration = "P" + strconv.Itoa(len(v.Weeks)) + "W"
		p.Intensity = v.Weeks[0].Line
	}
	f.carry(p)
}

const schema = "https://schema.org"

// way is the links from the front page to the one above a page. Where the address is
// not known there is none for machines.
func (b *builder) way(f *frame, above ...link) {
	if f.Canonical == "" {
		return
	}
	c := crumbs{Context: schema, Type: "BreadcrumbList"}
	for _, l := range append(append([]link{{Text: f.Mark, Href: homePage}}, above...), link{Text: f.Heading}) {
		item := f.Canonical
		if l.Href != "" {
			item = b.public(l.Href)
		}
		c.Items = append(c.Items, crumb{"ListItem", len(c.Items) + 1, l.Text, item})
	}
	f.carry(c)
}

// carry puts data on a page, and its hash into the page's policy: it is never run, but
// a checker cannot know that.
func (f *frame) carry(data any) {
	text, _ := json.Marshal(data) // strings and counts only: nothing can fail; escapes < and >
	sum := sha256.Sum256(text)
	f.Data = append(f.Data, dataView{template.JS(text), base64.StdEncoding.EncodeToString(sum[:])})
}
