package site

import (
	"bytes"
	"errors"
	"fmt"
	"html/template"
	"io/fs"
	"regexp"
	"strconv"

	"gatepost/program"
)

// maxTemplate caps a template or stylesheet, in bytes (our judgement: thirty
// times the largest built-in one).
const maxTemplate = 256 << 10

// pageKinds are the templates that make pages, each set within base.html.
var pageKinds = []string{"exercise.html", "exercises.html", "home.html", "page.html", "program.html", "roadmap.html", "week.html"}

// assets are copied as they are.
var assets = []string{"icon.svg", "style.css"}

// look is the parsed templates and the files that go with them.
type look struct {
	pages  map[string]*template.Template
	assets []File
}

// readLook parses the templates out of the layers; the last layer that has a
// file decides. Each problem names file and line under templates/.
func readLook(layers []fs.FS, words func(string) string) (look, program.Problems) {
	var problems program.Problems
	get := func(name string) []byte {
		text, err := readLayered(layers, name)
		if err != nil {
			problems = append(problems, program.Problem{
				Place:   program.Place{File: "templates/" + name},
				Message: err.Error(),
				Advice:  "write the file, or remove yours to get the built-in one back",
			})
		}
		return text
	}
	l := look{pages: map[string]*template.Template{}}
	base := template.New("base.html").Funcs(template.FuncMap{"word": words})
	if _, err := base.Parse(string(get("base.html"))); err != nil {
		return l, append(problems, templateProblem("base.html", err))
	}
	for _, name := range pageKinds {
		page, err := template.Must(base.Clone()).New(name).Parse(string(get(name)))
		if err != nil {
			problems = append(problems, templateProblem(name, err))
			continue
		}
		l.pages[name] = page
	}
	for _, name := range assets {
		l.assets = append(l.assets, File{Path: name, Bytes: get(name)})
	}
	return l, problems
}

// readLayered reads a file from the last layer that has it. An empty file takes
// the built-in one away, which leaves the page without a template.
func readLayered(layers []fs.FS, name string) ([]byte, error) {
	for i := len(layers) - 1; i >= 0; i-- {
		info, err := fs.Stat(layers[i], name)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			continue
		case err != nil:
			return nil, err
		case info.Size() == 0:
			return nil, errors.New("the file is empty, and the site can't be made without it")
		case info.Size() > maxTemplate:
			return nil, fmt.Errorf("the file is larger than %d KB", maxTemplate>>10)
		}
		return fs.ReadFile(layers[i], name)
	}
	return nil, errors.New("the file is missing")
}

// render fills one page.
func (l look) render(kind string, page any) ([]byte, *program.Problem) {
	t, ok := l.pages[kind]
	if !ok {
		return nil, nil // its parse error is already reported
	}
	var out bytes.Buffer
	if err := t.ExecuteTemplate(&out, "base.html", page); err != nil {
		p := templateProblem(kind, err)
		return nil, &p
	}
	return out.Bytes(), nil
}

// templateError is how the standard library begins its messages:
// "template: home.html:12:5: executing …", "html/template:home.html:3: …".
var templateError = regexp.MustCompile(`^(?:html/template|template): ?([^:]+):(\d+)(?::(\d+))?: (.*)$`)

// templateProblem finds file and line in an error of html/template.
func templateProblem(name string, err error) program.Problem {
	p := program.Problem{Place: program.Place{File: "templates/" + name}, Message: err.Error(),
		Advice: "compare with the built-in template; removing your file brings that one back"}
	if m := templateError.FindStringSubmatch(err.Error()); m != nil {
		p.File = "templates/" + m[1]
		p.Line, _ = strconv.Atoi(m[2])
		p.Column, _ = strconv.Atoi(m[3])
		p.Message = m[4]
	}
	return p
}
