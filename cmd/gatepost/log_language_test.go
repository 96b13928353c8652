package main

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"gatepost/program"
)

// logNames are the parts of what the log commands say that are no words: what somebody
// wrote, in quotes; paths, places and options; columns, ids and units.
var logNames = regexp.MustCompile(`"[^"]*"|\S*\.csv|gatepost:|--on|\bcm\b|\b[a-z_-]+(,[a-z_-]+){2,}|\b[a-z-]+(, [a-z-]+){2,}|` +
	`\b(done|date|pain|client|half-open-tuck-hold|tuck-hold)\b|: no such file or directory`)

// Nobody is asked for a session, or told what is wrong with a log, in words that the
// studio's language has not.
func TestLogCanBeTranslated(t *testing.T) {
	folder := another(t)
	check := func(where, said string, written ...string) {
		t.Helper()
		for _, line := range append(written, folder+"/") {
			said = strings.ReplaceAll(said, line, "")
		}
		said = coachs.ReplaceAllString(logNames.ReplaceAllString(said, ""), "")
		if escaped := latin.FindAllString(said, -1); escaped != nil {
			t.Errorf("%s: %q", where, escaped)
		}
	}
	for _, c := range []struct {
		name, answers string
		day           program.Date
		says          int // lines at least
	}{
		{"a session", "\n\n\n8 8\nxyz\n\n12\n9\nno\n.\nplanche lean\n8 8\nfar\n\nxyz\n\nwrists 2\nfine\n\n", program.NewDate(2027, 1, 4), 6},
		{"as printed", ".\n8\n\n\n\n\n\n", program.NewDate(2027, 2, 15), 3},
		{"no session", "\n\n\n\n", program.NewDate(2027, 1, 5), 1},
		{"an end too early", "", program.NewDate(2027, 1, 4), 3},
	} {
		var asked bytes.Buffer
		j := &job{path: folder, surroundings: surroundings{in: strings.NewReader(c.answers), out: &asked, err: &asked, builtIn: builtIn}}
		if err := j.open(); err != nil {
			t.Fatal(err)
		}
		studio, a, err := j.readForLog("maren")
		if err != nil {
			t.Fatal(err, asked.String())
		}
		if _, err := j.askSession(&studio, a, c.day); err != nil {
			asked.WriteString(err.Error())
		}
		j.root.Close()
		if n := strings.Count(asked.String(), "\n"); n < c.says {
			t.Errorf("%s: %d lines:\n%s", c.name, n, asked.String())
		}
		check(c.name, asked.String())
	}
	const week = "client,date,exercise,hold_s\nMaren,2027-03-01,tuck,9\n"
	put(t, folder, "week.csv", week)
	for _, c := range []struct {
		lines string
		args  []string
	}{
		{"", []string{"maren"}},
		{"", []string{"marn"}},
		{"1;2;3\n", []string{"maren"}},
		{"date,exercise,hold_s,rpe\n2027-03-01,xyz,9,\n2027-03-01,tuck,9,11\nxyz,tuck,9,\n2027-03-09,tuck,9,\n", []string{"maren"}},
		{"date,exercise,hold_s\n2027-03-01,tuck,9\n", []string{"joss"}},
		{"date,exercise,hold_s\n2027-03-01,tuck,9\n2027-03-02,tuck,8\n", []string{"joss"}},
		{"date,exercise,hold_s\n2027-03-01,tuck,9\n", []string{"joss"}},
		{"", []string{"--all", folder + "/week.csv"}},
		{"", []string{"--all", folder + "/xyz.csv"}},
		{"date,exercise\n", []string{"--all", "-"}},
	} {
		var said bytes.Buffer
		args := append([]string{"log", "--on", "2027-03-05", "--folder", folder}, c.args...)
		run(args, surroundings{in: strings.NewReader(c.lines), out: &said, err: &said, builtIn: builtIn})
		if said.Len() == 0 {
			t.Errorf("%q: nothing is said", c.args)
		}
		check(strings.Join(c.args, " ")+" "+c.lines, said.String(), strings.Split(strings.TrimSpace(c.lines), "\n")...)
	}
}
