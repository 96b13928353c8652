package main

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
	"gatepost/program/intake"
)

func centimetres(x float64) string { return strconv.FormatFloat(x*100, 'g', 6, 64) + " cm" }

// shown writes a rig as it is asked about.
func (t *asking) shown(r program.Rig) string {
	switch {
	case r.Free():
		return t.words().Say("rig.free" + map[program.Load]string{program.LoadPress: "_reps", program.LoadLift: "_lift"}[t.load()])
	case r.Pad > 0:
		return t.words().Say("rig.pad", "length", t.decimal(centimetres(r.Pad)))
	case r.Block > 0:
		return t.words().Say("rig.block", "length", t.decimal(centimetres(r.Block)))
	}
	bands := strings.Join(r.Bands, " + ") + " "
	if r.Pull > 0 {
		return bands + t.decimal(kilograms(r.Pull))
	}
	return bands + t.words().Say("rig.drop", "length", t.decimal(centimetres(r.Drop)))
}

// decimal writes a length with the decimal sign of the language.
func (t *asking) decimal(length string) string {
	return strings.Replace(length, ".", t.words().Say("unit.decimal"), 1)
}

// row is one line of a log as it is typed.
type row struct {
	exercise, bands, amounts, rpe, clean, pain, ahead, note string
	best                                                    string // of several tries, whose amounts are how many reached
	hung                                                    string // the bands, as they are asked about
	onScale                                                 bool   // with the toes, in place of bands
	counted                                                 bool   // in repetitions
	tried                                                   bool   // in tries
}

// read reads a row as a line of the log.
func (t *asking) read(r row) (program.Entry, program.Problems) {
	hold, reps := r.amounts, ""
	if r.counted || r.tried {
		hold, reps = r.best, r.amounts
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
		t.say(question + ": ")
		if !t.lines.Scan() {
			t.say("\n")
			return "", refused(t.words(), "stopped")
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
				t.say("  " + p.Message + ". " + p.Advice + "\n")
			}
		}
	}
}

// say writes to the terminal, with plain spaces as in every text there.
func (t *asking) say(text string) { fmt.Fprint(t.err, plain(text)) }

// tell writes a line in the words of the studio.
func (t *asking) tell(key string, pairs ...string) { t.say(terminal(t.words(), key, pairs...) + "\n") }

// words are those of the studio, which has been read.
func (t *asking) words() program.Words { return t.studio.Library.Words }

// asked is a question in the words of the studio.
func (t *asking) asked(key string, pairs ...string) string {
	return terminal(t.words(), "ask_"+key, pairs...)
}

// triesIn reports whether a line stands for several tries, to which no set can be added.
func triesIn(e *program.Entry) bool {
	return slices.ContainsFunc(e.Sets, func(s program.SetDone) bool { return s.Tries.Of > 0 })
}
