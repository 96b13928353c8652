package intake

import (
	"strings"
	"testing"

	"gatepost/program"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// given pastes lines with a header of their own into a log with the usual one, and
// gives the new lines, how many are there already, and the report.
func given(t testing.TB, log, lines string) (added string, there int, report string) {
	t.Helper()
	studio, a := maren(t)
	a.Page = "k7v2qm9xw4tdhz3p"
	if log != "" {
		log = LogHeader() + "\n" + log
	}
	read, problems := ReadNewLines(studio, a, "paste", []byte(lines), []byte(log))
	if problems.Stop() {
		return "", 0, reported(problems)
	}
	addition, more := AddToLog(studio, a, "log.csv", []byte(log), read.Entries)
	return string(addition.Bytes), addition.There, reported(append(problems, more...))
}

// What is in the log already, what is new, and what was changed.
func TestGivenAgain(t *testing.T) {
	const header = "date,exercise,set,bands,hold_s,reps,rpe,clean,pain,ahead,note\n"
	cases := []struct {
		name, log, lines, added string
		there                   int
		says                    string
	}{
		{name: "the same line a set, written as a whole exercise",
			log:   "2027-01-11,tuck,,free,12 12 9,,- - 9,yes yes no,,,\n",
			lines: "2027-01-11,Tuck Hold,1,free,12,,,yes,,,\n2027-01-11,tuck,2,no band,12.0,,,y\n2027-01-11,tuck,3,free,9 s,,9,no\n", there: 1},
		{name: "one set more than last time",
			log:   "2027-01-11,tuck,,free,12 12,,- 9,,,,warm\n",
			lines: "2027-01-11,tuck,1,free,12,,,,,,warm\n2027-01-11,tuck,2,free,12,,9\n2027-01-11,tuck,3,free,9,,10\n2027-01-11,tuck,4,free,7\n",
			added: "2027-01-11,tuck,3,free,9,,10,,,,\n2027-01-11,tuck,4,free,7,,,,,,\n"},
		{name: "another effort", log: "2027-01-11,tuck,1,,12,,8\n", lines: "2027-01-11,tuck,1,,12,,9\n",
			says: "paste:1:1: set 1 of tuck-hold on 2027-01-11 is in the log already, on line 2, with other values"},
		{name: "other seconds in the second of three", log: "2027-01-11,tuck,,,12 12 12\n", lines: "2027-01-11,tuck,,,12 11 12\n",
			says: "set 2 of tuck-hold on 2027-01-11 is in the log already, on line 2"},
		{name: "another note", log: "2027-01-11,tuck,1,,12,,8,,,,good\n", lines: "2027-01-11,tuck,1,,12,,8,,,,bad\n",
			says: "set 1 of tuck-hold on 2027-01-11 is in the log already, on line 2"},
		{name: "another lean of the same number", log: "2027-01-11,planche lean,1,,12,,,,,14 cm,\n", lines: "2027-01-11,planche lean,1,,12,,,,,18 cm,\n",
			added: "2027-01-11,planche-lean,1,,12,,,,,18 cm,\n", says: "warning: line 2 of the log has set 1 of planche-lean on 2027-01-11 with another lean"},
		{name: "other bands of the same number", log: "2027-01-11,tuck,1,,12\n", lines: "2027-01-11,tuck,1,narrow,12\n",
			added: "2027-01-11,tuck,1,narrow,12,,,,,,\n", says: "warning: line 2 of the log has set 1 of tuck-hold on 2027-01-11 with other bands"},
		{name: "equal sets without numbers, as often as before", log: "2027-01-11,tuck,,,12\n2027-01-11,tuck,,,12\n",
			lines: "2027-01-11,tuck,,,12\n2027-01-11,tuck,,,12\n", there: 2},
		{name: "and once more", log: "2027-01-11,tuck,,,12\n", lines: "2027-01-11,tuck,,,12\n2027-01-11,tuck,,,12\n", there: 1,
			added: "2027-01-11,tuck,,,12,,,,,,\n", says: "warning: line 2 of the log has another set of tuck-hold"},
		{name: "a session done, and done with pain", log: "2027-01-11,done\n", lines: "2027-01-11,done,,,,,,,3\n",
			says: "the session of 2027-01-11 is in the log already, on line 2, with other values"},
		{name: "a session done with the same pain", log: "2027-01-11,done,,,,,,,wrists 2\n", lines: "2027-01-11,Done,,,,,,,w 2/10\n", there: 1},
		{name: "a morning with more pain", log: "2027-01-12,morning,,,,,,,elbows 1\n", lines: "2027-01-12,morning,,,,,,,elbows 3\n2027-01-12,morning,,,,,,,elbows 1\n", there: 1,
			added: "2027-01-12,morning,,,,,,,elbows 3,,\n"},
		{name: "said less than is there", log: "2027-01-11,tuck,,free,12 12 9,,- 8 9,yes yes no,wrists 1,,cold hall\n",
			lines: "2027-01-11,tuck,,free,12 12 9\n", there: 1},
		{name: "said more than is there", log: "2027-01-11,tuck,,free,12 12 9\n", lines: "2027-01-11,tuck,,free,12 12 9,,9\n",
			says: "set 3 of tuck-hold on 2027-01-11 is in the log already, on line 2, with other values"},
		{name: "the bands as printed, and the same by name", log: "2027-01-11,tuck,,narrow,12 12,,8\n", lines: "2027-01-11,tuck,,,12 12\n", there: 1},
		{name: "the bands as printed, and other seconds by name", log: "2027-01-11,tuck,,narrow,12 12\n", lines: "2027-01-11,tuck,,,12 9\n",
			added: "2027-01-11,tuck,2,,9,,,,,,\n", says: "warning: line 2 of the log has set 2 of tuck-hold on 2027-01-11 with other bands"},
		{name: "a session done with pain, and done", log: "2027-01-11,done,,,,,,,wrists 1 elbows 0,,cold hall\n", lines: "2027-01-11,done\n", there: 1},
		{name: "a note that a mail broke", log: "2027-01-11,done,,,,,,,,,cold hall\n", lines: LogHeader() + "\n2027-01-11,done,,,,,,,,,\"cold\nhall\"\n", there: 1},
		{name: "another day", log: "2027-01-11,tuck,1,,12\n", lines: "2027-01-13,tuck,1,,12\n", added: "2027-01-13,tuck,1,,12,,,,,,\n"},
		{name: "a new log", lines: "2027-01-13,done\n", added: header + "2027-01-13,done,,,,,,,,,\n"},
	}
	for _, c := range cases {
		added, there, report := given(t, c.log, c.lines)
		if added != c.added || there != c.there || !strings.Contains(report, c.says) || c.says == "" && report != "" {
			t.Errorf("%s: added %q, want %q; %d there, want %d\n%s", c.name, added, c.added, there, c.there, report)
		}
	}
}

// Any part of an export, given in any order, and then the whole of it: the log holds
// each line once, and in the end the whole twice adds nothing.
func TestGivenInParts(t *testing.T) {
	studio, a := withThinBand(maren(t))
	rapid.Check(t, func(t *rapid.T) {
		entries := someEntries(t)
		part := rapid.SliceOfNDistinct(rapid.IntRange(0, len(entries)-1), 0, len(entries), rapid.ID[int]).Draw(t, "part")
		var log []byte
		add := func(some []program.Entry) Addition {
			added, problems := AddToLog(studio, a, "log.csv", log, some)
			if problems.Stop() {
				t.Fatal(reported(problems))
			}
			log = append(log, added.Bytes...)
			return added
		}
		for _, i := range part {
			add(entries[i : i+1])
		}
		add(entries)
		if again := add(entries); len(again.Bytes) > 0 || again.There != len(entries) {
			t.Fatalf("again: %q, %d of %d there", again.Bytes, again.There, len(entries))
		}
		read, _ := ReadLog(studio, a, "log.csv", log)
		byLine := func(a, b program.Entry) bool { return written(&a) < written(&b) }
		if diff := cmp.Diff(entries, read.Entries, withoutPlaces, cmpopts.EquateEmpty(), cmpopts.SortSlices(byLine)); diff != "" {
			t.Fatal(diff)
		}
	})
}

// Text around the lines is left out; what could be a line of the log never is.
func TestTextAround(t *testing.T) {
	const line = "2027-01-11,tuck,1,,12\n"
	cases := []struct {
		lines   string
		entries int
		says    []string // each is in the report; none: it is empty
	}{
		{line, 1, nil},
		{"Hello,\n\n" + line, 1, []string{"paste:1:1: warning: 1 line is text above"}},
		{line + "\nBest, Maren\n-- \nsent from a phone\n", 1, []string{"paste:3:1: warning: 3 lines are text below"}},
		{"Hi, pain is gone!\nexercise;date;hold_s\ntuck;2027-01-11;12,5\nBye; see you\n", 1, []string{"paste:1:1: warning: 1 line is", "paste:4:1: warning: 1 line is"}},
		{"sep=;\ndate;exercise;hold_s\n2027-01-11;tuck;12\n", 1, nil},
		{"Hi\nsep=;\ndate;exercise;hold_s\n2027-01-11;tuck;12\n", 1, []string{"1 line is text above"}},
		{"date,exercise\n2027-01-11,done\ndate,exercise\n2027-01-13,done\n", 2, nil}, // two exports
		{"date,exercise,note\n2027-01-11,done,\"a\nb\nc\"\nBye\n", 1, []string{"paste:5:1: warning: 1 line is text below"}},
		{"date,exercise,note\n2027-01-11,done,\"a\n2027-01-12, tuck\nc\"\nBye\n", 1, []string{"paste:5:1: warning: 1 line is text below"}},

		// what looks like a line with a slip is one
		{line + "12.1,tuck,1,,9\n", 1, []string{`paste:2:1: "12.1" is not a date`}},
		{line + "tomorrow,tuck,1,,9\n", 1, []string{`paste:2:1: "tomorrow" is not a date`}},
		{line + "tomorrow,done\n", 1, []string{`paste:2:1: "tomorrow" is not a date`}},
		{line + "2027-01-12,tuk,1,,9\n", 1, []string{`paste:2:12: there is no exercise or step "tuk"`}},
		{line + "a word between\n" + strings.Replace(line, "11", "13", 1), 2, []string{`paste:2:1: "a word between" is not a date`}},
		{"dat,exercise,hold_s\n2027-01-11,tuck,12\n", 0, []string{`the log has no column "date"`}},
		{"date,exercise,note\n2027-01-11,done,\"a\n2027-01-12,done,b\n", 1, []string{"a quote in this line is never closed"}},
		{"Hi\n", 0, []string{"the log has no column"}},
	}
	studio, a := maren(t)
	for _, c := range cases {
		log, problems := ReadNewLines(studio, a, "paste", []byte(c.lines), nil)
		report := reported(problems)
		if len(log.Entries) != c.entries || c.says == nil && report != "" {
			t.Errorf("%q: %d entries\n%s", c.lines, len(log.Entries), report)
		}
		for _, want := range c.says {
			if !strings.Contains(report, want) {
				t.Errorf("%q: no %q in\n%s", c.lines, want, report)
			}
		}
	}
}

// FuzzPaste: whatever is pasted, reading ends without a panic, and what it gives can
// be given twice.
func FuzzPaste(f *testing.F) {
	f.Add("Hi,\n" + LogHeader() + "\n2027-01-11,tuck,1,,12\n2027-01-11,tuck,2,,9,,9\nBye, \"M\"\n")
	f.Add("2027-01-11,planche lean,,,8 8,,,,,17.5,\n\n> old\n")
	f.Add("client,date,exercise\nMaren,2027-01-11,done\nnobody,2027-01-12,done\n,,\n")
	f.Add("sep=;\nDatum;Übung\n\"\n")
	studio, a := maren(f)
	f.Fuzz(func(t *testing.T, text string) {
		all, problems := ReadNewLinesOfAll(studio, []string{"oda"}, "all.csv", []byte(text))
		checkOutcome(t, true, problems)
		if len(all) > 1 {
			t.Error(len(all), "clients in a studio of one")
		}
		log, problems := ReadNewLines(studio, a, "paste", []byte(text), nil)
		checkOutcome(t, true, problems)
		if problems.Stop() || len(log.Entries) == 0 {
			return
		}
		added, problems := AddToLog(studio, a, "log.csv", nil, log.Entries)
		if problems.Stop() {
			t.Fatal(reported(problems))
		}
		again, problems := AddToLog(studio, a, "log.csv", added.Bytes, log.Entries)
		if len(again.Bytes) > 0 || problems.Stop() {
			t.Fatalf("%q adds %q to %q\n%s", text, again.Bytes, added.Bytes, reported(problems))
		}
	})
}

// A file of the whole studio, line by line: whose each is, and what is wrong.
func TestLinesOfAll(t *testing.T) {
	folder := sound(t)
	for slug, name := range map[string]string{"joss": "Joss Vale", "anna-b": "Anna Bell", "anna-k": "Anna Kerr"} {
		text := strings.Replace(string(folder["content/clients/maren/assessment.yaml"].Data), "name: Maren", "name: "+name, 1)
		folder = with(folder, "content/clients/"+slug+"/assessment.yaml", text)
	}
	studio, problems := Read(folder, library(t), nil)
	if len(studio.Clients) != 4 {
		t.Fatal(reported(problems))
	}
	for _, c := range []struct{ line, want string }{
		{"2027-01-11,maren,done", "maren"},
		{"2027-01-11,Joss,done", "joss"},
		{"2027-01-11,joss vale,done", "joss"},
		{"2027-01-11,Anna  Bell,done", "anna-b"},
		{"2027-01-11,ANNA-K,done", "anna-k"},
		{"2027-01-11,Anna,done", `all.csv:2:12: "Anna" could be any of these: anna-b, anna-k`},
		{"2027-01-11,Jos,done", `all.csv:2:12: there is no client "Jos"`},
		{"2027-01-11,Oda,done", "all.csv:2:12: the assessment of oda cannot be read"},
		{"2027-01-11,,done", "all.csv:2:12: the line does not say whose it is"},
		{"2027-01-11,joss,tuk", `all.csv:2:17: there is no exercise or step "tuk"`},
		{"2027-13-11,joss,done", `all.csv:2:1: "2027-13-11" is no day of the calendar`},
	} {
		logs, problems := ReadNewLinesOfAll(&studio, []string{"oda"}, "all.csv", []byte("date,client,exercise\n"+c.line+"\n"))
		got := reported(problems)
		if got == "" {
			for _, l := range logs {
				got += l.Client.Slug
			}
		}
		if !strings.HasPrefix(got, c.want) || !problems.Stop() && got != c.want {
			t.Errorf("%s: %s, want %s", c.line, got, c.want)
		}
	}
}
