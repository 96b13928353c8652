package intake

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// amountCell writes the seconds or the repetitions of all sets, and says in which
// column. A set tried and not held is 0, one not said a dash.
func amountCell(sets []program.SetDone) (column, string) {
	c := columnHold
	if slices.ContainsFunc(sets, func(s program.SetDone) bool { return s.Reps > 0 }) {
		c = columnReps
	}
	if len(sets) == 1 && !amountSaid(sets[0]) {
		return c, ""
	}
	return c, cellOf(sets, " ", amountSaid, func(s program.SetDone) string {
		return strconv.FormatFloat(s.Seconds+float64(s.Reps), 'f', -1, 64) // one of them is 0
	})
}

func amountSaid(s program.SetDone) bool { return s.Seconds > 0 || s.Reps > 0 || notHeld(s) }

// notHeld says that a set was tried and not held at all.
func notHeld(s program.SetDone) bool {
	return s.Seconds == 0 && s.Reps == 0 && s.Clean == program.CleanNo
}

func rpeCell(sets []program.SetDone) string {
	said := func(s program.SetDone) bool { return s.RPE > 0 }
	return lastOrEach(sets, " ", said, func(s program.SetDone) string { return strconv.FormatFloat(s.RPE, 'f', -1, 64) })
}

// cleanCell leaves out what the seconds say already: nobody holds 0 s cleanly.
func cleanCell(sets []program.SetDone) string {
	if !slices.ContainsFunc(sets, func(s program.SetDone) bool { return s.Clean != program.CleanYes }) {
		return string(program.CleanYes)
	}
	if !slices.ContainsFunc(sets, func(s program.SetDone) bool { return s.Clean != program.CleanUnsaid && !notHeld(s) }) {
		return ""
	}
	said := func(s program.SetDone) bool { return s.Clean != program.CleanUnsaid }
	if sets[len(sets)-1].Clean == program.CleanNo { // alone, a yes is for every set
		return lastOrEach(sets, " ", said, func(s program.SetDone) string { return string(s.Clean) })
	}
	return cellOf(sets, " ", said, func(s program.SetDone) string { return string(s.Clean) })
}

func painCell(sets []program.SetDone) string {
	return lastOrEach(sets, " | ", func(s program.SetDone) bool { return s.Pain.Given }, func(s program.SetDone) string { return painPart(s.Pain) })
}

func painPart(p program.Pain) string {
	switch {
	case p == program.Pain{Given: true}:
		return "0"
	case p.Wrists == unsaid && p.Elbows == unsaid && p.Shoulders == unsaid && p.Other > 0:
		return strconv.Itoa(p.Other)
	}
	var parts []string
	for i, x := range []int{p.Wrists, p.Elbows, p.Shoulders, p.Other} {
		if x != unsaid {
			parts = append(parts, fmt.Sprintf("%s %d", joints[i], x))
		}
	}
	return strings.Join(parts, " ")
}

// lastOrEach writes one part where only the last set has one, otherwise one a
// set; nothing where none has.
func lastOrEach(sets []program.SetDone, between string, said func(program.SetDone) bool, part func(program.SetDone) string) string {
	switch first := slices.IndexFunc(sets, said); first {
	case -1:
		return ""
	case len(sets) - 1:
		return part(sets[first])
	}
	return cellOf(sets, between, said, part)
}

// cellOf writes a part for each set, a dash where nothing was said.
func cellOf(sets []program.SetDone, between string, said func(program.SetDone) bool, part func(program.SetDone) string) string {
	parts := make([]string, len(sets))
	for i, s := range sets {
		parts[i] = "-"
		if said(s) {
			parts[i] = part(s)
		}
	}
	return strings.Join(parts, between)
}
