package planner

import (
	"slices"
	"testing"

	"gatepost/program"
)

// For each invariant a program bent to break it is refused by its own checker:
// a checker that finds nothing in these would find nothing anywhere.
func TestDoctoredProgramsAreRefused(t *testing.T) {
	lib := library(t)
	for _, d := range []struct {
		checker string
		client  func(*program.Assessment)
		bend    func(*program.Program)
	}{
		{"1 holds", nil, func(p *program.Program) { eachItem(p, program.RoleMain, func(i *program.Prescription) { i.Hold = 20 }) }},
		{"1 holds", nil, func(p *program.Program) {
			eachItem(p, program.RoleMain, func(i *program.Prescription) { i.MaxHold = 11 })
		}},
		{"2 help", nil, func(p *program.Program) { p.Weeks[1].Help += 20; p.Weeks[1].Exercise = p.Weeks[0].Exercise }},
		{"3 deloads", nil, func(p *program.Program) { p.Weeks[3].Kind = program.WeekBuild; p.Weeks[4].Kind = program.WeekBuild }},
		{"3 deloads", nil, func(p *program.Program) {
			eachItem(p, program.RoleMain, func(i *program.Prescription) { i.Sets = 5 })
		}},
		{"4 volume", nil, func(p *program.Program) { eachItem(p, program.RoleSecond, func(i *program.Prescription) { i.Sets++ }) }},
		{"4 volume", nil, func(p *program.Program) { p.Weeks[2].HalfSeconds *= 2 }},
		{"5 taper", nil, func(p *program.Program) { p.Weeks[11].Kind = program.WeekBuild }},
		{"5 taper", nil, func(p *program.Program) {
			last := &p.Weeks[11].Sessions[len(p.Weeks[11].Sessions)-1]
			near := *last
			near.Date--
			near.Items = p.Weeks[10].Sessions[0].Items
			p.Weeks[11].Sessions = append([]program.Session{near}, p.Weeks[11].Sessions...)
		}},
		{"6 days", nil, func(p *program.Program) { p.Weeks[0].Sessions[0].Date++ }},
		{"6 days", nil, func(p *program.Program) { p.Weeks[0].Sessions[0].Minutes = 61 }},
		{"6 days", nil, func(p *program.Program) { p.Weeks[0].Sessions[0].Minutes = 5 }},
		{"7 health", func(a *program.Assessment) { a.Health.Elbows = program.JointSore }, func(p *program.Program) {
			eachItem(p, program.RoleMain, func(i *program.Prescription) { i.Load = 0.8 })
		}},
		{"7 health", func(a *program.Assessment) { a.Health.Wrists = program.JointSore }, func(p *program.Program) {
			eachItem(p, program.RoleMobility, func(i *program.Prescription) { i.Exercise = "wall-handstand-line" })
		}},
		{"8 pulls", nil, func(p *program.Program) { eachItem(p, program.RolePull, func(i *program.Prescription) { i.Sets = 1 }) }},
		{"9 kit", nil, func(p *program.Program) {
			eachItem(p, program.RolePull, func(i *program.Prescription) { i.Exercise = "ring-row" })
		}},
		{"9 kit", nil, func(p *program.Program) {
			eachItem(p, program.RoleMain, func(i *program.Prescription) { i.Rig = program.Rig{Bands: []string{"borrowed"}} })
		}},
		{"gates", nil, func(p *program.Program) { p.Weeks[0].Gate = true }},
		{"dates", nil, func(p *program.Program) { p.Forecasts[len(p.Forecasts)-1].Early = p.Start }},
		{"entry", nil, func(p *program.Program) { p.Notes = append(p.Notes, note(noteEntryHold)) }},
		{"signs of life", nil, func(p *program.Program) { p.Weeks[0].Sessions = nil }},
		{"signs of life", nil, func(p *program.Program) { p.Weeks[0].Sessions[0].Items = p.Weeks[0].Sessions[0].Items[:2] }},
	} {
		t.Run(d.checker, func(t *testing.T) {
			a := maren(t)
			a.Training.Away = nil
			if d.client != nil {
				d.client(&a)
			}
			p, _ := Plan(lib, &a)
			check := checkerNamed(t, d.checker)
			if faults := check(lib, &a, &p); len(faults) > 0 {
				t.Fatal("the honest program is refused:", faults)
			}
			p = deep(p)
			d.bend(&p)
			if len(check(lib, &a, &p)) == 0 {
				t.Error("the bent program passes")
			}
		})
	}
}

func checkerNamed(t *testing.T, name string) func(*program.Library, *program.Assessment, *program.Program) verdict {
	for _, c := range checkers {
		if c.name == name {
			return c.check
		}
	}
	t.Fatal("no checker ", name)
	return nil
}

func eachItem(p *program.Program, role program.Role, bend func(*program.Prescription)) {
	for w := range p.Weeks {
		for s := range p.Weeks[w].Sessions {
			for i := range p.Weeks[w].Sessions[s].Items {
				if item := &p.Weeks[w].Sessions[s].Items[i]; item.Role == role {
					bend(item)
				}
			}
		}
	}
}

// deep copies a program, so that bending one leaves no other bent.
func deep(p program.Program) program.Program {
	p.Weeks = slices.Clone(p.Weeks)
	for w := range p.Weeks {
		p.Weeks[w].Sessions = slices.Clone(p.Weeks[w].Sessions)
		for s := range p.Weeks[w].Sessions {
			items := &p.Weeks[w].Sessions[s].Items
			*items = slices.Clone(*items)
		}
	}
	return p
}
