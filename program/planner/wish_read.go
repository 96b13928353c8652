package planner

import (
	"slices"
	"time"

	"gatepost/program"
)

// wishesRead is what became of each wish in weeks as they are printed.
func (p *plan) wishesRead(weeks []program.Week) []program.WishRead {
	if p.hand == nil {
		return nil
	}
	all := make([]program.WishRead, len(p.hand.wishes))
	for i := range all {
		all[i] = program.WishRead{Wish: p.hand.wishes[i]}
		p.readWish(i, &all[i], weeks)
		if all[i].State != program.WishDone && len(all[i].Why) == 0 {
			all[i].Why = []program.Note{note(noteWishGaveWay)}
		}
	}
	p.pullsNamed(all, weeks)
	return all
}

// pullsNamed names the weeks in which what balances the skill's own work is fewer than
// eight sets of ten of it, or more than fifteen, with each wish that has a hand in it.
func (p *plan) pullsNamed(all []program.WishRead, weeks []program.Week) {
	off := slices.DeleteFunc(slices.Clone(p.ahead(weeks)), func(w program.Week) bool { return pullsEnough(&w) })
	for i := range all {
		r := &all[i]
		n := 0
		for j := range off {
			if p.weighsIn(&r.Wish, &off[j]) {
				n++
			}
		}
		if n > 0 && (r.State == program.WishDone || r.State == program.WishPart) {
			r.Why = append(slices.Clip(r.Why), note(noteWishPulls, count("weeks", n)))
		}
	}
}

// pullsEnough reports whether a week's sets against the skill's own work are eight to fifteen
// tenths of that.
func pullsEnough(w *program.Week) bool {
	work, against := 0, 0
	for _, s := range w.Sessions {
		against += setsAgainst(s.Items)
		for _, item := range s.Items {
			if weighed(item.Role) {
				work += item.Sets
			}
		}
	}
	return work == 0 || 10*against >= 8*work && 10*against <= 15*work
}

// weighsIn reports whether a wish has something to do with what a week balances.
func (p *plan) weighsIn(w *program.Wish, week *program.Week) bool {
	days := func(has func(*program.Session) bool) bool {
		for i := range week.Sessions {
			if has(&week.Sessions[i]) {
				return true
			}
		}
		return false
	}
	switch w.Kind {
	case program.WishAdd:
		return days(func(s *program.Session) bool { return w.Has(s.Date) && byCoach(s, w.Exercise) })
	case program.WishInstead:
		return days(func(s *program.Session) bool { return s.Date == w.From })
	case program.WishAt:
		return days(func(s *program.Session) bool { return w.Within(s.Date) })
	case program.WishSet:
		return week.ByCoach && week.Start == p.monday(w)
	case program.WishAvoid:
		e, ok := p.lib.Exercise(w.Exercise)
		return ok && len(e.Trains) > 0 && slices.Contains(p.road.Against, e.Trains[0])
	}
	return false
}

// readWish says what became of one wish.
func (p *plan) readWish(i int, r *program.WishRead, weeks []program.Week) {
	h := p.hand
	switch {
	case h.over[i].Code != "":
		r.State, r.Why = program.WishOver, []program.Note{h.over[i]}
		return
	case len(h.refused[i]) > 0:
		r.State, r.Why = program.WishRefused, h.refused[i]
		return
	}
	if over := p.outside(&r.Wish, weeks); over != "" {
		r.State, r.Why = program.WishOver, []program.Note{note(over)}
		return
	}
	r.State, r.Why = program.WishDone, h.rules[i]
	switch r.Kind {
	case program.WishPrefer:
		if !slices.ContainsFunc(p.ahead(weeks), func(w program.Week) bool { return holdsExercise(&w, r.Exercise) }) {
			r.State, r.Why = program.WishOver, []program.Note{note(noteWishUnused)}
		}
	case program.WishInstead:
		p.readInstead(r, weeks)
	case program.WishSet:
		p.readSet(i, r, weeks)
	case program.WishAdd:
		p.readAdd(r, weeks)
	case program.WishRule:
		p.readRule(r)
	}
}

// ahead are the weeks that are not over.
func (sn *season) ahead(weeks []program.Week) []program.Week {
	return weeks[min(sn.past.over(), len(weeks)):]
}

// openSessions are the sessions that a wish can still change: those of the weeks ahead, and in a
// week that has begun those after the day of the review.
func (sn *season) openSessions(weeks []program.Week) []*program.Session {
	var all []*program.Session
	for i := range weeks {
		for j := range weeks[i].Sessions {
			if s := &weeks[i].Sessions[j]; i >= sn.past.over() || s.Date > sn.past.on {
				all = append(all, s)
			}
		}
	}
	return all
}

// outside says why a wish lies outside of what is planned; empty where it does not.
func (p *plan) outside(w *program.Wish, weeks []program.Week) string {
	from, to := w.From, w.To
	switch w.Kind {
	case program.WishSet:
		if from = p.monday(w); from < p.now() && slices.ContainsFunc(weeks, func(x program.Week) bool { return x.Start == from && x.ByCoach }) {
			return noteWishPast
		}
		to = from
	case program.WishAvoid, program.WishPrefer, program.WishRule:
		return p.idle(w)
	}
	first, last := p.now(), weeks[len(weeks)-1].Start+6
	if w.Kind == program.WishSay || w.Kind == program.WishInstead {
		first = min(first, max(p.past.on+1, weeks[0].Start))
	}
	switch {
	case w.Kind == program.WishSet && to < first && to+6 > p.past.on && p.past.on != 0:
		return noteWishBegun
	case to != 0 && to < first:
		return noteWishPast
	case from > last:
		return noteWishBeyond
	}
	if w.Kind == program.WishAt || w.Kind == program.WishSay || w.Kind == program.WishAdd || w.Kind == program.WishInstead {
		if !slices.ContainsFunc(p.openSessions(weeks), func(s *program.Session) bool { return w.Has(s.Date) || w.Kind == program.WishAt && w.Within(s.Date) }) {
			return noteWishNoSession
		}
	}
	return ""
}

// idle says that a rule speaks of a day on which nobody trains.
func (c *client) idle(w *program.Wish) string {
	if strengthRule := slices.Contains([]string{ruleMainSets, ruleEffort, ruleCeiling, ruleRise, ruleHeavyAfter}, w.Rule); strengthRule && c.road.Load == program.LoadBalance {
		return noteWishUnused
	}
	if w.Rule == ruleMinutes && !slices.ContainsFunc(w.Days, func(d time.Weekday) bool { return slices.Contains(c.athlete.Training.Days, d) }) {
		return noteWishNoSession
	}
	return ""
}

func holdsExercise(w *program.Week, id string) bool {
	return slices.ContainsFunc(w.Sessions, func(s program.Session) bool { return itemOf(&s, id) != nil })
}

// byCoach reports whether a session has an exercise of the coach's hand.
func byCoach(s *program.Session, id string) bool {
	return slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Exercise == id && i.ByCoach })
}

// itemOf is a session's first item of an exercise; nil where it has none.
func itemOf(s *program.Session, id string) *program.Prescription {
	for i := range s.Items {
		if s.Items[i].Exercise == id {
			return &s.Items[i]
		}
	}
	return nil
}

// readInstead looks for one exercise in place of another.
func (p *plan) readInstead(r *program.WishRead, weeks []program.Week) {
	for _, s := range p.openSessions(weeks) {
		if s.Date != r.From {
			continue
		}
		d := p.dayAt(s.Date)
		was := itemOf(s, r.Exercise)
		switch {
		case byCoach(s, r.Use) && was == nil:
			if e, ok := p.lib.Exercise(r.Use); ok {
				r.Why = p.breaks(e, d)
			}
		case was == nil:
			r.State, r.Why = program.WishOver, []program.Note{note(noteWishNotThere)}
		case was.Role == program.RoleTest:
			r.State, r.Why = program.WishRefused, []program.Note{note(noteWishTest)}
		default:
			if d.week >= 0 {
				d.lean = p.loads[d.week].lean()
			}
			r.State, r.Why = program.WishRefused, p.insteadAgainst(&r.Wish, d)
		}
	}
}

// readSet compares a week with what was set for it.
func (p *plan) readSet(i int, r *program.WishRead, weeks []program.Week) {
	w := weekAt(weeks, p.monday(&r.Wish))
	if w == nil {
		r.State, r.Why = program.WishOver, []program.Note{note(noteWishBeyond)}
		return
	}
	why := p.hand.weekly[i]
	switch {
	case w.Kind == program.WeekAway || len(w.Sessions) == 0:
		r.State, r.Why = program.WishOver, []program.Note{note(noteWishAway)}
	case len(why) > 0:
		r.State, r.Why = program.WishRefused, why
	case !w.ByCoach || w.Hold == 0:
		r.State, r.Why = program.WishRefused, p.easedBy(w.Number-1)
	case r.Hold > 0 && w.Hold != fullSeconds(p, r.Hold) || r.Sets > 0 && w.Sets != r.Sets || w.SetsLeast != w.Sets && r.Sets > 0 ||
		r.Step != "" && w.Step != r.Step || r.Rig != nil && !slices.Equal(r.Rig.Bands, w.Rig.Bands):
		r.State, r.Why = program.WishPart, p.easedBy(w.Number-1)
	}
}

// fullSeconds are seconds as a card has them: of what is repeated those of whole repetitions.
func fullSeconds(p *plan, seconds int) int {
	if p.body.Repeats() {
		return fullReps(seconds)
	}
	return seconds
}

// easedBy says what took something away from a week that was set by hand.
func (p *plan) easedBy(i int) []program.Note {
	back, _ := p.returning(i)
	l := &p.loads[i]
	switch {
	case p.comingBack(i):
		return []program.Note{note(noteWishWayBack)}
	case back:
		return []program.Note{note(noteWishComeback)}
	case !l.main.none() && slices.ContainsFunc(p.past.short, func(x tooLong) bool { return x.exercise == l.main.exercise() }):
		return []program.Note{note(noteWishUnreached)}
	case slices.ContainsFunc(p.gentlerThan, func(o otherPlan) bool { return len(o.weeks) > 0 }):
		return []program.Note{note(noteWishGentler)}
	}
	return []program.Note{note(noteWishNoTime)}
}

// readAdd counts the sessions that have what was added, and says what stands against it
// in the others.
func (p *plan) readAdd(r *program.WishRead, weeks []program.Week) {
	there, missing := 0, 0
	var why, rules []program.Note
	for i := p.past.over(); i < len(weeks); i++ {
		w := &weeks[i]
		for j := range w.Sessions {
			s := &w.Sessions[j]
			if !r.Has(s.Date) {
				continue
			}
			d := p.dayAt(s.Date)
			if byCoach(s, r.Exercise) {
				there++
				if e, ok := p.lib.Exercise(r.Exercise); ok {
					rules = append(rules, p.breaks(e, d)...)
				}
				continue
			}
			missing++
			_, against := p.added(&r.Wish, d, w.Kind)
			if len(against) == 0 && p.stageBack(s.Date) != backNone {
				against = []program.Note{note(noteWishWayBack)}
			}
			if len(against) == 0 {
				against = []program.Note{note(noteWishNoTime)}
			}
			why = append(why, against...)
		}
	}
	switch {
	case there == 0:
		r.State, r.Why = program.WishRefused, distinct(why)
	case missing > 0:
		r.State, r.Why = program.WishPart, distinct(append(why, rules...))
	default:
		r.Why = append(slices.Clone(r.Why), distinct(rules)...)
	}
}

// distinct are notes without those that were said.
func distinct(notes []program.Note) []program.Note {
	var out []program.Note
	for _, n := range notes {
		if !slices.ContainsFunc(out, func(o program.Note) bool { return o.Code == n.Code && slices.Equal(o.Values, n.Values) }) {
			out = append(out, n)
		}
	}
	return out
}

// hanging are the wishes as the weeks on the wall have them, which were kept before:
// what is not to be seen there yet waits for the next plan that is kept.
func (c *client) hanging(p *program.Program) []program.WishRead {
	all := slices.Clone(p.Wishes)
	for i := range all {
		r := &all[i]
		if (r.State == program.WishDone || r.State == program.WishPart) && !c.seenIn(&r.Wish, p) {
			r.State, r.Why = program.WishWaits, []program.Note{note(noteWishKept)}
		}
	}
	return all
}

// seenIn reports whether a wish is to be seen in weeks ahead, as far as it can be.
func (c *client) seenIn(w *program.Wish, p *program.Program) bool {
	for i := range p.Weeks {
		week := &p.Weeks[i]
		if week.Start+6 < p.From {
			continue
		}
		switch w.Kind {
		case program.WishAvoid:
			if holdsExercise(week, w.Exercise) {
				return false
			}
		case program.WishPrefer:
			if holdsExercise(week, w.Exercise) {
				return true
			}
		case program.WishSet:
			if week.Start == c.monday(w) {
				return week.ByCoach
			}
		case program.WishInstead, program.WishAdd:
			id := w.Exercise
			if w.Kind == program.WishInstead {
				id = w.Use
			}
			for j := range week.Sessions {
				s := &week.Sessions[j]
				if w.Has(s.Date) && byCoach(s, id) {
					return true
				}
			}
		case program.WishAt:
			if !c.fitsPlace(w, week) {
				return false
			}
		case program.WishRule:
			for _, s := range week.Sessions {
				if w.Rule == ruleMinutes && slices.Contains(w.Days, s.Date.Weekday()) && s.Minutes > w.Number {
					return false
				}
			}
		}
	}
	return w.Kind == program.WishAvoid || w.Kind == program.WishAt || w.Kind == program.WishRule || w.Kind == program.WishSay
}

// fitsPlace reports whether a week's sessions are as another place asks for: on its days,
// within its minutes, with its kit.
func (c *client) fitsPlace(w *program.Wish, week *program.Week) bool {
	for _, s := range week.Sessions {
		if !w.Within(s.Date) {
			continue
		}
		if len(w.Days) > 0 && !slices.Contains(w.Days, s.Date.Weekday()) || w.Minutes > 0 && s.Minutes > w.Minutes {
			return false
		}
		for i := range s.Items {
			e, ok := c.lib.Exercise(s.Items[i].Exercise)
			if ok && !w.AllKit && slices.ContainsFunc(e.Kit, func(oneOf []string) bool {
				return !slices.ContainsFunc(oneOf, func(k string) bool { return slices.Contains(w.Kit, k) })
			}) {
				return false
			}
		}
	}
	return true
}

// withhold says why there is no program, which stands against all wishes as well.
func withhold(out *program.Program, a *program.Assessment, why ...program.Note) {
	out.Withheld, out.Wishes = why, nil
	for _, w := range a.Wishes {
		out.Wishes = append(out.Wishes, program.WishRead{Wish: w, State: program.WishRefused, Why: why})
	}
}

// unmark takes a coach's marks out of a program for everybody: what the studio asks of all
// its plans is how it trains.
func unmark(p *program.Program) {
	p.Wishes = nil
	for i := range p.Weeks {
		p.Weeks[i].ByCoach = false
		for j := range p.Weeks[i].Sessions {
			for k := range p.Weeks[i].Sessions[j].Items {
				p.Weeks[i].Sessions[j].Items[k].ByCoach = false
			}
		}
	}
}
