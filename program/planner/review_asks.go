package planner

import "gatepost/program"

// asks are the words that a gate still lacks: on a day of its week that showed everything else,
// whether the form held, or how hard the last set was. Until they are written, or the
// coach signs the gate, nobody moves on.
func (r *reading) asks(gates []program.GateRead) []program.Note {
	var out []program.Note
	for _, g := range gates {
		if g.State == program.GatePassed {
			continue
		}
		for _, w := range r.weeks {
			for _, d := range w.days {
				if try := tryGate(d, g.StepGate); w.Gate && try != nil && !try.counts() && !try.missed() {
					out = append(out, note(askGate, step("step", g.Step), date("on", d.date), word("what", try.unsaid())))
				}
			}
		}
	}
	return out
}

// unsaid is the key of what a day's log does not say of a gate.
func (t *gateTry) unsaid() string {
	lacks := map[string]bool{}
	for _, c := range t.criteria {
		lacks[c.Name] = !c.Met && c.Unsaid
	}
	switch {
	case lacks["clean"] && lacks["rpe"]:
		return "lacks.both"
	case lacks["clean"]:
		return "lacks.clean"
	}
	return "lacks.rpe"
}
