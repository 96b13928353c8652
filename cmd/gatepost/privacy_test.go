package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// private is an assessment with a canary in every field that is nobody's
// business; Ann is the only part that may be published.
const private = `# canary comment, canary@example.org
name: Ann Canaryson
sex: female
born: 1987-09-21
measured: 2027-01-04
share: SHARE
page: k7f3q9w2m4x8d
body: {mass: 61.37 kg, height: 163.8 cm, arm_span: 171.9 cm, straddle: 113 deg, balance_point: 90.7 cm}
training:
  experience: 8 months
  other: [{day: tue, what: canary rowing, hard: true}]
  days: [mon, wed, fri]
  minutes: 60
health: {wrists: sore, elbows: fine, shoulders: fine, conditions: [canary disease], cleared_by: "Dr. Canary, 2027-01-02", guardian: Canary Senior}
goal: {skill: planche, step: straddle, hold: 10 s, by: 2027-11-30}
kit: [parallettes, wall, pull-up bar]
bands: [{name: narrow, rest: 100 cm, pulls: [{at: 130 cm, force: 1.6 kg}, {at: 190 cm, force: 3.1 kg}]}]
rig: {anchor: 217.3 cm, strap: 0-43.7 cm, bar: 231.9 cm}
tests: [{step: tuck, hold: 14 s, stopped: yes}]
`

// canaries are what must be nowhere on the site, in small letters.
var canaries = []string{"canary", "1987", "21 september", "61.4", "61.37", "163.8", "1.638", "171.9", "1.719", "113 deg", "113°",
	"90.7", "217.3", "43.7", "231.9", "paperly", "secretly"}

// hidden is a studio whose clients have canaries: one is published, one is on
// paper only, one waits for clearance.
func hidden(t *testing.T) string {
	t.Helper()
	folder := copyOfDemo(t, oneProgram)
	clients := folder + "/content/clients"
	if err := os.RemoveAll(clients); err != nil {
		t.Fatal(err)
	}
	for slug, text := range map[string]string{
		"canary-slug": strings.Replace(private, "SHARE", "site", 1),
		"paperly-one": strings.NewReplacer("SHARE", "print", "Ann", "Paperly", "k7f3q9w2m4x8d", "zq4papr7yw8x9k").Replace(private),
		"secretly-on": strings.NewReplacer("SHARE", "site", "Ann", "Secretly", "k7f3q9w2m4x8d", "sq4crt7yw8x9k7",
			`"Dr. Canary, 2027-01-02"`, `""`).Replace(private),
	} {
		if err := os.MkdirAll(filepath.Join(clients, slug), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(clients, slug, "assessment.yaml"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for slug, text := range map[string]string{ // the second is said to nobody but a client on paper
		"canary-slug": "avoid: [chin-up]\nset: [{week: 2, hold: 30 s, sets: 9}]\nsay: [{from: 2027-01-04, to: 2027-03-28, text: \"" + whispered + "\"}]\n",
		"paperly-one": "say: [{from: 2027-01-04, to: 2027-03-28, text: \"Paperly words.\"}]\n",
	} {
		if err := os.WriteFile(filepath.Join(clients, slug, "coach.yaml"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	build(t, folder, "publish")
	return folder
}

// whispered is what a coach says to one client: it is on their own pages and on no other.
const whispered = "Friday at six by the small door"

// Every byte of the site, and every file's name; PDFs as they are, taken apart by
// qpdf, and as pdftotext reads them.
func TestNothingPrivateIsPublished(t *testing.T) {
	t.Parallel()
	folder := hidden(t)
	site := filepath.Join(folder, outputFolder, "site")
	home, err := os.ReadFile(filepath.Join(site, "c/k7f3q9w2m4x8d/index.html"))
	if err != nil || !bytes.Contains(home, []byte("Ann")) {
		t.Fatalf("the shared program is not there: %v", err)
	}
	seen, own := 0, 0
	for _, path := range found(t, folder, "") {
		name, inside := strings.CutPrefix(path, site)
		if !inside {
			continue
		}
		seen++
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		leaks(t, name, []byte(name))
		if strings.HasSuffix(path, ".pdf") {
			text = opened(path, text)
		}
		text = bytes.ReplaceAll(text, []byte("\r\n "), nil) // lines of a calendar are folded
		leaks(t, name, text)
		if said := bytes.Contains(text, []byte(whispered)); said && !strings.Contains(name, "k7f3q9w2m4x8d") {
			t.Errorf("%s has a coach's words to a client", name)
		} else if said {
			own++
		}
	}
	if own < 12 {
		t.Errorf("%d of the client's own pages have the coach's words", own)
	}
	if seen < 150 {
		t.Errorf("only %d files looked at", seen)
	}
}

func leaks(t *testing.T, name string, text []byte) {
	t.Helper()
	text = bytes.ToLower(text)
	for _, canary := range canaries {
		if at := bytes.Index(text, []byte(canary)); at >= 0 {
			t.Errorf("%s contains %q: …%s…", name, canary, text[max(0, at-40):min(len(text), at+40)])
		}
	}
}

// opened is a PDF as it is and without compression, its text and what is said
// about it, as far as the tools for that are here. Digits in positions are no
// text, so of the file itself only the words count.
func opened(path string, all []byte) []byte {
	noDigits := func(b []byte) []byte {
		return bytes.Map(func(r rune) rune {
			if r >= '0' && r <= '9' {
				return -1
			}
			return r
		}, b)
	}
	all = noDigits(all)
	for _, tool := range [][]string{{"qpdf", "--qdf", "--object-streams=disable", path, "-"}, {"pdftotext", path, "-"}, {"pdfinfo", path}} {
		out, _ := exec.Command(tool[0], tool[1:]...).Output()
		if tool[0] == "qpdf" {
			out = noDigits(out)
		}
		all = append(all, out...)
	}
	return all
}

// A folder's name is all that names of clients become, and what is no such name
// is refused: "con" and its like are devices where Windows writes files.
func TestNamesOfClients(t *testing.T) {
	for typed, want := range map[string]string{
		"Anna Maria": "anna-maria", "Žofie Łukasiewicz": "zofie-lukasiewicz", "Ærø": "aero", "con man": "con-man",
		strings.Repeat("long ", 30): strings.TrimSuffix(strings.Repeat("long-", 8), "-"),
	} {
		if slug, err := clientName(typed); err != nil || slug != want {
			t.Errorf("%q: %q, %v; want %q", typed, slug, err, want)
		}
	}
	for _, typed := range []string{"../x", "..", ".", "", " ", "a/b", `a\b`, "/etc/passwd", "日本", "con", "CON", "nul", "com1", "lpt9", "aux", "prn"} {
		if slug, err := clientName(typed); err == nil {
			t.Errorf("%q became %q", typed, slug)
		}
	}
}

// What a client wrote stays text, wherever it is shown.
func TestAClientsWordsAreNoMarkup(t *testing.T) {
	t.Parallel()
	folder := copyOfDemo(t, "")
	file := folder + "/content/clients/maren/assessment.yaml"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	evil := `<b onclick=alert(1)>`
	text = bytes.Replace(text, []byte("name: Maren"), []byte(`name: "`+evil+`"`+"\n"+`called: "`+evil+`"`), 1)
	text = bytes.ReplaceAll(text, []byte("name: narrow"), []byte(`name: "</script>`+evil+`"`))
	text = bytes.ReplaceAll(text, []byte("[narrow"), []byte(`["</script>`+evil+`"`))
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
	build(t, folder, "publish")
	pages := slices.DeleteFunc(found(t, folder, ".html"), func(path string) bool { return !strings.Contains(path, "/c/") })
	for _, path := range pages {
		page, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(page, []byte("<b onclick")) || bytes.Contains(page, []byte("</script><b")) {
			t.Errorf("%s: became markup", path)
		}
	}
	if len(pages) == 0 {
		t.Error("no pages")
	}
}
