package site_test

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"gatepost/program/publish/site"
)

// layer is a coach's templates folder.
type layer map[string]string

func (l layer) Open(name string) (fs.File, error) {
	files := fstest.MapFS{}
	for path, text := range l {
		files[path] = &fstest.MapFile{Data: []byte(text)}
	}
	return files.Open(name)
}

func TestOwnTemplateLiesOver(t *testing.T) {
	s := source(t)
	s.Templates = append(s.Templates, layer{"page.html": `{{define "main"}}<h1>{{.Heading}}</h1>our own page{{end}}`, "style.css": "body{}"})
	files := build(t, s)
	if !strings.Contains(files["site/page-measure.html"], "our own page") {
		t.Error("the coach's page.html was not used")
	}
	if files["site/style.css"] != "body{}" {
		t.Error("the coach's style.css was not used")
	}
	if !strings.Contains(files["site/exercises.html"], "<h2") {
		t.Error("the other templates are gone")
	}
}

func TestTemplateProblems(t *testing.T) {
	for _, c := range []struct{ name, file, text, place, message string }{
		{"does not parse", "page.html", "\n\n{{if}}", "templates/page.html:3", "missing value for if"},
		{"unknown field", "page.html", "{{define \"main\"}}\n {{.Nonsense}}{{end}}", "templates/page.html:2:4", "Nonsense"},
		{"unknown field of an item", "session.html", "{{define \"main\"}}{{range .Items}}{{once \"item\" .}}{{end}}{{end}}\n{{define \"item\"}}\n {{.Nonsense}}{{end}}", "templates/session.html:3:4", "Nonsense"},
		{"unknown function", "base.html", "\n{{shout}}", "templates/base.html:2", `function "shout" not defined`},
		{"text in a tag's place", "page.html", "{{define \"main\"}}\n{{if .Private}}<a title=\"{{end}}{{end}}", "templates/page.html:2", "branches"},
		{"taken away", "style.css", "", "templates/style.css", "empty"},
		{"too large", "page.html", strings.Repeat("x", 300<<10), "templates/page.html", "larger than 256 KB"},
		{"no words", "page.html", `{{define "main"}}<h1>{{word "site.unheard_of"}}</h1>{{end}}`, "content/words/en.yaml", "site.unheard_of"},
	} {
		s := source(t)
		s.Templates = append(s.Templates, layer{c.file: c.text})
		_, problems := site.Build(s)
		if len(problems) != 1 || !problems.Stop() || !strings.HasPrefix(problems[0].Error(), c.place) ||
			!strings.Contains(problems[0].Message, c.message) {
			t.Errorf("%s: got %v, want one problem at %s that says %q", c.name, problems, c.place, c.message)
		}
	}
}
