package planner

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"gatepost/program"
)

var (
	studyPeople = flag.Int("study", 0, "people in the study of policies; 0: a small one")
	studySeed   = flag.Uint64("study.seed", 1, "of the study of policies")
)

// The policies of the study.
const (
	weekly = iota
	once
	dropping
	droppingCarefully
	fifteen
	fifteenCarefully
	policies
)

var policyNames = [policies]string{"ours, read weekly", "ours, planned once",
	"drops a band every two weeks", "… and takes it back", "asks 15 s until 3 × 15 s", "… by two seconds at a time"}

// course is how one life went under one policy.
type course struct {
	weeks                          float64 // to the goal; studyWeeks where it was not reached
	sets, failed, main, mainFailed int
}

// follow lets a life run under a policy until the goal is there.
func follow(l *lifetime, p policy, look func(*program.Week)) course {
	monday := blockStart(&l.athlete)
	for week := 0; week < studyWeeks && !l.there(); week++ {
		w := p.print(monday)
		look(&w)
		log := l.do(&w)
		p.read(&w, &log)
		monday += 7
	}
	return course{float64(l.week), l.sets, l.failed, l.main, l.mainFailed}
}

// live runs a person through all policies in one response. What ours asks of each
// week is asked of all.
func live(p *person, r response) (out [policies]course) {
	var list []asked
	out[weekly] = follow(newLife(p, r), newCoached(p, true), func(w *program.Week) {
		a := asked{kind: w.Kind, halfSeconds: w.HalfSeconds}
		for _, d := range recalled(w).straight {
			a.days = append(a.days, d-w.Start)
		}
		list = append(list, a)
	})
	other := func(which int, of func(rival) policy) {
		l := newLife(p, r)
		out[which] = follow(l, of(rival{lifetime: l, asked: &list}), func(*program.Week) {})
	}
	other(once, func(rival) policy { return newCoached(p, false) })
	for _, careful := range []int{0, 1} {
		other(dropping+careful, func(r rival) policy { return newDropsBands(r, careful > 0) })
		other(fifteen+careful, func(r rival) policy { return newThreeTimes15(r, careful > 0) })
	}
	return out
}

// study runs many people through all policies and responses.
func study(t *testing.T, n int, seed uint64) [][responses][policies]course {
	lib, like := library(t), maren(t)
	out := make([][responses][policies]course, n)
	var all sync.WaitGroup
	next := make(chan int)
	for range 2 {
		all.Go(func() {
			for i := range next {
				p := newPerson(seed<<24|uint64(i), lib, like)
				for r := range responses {
					out[i][r] = live(p, r)
				}
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	all.Wait()
	return out
}

// compared is ours against one policy in one response.
type compared struct {
	ratio, upper float64 // of the mean weeks to the goal, ours over the other's
}

// compare takes the upper end of the 95 % interval over people, by 1,000 draws
// with replacement (the percentile bootstrap).
func compare(people [][responses][policies]course, r response, with int) compared {
	ratio := func(pick func(int) int) float64 {
		var ours, other float64
		for i := range people {
			p := &people[pick(i)][r]
			ours, other = ours+p[weekly].weeks, other+p[with].weeks
		}
		return ours / other
	}
	d := rand.New(rand.NewPCG(1, 2))
	var drawn []float64
	for range 1000 {
		drawn = append(drawn, ratio(func(int) int { return d.IntN(len(people)) }))
	}
	slices.Sort(drawn)
	return compared{ratio(func(i int) int { return i }), drawn[974]}
}

// table is the study in words.
func table(people [][responses][policies]course) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-10s %-29s %6s %7s %7s %7s %7s %8s\n", "response", "policy", "weeks", "reached", "ratio", "upper", "failed", "of main")
	for r := range responses {
		for p := range policies {
			var c course
			there := 0
			for i := range people {
				x := &people[i][r][p]
				c.weeks, c.sets, c.failed, c.main, c.mainFailed = c.weeks+x.weeks, c.sets+x.sets, c.failed+x.failed, c.main+x.main, c.mainFailed+x.mainFailed
				if x.weeks < studyWeeks {
					there++
				}
			}
			v := compare(people, r, p)
			n := float64(len(people))
			fmt.Fprintf(&b, "%-10s %-29s %6.1f %6.1f%% %7.3f %7.3f %6.1f%% %7.1f%%\n", r, policyNames[p], c.weeks/n,
				100*float64(there)/n, v.ratio, v.upper, share(c.failed, c.sets), share(c.mainFailed, c.main))
		}
	}
	return b.String()
}

func share(n, of int) float64 { return 100 * float64(n) / math.Max(1, float64(of)) }

// The study of policies:
//
//	go test ./program/planner -run 'TestStudy$' -timeout 1h -study 2000 -study.seed 7
//
// What it came to is in testdata/study.txt.
// Without -study it is a small one, with bounds that only a planner gone wrong
// oversteps: ours no more than a tenth later than any other, sooner than bands that
// are dropped whatever happens, and at most half the failed sets of the two rules as
// they are said.
func TestStudy(t *testing.T) {
	if *studyPeople > 0 {
		people := study(t, *studyPeople, *studySeed)
		fmt.Fprintf(os.Stdout, "%d people, seed %d\n%s", len(people), *studySeed, table(people))
		return
	}
	people := study(t, 24, 1)
	t.Log("\n" + table(people))
	for r := range responses {
		ours := failures(people, r, weekly)
		for p := range policies {
			if v := compare(people, r, p); v.ratio > 1.1 || p == dropping && r != flat && v.ratio > 0.96 {
				t.Errorf("%s: ours takes %.3f of the weeks of %q", r, v.ratio, policyNames[p])
			}
			if rule := p == dropping || p == fifteen; rule && ours > failures(people, r, p)/2 {
				t.Errorf("%s: %.1f %% of our sets fail, of %q %.1f %%", r, ours, policyNames[p], failures(people, r, p))
			}
		}
	}
}

// failures is the share of failed sets, per cent.
func failures(people [][responses][policies]course, r response, p int) float64 {
	sets, failed := 0, 0
	for i := range people {
		sets, failed = sets+people[i][r][p].sets, failed+people[i][r][p].failed
	}
	return share(failed, sets)
}

// What the study follows are the weeks that Read plans, week after week, over the
// end of a block.
func TestStudyFollowsRead(t *testing.T) {
	lib := library(t)
	for seed := range uint64(3) {
		p := newPerson(1000+seed, lib, maren(t))
		l, c := newLife(p, byLoad), newCoached(p, true)
		a := p.athlete
		printed, _ := Plan(lib, &a)
		wall := []program.PlanVersion{Version(&printed, 1, a.Measured)}
		for monday, end := printed.Start, printed.Start+7*15; monday < end; monday += 7 {
			w := c.print(monday)
			at := slices.IndexFunc(printed.Weeks, func(w program.Week) bool { return w.Start == monday })
			if at < 0 {
				t.Fatalf("no week of %s", monday)
			}
			got, _ := json.Marshal(w.Sessions)
			want, _ := json.Marshal(printed.Weeks[at].Sessions)
			if string(got) != string(want) {
				t.Fatalf("person %d, week of %s:\n%s\nRead plans\n%s", seed, monday, got, want)
			}
			log := l.do(&w)
			a.Log.Entries = append(a.Log.Entries, log.Entries...)
			c.read(&w, &log)
			_, printed, _ = Read(lib, &a, wall, monday+6)
			wall = append(wall, Version(&printed, len(wall)+1, monday+6))
		}
	}
}
