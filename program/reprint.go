package program

import "slices"

// Coming is the first week planned anew that has a session: the one whose cards are
// used next. It is nil where there is none.
func (p *Program) Coming() *Week { return coming(p.Weeks, p.From) }

func coming(weeks []Week, from Date) *Week {
	for i := range weeks {
		if w := &weeks[i]; w.Start >= from && len(w.Sessions) > 0 {
			return w
		}
	}
	return nil
}

// ToPrint are the cards still to come of the week that has begun, where changes name
// them, and those of the coming week that are not yet on paper as the program has
// them: those that changes name, and those that an earlier version changed while
// the week was still a later one, whose cards wait. Plans are the kept ones, by
// version; those after the last one that hung before this program do not count.
func (p *Program) ToPrint(changes []Change, plans []PlanVersion, last int) []Date {
	var cards []Date
	for _, c := range changes {
		if c.Start < p.From {
			cards = append(cards, c.Cards...)
		}
	}
	week := p.Coming()
	if week == nil {
		return cards
	}
	paper := onPaper(week.Start, plans, last)
	for i := range week.Sessions {
		s := &week.Sessions[i]
		changed := slices.ContainsFunc(changes, func(c Change) bool { return slices.Contains(c.Cards, s.Date) })
		if changed || paper != nil && !paper.has(week, s) {
			cards = append(cards, s.Date)
		}
	}
	return cards
}

// onPaper is the version whose cards of a week are on paper: the last one for which
// it was the coming week, else the first, which is printed whole.
func onPaper(week Date, plans []PlanVersion, last int) *PlanVersion {
	var paper *PlanVersion
	for i := range plans {
		v := &plans[i]
		next := coming(v.Weeks, v.On)
		if v.Version <= last && (paper == nil || next != nil && next.Start == week) {
			paper = v
		}
	}
	return paper
}

// has says that a version has a session of a week on the same day with the same card.
func (v *PlanVersion) has(week *Week, s *Session) bool {
	return slices.ContainsFunc(v.Weeks, func(w Week) bool {
		same := w.Gate == week.Gate || !s.HoldsMain()
		return same && slices.ContainsFunc(w.Sessions, func(old Session) bool { return old.Date == s.Date && old.SameCard(s) })
	})
}

// SameCard says that two sessions print the same items and words: a prediction that moved is
// on no card.
func (s *Session) SameCard(t *Session) bool {
	return slices.Equal(s.Say, t.Say) && slices.EqualFunc(s.Items, t.Items, func(x, y Prescription) bool {
		return x.Exercise == y.Exercise && x.Role == y.Role && x.Step == y.Step &&
			slices.Equal(x.Rig.Bands, y.Rig.Bands) && x.Rig.Drop == y.Rig.Drop && x.Rig.Pad == y.Rig.Pad &&
			x.Rig.Block == y.Rig.Block && x.Rig.Pull == y.Rig.Pull && x.Find.asks(&y.Find) && slices.Equal(x.Found, y.Found) &&
			x.Ahead == y.Ahead && x.Scale == y.Scale && x.Sets == y.Sets && x.Hold == y.Hold &&
			x.Reps == y.Reps && x.Rest == y.Rest && x.InRests == y.InRests && x.Max == y.Max && x.Check == y.Check && x.Try == y.Try
	})
}

// HoldsMain says that a session does a step as its main work: the days that show a
// gate in its week.
func (s *Session) HoldsMain() bool {
	return slices.ContainsFunc(s.Items, func(p Prescription) bool { return p.Role == RoleMain && p.Step != "" })
}
