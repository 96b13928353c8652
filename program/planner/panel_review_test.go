package planner_test

import (
	"fmt"

	"gatepost/program"
)

// review writes what a log showed and what became of it.
func (b *printer) review(r *program.Review) {
	b.line("review", r.On.String(), fmt.Sprintf("week %d of %d, plan %d,", r.Week, r.Weeks, r.Version),
		fmt.Sprintf("done %d, missed %d", r.Done, r.Missed), when(r.Ended, "ended"))
	b.line("was", capacity(&r.Before))
	b.line("is", capacity(&r.After), fmt.Sprintf("pace %+.1f %%", 100*r.Pace))
	b.line("chance", share(r.GoalBefore.Chance), "then", share(r.GoalAfter.Chance))
	for _, f := range r.Flags {
		b.line("flag", []string{"look", "act", "stop"}[f.Level], coded(f.Note))
	}
	b.notes("ask", r.Asks)
	b.offsets(r.Offsets)
	b.notes("unread", r.Unread)
	for _, m := range r.Doubted {
		b.line("doubted", set(&m.Set))
	}
	for _, m := range r.Moves {
		b.line("moved", fmt.Sprintf("%+.1f %%", 100*m.Moved), "by", set(&m.Set))
	}
	for i := range r.Gates {
		b.gate(&r.Gates[i])
	}
	for _, c := range r.Changes {
		b.line("change", fmt.Sprintf("week %d:", c.Week))
		b.notes("  ", c.Notes)
		for _, d := range c.Cards {
			b.line("   card", d.String())
		}
		for _, d := range c.Gone {
			b.line("   gone", d.String())
		}
	}
	for _, d := range r.PrintNow {
		b.line("print now", d.String())
	}
	b.notes("because", r.Notes)
	b.notes("withheld", r.Withheld)
	b.line()
}

func (b *printer) gate(g *program.GateRead) {
	b.line("read gate", g.Step, string(g.State), nonzero(int(g.On), "on "+g.On.String()), nonzero(g.Tries, "tries %d"))
	for _, c := range g.Criteria {
		b.line("  ", c.Name, fmt.Sprintf("%.1f of %.1f", c.Shown, c.Wanted), when(c.Met, "met"), when(c.Unsaid, "unsaid"))
	}
}

func set(s *program.SetRead) string {
	b := &printer{}
	b.line(s.Date.String(), s.Exercise, rig(s.Rig), centimetres(s.Ahead), toes(s.Scale), fmt.Sprintf("%.0f s", s.Done.Seconds), nonzero(s.Printed, "of %d s"),
		nonzero(s.Done.RPE, fmt.Sprintf("RPE %.1f", s.Done.RPE)), string(s.Done.Clean))
	return b.String()[:b.Len()-1]
}
