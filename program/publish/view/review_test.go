package view_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

func checkReview(t *testing.T, data []byte) error { return follows(t, view.ReviewSchema, data) }

// Checked by a general JSON Schema library (draft 2020-12), formats asserted.
func TestReviewFollowsItsSchema(t *testing.T) {
	bare := &program.Review{Client: program.Client{Name: "Joss", Slug: "joss"}, On: program.NewDate(2027, 1, 4)}
	for name, r := range map[string]*program.Review{"full": viewtest.Review(), "bare": bare} {
		data, err := view.ReviewJSON(r)
		if err != nil {
			t.Fatal(err)
		}
		if err := checkReview(t, data); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestReviewSchemaIsStrict(t *testing.T) { strict(t, view.ReviewSchema) }

// strict wants every object of a schema closed, and every field asked for.
func strict(t *testing.T, schema []byte) {
	t.Helper()
	var doc any
	if err := json.Unmarshal(schema, &doc); err != nil {
		t.Fatal(err)
	}
	var look func(path string, node any)
	look = func(path string, node any) {
		switch node := node.(type) {
		case map[string]any:
			if fields, ok := node["properties"].(map[string]any); ok {
				required, _ := node["required"].([]any)
				if node["additionalProperties"] != false || len(required) != len(fields) {
					t.Errorf("%s is open", path)
				}
			}
			for key, child := range node {
				look(path+"/"+key, child)
			}
		case []any:
			for _, child := range node {
				look(path, child)
			}
		}
	}
	look("", doc)
}

func TestReviewSchemaRefusesOtherFiles(t *testing.T) {
	data, _ := view.ReviewJSON(viewtest.Review())
	for _, change := range [][2]string{
		{`"on": "2027-02-12",`, ``},
		{`"on": "2027-02-12"`, `"on": "12.2.2027"`},
		{`"level": "stop"`, `"level": "panic"`},
		{`"state": "not-yet"`, `"state": "failed"`},
		{`"rpe": 9.5`, `"rpe": 11`},
		{`"print_now": [`, `"print_now": [8,`},
		{`"ended": false`, `"ended": false, "mass_kg": 58`},
	} {
		doctored := strings.Replace(string(data), change[0], change[1], 1)
		if doctored == string(data) || checkReview(t, []byte(doctored)) == nil {
			t.Errorf("accepted %q for %q", change[1], change[0])
		}
	}
}

func reviewText(t *testing.T, p *program.Program, r *program.Review) string {
	t.Helper()
	v, problems := view.NewReview(viewtest.Coach(), viewtest.Library(), p, r)
	for _, problem := range problems {
		t.Error(problem)
	}
	var out bytes.Buffer
	if err := view.ReviewText(&out, v); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(out.String(), "\n") {
		if n := utf8.RuneCountInString(line); n > 80 {
			t.Errorf("%d columns: %s", n, line)
		}
	}
	return strings.Join(strings.Fields(out.String()), " ")
}

func TestReviewSaysWhatWasDone(t *testing.T) {
	text := reviewText(t, viewtest.Replanned(), viewtest.Review())
	for _, want := range []string{
		"Maren: read back on 12 February 2027",
		"Week 5 of 12. 2 of 3 printed sessions done, 1 missed. Missed: 15 Jan.",
		"Strength: about 3 % behind the plan.",
		"stop: Pain at the elbows has risen over two weeks, to 4 of 10.",
		"11 Jan, open tuck, narrow, strap 20 cm, set 3: 7 s of 12 s, RPE 9.5, shape broke, pain 3 of 10: down 2.5 %",
		"open tuck: not yet; weeks in which it was tried: 1",
		"not yet: last set, RPE 9.5, 9 or less asked (11 Jan: 7 s, RPE 9.5, shape broke, pain 3 of 10)",
		"not written: clean in the side view",
		"Help: 3 kg instead of none.",
		"Cards: 8 Feb, 10 Feb.",
		"gatepost review maren --keep",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("does not say %q in\n%s", want, text)
		}
	}
}

func TestReviewOfNothing(t *testing.T) {
	r := &program.Review{Client: program.Client{Name: "Joss", Slug: "joss"}, On: program.NewDate(2027, 2, 12), Week: 5, Weeks: 12}
	text := reviewText(t, viewtest.Program(), r)
	for _, not := range []string{"missed", "Strength: ", "Print again"} {
		if strings.Contains(text, not) {
			t.Errorf("a review of no log says %q:\n%s", not, text)
		}
	}
	if !strings.Contains(text, "Nothing is written in the log yet.") {
		t.Error(text)
	}
}

// Those who need somebody come first: a professional before a decision before a
// look.
func TestOverviewIsSortedByNeed(t *testing.T) {
	var all []view.Standing
	add := func(name string, change func(*program.Review)) {
		r := &program.Review{Client: program.Client{Name: name}, Week: 2, Weeks: 12, Last: program.NewDate(2027, 2, 12)}
		change(r)
		line, problems := view.NewStanding(viewtest.Coach(), viewtest.Library(), viewtest.Program(), r)
		for _, problem := range problems {
			t.Error(problem)
		}
		all = append(all, line)
	}
	full := viewtest.Review()
	add("Fine", func(r *program.Review) {})
	add("Silent", func(r *program.Review) { r.Last = 0 })
	add("Look", func(r *program.Review) { r.Flags = full.Flags[1:] })
	add("Waits", func(r *program.Review) { r.Withheld = []program.Note{{Code: "guardian-missing"}} })
	add("Hurts", func(r *program.Review) { r.Flags = full.Flags })
	var out bytes.Buffer
	if err := view.Overview(&out, viewtest.Coach(), viewtest.Library(), program.NewDate(2027, 2, 12), all); err != nil {
		t.Fatal(err)
	}
	at := -1
	for _, name := range []string{"Hurts", "Waits", "Look", "Silent", "Fine"} {
		next := strings.Index(out.String(), "\n"+name)
		if next <= at {
			t.Errorf("%s is not in its place:\n%s", name, out.String())
		}
		at = next
	}
	for _, line := range strings.Split(out.String(), "\n") {
		if utf8.RuneCountInString(line) > 80 {
			t.Errorf("too wide: %s", line)
		}
	}
}

// Strength is charted as a share of what the goal asks: the fixture's straddle.
func TestProgress(t *testing.T) {
	p, r := viewtest.Program(), viewtest.Review()
	v, problems := view.NewProgress(viewtest.Coach(), viewtest.Library(), p, r)
	if problems != nil {
		t.Fatal(problems)
	}
	goal := 0.0
	for _, l := range p.Steps {
		if l.ID == p.Goal.Step {
			goal = l.Torque * max(l.Allowance, 1)
		}
	}
	strength := v.Public[0].Series[0].Values
	if want := 100 * r.Progress[0].Held12 / goal; math.Abs(strength[0]-want) > 1e-9 {
		t.Errorf("strength %v, want %v", strength[0], want)
	}
	if want := 100 * r.After.Held12 / goal; math.Abs(strength[len(r.Progress)]-want) > 1e-9 {
		t.Errorf("strength now %v, want %v", strength[len(r.Progress)], want)
	}
	for _, c := range v.Public {
		for _, word := range []string{"RPE", "pain", "session"} {
			if strings.Contains(c.Title+c.Axis.Title+c.Desc, word) {
				t.Errorf("a public chart speaks of %s", word)
			}
		}
		if n := len(c.Axis.Ticks); n < 2 || n > 8 {
			t.Errorf("%s has %d ticks", c.Key, n)
		}
	}
	keys := ""
	for _, c := range append(v.Public, v.Coach...) {
		keys += c.Key + " "
	}
	if keys != "strength hold help seconds sessions rpe pain " {
		t.Errorf("charts: %s", keys)
	}
}
