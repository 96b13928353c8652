package main

import (
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	_ "gatepost/program/steady" // for its collector: what main sets is not set here

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

func TestMain(m *testing.M) {
	testscript.Main(tidy{m}, map[string]func(){"gatepost": main})
}

// tidy are all tests, and what they leave behind together.
type tidy struct{ *testing.M }

func (all tidy) Run() int {
	defer func() {
		for _, one := range builtWith {
			os.RemoveAll(one.folder)
		}
	}()
	return all.M.Run()
}

// TestScripts runs testdata/script: each file is a terminal session with the
// coach's files that it works on. Beside the commands of testscript there are
//
//	exits CODE COMMAND…      runs a command and compares its exit code
//	asnobody CODE COMMAND…   the same without root's rights
//	absent PATH WORD…        fails where any file below PATH has one of the words
//	valid FILE [SCHEMA]      compares a program, or another JSON, with its published schema
//	studio WHO…              copies the demo studio into the folder with these clients and public programs; all for every client
//	asbuilt PATH             compares an output, byte by byte, with what the tests' own process makes of the demo with one public program
//	withoutlogs              takes the logs of all clients away
//	unended FILE             takes the line break at a file's end away
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(env *testscript.Env) error {
			env.Setenv("REPO", filepath.Dir(filepath.Dir(here(t))))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "asnobody": asNobody, "absent": absent, "valid": valid, "studio": studio, "asbuilt": asBuilt(t), "withoutlogs": withoutLogs, "unended": unended,
			"copyall": copyAll, "replace": replace,
		},
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
	})
}

func here(t *testing.T) string {
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND…")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	var exit *exec.ExitError
	if err := ts.Exec(args[1], args[2:]...); errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("%s exits with %d, want %d", strings.Join(args[1:], " "), got, want)
	}
}

// packed is what a PDF does not say in plain letters: its streams and the table of
// where its objects lie.
var packed = regexp.MustCompile(`(?s)\nstream\n.*?\nendstream|\nxref\n.*?\ntrailer|\nstartxref\n\d+`)

// absent reads every byte of every file, and every name. The text of a PDF is
// taken out by pdftotext, where that is installed.
func absent(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: absent PATH WORD…")
	}
	look := func(where, text string) {
		for _, word := range args[1:] {
			if strings.Contains(strings.ToLower(text), strings.ToLower(word)) {
				ts.Fatalf("%s contains %q", where, word)
			}
		}
	}
	seen := 0
	ts.Check(filepath.WalkDir(ts.MkAbs(args[0]), func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		seen++
		look("the name of "+path, filepath.Base(path))
		if strings.HasSuffix(path, ".pdf") { // packed bytes and offsets hold any four digits by chance
			look(path, packed.ReplaceAllString(ts.ReadFile(path), ""))
			look("the text of "+path, pdfText(ts, path))
		} else {
			look(path, ts.ReadFile(path))
		}
		return nil
	}))
	if seen == 0 {
		ts.Fatalf("there is no file below %s", args[0])
	}
}

func pdfText(ts *testscript.TestScript, path string) string {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			ts.Fatalf("pdftotext is required and not installed")
		}
		ts.Logf("left out: pdftotext is not installed, so the text of %s is not read", path)
		return ""
	}
	text, err := exec.Command(tool, path, "-").Output()
	ts.Check(err)
	return string(text)
}

// valid compares with the JSON Schema (2020-12, by its own declaration) that
// describes a program for other software.
func valid(ts *testscript.TestScript, neg bool, args []string) {
	name := "program.schema.json"
	if len(args) > 1 {
		name = args[1]
	}
	description, err := jsonschema.UnmarshalJSON(strings.NewReader(ts.ReadFile(ts.Getenv("REPO") + "/program/publish/view/" + name)))
	ts.Check(err)
	compiler := jsonschema.NewCompiler()
	ts.Check(compiler.AddResource("test:"+name, description)) // a path would be taken for an address, in which a space is none
	schema, err := compiler.Compile("test:" + name)
	ts.Check(err)
	value, err := jsonschema.UnmarshalJSON(strings.NewReader(ts.ReadFile(args[0])))
	ts.Check(err)
	ts.Check(schema.Validate(value))
}

// studio copies the demo's own files: a script that asks nothing of the others takes one
// client. The library is built in.
func studio(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: studio WHO…")
	}
	from, into := ts.Getenv("REPO")+"/content/", ts.MkAbs("content")+"/"
	for _, who := range args {
		part := "clients/" + who
		if who == "all" {
			part = "clients"
		}
		if _, err := os.Stat(from + part); err == nil {
			ts.Check(os.CopyFS(into+part, os.DirFS(from+part)))
			continue
		}
		copyTo(ts, from, into, "programs/"+who+".yaml")
	}
	copyTo(ts, from, into, "studio.yaml")
}

func copyTo(ts *testscript.TestScript, from, into, file string) {
	b, err := os.ReadFile(from + file)
	ts.Check(err)
	ts.Check(os.MkdirAll(filepath.Dir(into+file), 0o755))
	ts.Check(os.WriteFile(into+file, b, 0o644))
}

// asBuilt compares with the demo as the tests build it in their own process.
func asBuilt(t *testing.T) func(*testscript.TestScript, bool, []string) {
	return func(ts *testscript.TestScript, neg bool, args []string) {
		if neg || len(args) != 1 {
			ts.Fatalf("usage: asbuilt PATH")
		}
		ts.Check(sameFiles(filepath.Join(built(t, oneProgram), outputFolder), ts.MkAbs(args[0])))
	}
}

// unended makes a file end as one that was cut: text archives always end lines.
func unended(ts *testscript.TestScript, neg bool, args []string) {
	for _, file := range args {
		text := strings.TrimSuffix(ts.ReadFile(file), "\n")
		ts.Check(os.WriteFile(ts.MkAbs(file), []byte(text), 0o644))
	}
}

func withoutLogs(ts *testscript.TestScript, neg bool, args []string) {
	logs, err := filepath.Glob(ts.MkAbs("content/clients/*/log.csv"))
	ts.Check(err)
	for _, log := range logs {
		ts.Check(os.Remove(log))
	}
}

// copyAll copies a folder whole, where the shell may have no such command:
// copyall FROM TO.
func copyAll(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: copyall FROM TO")
	}
	ts.Check(os.CopyFS(ts.MkAbs(args[1]), os.DirFS(ts.MkAbs(args[0]))))
}

// replace changes every place of a text in a file, and wants one at least:
// replace OLD NEW FILE.
func replace(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: replace OLD NEW FILE")
	}
	file := ts.MkAbs(args[2])
	b, err := os.ReadFile(file)
	ts.Check(err)
	if !strings.Contains(string(b), args[0]) {
		ts.Fatalf("%s has no %q", args[2], args[0])
	}
	ts.Check(os.WriteFile(file, []byte(strings.ReplaceAll(string(b), args[0], args[1])), 0o644))
}
