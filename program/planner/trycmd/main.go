package main

import (
	"crypto/rand"
	"fmt"
	"os"
	"time"

	"gatepost/program/intake"
	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

func main() {
	s, ps := intake.Read(os.DirFS("."), os.DirFS("."), rand.Reader)
	intake.Report(os.Stderr, ps)
	for i := range s.Clients {
		t := time.Now()
		p, ps := planner.Plan(&s.Library, &s.Clients[i])
		d := time.Since(t)
		intake.Report(os.Stderr, ps)
		fmt.Println(p.Client.Name, d, p.Withheld)
		c := p.Capacity
		fmt.Printf("C12 %.1f (%.1f–%.1f) k %.2f goal %+v\n", c.Held12, c.Low, c.High, c.Endurance, p.Goal)
		for j, st := range p.Steps {
			f := p.Forecasts[j]
			fmt.Printf("  %-18s %.1f %.3f free %.1f  %v %v %v %.2f\n", st.ID, st.Torque, st.Share, st.FreeHold, f.Early, f.Likely, f.Late, f.Chance)
		}
		for _, w := range p.Weeks {
			fmt.Printf("%2d %v %-6s %-16s %v+%.0f help %.1f kg ahead %.0f M %.1f H %d sets %d V %.1f notes %v\n", w.Number, w.Start, w.Kind, w.Step+w.Exercise, w.Rig.Bands, w.Rig.Drop*100, w.Help/9.80665, w.Ahead*100, w.MaxHold, w.Hold, w.Sets, float64(w.HalfSeconds)/2, w.Notes)
			if os.Getenv("S") != "" {
				for _, s := range w.Sessions {
					fmt.Println("    ", s.Date.Weekday(), s.Minutes, "dropped", s.Dropped)
					for _, it := range s.Items {
						fmt.Printf("        %-9s %-28s %d×%ds/%dr rest %d %v %.1f M%.1f f%.2f rests=%v max=%v chk=%v\n", it.Role, it.Exercise, it.Sets, it.Hold, it.Reps, it.Rest, it.Rig.Bands, it.Help, it.MaxHold, it.Load, it.InRests, it.Max, it.Check)
					}
				}
			}
		}
		fmt.Println("outline", p.Outline, "cues", p.Cues, "notes", p.Notes, "gates", p.Gates)
		if os.Getenv("V") != "" {
			v, ps := view.New(s.Coach, &s.Library, &p)
			intake.Report(os.Stderr, ps)
			view.Text(os.Stdout, v)
		}
	}
}
