package planner_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/planner"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

// TestPanelByHand plans who has a coach.yaml with a wish of every kind, as TestPanel does, and
// says what became of each.
func TestPanelByHand(t *testing.T) {
	files, err := filepath.Glob("testdata/hand/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d clients found, %v", len(files), err)
	}
	for _, file := range files {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		c := panelClient{file: file, slug: strings.TrimSuffix(filepath.Base(file), ".txt"), archive: archive}
		folder := fstest.MapFS{"content/studio.yaml": {Data: []byte("coach: Tilda Roake\nstudio: Bell Hall\ncontact: tilda@example.org\n")}}
		for _, name := range []string{"assessment.yaml", "coach.yaml"} {
			folder["content/clients/"+c.slug+"/"+name] = &fstest.MapFile{Data: c.part(name).Data}
		}
		studio, problems := intake.Read(folder, os.DirFS("../.."), nil)
		if problems.Stop() || len(studio.Clients) != 1 {
			t.Fatal(problems)
		}
		p, problems := planner.Plan(&studio.Library, &studio.Clients[0])
		got := wishesOf(&p) + printed(&p, nil, problems)
		if *update {
			c.part("program").Data = []byte(got)
			if err := os.WriteFile(file, txtar.Format(archive), 0o644); err != nil {
				t.Fatal(err)
			}
		} else if diff := cmp.Diff(string(c.part("program").Data), got); diff != "" {
			t.Errorf("go test ./program/planner -run PanelByHand -update writes this; read it first (-want +got):\n%s", diff)
		}
	}
}

// wishesOf has each wish, what became of it, and which rules stand against it.
func wishesOf(p *program.Program) string {
	var all strings.Builder
	for _, w := range p.Wishes {
		fmt.Fprintf(&all, "wish line %d %s: %s", w.Place.Line, w.Kind, w.State)
		for _, n := range w.Why {
			fmt.Fprintf(&all, ", %s", n.Code)
		}
		all.WriteString("\n")
	}
	return all.String() + "\n"
}
