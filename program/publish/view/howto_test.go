package view

import (
	"slices"
	"testing"

	"gatepost/program"
)

// Paper knows no Markdown: links are their words, emphasis is left out, a paragraph is a
// line, and a sign between numbers stays.
func TestParagraphs(t *testing.T) {
	for text, want := range map[string][]string{
		"One line\nbroken.\n\nAnother.":                   {"One line broken.", "Another."},
		"As for the [planche lean](planche-lean.md), on.": {"As for the planche lean, on."},
		"**At a wall.** Hands *ahead* of it.":             {"At a wall. Hands ahead of it."},
		"3 * 10 and 2_000 stay":                           {"3 * 10 and 2_000 stay"},
		"  \n\n ":                                         nil,
	} {
		if got := paragraphs(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// The exercises stand in the order of a session, each under the first part that it plays.
func TestExercisesInTheOrderOfASession(t *testing.T) {
	item := func(exercise string, role program.Role) program.Prescription {
		return program.Prescription{Exercise: exercise, Role: role}
	}
	p := &program.Program{Weeks: []program.Week{{Sessions: []program.Session{
		{Items: []program.Prescription{item("rocks", program.RolePrepare), item("lean", program.RoleSecond), item("row", program.RolePull)}},
		{Items: []program.Prescription{item("rocks", program.RolePrepare), item("tuck", program.RoleTest), item("line", program.RoleMobility)}},
		{Items: []program.Prescription{item("lean", program.RoleMain), item("tuck", program.RoleMain), item("row", program.RolePull)}},
	}}}}
	var got []string
	for _, i := range exercisesOf(p) {
		got = append(got, i.Exercise+" "+string(i.Role))
	}
	if want := []string{"rocks prepare", "lean main", "tuck main", "row pull", "line mobility"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// What a coach has ended is not explained any more: of a plan made anew in its third week the
// exercises are those from its second week on, when that was.
func TestExercisesThatAreOverAreLeftOut(t *testing.T) {
	p := &program.Program{From: 14}
	for i, exercise := range []string{"curl", "row", "lean"} {
		p.Weeks = append(p.Weeks, program.Week{Start: program.Date(7 * i), Sessions: []program.Session{{Items: []program.Prescription{{Exercise: exercise, Role: program.RolePull}}}}})
	}
	var got []string
	for _, i := range exercisesOf(p) {
		got = append(got, i.Exercise)
	}
	if want := []string{"row", "lean"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}
