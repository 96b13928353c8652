package paper

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
	"testing"

	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

// printed is a client with all that is printed of one.
type printed struct {
	*view.View
	how  *view.HowTo
	hour *view.FirstSession
}

// many are so many clients of a studio, planned: the demo's, of different mass.
func many(b *testing.B, n int) []printed {
	b.Helper()
	studio := demo(b)
	var all []printed
	for i := range n {
		a := studio.Clients[i%len(studio.Clients)]
		a.Slug, a.Athlete.Name = fmt.Sprint("client-", i), fmt.Sprintf("%s %d", a.Athlete.Name, i)
		a.Athlete.Mass += float64(i % 7)
		v, how, p := guidesOf(b, &studio, &a)
		h := planner.FirstHour(&studio.Library, &a, &p)
		hour, _ := view.NewFirstSession(studio.Coach, &studio.Library, &p, &h)
		all = append(all, printed{v, how, hour})
	}
	return all
}

// own makes a client's own documents and says how many bytes they are.
func own(b *testing.B, c printed) int {
	chart, _ := WallChart(c.View)
	page, _ := OnePage(c.View)
	cards, _ := Cards(c.View, false)
	coach, _ := CoachPage(c.View)
	how, _ := HowTo(c.View, c.how)
	hour, _ := FirstSession(c.View, c.hour)
	sum := 0
	for _, pdf := range [][]byte{chart, page, cards, coach, how, hour} {
		if pdf == nil {
			b.Error("a document is missing")
		}
		sum += len(pdf)
	}
	return sum
}

// BenchmarkPaper makes the documents of 200 clients on all cores, as the command does:
// the test sheet, which is the same for everybody, once, and with a larger target for the
// collector. Run it with -benchtime=1x; the time of one pass is the figure.
func BenchmarkPaper(b *testing.B) {
	const clients = 200
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	studio, form := demo(b), shown(b)
	all := many(b, clients)
	b.ResetTimer()
	for b.Loop() {
		sheet, _ := TestSheet(studio.Coach, &studio.Library, "", form)
		work := make(chan printed)
		var group sync.WaitGroup
		sizes := make([]int, runtime.GOMAXPROCS(0))
		for i := range sizes {
			group.Go(func() {
				for c := range work {
					sizes[i] += own(b, c) + len(sheet)
				}
			})
		}
		for _, c := range all {
			work <- c
		}
		close(work)
		group.Wait()
		total := 0
		for _, size := range sizes {
			total += size
		}
		b.ReportMetric(float64(total)/clients/1024, "kB/client")
	}
}
