package site

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"html"
	"html/template"
	"io/fs"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	text "text/template"

	"gatepost/program"
)

// maxTemplate caps a template or stylesheet, in bytes (our judgement: thirty
// times the largest built-in one).
const maxTemplate = 256 << 10

// pageKinds are the templates that make pages, each set within base.html.
var pageKinds = []string{"exercise.html", "exercises.html", "find.html", "home.html", "howto.html", "level.html", "notes.html",
	"page.html", "phone.html", "program.html", "programs.html", "public.html", "roadmap.html", "roadmaps.html", "session.html", "week.html"}

// shared are templates that several pages take in.
var shared = []string{"list.html", "picture.html", "results.html", "send.html", "strip.html", "timer.html"}

// assets are copied as they are.
var assets = []string{"icon.svg", "style.css", "print.css", answersScript, linesScript, notebookScript, noticeScript,
	offlineScript, phoneScript, sendScript, startScript, timerScript, todayScript}

// Scripts: extras that no page needs.
const (
	answersScript  = "answers.js"
	linesScript    = "lines.js"
	notebookScript = "notebook.js"
	noticeScript   = "notice.js"
	offlineScript  = "offline.js"
	phoneScript    = "phone.js"
	sendScript     = "send.js"
	startScript    = "start.js"
	timerScript    = "timer.js"
	todayScript    = "today.js"
)

// inks is the stylesheet within each picture file.
const inks = "figure.css"

// look is the parsed templates and the files that go with them.
type look struct {
	pages  map[string]*template.Template
	assets []File
	inks   []byte
	worker []byte // what each client's service worker does

	builtInIcon bool // no coach's own lies over it
}

// readLook parses the templates out of the layers; the last layer that has a
// file decides. Each problem names file and line under templates/.
func readLook(layers []fs.FS, words func(string) string) (look, program.Problems) {
	var problems program.Problems
	texts := map[string][]byte{}
	for _, name := range slices.Concat([]string{"base.html", inks, workerFile}, shared, pageKinds, assets) {
		text, problem := readLayered(layers, name)
		if problem != nil {
			problems = append(problems, *problem)
			continue
		}
		texts[name] = text
	}
	if problems != nil {
		return look{}, problems
	}
	l := look{pages: map[string]*template.Template{}, inks: bytes.TrimSpace(texts[inks]), worker: texts[workerFile],
		builtInIcon: !slices.ContainsFunc(layers[1:], hasIcon)}
	for name, text := range texts {
		texts[name] = spell(text, words)
	}
	base, err := template.New("base.html").Funcs(template.FuncMap{"word": words, "once": once(nil)}).Parse(string(texts["base.html"]))
	if err != nil {
		return look{}, program.Problems{templateProblem("base.html", err)}
	}
	for _, name := range shared {
		if _, err := base.New(name).Parse(string(texts[name])); err != nil {
			return look{}, program.Problems{templateProblem(name, err)}
		}
	}
	for _, name := range pageKinds {
		page := template.Must(base.Clone())
		page, err := page.Funcs(template.FuncMap{"once": once(page)}).New(name).Parse(string(texts[name]))
		if err != nil {
			problems = append(problems, templateProblem(name, err))
			continue
		}
		l.pages[name] = page
	}
	for _, name := range assets {
		l.assets = append(l.assets, File{Path: name, Bytes: texts[name]})
	}
	return l, problems
}

func hasIcon(layer fs.FS) bool {
	_, err := fs.Stat(layer, "icon.svg")
	return err == nil
}

// plainWord is a word asked for by its key, as templates mostly do.
var plainWord = regexp.MustCompile(`\{\{word "([^"\\]+)"\}\}`)

// spell puts words in place of their keys once instead of on every page, which
// takes a third of the time (measured). Escaped like this they are text, or part
// of a quoted attribute; a line stays a line, for the places of errors.
func spell(text []byte, words func(string) string) []byte {
	return plainWord.ReplaceAllFunc(text, func(found []byte) []byte {
		word := words(string(plainWord.FindSubmatch(found)[1]))
		return []byte(strings.NewReplacer("{", "&#123;", "\n", "&#10;").Replace(html.EscapeString(word)))
	})
}

// readLayered reads a file from the last layer that has it. An empty file takes
// the built-in one away, which leaves the page without a template.
func readLayered(layers []fs.FS, name string) ([]byte, *program.Problem) {
	trouble := func(message string) *program.Problem {
		return &program.Problem{Place: program.Place{File: "templates/" + name}, Message: message,
			Advice: "remove your own file to get the built-in one back"}
	}
	for _, layer := range slices.Backward(layers) {
		info, err := fs.Stat(layer, name)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			continue
		case err != nil:
			return nil, trouble(err.Error())
		case info.Size() == 0:
			return nil, trouble("the file is empty, and the site can't be made without it")
		case info.Size() > maxTemplate:
			return nil, trouble(fmt.Sprintf("the file is larger than %d KB", maxTemplate>>10))
		}
		text, err := fs.ReadFile(layer, name)
		if err != nil {
			return nil, trouble(err.Error())
		}
		return text, nil
	}
	return nil, trouble("the file is missing")
}

// render fills one page.
func (l look) render(kind string, page any) ([]byte, *program.Problem) {
	t, ok := l.pages[kind]
	if !ok {
		return nil, nil // its parse error is already reported
	}
	out := sheets.Get().(*bytes.Buffer)
	defer sheets.Put(out)
	out.Reset()
	if err := t.ExecuteTemplate(out, "base.html", page); err != nil {
		p := templateProblem(kind, err)
		return nil, &p
	}
	return bytes.Clone(out.Bytes()), nil // no larger than it must be: thousands are kept
}

// sheets are buffers to write pages in.
var sheets = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// once makes the function by which a template takes in another that says the same on many
// pages: made for some data, it is kept for the next that are the same. Compared is what
// a template can see: the exported fields. Of 43,720 items on a hundred clients' session
// pages 240 differ (measured).
func once(t *template.Template) func(name string, data any) (template.HTML, error) {
	var mutex sync.Mutex
	made := map[string]template.HTML{}
	return func(name string, data any) (template.HTML, error) {
		key, err := json.Marshal(data)
		if err != nil {
			return "", err
		}
		key = append(key, name...)
		mutex.Lock()
		text, ok := made[string(key)]
		mutex.Unlock()
		if ok {
			return text, nil
		}
		var out strings.Builder
		if err := t.ExecuteTemplate(&out, name, data); err != nil {
			return "", err
		}
		mutex.Lock()
		defer mutex.Unlock()
		if len(made) >= mostKept {
			clear(made)
		}
		made[string(key)] = template.HTML(out.String())
		return made[string(key)], nil
	}
}

// mostKept bounds the memory, at some two thousand bytes each (our judgement).
const mostKept = 2000

// templateError is how the standard library begins its messages:
// "template: home.html:12:5: executing …", "html/template:home.html:3: …",
// columns from 0. Without a line the name is that of the frame, which says
// nothing.
var templateError = regexp.MustCompile(`^(?:html/template|template): ?([^:]+):(?:(\d+):)?(?:(\d+):)? (.*)$`)

// templateProblem finds file and line in an error of html/template.
func templateProblem(name string, err error) program.Problem {
	for inner := (text.ExecError{}); errors.As(err, &inner); { // of what was taken in by once, its own place
		err = inner.Err
	}
	p := program.Problem{Place: program.Place{File: "templates/" + name}, Message: err.Error(),
		Advice: "compare with the built-in template; removing your file brings that one back"}
	if m := templateError.FindStringSubmatch(err.Error()); m != nil {
		p.Message = m[4]
		if line, err := strconv.Atoi(m[2]); err == nil {
			p.File, p.Line = "templates/"+m[1], line
		}
		if column, err := strconv.Atoi(m[3]); err == nil {
			p.Column = column + 1
		}
	}
	return p
}
