package paper

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"

	"pgregory.net/rapid"
)

// guidesOf is a client's how-to.
func guidesOf(t fataler, studio *program.Studio, a *program.Assessment) (*view.View, *view.HowTo, program.Program) {
	t.Helper()
	p, problems := planner.Plan(&studio.Library, a)
	if problems.Stop() {
		t.Fatal(problems)
	}
	v, _ := view.New(studio.Coach, &studio.Library, &p)
	h, problems := view.NewHowTo(studio.Coach, &studio.Library, &p, everywhere)
	if problems != nil {
		t.Fatal(problems)
	}
	return v, h, p
}

// Every exercise of the block is there with all that its page says, once, in the client's
// language; it fits, also in large print, and takes about six exercises a page.
func TestHowToHasEveryExercise(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		for _, paper := range papers {
			studio := spoken(t, language)
			studio.Coach.Paper = paper
			for _, a := range append(studio.Clients, others()...) {
				v, h, p := guidesOf(t, &studio, &a)
				for _, large := range []bool{false, true} {
					v.Large = large
					pages := layHowTo(setter(), v, h)
					name := strings.Join([]string{a.Slug, language, string(paper)}, ", ")
					for _, page := range pages {
						for _, fault := range page.Faults() {
							t.Errorf("%s: %s", name, fault)
						}
					}
					text := textOf(pages...)
					for id := range exerciseIDs(&p) {
						e, _ := studio.Library.Exercise(id)
						for _, want := range append(append([]string{e.Name}, e.Cues...), e.Faults...) {
							if !strings.Contains(text, strings.ReplaceAll(want, "\u00a0", " ")) {
								t.Errorf("%s, %s: no %q", name, id, want)
							}
						}
						if n := strings.Count("\n"+text, "\n"+e.Name+"\n"); n != 1 {
							t.Errorf("%s: %s is there %d times", name, e.Name, n)
						}
					}
					if strings.Contains(text, "…") {
						t.Errorf("%s: cut", name)
					}
					if most := (len(h.Guides)+3)/4 + 1; !large && len(pages) > most {
						t.Errorf("%s: %d exercises on %d pages", name, len(h.Guides), len(pages))
					}
				}
			}
		}
	}
}

func exerciseIDs(p *program.Program) map[string]bool {
	ids := map[string]bool{}
	for _, w := range p.Weeks {
		for _, s := range w.Sessions {
			for _, item := range s.Items {
				ids[item.Exercise] = true
			}
		}
	}
	return ids
}

// An exercise of a coach's own, with a set-up longer than a column, goes on in the next.
func TestLongGuidesGoOn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, h, _ := guidesOf(t, ptr(demoStudio()), ptr(others()[3]))
		v.Large = rapid.Bool().Draw(t, "large")
		v.Coach.Paper = rapid.SampledFrom(papers).Draw(t, "paper")
		long := &h.Guides[rapid.IntRange(0, len(h.Guides)-1).Draw(t, "which")]
		for i := range rapid.IntRange(1, 60).Draw(t, "paragraphs") {
			long.SetUp = append(long.SetUp, strings.Repeat("word ", 5+i))
		}
		long.Name = rapid.SampledFrom(names).Draw(t, "name")
		for _, page := range layHowTo(setter(), v, h) {
			for _, fault := range page.Faults() {
				t.Error(fault)
			}
		}
	})
}

func ptr[T any](v T) *T { return &v }

func TestWithheldHasNoHowTo(t *testing.T) {
	if pdf, problems := HowTo(fixture(t), &view.HowTo{}); pdf != nil || problems != nil {
		t.Error("guides to nothing")
	}
}
