package intake

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"gatepost/program"
)

// logKnown is what the lines of one client's log may name.
type logKnown struct {
	words     *logWords
	client    *program.Assessment
	dates     program.DateOrder
	exercises *names            // exercises and steps; each leads to an exercise
	steps     map[string]string // folded name of a step -> step id
	holds     map[string]string // exercise id -> the step that it holds
	kinds     map[string]program.Dose
	leans     []string // exercises that have a distance
	bands     *names
	retired   map[string]program.Date // bands that are gone, and since when
}

// exerciseDone is what an exercise cell names.
type exerciseDone struct{ exercise, step string }

// rigDone is what a bands cell names.
type rigDone struct {
	program.Rig
	dropGiven bool
}

// newLogKnown gathers the exercises of the library, the steps of the client's
// road map and the client's bands.
func newLogKnown(lib *program.Library, words *logWords, a *program.Assessment, dates program.DateOrder) *logKnown {
	k := &logKnown{words: words, client: a, dates: dates, exercises: newNames("exercise or step"), bands: newNames("band"),
		steps: map[string]string{}, holds: map[string]string{}, kinds: map[string]program.Dose{}, retired: map[string]program.Date{}}
	for i := range lib.Exercises {
		e := &lib.Exercises[i]
		k.exercises.add(e.ID, e.Name)
		k.kinds[e.ID] = e.Dose
		if slices.Contains(e.Trains, program.ForLean) {
			k.leans = append(k.leans, e.ID)
		}
	}
	if m, ok := lib.RoadMap(a.Goal.Skill); ok {
		for _, r := range m.Rungs {
			if r.Kind == program.RungLean {
				k.leans = append(k.leans, r.Exercise)
			}
		}
		for i := range m.Steps {
			k.addStep(&m.Steps[i])
		}
	}
	for _, b := range a.Bands {
		k.bands.add(b.Name, b.Name)
		if b.Retired != 0 {
			k.retired[b.Name] = b.Retired
		}
	}
	return k
}

// addStep makes a step known by id and name; where an exercise is called the
// same, the step is meant.
func (k *logKnown) addStep(s *program.Step) {
	for _, name := range []string{s.ID, s.Name} {
		k.exercises.ids[fold(name)] = s.Exercise
		k.steps[fold(name)] = s.ID
	}
	k.exercises.list = append(k.exercises.list, s.ID)
	if k.holds[s.Exercise] == "" {
		k.holds[s.Exercise] = s.ID
	}
}

// readExercise reads what the line names, a step or an exercise.
func (l *logLine) readExercise(e *program.Entry) {
	written := l.cell(columnExercise)
	done, known := l.exercises[written]
	if !known {
		if done, known = l.newExercise(written); !known {
			l.wrong = true
			return
		}
		l.exercises[written] = done
	}
	e.Exercise, e.Step = done.exercise, done.step
}

func (l *logLine) newExercise(written string) (exerciseDone, bool) {
	if written == "" {
		l.sayNoExercise()
		return exerciseDone{}, false
	}
	if slices.Contains(l.words.missed, fold(written)) || slices.Contains(l.words.none, fold(written)) {
		l.fault(l.at(columnExercise), "a session that was missed has no line", "Take the line away; a note can stand in the next session's line.")
		return exerciseDone{}, false
	}
	id, message, _ := l.known.exercises.resolve(written)
	if message != "" {
		words := append(slices.Clone(l.known.exercises.list), doneWord, morningWord)
		l.fault(l.at(columnExercise), message, offer(written, words))
		return exerciseDone{}, false
	}
	return exerciseDone{id, cmp.Or(l.known.steps[fold(written)], l.known.holds[id])}, true
}

// sayNoExercise tells a line that has only a date from one with numbers that
// belong to nothing.
func (l *logLine) sayNoExercise() {
	for i, c := range l.columns {
		if c != columnDate && c != columnClient && i < len(l.cells) && strings.TrimSpace(l.cells[i]) != "" {
			l.fault(l.at(columnExercise), "the line does not say of which exercise it is", "Name the exercise or step in each line.")
			return
		}
	}
	l.doubt(l.start(), "only a date stands in this line", "Write done beside it, if the session was done as printed; if it was missed, take the line away.")
}

// readBands reads which bands were hung, and how low.
func (l *logLine) readBands(e *program.Entry) {
	written := l.cell(columnBands)
	if written == "" {
		return
	}
	done, known := l.rigs[written]
	if !known {
		var message, advice string
		if done, message, advice = l.known.rig(written); message != "" {
			l.fault(l.at(columnBands), message, advice)
			return
		}
		l.rigs[written] = done
	}
	e.Rig, e.RigGiven, e.DropGiven = done.Rig, true, done.dropGiven
	l.checkRetired(e)
}

// checkRetired asks about a band that was gone by the day of the line.
func (l *logLine) checkRetired(e *program.Entry) {
	for _, name := range e.Rig.Bands {
		if gone := l.known.retired[name]; gone != 0 && gone <= e.Date {
			l.doubt(l.at(columnBands), fmt.Sprintf("%s was retired on %s, and this line is of %s", quote(name), gone, e.Date),
				"It is read with that band. If another was hung, name it; else correct one of the two dates: retired: stands in the assessment.")
		}
	}
}

// rig reads bands side by side and the strap above them, or says what is wrong.
func (k *logKnown) rig(written string) (done rigDone, message, advice string) {
	if k.words.isFree(written) {
		return done, "", ""
	}
	rest := written
	if m := k.words.strap.FindStringSubmatchIndex(written); m != nil {
		done.dropGiven = true
		if done.Drop, message, advice = k.drop(written[m[2]:m[3]] + " " + strings.ToLower(written[m[4]:m[5]])); message != "" {
			return done, message, advice
		}
		rest = strings.TrimRight(written[:m[0]], " ,;+")
		if rest == "" {
			return done, "a strap is named without a band", "Write, for example: narrow + middle, strap 20 cm"
		}
	}
	parts := []string{rest}
	if _, whole := k.bands.ids[fold(rest)]; !whole {
		parts = k.words.beside.Split(rest, -1)
	}
	for _, part := range parts {
		id, message, advice := k.bands.resolve(part)
		switch {
		case message != "":
			return done, message, advice + " Bands are those of the assessment, as in: narrow + middle, strap 20 cm; or: free"
		case slices.Contains(done.Bands, id):
			return done, fmt.Sprintf("%s is named twice", quote(id)), "Two equal bands have two names in the assessment."
		}
		done.Bands = append(done.Bands, id)
	}
	if len(done.Bands) > 2 {
		return done, "more than two bands hang side by side", "Name the two that were hung."
	}
	slices.SortFunc(done.Bands, func(a, b string) int { return slices.Index(k.bands.list, a) - slices.Index(k.bands.list, b) })
	return done, "", ""
}

// drop finds the strap of a written length among the client's.
func (k *logKnown) drop(written string) (drop float64, message, advice string) {
	const near = 0.005 // m
	x, fault := length.parse(strings.ReplaceAll(written, ",", "."))
	if fault != "" {
		return 0, fault, "Write, for example: narrow + middle, strap 20 cm"
	}
	h := k.client.Hanging
	for _, d := range h.Lengths() {
		if math.Abs(d-x) <= near {
			return d, "", ""
		}
	}
	if h.Strap != (program.Strap{}) && h.Strap.From <= x && x <= h.Strap.To {
		return x, "", "" // set between two marks
	}
	return 0, fmt.Sprintf("there is no strap of %s", written), "The assessment has " + strapsOf(h)
}

// strapsOf says which lengths of strap a client has, and where that is written.
func strapsOf(h program.Hanging) string {
	var straps []string
	for _, d := range h.Drops {
		straps = append(straps, short(1000*d/10)+" cm")
	}
	all := strings.Join(straps, ", ") + ", under rig: drops:"
	switch anyOf := fmt.Sprintf("%s to %s cm, under rig: strap:", short(1000*h.Strap.From/10), short(1000*h.Strap.To/10)); {
	case h.Strap == (program.Strap{}):
		return all
	case len(straps) == 0:
		return anyOf
	default:
		return all + " and " + anyOf
	}
}

// checkClient sees that the line is in the right log.
func (l *logLine) checkClient() {
	written := l.cell(columnClient)
	a := l.known.client
	if written == "" || fold(written) == a.Slug || fold(written) == fold(a.Athlete.Name) {
		return
	}
	if slug, err := Slug(written); err == nil && slug == a.Slug {
		return
	}
	if first, _, _ := strings.Cut(a.Athlete.Name, " "); fold(written) == fold(first) {
		return
	}
	l.fault(l.at(columnClient), fmt.Sprintf("this line is of %s, and the log is %s's", quote(written), a.Athlete.Name), "Move it to the other client's log.")
}
