package planner

import (
	"slices"

	"gatepost/program"
)

// # The way back from pain
//
// Five of ten or more at a joint, or a morning that says stop, takes everything off the
// cards of the next three days that loads the joint with straight arms or under a push.
// Then work comes back session by session, each after quiet mornings: leans at half of
// the maximum; main work at .65 of the predicted hold with six sets in ten, three times;
// at .72, three times; then the plan. Meanwhile nothing gets harder: no gate, no new
// step, no heavy work. It is laid over the sessions as they were planned, so that it can
// only take away (common practice for tendons; the numbers are our judgement).

// jointSet is a set of joints, by their place in joints.
type jointSet uint8

const everyJoint jointSet = 1<<len(joints) - 1

func (s jointSet) has(i int) bool { return s&(1<<i) != 0 }

// rest is what a bad pain, and weeks off, leave for the sessions ahead. The zero rest is nothing.
type rest struct {
	joints   jointSet
	on       program.Date   // of the review: what was not done by then is missed
	from     program.Date   // the first day whose card can still be changed
	until    program.Date   // the last day without straight-arm work
	sessions int            // straight-arm sessions of the way back that are done and stayed quiet
	begun    []program.Date // straight-arm days still to come of the week that has begun
	light    program.Date   // the last day of a week that has begun after weeks off and hangs as before them
}

// stageBack is how far the way back has come on a day.
type stageBack int

const (
	backNone  stageBack = iota // the plan
	backRest                   // no straight-arm work at the joints
	backLeans                  // leans at half
	backLight                  // main work, shorter and less of it
	backNear                   // main work, shorter
)

// stageBack is the stage of a day; of others than training days that before it. What hangs
// for the first week after weeks off was printed for one who was not away: it is light.
func (sn *season) stageBack(day program.Date) stageBack {
	r := &sn.past.rest
	stage := sn.stageAfterPain(day)
	if (stage == backNone || stage == backNear) && day >= r.from && day <= r.light {
		return backLight
	}
	return stage
}

func (sn *season) stageAfterPain(day program.Date) stageBack {
	r := &sn.past.rest
	if r.until == 0 || day < r.from {
		return backNone
	}
	if day <= r.until {
		return backRest
	}
	n := r.sessions
	for _, d := range sn.armDaysAhead() {
		if d > r.until && d < day {
			n++
		}
	}
	for _, s := range []struct {
		stage    stageBack
		sessions int
	}{{backLeans, leanSessions}, {backLight, lightSessions}, {backNear, nearSessions}} {
		if n < s.sessions {
			return s.stage
		}
		n -= s.sessions
	}
	return backNone
}

// easeBegun lays the way back, and what nobody reached lately, over what is left of the week
// that has begun, whose cards otherwise stay as they hang.
func (lo *layout) easeBegun() {
	for i := range lo.past.weeks {
		w := &lo.past.weeks[i]
		if lo.past.rest.from == 0 || w.Start+6 < lo.past.rest.from {
			continue
		}
		lo.lightBegun(i)
		if eased := lo.easeCards(w, i); eased && w.Kind == program.WeekBuild {
			lo.past.last, lo.past.lastOf = lo.loadOn(w, lo.weeks[i].straight), i+1
			lo.past.sets = total(lo.past.last.sets)
			lo.keepOn(&lo.past.last)
		}
	}
}

// easeCards takes from the cards still to come of a week that has begun, and from what it
// counts; it reports whether there was anything to ease them for.
func (lo *layout) easeCards(w *program.Week, i int) bool {
	eased := lo.past.rest.until != 0
	w.Sessions = slices.Clone(w.Sessions)
	for j := range w.Sessions {
		s := &w.Sessions[j]
		hung, before := *s, countedOf(s)
		s.Items = slices.Clone(s.Items)
		lo.easeBack(s, i)
		lo.cutToReached(s)
		gone := before - countedOf(s)
		w.HalfSeconds -= gone
		if s.Date > lo.past.rest.on {
			lo.past.counted[i] -= gone
		}
		lo.past.counted[i] = max(0, min(lo.past.counted[i], w.HalfSeconds))
		eased = eased || !s.SameCard(&hung)
	}
	if eased {
		lo.inRepetitions(w)
	}
	return eased
}

// cutToReached has a card still to come ask for no longer holds than were reached lately,
// where they broke in three quarters of their time or less: for a second nobody prints anew.
func (lo *layout) cutToReached(s *program.Session) {
	for j := range s.Items {
		item := &s.Items[j]
		if s.Date < lo.past.rest.from || !isArm(item) || item.Find.Any() || item.Step == "" && item.Reps > 0 {
			continue
		}
		for _, x := range lo.past.short {
			if x.asks(lo.workOf(item)) && 4*x.longest <= 3*float64(item.Hold) {
				item.Hold = min(item.Hold, x.most())
			}
		}
	}
}

// lightBegun has what is left of a week that has begun be light, where weeks off lie just
// before it and it hangs as it was planned without them, and says why.
func (lo *layout) lightBegun(i int) {
	w := &lo.past.weeks[i]
	if back := lo.back(i); len(back) > 0 && !hasNote(w.Notes, noteComeback) && w.Kind != program.WeekAway && w.Kind != program.WeekDeload {
		lo.past.rest.light = w.Start + 6
		w.Notes = slices.Concat(w.Notes, back)
	}
}

// loadOn is a printed week's work laid on the days that were to be straight-arm days.
func (sn *season) loadOn(w *program.Week, days []program.Date) load {
	l := sn.loadOf(w)
	sets := make([]daySets, len(days))
	for j, day := range recalled(w).straight {
		if at := slices.Index(days, day); at >= 0 {
			sets[at] = l.sets[j]
		}
	}
	l.sets = sets
	return l
}

// armDaysAhead are the straight-arm days to come, in order.
func (sn *season) armDaysAhead() []program.Date {
	days := slices.Clone(sn.past.rest.begun)
	for _, w := range sn.weeks[min(sn.past.over(), len(sn.weeks)):] {
		days = append(days, w.straight...)
	}
	return days
}

// comingBack reports whether a week has a day on the way back.
func (sn *season) comingBack(week int) bool {
	return sn.past.rest.until != 0 && slices.ContainsFunc(sn.weeks[week].straight, func(d program.Date) bool { return sn.stageBack(d) != backNone })
}

// easeBack lays the way back over a session. It only takes away, but for the leans that
// stand in place of what they lead back to.
func (lo *layout) easeBack(s *program.Session, week int) {
	stage := lo.stageBack(s.Date)
	if stage == backNone {
		return
	}
	items := lo.easedItems(s.Items, stage)
	said := []program.Note{note(noteLightDay, word("role", "role.main"))}
	if lean := lo.leanBack(s, week); stage == backLeans && lean.Sets > 0 {
		items = inOrder(append(items, lean), false)
		for len(items) > 1 && lo.minutesFor(s.Date, items) > lo.minutesOn(s.Date) { // longer than what the leans replace
			last := items[len(items)-1]
			items, said = items[:len(items)-1], append(said, note(noteNoTime, word("role", "role."+string(last.Role))))
		}
	}
	s.Items = nil
	for _, g := range lo.bound(day{date: s.Date, week: week}, []group{{items: items}}) {
		s.Items = append(s.Items, g.items...)
	}
	s.Minutes = lo.minutesFor(s.Date, s.Items)
	switch stage {
	case backRest:
		s.Dropped = lo.restNotes()
	case backLeans:
		s.Dropped = said
	}
	after, arms := lo.stageAfterPain(s.Date), slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return isArm(&i) })
	if arms && after != backNone && after != backRest && !hasNote(s.Dropped, noteJointBack) {
		s.Dropped = slices.Concat([]program.Note{note(noteJointBack)}, s.Dropped)
	}
}

// restNotes say which joints rest, and until when.
func (sn *season) restNotes() []program.Note {
	var out []program.Note
	for i, j := range joints {
		if sn.past.rest.joints.has(i) {
			out = append(out, note(noteJointRests, word("joint", j.key), date("until", sn.past.rest.until)))
		}
	}
	return out
}

// leanBack are the leans of the first session of the way back, in place of the
// straight-arm work that the session had.
func (lo *layout) leanBack(s *program.Session, week int) program.Prescription {
	if !slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return isArm(&i) }) {
		return program.Prescription{}
	}
	return lo.hold(lo.lean(week, byLighter, easyLoad, secondLeast, secondLeast), program.RoleSecond, leanSets, leanRest)
}

// easedItems are what a stage leaves of a session.
func (lo *layout) easedItems(all []program.Prescription, stage stageBack) (left []program.Prescription) {
	for _, item := range all {
		if item, ok := lo.easedItem(item, stage); ok {
			left = append(left, item)
		}
	}
	return left
}

// easedItem is an item as a stage leaves it; not ok where it goes.
func (lo *layout) easedItem(item program.Prescription, stage stageBack) (program.Prescription, bool) {
	item = lo.asPlanned(item) // no mark is found on the way back
	switch {
	case stage == backRest:
		return lo.rested(item)
	case item.Role == program.RoleAhead, item.Try, isEntryCheck(&item) && lo.asksEntry(item.Exercise):
		return item, false
	case stage == backLeans && isArm(&item):
		return item, false
	case stage == backLeans:
		return lo.rested(item)
	case !isArm(&item):
		if stage == backLight && len(lo.open) > 0 && item.Role == program.RoleStrength { // the entry is the work of such a block
			item.Sets = max(1, item.Sets*lightSets/100)
		}
		return item, true
	}
	effort := nearEffort
	if stage == backLight {
		effort = lightEffort
		item.Sets = max(1, item.Sets*lightSets/100)
	}
	hold := held(effort, tenths(item.MaxHold))
	if item.Hold == 0 { // a check or a test: not to its end
		item.Max, item.Check, item.Hold = false, true, min(hold, mainMost)
	}
	item.Hold = min(item.Hold, hold)
	return item, item.Hold >= deloadLeast
}

// rested is an item that spares the joints that rest; not ok where it goes. Of the
// preparation an easier version that loads them with nothing stays.
func (lo *layout) rested(item program.Prescription) (program.Prescription, bool) {
	if !lo.strains(&item) {
		return item, true
	}
	if e, ok := lo.lib.Exercise(item.Exercise); ok && item.Role == program.RolePrepare {
		for _, id := range e.Easier {
			now := item
			now.Exercise = id
			if h, ok := lo.lib.Exercise(id); ok && lo.can(h) && h.Role == e.Role && !lo.strains(&now) {
				now = lo.exercises.dose(day{}, h, item.Role)
				now.Rest = item.Rest
				return now, true
			}
		}
	}
	return item, false
}

// straining is what loads a joint much, beside work with straight arms: the steps of a road
// map, presses among them; pushing and hanging by what the hands carry.
var straining = []program.Purpose{program.ForStep, program.ForPush, program.ForRaise, program.ForBalance, program.ForHandstand, program.ForPullUp, program.ForRow}

// strains reports whether an item loads a joint that rests: with straight arms, by
// pushing or by hanging, on flat hands, or by a curl.
func (sn *season) strains(item *program.Prescription) bool {
	e, ok := sn.lib.Exercise(item.Exercise)
	if !ok {
		return false
	}
	for i, j := range joints {
		if sn.past.rest.joints.has(i) && (hardOnJoint(e, j.name) || j.name == "elbows" && curls(e)) {
			return true
		}
	}
	return false
}

// curls reports whether an exercise bends the elbows against a band or a weight, or hard:
// good for sore ones, and too much for the days on which they rest (our judgement).
func curls(e *program.Exercise) bool {
	return e.Trains[0] == program.ForCurl || e.Trains[0] == program.ForElbows && len(e.Kit) > 0
}

// easeWeek has a week say of its main work what its sessions are left with.
func easeWeek(w *program.Week) {
	hold := 0
	for _, s := range w.Sessions {
		for i := range s.Items {
			if isMain(&s.Items[i]) {
				hold = max(hold, s.Items[i].Hold)
			}
		}
	}
	if w.Hold, w.Gate = hold, false; hold == 0 {
		*w = program.Week{Number: w.Number, Start: w.Start, Kind: w.Kind, Capacity: w.Capacity, Provisional: w.Provisional, Sessions: w.Sessions}
	}
}
