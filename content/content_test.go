package content

import (
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

// readAll gives every file of the built-in library by its path.
func readAll(t *testing.T) map[string]string {
	t.Helper()
	files := map[string]string{}
	err := fs.WalkDir(Library, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := fs.ReadFile(Library, name)
		files[name] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// The studio and its clients are the coach's, never built in.
func TestOnlyTheLibraryIsBuiltIn(t *testing.T) {
	for folder, want := range map[string]string{".": "de exercises pages roadmaps words", "de": "exercises pages roadmaps"} {
		entries, err := fs.ReadDir(Library, folder)
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, e := range entries {
			names = append(names, e.Name())
		}
		if got := strings.Join(names, " "); got != want {
			t.Errorf("built in, in %s: %s", folder, got)
		}
	}
	for name, text := range readAll(t) {
		for _, demo := range []string{"Tilda", "Roake", "Maren", "Joss", "Anselm", "Lantern"} {
			if strings.Contains(text, demo) {
				t.Errorf("%s names %s, who belongs to the demo", name, demo)
			}
		}
	}
}

// Words that promise, blame or push have no place on a coach's paper.
func TestWordsToAvoid(t *testing.T) {
	avoid := regexp.MustCompile(`(?i)\b(safe(ly|ty)?|guaranteed?|fail(ed|ure)|weak(ness|er)?|no pain,? no gain|perfect(ly)?|ideal weight)\b`)
	for name, text := range readAll(t) {
		for i, line := range strings.Split(text, "\n") {
			if word := avoid.FindString(line); word != "" {
				t.Errorf("%s:%d: %q", name, i+1, word)
			}
		}
	}
}

var link = regexp.MustCompile(`\]\(([^)#:]+)(#[^)]*)?\)`)

// Links in pages and exercises are paths of files that are there.
func TestLinksLeadSomewhere(t *testing.T) {
	files := readAll(t)
	for name, text := range files {
		for _, m := range link.FindAllStringSubmatch(text, -1) {
			if _, found := files[path.Join(path.Dir(name), m[1])]; !found {
				t.Errorf("%s links to %s, which is not there", name, m[1])
			}
		}
	}
}

var front = regexp.MustCompile(`(?m)^(\w+): (.*)$`)

// Somebody with sore wrists and nothing but a floor can train everything that a
// body can train that way. Pull-ups and rows under something need it; leaning,
// balancing and the steps themselves need hands.
func TestFloorAloneServes(t *testing.T) {
	wanted := []string{"wrists", "elbows", "shoulder blades", "push", "raise", "row", "rear shoulder",
		"straight-arm pull", "curl", "trunk", "compression", "straddle", "handstand line"}
	served := map[string]string{}
	for name, text := range readAll(t) {
		fields := map[string]string{}
		for _, m := range front.FindAllStringSubmatch(text, -1) {
			fields[m[1]] = m[2]
		}
		if fields["kit"] == "[]" && fields["grip"] == "none" {
			for _, purpose := range strings.Split(strings.Trim(fields["trains"], "[]"), ", ") {
				served[purpose] = name
			}
		}
	}
	for _, purpose := range wanted {
		if served[purpose] == "" {
			t.Errorf("nothing serves %q without kit and hands", purpose)
		}
	}
}

// The first cue is printed large on a card and is read at a glance.
func TestCuesAreShort(t *testing.T) {
	const longest = 44 // characters, our judgement: two lines of a card at arm's length
	heading := regexp.MustCompile(`\n## (Cues|Stichworte)\n`)
	for name, text := range readAll(t) {
		at := heading.FindStringIndex(text)
		if at == nil {
			continue
		}
		cues, _, _ := strings.Cut(text[at[1]:], "\n\n")
		list := strings.Split(cues, "\n")
		if len(list) < 3 || len(list) > 5 {
			t.Errorf("%s has %d cues; three to five are read", name, len(list))
		}
		for _, cue := range list {
			if utf8.RuneCountInString(strings.TrimPrefix(cue, "- ")) > longest {
				t.Errorf("%s: the cue is too long: %s", name, cue)
			}
		}
	}
}

// german are the files in German, with the originals they translate.
func german(t *testing.T) map[string]string {
	t.Helper()
	originals := map[string]string{"words/de.yaml": "words/en.yaml"}
	for name := range readAll(t) {
		if original, ok := strings.CutPrefix(name, "de/"); ok {
			originals[name] = original
		}
	}
	if len(originals) < 60 {
		t.Fatalf("only %d files are in German", len(originals))
	}
	return originals
}

// What the words to avoid are in German.
func TestGermanWordsToAvoid(t *testing.T) {
	avoid := regexp.MustCompile(`(?i)(^|[^\pL])(un)?(sicher\pL*|garantie\pL*|versag\pL*|schw(ach|äch)\pL*|perfekt\pL*|ideal\pL*)`)
	files := readAll(t)
	for name := range german(t) {
		for i, line := range strings.Split(files[name], "\n") {
			if word := avoid.FindString(line); word != "" {
				t.Errorf("%s:%d: %q", name, i+1, word)
			}
		}
	}
}

var figure = regexp.MustCompile(`\d+([.,]\d+)?`)

// figures are the numbers of a text in order of size, with a decimal point.
func figures(text string) string {
	found := figure.FindAllString(strings.ReplaceAll(text, "\\u00a0", " "), -1)
	for i := range found {
		found[i] = strings.ReplaceAll(found[i], ",", ".")
	}
	slices.Sort(found)
	return strings.Join(found, " ")
}

// told is what a file tells readers: without front matter, and of a road map
// the text that belongs to it.
func told(name, text string) string {
	if _, body, ok := strings.Cut(text, "\nbody: |\n"); ok {
		return regexp.MustCompile(`(?m)^[a-z]+:`).Split(body, 2)[0]
	}
	if strings.HasSuffix(name, ".md") {
		return text[strings.LastIndex(text, "\n---\n"):]
	}
	return text
}

// A translation says the same figures as its original.
func TestTranslationsKeepTheFigures(t *testing.T) {
	emergency := strings.NewReplacer(", in der EU 112", "")
	files := readAll(t)
	for name, original := range german(t) {
		got, want := told(name, emergency.Replace(files[name])), told(original, files[original])
		if diff := cmp.Diff(figures(want), figures(got)); diff != "" {
			t.Errorf("%s (-original +translation):\n%s", name, diff)
		}
	}
}

// German typography: „these“ quotation marks, a space that does not break
// between a number and its unit (DIN 5008), a decimal comma.
func TestGermanTypography(t *testing.T) {
	faults := map[string]*regexp.Regexp{
		"quotation mark":    regexp.MustCompile(`[”’]|“\pL|\pL„`),
		"a space may break": regexp.MustCompile(`\d (cm|kg|m|s|min|h|%)([^\pL]|$)`),
		"decimal point":     regexp.MustCompile(`\d\.\d`),
		"hyphen for a dash": regexp.MustCompile(`\pL - \pL|\d-\d`),
	}
	files := readAll(t)
	names := slices.Collect(maps.Keys(german(t)))
	for _, pattern := range []string{"de/programs/*.yaml", "de/notes/*.md"} { // of the demo
		own, _ := filepath.Glob(pattern)
		if len(own) == 0 {
			t.Errorf("there is no %s", pattern)
		}
		for _, name := range own {
			text, _ := os.ReadFile(name)
			files[name], names = strings.ReplaceAll(string(text), ">-", ""), append(names, name)
		}
	}
	for _, name := range names {
		for i, line := range strings.Split(files[name], "\n") {
			for fault, form := range faults {
				if found := form.FindString(line); found != "" {
					t.Errorf("%s:%d: %s: %q", name, i+1, fault, found)
				}
			}
		}
	}
}

var (
	sectionLine = regexp.MustCompile(`^([a-z_]+):$`)
	wordLine    = regexp.MustCompile(`^  ([^:]+): (.*)$`)
	placeholder = regexp.MustCompile(`\{[a-z_]+\}`)
)

// placeholders are the {names} of every word of a file, by section.word, sorted.
func placeholders(text string) map[string]string {
	all, section := map[string]string{}, ""
	for _, line := range strings.Split(text, "\n") {
		if at := sectionLine.FindStringSubmatch(line); at != nil {
			section = at[1]
		} else if at := wordLine.FindStringSubmatch(line); at != nil {
			names := placeholder.FindAllString(at[2], -1)
			slices.Sort(names)
			all[section+"."+at[1]] = strings.Join(names, " ")
		}
	}
	return all
}

// German has every word of English, no other, and each with the same placeholders.
func TestGermanHasEveryWord(t *testing.T) {
	files := readAll(t)
	want, got := placeholders(files["words/en.yaml"]), placeholders(files["words/de.yaml"])
	if len(want) < 500 {
		t.Fatalf("only %d words are read", len(want))
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("words (-English +German):\n%s", diff)
	}
}

// What terminals say of a log is translated, not copied; a text of placeholders alone is
// the same in every language.
func TestTerminalsSpeakGerman(t *testing.T) {
	files := readAll(t)
	english, german := said(files["words/en.yaml"]), said(files["words/de.yaml"])
	if len(english) < 200 {
		t.Fatalf("only %d texts are read", len(english))
	}
	for key, text := range english {
		if letters := placeholder.ReplaceAllString(text, ""); text == german[key] && strings.ContainsFunc(letters, unicode.IsLetter) {
			t.Errorf("%s is not translated: %s", key, text)
		}
	}
}

// said are the texts of the sections that terminals are written from.
func said(text string) map[string]string {
	all, section := map[string]string{}, ""
	for _, line := range strings.Split(text, "\n") {
		if at := sectionLine.FindStringSubmatch(line); at != nil {
			section = at[1]
		} else if at := wordLine.FindStringSubmatch(line); at != nil && (section == "terminal" || section == "fault") {
			all[section+"."+at[1]] = at[2]
		}
	}
	return all
}
