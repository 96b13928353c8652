package planner_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/planner"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "write the programs as they are planned now into testdata/panel")

// TestPanel plans every client of testdata/panel, and the demo studio's, and
// compares the whole program as text. A file is a text archive: who it is, then
//
//	-- a good coach looks for --   what must be true of the program, for who reads it
//	-- assessment.yaml --          without it: the demo client that the file is named after
//	-- log.csv --                  optional: what was done
//	-- on --                       with a log: the day of the review
//	-- program --                  what is planned, which -update rewrites
//
// The comparison says that something moved; whether it moved for the better is for a
// coach to say, who reads the difference beside the three lines.
func TestPanel(t *testing.T) {
	files, err := filepath.Glob("testdata/panel/*.txt")
	if err != nil || len(files) < 32 {
		t.Fatalf("%d clients found, %v", len(files), err)
	}
	panel := readPanel(t, files)
	for _, c := range panel {
		t.Run(c.slug, func(t *testing.T) {
			got := c.planned(t)
			if *update {
				c.part("program").Data = []byte(got)
				if err := os.WriteFile(c.file, txtar.Format(c.archive), 0o644); err != nil {
					t.Fatal(err)
				}
			} else if diff := cmp.Diff(string(c.part("program").Data), got); diff != "" {
				t.Errorf("go test ./program/planner -run Panel -update writes this; read it first (-want +got):\n%s", diff)
			}
		})
	}
}

// panelClient is one file of the panel.
type panelClient struct {
	file, slug string
	archive    *txtar.Archive
	library    *program.Library
	assessment *program.Assessment
}

// part is a file of the archive; nil: there is none.
func (c *panelClient) part(name string) *txtar.File {
	for i := range c.archive.Files {
		if c.archive.Files[i].Name == name {
			return &c.archive.Files[i]
		}
	}
	return nil
}

// planned is the client's program as text, after the review where there is a log.
func (c *panelClient) planned(t *testing.T) string {
	t.Helper()
	on := c.part("on")
	if on == nil {
		p, problems := planner.Plan(c.library, c.assessment)
		return printed(&p, nil, problems)
	}
	day, err := program.ParseDate(strings.TrimSpace(string(on.Data)))
	if err != nil {
		t.Fatal(err)
	}
	r, p, problems := planner.Read(c.library, c.assessment, c.assessment.Plans, day)
	return printed(&p, &r, problems)
}

// demo is the library and the demo studio of this repository.
var demo = sync.OnceValues(func() (program.Studio, program.Problems) {
	root := os.DirFS("../..")
	return intake.Read(root, root, nil)
})

// readPanel reads the clients of the panel as one coach's folder.
func readPanel(t *testing.T, files []string) []*panelClient {
	t.Helper()
	folder := fstest.MapFS{"content/studio.yaml": {Data: []byte("coach: Tilda Roake\nstudio: Bell Hall\ncontact: tilda@example.org\n")}}
	var panel []*panelClient
	for _, file := range files {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		c := &panelClient{file: file, slug: strings.TrimSuffix(filepath.Base(file), ".txt"), archive: archive}
		if looks := c.part("a good coach looks for"); looks == nil || bytes.Count(looks.Data, []byte("\n")) != 3 || c.part("program") == nil {
			t.Fatalf("%s: not three lines to look for, or no program", file)
		}
		for _, name := range []string{"assessment.yaml", "log.csv"} {
			if part := c.part(name); part != nil {
				folder["content/clients/"+c.slug+"/"+name] = &fstest.MapFile{Data: part.Data}
			}
		}
		panel = append(panel, c)
	}
	studio, problems := intake.Read(folder, os.DirFS("../.."), nil)
	own, more := demo()
	for _, p := range append(problems, more...) {
		t.Log(p) // a warning is the client's own: weights and days that no usual one has
		if !p.Warning {
			t.Fail()
		}
	}
	clients := append(studio.Clients, own.Clients...)
	for _, c := range panel {
		for i := range clients {
			if clients[i].Slug == strings.TrimPrefix(c.slug, "demo-") {
				c.assessment, c.library = &clients[i], &own.Library
			}
		}
		if c.assessment == nil {
			t.Fatalf("%s: the assessment does not read", c.file)
		}
		if c.part("on") == nil {
			c.assessment.Log, c.assessment.Plans, c.assessment.Wishes = program.Log{}, nil, nil
		}
	}
	return panel
}
