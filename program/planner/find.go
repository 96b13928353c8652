package planner

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// # Finding a mark
//
// How far a lean goes, on which pads or block, with how much on the scale or in a band that
// nobody measured: who has never shown it, in a test or in the log, finds it in the first
// session in which that work stands. Three marks from the safe side up, five repetitions of
// a lean, three of a press, or a short hold; RPE 7 ends it, and the last good one is written
// down. Work is planned one lean or one kilogram easier than the mark that is likely found:
// so many repetitions at RPE 7 leave three in hand, and work is several sets. The tries
// stand in place of as many sets, and count as sets do. The later cards of the week, which
// are in use before the log is read, say what each mark makes of them, at the same share of
// the maximum; the weeks after it are planned from the log.
//
// Who trains gently (under sixteen, a sore joint, just back) stops at RPE 6 and goes on only
// where it was easy; for them, and where strength came down, no mark lies beyond the likely
// one. Nobody finds marks on the way back from pain or from weeks off, in easy weeks, or at
// a gate. Common practice; the numbers are our judgement.

const (
	marksMost, marksLeast = 3, 2
	findRPE, gentleRPE    = 7, 6
	leanTries, pressTries = 5, 3 // repetitions at a mark
	findHold              = 10   // s at a mark, of what is held
)

// sought is what a find looks for: loads of its marks as shares of the likely one's. Cards
// that hang already have no marks here.
type sought struct {
	measure program.Measure
	week    int // of the block, from 0
	marks   []float64
	shares  []float64
}

// findMarks has the first session in which something stands that was never shown find its
// mark, and later ones say what they become by it.
func (lo *layout) findMarks(w *program.Week) {
	changed := false
	for i := range w.Sessions {
		s := &w.Sessions[i]
		for j := 0; j < len(s.Items); j++ {
			if item := &s.Items[j]; !lo.unknown(item) || lo.becomes(item, w.Number-1) {
				continue
			}
			changed = lo.finds(w, s, j) || changed
		}
	}
	if changed {
		w.HalfSeconds, w.Sets, w.SetsLeast = 0, 0, 0
		lo.tally(w)
	}
}

// unknown reports whether an item is at a mark that nobody has found yet.
func (h *holds) unknown(item *program.Prescription) bool {
	measure, _ := item.Measured()
	return measure != program.MeasureNone && !item.ByCoach && !item.Try && !item.Find.Any() && !h.known.have(measure, item.Step)
}

// becomes reports whether a mark is sought before an item, and has it say what each makes
// of it; not of a later week, before which the log is read.
func (lo *layout) becomes(item *program.Prescription, week int) bool {
	measure, _ := item.Measured()
	at := slices.IndexFunc(lo.sought, func(s sought) bool { return s.measure == measure })
	if at < 0 {
		return false
	}
	if lo.sought[at].week != week {
		return true
	}
	g, ok := lo.gridOf(item)
	if !ok {
		return true
	}
	for i, mark := range lo.sought[at].marks {
		load := g.aids[g.work].Load * lo.sought[at].shares[i]
		item.Found = append(item.Found, program.Found{Mark: mark, At: markOf(g.aids[g.nearest(load, lo.limits.gentleIn(week))])})
	}
	return true
}

// finds has an item of a session find its mark, with the farthest marks that are allowed.
func (lo *layout) finds(w *program.Week, s *program.Session, at int) bool {
	week, item := w.Number-1, s.Items[at]
	g, ok := lo.gridOf(&item)
	if !ok || !lo.mayFind(w, &item) {
		return false
	}
	least := lo.marksElsewhere(s, week)
	for _, top := range lo.tops(&g, week) {
		find := lo.tried(item, week)
		if !lo.mayTry(&g, top.last, &find, week, least) {
			continue
		}
		look := lo.mark(&find, &g, top, week)
		if more := counted(find) - find.Sets*counted(item)/item.Sets; len(look.marks) < marksLeast || more > 0 && w.HalfSeconds+more > lo.most {
			continue
		}
		if !lo.inPlace(s, at, find) {
			continue
		}
		lo.sought = append(lo.sought, look)
		return true
	}
	return false
}

// mayFind reports whether an item may be one by which a mark is found.
func (lo *layout) mayFind(w *program.Week, item *program.Prescription) bool {
	week := w.Number - 1
	back, _ := lo.returning(week)
	role := item.Role == program.RoleMain || item.Role == program.RoleSecond
	return role && w.Kind == program.WeekBuild && !w.Gate && !back && !lo.comingBack(week) && !item.EachSide && item.Sets >= marksLeast
}

// top is the last mark to try, the one that is likely found, and how far apart marks lie.
type top struct{ last, likely, apart int }

// tops are those that come into question, the farthest first: a mark beyond the likely one,
// which is too far for who trains gently or has come down; the likely one; the work as it
// is planned. Where there is nothing easier so far apart, marks lie half as far.
func (lo *layout) tops(g *grid, week int) []top {
	likely := g.even(g.work + g.apart/2)
	all := []top{{likely + g.apart, likely, g.apart}, {likely, likely, g.apart}, {g.work, g.work, g.apart}}
	if closer := g.apart / 2; closer > 0 {
		all = append(all, top{likely, likely, closer}, top{g.work, g.work, closer})
	}
	if lo.limits.gentleIn(week) || len(lo.bounds.wall) > 0 {
		return all[1:]
	}
	return all
}

// mark gives a find its marks: three up to the last, or as many of these as there are sets
// in whose place they stand.
func (lo *layout) mark(find *program.Prescription, g *grid, to top, week int) sought {
	measure, _ := find.Measured()
	look := sought{measure: measure, week: week}
	first := to.last - (marksMost-1)*to.apart
	for first < g.first {
		first += to.apart
	}
	if find.Find.RPE = findRPE; lo.limits.gentleIn(week) {
		find.Find.RPE, find.Find.Easy = gentleRPE, true
	}
	for p := first; p <= to.last && len(look.marks) < find.Sets; p += to.apart {
		o := g.aids[p]
		find.Find.Marks = append(find.Find.Marks, program.Mark{At: markOf(o), Load: lo.look.shareHeld(lo.look.maxHold(o, week))})
		look.marks, look.shares = append(look.marks, markOf(o)), append(look.shares, o.Load/g.aids[to.likely].Load)
	}
	find.Sets = len(look.marks)
	return look
}

// tried is what is done at each mark in place of an item: repetitions where there are some.
func (lo *layout) tried(item program.Prescription, week int) program.Prescription {
	repeats := lo.body.Repeats() && item.Step != ""
	if measure, _ := item.Measured(); measure == program.MeasureLean {
		if in := lo.repeatedLean(week); in != "" {
			item.Exercise, repeats = in, true
		}
	}
	item.Find.For = item.Hold
	if !repeats {
		item.Hold = min(item.Hold, findHold)
		return item
	}
	most := pressTries
	if item.Step == "" {
		most = leanTries
	}
	item.Hold = max(program.SecondsPerRep, min(item.Hold, most*program.SecondsPerRep))
	countReps(&item)
	return item
}

// mayTry reports whether a mark is within what health and other plans allow, and likely to
// be done.
func (lo *layout) mayTry(g *grid, at int, try *program.Prescription, week, least int) bool {
	if at >= len(g.aids) {
		return false
	}
	o := g.aids[at]
	max := lo.look.maxHold(o, week)
	return max >= least && !(lo.limits.elbowSore && lo.look.shareHeld(max) > elbowLoad) &&
		lo.likelyHold(o, week) >= 10*try.Hold && o.HangsIn(lo.weeks[week].start)
}

// marksElsewhere is how long, in tenths of a second, the heaviest mark must be predicted to
// last, so that other plans of the same news ask as much of the day.
func (lo *layout) marksElsewhere(s *program.Session, week int) int {
	least := 0
	for _, other := range lo.bounds.days {
		if there := sessionOn(other, s.Date); there != nil {
			least = max(least, lo.hardest(lo.armWorkOf(there.Items, week).items, week))
		}
	}
	return least
}

// hardest is how long the heaviest of some items lasts, marks included, in tenths.
func (h *holds) hardest(items []program.Prescription, week int) int {
	least := math.MaxInt32
	for i := range items {
		least = min(least, h.lasts(&items[i], week))
		for _, m := range items[i].Find.Marks {
			at := items[i].Moved(m.At)
			least = min(least, h.lasts(&at, week))
		}
	}
	return least
}

// inPlace puts a find in an item's place, and after it what of its sets is left; not where
// the session would get longer by it.
func (lo *layout) inPlace(s *program.Session, at int, find program.Prescription) bool {
	rest := s.Items[at]
	if inRests := slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.InRests }); !inRests {
		find.Rest = min(find.Rest, secondRest)
	}
	for rest.Sets -= find.Sets; ; rest.Sets-- {
		items := slices.Clone(s.Items)
		if items[at] = find; rest.Sets > 0 {
			items = slices.Insert(items, at+1, rest)
		}
		minutes := lo.minutesFor(s.Date, items)
		if minutes <= s.Minutes {
			s.Items, s.Minutes = items, minutes
			return true
		}
		if rest.Sets <= 0 {
			return false
		}
	}
}

// findsFirst reports whether a week's main work is to find the mark of an aid: nothing heavy
// is done at it before.
func (h *holds) findsFirst(o ladder.Aid, main work) bool {
	measure, _ := measured(o)
	mains, _ := measured(main.aid)
	return measure == mains && h.unfound(main.aid, main.step())
}

// unfound reports whether a step is at a mark with an aid that no card before this week
// finds: no check hold shows anything there.
func (h *holds) unfound(o ladder.Aid, step string) bool {
	measure, _ := measured(o)
	found := slices.ContainsFunc(h.sought, func(s sought) bool { return s.measure == measure })
	return measure != program.MeasureNone && !found && !h.known.have(measure, step)
}

// asPlanned is an item without its find: the work that it stands for.
func (c *client) asPlanned(item program.Prescription) program.Prescription {
	if !item.Find.Any() {
		return item
	}
	item.Hold, item.Find = item.Find.For, program.Find{}
	if item.Step == "" {
		item.Exercise, item.Reps = c.heldAs(item.Exercise), 0
	} else if item.Reps > 0 {
		countReps(&item)
	}
	return item
}

// triesCounted is what a find weighs in the week's seconds, in half seconds: as the sets in
// whose place it stands, or more where its tries do.
func triesCounted(item *program.Prescription) int {
	sum := 0
	for _, m := range item.Find.Marks {
		sum += work{hold: item.Hold, share: m.Load}.halfSeconds()
	}
	return max(sum, item.Sets*work{hold: item.Find.For, share: item.Load}.halfSeconds())
}
