package view_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"

	"github.com/google/go-cmp/cmp"
)

// studioLines are clients as a studio has them, not in the order of their folders.
func studioLines(t *testing.T) []view.Standing {
	t.Helper()
	var all []view.Standing
	add := func(line view.Standing, problems program.Problems) {
		for _, problem := range problems {
			t.Error(problem)
		}
		all = append(all, line)
	}
	read := func(slug string, change func(*program.Review)) {
		r := viewtest.Review()
		r.Client = program.Client{Name: strings.ToUpper(slug), Slug: slug}
		change(r)
		add(view.NewStanding(viewtest.Coach(), viewtest.Library(), viewtest.Replanned(), r))
	}
	read("wen", func(*program.Review) {})
	read("ada", func(r *program.Review) { r.Last, r.Flags, r.Changes, r.Week = 0, nil, nil, 0 })
	read("kim", func(r *program.Review) {
		*r = program.Review{Client: r.Client, Withheld: []program.Note{{Code: "guardian-missing"}}}
	})
	errors := program.Problems{
		{Place: program.Place{File: "content/clients/bo/assessment.yaml", Line: 8, Column: 9}, Message: `"58 kilo" is not a mass`},
		{Place: program.Place{File: "content/clients/bo/log.csv"}, Message: "the file is too big"},
	}
	add(view.NewUnread(viewtest.Coach(), viewtest.Library(), program.Client{Slug: "bo"}, errors))
	add(view.NewUnread(viewtest.Coach(), viewtest.Library(), program.Client{Name: "Cy", Slug: "cy"}, errors[1:]))
	return all
}

func overviewJSON(t *testing.T) []byte {
	t.Helper()
	data, err := view.OverviewJSON(program.NewDate(2027, 2, 12), studioLines(t))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// Checked by a general JSON Schema library (draft 2020-12), formats asserted.
func TestOverviewFollowsItsSchema(t *testing.T) {
	if err := follows(t, view.OverviewSchema, overviewJSON(t)); err != nil {
		t.Error(err)
	}
	nobody, _ := view.OverviewJSON(program.NewDate(2027, 2, 12), nil)
	if err := follows(t, view.OverviewSchema, nobody); err != nil {
		t.Error(err)
	}
}

func TestOverviewSchemaIsStrict(t *testing.T) { strict(t, view.OverviewSchema) }

func TestOverviewSchemaRefusesOtherFiles(t *testing.T) {
	data := string(overviewJSON(t))
	for _, change := range [][2]string{
		{`"on": "2027-02-12",`, ``},
		{`"last": "2027-02-12"`, `"last": "12.2.2027"`},
		{`"level": "stop"`, `"level": "panic"`},
		{`"pace": -0.03`, `"pace": "behind"`},
		{`"week": 5`, `"week": -1`},
		{`"error": null`, `"error": ""`},
		{`"slug": "wen"`, `"slug": "wen", "mass_kg": 58`},
	} {
		doctored := strings.Replace(data, change[0], change[1], 1)
		if doctored == data || follows(t, view.OverviewSchema, []byte(doctored)) == nil {
			t.Errorf("accepted %q for %q", change[1], change[0])
		}
	}
}

// Clients come in the order of their folders, those with errors among them, and say
// what their own reviews say.
func TestOverviewForMachines(t *testing.T) {
	type client struct {
		Slug    string
		Name    *string
		Version *int
		Week    *int
		Weeks   *int
		Last    *string
		Pace    *float64
		Flags   []struct {
			Level, Code string
			Values      []any
		}
		Changed  *int `json:"changed_weeks"`
		Withheld []any
		Error    *string
	}
	var got struct{ Clients []client }
	if err := json.Unmarshal(overviewJSON(t), &got); err != nil {
		t.Fatal(err)
	}
	slugs := ""
	for _, c := range got.Clients {
		slugs += c.Slug + " "
	}
	if slugs != "ada bo cy kim wen " {
		t.Fatalf("in the order %s", slugs)
	}
	ada, bo, cy, kim, wen := got.Clients[0], got.Clients[1], got.Clients[2], got.Clients[3], got.Clients[4]
	if ada.Last != nil || ada.Pace != nil || *ada.Week != 0 || *ada.Changed != 0 || ada.Error != nil {
		t.Errorf("of no log: %+v", ada)
	}
	if bo.Name != nil || bo.Week != nil || bo.Changed != nil || *cy.Name != "Cy" {
		t.Errorf("of files with errors: %+v, %+v", bo, cy)
	}
	want := "content/clients/bo/assessment.yaml:8:9: \"58 kilo\" is not a mass\ncontent/clients/bo/log.csv: the file is too big"
	if diff := cmp.Diff(want, *bo.Error); diff != "" {
		t.Error(diff)
	}
	if len(kim.Withheld) != 1 || len(kim.Flags) != 0 {
		t.Errorf("without a program: %+v", kim)
	}
	if *wen.Name != "WEN" || *wen.Version != 1 || *wen.Week != 5 || *wen.Weeks != 12 || *wen.Last != "2027-02-12" || *wen.Pace != -0.03 || *wen.Changed != 1 ||
		len(wen.Flags) != 2 || wen.Flags[0].Level != "stop" || wen.Flags[0].Code != "flag-pain-rising" || len(wen.Flags[0].Values) != 2 {
		t.Errorf("of a log: %+v", wen)
	}
}

// In the terminal, errors in files are a decision of the coach's, before a look.
func TestOverviewNamesUnreadFiles(t *testing.T) {
	var out strings.Builder
	if err := view.Overview(&out, viewtest.Coach(), viewtest.Library(), program.NewDate(2027, 2, 12), studioLines(t)); err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{"\nbo ", "\nCy "} {
		_, rest, ok := strings.Cut(out.String(), line)
		if rest, _, _ = strings.Cut(rest, "\n"); !ok || !strings.HasSuffix(rest, " errors in the files") {
			t.Errorf("%q is not told in\n%s", line, out.String())
		}
	}
}

// A plan with one week to keep is not said to have weeks.
func TestOverviewOfOneWeek(t *testing.T) {
	r := viewtest.Review()
	r.Flags = nil
	for n, want := range map[int]string{1: "1 week changed: look, then keep", 2: "2 weeks changed: look, then keep"} {
		r.Changes = slices.Repeat(r.Changes[:1], n)
		line, _ := view.NewStanding(viewtest.Coach(), viewtest.Library(), viewtest.Replanned(), r)
		if diff := cmp.Diff([]string{want}, line.Needs); diff != "" {
			t.Error(diff)
		}
	}
}
