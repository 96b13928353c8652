package planner

import (
	"gatepost/program"
)

// # What would mend it
//
// Where every rig makes the main work too easy, or none makes ten seconds of it, a coach
// can hang the band lower or buy one: the note says which strap, or how much help, in
// numbers.

// longestStrap is as far as a strap is tried, and strapTried in which steps, in m
// (common practice: what hangs between a bar and a loop).
const longestStrap, strapTried = 0.80, 0.05

// mends says for the first week that needs it what would mend the main work. Sore
// elbows are to have it easy, and a step that waits for its gate is not mended by help.
func (ds *doses) mends() []program.Note {
	for i := ds.past.over(); i < len(ds.weeks); i++ {
		w := ds.main[i]
		if ds.weeks[i].kind != program.WeekBuild || w.rung == nil || w.floor != nil || w.gate || ds.limits.elbowSore {
			continue
		}
		if w.trainable() && ds.slack(w, i) == 0 {
			continue
		}
		if n := ds.mend(w, i); n.Code != "" {
			return []program.Note{n}
		}
	}
	return nil
}

// mend is the note for one week's work: the strap above one of the bands that makes
// ten seconds with the least help, else the help of a band that would. Free work that
// has become too easy waits for its gate.
func (h *holds) mend(w work, week int) program.Note {
	var best work
	for i := range h.body.Bands {
		for n := 0; float64(n)*strapTried <= longestStrap+1e-9; n++ {
			o := h.body.WithRig(w.rung, float64(n)*strapTried, i)
			if o.Help > 0 && o.Load > 0 && !o.Hold.Unbalanced {
				best = h.milder(best, h.at(w.rung, o, week), week)
			}
		}
	}
	values := []program.Value{step("step", w.step()), seconds("hold", float64(w.hold))}
	if !best.none() {
		return note(noteMendStrap, append(values, metres("strap", best.aid.Rig.Drop), text("band", best.aid.Rig.Bands[0]),
			newtons("help", float64(best.aid.Help)/10), seconds("better", float64(best.hold)))...)
	}
	for help := 1; help <= int(bandShare*h.body.Weight); help++ {
		o := w.rung.HelpedBy(help)
		if best = h.milder(best, h.at(w.rung, o, week), week); !best.none() {
			return note(noteMendBand, append(values, newtons("help", float64(help)), seconds("better", float64(best.hold)))...)
		}
	}
	return program.Note{}
}

// milder is the work with less help, of those that make ten seconds that train.
func (h *holds) milder(best, w work, week int) work {
	if w.trainable() && h.slack(w, week) == 0 && (best.none() || w.aid.Help < best.aid.Help) {
		return w
	}
	return best
}
