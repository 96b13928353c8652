package intake

import (
	"strings"
	"testing"
	"testing/fstest"
)

// Characters that nobody sees and that turn a name around, or break its line, are not
// read (they are listed in Unicode Standard Annex 9, table 1 and section 2); written as an
// escape they are an error.
func TestInvisibleSteeringIsNotRead(t *testing.T) {
	const file = "content/clients/maren/assessment.yaml"
	folder := sound(t)
	text := string(folder[file].Data)
	named := func(name string) {
		folder[file] = &fstest.MapFile{Data: []byte(strings.Replace(text, "name: Maren", "name: "+name, 1))}
	}
	named("\u2068Ma\u202ere\u202cn\u2069\u2028Two")
	studio, problems := Read(folder, library(t), nil)
	if problems.Stop() || studio.Clients[0].Athlete.Name != "Maren Two" {
		t.Errorf("called %q; %s", studio.Clients[0].Athlete.Name, reported(problems))
	}
	named(`"Ma\u202eren"`)
	if _, problems := Read(folder, library(t), nil); !problems.Stop() || !strings.Contains(reported(problems), "control character") {
		t.Errorf("an escape is let through: %s", reported(problems))
	}
	log, problems := readLines(t, "2027-01-11,tuck,,,12,,,,,,\u202eheavy")
	if len(problems) > 0 || log.Entries[0].Note != "heavy" {
		t.Errorf("the note is %q; %s", log.Entries[0].Note, reported(problems))
	}
}
