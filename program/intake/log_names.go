package intake

import (
	"cmp"
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
	called    []string          // their names, and what may stand in their place
	steps     map[string]string // folded name of a step -> step id
	holds     map[string]string // exercise id -> the step that it holds
	kinds     map[string]program.Dose
	leans     []string // exercises that have a distance
	scales    []string // exercises with the toes on a scale
	bands     *names
	retired   map[string]program.Date // bands that are gone, and since when
	load      program.Load            // of the road map
	seeks     map[string]int          // id of a step that is tried -> the seconds it is for
}

// exerciseDone is what an exercise cell names.
type exerciseDone struct{ exercise, step string }

// rigDone is what a bands cell names.
type rigDone struct {
	program.Rig
	dropGiven bool
	scale     float64 // N on the toes, where it names that instead
}

// newLogKnown gathers the exercises of the library, the steps of the client's
// road map and the client's bands.
func newLogKnown(lib *program.Library, words *logWords, a *program.Assessment, dates program.DateOrder) *logKnown {
	k := &logKnown{words: words, client: a, dates: dates, exercises: newNames("exercise or step"), bands: newNames("band"),
		seeks: map[string]int{}, steps: map[string]string{}, holds: map[string]string{}, kinds: map[string]program.Dose{}, retired: map[string]program.Date{}}
	for i := range lib.Exercises {
		e := &lib.Exercises[i]
		k.exercises.add(e.ID, e.Name)
		k.called = append(k.called, e.Name)
		k.kinds[e.ID] = e.Dose
		if slices.Contains(e.Trains, program.ForLean) {
			k.leans = append(k.leans, e.ID)
		}
	}
	if m, ok := lib.RoadMap(a.Goal.Skill); ok {
		k.load = m.Load
		for _, r := range m.Rungs {
			if r.Kind == program.RungLean {
				k.leans = append(k.leans, r.Exercise)
			}
			if r.Kind == program.RungScale {
				k.scales = append(k.scales, r.Exercise)
			}
		}
		for i := range m.Steps {
			k.addStep(&m.Steps[i])
		}
		for i := range m.Steps {
			k.addAround(m, &m.Steps[i])
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

// addAround makes a step known with its skill's name around it, where that is nothing
// else's name.
func (k *logKnown) addAround(m *program.RoadMap, s *program.Step) {
	for _, key := range around(m, s) {
		if _, taken := k.exercises.ids[key]; !taken {
			k.exercises.ids[key], k.steps[key] = s.Exercise, s.ID
		}
	}
}

// addStep makes a step known by id and name; where an exercise is called the
// same, the step is meant.
func (k *logKnown) addStep(s *program.Step) {
	for _, name := range []string{s.ID, s.Name} {
		k.exercises.ids[fold(name)] = s.Exercise
		k.steps[fold(name)] = s.ID
	}
	if s.Gate.Tried() {
		k.seeks[s.ID] = s.Gate.Hold
	}
	k.exercises.list = append(k.exercises.list, s.ID)
	k.called = append(k.called, s.Name)
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
		l.fault(l.at(columnExercise), "missed")
		return exerciseDone{}, false
	}
	id, there := l.known.exercises.ids[fold(written)]
	if !there {
		words := append(slices.Clone(l.known.exercises.list), doneWord, morningWord)
		l.fault(l.at(columnExercise), "no_exercise", "written", quote(written), "offer", l.offer(written, words, slices.Concat(l.known.called, l.words.done, l.words.morning)...))
		return exerciseDone{}, false
	}
	return exerciseDone{id, cmp.Or(l.known.steps[fold(written)], l.known.holds[id])}, true
}

// sayNoExercise tells a line that has only a date from one with numbers that
// belong to nothing.
func (l *logLine) sayNoExercise() {
	for i, c := range l.columns {
		if c != columnDate && c != columnClient && i < len(l.cells) && strings.TrimSpace(l.cells[i]) != "" {
			l.fault(l.at(columnExercise), "unnamed")
			return
		}
	}
	l.doubt(l.start(), "date_only")
}

// readBands reads which bands were hung, and how low, the pads of a press, or the block of a lift.
func (l *logLine) readBands(e *program.Entry) {
	written := l.cell(columnBands)
	if written == "" {
		return
	}
	done, known := l.rigs[written]
	if !known {
		var wrong fault
		if done, wrong = l.known.rig(written); wrong != nil {
			l.fault(l.at(columnBands), wrong...)
			return
		}
		l.rigs[written] = done
	}
	if e.Scale = done.scale; e.Scale > 0 {
		l.checkScale(e)
		return
	}
	e.Rig, e.RigGiven, e.DropGiven = done.Rig, true, done.dropGiven
	l.checkHelp(e)
	l.checkRetired(e)
}

// checkRetired asks about a band that was gone by the day of the line.
func (l *logLine) checkRetired(e *program.Entry) {
	for _, name := range e.Rig.Bands {
		if gone := l.known.retired[name]; gone != 0 && gone <= e.Date {
			l.doubt(l.at(columnBands), "band_retired", "band", quote(name), "gone", gone.String(), "day", e.Date.String())
		}
	}
}

// rig reads bands side by side and the strap above them, or says what is wrong.
func (k *logKnown) rig(written string) (done rigDone, wrong fault) {
	if k.words.isFree(written) {
		return done, nil
	}
	if done.Rig, wrong = k.onHeight(written); !done.Free() || wrong != nil {
		return done, wrong
	}
	if done.scale, wrong = k.onScale(written); done.scale > 0 || wrong != nil {
		return done, wrong
	}
	if r, there, wrong := k.pulled(written); there {
		return rigDone{Rig: r}, wrong
	}
	rest := written
	if m := k.words.strap.FindStringSubmatchIndex(written); m != nil {
		done.dropGiven = true
		if wrong = k.strapOf(strings.TrimRight(written[:m[0]], " ,;+")); wrong != nil {
			return done, wrong
		}
		if done.Drop, wrong = k.drop(written[m[2]:m[3]] + " " + strings.ToLower(written[m[4]:m[5]])); wrong != nil {
			return done, wrong
		}
		rest = strings.TrimRight(written[:m[0]], " ,;+")
		if rest == "" {
			return done, fault{"strap_alone"}
		}
	}
	parts := []string{rest}
	if _, whole := k.bands.ids[fold(rest)]; !whole {
		parts = k.words.beside.Split(rest, -1)
	}
	for _, part := range parts {
		id, there := k.bands.ids[fold(part)]
		switch {
		case !there:
			return done, fault{"no_band", "written", quote(part), "offer", offerIn(k.words.said(), part, k.bands.list)}
		case slices.Contains(done.Bands, id):
			return done, fault{"band_twice", "band", quote(id)}
		}
		done.Bands = append(done.Bands, id)
	}
	if len(done.Bands) > 2 {
		return done, fault{"three_bands"}
	}
	done.Bands = k.bands.inOrder(done.Bands)
	return done, k.beside(done.Bands)
}

// drop finds the strap of a written length among the client's.
func (k *logKnown) drop(written string) (drop float64, wrong fault) {
	const near = 0.005 // m
	x, none := length.parse(strings.ReplaceAll(written, ",", "."))
	if none != "" {
		return 0, fault{"strap_not", "written", quote(written)}
	}
	h := k.client.Hanging
	for _, d := range h.Lengths() {
		if math.Abs(d-x) <= near {
			return d, nil
		}
	}
	if h.Strap != (program.Strap{}) && h.Strap.From <= x && x <= h.Strap.To {
		return x, nil // set between two marks
	}
	return 0, k.noStrap(written)
}

// noStrap says which lengths of strap a client has, and where that is written.
func (k *logKnown) noStrap(written string) fault {
	h := k.client.Hanging
	var straps []string
	for _, d := range h.Drops {
		straps = append(straps, k.words.number(1000*d/10)+" cm")
	}
	key := "no_strap_either"
	switch {
	case h.Strap == (program.Strap{}):
		key = "no_strap"
	case len(straps) == 0:
		key = "no_strap_set"
	}
	return fault{key, "written", written, "straps", strings.Join(straps, ", "),
		"from", k.words.number(1000 * h.Strap.From / 10), "to", k.words.number(1000 * h.Strap.To / 10)}
}

// checkClient sees that the line is in the right log.
func (l *logLine) checkClient() {
	written := l.cell(columnClient)
	a := l.known.client
	if written == "" || fold(written) == a.Slug || fold(written) == fold(a.Athlete.Name) || l.isSigned(written) {
		return
	}
	if slug, err := Slug(written); err == nil && slug == a.Slug {
		return
	}
	if fold(written) == fold(program.FirstName(a.Athlete.Name, a.Athlete.Called)) {
		return
	}
	l.fault(l.at(columnClient), "other_client", "written", quote(written), "client", a.Athlete.Name)
}
