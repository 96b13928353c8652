package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Every file of the site is the same to the byte for two bodies of one plan, at opposite
// corners of the fifty that have it: pages with their data for machines, calendar, documents
// with the codes on them, the worker's list. One kilogram further it is not.
func TestTheSiteOfFiftyBodies(t *testing.T) {
	t.Parallel()
	folder := copyOfDemo(t, "")
	file := filepath.Join(folder, "content/clients/maren/assessment.yaml")
	written, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	of := func(mass, height string) map[string]string {
		text := strings.NewReplacer("mass: 58 kg", "mass: "+mass, "height: 166 cm", "height: "+height).Replace(string(written))
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		build(t, folder, "publish")
		all := map[string]string{}
		for _, path := range found(t, folder, "") {
			if !strings.Contains(path, "/site/") {
				continue
			}
			b, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			all[path] = string(b)
		}
		return all
	}
	differ := func(x, y map[string]string) (names []string) {
		for path, text := range x {
			if y[path] != text {
				names = append(names, strings.TrimPrefix(path, folder))
			}
		}
		return names
	}
	one := of("58 kg", "160 cm")
	other := of("62 kg", "169 cm")
	if names := differ(one, other); len(names) > 0 || len(one) != len(other) || len(one) < 150 {
		t.Errorf("of %d and %d files these tell the body: %v", len(one), len(other), names)
	}
	own := 0
	for _, name := range differ(one, of("63 kg", "169 cm")) {
		if own++; !strings.Contains(name, "/c/k7v2qm9xw4tdhz3p/") {
			t.Errorf("%s depends on a client's body", name)
		}
	}
	if own == 0 {
		t.Error("no page depends on the body at all")
	}
}
