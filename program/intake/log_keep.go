package intake

import (
	"slices"

	"gatepost/program"
)

// sets gives room for some sets. What is taken next lies right behind them.
func (b *logBook) sets(n int) []program.SetDone {
	const many = 256
	if len(b.room) < n {
		b.room = make([]program.SetDone, max(n, many))
	}
	sets := b.room[:n]
	b.room = b.room[n:]
	return sets
}

// keep adds an entry to the log, or its sets to the entry above it, of which they
// are the next ones.
func (b *logBook) keep(e program.Entry) {
	n := len(b.log.Entries)
	if n == 0 || !continues(&e, &b.log.Entries[n-1]) {
		b.log.Entries = append(b.log.Entries, e)
		return
	}
	above := &b.log.Entries[n-1]
	all := len(above.Sets) + len(e.Sets)
	if all <= cap(above.Sets) && &above.Sets[:all][len(above.Sets)] == &e.Sets[0] {
		above.Sets = above.Sets[:all]
		return
	}
	above.Sets = append(slices.Clip(above.Sets), e.Sets...)
}

// continues says that an entry has the next sets of the one above it.
func continues(e, above *program.Entry) bool {
	if len(e.Sets) == 0 || len(above.Sets) == 0 || len(above.Sets)+len(e.Sets) > maxSets {
		return false
	}
	last := above.Sets[len(above.Sets)-1]
	return e.Date == above.Date && e.Exercise == above.Exercise && e.Step == above.Step && e.Note == "" &&
		e.RigGiven == above.RigGiven && e.DropGiven == above.DropGiven && rigKey(e) == rigKey(above) &&
		above.Sets[0].Number == 1 && e.Sets[0].Number == last.Number+1 && !mixed(e.Sets, above.Sets)
}

// snug gives back the room that was kept for more: of hundreds of clients it
// would fill the memory, and sets lie side by side.
func snug(entries []program.Entry) []program.Entry {
	for i := range entries {
		entries[i].Sets = slices.Clip(entries[i].Sets)
	}
	return slices.Clone(entries)
}

// mixed says that some sets were held and others counted.
func mixed(a, b []program.SetDone) bool {
	held := func(s program.SetDone) bool { return s.Seconds > 0 }
	counted := func(s program.SetDone) bool { return s.Reps > 0 }
	return slices.ContainsFunc(a, held) && slices.ContainsFunc(b, counted) || slices.ContainsFunc(a, counted) && slices.ContainsFunc(b, held)
}
