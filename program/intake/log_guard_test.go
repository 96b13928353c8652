package intake

import (
	"strings"
	"testing"
)

// A note that a spreadsheet would run is stored as text (the signs and the apostrophe:
// common practice against formulas in CSV), and reads back as it was written.
func TestNotesDoNotRun(t *testing.T) {
	for note, cell := range map[string]string{
		`=HYPERLINK("x")`: `'=HYPERLINK("x")`, "+1 felt easy": "'+1 felt easy", "@noon": "'@noon",
		"'=1": "''=1", "- bullet": "- bullet", "'twas fine": "'twas fine", "'": "'", "10 = 10": "10 = 10", "": "",
	} {
		if got := guarded(note); got != cell || unguarded(got) != note {
			t.Errorf("%q is stored as %q and read as %q", note, got, unguarded(got))
		}
	}
	studio, a := maren(t)
	add, _ := readLines(t, `2027-01-11,tuck,,,12,,,,,,"=1+1"`)
	stored, _ := AddToLog(studio, a, "log.csv", nil, add.Entries)
	again, problems := ReadLog(studio, a, "log.csv", stored.Bytes)
	if !strings.Contains(string(stored.Bytes), ",'=1+1\n") {
		t.Errorf("stored as %q", stored.Bytes)
	}
	if len(problems) > 0 || again.Entries[0].Note != "=1+1" {
		t.Errorf("reads back as %q; %s", again.Entries[0].Note, reported(problems))
	}
}
