package site_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/posture"
	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
	"gatepost/templates"
)

const measureText = `Intro, and [the lean](../exercises/planche-lean.md).

# A first-level heading

## Bands & scales

| Band | Pull, kg |
|:----:|---------:|
| wide | 8.7 |

## Μέτρα του σώματος

See [below](#bands-scales) and [a table](https://example.org/table).

## Bands & scales
`

// source is a small studio with one shared program, one on paper only and one
// that waits for clearance. Its words are the built-in ones.
func source(t testing.TB) site.Source {
	lib := viewtest.Library()
	for i := range lib.Exercises {
		e := &lib.Exercises[i]
		e.Grip, e.Loads = program.GripSupport, []string{"wrists", "elbows"}
		e.Dose = program.Dose{Sets: 3, Hold: 15, Rest: 90}
	}
	lean, _ := lib.Exercise("planche-lean")
	lean.SetUp = "Hands down.\n\n## A small heading\n\nSee [how to measure](../pages/measure.md#bands-scales)."
	lean.Kit = [][]string{{"wall"}, {"rings", "pull-up bar"}}
	lean.Harder = []string{"tuck-hold"}
	for _, p := range [][2]string{{"cautions", "Care."}, {"home", "Welcome."}, {"measure", measureText}, {"numbers", "Sums."}} {
		lib.Pages = append(lib.Pages, program.Page{ID: p[0], Title: "About " + p[0], Body: p[1], File: "content/pages/" + p[0] + ".md", Line: 4})
	}
	lib.RoadMaps[0].Body = "How to **read** it."
	return site.Source{
		Coach: viewtest.Coach(), Library: lib, Templates: []fs.FS{templates.FS},
		References: []site.Reference{
			{RoadMap: "planche", Name: "female", Steps: viewtest.Program().Steps},
			{RoadMap: "planche", Name: "male", Steps: viewtest.Program().Steps},
		},
		Illustrations: ladder.Illustrations(&lib.RoadMaps[0]),
		Pictures:      posture.NewAlbum(lib).Of,
		Notes: []program.CoachNote{
			{ID: "quiet", Title: "A quiet < week", On: program.NewDate(2027, 1, 18), File: "content/notes/quiet.md", Line: 4,
				Body: "Read [the lean](../exercises/planche-lean.md) and [an older note](old.md)."},
			{ID: "old", Title: "Old", On: program.NewDate(2026, 12, 1), File: "content/notes/old.md", Line: 4, Body: "Hello."},
		},
		Publics: []site.Public{public(lib)},
		Clients: []*view.View{
			client(lib, nil),
			client(lib, func(p *program.Program) {
				p.Client = program.Client{Name: "Paperonly", Slug: "paperonly", Share: program.SharePrint, Page: "paperpaper"}
			}),
			client(lib, func(p *program.Program) {
				p.Client = program.Client{Name: "Notcleared", Slug: "notcleared", Share: program.ShareSite, Page: "waitwaitwait"}
				p.Withheld, p.Weeks = []program.Note{{Code: "x"}}, nil
			}),
		},
	}
}

// public is a public program with a document at its first level.
func public(lib *program.Library) site.Public {
	from, levels := viewtest.Public()
	p, _ := view.NewPublic(viewtest.Coach(), lib, from, levels)
	return site.Public{View: p, Documents: [][]site.Document{{{Name: "wall-chart.pdf", Bytes: []byte("%PDF-1.7 for the wall")}}}}
}

func client(lib *program.Library, change func(*program.Program)) *view.View {
	p := viewtest.Program()
	if change != nil {
		change(p)
	}
	v, _ := view.New(viewtest.Coach(), lib, p)
	return v
}

// build fails the test on any problem.
func build(t testing.TB, s site.Source) map[string]string {
	t.Helper()
	files, problems := site.Build(s)
	for _, p := range problems {
		t.Errorf("%v (%s)", p.Error(), p.Advice)
	}
	all := map[string]string{}
	for _, f := range files {
		if _, twice := all[f.Path]; twice {
			t.Errorf("%s is written twice", f.Path)
		}
		all[f.Path] = string(f.Bytes)
	}
	return all
}

// demoSite and fixtureSite are built once, for all tests that only read them.
func demoSite(t testing.TB) map[string]string {
	return demoOnce.of(t, func() site.Source { return demo(t, nil) })
}

func fixtureSite(t testing.TB) map[string]string {
	return fixtureOnce.of(t, func() site.Source { return source(t) })
}

var demoOnce, fixtureOnce once

// once is a site that is built when it is first asked for.
type once map[string]string

func (o *once) of(t testing.TB, s func() site.Source) map[string]string {
	t.Helper()
	if *o == nil {
		*o = build(t, s())
	}
	return *o
}

// written puts a site on disk, as it is uploaded.
func written(t testing.TB, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	save(t, dir, files)
	return filepath.Join(dir, "site")
}

func save(t testing.TB, dir string, files map[string]string) {
	t.Helper()
	for path, text := range files {
		to := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(to, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func isPage(path string) bool     { return strings.HasSuffix(path, ".html") }
func isOfClient(path string) bool { return strings.HasPrefix(path, "site/c/") }
