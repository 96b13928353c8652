package intake

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	_ "gatepost/program/steady"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// someEntries draws lines that may stand in one log: each on a day of its own, but
// for mornings, of which a day may have several beside what was done.
func someEntries(t *rapid.T) []program.Entry { return entriesOf(t, "tuck") }

func entriesOf(t *rapid.T, step string) []program.Entry {
	var all []program.Entry
	for i := range rapid.IntRange(1, 8).Draw(t, "lines") {
		day := program.NewDate(2027, 1, 5) + program.Date(i)
		all = append(all, someEntry(t, day, step))
		for range rapid.IntRange(0, 2).Draw(t, "mornings") {
			all = append(all, someMorning(t, day))
		}
	}
	return all
}

func someMorning(t *rapid.T, day program.Date) program.Entry {
	pain := rapid.Custom(somePainOf).Filter(func(p program.Pain) bool { return p.Given }).Draw(t, "morning")
	return program.Entry{Date: day, Morning: true, Note: someNote(t), Sets: []program.SetDone{{Pain: pain}}}
}

func someNote(t *rapid.T) string {
	return rapid.SampledFrom([]string{"", "fine", `12" wall`, "a, b; c\td", "two\nlines", "schön – gut", "=1+1", "#"}).Draw(t, "note")
}

func someEntry(t *rapid.T, day program.Date, step string) program.Entry {
	e := program.Entry{Date: day, Note: someNote(t)}
	if rapid.IntRange(0, 5).Draw(t, "done") == 0 {
		e.AsPrinted = true
		if pain := somePainOf(t); pain.Given {
			e.Sets = []program.SetDone{{Pain: pain}}
		}
		return e
	}
	e.Exercise, e.Step = "tuck-hold", step
	counted := rapid.Bool().Draw(t, "counted")
	if step != "tuck" { // of a press or a lift, whose help is pads or blocks
		if e.RigGiven = rapid.Bool().Draw(t, "rig"); e.RigGiven {
			height := float64(rapid.SampledFrom([]int{0, 20, 50, 75, 123, 400}).Draw(t, "height")) / 1000
			if e.Rig.Pad = height; step == "floor" {
				e.Rig = program.Rig{Block: height}
			}
		}
		e.Sets = someSets(t, true)
		return e
	}
	if counted {
		e.Exercise, e.Step = "planche-lean", ""
		e.Ahead = float64(rapid.SampledFrom([]int{0, 10, 178, 185, 600}).Draw(t, "ahead")) / 1000
	}
	if rapid.IntRange(0, 3).Draw(t, "weighed") == 0 { // by a scale: what the toes left on it, or a band
		newtons := float64(rapid.SampledFrom([]int{500, 5000, 13500, 12345, 60000}).Draw(t, "grams")) / 1000 * standardGravity
		if e.Exercise, e.Step, e.Ahead, e.Scale = "tuck-on-scale", "", 0, newtons; rapid.Bool().Draw(t, "band") {
			e.Exercise, e.Step, e.Scale = "tuck-hold", "tuck", 0
			e.RigGiven, e.Rig = true, program.Rig{Bands: []string{"thin"}, Pull: newtons}
		}
		e.Sets = someSets(t, false)
		return e
	}
	if rapid.Bool().Draw(t, "rig") {
		e.RigGiven = true
		e.Rig.Bands = rapid.SampledFrom([][]string{nil, {"narrow"}, {"middle"}, {"narrow", "middle"}}).Draw(t, "bands")
		if e.DropGiven = len(e.Rig.Bands) > 0 && rapid.Bool().Draw(t, "strap"); e.DropGiven {
			e.Rig.Drop = rapid.SampledFrom([]float64{0, 0.2, 0.4}).Draw(t, "drop")
		}
	}
	e.Sets = someSets(t, counted)
	return e
}

func someSets(t *rapid.T, counted bool) []program.SetDone {
	sets := make([]program.SetDone, rapid.IntRange(1, 6).Draw(t, "sets"))
	for i := range sets {
		s := &sets[i]
		switch rapid.IntRange(0, 6).Draw(t, "kind") {
		case 0: // not said
			s.Clean = rapid.SampledFrom([]program.Clean{"", yes}).Draw(t, "clean")
		case 1:
			if s.Clean = no; counted { // 0 says nothing of its column
				s.Reps = 1
			}
		default:
			s.Clean = rapid.SampledFrom([]program.Clean{"", yes, no}).Draw(t, "clean")
			if counted {
				s.Reps = rapid.IntRange(1, 30).Draw(t, "reps")
			} else {
				s.Seconds = float64(rapid.IntRange(1, 600).Draw(t, "seconds")) / 10
			}
		}
		s.RPE = float64(rapid.SampledFrom([]int{0, 2, 13, 14, 17, 20}).Draw(t, "rpe")) / 2
		s.Pain = somePainOf(t)
		if len(sets) > 1 {
			s.Number = i + 1
		}
	}
	if len(sets) == 1 {
		sets[0].Number = rapid.IntRange(0, 5).Draw(t, "number")
	}
	return sets
}

func somePainOf(t *rapid.T) program.Pain {
	joint := rapid.IntRange(-1, 10)
	switch rapid.IntRange(0, 3).Draw(t, "pain") {
	case 0:
		return noPain
	case 1:
		return program.Pain{Given: true, Wrists: joint.Draw(t, "wrists"), Elbows: joint.Draw(t, "elbows"), Shoulders: rapid.IntRange(0, 10).Draw(t, "shoulders"), Other: joint.Draw(t, "other")}
	}
	return program.Pain{}
}

// withThinBand gives a client a band that nobody measured.
func withThinBand(studio *program.Studio, a *program.Assessment) (*program.Studio, *program.Assessment) {
	with := *a
	with.Bands = append(slices.Clone(a.Bands), program.Band{Name: "thin"})
	return studio, &with
}

// What is added to a log reads as it was: in each of the forms a log may have.
func TestLogRoundTrip(t *testing.T) {
	studio, a := withThinBand(maren(t))
	roundTrip(t, studio, a, "tuck")
	studio, a = clientOfCase(t, "press-sound")
	roundTrip(t, studio, a, "wall")
	studio, a = clientOfCase(t, "lift-sound")
	roundTrip(t, studio, a, "floor")
}

func roundTrip(t *testing.T, studio *program.Studio, a *program.Assessment, step string) {
	rapid.Check(t, func(t *rapid.T) {
		entries := entriesOf(t, step)
		log := rapid.SampledFrom([]string{"", LogHeader() + "\n",
			"note;ahead;pain;clean;rpe;reps;hold_s;bands;set;exercise;date\r\n",
			strings.ReplaceAll(LogHeader(), ",", "\t") + "\tmood"}).Draw(t, "log")
		added, problems := AddToLog(studio, a, "log.csv", []byte(log), entries)
		if problems.Stop() {
			t.Fatalf("%s\n%q", reported(problems), added.Bytes)
		}
		again, problems := ReadLog(studio, a, "log.csv", append([]byte(log), added.Bytes...))
		if diff := cmp.Diff(entries, again.Entries, withoutPlaces, cmpopts.EquateEmpty()); diff != "" || problems.Stop() {
			t.Fatalf("%q (-want +got):\n%s\n%s", added.Bytes, diff, reported(problems))
		}
		twice, problems := AddToLog(studio, a, "log.csv", append([]byte(log), added.Bytes...), entries)
		if len(twice.Bytes) > 0 || twice.There != len(entries) || len(problems) > 0 {
			t.Fatalf("a second time: %q, %d of %d there\n%s", twice.Bytes, twice.There, len(entries), reported(problems))
		}
	})
}

// dialects rewrites a log by Python's csv module: as spreadsheets in different
// countries would save it. The forms follow after lines of dashes.
const dialects = `
import csv, io, sys
rows = list(csv.reader(io.TextIOWrapper(sys.stdin.buffer, encoding="utf-8", newline="")))
forms = [dict(dialect="excel"), dict(dialect="excel-tab"), dict(dialect="unix"),
         dict(delimiter=";"), dict(delimiter=";", quoting=csv.QUOTE_ALL), dict(quoting=csv.QUOTE_NONNUMERIC)]
for form in forms:
    out = io.StringIO(newline="")
    csv.writer(out, **form).writerows(rows)
    sys.stdout.buffer.write(out.getvalue().encode("utf-8") + b"-----")
`

// Python's csv module (documented as reading and writing what spreadsheets do)
// reads our logs, and we read what it makes of them.
func TestLogThroughPython(t *testing.T) {
	const python = "/usr/bin/python3"
	if _, err := os.Stat(python); err != nil {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			t.Fatal(python + " is required and not installed")
		}
		t.Skip("left out: " + python + " is not installed, so no log is compared with its csv module")
	}
	studio, a := withThinBand(maren(t))
	for seed := range 5 {
		entries := rapid.Custom(someEntries).Example(seed)
		added, problems := AddToLog(studio, a, "log.csv", nil, entries)
		if problems.Stop() {
			t.Fatal(reported(problems))
		}
		command := exec.Command(python, "-c", dialects)
		command.Stdin = bytes.NewReader(added.Bytes)
		out, err := command.Output()
		if err != nil {
			t.Fatal(err)
		}
		forms := bytes.Split(bytes.TrimSuffix(out, []byte("-----")), []byte("-----"))
		if len(forms) != 6 {
			t.Fatalf("%d forms", len(forms))
		}
		for i, form := range forms {
			log, problems := ReadLog(studio, a, fmt.Sprintf("form %d", i), form)
			if diff := cmp.Diff(entries, log.Entries, withoutPlaces, cmpopts.EquateEmpty()); diff != "" || problems.Stop() {
				t.Fatalf("%q (-want +got):\n%s\n%s", form, diff, reported(problems))
			}
		}
	}
}

// Whatever a log holds, reading ends without a panic; what it gives can be added
// to a new log and reads the same there.
func FuzzLog(f *testing.F) {
	f.Add(fullLog(2, 3))
	f.Add("sep=;\ndate;exercise;hold_s;pain\n11.01.2027;tuck;12 0 -;w 2|-|0\n")
	f.Add("date,exercise,pain\n2027-01-11,morning,\n2027-01-11,Morning,w 2 e 1\n2027-01-11,done,w 2 e 1\n2027-01-12,morning,3\n2027-01-11,morning,-")
	f.Add("date;exercise;ahead;hold_s\n2027-01-11;planche lean;17,5;12 12\n2027-01-11;planche lean;7 in;0\n2027-01-12;tuck;18 cm;9")
	f.Add("date,exercise,note\n2027-01-11,done,\"a\n2027-01-12,done,\"b\"\"\n")
	f.Add(LogHeader() + "\r\n2027-01-11,tuck,,narrow strap 20 cm,3 x 12,,7 8 9,no,3/10,\"x\"\n2027-01-11,tuck,1,,")
	f.Add("date,exercise,bands,reps\n2027-01-11,wall,pad 10 cm,5 5\n2027-01-11,wall,7.5-cm-pads,3\n2027-01-12,tuck,pad 3 in,9")
	f.Add("date,exercise,bands,reps\n2027-01-11,floor,block 10 cm,3 3\n2027-01-11,floor,7.5-cm-blocks,3\n2027-01-12,high,block 3 in,9")
	f.Add("date,exercise,bands,hold_s\n2027-01-11,tuck,thin 6.1234 kg,5 5\n2027-01-11,tuck-on-scale,scale 12 lb,3\n2027-01-12,tuck-on-scale,toes 9")
	studio, a := withThinBand(maren(f))
	pressing, b := clientOfCase(f, "press-sound")
	lifting, c := clientOfCase(f, "lift-sound")
	f.Fuzz(func(t *testing.T, text string) {
		readAgain(t, studio, a, text)
		readAgain(t, pressing, b, text)
		readAgain(t, lifting, c, text)
	})
}

func readAgain(t *testing.T, studio *program.Studio, a *program.Assessment, text string) {
	log, problems := ReadLog(studio, a, "log.csv", []byte(text))
	checkOutcome(t, true, problems)
	if problems.Stop() || len(log.Entries) == 0 {
		return
	}
	added, refused := AddToLog(studio, a, "log.csv", nil, log.Entries)
	if refused.Stop() {
		t.Fatalf("%q is refused:\n%s", added.Bytes, reported(refused))
	}
	again, _ := ReadLog(studio, a, "log.csv", added.Bytes)
	if diff := cmp.Diff(log.Entries, again.Entries, withoutPlaces, cmpopts.EquateEmpty()); diff != "" {
		t.Fatalf("%q (-want +got):\n%s", added.Bytes, diff)
	}
}
