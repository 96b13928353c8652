package view

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"gatepost/program"
)

// Answer is what can be taken down of an item that was done, in the names of a log,
// which are the same in every language.
type Answer struct {
	Exercise string // the step, where it holds one, else the exercise
	Bands    string // as printed: "narrow + middle strap 20 cm", "free"; empty where no step is held
	Lean     string // as printed: "16 cm"; empty: it is no lean
	Amount   int    // of each set, s or repetitions; of tries what they seek; 0: what it came to is the answer
	Reps     bool   // counted, and not held
	Tries    bool   // so many of its tries reached, and the best has seconds
	RPE      bool
	Clean    bool
	Marks    []AnswerMark // of a find, whose answer is the last good one
}

// AnswerMark is a mark in the cell that is for its measure.
type AnswerMark struct {
	Mark        string // "14 cm", in the words of the card
	Bands, Lean string
}

// answer is what a page asks of an item. Effort is asked of steps and leans, form of
// what a gate may ask it of; of tries neither.
func (s *speech) answer(p program.Prescription) Answer {
	a := Answer{Exercise: p.Exercise, Reps: p.Reps > 0 && !p.Max, Tries: practised(p)}
	switch {
	case p.Scale > 0: // no step is held off the floor
	case p.Step != "":
		a.Exercise, a.Reps, a.Bands = p.Step, a.Reps || s.repeats(), rigInLog(p.Rig)
	}
	if p.Ahead > 0 {
		a.Lean = centimetresInLog(p.Ahead)
	}
	if !open(p) || p.Find.Any() || a.Tries { // else the card asks how long it lasts
		a.Amount = cmp.Or(p.Reps, p.Hold)
	}
	a.RPE = !p.Try && (p.Step != "" || p.Ahead > 0 || p.Scale > 0 || p.Role == program.RoleMain || p.Role == program.RoleTest)
	a.Clean = !p.Try && !p.Find.Any() && (p.Role == program.RoleMain || p.Role == program.RoleTest)
	a.Marks = s.answerMarks(p)
	return a
}

func (s *speech) answerMarks(p program.Prescription) []AnswerMark {
	measure, _ := p.Measured()
	var all []AnswerMark
	for _, m := range p.Find.Marks {
		a := AnswerMark{Mark: s.mark(measure, m.At)}
		switch measure {
		case program.MeasureLean:
			a.Lean = centimetresInLog(m.At)
		case program.MeasureScale:
			a.Bands = "scale " + kilogramsInLog(m.At)
		default:
			a.Bands = rigInLog(p.Rig.Moved(m.At))
		}
		all = append(all, a)
	}
	return all
}

// rigInLog is a rig as a log names it.
func rigInLog(r program.Rig) string {
	bands := strings.Join(r.Bands, " + ")
	switch {
	case r.Pad > 0:
		return "pad " + centimetresInLog(r.Pad)
	case r.Block > 0:
		return "block " + centimetresInLog(r.Block)
	case r.Pull > 0:
		return bands + " " + kilogramsInLog(r.Pull)
	case r.Free():
		return "free"
	}
	return bands + " strap " + centimetresInLog(r.Drop)
}

func centimetresInLog(metres float64) string {
	return strconv.FormatFloat(math.Round(1000*metres)/10, 'f', -1, 64) + " cm"
}

// kilogramsInLog is a force as it is printed, to the half.
func kilogramsInLog(newtons float64) string {
	return strconv.FormatFloat(HalfKilograms(newtons), 'f', -1, 64) + " kg"
}
