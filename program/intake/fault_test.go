package intake

import (
	"fmt"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"gatepost/program"
)

// keyed is the library of the cases in a language of our own, in which a fault is its
// key in angle brackets, and the values that fill it.
func keyed(t testing.TB) (lib fstest.MapFS, keys []string) {
	t.Helper()
	lib = library(t)
	file := lib["content/words/en.yaml"]
	head, faults, _ := strings.Cut(string(file.Data), "\nfault:\n")
	head += "\nfault:\n"
	for line := range strings.Lines(faults) {
		key, text, _ := strings.Cut(strings.TrimSpace(line), ":")
		keys = append(keys, key)
		head += fmt.Sprintf("  %s: \"<%s> %s\"\n", key, key, strings.Join(placeholders(text), " "))
	}
	file.Data = []byte(head)
	return lib, keys
}

var (
	keyIn  = regexp.MustCompile(`<([a-z0-9_]+)>`)
	valued = regexp.MustCompile(`<[a-z0-9_]+>|"(\\.|[^"\\])*"`)
	letter = regexp.MustCompile(`\pL+`)
	// bare are values that stand without quotes: ids, columns and units.
	bare = strings.Split("tuck hold planche lean advanced done morning log csv rpe clean pain ahead cm date exercise set bands hold_s s reps note client mood maren anna oda wrists elbows shoulders other narrow middle thin on scale one two b permission denied", " ")
	// plainEnglish is what English is known by among the keys and values of an assessment.
	plainEnglish = strings.Split("the is are was not write expected known there keep take give did your", " ")
)

// Whatever is wrong with a log or an assessment is said in the words of the studio's
// language: no text but values is left where the words have none, every text can come
// up, and each has what to write instead. What is not YAML is said in English.
func TestFaultsAreInTheWords(t *testing.T) {
	lib, keys := keyed(t)
	seen := map[string]bool{}
	look := func(of string, problems program.Problems) {
		for _, p := range problems {
			for _, text := range []string{p.Message, p.Advice} {
				for _, m := range keyIn.FindAllStringSubmatch(text, -1) {
					seen[m[1]] = true
				}
				ofLog := strings.Contains(p.File, "log") || p.File == "" || !strings.Contains(p.File, "/")
				for _, word := range letter.FindAllString(valued.ReplaceAllString(text, ""), -1) {
					word = strings.ToLower(word)
					if ofLog && !slices.Contains(bare, word) || !ofLog && slices.Contains(plainEnglish, word) {
						t.Errorf("%s: %q is no word of the studio's, in %q", of, word, text)
					}
				}
			}
		}
	}
	cases, _ := filepath.Glob("testdata/cases/*.txtar")
	for _, file := range cases {
		folder, _ := laidOut(t, readArchive(t, file))
		_, problems := Read(folder, lib, zeros{})
		look(file, slices.DeleteFunc(problems, func(p program.Problem) bool {
			return !strings.Contains(p.File, "log") && !keyIn.MatchString(p.Message)
		}))
	}
	sayMore(t, lib, look)
	for _, key := range keys {
		if !seen[key] && strings.TrimSuffix(key, "_do") != "unlike" { // which nothing known brings about
			t.Errorf("nothing says %s", key)
		}
	}
}

// locked is a folder whose logs nobody may read.
type locked struct{ fstest.MapFS }

func (l locked) Open(name string) (fs.File, error) {
	if strings.HasSuffix(name, logName) {
		return nil, fs.ErrPermission
	}
	return l.MapFS.Open(name)
}

// sayMore reads what the cases do not: files that are no text, pasted lines, files for
// the whole studio, and lines to add to a log.
func sayMore(t *testing.T, lib fstest.MapFS, look func(of string, problems program.Problems)) {
	folder := sound(t)
	folder["content/clients/maren/log.csv/folder"] = &fstest.MapFile{}
	_, problems := Read(folder, lib, zeros{})
	look("a folder in place of the log", problems)
	_, problems = Read(locked{with(sound(t), "content/clients/maren/log.csv", "")}, lib, zeros{})
	look("a log that nobody may read", problems)

	const file = "content/clients/maren/assessment.yaml"
	text := string(sound(t)[file].Data)
	_, problems = Read(with(sound(t), file, strings.Replace(text, "[parallettes, wall]", "["+strings.Repeat("wall, ", maxItems)+"wall]", 1)), lib, zeros{})
	look("a list that is too long", problems)

	studio, problems := Read(sound(t), lib, zeros{})
	if problems.Stop() || len(problems) > 0 {
		t.Fatal(reported(problems))
	}
	a := studio.Clients[0]
	wide, strapped, bare := a, a, a
	wide.Bands = append(slices.Clone(a.Bands), program.Band{Name: "wide"})
	strapped.Hanging.Strap = program.Strap{From: 0.05, To: 0.3}
	loose := strapped
	loose.Hanging.Drops = nil
	bare.Bands = nil
	many := a
	for i := range 25 {
		many.Bands = append(many.Bands, program.Band{Name: fmt.Sprintf("b-%d", i)})
	}
	lean, _ := studio.Library.Exercise("planche-lean")
	lean.Dose = program.Dose{Sets: 3, Reps: 8}
	head := LogHeader() + "\n"
	for _, c := range []struct {
		client program.Assessment
		text   string
	}{
		{a, strings.Repeat("x", maxFile+1)}, {a, "\xff\xfe"}, {a, strings.Repeat("x", maxLine+1)}, {a, "a\x00"}, {a, head + "2027-01-11,done\xc3"},
		{a, head + strings.Repeat("2027-01-11,tuk\n", maxProblems+2)},
		{a, head + "2026-01-11,done\n2027-01-11,tuck,,,12,,8 8\n2027-01-11,tuck,,narrow strap 1..2 cm,12\n"},
		{a, head + "2027-01-11,planche lean,,,12\n2027-01-11,tuck on scale,,,12\n2027-01-11,tuck on scale,,,,12\n"},
		{wide, head + "2027-01-11,tuck,,narrow + middle + wide,12\n"},
		{strapped, head + "2027-01-11,tuck,,narrow strap 90 cm,12\n"}, {loose, head + "2027-01-11,tuck,,narrow strap 90 cm,12\n"},
		{bare, head + "2027-01-11,tuck,,narrow,12\n"}, {many, head + "2027-01-11,tuck,,xyzzy,12\n"},
	} {
		_, problems := ReadLog(&studio, &c.client, "log.csv", []byte(c.text))
		look(c.text[:min(100, len(c.text))], problems)
	}
	const between = "date,exercise,client\n2027-01-11,done,Maren\n"
	for _, text := range []string{"Hi\n" + head + "2027-01-11,done\nBye\n", "Hi\nMaren\n" + head + "2027-01-11,done\nBye\nMaren",
		between + "Hi\n2027-01-12,done,Maren\n", between + "Hi\nMaren\n2027-01-12,done,Maren\n"} {
		_, problems = ReadNewLines(&studio, &a, "paste", []byte(text), nil)
		look(text, problems)
	}
	sayOfAll(&studio, look)
	sayAgain(&studio, &a, look)
}

func sayOfAll(studio *program.Studio, look func(of string, problems program.Problems)) {
	two := *studio
	first, second := studio.Clients[0], studio.Clients[0]
	first.Athlete.Name, first.Slug, second.Athlete.Name, second.Slug = "Anna One", "anna-one", "Anna Two", "anna-two"
	two.Clients = []program.Assessment{first, second}
	for _, text := range []string{"date,exercise\n2027-01-11,done\n", "client,date,exercise\n,2027-01-11,done\nAnna,2027-01-11,done\noda,2027-01-11,done\nzz,2027-01-11,done\n"} {
		_, problems := ReadNewLinesOfAll(&two, []string{"oda"}, "all.csv", []byte(text))
		look(text, problems)
	}
}

// sayAgain adds to a log what it has in another form, or has no room for.
func sayAgain(studio *program.Studio, a *program.Assessment, look func(of string, problems program.Problems)) {
	head := LogHeader() + "\n"
	had := head + "2027-01-11,done\n2027-01-11,tuck,1,narrow,12\n2027-01-11,tuck,,,12\n2027-01-11,planche lean,1,,12,,,,,18 cm,\n"
	for _, c := range []struct{ log, add string }{
		{had, "2027-01-11,done,,,,,,,3"}, {had, "2027-01-11,tuck,1,narrow,11"}, {had, "2027-01-11,tuck,,,11"},
		{had, "2027-01-11,tuck,1,middle,12"}, {had, "2027-01-11,planche lean,1,,12,,,,,20 cm,"},
		{"date,exercise\n", "2027-01-11,tuck,,,12"}, {head + "2027-01-10,tuck,,,12,,,,,,\"open\n", "2027-01-11,done"},
	} {
		log, problems := ReadNewLines(studio, a, "paste", []byte(head+c.add+"\n"), nil)
		look(c.add, append(problems, NotYet(&studio.Library, log, log.Entries[0].Date-1)...))
		_, problems = AddToLog(studio, a, "log.csv", []byte(c.log), log.Entries)
		look(c.add, problems)
	}
}
