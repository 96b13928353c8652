package paper

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"

	"pgregory.net/rapid"
)

func reviewOf(t testing.TB, p *program.Program, r *program.Review) *view.Review {
	t.Helper()
	v, _ := view.NewReview(viewtest.Coach(), viewtest.Library(), p, r)
	v.Progress, _ = view.NewProgress(viewtest.Coach(), viewtest.Library(), p, r)
	return v
}

// Reviews are made longer and shorter than any client's, with notes as people
// write them.
func TestReviewFitsItsSheets(t *testing.T) {
	lib := viewtest.Library()
	rapid.Check(t, func(t *rapid.T) {
		p, r, coach := viewtest.Program(), viewtest.Review(), viewtest.Coach()
		coach.Paper = rapid.SampledFrom([]program.Paper{program.PaperA4, program.PaperLetter}).Draw(t, "paper")
		p.Weeks = weeks(t, p.Weeks)
		times := func(what string) int { return rapid.IntRange(0, 30).Draw(t, what) }
		r.Flags = repeated(r.Flags, times("flags"))
		r.Moves = repeated(r.Moves, times("moves"))
		r.Gates = repeated(r.Gates, times("gates")/6)
		r.Changes = repeated(r.Changes, times("changes")/2)
		r.Progress = repeated(r.Progress, times("weeks read"))
		for i := range r.Progress {
			w := &r.Progress[i]
			w.Start = r.Progress[0].Start + program.Date(7*i)
			w.Held12 *= rapid.Float64Range(0.2, 3).Draw(t, "held")
			w.HoldDone, w.RPE = rapid.Float64Range(0, 60).Draw(t, "hold"), rapid.Float64Range(0, 10).Draw(t, "rpe")
			w.HalfSeconds, w.Help = rapid.IntRange(0, 3000).Draw(t, "half"), rapid.Float64Range(0, 400).Draw(t, "help")
		}
		v, _ := view.New(coach, lib, p)
		if len(v.Weeks) == 0 {
			return
		}
		rv, _ := view.NewReview(coach, lib, p, r)
		rv.Progress, _ = view.NewProgress(coach, lib, p, r)
		for _, page := range layReview(setter(), v, rv) {
			if faults := page.Faults(); faults != nil {
				t.Fatal(strings.Join(faults, "\n"))
			}
		}
	})
}

func repeated[T any](from []T, n int) []T {
	var all []T
	for i := range n {
		all = append(all, from[i%len(from)])
	}
	return all
}

// What a reader takes out of the file is what the view said.
func TestReviewTextComesOut(t *testing.T) {
	pdf, problems := Review(fixture(t), reviewOf(t, viewtest.Replanned(), viewtest.Review()))
	if problems != nil {
		t.Fatal(problems)
	}
	if out := tool(t, pdf, "qpdf", "--check", "FILE"); strings.Contains(out, "WARNING") {
		t.Error(out)
	}
	out := strings.Join(strings.Fields(strings.ReplaceAll(tool(t, pdf, "pdftotext", "FILE", "-"), "\u00a0", " ")), " ")
	for _, want := range []string{"Read back", "Week 5 of 12", "stop: Pain at the elbows", "What moved the estimate most", "worst pain of the week", "Cards: 8 Feb, 10 Feb.", "the qualified professional who is with you decides."} {
		if !strings.Contains(out, want) {
			t.Errorf("does not say %q", want)
		}
	}
	for _, private := range []string{"N·m", "58 kg", "1991"} {
		if strings.Contains(out, private) {
			t.Errorf("says %q", private)
		}
	}
	if pages := tool(t, pdf, "qpdf", "--show-npages", "FILE"); strings.TrimSpace(pages) != "2" {
		t.Errorf("%s pages", pages)
	}
}

func TestReviewHasEveryChart(t *testing.T) {
	pages := layReview(setter(), fixture(t), reviewOf(t, viewtest.Program(), viewtest.Review()))
	pictures := 0
	for _, m := range pages[0].Marks {
		if _, ok := m.(Picture); ok {
			pictures++
		}
	}
	if pictures != 7 {
		t.Errorf("%d charts, want strength, hold, help, seconds, sessions, effort, joints", pictures)
	}
}

func TestReviewOfNoLogIsNoPaper(t *testing.T) {
	if pdf, problems := Review(fixture(t), &view.Review{}); pdf != nil || problems != nil {
		t.Error("a page of nothing")
	}
}
