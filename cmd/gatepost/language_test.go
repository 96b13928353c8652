package main

import (
	"bytes"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"
)

// in makes the demo studio's folder, without output, in another language, with the public
// programs of a pattern.
func in(t *testing.T, language, programs string) string {
	t.Helper()
	folder := copyOfDemo(t, programs)
	b, err := os.ReadFile("../../content/studio.yaml")
	if err != nil {
		t.Fatal(err)
	}
	put(t, folder, "content/studio.yaml", string(b)+"\nlanguage: "+language+"\n")
	return folder
}

// troubled is a log in which much goes wrong, so that a review of it has much to
// say: pain that rises, mornings above usual, sets that fall short, one that nobody
// believes, days without a line.
const troubled = `date,exercise,bands,hold_s,rpe,clean,pain,note
2027-01-04,tuck,,9 9 8,8,yes,wrists 1,
2027-01-04,done
2027-01-11,tuck,free,4 3 2,9.5 10 10,no,wrists 3 elbows 1,
2027-01-11,done
2027-01-13,tuck,free,60,6,yes,wrists 4 other 4,
2027-01-13,done
2027-01-15,tuck,,0 5,10,no,wrists 6 shoulders 2,
2027-01-15,done
2027-01-12,morning,,,,,shoulders 1 elbows 2,
2027-01-14,morning,,,,,wrists 1 elbows 4 other 2,
2027-01-16,morning,,,,,wrists 2 elbows 5 shoulders 2 other 4,
`

const (
	readOn     = "2027-02-12" // the last day of the demo's log
	troubledOn = "2027-01-18" // a day on which the troubled log still hurts
)

// keeps writes a client's new plan beside the assessment.
func keeps(t *testing.T, folder, client string) {
	t.Helper()
	var out, kept bytes.Buffer
	args := []string{"review", client, "--on", readOn, "--keep", "--folder", folder}
	if code := run(args, surroundings{out: &out, err: &kept, builtIn: builtIn}); code != 0 || !strings.Contains(kept.String(), "kept version 2") {
		t.Fatalf("gatepost %s: exit code %d\n%s", strings.Join(args, " "), code, kept.String())
	}
}

func put(t testing.TB, folder, file, text string) {
	t.Helper()
	file = filepath.Join(folder, filepath.FromSlash(file))
	err := os.MkdirAll(filepath.Dir(file), 0o755)
	if err == nil {
		err = os.WriteFile(file, []byte(text), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// says runs a command and gives what it writes for readers, on the last day of the demo's
// log; it may not complain.
func says(t *testing.T, args ...string) string {
	t.Helper()
	var out, complaints bytes.Buffer
	today := func() time.Time { return time.Date(2027, 2, 12, 9, 0, 0, 0, time.UTC) }
	if code := run(args, surroundings{out: &out, err: &complaints, builtIn: builtIn, now: today}); code != 0 || complaints.Len() > 0 {
		t.Fatalf("gatepost %s: exit code %d\n%s", strings.Join(args, " "), code, complaints.String())
	}
	return out.String()
}

// The demo studio in German: nothing is missing. German is longer than English,
// and fits all the same: paper cuts nothing, and on every sheet the sentence that
// comes last, who decides, is whole.
func TestGerman(t *testing.T) {
	t.Parallel()
	programs := "*"
	if _, err := exec.LookPath("pdftotext"); err != nil {
		programs = "" // of them there is nothing to read that TestEveryWordCanBeTranslated has not read
	}
	folder := in(t, "de", programs)
	put(t, folder, "content/clients/joss/log.csv", troubled)
	for _, on := range []string{readOn, troubledOn} {
		if overview := says(t, "review", "--on", on, "--folder", folder); strings.Contains(overview, "…") {
			t.Errorf("the overview is cut:\n%s", overview)
		}
	}
	keeps(t, folder, "maren")
	says(t, "--folder", folder)
	pdftotext := tool(t, "pdftotext")
	for _, file := range found(t, folder, ".pdf") {
		if filepath.Base(file) == "coach-page.pdf" {
			continue // shortens the names of rigs, in English too
		}
		text := strings.Join(strings.Fields(printed(t, pdftotext, file)), " ")
		onItsOwn := !strings.HasSuffix(file, "cards.pdf")
		if onItsOwn && !strings.Contains(text, "Fachperson bei dir entscheidet.") {
			t.Errorf("%s does not say who decides", file)
		}
		if before, _, cut := strings.Cut(text, "…"); cut {
			t.Errorf("%s is cut after %q", file, before[max(0, len(before)-60):])
		}
	}
}

func printed(t *testing.T, pdftotext, file string) string {
	t.Helper()
	text, err := exec.Command(pdftotext, "-raw", file, "-").Output() // raw: column by column
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// another writes the whole German library again as a language of our own, in
// which every Latin letter is a Cyrillic one. Whatever then still reaches a
// reader in Latin letters is a string that no coach could translate, or a word
// that German has and English lacks.
func another(t *testing.T) string {
	folder := in(t, "xx", "*")
	shorten(t, folder, everyProgram)
	err := fs.WalkDir(os.DirFS("../../content"), ".", func(name string, entry fs.DirEntry, err error) error {
		part, below := strings.CutPrefix(name, "de/")
		if err != nil || entry.IsDir() || !below && name != "words/de.yaml" || strings.HasPrefix(part, "notes/") { // the demo's notes are not there
			return err
		}
		b, err := os.ReadFile("../../content/" + name)
		put(t, folder, "content/"+strings.Replace(name, "de", "xx", 1), disguised(name, string(b)))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return folder
}

var (
	// kept are the parts of a file that are no words: placeholders, escapes, and
	// where links lead.
	kept        = regexp.MustCompile(`\{[a-z_]+\}|\\u[0-9a-f]{4}|\]\([^)]*\)`)
	placeholder = regexp.MustCompile(`\{[a-z_]+\}`)
	// key begins a line of YAML.
	key = regexp.MustCompile(`^ *[a-z0-9][a-z0-9 _-]*:( |$)`)
)

func disguised(name, text string) string {
	front := strings.HasSuffix(name, ".yaml")
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if i > 0 && line == "---" {
			front = false
		}
		start := 0
		if at := key.FindStringIndex(line); at != nil && (front || i < 2) {
			start = at[1]
		}
		if words := line[start:]; words != "|" && words != ">-" && line != "---" {
			lines[i] = line[:start] + cyrillic(words)
		}
	}
	return strings.Join(lines, "\n")
}

func cyrillic(words string) string {
	var out strings.Builder
	last := 0
	for _, at := range kept.FindAllStringIndex(words, -1) {
		out.WriteString(inCyrillic.Replace(words[last:at[0]]) + words[at[0]:at[1]])
		last = at[1]
	}
	return out.String() + inCyrillic.Replace(words[last:])
}

var inCyrillic = func() *strings.Replacer {
	small, large := []rune("абцдефгхийклмнопярстувшчыз"), []rune("АБЦДЕФГХИЙКЛМНОПЯРСТУВШЧЫЗ")
	var pairs []string
	for i := range 26 {
		pairs = append(pairs, string(rune('a'+i)), string(small[i]), string(rune('A'+i)), string(large[i]))
	}
	return strings.NewReplacer(pairs...)
}()

// coachs are the words of the demo that a coach wrote, and the versions.
var coachs = regexp.MustCompile(`tilda@example\.org|https://\S*|Tilda( Roake)?|Film\s+the\s+side\s+view\s+on\s+Saturday|Lantern Ringing Hall|[Mm]aren|[Jj]oss|[Aa]nselm|[Rr]una|\b(narrow|middle|wide|bell practice|peal ringing)\b|` +
	`assessment\.yaml|\b[0-9a-f]{7}\b`)

var latin = regexp.MustCompile(`[A-Za-z][^.\n]*`)

// No string escapes translation: not on the site, nor on paper, in the calendar
// or in the terminal, of a plan or of a log read back.
func TestEveryWordCanBeTranslated(t *testing.T) {
	t.Parallel()
	folder := another(t)
	put(t, folder, "content/clients/joss/log.csv", troubled)
	check := func(where, text string) {
		text = coachs.ReplaceAllString(text, "")
		if escaped := latin.FindAllString(text, -1); escaped != nil {
			t.Errorf("%s: %q", where, escaped[:min(4, len(escaped))])
		}
	}
	for _, what := range []string{"plan maren", "plan joss", "plan anselm", "review maren --on " + readOn, "review joss --on " + readOn,
		"review joss --on " + troubledOn, "review anselm --on " + readOn, "review --on " + readOn, "review --on " + troubledOn} {
		check(what, says(t, append(strings.Fields(what), "--folder", folder)...))
	}
	keeps(t, folder, "joss")
	says(t, "--folder", folder)
	for _, file := range []string{"print/joss/review.pdf", "print/joss/changed-cards.pdf", "print/maren/review.pdf"} {
		if _, err := os.Stat(folder + "/output/" + file); err != nil {
			t.Error(err)
		}
	}
	for _, file := range found(t, folder, ".html") {
		check(file, visible(t, file))
	}
	for _, file := range found(t, folder, ".ics") {
		b, _ := os.ReadFile(file)
		unfolded := strings.ReplaceAll(string(b), "\r\n ", "")
		text := strings.NewReplacer(`\n`, " ", `\`, "").Replace(unfolded)
		for _, line := range regexp.MustCompile(`(?m)^(SUMMARY|DESCRIPTION|X-WR-CALNAME):.*`).FindAllString(text, -1) {
			_, words, _ := strings.Cut(line, ":")
			check(file, words)
		}
	}
	pdftotext := tool(t, "pdftotext")
	for _, file := range found(t, folder, ".pdf") {
		check(file, printed(t, pdftotext, file))
	}
}

// visible is what a page says to the eye and to the ear.
func visible(t *testing.T, file string) string {
	t.Helper()
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	z, inside := html.NewTokenizer(bytes.NewReader(b)), ""
	for {
		switch kind := z.Next(); kind {
		case html.ErrorToken:
			if z.Err() != io.EOF {
				t.Fatal(z.Err())
			}
			return out.String()
		case html.TextToken:
			switch inside {
			case "":
				out.WriteString(string(z.Text()) + "\n")
			case "application/ld+json":
				out.WriteString(strings.Join(strings.Split(machineWords.ReplaceAllString(string(z.Raw()), ""), `"`), "\n"))
			}
		case html.StartTagToken, html.SelfClosingTagToken, html.EndTagToken:
			tag := z.Token()
			out.WriteString(told(tag))
			if inside = ""; kind == html.StartTagToken && (tag.Data == "script" || tag.Data == "style") {
				inside = tag.Data
				for _, a := range tag.Attr {
					if a.Key == "type" {
						inside = a.Val
					}
				}
			}
		}
	}
}

// machineWords are the parts of JSON-LD that are for machines: the names of its
// properties, types, addresses, the language, and durations (ISO 8601).
var machineWords = regexp.MustCompile(`"(@type|@context|inLanguage|url|@id)":"[^"]*"|"[A-Za-z@]+":|"P[0-9TWDHMS]+"`)

// address is an attribute that leads to a place on the site.
var address = regexp.MustCompile(`^#[a-z-]+$|\.html$`)

// inLogs are attributes that scripts write into a log, whose own names are English.
var inLogs = []string{"data-part", "data-joint", "data-exercise", "data-bands", "data-lean", "data-client", "data-version"}

// told are the attributes of a tag that readers meet.
func told(tag html.Token) string {
	var all string
	for _, a := range tag.Attr {
		describes := tag.Data == "meta" && a.Key == "content" && strings.Contains(tag.String(), `"description"`)
		if address.MatchString(a.Val) || slices.Contains(inLogs, a.Key) {
			continue
		}
		if a.Key == "aria-label" || a.Key == "title" || a.Key == "alt" || describes || strings.HasPrefix(a.Key, "data-") {
			all += placeholder.ReplaceAllString(a.Val, "") + "\n"
		}
	}
	return all
}
