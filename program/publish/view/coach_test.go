package view_test

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// learned is the fixture with offsets, a question for the coach and other training.
func learned() *program.Program {
	p := viewtest.Program()
	p.Offsets = []program.Offset{
		{Step: "tuck", Ln: math.Log(1.06), Spread: 0.02},                 // known
		{Step: "open-tuck", Ln: math.Log(1.06), Spread: 0.10},            // drowned by its doubt
		{Step: "straddle", Ln: math.Log(1.02), Spread: 0.01},             // too small to see
		{Exercise: "planche-lean", Ln: math.Log(1 / 1.13), Spread: 0.05}, // feet that push
	}
	p.Asks = []program.Note{{Code: "needs-handles", Values: []program.Value{
		{Name: "step", Kind: program.ValueStep, Text: "advanced-tuck"}, {Name: "hips", Kind: program.ValueMetres, Number: 0.04}}}}
	p.Other = []program.OtherTraining{{Day: time.Sunday, What: "rowing"}, {Day: time.Tuesday, What: "bell practice", Hard: true}}
	return p
}

// What is known of how a client's holds differ is said to the coach, as a question;
// so is what the coach has to answer, on the coach's page and in the terminal.
func TestCoachIsAsked(t *testing.T) {
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), learned())
	if problems.Stop() {
		t.Fatal(problems)
	}
	want := []string{"Tuck: held about 6 % heavier than drawn: hips lower?",
		"Planche lean: about 12 % lighter than reckoned: feet pushing, or less far ahead than written?"}
	for i, line := range v.ForCoach.Offsets {
		v.ForCoach.Offsets[i] = plain(line)
	}
	if !slices.Equal(v.ForCoach.Offsets, want) {
		t.Errorf("%q, want %q", v.ForCoach.Offsets, want)
	}
	ask := "The advanced tuck on this floor: knees or toes would touch it with level hips. Handles under the hands give the room; without them the hips are 4 cm above the shoulders, and the plan reckons with that."
	if len(v.ForCoach.Asks) != 1 || plain(v.ForCoach.Asks[0]) != ask {
		t.Errorf("%q", v.ForCoach.Asks)
	}
	var out bytes.Buffer
	if err := view.Text(&out, v); err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(out.String()), " ")
	for _, line := range []string{"For you to answer - " + ask, "Held otherwise than drawn - " + want[0]} {
		if !strings.Contains(text, line) {
			t.Errorf("the terminal does not say %q", line)
		}
	}
	if strings.Contains(strings.Join(v.Notes, " "), "handles") {
		t.Error("the client's own notes ask the coach")
	}
}

func TestReviewAsksTheCoach(t *testing.T) {
	p, r := learned(), viewtest.Review()
	r.Asks, r.Offsets = p.Asks, p.Offsets
	v, problems := view.NewReview(viewtest.Coach(), viewtest.Library(), p, r)
	if problems.Stop() {
		t.Fatal(problems)
	}
	var out bytes.Buffer
	if err := view.ReviewText(&out, v); err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{"For you to answer\n", "- The advanced tuck on this floor", "- Tuck: held about 6 % heavier than drawn"} {
		if !strings.Contains(out.String(), line) {
			t.Errorf("does not say %q", line)
		}
	}
	data, err := view.ReviewJSON(r)
	if err != nil || follows(t, view.ReviewSchema, data) != nil || !strings.Contains(string(data), `"heavier_share": 0.06`) {
		t.Error(err, follows(t, view.ReviewSchema, data))
	}
}

// Hips that the floor pushes up are said wherever the step is done.
func TestRaisedHipsAreSaid(t *testing.T) {
	p := viewtest.Program()
	for i := range p.Steps {
		if p.Steps[i].ID == "open-tuck" {
			p.Steps[i].Raised = 0.037
		}
	}
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	said := 0
	for _, c := range v.Cards {
		for _, item := range c.Items {
			if raised := strings.Contains(plain(item.Spot), "hips 4 cm above the shoulders"); raised != (item.StepID == "open-tuck") {
				t.Errorf("%s, %s: %q", c.Date, item.Name, item.Spot)
			} else if raised {
				said++
			}
		}
	}
	if said == 0 {
		t.Error("nobody says it")
	}
}

// Other training stands in the client's own calendar on its weekdays, as an event of
// its own, and in none that is published.
func TestOtherTrainingInTheCalendar(t *testing.T) {
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), learned())
	own, public := string(view.OwnCalendar(v)), string(view.Calendar(v))
	for _, want := range []string{"DTSTART;VALUE=DATE:20270112\r\nDTEND;VALUE=DATE:20270113\r\nSUMMARY:bell practice (hard)\r\n",
		"DTSTART;VALUE=DATE:20270117\r\nDTEND;VALUE=DATE:20270118\r\nSUMMARY:rowing\r\n"} {
		if strings.Count(own, want) != 1 {
			t.Errorf("%d of %q", strings.Count(own, want), want)
		}
	}
	if n := strings.Count(own, "SUMMARY:bell practice"); n != 12 {
		t.Errorf("%d days of bell practice, want 12", n)
	}
	if strings.Contains(public, "bell practice") || strings.Contains(public, "rowing") {
		t.Error("it is published")
	}
	var lines []string
	for _, o := range v.Other {
		lines = append(lines, o.Line)
	}
	if got := strings.Join(lines, "; "); got != "Tue: bell practice (hard); Sun: rowing" {
		t.Errorf("the chart says %q", got)
	}
}

// Nothing is held by who lifts, nor rigged: the charts speak of sets and of the setup.
func TestChartsOfALift(t *testing.T) {
	lib := viewtest.Library()
	lib.RoadMaps[0].Load = program.LoadLift
	v, _ := view.New(viewtest.Coach(), lib, viewtest.Program())
	c := v.ForCoach
	for _, title := range []string{c.HelpTitle, c.HoldAxis.Title, c.ForecastTitle, c.RigTitle} {
		if title == "" || strings.Contains(title, "hold") || strings.Contains(title, "held") || strings.Contains(title, "rig,") {
			t.Errorf("who lifts reads %q", title)
		}
	}
}
