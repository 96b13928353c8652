package paper

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
	"testing"

	"gatepost/program/publish/view"
)

// many are so many clients of a studio, planned: the demo's, of different mass.
func many(b *testing.B, n int) []*view.View {
	b.Helper()
	studio := demo(b)
	var all []*view.View
	for i := range n {
		a := studio.Clients[i%len(studio.Clients)]
		a.Slug, a.Athlete.Name = fmt.Sprint("client-", i), fmt.Sprintf("%s %d", a.Athlete.Name, i)
		a.Athlete.Mass += float64(i % 7)
		all = append(all, viewOf(b, studio.Coach, &a))
	}
	return all
}

// own makes a client's own documents and says how many bytes they are.
func own(b *testing.B, v *view.View) int {
	chart, _ := WallChart(v)
	page, _ := OnePage(v)
	cards, _ := Cards(v, false)
	coach, _ := CoachPage(v)
	for _, pdf := range [][]byte{chart, page, cards, coach} {
		if pdf == nil {
			b.Error("a document is missing")
		}
	}
	return len(chart) + len(page) + len(cards) + len(coach)
}

// BenchmarkPaper makes the five documents of 200 clients on all cores, as the
// command does: the test sheet, which is the same for everybody, once, and with a
// larger target for the collector. Run it with -benchtime=1x; the time of one pass
// is the figure.
func BenchmarkPaper(b *testing.B) {
	const clients = 200
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	studio, form := demo(b), shown(b)
	views := many(b, clients)
	b.ResetTimer()
	for b.Loop() {
		sheet, _ := TestSheet(studio.Coach, &studio.Library, "", form)
		work := make(chan *view.View)
		var group sync.WaitGroup
		sizes := make([]int, runtime.GOMAXPROCS(0))
		for i := range sizes {
			group.Go(func() {
				for v := range work {
					sizes[i] += own(b, v) + len(sheet)
				}
			})
		}
		for _, v := range views {
			work <- v
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
