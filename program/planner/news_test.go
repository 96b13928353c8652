package planner

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"gatepost/program"
)

// dayAsks is what a day asks of straight arms, as the body feels it.
type dayAsks struct {
	load  float64            // N·m, of the heaviest hold
	half  int                // counted half seconds
	sets  int                // of holds
	holds map[string]int     // s, by exercise, rig and lean
	help  map[string]float64 // N at a step, the least
}

func (p *plan) askedOn(s *program.Session) dayAsks {
	a := dayAsks{holds: map[string]int{}, help: map[string]float64{}}
	for i := range s.Items {
		item := &s.Items[i]
		if !isArm(item) {
			continue
		}
		w := p.workOf(item)
		a.load = max(a.load, w.option.load)
		if counted(*item) > 0 || item.Role == program.RoleTest {
			a.sets += item.Sets
		}
		a.half += counted(*item)
		key := fmt.Sprint(item.Exercise, rigName(item.Rig), item.Ahead, item.Scale)
		a.holds[key] = max(a.holds[key], item.Hold)
		if h, ok := a.help[item.Exercise]; !ok || item.Help+item.Scale < h {
			a.help[item.Exercise] = item.Help + item.Scale
		}
	}
	return a
}

// harder lists what a plan made after bad news asks more of than the one without it.
func harder(p *plan, without, with *program.Program) (out []string) {
	say := func(f string, args ...any) { out = append(out, fmt.Sprintf(f, args...)) }
	for i := range with.Weeks {
		w := &with.Weeks[i]
		v := weekAt(without.Weeks, w.Start)
		if w.Start < with.From || v == nil || v.Kind != w.Kind {
			continue
		}
		same := true
		for j := range w.Sessions {
			s := sessionOn(v, w.Sessions[j].Date)
			if s == nil {
				say("a session more")
				continue
			}
			x, y := p.askedOn(s), p.askedOn(&w.Sessions[j])
			if y.load > 1.0005*x.load {
				say("load %.1f after %.1f (%s)", y.load, x.load, w.Sessions[j].Date)
			}
			if y.load < 0.98*x.load {
				same = false
				continue
			}
			if y.sets > x.sets {
				say("sets %d after %d", y.sets, x.sets)
			}
			for k, h := range y.holds {
				if was, ok := x.holds[k]; ok && h > was && was > 0 {
					say("hold %d after %d %s", h, was, k)
				}
			}
			for k, h := range y.help {
				if was, ok := x.help[k]; ok && h < was-0.05 {
					say("help %.1f after %.1f %s", h, was, k)
				}
			}
		}
		if same && armSets(w) > armSets(v) {
			say("weeksets %d after %d", armSets(w), armSets(v))
		}
	}
	f, g := without.Forecasts, with.Forecasts
	for i := range g {
		if i < len(f) && f[i].Step == g[i].Step && g[i].Likely != 0 && (f[i].Likely == 0 || g[i].Likely < f[i].Likely) && !g[i].Held {
			say("likely earlier %s after %s", g[i].Likely, f[i].Likely)
		}
	}
	return out
}

var badNews = []struct {
	name string
	do   func(*rapid.T, *life) bool
}{
	{"pain", func(t *rapid.T, l *life) bool {
		return worsen(t, l, func(s *program.SetDone) bool {
			s.Pain = program.Pain{Given: true, Wrists: -1, Elbows: rapid.IntRange(3, 8).Draw(t, "elbows"), Shoulders: -1, Other: -1}
			return true
		})
	}},
	{"broken", func(t *rapid.T, l *life) bool {
		return worsen(t, l, func(s *program.SetDone) bool {
			was := s.Clean
			s.Clean = program.CleanNo
			return was != program.CleanNo && s.Seconds > 0
		})
	}},
	{"rpe", func(t *rapid.T, l *life) bool {
		return worsen(t, l, func(s *program.SetDone) bool {
			if s.RPE == 0 || s.RPE > 9 || s.Seconds == 0 {
				return false
			}
			s.RPE++
			return true
		})
	}},
	{"short", func(t *rapid.T, l *life) bool {
		return worsen(t, l, func(s *program.SetDone) bool {
			if s.Seconds < 3 {
				return false
			}
			s.Seconds -= 2
			return true
		})
	}},
	{"missed", func(t *rapid.T, l *life) bool {
		var days []program.Date
		for _, e := range l.a.Log.Entries {
			if !e.Morning && !slices.Contains(days, e.Date.Monday()) {
				days = append(days, e.Date.Monday())
			}
		}
		if len(days) < 2 {
			return false
		}
		gone := days[len(days)-1]
		without := slices.DeleteFunc(slices.Clone(l.a.Log.Entries), func(e program.Entry) bool { return !e.Morning && e.Date.Monday() == gone })
		l.a.Log.Entries = without
		return true
	}},
	{"sore", func(t *rapid.T, l *life) bool {
		j := joints[rapid.IntRange(0, 2).Draw(t, "joint")].state(&l.a.Health)
		was := *j
		*j = program.JointSore
		return was == program.JointFine
	}},
	{"shorter test", func(t *rapid.T, l *life) bool {
		if len(l.a.Tests) == 0 || l.a.Tests[0].Seconds < 3 {
			return false
		}
		l.a.Tests = slices.Clone(l.a.Tests)
		l.a.Tests[0].Seconds -= 2
		return true
	}},
}

func worsen(t *rapid.T, l *life, do func(*program.SetDone) bool) bool {
	var at []int
	for i, e := range l.a.Log.Entries {
		if len(e.Sets) > 0 && !e.Morning && !e.AsPrinted && e.Date > l.on-20 {
			at = append(at, i)
		}
	}
	if len(at) == 0 {
		return false
	}
	i := at[len(at)-1-rapid.IntRange(0, min(len(at)-1, 6)).Draw(t, "line")]
	l.a.Log.Entries = slices.Clone(l.a.Log.Entries)
	e := &l.a.Log.Entries[i]
	e.Sets = slices.Clone(e.Sets)
	return do(&e.Sets[rapid.IntRange(0, len(e.Sets)-1).Draw(t, "set")])
}

func TestNewsRates(t *testing.T) {
	if os.Getenv("NEWS") == "" {
		t.Skip()
	}
	lib := library(t)
	all := lives(lib)
	count, bad := map[string]int{}, map[string]int{}
	kinds := map[string]int{}
	shown := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		l := all.Draw(t, "life")
		k := badNews[rapid.IntRange(0, len(badNews)-1).Draw(t, "news")]
		m := l
		m.a.Health = l.a.Health
		if !k.do(t, &m) {
			t.Skip("not this one")
		}
		_, b1, _ := begin(lib, &l.a)
		_, b2, _ := begin(lib, &m.a)
		if b1 == nil || b2 == nil {
			t.Skip()
		}
		b2.leans = b2.body.leanLoads()
		rw, p, _ := Read(lib, &l.a, l.wall, l.on)
		rv, q, _ := Read(lib, &m.a, l.wall, l.on)
		if len(p.Withheld)+len(q.Withheld) > 0 {
			return
		}
		wall := l.wall[len(l.wall)-1]
		tell := func(name string, h []string) {
			count[name]++
			if len(h) == 0 {
				return
			}
			bad[name]++
			for _, s := range h {
				var w string
				fmt.Sscan(s, &w)
				kinds[name+" "+w]++
			}
			if shown[name]++; shown[name] < 6 {
				fmt.Println(name, p.Weeks[0].Step, q.Weeks[0].Step, l.on, h)
			}
		}
		switch k.name {
		case "pain", "sore", "missed":
			tell(k.name, harder(b2, &p, &q))
		default:
			var h []string
			if rv.After.Held12 > rw.After.Held12*(1+1e-9) {
				h = append(h, fmt.Sprintf("estimate %.3f after %.3f", rv.After.Held12, rw.After.Held12))
			}
			for i := range rv.ForecastAfter {
				f, g := rw.ForecastAfter[i], rv.ForecastAfter[i]
				if g.Likely != 0 && (f.Likely == 0 || g.Likely < f.Likely) && !g.Held {
					h = append(h, fmt.Sprintf("likely %s after %s", g.Likely, f.Likely))
				}
			}
			tell(k.name, h)
		}
		if now := weekAt(wall.Weeks, q.From); q.From != 0 && now != nil && rv.After.Held12 < now.Capacity {
			hung := q
			hung.Weeks, hung.Forecasts = wall.Weeks, nil
			tell("below the wall", harder(b2, &hung, &q))
		}
	})
	for _, k := range slices.Sorted(maps.Keys(count)) {
		fmt.Printf("%-14s %5d cases, %4d harder\n", k, count[k], bad[k])
	}
	for _, k := range slices.Sorted(maps.Keys(kinds)) {
		fmt.Println(k, kinds[k])
	}
}
