package intake

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"gatepost/program"
)

// onDisk writes the sound folder to a real one and opens it as the command does.
func onDisk(t *testing.T) (dir string, read func() string) {
	t.Helper()
	dir = t.TempDir()
	for name, f := range sound(t) {
		write(t, dir, name, string(f.Data))
	}
	return dir, func() string {
		root, err := os.OpenRoot(dir)
		if err != nil {
			t.Fatal(err)
		}
		defer root.Close()
		_, problems := Read(root.FS(), library(t), nil)
		return reported(problems)
	}
}

func write(t *testing.T, dir, name, text string) {
	t.Helper()
	file := filepath.Join(dir, name)
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestOnDisk(t *testing.T) {
	_, read := onDisk(t)
	if got := read(); got != "" {
		t.Error(got)
	}
}

// A link that leads out of the folder is refused, one that stays within is
// followed.
func TestLinks(t *testing.T) {
	dir, read := onDisk(t)
	outside := t.TempDir()
	write(t, outside, "assessment.yaml", "name: Somebody else\n")
	for link, target := range map[string]string{
		"content/clients/away":              outside,
		"content/clients/file":              "maren/assessment.yaml",
		"content/exercises/planche-lean.md": filepath.Join(outside, "assessment.yaml"),
		"content/pages":                     outside,
		"content/clients/nowhere":           "no-such-folder",
	} {
		os.MkdirAll(filepath.Join(dir, filepath.Dir(link)), 0o755)
		if err := os.Symlink(target, filepath.Join(dir, link)); err != nil {
			t.Skip("no symbolic links here: ", err)
		}
	}
	got := read()
	mustContain(t, got, "content/clients/away: this cannot be read", "content/exercises/planche-lean.md: the file cannot be read",
		"content/pages: the folder cannot be read", "content/clients/nowhere: this cannot be read", "content/clients/file: warning")
	if strings.Contains(got, "Somebody") {
		t.Error("a file outside was read")
	}
	dir, read = onDisk(t)
	os.Rename(filepath.Join(dir, "content/clients"), filepath.Join(dir, "people"))
	if err := os.Symlink("../people", filepath.Join(dir, "content/clients")); err != nil {
		t.Fatal(err)
	}
	if got := read(); got != "" {
		t.Error("a link within the folder was not followed: ", got)
	}
}

// A named pipe would keep a reader waiting without end.
func TestPipe(t *testing.T) {
	dir, read := onDisk(t)
	file := filepath.Join(dir, "content/clients/maren/assessment.yaml")
	os.Remove(file)
	if err := syscall.Mkfifo(file, 0o644); err != nil {
		t.Skip("no named pipes here: ", err)
	}
	mustContain(t, read(), "content/clients/maren/assessment.yaml: the file cannot be read: it is not a plain file")
}

func TestFolderInPlaceOfFile(t *testing.T) {
	dir, read := onDisk(t)
	os.Remove(filepath.Join(dir, "content/studio.yaml"))
	os.MkdirAll(filepath.Join(dir, "content/studio.yaml"), 0o755)
	mustContain(t, read(), "content/studio.yaml: the file cannot be read: it is not a plain file")
}

// Files that are no text of a sensible size. The limits are our judgement.
func TestRubbish(t *testing.T) {
	const file = "content/clients/maren/assessment.yaml"
	for name, c := range map[string]struct{ text, says string }{
		"two megabytes":   {"name: " + strings.Repeat("x", 2<<20), "the file is too big"},
		"binary":          {"name: Maren\nmass: \x00\x01\x02", ":2:7: the file is not UTF-8 text"},
		"Latin-1":         {"name: Zo\xeb\n", ":1:9: the file is not UTF-8 text"},
		"UTF-16":          {"\xff\xfen\x00a\x00", "the file is UTF-16 text"},
		"deep lists":      {strings.Repeat("[\n", 100_000), "this [ is never closed"},
		"deep groups":     {strings.Repeat("{a:\n", 100_000), "this { is never closed"},
		"alias bomb":      {"a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n", `there is no key "a" here`},
		"alias of itself": {"name: &n [*n]\n", "uses an anchor or alias"},
		"merge key":       {"<<: {name: Maren}\n", `there is no key "<<" here`},
		"long line":       {"name: Maren # " + strings.Repeat("x", 30_000), "line is too long"},
		"many keys":       {strings.Repeat("keyword: 1\n", 5_000), "more problems in this file than are listed"},
		"terminal escape": {"name: \"\\e[31mMaren\"\n", "control character"},
		"YAML version":    {"%YAML 9.9\n---\nname: Maren\n", "cannot be read"},
	} {
		t.Run(name, func(t *testing.T) {
			studio, problems := Read(with(sound(t), file, c.text), library(t), nil)
			mustContain(t, reported(problems), file, c.says)
			if len(studio.Clients) > 0 || !problems.Stop() {
				t.Error("the client was read")
			}
		})
	}
}

// A byte-order mark and the line ends of other systems are no fault.
func TestForeignLineEnds(t *testing.T) {
	folder := sound(t)
	for name, f := range folder {
		f.Data = []byte("\ufeff" + strings.ReplaceAll(string(f.Data), "\n", "\r\n"))
		folder[name] = f
	}
	lib := library(t)
	for _, f := range lib {
		f.Data = []byte(strings.ReplaceAll(string(f.Data), "\n", "\r\n"))
	}
	studio, problems := Read(folder, lib, nil)
	if len(problems) > 0 || len(studio.Clients) != 1 || strings.Contains(studio.Library.Exercises[0].SetUp, "\r") {
		t.Error(reported(problems))
	}
}

// A file's text cannot make a terminal do things.
func TestReportIsPrintable(t *testing.T) {
	var problems program.Problems
	problems = append(problems, program.Problem{
		Place:   program.Place{File: "a\x1b[2J.yaml", Line: 1, Column: 2, Text: "x\x1b]0;y\a\tz"},
		Message: "m\x1b", Advice: "a\x9b"})
	if got := reported(problems); strings.ContainsAny(got, "\x1b\a\u009b") {
		t.Errorf("%q", got)
	}
}
