package view

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// finding writes an item by which a mark is found: what to do at which marks, when to stop,
// and that it is to be written down.
func (s *speech) finding(p program.Prescription) string {
	measure, _ := p.Measured()
	return s.say("find_mark.say_"+string(measure), "find", s.say("find_mark."+string(measure)), "amount", s.atEach(p),
		"marks", s.marks(p), "stop", s.say("find_mark.stop"+careful(p), "rpe", strconv.Itoa(p.Find.RPE)))
}

// findingOnCard writes the same for a card, whose boxes name the marks.
func (s *speech) findingOnCard(p program.Prescription) string {
	measure, _ := p.Measured()
	return s.say("find_mark.on_card"+careful(p), "find", s.say("find_mark."+string(measure)), "amount", s.atEach(p), "rpe", strconv.Itoa(p.Find.RPE))
}

// atEach is what is done at each mark: "5 repetitions".
func (s *speech) atEach(p program.Prescription) string {
	if p.Reps > 0 {
		return s.say(s.plural("find_mark.reps", p.Reps), "reps", strconv.Itoa(p.Reps))
	}
	return s.say("find_mark.hold", "hold", strconv.Itoa(p.Hold))
}

// careful ends the keys of what is said to who goes on only where it was easy.
func careful(p program.Prescription) string {
	if p.Find.Easy {
		return "_easy"
	}
	return ""
}

// marks writes those of a find: "6, 10, 14 cm".
func (s *speech) marks(p program.Prescription) string {
	measure, _ := p.Measured()
	numbers := make([]string, len(p.Find.Marks))
	for i, m := range p.Find.Marks {
		numbers[i] = s.number(measure, m.At)
	}
	return s.unit(unitOf(measure), strings.Join(numbers, ", "))
}

// mark writes one of them: "6 cm".
func (s *speech) mark(measure program.Measure, at float64) string {
	return s.unit(unitOf(measure), s.number(measure, at))
}

func (s *speech) number(measure program.Measure, at float64) string {
	if unitOf(measure) == "kilograms" {
		return s.decimal(HalfKilograms(at))
	}
	return strconv.Itoa(round(100 * at))
}

func unitOf(measure program.Measure) string {
	if measure == program.MeasureScale || measure == program.MeasurePull {
		return "kilograms"
	}
	return "centimetres"
}

// found writes what an item becomes by the mark that was found: "good at 6: 4 cm · 10: 8 cm";
// empty where it stays what it is.
func (s *speech) found(p program.Prescription) string {
	measure, _ := p.Measured()
	if len(p.Found) == 0 {
		return ""
	}
	if !slices.ContainsFunc(p.Found, func(f program.Found) bool { return f.At != f.Mark }) {
		return s.say("find_mark.as_found_" + string(measure))
	}
	rows := make([]string, len(p.Found))
	for i, f := range p.Found {
		rows[i] = s.say("find_mark.row", "mark", s.number(measure, f.Mark), "at", s.mark(measure, f.At))
	}
	return s.say("find_mark.found", "rows", strings.Join(rows, s.say("find_mark.next")))
}

// marksBoxes are one for each mark, for its RPE, and one for the mark that was found; of a
// band also for the strap that it took.
func (s *speech) marksBoxes(p program.Prescription) []CardBox {
	measure, _ := p.Measured()
	var all []CardBox
	for _, m := range p.Find.Marks {
		all = append(all, CardBox{Caption: s.mark(measure, m.At)})
	}
	all = append(all, CardBox{s.say("card.found"), true})
	if measure == program.MeasurePull {
		all = append(all, CardBox{s.say("card.strap"), true})
	}
	return all
}

type (
	findJSON struct {
		Unit  string    `json:"unit"` // "m" or "N"
		Marks []float64 `json:"marks"`
		RPE   int       `json:"rpe"`
		Easy  bool      `json:"easy"`
	}
	foundJSON struct {
		Unit string  `json:"unit"`
		Mark float64 `json:"mark"`
		At   float64 `json:"at"`
	}
)

// toFind is a find for machines; nil: nothing is found.
func toFind(p program.Prescription) *findJSON {
	if !p.Find.Any() {
		return nil
	}
	return &findJSON{unitJSON(p), each(p.Find.Marks, func(m program.Mark) float64 { return places(m.At, 3) }), p.Find.RPE, p.Find.Easy}
}

func toFound(p program.Prescription) []foundJSON {
	return each(p.Found, func(f program.Found) foundJSON { return foundJSON{unitJSON(p), places(f.Mark, 3), places(f.At, 3)} })
}

func unitJSON(p program.Prescription) string {
	if measure, _ := p.Measured(); unitOf(measure) == "kilograms" {
		return "N"
	}
	return "m"
}

// planFind is a find as a kept plan has it.
type planFind struct {
	Marks []planMark `json:"marks"`
	RPE   int        `json:"rpe"`
	Easy  bool       `json:"easy,omitempty"`
	For   int        `json:"for"`
}

type planMark struct {
	At   float64 `json:"at"`
	Load float64 `json:"load,omitempty"`
}

type planFound struct {
	Mark float64 `json:"mark"`
	At   float64 `json:"at"`
}

func toPlanFind(f program.Find) *planFind {
	if !f.Any() {
		return nil
	}
	return &planFind{each(f.Marks, func(m program.Mark) planMark { return planMark(m) }), f.RPE, f.Easy, f.For}
}
