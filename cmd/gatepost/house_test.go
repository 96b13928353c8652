package main

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// mayImport is the import table: which of our packages each one may know.
// Words know nothing, numbers know nothing; only the planner knows both.
// A package that is not in it has no place in the house yet.
var mayImport = map[string][]string{
	"cmd/floor":                     {"cmd/study/people", "program", "program/intake", "program/planner"},
	"cmd/gatepost":                  {"*"},
	"cmd/study":                     {"cmd/study/lives", "cmd/study/people", "program", "program/intake", "program/planner"},
	"cmd/study/lives":               {"cmd/study/people", "program", "program/planner"},
	"cmd/study/people":              {"program", "program/mechanics"},
	"content":                       {},
	"program":                       {},
	"program/figure":                {"program"},
	"program/intake":                {"program"},
	"program/ladder":                {"program", "program/mechanics", "program/strength"},
	"program/mechanics":             {},
	"program/planner":               {"program", "program/ladder", "program/strength"},
	"program/posture":               {"program", "program/ladder", "program/mechanics"},
	"program/publish/paper":         {"program", "program/publish/view", "program/figure"},
	"program/publish/preview":       {},
	"program/publish/site":          {"program", "program/publish/view", "program/figure"},
	"program/publish/store":         {},
	"program/publish/view":          {"program"},
	"program/publish/view/viewtest": {"program"},
	"program/steady":                {},
	"program/strength":              {},
	"templates":                     {},
}

// onlyIn names the one home of each dependency with side effects or traps.
var onlyIn = map[string][]string{
	"github.com/fsnotify/fsnotify": {"cmd/gatepost"},
	"github.com/jung-kurt/gofpdf":  {"program/publish/paper"},
	"github.com/spf13/cobra":       {"cmd/gatepost"},
	"github.com/yuin/goldmark":     {"program/publish/site"},
	"gopkg.in/yaml.v3":             {"program/intake"},

	// clock, chance and disk come in by argument
	"crypto/rand":   {"cmd/gatepost"},
	"math/rand":     {"cmd/study", "cmd/study/people"},
	"math/rand/v2":  {"cmd/study", "cmd/study/people"},
	"net/http":      {"program/publish/preview"},
	"os":            {"cmd/floor", "cmd/gatepost", "cmd/study", "program/publish/store", "program/publish/view/viewtest"},
	"os/exec":       {"cmd/floor"},
	"path/filepath": {"cmd/floor", "cmd/gatepost", "cmd/study", "program/publish/store", "program/publish/view/viewtest"},
	"syscall":       {"cmd/floor", "program/publish/store"},
}

// clocks are what of package time asks for, or waits on, the present.
var clocks = []string{"Now", "Since", "Until", "After", "AfterFunc", "Sleep", "Tick", "NewTimer", "NewTicker"}

// source is one Go file that is no test.
type source struct {
	dir  string // below the module's root
	file *ast.File
	set  *token.FileSet
}

func (s source) at(node ast.Node) token.Position { return s.set.Position(node.Pos()) }

// house parses every Go file of the module that is no test.
func house(t *testing.T) []source {
	t.Helper()
	root := os.DirFS("../..")
	var all []source
	err := fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && name != "." && (strings.HasPrefix(entry.Name(), ".") || entry.Name() == "testdata" || name == "output"):
			return fs.SkipDir
		case entry.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go"):
			return nil
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, filepath.Join("../..", name), nil, parser.ParseComments)
		all = append(all, source{dir: path.Dir(name), file: file, set: set})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 20 {
		t.Fatalf("only %d files found: is this the module's folder?", len(all))
	}
	return all
}

func TestImportTable(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range house(t) {
		seen[s.dir] = true
		allowed, known := mayImport[s.dir]
		if !known {
			t.Errorf("%s: this package is not in the import table", s.dir)
			continue
		}
		for _, spec := range s.file.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			if ours, ok := strings.CutPrefix(name, "gatepost/"); ok {
				if !slices.Contains(allowed, ours) && !slices.Contains(allowed, "*") {
					t.Errorf("%s: %s may not import %s", s.at(spec), s.dir, ours)
				}
				continue
			}
			checkHome(t, s, spec, name)
		}
	}
	for dir := range mayImport {
		if !seen[dir] {
			t.Errorf("%s is in the import table and nowhere else", dir)
		}
	}
}

// Tests that draw examples draw the same ones every time.
func TestDrawnExamplesAreSteady(t *testing.T) {
	tests, err := filepath.Glob("../../program/*/*_test.go")
	deeper, _ := filepath.Glob("../../program/*/*/*_test.go")
	if err != nil || len(tests) < 20 {
		t.Fatal(len(tests), err)
	}
	draws, steady := map[string]bool{}, map[string]bool{}
	for _, name := range append(tests, deeper...) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		dir := filepath.Dir(name)
		draws[dir] = draws[dir] || strings.Contains(string(text), `"pgregory.net/rapid"`)
		steady[dir] = steady[dir] || strings.Contains(string(text), `"gatepost/program/steady"`)
	}
	for dir := range draws {
		if draws[dir] && !steady[dir] {
			t.Errorf("%s: its tests draw examples and do not import program/steady", dir)
		}
	}
}

// checkHome refuses a guarded import, or a package below one, outside its home.
func checkHome(t *testing.T, s source, spec *ast.ImportSpec, name string) {
	t.Helper()
	for guarded, homes := range onlyIn {
		if (name == guarded || strings.HasPrefix(name, guarded+"/")) && !slices.Contains(homes, s.dir) {
			t.Errorf("%s: only %v may import %s", s.at(spec), homes, guarded)
		}
	}
}

func TestOnlyTheCommandHasAClock(t *testing.T) {
	for _, s := range house(t) {
		if s.dir == "cmd/gatepost" {
			continue
		}
		ast.Inspect(s.file, func(node ast.Node) bool {
			if call, ok := node.(*ast.SelectorExpr); ok {
				if from, ok := call.X.(*ast.Ident); ok && from.Name == "time" && slices.Contains(clocks, call.Sel.Name) {
					t.Errorf("%s: time.%s outside the command", s.at(node), call.Sel.Name)
				}
			}
			return true
		})
	}
}

// Every package comment is its specification; its first sentence says what the
// package is, in the form that the go/doc package documents.
func TestEveryPackageIsSpecified(t *testing.T) {
	comments := map[string]string{}
	for _, s := range house(t) {
		if s.file.Doc != nil {
			comments[s.dir] += s.file.Doc.Text()
		} else if _, ok := comments[s.dir]; !ok {
			comments[s.dir] = ""
		}
	}
	for dir, text := range comments {
		first := new(doc.Package).Synopsis(text)
		want := "Package " + path.Base(dir) + " "
		if strings.HasPrefix(dir, "cmd/") {
			want = "Gatepost "
		}
		if !strings.HasPrefix(first, want) || len(text) < 200 {
			t.Errorf("%s: the package comment must specify it and begin with %q; it begins %q", dir, want, first)
		}
	}
}
