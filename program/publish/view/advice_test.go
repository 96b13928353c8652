package view_test

import (
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// Who is to hold lines before balance begins has a day rule of RPE on card and plan, which
// speaks of seconds and of repetitions and of no help, and so has who has no tries at all; tries
// have their own.
func TestLinesBeforeBalanceHaveNoRuleOfTries(t *testing.T) {
	lib, p := viewtest.Library(), viewtest.Program()
	road, _ := lib.RoadMap(p.Skill)
	road.Load = program.LoadBalance
	items := p.Weeks[0].Sessions[0].Items
	for _, c := range []struct{ entry, try bool }{{false, true}, {true, true}, {false, false}} {
		p.Notes, p.Weeks[0].Sessions[0].Items = nil, items
		if c.try {
			p.Weeks[0].Sessions[0].Items = append(slices.Clone(items), program.Prescription{Role: program.RoleMain, Step: "tuck", Sets: 10, Hold: 3, Try: true})
		}
		if c.entry {
			p.Notes = []program.Note{{Code: "entry-hold", Values: []program.Value{{Name: "exercise", Kind: program.ValueExercise, Text: "wall-lean"},
				{Name: "want", Kind: program.ValueSeconds, Number: 30}, {Name: "shown", Kind: program.ValueSeconds}}}}
		}
		v, _ := view.New(viewtest.Coach(), lib, p)
		for _, text := range []string{v.CardText.DayRule, strings.Join(v.Advice.DayRule, " "), v.Advice.DayShort} {
			held := c.entry || !c.try
			if strings.Contains(text, "tries") == held || strings.Contains(text, "RPE 9") != held || strings.Contains(text, "easier version") != held || strings.Contains(text, "help") {
				t.Errorf("%+v: %s", c, text)
			}
		}
	}
}
