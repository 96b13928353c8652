package main

import (
	"bytes"
	"cmp"
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"
)

var (
	edits    = flag.Int("edits", 4, "edits that TestMakingLessIsTheSame draws")
	editSeed = flag.Uint64("edits.seed", 1, "where they are drawn from")
)

// twins are two folders with the same files. One makes what changed; the other has lost
// what it knew of its output, and makes everything.
type twins struct {
	t       *testing.T
	less    string
	all     string
	builtIn fstest.MapFS
	dice    *rand.Rand
	day     int // of January 2027
}

func newTwins(t *testing.T) *twins {
	w := &twins{t: t, less: t.TempDir(), all: t.TempDir(), dice: rand.New(rand.NewPCG(*editSeed, 0)), day: 10}
	small(t, w.less, "anselm")
	if err := os.CopyFS(w.all, os.DirFS(w.less)); err != nil {
		t.Fatal(err)
	}
	return w
}

// Cases in which what stands is easily taken for what it is not.
func TestMakingLessCaseByCase(t *testing.T) {
	t.Parallel()
	w := newTwins(t)
	maren, runa, joss := "content/clients/maren/assessment.yaml", "content/clients/runa/assessment.yaml", "content/clients/joss/assessment.yaml"
	for _, c := range []struct {
		what string
		do   func()
		part []string
	}{
		{"a condition of two, which is said", func() {
			w.in(joss, swapped(`(?m)^  elbows: fine`, "  conditions: [hernia]\n  elbows: fine"))
			w.in(runa, swapped(`(?m)^  elbows: fine`, "  conditions: [hernia]\n  elbows: fine"))
		}, nil},
		{"the same again", func() {}, nil},
		{"one of them cleared", func() { w.in(runa, swapped(`(?m)^  conditions: .*\n`, "")) }, nil},
		{"seven days, which are asked about", func() { w.in(joss, swapped(`days: \[.*\]`, "days: [mon, tue, wed, thu, fri, sat, sun]")) }, nil},
		{"nothing, looked at", func() {}, []string{"check"}},
		{"somebody who waits", func() { w.run([]string{"intake", "Waits"}) }, nil},
		{"that looked at", func() {}, []string{"check"}},
		{"the waiting looked at beside a change", func() { w.in(joss, swapped(`mass: 82 kg`, "mass: 84 kg")) }, []string{"check"}},
		{"another's page", func() { w.in(maren, swapped(`page: .*`, "page: t5h8w3bnx7q2ryc6")) }, nil},
		{"that taken back", func() { w.in(maren, swapped(`page: .*`, "page: k7v2qm9xw4tdhz3p")) }, nil},
		{"a page edited", func() { w.in("output/site/c/t5h8w3bnx7q2ryc6/index.html", swapped(`$`, "mine")) }, nil},
		{"that taken back, and another mass", func() {
			w.undo()
			w.in(runa, swapped(`mass: 60 kg`, "mass: 66 kg"))
		}, []string{"print", "runa"}},
		{"the old mass", func() { w.in(runa, swapped(`mass: 66 kg`, "mass: 60 kg")) }, nil},
		{"another week", func() { w.day = 17 }, nil},
		{"the week before", func() { w.day = 10 }, nil},
		{"a wish that changes nothing else", func() { w.put("content/clients/runa/coach.yaml", "avoid: [pull-up]\n") }, nil},
	} {
		c.do()
		if w.run(c.part); t.Failed() {
			t.Fatal(c.what)
		}
	}
}

// Whatever a coach does between two runs: a run that makes only what changed writes the
// same bytes, says the same and counts the same as one that makes everything.
func TestMakingLessIsTheSame(t *testing.T) {
	t.Parallel()
	w := newTwins(t)
	w.run(nil)
	var deck, did []string
	var mend []func()
	for n := 0; n < *edits; {
		for _, one := range mend { // else most runs would stop at the same mistake
			one()
		}
		mend, did = nil, nil
		for range w.dice.IntN(3) {
			if len(deck) == 0 {
				deck = w.shuffled()
			}
			e := w.edits()[deck[0]]
			did, deck, n = append(did, deck[0]), deck[1:], n+1
			if e.do(); e.mend != nil && w.dice.IntN(3) > 0 {
				mend = append(mend, e.mend)
			}
		}
		if len(did) == 0 || w.dice.IntN(4) == 0 {
			w.day = 1 + w.dice.IntN(28)
		}
		part := []string(nil)
		if w.dice.IntN(3) == 0 {
			part = [][]string{{"publish"}, {"print"}, {"print", "--both-sides"}, {"print", "maren"}, {"check"}, {"check"}}[w.dice.IntN(6)]
		}
		if w.run(part); t.Failed() {
			t.Fatalf("edit %d: %q; then %v on the %dth", n, did, part, w.day)
		}
	}
}

// shuffled are all kinds of edits, in any order.
func (w *twins) shuffled() []string {
	names := slices.Sorted(maps.Keys(w.edits()))
	w.dice.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	return names
}

// run does the same job in both folders.
func (w *twins) run(part []string) {
	w.t.Helper()
	_ = os.Remove(filepath.Join(w.all, "output/.gatepost/prints")) // none: nothing was made yet
	less, all := w.build(w.less, part), w.build(w.all, part)
	if less != all {
		w.t.Errorf("it says\n%s\nand where everything is made\n%s", less, all)
	}
	if err := sameFiles(filepath.Join(w.less, "output"), filepath.Join(w.all, "output")); err != nil {
		w.t.Error(err)
	}
}

func (w *twins) build(folder string, part []string) string {
	var said bytes.Buffer
	args := append(slices.Clone(part), "--folder", folder)
	if len(part) == 0 || part[0] == "print" {
		args = append(args, "--on", fmt.Sprintf("2027-01-%02d", w.day))
	}
	chance := strings.NewReader(strings.Repeat("0123456789abcdef", 64))
	code := run(args, surroundings{in: strings.NewReader(""), out: &said, err: &said, builtIn: builtIn, chance: chance,
		now: func() time.Time { return time.Date(2027, 1, w.day, 0, 0, 0, 0, time.UTC) }})
	return fmt.Sprintf("%d %s", code, strings.ReplaceAll(said.String(), folder, "FOLDER"))
}

// both does something to both folders, the output included.
func (w *twins) both(change func(folder string) error) {
	w.t.Helper()
	for _, folder := range []string{w.less, w.all} {
		if err := change(folder); err != nil {
			w.t.Fatal(err)
		}
	}
}

// in changes a file of both folders; one that is not there is empty.
func (w *twins) in(file string, change func(text string) string) {
	w.t.Helper()
	w.both(func(folder string) error {
		name := filepath.Join(folder, filepath.FromSlash(file))
		b, _ := os.ReadFile(name)
		text := change(string(b))
		if text == "" { // of what went meanwhile there is nothing to change
			return nil
		}
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return err
		}
		return os.WriteFile(name, []byte(text), 0o644)
	})
}

func (w *twins) put(file, text string) {
	w.t.Helper()
	w.in(file, func(string) string { return text })
}

func (w *twins) away(file string) {
	w.t.Helper()
	w.both(func(folder string) error { return os.RemoveAll(filepath.Join(folder, filepath.FromSlash(file))) })
}

// own takes a built-in file into the folder, changed, or gives it up again.
func (w *twins) own(file, old, new string) {
	if _, err := os.Stat(filepath.Join(w.less, file)); err == nil {
		w.away(file)
		return
	}
	b, err := os.ReadFile("../../" + file)
	if err != nil || !bytes.Contains(b, []byte(old)) {
		w.t.Fatal(file, err)
	}
	w.in(file, func(string) string { return strings.Replace(string(b), old, new, 1) })
}

// somebody is a client, of those there are.
func (w *twins) somebody() string {
	all, err := filepath.Glob(filepath.Join(w.less, "content/clients/*/assessment.yaml"))
	if err != nil || len(all) == 0 {
		w.t.Fatal("nobody is left", err)
	}
	return "content/clients/" + filepath.Base(filepath.Dir(all[w.dice.IntN(len(all))]))
}

// written is a file of the output, of those there are.
func (w *twins) written() string {
	var all []string
	for _, form := range []string{"site/*.html", "site/c/*/*", "print/*/*"} {
		some, _ := filepath.Glob(filepath.Join(w.less, "output", form))
		all = append(all, some...)
	}
	below, err := filepath.Rel(w.less, all[w.dice.IntN(len(all))])
	if err != nil {
		w.t.Fatal(err)
	}
	return filepath.ToSlash(below)
}

func swapped(form, with string) func(string) string {
	re := regexp.MustCompile(form)
	return func(text string) string { return re.ReplaceAllString(text, with) }
}

// edit is one thing that a coach, or a disk, may do.
type edit struct {
	do   func()
	mend func() // nil: nothing is wrong after it
}

func (w *twins) edits() map[string]edit {
	who := w.somebody()
	file := who + "/assessment.yaml"
	return map[string]edit{
		"another mass":                 {do: func() { w.in(file, swapped(`mass: .* kg`, fmt.Sprintf("mass: %d kg", 58+w.dice.IntN(20)))) }},
		"the same mass in other words": {do: func() { w.in(file, swapped(`mass: (\d+) kg`, "mass: $1.0 kg")) }},
		"shared no more":               {do: func() { w.in(file, swapped(`share: site`, "share: print")) }},
		"shared": {do: func() {
			page := fmt.Sprintf("page: q7%dm4xk9r2wz5tn8\n", w.dice.IntN(3)) // at times somebody's already
			w.in(file, func(text string) string {
				return "share: site\n" + page + swapped(`(?m)^(share|page): .*\n`, "")(text)
			})
		}},
		"a slip": {func() { w.in(file, swapped(`(?m)^sex: `, "sexx: ")) }, func() { w.in(file, swapped(`(?m)^sexx: `, "sex: ")) }},
		"another skill": {do: func() {
			w.in(file, swapped(`skill: planche, step: straddle`, "skill: front lever, step: straddle"))
		}},
		"a condition": {func() { w.in(file, swapped(`(?m)^  elbows: fine`, "  conditions: [hernia]\n  elbows: fine")) },
			func() { w.in(file, swapped(`(?m)^  conditions: .*\n`, "")) }},
		"gone": {do: func() {
			if !strings.HasSuffix(who, "maren") {
				w.away(who)
			}
		}},
		"somebody new": {do: func() {
			name := fmt.Sprintf("content/clients/new-%d/assessment.yaml", w.dice.IntN(3))
			text, _ := os.ReadFile(filepath.Join(w.less, "content/clients/maren/assessment.yaml"))
			w.in(name, func(string) string { return swapped(`(?m)^(share|page): .*\n`, "")(string(text)) })
		}},
		"somebody who waits": {do: func() { w.run([]string{"intake", "Waits"}) }},
		"no client's folder": {do: func() { w.put("content/clients/read-me.txt", "x") }},
		"a line of the log": {do: func() {
			line := fmt.Sprintf("2027-02-%02d,done\n", 10+w.dice.IntN(9))
			w.in("content/clients/maren/log.csv", func(text string) string { return cmp.Or(text, "date,exercise\n") + line })
		}},
		"no log": {do: func() { w.away(who + "/log.csv") }},
		"a wish": {do: func() {
			w.put(who+"/coach.yaml", fmt.Sprintf("rules: {main_sets: %d}\n", 3+w.dice.IntN(3)))
		}},
		"no wish": {do: func() { w.away(who + "/coach.yaml") }},
		"the studio's rules": {do: func() {
			w.put("content/rules.yaml", fmt.Sprintf("rules: {deload_every: %d}\n", 3+w.dice.IntN(2)))
		}},
		"no rules": {do: func() { w.away("content/rules.yaml") }},
		"the coach's name": {do: func() {
			w.in("content/studio.yaml", swapped(`(?m)^coach: .*`, fmt.Sprintf("coach: Tilda %c", 'A'+w.dice.IntN(9))))
		}},
		"a slip of the studio's": {func() { w.in("content/studio.yaml", swapped(`(?m)^contact: `, "contakt: ")) },
			func() { w.in("content/studio.yaml", swapped(`(?m)^contakt: `, "contact: ")) }},
		"words":             {do: func() { w.own("content/words/en.yaml", "  build: Build", "  build: Work") }},
		"an exercise":       {do: func() { w.own("content/exercises/pull-up.md", "name: ", "name: Slow ") }},
		"a page":            {do: func() { w.own("content/pages/cautions.md", "title: ", "title: All ") }},
		"a template":        {do: func() { w.own("templates/week.html", "<h1>", "<h1>Our ") }},
		"a stylesheet":      {do: func() { w.own("templates/style.css", "{", "{ ") }},
		"a broken template": {func() { w.own("templates/session.html", "{{", "{{{") }, func() { w.away("templates/session.html") }},
		"a note":            {do: func() { w.own("content/notes/quiet-week.md", "title: ", "title: Again, ") }},
		"a program":         {do: func() { w.own("content/programs/up-the-wall.yaml", "minutes: 60", "minutes: 45") }},
		"a page taken away": {do: func() { w.away(w.written()) }},
		"a page edited by hand": {func() {
			page := w.written()
			w.in(page, func(text string) string { return text + "mine" })
		}, w.undo},
		"a damaged file of fingerprints": {do: func() {
			_ = os.WriteFile(filepath.Join(w.less, "output/.gatepost/prints"), []byte("gatepost prints 1 x\n{}"), 0o644)
		}},
	}
}

// undo takes what was edited by hand out of the way, as the message asks for.
func (w *twins) undo() {
	w.both(func(folder string) error {
		return filepath.WalkDir(filepath.Join(folder, "output"), func(path string, entry os.DirEntry, err error) error {
			if err != nil || entry.IsDir() {
				return err
			}
			if b, err := os.ReadFile(path); err != nil || !bytes.HasSuffix(b, []byte("mine")) {
				return err
			}
			return os.Remove(path)
		})
	})
}
