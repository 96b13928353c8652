package intake

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"gatepost/program"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// maren is the studio of the cases with its client.
func maren(t testing.TB) (*program.Studio, *program.Assessment) {
	t.Helper()
	studio, problems := Read(sound(t), library(t), nil)
	if problems.Stop() {
		t.Fatal(reported(problems))
	}
	return &studio, &studio.Clients[0]
}

// readLines reads lines below the usual header.
func readLines(t testing.TB, lines ...string) (program.Log, program.Problems) {
	t.Helper()
	studio, a := maren(t)
	return ReadLog(studio, a, "log.csv", []byte(LogHeader()+"\n"+strings.Join(lines, "\n")+"\n"))
}

const (
	yes = program.CleanYes
	no  = program.CleanNo
)

var (
	noPain   = program.Pain{Given: true}
	somePain = program.Pain{Given: true, Wrists: -1, Elbows: -1, Shoulders: -1, Other: 3}
	twoPains = program.Pain{Given: true, Wrists: 2, Elbows: 1, Shoulders: -1, Other: -1}
)

// What is written in a line, and what it says.
func TestLogValues(t *testing.T) {
	day := program.NewDate(2027, 1, 11)
	tuck := func(sets ...program.SetDone) program.Entry {
		return program.Entry{Date: day, Exercise: "tuck-hold", Step: "tuck", Sets: sets}
	}
	lean := func(ahead float64) program.Entry {
		return program.Entry{Date: day, Exercise: "planche-lean", Ahead: ahead, Sets: []program.SetDone{{Seconds: 12}}}
	}
	morning := func(pain program.Pain) program.Entry {
		return program.Entry{Date: day, Morning: true, Sets: []program.SetDone{{Pain: pain}}}
	}
	rigged := func(drop float64, given bool, bands ...string) program.Entry {
		e := tuck(program.SetDone{Seconds: 12})
		e.Rig, e.RigGiven, e.DropGiven = program.Rig{Bands: bands, Drop: drop}, true, given
		return e
	}
	cases := []struct {
		line string
		want program.Entry
	}{
		{"2027-01-11,done", program.Entry{Date: day, AsPrinted: true}},
		{"2027-01-11,Done,,,,,,,3,,ok", program.Entry{Date: day, AsPrinted: true, Note: "ok", Sets: []program.SetDone{{Pain: somePain}}}},
		{"2027-01-11,morning,,,,,,,elbows 3,", morning(program.Pain{Given: true, Wrists: -1, Elbows: 3, Shoulders: -1, Other: -1})},
		{"2027-01-11,MORNING,,,,,,,w 2 e 1", morning(twoPains)},
		{"2027-01-11,Morning", morning(noPain)},
		{"2027-01-11,morning,,,,,,,none", morning(noPain)},
		{"2027-01-11,morning,,,,,,,3/10", morning(somePain)},
		{"2027-01-11,tuck,2,,12", tuck(program.SetDone{Number: 2, Seconds: 12})},
		{"2027-01-11,Tuck Hold,,,12.5,,8.5,yes,0", tuck(program.SetDone{Seconds: 12.5, RPE: 8.5, Clean: yes, Pain: noPain})},
		{`2027-01-11,tuck,,,"12,5",,"8,5"`, tuck(program.SetDone{Seconds: 12.5, RPE: 8.5})},
		{"2027-01-11,tuck,,,12 s", tuck(program.SetDone{Seconds: 12})},
		{"2027-01-11,tuck,,,0", tuck(program.SetDone{Clean: no})},
		{"2027-01-11,tuck", tuck(program.SetDone{})},

		// several sets: one number is the last one's, a yes is everyone's
		{"2027-01-11,tuck,,,12 12 9,,9,yes,2/10", tuck(program.SetDone{Number: 1, Seconds: 12, Clean: yes},
			program.SetDone{Number: 2, Seconds: 12, Clean: yes},
			program.SetDone{Number: 3, Seconds: 9, RPE: 9, Clean: yes, Pain: program.Pain{Given: true, Wrists: -1, Elbows: -1, Shoulders: -1, Other: 2}})},
		{`2027-01-11,tuck,,,"12, 12, 9",,7 - 9,no,w 2 e 1`, tuck(program.SetDone{Number: 1, Seconds: 12, RPE: 7},
			program.SetDone{Number: 2, Seconds: 12}, program.SetDone{Number: 3, Seconds: 9, RPE: 9, Clean: no, Pain: twoPains})},
		{"2027-01-11,tuck,,,2x12,,,yes -,0 3", tuck(program.SetDone{Number: 1, Seconds: 12, Clean: yes, Pain: noPain},
			program.SetDone{Number: 2, Seconds: 12, Pain: somePain})},
		{"2027-01-11,tuck,,,12 - 0,,,,- | wrists: 2 elbows: 1 | 0", tuck(program.SetDone{Number: 1, Seconds: 12},
			program.SetDone{Number: 2, Pain: twoPains}, program.SetDone{Number: 3, Clean: no, Pain: noPain})},

		// bands
		{"2027-01-11,tuck,,free,12", rigged(0, false)},
		{"2027-01-11,tuck,,Narrow,12", rigged(0, false, "narrow")},
		{"2027-01-11,tuck,,middle + narrow strap 40 cm,12", rigged(0.4, true, "narrow", "middle")},
		{`2027-01-11,tuck,,"narrow and middle, strap 0,2 m",12`, rigged(0.2, true, "narrow", "middle")},
		{"2027-01-11,tuck,,narrow/middle; drop 0 cm,12", rigged(0, true, "narrow", "middle")},

		// an exercise that is no step, counted
		{"2027-01-11,planche lean,,,,8", program.Entry{Date: day, Exercise: "planche-lean", Sets: []program.SetDone{{Reps: 8}}}},

		// how far a lean went; an inch is 2.54 cm (NIST Special Publication 811), read to the millimetre
		{"2027-01-11,planche lean,,,12,,,,,18 cm", lean(0.18)},
		{"2027-01-11,planche lean,,,12,,,,,18", lean(0.18)},
		{`2027-01-11,planche lean,,,12,,,,,"17,5"`, lean(0.175)},
		{"2027-01-11,planche lean,,,12,,,,,17.5cm", lean(0.175)},
		{"2027-01-11,planche lean,,,12,,,,,0.2 m", lean(0.2)},
		{"2027-01-11,planche lean,,,12,,,,,7 in", lean(0.178)},
		{"2027-01-11,planche lean,,,12,,,,,-", lean(0)},
	}
	for _, c := range cases {
		log, problems := readLines(t, c.line)
		if len(log.Entries) != 1 || problems.Stop() {
			t.Errorf("%s\n%s", c.line, reported(problems))
			continue
		}
		if diff := cmp.Diff(c.want, log.Entries[0], withoutPlaces, cmpopts.EquateEmpty()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.line, diff)
		}
		if at := log.Entries[0].Place; at.Line != 2 || at.Text != c.line {
			t.Errorf("%s: %+v", c.line, at)
		}
	}
}

var withoutPlaces = cmpopts.IgnoreFields(program.Entry{}, "Place")

// Lines that number the sets of one exercise are one entry; others are not.
func TestLogNumberedLines(t *testing.T) {
	log, problems := readLines(t,
		"2027-01-11,tuck,1,free,12,,8", "2027-01-11,tuck,2,free,11,,9,no", "2027-01-11,tuck,3,free,8,,,,1",
		"2027-01-11,tuck,1,narrow,12", "2027-01-11,tuck,2,narrow,12,,,,,,a note", "2027-01-11,tuck,3,narrow,12",
		"2027-01-13,tuck,1,narrow,12", "2027-01-13,tuck,3,narrow,12", "2027-01-15,tuck,,,12", "2027-01-15,tuck,,,12")
	var got []string
	for _, e := range log.Entries {
		got = append(got, fmt.Sprintf("%d:%d", e.Place.Line, len(e.Sets)))
	}
	if want := "2:3 5:1 6:1 7:1 8:1 9:1 10:1 11:1"; strings.Join(got, " ") != want || len(problems) > 0 {
		t.Fatalf("%s, want %s\n%s", got, want, reported(problems))
	}
	want := []program.SetDone{{Number: 1, Seconds: 12, RPE: 8}, {Number: 2, Seconds: 11, RPE: 9, Clean: no},
		{Number: 3, Seconds: 8, Pain: program.Pain{Given: true, Wrists: -1, Elbows: -1, Shoulders: -1, Other: 1}}}
	if diff := cmp.Diff(want, log.Entries[0].Sets); diff != "" {
		t.Error(diff)
	}
	if cap(log.Entries[0].Sets) != 3 {
		t.Error("the room of other sets is open to whoever appends")
	}
}

// Dates by the studio's order: ISO 8601 always, the others by day-first and
// month-first, and where nothing was said only when they read one way. The days
// are those of any calendar.
func TestLogDates(t *testing.T) {
	cases := []struct{ written, unsaid, dayFirst, monthFirst string }{
		{"2027-04-03", "2027-04-03", "2027-04-03", "2027-04-03"},
		{"2027/4/3", "2027-04-03", "2027-04-03", "2027-04-03"},
		{"03/04/2027", "", "2027-04-03", "2027-03-04"},
		{"3.4.27", "", "2027-04-03", "2027-03-04"},
		{"3. 4. 2027", "", "2027-04-03", "2027-03-04"},
		{"04-04-2027", "2027-04-04", "2027-04-04", "2027-04-04"},
		{"13/04/2027", "2027-04-13", "2027-04-13", ""},
		{"04/13/2027", "2027-04-13", "", "2027-04-13"},
		{"29/02/2028", "2028-02-29", "2028-02-29", ""},
		{"29/02/2027", "", "", ""},
		{"13/13/2027", "", "", ""},
		{"00/04/2027", "", "", ""},
		{"04/2027", "", "", ""},
		{"20270403", "", "", ""},
	}
	for _, c := range cases {
		for i, order := range []program.DateOrder{"", program.DayFirst, program.MonthFirst} {
			want := []string{c.unsaid, c.dayFirst, c.monthFirst}[i]
			got, wrong := logDate(c.written, order)
			if got.String() != want || (wrong == nil) != (want != "") {
				t.Errorf("%s, %q: %s, %q; want %q", c.written, order, got, wrong, want)
			}
		}
	}
}

// A spreadsheet's day numbers: 1 January 2000 is 36526 (common knowledge among
// spreadsheets; it is in their manuals as the example of the DATE function's value).
func TestLogDayNumbers(t *testing.T) {
	_, wrong := logDate("36526", "")
	mustContain(t, fmt.Sprint(wrong), "2000-01-01")
}

// Whatever a log is cut after, no number that it then has is other than the one
// that was written; only the end is missing. And the next lines can be added, as
// long as the cut is not inside a character.
func TestLogCutAnywhere(t *testing.T) {
	studio, a := maren(t)
	text := LogHeader() + "\r\n" +
		"2027-01-11,tuck,,\"narrow + middle, strap 20 cm\",12 12 11 9,,8,yes,wrists 2,,\"schön, \"\"warm\"\"\"\r\n" +
		"2027-01-13,done\r\n" +
		"2027-01-14,morning,,,,,,,elbows 10,,stiff\r\n" +
		"2027-01-15,planche lean,1,,15.5,,8.5,,0,,gut\r\n" +
		"2027-01-15,planche lean,2,,15.5,,,,,,\r\n"
	whole, problems := ReadLog(studio, a, "log.csv", []byte(text))
	if len(whole.Entries) != 4 || len(problems) > 0 {
		t.Fatal(reported(problems))
	}
	next := program.Entry{Date: program.NewDate(2027, 1, 18), AsPrinted: true}
	for end := range len(text) {
		cut := []byte(text[:end])
		log, problems := ReadLog(studio, a, "log.csv", cut)
		for i, e := range log.Entries {
			want := whole.Entries[i]
			want.Note, want.Sets = e.Note, want.Sets[:min(len(e.Sets), len(want.Sets))]
			if diff := cmp.Diff(want, e, withoutPlaces, cmpopts.EquateEmpty()); diff != "" {
				t.Fatalf("cut after %q:\n%s", cut, diff)
			}
		}
		added, refused := AddToLog(studio, a, "log.csv", cut, []program.Entry{next})
		if refused.Stop() {
			const said = "the file ends in the middle of a character"
			half := strings.Contains(reported(refused), said) && strings.Contains(reported(problems), said)
			if !half && !problems.Stop() {
				t.Fatalf("cut after %q, nothing can be added:\n%s", cut, reported(refused))
			}
			continue
		}
		again, _ := ReadLog(studio, a, "log.csv", append(slices.Clip(cut), added.Bytes...))
		if diff := cmp.Diff(append(slices.Clip(log.Entries), next), again.Entries, withoutPlaces, cmpopts.IgnoreFields(program.Entry{}, "Note"), cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("cut after %q, then added %q:\n%s", cut, added.Bytes, diff)
		}
	}
}

// Lines go into the columns and the form that the log has.
func TestAddToLog(t *testing.T) {
	studio, a := maren(t)
	log, _ := readLines(t, `2027-01-11,tuck,,narrow,12 11.5,,9,,,,"a, b; c"`)
	for _, c := range []struct{ log, want string }{
		{"", LogHeader() + "\n2027-01-11,tuck,,narrow,12 11.5,,9,,,,\"a, b; c\"\n"},
		{"\ufeffdate;exercise;note;rpe;hold;bands\r\n", "2027-01-11;tuck;\"a, b; c\";9;12 11.5;narrow\r\n"},
		{"exercise,date,mood,hold_s,bands,rpe,note", "\ntuck,2027-01-11,,12 11.5,narrow,9,\"a, b; c\"\n"},
	} {
		added, problems := AddToLog(studio, a, "log.csv", []byte(c.log), log.Entries)
		if string(added.Bytes) != c.want || problems.Stop() {
			t.Errorf("%q: %q, want %q\n%s", c.log, added.Bytes, c.want, reported(problems))
		}
	}
	mornings, _ := readLines(t, "2027-01-12,morning", "2027-01-12,morning,,,,,,,elbows 2,,on the stairs")
	added, problems := AddToLog(studio, a, "log.csv", []byte(LogHeader()+"\n2027-01-12,morning,,,,,,,elbows 1,,\n"), mornings.Entries)
	if want := "2027-01-12,morning,,,,,,,0,,\n2027-01-12,morning,,,,,,,elbows 2,,on the stairs\n"; string(added.Bytes) != want || added.Lines != 2 || len(problems) > 0 {
		t.Errorf("a morning again: %q\n%s", added.Bytes, reported(problems))
	}
	second, _ := readLines(t, "2027-01-11,tuck,2,,11")
	first := []byte(LogHeader() + "\n2027-01-11,tuck,1,,12\n")
	if added, problems := AddToLog(studio, a, "log.csv", first, second.Entries); problems.Stop() || string(added.Bytes) != "2027-01-11,tuck,2,,11,,,,,,\n" {
		t.Errorf("the next set: %q\n%s", added.Bytes, reported(problems))
	}
	_, problems = AddToLog(studio, a, "log.csv", []byte("date,exercise\n"), log.Entries)
	mustContain(t, reported(problems), `the log has no column note`, "Add ,note")
	_, problems = AddToLog(studio, a, "log.csv", []byte("2027-01-11,tuck\n"), log.Entries)
	mustContain(t, reported(problems), "the first line does not name the columns")
}

// What a session can need and a log has no column for.
func TestLogLacks(t *testing.T) {
	studio, _ := maren(t)
	if problems := LogLacks(studio, "log.csv", nil); problems != nil {
		t.Error(reported(problems))
	}
	if problems := LogLacks(studio, "log.csv", []byte(LogHeader()+"\n")); problems != nil {
		t.Error(reported(problems))
	}
	report := reported(LogLacks(studio, "log.csv", []byte("date;exercise;hold_s;reps;bands;rpe;pain\n")))
	mustContain(t, report, "no column clean", "no column note", "Add ;note", "2 problems")
}

// A log of an unsound client is left alone: nobody knows what its bands are.
func TestLogOfUnsoundClient(t *testing.T) {
	folder := with(sound(t), "content/clients/maren/log.csv", "nonsense")
	folder["content/clients/maren/assessment.yaml"].Data = []byte("name: Maren\n")
	_, problems := Read(folder, library(t), nil)
	if strings.Contains(reported(problems), "log.csv") {
		t.Error(reported(problems))
	}
}

func TestNotYet(t *testing.T) {
	log, _ := readLines(t, "2027-01-11,done", "2027-01-13,done", "2027-01-15,tuck,1,,12", "2027-01-15,tuck,2,,12")
	problems := NotYet(&program.Library{Words: inEnglish()}, log, program.NewDate(2027, 1, 13))
	if got := fmt.Sprint(problems); len(problems) != 1 || !strings.Contains(got, "log.csv:4:1: 2027-01-15 has not come yet; today is 2027-01-13") {
		t.Error(got)
	}
}
