package planner

import "slices"

// # Paper that stays
//
// The estimate moves with every week that is read, and what is best moves with it: a
// second more, a set less, a lean two centimetres further. None of that is worth a new
// card. The coming week's straight-arm work stays as it hangs on the wall while it is
// the same work, its seconds lie within the effort that trains, and its sets within
// what the week may hold. Our judgement, as for the rig that stays (see at).

// stays keeps what hangs for a week, where it still serves.
func (p *plan) stays(i int, l *load, allowed int) {
	back, _ := p.returning(i)
	hung := weekAt(p.onWall, p.weeks[i].start)
	if hung == nil || i > p.past.over() || hung.Kind != p.weeks[i].kind || hung.Effort != p.limits.effortIn(i) || back || p.comingBack(i) || l.main.none() {
		return
	}
	was := p.loadOf(hung)
	if !slices.Equal(recalled(hung).straight, p.weeks[i].straight) || was.main.none() || hung.Gate != l.main.gate {
		return
	}
	kept := *l
	kept.sets = slices.Clone(was.sets)
	for _, w := range []struct{ now, was *work }{{&kept.main, &was.main}, {&kept.second, &was.second}, {&kept.ahead, &was.ahead}, {&kept.leans, &was.leans}} {
		if !w.now.none() && !w.was.none() && !p.serves(w.now, w.was, i) {
			return
		}
	}
	if kept.halfSeconds() <= allowed {
		*l = kept
	}
}

// serves puts the printed seconds, and the printed lean, in place of the new ones; not
// where it is other work, or no longer within the effort of the week.
func (p *plan) serves(now, was *work, week int) bool {
	if now.exercise() != was.exercise() || (now.hold < mainLeast) != (was.hold < mainLeast) || now.scale != was.scale || !sameRig(now.option.rig, was.option.rig) {
		return false
	}
	w := *now
	w.ahead, w.option, w.hold = was.ahead, was.option, was.hold
	w.max = p.look.maxHold(w.option, week)
	w.share = p.look.shareHeld(w.max)
	if p.slack(w, week) > 0 || p.limits.elbowSore && w.share > elbowLoad || w.hold > held(p.limits.mostEffortIn(week), w.max) {
		return false
	}
	*now = w
	return true
}
