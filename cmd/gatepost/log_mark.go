package main

import (
	"math"
	"strconv"
	"strings"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/publish/view"
)

// mark asks which mark was found: the last good one, and how hard it was. Those before it
// need no line; without an answer nothing was done.
func (t *asking) mark(r row, p *program.Prescription, words *view.Item) error {
	measure, _ := p.Measured()
	if r.amounts = strconv.Itoa(p.Hold); p.Reps > 0 {
		r.counted, r.amounts = true, strconv.Itoa(p.Reps)
	}
	t.say(words.Name() + ": " + words.Amount + "\n")
	answer, err := t.ask("  "+t.asked("mark", "like", t.markLike(p)), func(answer string) part {
		r.atMark(measure, p, answer)
		return part{r, answer == "" || answer == "-"}
	})
	t.typed = true
	if err != nil || answer == "" || answer == "-" {
		return err
	}
	if err := t.questions(&r, []question{{t.asked("mark_rpe"), &r.rpe, true}}); err != nil {
		return err
	}
	return t.keep(r, p.Role)
}

// atMark puts a mark into the cell that is for its measure.
func (r *row) atMark(measure program.Measure, p *program.Prescription, answer string) {
	if _, err := strconv.ParseFloat(strings.Replace(answer, ",", ".", 1), 64); err == nil && (measure == program.MeasureScale || measure == program.MeasurePull) {
		answer += " kg"
	}
	switch measure {
	case program.MeasureLean:
		r.ahead = answer
	case program.MeasurePull:
		r.bands = strings.Join(p.Rig.Bands, " + ") + " " + answer
	default: // "pad 10 cm"
		r.bands = string(measure) + " " + answer
	}
}

// markLike is how an answer looks: the mark in the middle.
func (t *asking) markLike(p *program.Prescription) string {
	at := p.Find.Marks[len(p.Find.Marks)/2].At
	if measure, _ := p.Measured(); measure == program.MeasureScale || measure == program.MeasurePull {
		return t.decimal(kilograms(at))
	}
	return t.decimal(centimetres(at))
}

// kilograms is a force as a scale shows it, to the tenth.
func kilograms(newtons float64) string {
	return strconv.FormatFloat(math.Round(10*newtons/intake.Kilogram)/10, 'g', 6, 64) + " kg"
}
