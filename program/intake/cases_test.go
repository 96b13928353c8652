package intake

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"gatepost/program"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write what the cases report now into their files")

// TestCases reads every file of testdata/cases. A case is a text archive: what
// it shows, then files to lay over the sound folder of testdata/folder.txtar, or
// changes to its files, then the report that is expected.
//
//	-- content/clients/joss/assessment.yaml --    a file of the coach's folder
//	-- change content/studio.yaml --              lines of the form  old => new
//	-- report --                                  empty: nothing is wrong
//
// In a change, \n is a line break, and an empty "new" takes text away.
func TestCases(t *testing.T) {
	cases, err := filepath.Glob("testdata/cases/*.txtar")
	if err != nil || len(cases) < 40 {
		t.Fatalf("%d cases found, %v", len(cases), err)
	}
	for _, file := range cases {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) { runCase(t, file) })
	}
}

func runCase(t *testing.T, file string) {
	c := readArchive(t, file)
	folder, want := laidOut(t, c)
	if want < 0 {
		t.Fatal("the case has no report")
	}
	built := library(t)
	if own, _ := fs.Glob(folder, "content/words/*"); own != nil { // they need not have every word of the published file
		built = files(t, "testdata/library.txtar")
		if strings.Contains(file, "words.") || strings.Contains(file, "-faults.") { // but those of faults
			for _, words := range []*fstest.MapFile{built["content/words/en.yaml"], folder[own[0]]} {
				words.Data = append(slices.Clone(words.Data), "\n"+wordsUnder(t, "fault")...)
			}
		}
	}
	_, problems := Read(folder, built, zeros{})
	got := reported(problems)
	if diff := cmp.Diff(c.files[want].text, got); diff != "" && !*update {
		t.Errorf("report (-want +got):\n%s", diff)
	}
	if *update {
		c.files[want].text = got
		if err := os.WriteFile(file, []byte(c.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// laidOut is the sound folder with a case laid over it, and the index of its report;
// -1: it has none.
func laidOut(t testing.TB, c archive) (folder fstest.MapFS, report int) {
	folder = sound(t)
	report = -1
	for i, f := range c.files {
		change, isChange := strings.CutPrefix(f.name, "change ")
		switch {
		case f.name == "report":
			report = i
		case isChange:
			folder[change] = &fstest.MapFile{Data: changed(t, folder[change], f.text)}
		default:
			folder[f.name] = &fstest.MapFile{Data: []byte(f.text)}
		}
	}
	return folder, report
}

// clientOfCase is the client whom a sound case adds, and their studio.
func clientOfCase(t testing.TB, name string) (*program.Studio, *program.Assessment) {
	t.Helper()
	folder, _ := laidOut(t, readArchive(t, "testdata/cases/"+name+".txtar"))
	studio, problems := Read(folder, library(t), nil)
	if len(problems) > 0 || len(studio.Clients) != 2 {
		t.Fatal(reported(problems))
	}
	return &studio, &studio.Clients[0]
}

// changed applies lines "old => new" to a file; each old text must occur once.
func changed(t testing.TB, file *fstest.MapFile, changes string) []byte {
	t.Helper()
	if file == nil {
		t.Fatal("a change to a file that is not there")
	}
	text := string(file.Data)
	unescape := strings.NewReplacer(`\n`, "\n", `\t`, "\t")
	for line := range strings.Lines(changes) {
		old, replacement, ok := strings.Cut(strings.TrimSuffix(line, "\n"), " =>")
		old, replacement = unescape.Replace(old), unescape.Replace(strings.TrimPrefix(replacement, " "))
		if n := strings.Count(text, old); !ok || n != 1 {
			t.Fatalf("%q occurs %d times", old, n)
		}
		text = strings.Replace(text, old, replacement, 1)
	}
	return []byte(text)
}

// sound is the folder that cases start from, fresh.
func sound(t testing.TB) fstest.MapFS { return files(t, "testdata/folder.txtar") }

// library is the built-in library of the cases, fresh. Its words are few, so that a
// case can have words of its own; what is wrong is said in those of the published file.
func library(t testing.TB) fstest.MapFS {
	lib := files(t, "testdata/library.txtar")
	few := lib["content/words/en.yaml"]
	few.Data = append(few.Data, wordsUnder(t, "terminal")+wordsUnder(t, "fault")...)
	return lib
}

// wordsUnder are one section of the published English words file.
func wordsUnder(t testing.TB, name string) string {
	all := published(t, "en")
	from := strings.Index(all, "\n"+name+":\n")
	return all[from+1 : from+strings.Index(all[from:], "\n\n")+1]
}

// published is the words file of a language as it is built in.
func published(t testing.TB, language string) string {
	t.Helper()
	text, err := os.ReadFile("../../content/words/" + language + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// inEnglish are the words in which tests read reports.
var inEnglish = sync.OnceValue(func() program.Words {
	return ReadWords(fstest.MapFS{}, os.DirFS("../.."))
})

func files(t testing.TB, file string) fstest.MapFS {
	t.Helper()
	a := readArchive(t, file)
	files := fstest.MapFS{}
	for _, f := range a.files {
		files[f.name] = &fstest.MapFile{Data: []byte(f.text)}
	}
	return files
}

// with lays one file over a folder.
func with(folder fstest.MapFS, file, text string) fstest.MapFS {
	folder = maps.Clone(folder)
	folder[file] = &fstest.MapFile{Data: []byte(text)}
	return folder
}

// zeros is a source of chance that never surprises.
type zeros struct{}

func (zeros) Read(p []byte) (int, error) { clear(p); return len(p), nil }

// reported is the report of problems as text.
func reported(problems program.Problems) string {
	var b bytes.Buffer
	Report(&b, inEnglish(), problems)
	return b.String()
}

func mustContain(t *testing.T, report string, parts ...any) {
	t.Helper()
	for _, part := range parts {
		if !strings.Contains(report, fmt.Sprint(part)) {
			t.Errorf("%q is not in the report:\n%s", part, report)
		}
	}
}
