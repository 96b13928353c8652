package view_test

import (
	"encoding/json"
	"reflect"
	"slices"
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

// told are the fields of a view that a shared one has as they are; whatever is new in a
// view has to be entered here, or taken out of what is shared.
var told = strings.Fields(`First Short Page Public Plain Large SkillID Skill Goal GoalStep Coach Lang Start Block Number Withheld
	Where Turns Gates Outline After LeftOut Cue Advice ChartTerms PageTerms Made CardText`)

// changed are those of which a shared view has a part, or something else.
var changed = strings.Fields(`Title Client Slug Measured On Forecast Ladder Weeks Other Pictures Notes AllNotes CueWorth Labels
	Events Progress Cards ForCoach data version Places`)

func TestEveryFieldIsToldOrNot(t *testing.T) {
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), viewtest.Program())
	shared := reflect.ValueOf(*v.Shared(nobody))
	own := reflect.ValueOf(*v)
	for i := range own.NumField() {
		name := own.Type().Field(i).Name
		switch {
		case slices.Contains(told, name) == slices.Contains(changed, name):
			t.Errorf("nobody says whether %s may be told", name)
		case slices.Contains(told, name) && !reflect.DeepEqual(own.Field(i).Interface(), shared.Field(i).Interface()):
			t.Errorf("%s is not told as it is", name)
		}
	}
}

func nobody(string) program.Stance { return program.Stance{} }

// sharedOf is the view of viewtest's program as everybody may have it, and as it is.
func sharedOf(t *testing.T, change func(*program.Program)) (shared, own *view.View) {
	t.Helper()
	p := viewtest.Program()
	change(p)
	own, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	if problems.Stop() {
		t.Fatal(problems)
	}
	return own.Shared(nobody), own
}

// Help is told by the bands' names. What a scale has to read is told in kilograms, or
// nobody could train by it.
func TestSharedHasNoKilograms(t *testing.T) {
	kg := func(v *view.View) int {
		text, _ := json.Marshal([]any{v.Weeks, v.Cards, v.Pictures, v.Events, v.Ladder, v.Gates, v.Forecast, v.Progress})
		return strings.Count(string(text), "\u00a0kg")
	}
	shared, own := sharedOf(t, func(p *program.Program) {
		p.Weeks[1].Notes = append(p.Weeks[1].Notes, program.Note{Code: "less-help", Values: []program.Value{{Name: "help", Kind: program.ValueNewtons, Number: 40}}})
	})
	if kg(own) < 20 {
		t.Fatalf("the client's own view has kilograms %d times", kg(own))
	}
	if kg(shared) > 0 {
		t.Errorf("a shared view has kilograms %d times", kg(shared))
	}
	if shared.Weeks[0].Rig == "" || shared.Weeks[0].Rig != own.Weeks[0].Rig || shared.Weeks[0].Range != own.Weeks[0].Range {
		t.Errorf("nobody can train by %+v", shared.Weeks[0])
	}
	shared, _ = sharedOf(t, func(p *program.Program) {
		w := &p.Weeks[0]
		w.Rig, w.Help, w.Scale = program.Rig{}, 0, 20*9.80665
		for i := range w.Sessions {
			for j := range w.Sessions[i].Items {
				if item := &w.Sessions[i].Items[j]; item.Role == program.RoleMain {
					item.Rig, item.Help, item.Scale = program.Rig{}, 0, w.Scale
				}
			}
		}
	})
	if got := plain(shared.Weeks[0].Help); got != "20 kg" {
		t.Errorf("the scale reads %q", got)
	}
	if kg(shared) < 2 {
		t.Error("no card says what the scale reads")
	}
}

// Whether somebody was ill or away is nobody's business.
func TestAWeekWithoutTrainingHasNoReason(t *testing.T) {
	shared, own := sharedOf(t, func(p *program.Program) {
		p.Weeks[2].Kind, p.Weeks[2].Sessions = program.WeekAway, nil
	})
	if own.Weeks[2].Kind != "Away" || shared.Weeks[2].Kind != "No session" {
		t.Errorf("%q is told as %q", own.Weeks[2].Kind, shared.Weeks[2].Kind)
	}
}

// Wrist circles in place of wrist rocks say that a wrist is sore. A plain plan has neither,
// and says that there is a preparation.
func TestAPlainPlanHasNoPreparation(t *testing.T) {
	name := ""
	has := func(v *view.View) (inWeeks, inCards, inCalendar bool) {
		for _, i := range v.Weeks[0].Sessions[0].Items {
			if i.RoleKey == program.RolePrepare {
				name, inWeeks = i.Exercise, true
			}
		}
		for _, c := range v.Cards {
			inCards = inCards || len(c.Prepare) > 0
		}
		for _, e := range v.Events {
			inCalendar = inCalendar || name != "" && strings.Contains(e.Text, name)
		}
		return inWeeks, inCards, inCalendar
	}
	for _, plain := range []bool{false, true} {
		shared, own := sharedOf(t, func(p *program.Program) { p.Client.Plain = plain })
		weeks, cards, calendar := has(shared)
		if weeks == plain || cards == plain || calendar == plain {
			t.Errorf("plain is %v: %v %v %v", plain, weeks, cards, calendar)
		}
		if weeks, cards, calendar := has(own); !weeks || !cards || !calendar {
			t.Error("the client's own paper lacks the preparation")
		}
		if first := shared.Cards[0].Note; plain != strings.Contains(first, "Prepare first") {
			t.Errorf("plain is %v: %q", plain, first)
		}
	}
}

// A forecast's day is on no page, and a drawing of it has none to show.
func TestSharedForecastsHaveMonths(t *testing.T) {
	shared, own := sharedOf(t, func(p *program.Program) {})
	if f := own.Forecast; f.EarlyOn == 0 || f.LikelyOn == 0 {
		t.Fatalf("%+v", f)
	}
	for on, want := range map[program.Date]program.Date{shared.Forecast.EarlyOn: own.Forecast.EarlyOn, shared.Forecast.LikelyOn: own.Forecast.LikelyOn} {
		if on.Time().Day() != 15 || on.String()[:7] != want.String()[:7] {
			t.Errorf("%v is told as %v", want, on)
		}
	}
}
