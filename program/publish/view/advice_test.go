package view_test

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// Who is to hold lines before balance begins has a day rule of RPE on card and plan, which
// speaks of seconds and of repetitions and of no help; tries have their own.
func TestLinesBeforeBalanceHaveNoRuleOfTries(t *testing.T) {
	lib, p := viewtest.Library(), viewtest.Program()
	road, _ := lib.RoadMap(p.Skill)
	road.Load = program.LoadBalance
	for _, entry := range []bool{false, true} {
		p.Notes = nil
		if entry {
			p.Notes = []program.Note{{Code: "entry-hold", Values: []program.Value{{Name: "exercise", Kind: program.ValueExercise, Text: "wall-lean"},
				{Name: "want", Kind: program.ValueSeconds, Number: 30}, {Name: "shown", Kind: program.ValueSeconds}}}}
		}
		v, _ := view.New(viewtest.Coach(), lib, p)
		for _, text := range []string{v.CardText.DayRule, strings.Join(v.Advice.DayRule, " "), v.Advice.DayShort} {
			if strings.Contains(text, "tries") == entry || strings.Contains(text, "RPE 9") != entry || strings.Contains(text, "easier version") != entry || strings.Contains(text, "help") {
				t.Errorf("entry %v: %s", entry, text)
			}
		}
	}
}
