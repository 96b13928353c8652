package planner

import (
	"slices"
	"testing"

	"gatepost/program"
)

// Of three straight-arm days without heavy work the lighter one comes right after the
// freshest, and weeks go round: on Tuesday, Thursday and Sunday with leans on Tuesday the
// freshest is Sunday, so that a gate has Thursday and Sunday.
func TestRecalledParts(t *testing.T) {
	tuesday := program.Date(20838)
	main, second := program.Prescription{Role: program.RoleMain, Step: "tuck"}, program.Prescription{Role: program.RoleSecond, StraightArm: true}
	for _, c := range []struct {
		name string
		days []program.Prescription
		want []part
	}{
		{"leans first", []program.Prescription{second, main, main}, []part{partLight, partMain, partHeavy}},
		{"leans in the middle", []program.Prescription{main, second, main}, []part{partHeavy, partLight, partMain}},
		{"leans last", []program.Prescription{main, main, second}, []part{partMain, partHeavy, partLight}},
		{"no leans", []program.Prescription{main, main, main}, []part{partHeavy, partLight, partMain}},
	} {
		var printed program.Week
		for i, date := range []program.Date{tuesday, tuesday + 2, tuesday + 5} {
			printed.Sessions = append(printed.Sessions, program.Session{Date: date, Items: c.days[i : i+1]})
		}
		w := recalled(&printed)
		if got := w.parts(); !slices.Equal(got, c.want) {
			t.Errorf("%s: parts %v, wanted %v", c.name, got, c.want)
		}
	}
}
