package planner

import (
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"
)

// The table of rules in DEVELOPERS.md is printed from rules.go, whose numbers are those that
// plans are made with: heading and source from the comment over a group, number, unit and
// meaning from each line.
func TestRulesAreTheTable(t *testing.T) {
	const file, heading, next = "../../DEVELOPERS.md", "## The rules of training\n", "\n## "
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	before, section, found := strings.Cut(string(data), heading)
	if !found {
		t.Fatalf("%s has no %q", file, heading)
	}
	was, after := section, ""
	if i := strings.Index(section, next); i >= 0 {
		was, after = section[:i], section[i:]
	}
	now := rulesTable(t)
	if flag.Lookup("update").Value.String() == "true" {
		if err := os.WriteFile(file, []byte(before+heading+now+after), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if was != now {
		t.Errorf("%s is not what rules.go says; write it anew with -update", file)
	}
}

// ruleGroups are the groups of rules.go, and its text.
func ruleGroups(t *testing.T) (groups []*ast.GenDecl, text func(ast.Node) string) {
	t.Helper()
	data, err := os.ReadFile("rules.go")
	if err != nil {
		t.Fatal(err)
	}
	set := token.NewFileSet()
	f, err := parser.ParseFile(set, "rules.go", data, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range f.Decls {
		if g, ok := d.(*ast.GenDecl); ok && g.Tok != token.IMPORT {
			groups = append(groups, g)
		}
	}
	return groups, func(n ast.Node) string {
		return string(data[set.Position(n.Pos()).Offset:set.Position(n.End()).Offset])
	}
}

func rulesTable(t *testing.T) string {
	var b strings.Builder
	b.WriteString("\nPrinted from `program/planner/rules.go`, whose numbers are those that plans are made with. What a studio may set otherwise is `program.Rules`.\n")
	groups, text := ruleGroups(t)
	for _, g := range groups {
		title, source, _ := strings.Cut(strings.Join(strings.Fields(g.Doc.Text()), " "), ". ")
		fmt.Fprintf(&b, "\n**%s.** %s\n\n| number | is | in the code |\n|---|---|---|\n", title, source)
		for _, s := range g.Specs {
			v := s.(*ast.ValueSpec)
			var names, numbers []string
			for i, name := range v.Names {
				names = append(names, "`"+name.Name+"`")
				numbers = append(numbers, text(v.Values[i]))
			}
			if rows, ok := v.Values[0].(*ast.CompositeLit); ok {
				numbers = nil
				for _, row := range rows.Elts {
					numbers = append(numbers, strings.Trim(text(row), "{}"))
				}
				numbers = []string{strings.Join(numbers, "; ")}
			}
			fmt.Fprintf(&b, "| %s | %s | %s |\n", strings.Join(numbers, " to "), said(t, v), strings.Join(names, ", "))
		}
	}
	return b.String()
}

// said is the comment beside a rule, which none goes without.
func said(t *testing.T, v *ast.ValueSpec) string {
	if v.Comment == nil {
		t.Errorf("%s has no unit and no meaning beside it", v.Names[0].Name)
		return ""
	}
	return strings.TrimSpace(v.Comment.Text())
}

// Every number of the table as a coach expects it, written down a second time: whoever
// changes one says so in two places. What it does to a plan is in rules_test.go and
// limits_test.go.
func TestRulesInNumbers(t *testing.T) {
	is := map[string][2]float64{
		"youthAge": {youthAge, 16}, "adultAge": {adultAge, 18}, "olderAge": {olderAge, 45},
		"usualEffort": {usualEffort, 0.70}, "mostEffort": {mostEffort, 0.75}, "gentleEffort": {gentleEffort, 0.60}, "effortBand": {effortBand, 10}, "plannedQuantile": {plannedQuantile, 0.30}, "untestedQuantile": {untestedQuantile, 0.10},
		"heavyFrom": {heavyFrom, 0.85}, "heavyTo": {heavyTo, 0.92}, "secondLoad": {secondLoad, 0.72}, "easyLoad": {easyLoad, 0.49}, "elbowLoad": {elbowLoad, 0.75}, "bandShare": {bandShare, 0.25},
		"mainLeast": {mainLeast, 10}, "mainMost": {mainMost, 15}, "middleHold": {middleHold, 12}, "shortLeast": {shortLeast, 5}, "shortMost": {shortMost, 9}, "shortFrom": {shortFrom, 90},
		"secondLeast": {secondLeast, 15}, "secondMost": {secondMost, 25}, "heavyLeast": {heavyLeast, 4}, "heavyMost": {heavyMost, 8}, "deloadLeast": {deloadLeast, 4}, "testedHold": {testedHold, 8},
		"mainSetsLeast": {mainSetsLeast, 3}, "mainSetsMost": {mainSetsMost, 5}, "shortSetsLeast": {shortSetsLeast, 5}, "shortSetsMost": {shortSetsMost, 6}, "secondSetsLeast": {secondSetsLeast, 2}, "secondMostN": {secondMostN, 3},
		"heavySetsLeast": {heavySetsLeast, 4}, "heavySetsMost": {heavySetsMost, 6}, "leanSets": {leanSets, 2}, "triesSets": {triesSets, 3}, "againstBetween": {againstBetween, 6}, "usualBalance": {usualBalance, 100},
		"leastBalance": {leastBalance, 80},
		"soreFactor":   {soreFactor, 0.50}, "youthFactor": {youthFactor, 0.75}, "olderFactor": {olderFactor, 0.80}, "returnFactor": {returnFactor, 0.60}, "weeklyRise": {weeklyRise, 10}, "lookBack": {lookBack, 4},
		"usualArmDays": {usualArmDays, 3}, "fourthDayAfter": {fourthDayAfter, 104}, "restBefore": {restBefore, 2}, "heavyAfter": {heavyAfter, 26}, "hardDay": {hardDay, 67},
		"manyDays": {manyDays, 3}, "deloadWeek": {deloadWeek, 4}, "oftenWeek": {oftenWeek, 3}, "deloadDays": {deloadDays, 8}, "deloadWeekLeast": {deloadWeekLeast, 6}, "oftenDays": {oftenDays, 6},
		"deloadAway": {deloadAway, 5}, "deloadShare": {deloadShare, 60},
		"defaultWeeks": {defaultWeeks, 12}, "taperSessions": {taperSessions, 2}, "taperMost": {taperMost, 59}, "taperSets": {taperSets, 3}, "usualTestRest": {usualTestRest, 2}, "olderTestRest": {olderTestRest, 3},
		"reserve": {reserve, 6}, "repeats": {repeats, 2}, "gateWeeksAsked": {gateWeeksAsked, 2}, "openWeeks": {openWeeks, 2}, "backWeeks": {backWeeks, 2}, "sameWeeks": {sameWeeks, 3},
		"movesEvery": {movesEvery, 2}, "againstMovesEvery": {againstMovesEvery, 3}, "mostReps": {mostReps, 15}, "mostSets": {mostSets, 5},
		"returnSpell": {returnSpell, 13}, "gentleReturn": {gentleReturn, 3}, "shortBreak": {shortBreak, 2}, "restartShare": {restartShare, 70}, "longBreak": {longBreak, 4}, "easyReturn": {easyReturn, 2},
		"comebackFrom": {comebackFrom, 2}, "comebackEasy": {comebackEasy, 2}, "comebackMost": {comebackMost, 4}, "comebackShare": {comebackShare, 70},
		"sorePain": {sorePain, 3}, "highPain": {highPain, 5}, "lately": {lately, 14}, "morningUp": {morningUp, 1}, "morningHigh": {morningHigh, 3}, "usualDays": {usualDays, 28},
		"usualLeast": {usualLeast, 3}, "runningDays": {runningDays, 4}, "pauseDays": {pauseDays, 7}, "restDays": {restDays, 3}, "quietMornings": {quietMornings, 2},
		"leanSessions": {leanSessions, 1}, "lightSessions": {lightSessions, 3}, "lightEffort": {lightEffort, 0.65}, "lightSets": {lightSets, 60}, "nearSessions": {nearSessions, 3}, "nearEffort": {nearEffort, 0.72},
		"highRPE": {highRPE, 9.0}, "lowRPE": {lowRPE, 6.0}, "ratedLeast": {ratedLeast, 6}, "shortMany": {shortMany, 0.20}, "mainsLeast": {mainsLeast, 8}, "silentDays": {silentDays, 10},
		"missedMany": {missedMany, 1.0 / 3}, "unlikely": {unlikely, 0.20}, "littleGain": {littleGain, 0.5},
		"prepareTime": {prepareTime, 300}, "prepareTimeShort": {prepareTimeShort, 240}, "shortSession": {shortSession, 20}, "changeOver": {changeOver, 60}, "mainRest": {mainRest, 150}, "aheadRest": {aheadRest, 180},
		"secondRest": {secondRest, 90}, "leanRest": {leanRest, 90}, "testRest": {testRest, 300}, "pullRest": {pullRest, 120},
		"practiceDays": {practiceDays, 5}, "fewDays": {fewDays, 3}, "practiceSeconds": {practiceSeconds, 900}, "triesRise": {triesRise, 2}, "soreTries": {soreTries, 60}, "trainedFrom": {trainedFrom, 20},
		"backAfter": {backAfter, 2},
		"levelRPE":  {levelRPE, 8}, "levelMargin": {levelMargin, 2}, "levelReserve": {levelReserve, 3}, "readerSpell": {readerSpell, 20},
	}
	groups, _ := ruleGroups(t)
	for _, g := range groups {
		for _, s := range g.Specs {
			for _, name := range s.(*ast.ValueSpec).Names {
				if rule, ok := is[name.Name]; !ok && g.Tok == token.CONST {
					t.Errorf("%s has no number here", name.Name)
				} else if rule[0] != rule[1] {
					t.Errorf("%s is %v, expected %v", name.Name, rule[0], rule[1])
				}
			}
		}
	}
}
