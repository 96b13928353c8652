package site

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
	"gatepost/templates"
)

func TestDump(t *testing.T) {
	dir := os.Getenv("DUMP")
	if dir == "" {
		t.Skip()
	}
	lib := viewtest.Library()
	for _, id := range []string{"home", "measure", "numbers", "cautions"} {
		data, err := os.ReadFile("../../../content/pages/" + id + ".md")
		if err != nil {
			t.Fatal(err)
		}
		lib.Pages = append(lib.Pages, program.Page{ID: id, Title: id, Body: string(data), File: "content/pages/" + id + ".md", Line: 1})
	}
	p := viewtest.Program()
	v, ps := view.New(viewtest.Coach(), lib, p)
	t.Log(ps)
	files, ps := Build(Source{Coach: viewtest.Coach(), Library: lib, Templates: []fs.FS{templates.FS}, References: []Reference{{"planche", "female", p.Steps}}, Clients: []*view.View{v}})
	for _, x := range ps {
		t.Log(x.Error(), x.Advice)
	}
	for _, f := range files {
		os.MkdirAll(filepath.Dir(filepath.Join(dir, f.Path)), 0o755)
		os.WriteFile(filepath.Join(dir, f.Path), f.Bytes, 0o644)
	}
}
