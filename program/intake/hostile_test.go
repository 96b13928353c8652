package intake

import (
	"fmt"
	"slices"
	"sort"
	"strings"
	"testing"

	"gatepost/program"
)

// hostile is what no value may be; see mayBe for the exceptions.
var hostile = []string{".nan", ".inf", "null", "~", `""`, "[]", "{}", "[[]]", "{a: b}", "- 1", "-1", "1e9", "0x10", "012", "true",
	"*x", "&x 1", "!!int 3", "999999999 kg", "2027-02-30", "'", `"`, "{", "]", "@", "#", `"\u0000"`, "\x01"}

// mayBe lists values that are fine somewhere, though hostile elsewhere.
func mayBe(path, value string) bool {
	empty := value == `""` && (path == "health.guardian" || path == "health.cleared_by")
	words := path == "name" || path == "health.guardian" || strings.HasSuffix(path, ".what")
	return empty || words && (value == "999999999 kg" || value == "2027-02-30") || value == "true" && strings.HasSuffix(path, ".hard")
}

// Every single value of an assessment is replaced by every hostile one: each
// time something is wrong, on the very line or, where the file falls apart,
// somewhere in the file, and the client is left out. A folder is read with a client for
// each value, since reading the library costs more than reading them.
func TestHostileValues(t *testing.T) {
	const file = "content/clients/maren/assessment.yaml"
	lib, folder := library(t), sound(t)
	studio, _ := Read(folder, lib, nil)
	places := studio.Clients[0].Places
	text := string(folder[file].Data)
	for _, path := range leaves(places) {
		at := places[path]
		for i, value := range hostile {
			lines := strings.Split(text, "\n")
			lines[at.Line-1] = replaceAt(at, value)
			folder = with(folder, fmt.Sprintf("content/clients/h%d/assessment.yaml", i), strings.Join(lines, "\n"))
		}
		studio, problems := Read(folder, lib, nil)
		for i, value := range hostile {
			slug := fmt.Sprintf("h%d", i)
			own := slices.DeleteFunc(slices.Clone(problems), func(p program.Problem) bool { return p.File != "content/clients/"+slug+"/assessment.yaml" })
			read := slices.ContainsFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == slug })
			if read != mayBe(path, value) || own.Stop() == mayBe(path, value) {
				t.Errorf("%s: %s\n%s", path, value, reported(own))
			}
		}
	}
}

// leaves are the paths of single values.
func leaves(places program.Places) []string {
	var all []string
	for path := range places {
		leaf := path != ""
		for other := range places {
			leaf = leaf && !strings.HasPrefix(other, path+".") && !strings.HasPrefix(other, path+"[")
		}
		if leaf && path != "health.conditions" {
			all = append(all, path)
		}
	}
	sort.Strings(all)
	return all
}

// replaceAt puts another value in the place of the one that is there.
func replaceAt(at program.Place, value string) string {
	rest := at.Text[at.Column-1:]
	end := strings.IndexAny(rest, ",]}")
	if end < 0 || !strings.ContainsAny(at.Text[:at.Column-1], "[{") {
		end = len(rest)
	}
	return at.Text[:at.Column-1] + value + rest[end:]
}
