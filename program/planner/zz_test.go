package planner

import (
	"fmt"
	"testing"

	"gatepost/program"
)

func dumpWeeks(p *program.Program) {
	for _, w := range p.Weeks {
		fmt.Printf("%2d %-6s %-16s help %5.1f drop %.2f lean %.2f  %d-%d x %2d of %4.1f (%.0f%%) half %3d cap %.1f gate %v notes", w.Number, w.Kind, w.Step, w.Help, w.Rig.Drop, w.Ahead, w.SetsLeast, w.Sets, w.Hold, w.MaxHold, 100*float64(w.Hold)/w.MaxHold, w.HalfSeconds, w.Capacity, w.Gate)
		for _, n := range w.Notes {
			fmt.Print(" ", n.Code)
		}
		fmt.Println()
	}
	for _, n := range p.Notes {
		fmt.Print(n.Code, n.Values, " ")
	}
	fmt.Println()
}

func TestZZ(t *testing.T) {
	p := planOf(t, func(a *program.Assessment) {
		oneThick(a)
		a.Hanging.Drops, a.Hanging.Strap = nil, program.Strap{To: 0.80}
	})
	dumpWeeks(&p)
	p = planOf(t, bare(19))
	dumpWeeks(&p)
	p = planOf(t, func(*program.Assessment) {})
	dumpWeeks(&p)
}
