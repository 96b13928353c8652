package intake

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"testing/fstest"
)

// Once no further problem of a file is noted, nothing is looked up to word one: else a file
// of nothing but slips takes half a minute. What is made for a slip is a measure of the
// work that does not depend on the machine.
func TestSlipsBeyondThoseListedCostLittle(t *testing.T) {
	studio, a := maren(t)
	log := func(lines int) float64 {
		text := []byte(LogHeader() + "\n" + strings.Repeat("2027-01-11,tukk puhs,,,12\n", lines/2) + strings.Repeat("2027-01-12,plnche laen,,,12\n", lines/2))
		return testing.AllocsPerRun(1, func() {
			if _, problems := ReadLog(studio, a, "log.csv", text); len(problems) != maxProblems+1 {
				t.Errorf("%d problems", len(problems))
			}
		})
	}
	if each := (log(6_000) - log(2_000)) / 4_000; each > 100 {
		t.Errorf("a misspelt line of a log makes %.0f things", each)
	}
	english, err := os.ReadFile("../../content/words/en.yaml")
	if err != nil {
		t.Fatal(err)
	}
	words := func(unused int) float64 {
		var text strings.Builder
		text.Write(english)
		text.WriteString("\nunused:\n")
		for i := range unused {
			fmt.Fprintf(&text, "  word of no use %d: text\n", i)
		}
		coach := sound(t)
		coach["content/words/en.yaml"] = &fstest.MapFile{Data: []byte(text.String())}
		return testing.AllocsPerRun(1, func() { Read(coach, library(t), nil) })
	}
	if each := (words(1_500) - words(500)) / 1_000; each > 100 {
		t.Errorf("an unused word makes %.0f things", each)
	}
}
