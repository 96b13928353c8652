package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// What is linked into the program, on any system it is built for, has its licence in it,
// word for word as its module ships it; and nothing else has.
func TestLicencesOfAllThatIsInside(t *testing.T) {
	inside, complete := map[string]string{"go": ""}, true
	for _, system := range []string{"linux", "darwin", "windows"} {
		list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Dir}}{{end}}{{end}}", ".")
		list.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0", "GOPROXY=off")
		out, err := list.Output()
		if err != nil {
			t.Logf("left out: modules that only %s needs are not on this machine", system)
			complete = false
			continue
		}
		for line := range strings.Lines(string(out)) {
			if module, dir, ok := strings.Cut(strings.TrimSpace(line), " "); ok {
				inside[module] = dir
			}
		}
	}
	for module, dir := range inside {
		shipped, err := licences.ReadFile("licences/" + strings.ReplaceAll(module, "/", "_") + ".txt")
		if err != nil {
			t.Errorf("%s is linked in: %v", module, err)
		}
		for _, pattern := range []string{"LICENSE*", "NOTICE", "PATENTS", "roboto/ttfs/LICENSE"} {
			files, _ := filepath.Glob(filepath.Join(dir, pattern))
			for _, file := range files {
				if text, _ := os.ReadFile(file); dir != "" && !bytes.Contains(shipped, text) {
					t.Errorf("%s of %s is not shipped", filepath.Base(file), module)
				}
			}
		}
	}
	if files, _ := filepath.Glob("licences/*.txt"); complete && len(files) != len(inside) {
		t.Errorf("%d licences for %d modules", len(files), len(inside))
	}
	var out bytes.Buffer
	if err := printLicences(&out); err != nil || !strings.Contains(out.String(), "eliasnaur.com/font\n==================\n") {
		t.Errorf("printed: %v", err)
	}
}
