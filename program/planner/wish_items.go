package planner

import (
	"slices"

	"gatepost/program"
)

// withAdded puts what the coach adds on a day behind its main work and its tests, before
// all that may be dropped; what is planned of the same exercise goes.
func (lo *layout) withAdded(d day, groups []group) []group {
	var added []group
	for _, i := range lo.wishesOf(program.WishAdd) {
		w := &lo.hand.wishes[i]
		if item, why := lo.added(w, lo.dayAt(d.date), d.kind); w.Has(d.date) && len(why) == 0 {
			added = append(added, group{"role." + string(item.Role), []program.Prescription{item}})
			groups = without(groups, item.Exercise)
		}
	}
	if len(added) == 0 {
		return groups
	}
	at := 0
	for at < len(groups) && (groups[at].key == "role.main" || groups[at].key == "role.test") {
		at++
	}
	return slices.Insert(groups, at, added...)
}

// without are groups without what they plan of an exercise, its main work and tests aside.
func without(groups []group, exercise string) []group {
	var out []group
	for _, g := range groups {
		g.items = slices.DeleteFunc(slices.Clone(g.items), func(i program.Prescription) bool {
			return i.Exercise == exercise && i.Role != program.RoleMain && i.Role != program.RoleTest
		})
		if len(g.items) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// added is what a coach adds on a day, or why it is not.
func (lo *layout) added(w *program.Wish, d dayOf, kind program.WeekKind) (program.Prescription, []program.Note) {
	e, ok := lo.lib.Exercise(w.Exercise)
	switch {
	case !ok:
		return program.Prescription{}, []program.Note{note(noteWishGone)}
	case lo.isMain(e.ID):
		return program.Prescription{}, []program.Note{note(noteWishMain)}
	}
	defer lo.stayAt(d.date)()
	if why := append(lo.cannot(e), lo.harms(e, nil, d)...); len(why) > 0 {
		return program.Prescription{}, why
	}
	item := lo.byDose(e, e.Role)
	item.Sets = max(1, item.Sets)
	if w.Sets > 0 {
		item.Sets = w.Sets
	}
	if w.Hold > 0 {
		item.Hold = w.Hold
	}
	if w.Reps > 0 {
		item.Reps = w.Reps
	}
	if kind == program.WeekDeload || kind == program.WeekTest {
		item.Sets = half(item.Sets)
	}
	if e.Trains[0] == program.ForLean && item.Hold > 0 {
		lean := lo.lean(max(0, d.week), byLighter, secondLoad, min(item.Hold, secondMost), secondMost)
		if lean.none() || len(lo.leans) == 0 {
			return program.Prescription{}, []program.Note{note(noteWishNoLean)}
		}
		item.Ahead = lean.aid.Ahead
	}
	return item, nil
}

// byDose is an exercise by its own dose, of the coach's hand. What is main work elsewhere
// is strength work here.
func (c *client) byDose(e *program.Exercise, role program.Role) program.Prescription {
	switch role {
	case program.RoleMain, program.RoleSecond, program.RoleAhead, program.RoleTest, program.RolePrepare:
		role = program.RoleStrength
	case program.RolePull, program.RolePush:
		if role != c.road.RoleAgainst() {
			role = program.RoleStrength
		}
	}
	return program.Prescription{Exercise: e.ID, Role: role, Sets: e.Dose.Sets, Hold: e.Dose.Hold, Reps: e.Dose.Reps, Rest: e.Dose.Rest,
		StraightArm: e.StraightArm, EachSide: e.EachSide, ByCoach: true}
}

// handed puts what the coach wants on a day in place of what was planned for it, and
// leaves out what the day has by hand already.
func (x *exercises) handed(d day, items []program.Prescription) []program.Prescription {
	if x.hand == nil {
		return items
	}
	for i := range items {
		if x.isPreferred(items[i].Exercise) && items[i].Role != program.RoleMain {
			items[i].ByCoach = true
		}
	}
	added := func(id string) bool {
		return slices.ContainsFunc(x.wishesOf(program.WishAdd), func(i int) bool {
			w := &x.hand.wishes[i]
			return w.Exercise == id && w.Has(d.date) && slices.ContainsFunc(items, func(it program.Prescription) bool { return it.Exercise == id && it.ByCoach })
		})
	}
	items = slices.DeleteFunc(items, func(it program.Prescription) bool {
		return !it.ByCoach && it.Role.Against() && added(it.Exercise)
	})
	for _, i := range x.wishesOf(program.WishInstead) {
		if w := &x.hand.wishes[i]; w.From == d.date {
			items = x.replaced(w, dayOf{date: d.date, week: d.week, straight: d.straight, clear: d.clear, lean: d.load.lean()}, items)
		}
	}
	return items
}

// replaced are a day's items with one exercise in place of another. Tests stay.
func (c *client) replaced(w *program.Wish, d dayOf, items []program.Prescription) []program.Prescription {
	if why := c.insteadAgainst(w, d); len(why) > 0 {
		return items
	}
	e, _ := c.lib.Exercise(w.Use)
	for i := range items {
		was := &items[i]
		if was.Exercise != w.Exercise || was.Role == program.RoleTest {
			continue
		}
		now := c.byDose(e, was.Role)
		if !isCounted(was.Role) {
			now.Role = was.Role
		}
		if now.Sets = was.Sets; e.Trains[0] == program.ForLean {
			now.Ahead = d.lean
		}
		now.InRests = was.InRests && setTime(now)+20 <= mainRest
		items[i] = now
	}
	return items
}

// lean is how far ahead the lighter leans of a week or a day are, m; 0: it has none.
func (l *load) lean() float64 {
	if l == nil {
		return 0
	}
	for _, w := range []*work{&l.leans, &l.second, &l.main} {
		if isLean(*w) {
			return w.aid.Ahead
		}
	}
	return 0
}

// insteadAgainst says what stands against one exercise in place of another.
func (c *client) insteadAgainst(w *program.Wish, d dayOf) []program.Note {
	e, ok := c.lib.Exercise(w.Use)
	switch {
	case !ok:
		return []program.Note{note(noteWishGone)}
	case c.isMain(e.ID):
		return []program.Note{note(noteWishMain)}
	}
	if e.Trains[0] == program.ForLean && d.lean == 0 {
		return []program.Note{note(noteWishNoLean)}
	}
	spared, _ := c.lib.Exercise(w.Exercise)
	defer c.stayAt(d.date)()
	return append(c.cannot(e), c.harms(e, spared, d)...)
}

// handBegun puts what the coach wants in place of something on what is left of the week
// that has begun, whose cards otherwise stay as they hang.
func (lo *layout) handBegun() {
	on, wishes := lo.past.on, lo.wishesOf(program.WishInstead)
	if on == 0 || len(wishes) == 0 {
		return
	}
	for i := range lo.past.weeks {
		w := &lo.past.weeks[i]
		w.Sessions = slices.Clone(w.Sessions)
		for j := range w.Sessions {
			s := &w.Sessions[j]
			for _, at := range wishes {
				if wish := &lo.hand.wishes[at]; s.Date > on && wish.From == s.Date {
					gone := lo.replaceBegun(wish, s, i)
					w.HalfSeconds, lo.past.counted[i] = w.HalfSeconds-gone, max(0, lo.past.counted[i]-gone)
				}
			}
		}
	}
}

// replaceBegun replaces an exercise on a card that hangs, and gives the half seconds that
// are gone by it.
func (lo *layout) replaceBegun(w *program.Wish, s *program.Session, week int) (gone int) {
	before := countedOf(s)
	s.Items = lo.replaced(w, dayOf{date: s.Date, week: week, straight: slices.ContainsFunc(s.Items, isArmItem)}, slices.Clone(s.Items))
	s.Minutes = lo.minutesFor(s.Date, s.Items)
	return before - countedOf(s)
}

func isArmItem(i program.Prescription) bool { return isArm(&i) }

// sayAhead writes the coach's words on the days still to come that they are for: who reads
// the log on a Monday, and plans that week anew, has the Monday before them.
func (sn *season) sayAhead(weeks []program.Week) {
	say(sn.athlete.Wishes, weeks, min(sn.past.on+1, sn.now()))
}

// say writes a coach's words on the days that they are for, from a day on.
func say(wishes program.Wishes, weeks []program.Week, from program.Date) {
	for i := range weeks {
		weeks[i].Sessions = slices.Clone(weeks[i].Sessions)
		for j := range weeks[i].Sessions {
			s := &weeks[i].Sessions[j]
			if s.Date < from {
				continue
			}
			s.Say = nil
			for k := range wishes {
				if w := &wishes[k]; w.Kind == program.WishSay && w.Within(s.Date) {
					s.Say = append(s.Say, w.Text)
				}
			}
		}
	}
}
