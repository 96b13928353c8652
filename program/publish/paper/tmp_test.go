package paper

import (
	"os"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

func TestLook(t *testing.T) {
	show := func(name string, p *program.Program, c program.Coach) {
		v, _ := view.New(c, viewtest.Library(), p)
		b, _ := WallChart(v)
		if b != nil {
			os.WriteFile("/tmp/look/"+name+"-chart.pdf", b, 0o644)
		}
		b, _ = OnePage(v)
		os.WriteFile("/tmp/look/"+name+"-page.pdf", b, 0o644)
	}
	c := viewtest.Coach()
	show("fixture", viewtest.Program(), c)
	p := viewtest.Program()
	for i := 0; len(p.Weeks) < 16; i++ {
		w := p.Weeks[i]
		w.Number, w.Start = len(p.Weeks)+1, p.Weeks[len(p.Weeks)-1].Start+7
		p.Weeks = append(p.Weeks, w)
	}
	p.Client.Name = "Nguyễn Thị Bích-Ngọc Łuczyńska"
	show("sixteen", p, c)
	p = viewtest.Program()
	for i := range p.Weeks {
		w := &p.Weeks[i]
		w.Step, w.Exercise, w.Rig, w.Help, w.Ahead = "", "planche-lean", program.Rig{}, 0, 0.1+0.02*float64(i)
		w.Sessions = w.Sessions[:2]
		w.Hold = 15
	}
	p.Place, p.Capacity.Untested, p.Gates = "", true, nil
	p.Client.Name = "Joss"
	c.Paper = program.PaperLetter
	show("lean", p, c)
	p = viewtest.Program()
	for i := range p.Weeks {
		w := &p.Weeks[i]
		w.Rig, w.Help = program.Rig{}, 0
	}
	p.Weeks = p.Weeks[:6]
	c.Paper = ""
	show("free", p, c)
	p = viewtest.Program()
	p.Weeks, p.Withheld = nil, []program.Note{{Code: viewtest.FixtureNote, Values: []program.Value{{Name: "exercise", Text: "wrist"}, {Name: "minutes", Text: "5"}}}}
	show("withheld", p, c)
}
