package main

import (
	"slices"

	"gatepost/program"
)

// finish asks for what belongs to no exercise. A day without a session may still
// have a morning to write down.
func (t *asking) finish() ([]program.Entry, error) {
	if len(t.entries) > 0 {
		if err := t.close(); err != nil {
			return nil, err
		}
	}
	if err := t.morningAfter(); err != nil {
		return nil, err
	}
	all := append(t.mornings, t.entries...)
	if len(all) == 0 {
		return nil, refused(t.words(), "empty")
	}
	return all, nil
}

// close asks for what belongs to the whole session.
func (t *asking) close() error {
	at := len(t.entries) - 1
	if t.main >= 0 && t.main < len(t.entries) {
		at = t.main
	}
	check := row{exercise: "done"}
	_, err := t.ask(t.asked("pain"), func(answer string) part {
		check.pain = answer
		return part{check, answer == ""}
	})
	if err == nil {
		_, err = t.ask(t.asked("note"), func(answer string) part {
			check.note = answer
			return part{check, answer == ""}
		})
	}
	if err != nil {
		return err
	}
	said, _ := t.read(check)
	e := &t.entries[at]
	e.Note = said.Note
	switch {
	case len(said.Sets) == 0:
	case e.AsPrinted:
		e.Sets = said.Sets
	default:
		e.Sets[len(e.Sets)-1].Pain = said.Sets[0].Pain
	}
	return nil
}

// morningAfter asks how the joints felt the morning after the last session before
// this one, which nobody could know when that one was written down. Where the log has
// that morning, or has no session yet, there is nothing to ask.
func (t *asking) morningAfter() error {
	last := program.Date(0)
	for _, e := range t.client.Log.Entries {
		if !e.Morning && e.Date < t.day {
			last = max(last, e.Date)
		}
	}
	isNext := func(e program.Entry) bool { return e.Morning && e.Date == last+1 }
	if last == 0 || slices.ContainsFunc(t.mornings, isNext) || slices.ContainsFunc(t.client.Log.Entries, isNext) {
		return nil
	}
	return t.morning(last + 1)
}

// morning asks for the joints of one morning.
func (t *asking) morning(day program.Date) error {
	r := row{exercise: "morning"}
	answer, err := t.ask(t.asked("morning", "day", day.String()), func(answer string) part {
		r.pain = answer
		return part{r, answer == ""}
	})
	if err != nil || answer == "" {
		return err
	}
	e, problems := t.read(r)
	if problems.Stop() { // it was read before
		return t.report(problems)
	}
	e.Date = day
	t.mornings = append(t.mornings, e)
	return nil
}
