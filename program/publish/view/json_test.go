package view_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// follows compares JSON with a schema, formats asserted.
func follows(t *testing.T, schema, data []byte) error {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	const name = "test:schema.json" // a name alone would be a file below the folder, whatever that is called
	if err := c.AddResource(name, decoded(t, schema)); err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile(name)
	if err != nil {
		t.Fatal(err)
	}
	return compiled.Validate(decoded(t, data))
}

func decoded(t *testing.T, data []byte) any {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func check(t *testing.T, data []byte) error { return follows(t, view.Schema, data) }

// Checked by a general JSON Schema library (draft 2020-12), formats asserted.
func TestJSONFollowsItsSchema(t *testing.T) {
	withheld := viewtest.Program()
	withheld.Weeks, withheld.Withheld = nil, []program.Note{{Code: "minor-without-guardian"}}
	for name, p := range map[string]*program.Program{"full": viewtest.Program(), "withheld": withheld} {
		data, err := view.JSON(viewtest.Library(), p)
		if err != nil {
			t.Fatal(err)
		}
		if err := check(t, data); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestSchemaIsStrict(t *testing.T) { strict(t, view.Schema) }

func TestSchemaRefusesOtherFiles(t *testing.T) {
	data, _ := view.JSON(viewtest.Library(), viewtest.Program())
	for _, change := range [][2]string{
		{`"skill": "planche",`, ``},
		{`"2027-01-11"`, `"11.1.2027"`},
		{`"kind": "build"`, `"kind": "hard"`},
		{`"hold_s": 12`, `"hold_s": "12 s"`},
		{`"skill": "planche",`, `"skill": "planche", "mass_kg": 58,`},
	} {
		doctored := strings.Replace(string(data), change[0], change[1], 1)
		if doctored == string(data) || check(t, []byte(doctored)) == nil {
			t.Errorf("accepted %q for %q", change[1], change[0])
		}
	}
}

func TestJSONIsTheSameEveryTime(t *testing.T) {
	a, _ := view.JSON(viewtest.Library(), viewtest.Program())
	b, _ := view.JSON(viewtest.Library(), viewtest.Program())
	if !bytes.Equal(a, b) {
		t.Error("two runs differ")
	}
}

// What a card says, its JSON says: leans, straps, what ends when it ends, a gate's
// longer set, what the coach answers and has learned.
func TestJSONSaysWhatTheCardSays(t *testing.T) {
	p := viewtest.Program()
	p.Weeks[0].Sessions[0].Items = []program.Prescription{
		{Exercise: "planche-lean", Role: program.RoleSecond, Ahead: 0.14, Sets: 2, Hold: 15},
		{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleMain, Rig: program.Rig{Bands: []string{"narrow"}, Drop: 0.35}, Sets: 1, Check: true},
		{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleTest, Sets: 1, Max: true},
		{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleAhead, Sets: 3, Try: true},
	}
	p.Other = []program.OtherTraining{{Day: time.Tuesday, What: "bell practice", Hard: true}}
	p.Offsets = []program.Offset{{Step: "tuck", Ln: math.Log(1.06), Spread: 0.02}, {Exercise: "planche-lean", Ln: math.Log(0.9), Spread: 0.05}}
	p.Asks = []program.Note{{Code: "tests-disagree"}}
	data, err := view.JSON(viewtest.Library(), p)
	if err != nil {
		t.Fatal(err)
	}
	if err := check(t, data); err != nil {
		t.Error(err)
	}
	file := decoded(t, data).(map[string]any)
	items := file["weeks"].([]any)[0].(map[string]any)["sessions"].([]any)[0].(map[string]any)["items"].([]any)
	for i, want := range []map[string]any{
		{"ahead_m": json.Number("0.14"), "drop_m": json.Number("0"), "check": false, "max": false, "try": false},
		{"ahead_m": nil, "drop_m": json.Number("0.35"), "check": true},
		{"max": true}, {"try": true, "check": false, "max": false},
	} {
		for key, value := range want {
			if got := items[i].(map[string]any)[key]; got != value {
				t.Errorf("item %d: %s is %v, want %v", i, key, got, value)
			}
		}
	}
	gates := file["gates"].([]any)
	if got := gates[0].(map[string]any)["single_s"]; got != nil {
		t.Errorf("a gate without a longer set says %v", got)
	}
	if got := gates[2].(map[string]any)["single_s"]; got != json.Number("10") {
		t.Errorf("the straddle's gate asks for %v s, want 10", got)
	}
	var out bytes.Buffer
	if err := json.Compact(&out, data); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"other":[{"day":"tue","what":"bell practice","hard":true}]`, `"asks":[{"code":"tests-disagree","values":[]}]`,
		`"offsets":[{"step":"tuck","exercise":null,"heavier_share":0.06,"spread_share":0.02},{"step":null,"exercise":"planche-lean","heavier_share":-0.1,"spread_share":0.05}]`} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("does not say %s", want)
		}
	}
}

// A kept plan says which gates the coach signed and what is a try; nothing where
// there is nothing.
func TestKeptPlanSaysPassedAndTry(t *testing.T) {
	v := program.PlanVersion{Version: 1, On: 20829, Passed: []string{"tuck"}, Weeks: []program.Week{{Number: 1, Start: 20829, Kind: program.WeekBuild,
		Sessions: []program.Session{{Date: 20829, Items: []program.Prescription{{Exercise: "tuck-hold", Role: program.RoleAhead, Sets: 3, Try: true}}}}}}}
	data, err := view.PlanJSON(&v)
	if err != nil || !strings.HasPrefix(string(data), `{"version":1,"on":"2027-01-11","passed":["tuck"],"weeks":[`) || !strings.Contains(string(data), `"try":true`) {
		t.Errorf("%v: %s", err, data)
	}
	v.Weeks[0].Sessions[0].Items[0].Rig.Pad = 0.05
	if data, _ = view.PlanJSON(&v); !strings.Contains(string(data), `"rig":{"pad":0.05}`) {
		t.Errorf("%s", data)
	}
	v.Forecasts = []program.Forecast{{Step: "tuck", Early: 20829, Likely: 20836, Chance: 0.8}}
	if data, _ = view.PlanJSON(&v); !strings.Contains(string(data), `"forecasts":[{"step":"tuck","early":"2027-01-11","likely":"2027-01-18","chance":0.8}]`) {
		t.Errorf("%s", data)
	}
	v.Shared = true
	if data, _ = view.PlanJSON(&v); !strings.Contains(string(data), `"passed":["tuck"],"shared":true,"forecasts"`) {
		t.Errorf("%s", data)
	}
	v.Shared, v.Passed, v.Forecasts, v.Weeks[0].Sessions[0].Items[0].Try = false, nil, nil, false
	if data, _ = view.PlanJSON(&v); strings.Contains(string(data), "passed") || strings.Contains(string(data), "forecasts") || strings.Contains(string(data), "try") || strings.Contains(string(data), "shared") {
		t.Errorf("%s", data)
	}
}
