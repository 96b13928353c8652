package planner

import "gatepost/program/ladder"

import "slices"

// # Paper that stays
//
// The estimate moves with every week that is read, and what is best moves with it: a
// second more, a set less, a lean two centimetres further. None of that is worth a new
// card. The coming week's straight-arm work stays as it hangs on the wall while it is
// the same work, its seconds lie within the effort that trains, and its sets within
// what the week may hold. Our judgement, as for the rig that stays (see at).

// stays keeps what hangs for a week, where it still serves.
func (ds *doses) stays(i int, l *load, allowed int) {
	back, _ := ds.returning(i)
	hung := weekAt(ds.onWall, ds.weeks[i].start)
	if hung == nil || i > ds.past.over() || hung.Kind != ds.weeks[i].kind || hung.Effort != ds.limits.effortIn(i) || back || ds.comingBack(i) || l.main.none() || ds.justFound(&l.main) {
		return
	}
	was := ds.loadOf(hung)
	if !slices.Equal(recalled(hung).straight, ds.weeks[i].straight) || was.main.none() || hung.Gate != l.main.gate {
		return
	}
	kept := *l
	kept.sets = slices.Clone(was.sets)
	for _, w := range []struct{ now, was *work }{{&kept.main, &was.main}, {&kept.second, &was.second}, {&kept.heavy, &was.heavy}, {&kept.leans, &was.leans}} {
		if !w.now.none() && !w.was.none() && !ds.serves(w.now, w.was, i) {
			return
		}
	}
	if kept.halfSeconds() <= allowed {
		*l = kept
	}
}

// serves puts the printed seconds, and the printed lean, in place of the new ones; not
// where it is other work, or no longer within the effort of the week; lighter work may be
// below it, as what would be printed new is.
func (h *holds) serves(now, was *work, week int) bool {
	if now.exercise() != was.exercise() || now.step() != was.step() || now.trainable() != was.trainable() || now.aid.Scale != was.aid.Scale || !ladder.SameRig(now.aid.Rig, was.aid.Rig) {
		return false
	}
	w := *now
	w.aid, w.hold = was.aid, was.hold
	w.max = h.look.maxHold(w.aid, week)
	w.share = h.look.shareHeld(w.max)
	if h.slack(w, week) > 0 && h.slack(*now, week) == 0 || h.limits.elbowSore && w.share > elbowLoad || w.hold > held(h.limits.mostEffortIn(week), w.max) {
		return false
	}
	*now = w
	return true
}
