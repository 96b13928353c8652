package planner

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
)

// Nobody presses with the feet on a box that is not there, nor at a wall on sore wrists,
// whose hands lie flat there: they press in the pike, on handles, until they are well. Nor do those wrists practise push-ups on the floor for the
// entry (common practice: flat hands wait until wrists are quiet).
func TestStepsAreLeftOutForKitAndWrists(t *testing.T) {
	shown := []program.Hold{{Exercise: "wall-handstand-line", Seconds: 60}, {Exercise: "push-up", Reps: 25}, {Step: "pike", Reps: 12}}
	for _, c := range []struct {
		name, goal string
		kit        []string
		wrists     program.Joint
		tests      []program.Hold
		never      []string
		presses    bool
	}{
		{"no box", "wall", []string{"wall"}, program.JointFine, shown, []string{"raised-pike-push-up", "box-pike-push-up"}, true},
		{"a box", "wall", []string{"wall", "box"}, program.JointFine, shown, nil, true},
		{"sore, on handles", "box-pike", []string{"box", "wall", "parallettes"}, program.JointSore, shown, []string{"wall-handstand-lowering", "wall-handstand-push-up"}, true},
		{"sore, towards a wall", "wall", []string{"box", "wall", "parallettes"}, program.JointSore, shown, []string{"wall-handstand-lowering", "wall-handstand-push-up"}, true},
		{"sore, towards a wall, no handles", "wall", []string{"box", "wall"}, program.JointSore, shown, []string{"pike-push-up", "wall-handstand-lowering", "wall-handstand-push-up"}, false},
		{"sore, before the entry", "wall", []string{"wall"}, program.JointSore, shown[:1], []string{"push-up", "wall-handstand-line"}, false},
	} {
		a := maren(t)
		a.Goal = program.Goal{Skill: "handstand-push-up", Step: c.goal, Reps: 3, Hold: 9, By: monday + 360}
		a.Bands, a.Kit, a.Tests, a.Health.Wrists = nil, c.kit, c.tests, c.wrists
		p, problems := Plan(library(t), &a)
		if problems.Stop() || len(p.Weeks) == 0 {
			t.Fatal(c.name, problems, p.Withheld)
		}
		presses := false
		for _, w := range p.Weeks {
			for _, it := range items(&w) {
				if slices.Contains(c.never, it.Exercise) {
					t.Errorf("%s: week %d has the %s", c.name, w.Number, it.Exercise)
				}
				presses = presses || it.Role == program.RoleMain
			}
		}
		if presses != c.presses {
			t.Errorf("%s: presses %v", c.name, presses)
		}
	}
}

// What is left out is said, and what would open it: a box or a table, a wall, a block of a
// height, quiet wrists. Not what is behind the client anyway: who presses a dozen with the
// feet on a box at home needs none for the first pikes. Of balance what cannot be practised
// is waited for.
func TestWhatIsLeftOutIsSaid(t *testing.T) {
	type goal = program.Goal
	press := goal{Skill: "handstand-push-up", Step: "wall", Reps: 3, Hold: 9, By: monday + 360}
	boxed := press
	boxed.Step = "box-pike"
	lift := goal{Skill: "press-to-handstand", Step: "straddle", Reps: 2, Hold: 6, By: monday + 360}
	stand := goal{Skill: "free-handstand", Step: "long-stand", Hold: 30, By: monday + 360}
	entered := []program.Hold{{Exercise: "wall-handstand-line", Seconds: 60}, {Exercise: "push-up", Reps: 25}}
	lined := []program.Hold{{Exercise: "lying-handstand-line", Seconds: 90}, {Exercise: "box-handstand-line", Seconds: 90}}
	for _, c := range []struct {
		name   string
		goal   goal
		kit    []string
		blocks []float64
		wrists program.Joint
		tests  []program.Hold
		want   []string
	}{
		{"no box", press, []string{"wall"}, nil, program.JointFine, entered, []string{"left-out-kit kit=box kit=table steps=raised-pike steps=steep-pike steps=box-pike"}},
		{"no box, before the entry", press, []string{"wall"}, nil, program.JointFine, nil, []string{"left-out-kit kit=box kit=table steps=raised-pike steps=steep-pike steps=box-pike"}},
		{"no box, and past it", press, []string{"wall"}, nil, program.JointFine, append(entered, program.Hold{Step: "box-pike", Reps: 20, Seconds: 60}), nil},
		{"a table", press, []string{"wall", "table"}, nil, program.JointFine, entered, nil},
		{"neither box nor wall", boxed, []string{"table"}, nil, program.JointFine, entered, nil},
		{"sore, on handles", goal{Skill: press.Skill, Step: "raised-hands-10", Reps: 3, Hold: 9, By: press.By}, []string{"wall", "box", "parallettes"}, nil, program.JointSore, entered,
			[]string{"left-out-wrists steps=lowering steps=wall steps=chest-to-wall"}},
		{"two blocks", lift, []string{"wall"}, []float64{0.4, 0.2}, program.JointFine, nil, []string{"left-out-block heights=0.3 heights=0.1 steps=block-30 steps=block-10"}},
		{"two blocks, no wall", lift, nil, []float64{0.4, 0.2}, program.JointFine, nil,
			[]string{"left-out-block heights=0.3 heights=0.1 steps=block-30 steps=block-10", "left-out-kit kit=wall steps=lowering"}},
		{"no wall", stand, []string{"box"}, nil, program.JointFine, lined, []string{"left-out-kit kit=wall steps=wall-line steps=toe-pull"}},
		{"no wall, and past it", stand, []string{"box"}, nil, program.JointFine, append(lined, program.Hold{Step: "toe-pull", Seconds: 10, Tries: program.Tries{Reached: 9, Of: 10}}), nil},
	} {
		a := maren(t)
		a.Goal, a.Bands, a.Kit, a.Tests, a.Hanging = c.goal, nil, c.kit, c.tests, program.Hanging{Blocks: c.blocks}
		a.Health.Wrists = c.wrists
		p, problems := Plan(library(t), &a)
		if problems.Stop() || len(p.Weeks) == 0 {
			t.Fatal(c.name, problems, p.Withheld)
		}
		var got []string
		for _, n := range p.Notes {
			if strings.HasPrefix(n.Code, "left-out") {
				got = append(got, inLine(n))
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s:\n%q, want\n%q", c.name, got, c.want)
		}
	}
}

// inLine is a note with its values in a line.
func inLine(n program.Note) string {
	words := []string{n.Code}
	for _, v := range n.Values {
		text := v.Text
		if v.Kind == program.ValueMetres {
			text = fmt.Sprint(v.Number)
		}
		words = append(words, v.Name+"="+text)
	}
	return strings.Join(words, " ")
}

// Levels lead over steps that their own kit trains, and say what is left out; where nothing
// but a wall is missing of balance the places at the wall are not offered.
func TestLevelsLeadOverTheirKit(t *testing.T) {
	studio, _ := repo()
	for _, c := range []struct {
		id   string
		kit  []string
		want []string // of each level: the step it leads to
		said string
	}{
		{"up-the-wall", []string{"wall", "box"}, []string{"", "pike", "raised-pike", "steep-pike", "box-pike", "lowering", "wall"}, ""},
		{"up-the-wall", []string{"wall"}, []string{"", "pike", "lowering", "wall"}, "left-out-kit kit=box kit=table steps=raised-pike steps=steep-pike steps=box-pike"},
		{"off-the-block", nil, []string{"", "block-40", "block-30", "block-20", "block-10", "straddle"}, "left-out-kit kit=wall steps=lowering"},
		{"off-the-wall", []string{"box"}, []string{"", "kick-up", "short-stand", "long-stand"}, "left-out-kit kit=wall steps=wall-line steps=toe-pull"},
	} {
		from := studio.Public[slices.IndexFunc(studio.Public, func(p program.PublicProgram) bool { return p.ID == c.id })]
		from.Kit = c.kit
		levels, _ := Levels(library(t), &from)
		var got []string
		for _, l := range levels {
			got = append(got, l.Next)
		}
		said := ""
		if i := slices.IndexFunc(levels[0].Program.Notes, func(n program.Note) bool { return strings.HasPrefix(n.Code, "left-out") }); i >= 0 {
			said = inLine(levels[0].Program.Notes[i])
		}
		if !slices.Equal(got, c.want) || said != c.said {
			t.Errorf("%s, kit %q: leads to %q, want %q; says %q, want %q", c.id, c.kit, got, c.want, said, c.said)
		}
	}
}
