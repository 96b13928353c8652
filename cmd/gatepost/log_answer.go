package main

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"gatepost/program"
	"gatepost/program/intake"
)

func rigCell(r program.Rig) string {
	if r.Free() {
		return "free"
	}
	return fmt.Sprintf("%s strap %s cm", strings.Join(r.Bands, " + "), strconv.FormatFloat(r.Drop*100, 'g', 6, 64))
}

func lean(ahead float64) string { return strconv.FormatFloat(ahead*100, 'g', 6, 64) + " cm" }

// row is one line of a log as it is typed.
type row struct {
	exercise, bands, amounts, rpe, clean, pain, ahead, note string
	counted                                                 bool // in repetitions
}

// read reads a row as a line of the log.
func (t *asking) read(r row) (program.Entry, program.Problems) {
	hold, reps := r.amounts, ""
	if r.counted {
		hold, reps = "", r.amounts
	}
	var text strings.Builder
	out := csv.NewWriter(&text)
	out.Write(strings.Split(intake.LogHeader(), ",")) // to memory, which does not fail
	out.Write([]string{t.day.String(), r.exercise, "", r.bands, hold, reps, r.rpe, r.clean, r.pain, r.ahead, r.note})
	out.Flush()
	log, problems := intake.ReadNewLines(t.studio, t.client, "answer", []byte(text.String()), nil)
	if len(log.Entries) == 0 {
		return program.Entry{}, problems
	}
	return log.Entries[0], problems
}

// part is an answer as part of a row.
type part struct {
	row
	fine bool // there is nothing to check
}

// ask puts a question until the answer is one.
func (t *asking) ask(question string, in func(answer string) part) (string, error) {
	for {
		t.say("%s: ", question)
		if !t.lines.Scan() {
			t.say("\n")
			return "", errStopped
		}
		answer := strings.TrimSpace(t.lines.Text())
		p := in(answer)
		if p.fine {
			return answer, nil
		}
		_, problems := t.read(p.row)
		if !problems.Stop() {
			return answer, nil
		}
		for _, p := range problems {
			if !p.Warning {
				t.say("  %s. %s\n", p.Message, p.Advice)
			}
		}
	}
}

// say writes to the terminal, with plain spaces as in every text there.
func (t *asking) say(format string, args ...any) {
	fmt.Fprint(t.err, strings.ReplaceAll(fmt.Sprintf(format, args...), "\u00a0", " "))
}
