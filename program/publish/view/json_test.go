package view_test

import (
	"bytes"
	"strings"
	"testing"

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
