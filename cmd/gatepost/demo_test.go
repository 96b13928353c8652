package main

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/iotest"
	"time"
)

// demo builds the demo studio into a new folder and gives that folder.
func demo(t testing.TB) string {
	t.Helper()
	folder := copyOfDemo(t, "*")
	build(t, folder)
	return folder
}

// built is the folder of the demo studio with the public programs of a pattern, built once
// for all tests that only read it.
func built(t *testing.T, programs string) string {
	t.Helper()
	one := builtWith[programs]
	one.Do(func() {
		var err error
		if one.folder, err = os.MkdirTemp("", "gatepost-demo"); err != nil {
			t.Fatal(err)
		}
		copyDemo(t, one.folder, programs)
		build(t, one.folder)
	})
	return one.folder
}

type once struct {
	sync.Once
	folder string // removed when the tests are over
}

var builtWith = map[string]*once{"*": {}, oneProgram: {}}

// copyOfDemo copies what of the demo studio is not built in into a new folder: the
// coach, the clients, and the public programs of a pattern. These are two thirds of the
// work, so whoever asks nothing of them takes one or none.
func copyOfDemo(t testing.TB, programs string) string {
	t.Helper()
	folder := t.TempDir()
	copyDemo(t, folder, programs)
	return folder
}

const (
	everyClient  = "clients/*/assessment.yaml"
	everyProgram = "programs/*.yaml"
)

const oneProgram = "bare-floor"

func copyDemo(t testing.TB, folder, programs string) {
	t.Helper()
	if err := os.CopyFS(folder+"/content/clients", os.DirFS("../../content/clients")); err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("../../content/programs/" + programs + ".yaml")
	if err != nil || len(files) == 0 && programs != "" {
		t.Fatalf("no public program is %s: %v", programs, err)
	}
	german, _ := filepath.Glob("../../content/de/programs/" + programs + ".yaml")
	for _, file := range slices.Concat(files, german, []string{"../../content/studio.yaml"}) {
		b, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		put(t, folder, strings.TrimPrefix(filepath.ToSlash(file), "../../"), string(b))
	}
}

// shorten makes the blocks of some files four weeks long, a third of the work, for whoever
// asks nothing of the later weeks.
func shorten(t testing.TB, folder, files string) {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(folder, "content", files))
	if err != nil || len(found) == 0 {
		t.Fatalf("no file is %s: %v", files, err)
	}
	for _, file := range found {
		b, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		text := regexp.MustCompile(`(?m)^ *weeks: .*\n`).ReplaceAll(b, nil)
		text = regexp.MustCompile(`(?m)^( *)minutes: .*`).ReplaceAll(text, []byte("$0\n${1}weeks: 4"))
		if err := os.WriteFile(file, text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// build runs the whole job on a folder, without clock or chance: neither may be
// asked for, where the day of what is printed is given.
func build(t testing.TB, folder string, more ...string) {
	t.Helper()
	if len(more) == 0 || more[0] == "print" {
		more = append(more, "--on", "2027-01-10")
	}
	var err bytes.Buffer
	around := surroundings{out: io.Discard, err: &err, builtIn: builtIn,
		now:    func() time.Time { t.Error("the clock was asked"); return time.Time{} },
		chance: iotest.ErrReader(fs.ErrPermission)}
	if code := run(append(more, "--folder", folder), around); code != 0 {
		t.Fatalf("exit code %d:\n%s", code, err.String())
	}
}

// found lists the files below the output whose names end so.
func found(t *testing.T, folder, ending string) []string {
	t.Helper()
	var paths []string
	err := filepath.WalkDir(filepath.Join(folder, outputFolder), func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() && strings.HasSuffix(path, ending) {
			paths = append(paths, path)
		}
		return err
	})
	if err != nil || len(paths) == 0 {
		t.Fatalf("no file ends in %s: %v", ending, err)
	}
	return paths
}

// tool finds an outside checker. Where GATEPOST_REQUIRE_TOOLS is 1 it must be
// there, otherwise the test is left out, and says so.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	switch {
	case err == nil:
		return path
	case os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1":
		t.Fatalf("%s is required and not installed", name)
	}
	t.Skipf("left out: %s is not installed", name)
	return ""
}

// sameFiles reports the first file of one folder that another has not, or not with the
// same bytes; and a file too many.
func sameFiles(one, two string) error {
	count := [2]int{}
	for i, folder := range []string{one, two} {
		err := filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
			name, _ := filepath.Rel(folder, path)
			if err != nil || entry.IsDir() {
				return err
			}
			switch filepath.ToSlash(name) {
			case ".gatepost/lock", ".gatepost/prints": // the process's number; what is known of several parts
				return nil
			}
			if count[i]++; i == 1 {
				return nil
			}
			return sameBytes(path, filepath.Join(two, name))
		})
		if err != nil {
			return err
		}
	}
	if count[0] != count[1] || count[0] == 0 {
		return fmt.Errorf("%d files in one folder, %d in the other", count[0], count[1])
	}
	return nil
}

func sameBytes(one, two string) error {
	a, err := os.ReadFile(one)
	if err != nil {
		return err
	}
	b, err := os.ReadFile(two)
	if err == nil && !bytes.Equal(a, b) {
		err = fmt.Errorf("%s and %s differ", one, two)
	}
	return err
}

// Every PDF of the demo is sound to qpdf, has text for poppler's pdftotext, and
// only embedded fonts with a map to Unicode by its pdffonts. The one-page plan
// is one page.
func TestPaperOfTheDemo(t *testing.T) {
	qpdf, pdftotext, pdffonts := tool(t, "qpdf"), tool(t, "pdftotext"), tool(t, "pdffonts")
	for _, path := range found(t, built(t, "*"), ".pdf") {
		if out, err := exec.Command(qpdf, "--check", path).CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", path, err, out)
		}
		if out, err := exec.Command(pdftotext, path, "-").Output(); err != nil || len(bytes.TrimSpace(out)) < 100 {
			t.Errorf("%s: little text: %v\n%s", path, err, out)
		}
		checkFonts(t, pdffonts, path)
		if strings.HasSuffix(path, "one-page.pdf") {
			if out, _ := exec.Command(qpdf, "--show-npages", path).Output(); strings.TrimSpace(string(out)) != "1" {
				t.Errorf("%s has %s pages", path, out)
			}
		}
	}
}

// checkFonts reads pdffonts' table: two lines of head, then one a font, with
// "emb", "sub" and "uni" as the columns before the object's two numbers.
func checkFonts(t *testing.T, pdffonts, path string) {
	t.Helper()
	out, err := exec.Command(pdffonts, path).Output()
	rows := strings.Split(strings.TrimSpace(string(out)), "\n")
	if err != nil || len(rows) < 3 {
		t.Fatalf("%s: no fonts: %v\n%s", path, err, out)
	}
	for _, row := range rows[2:] {
		columns := strings.Fields(row)
		if n := len(columns); n < 6 || columns[n-5] != "yes" || columns[n-3] != "yes" {
			t.Errorf("%s: a font is not embedded, or has no map to Unicode: %s", path, row)
		}
	}
}

// Every page of the demo's site pleases the Nu HTML checker, without error or
// warning. It reads them from a server on the loopback address, for it knows no
// origin for files, which the pages' security policy asks for.
func TestSiteOfTheDemo(t *testing.T) {
	java := tool(t, "java")
	jar := os.Getenv("GATEPOST_VNU")
	if jar == "" {
		jar = "../../.ci/node_modules/vnu-jar/build/dist/vnu.jar" // where .ci/run puts it
	}
	if _, err := os.Stat(jar); err != nil {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			t.Fatal(err)
		}
		t.Skip("left out: the page checker is not installed; GATEPOST_VNU may name its jar")
	}
	site := filepath.Join(built(t, "*"), outputFolder, "site")
	server := httptest.NewServer(http.FileServer(http.Dir(site)))
	defer server.Close()
	args := []string{"-Dnu.validator.servlet.allow-forbidden-hosts=true", "-jar", jar, "--also-check-css"}
	for _, path := range found(t, filepath.Dir(filepath.Dir(site)), ".html") {
		name, _ := filepath.Rel(site, path)
		args = append(args, server.URL+"/"+strings.TrimSuffix(filepath.ToSlash(name), "index.html"))
	}
	if out, err := exec.Command(java, args...).CombinedOutput(); err != nil || len(out) > 0 {
		t.Errorf("%v\n%s", err, out)
	}
}

// BenchmarkFirst is the whole job for the demo studio, into an empty folder;
// BenchmarkAgain the same where nothing has changed.
func BenchmarkFirst(b *testing.B) {
	for b.Loop() {
		demo(b)
	}
}

func BenchmarkAgain(b *testing.B) {
	folder := demo(b)
	for b.Loop() {
		build(b, folder)
	}
}
