package view_test

import (
	"encoding/json"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// Whatever a renderer prints of a shared view, no surname, note, other training or day of
// measuring is in it, nor any length of this client's body: every figure is the one that
// was given.
func TestSharedHoldsNothingPrivate(t *testing.T) {
	const own, everybodys = 1.6379, 1.7385
	p := viewtest.Program()
	note := program.Note{Code: viewtest.FixtureNote, Values: []program.Value{{Name: "exercise", Kind: program.ValueText, Text: "canary note"}, {Name: "minutes", Kind: program.ValueCount, Number: 60}}}
	p.Client.Name, p.Client.Slug = "Maren Canaryson", "canary-slug"
	p.Notes, p.Other = []program.Note{note}, []program.OtherTraining{{What: "canary rowing"}}
	for i := range p.Steps {
		p.Steps[i].Stance = program.Stance{Height: own}
	}
	for i := range p.Weeks {
		p.Weeks[i].Stance, p.Weeks[i].Notes = program.Stance{Height: own}, append(p.Weeks[i].Notes, note)
	}
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	asked := map[string]bool{}
	shared := v.Shared(func(id string) program.Stance {
		asked[id] = true
		return program.Stance{Height: everybodys}
	})
	text, err := json.Marshal(shared)
	if err != nil {
		t.Fatal(err)
	}
	for _, secret := range []string{"canary", "1.6379", "4 January", `"Share":"`, "rowing", v.Version()} {
		if at := strings.Index(strings.ReplaceAll(strings.ToLower(string(text)), `"share":""`, ""), strings.ToLower(secret)); at >= 0 {
			t.Errorf("a shared view has %q: …%s", secret, text[max(0, at-60):min(len(text), at+60)])
		}
	}
	for _, id := range []string{"open-tuck", "advanced-tuck", "straddle"} {
		if !asked[id] {
			t.Errorf("nobody asked for the %s", id)
		}
	}
	if before, _ := json.Marshal(v); !strings.Contains(string(before), "Canaryson") || !strings.Contains(string(before), "1.6379") {
		t.Error("the client's own view was changed")
	}
}
