package intake

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"gatepost/program"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// german is Maren's studio with German words: the published file's own.
func german(t testing.TB) (*program.Studio, *program.Assessment) {
	t.Helper()
	studio, a := maren(t)
	text, err := os.ReadFile("../../content/words/de.yaml")
	if err != nil {
		t.Fatal(err)
	}
	studio.Library.Words = program.Words{}
	src := newSource("de.yaml", string(text), false)
	src.readYAML("", words(studio.Library.Words))
	if len(src.problems) > 0 {
		t.Fatal(reported(src.problems))
	}
	return studio, a
}

// A German spreadsheet is read as the English log beside it. Both are written out by
// hand.
func TestLogInGerman(t *testing.T) {
	studio, a := german(t)
	const theirs = "\ufeffDatum;Übung;Satz;Bänder;Sekunden;Wdh.;RPE;sauber;Schmerz;Vorlage;Notiz;Klient\r\n" +
		"11.01.2027;tuck;;narrow und middle, Gurt 20 cm;12 12 9,5;;8,5;ja ja nein;Handgelenke 2 Ellbogen 1;;warm;Maren\r\n" +
		"11.01.2027;planche lean;1;;15;;7;Ja;keine;17,5;;Maren\r\n" +
		"13.01.2027;tuck;1;ohne Band;8;;9;Nein;H 3;;;\r\n" +
		"15.01.2027;Erledigt;;;;;;;;;;\r\n" +
		"16.01.2027;Morgen;;;;;;;Schulter 4 anderswo 1;;;\r\n"
	const ours = "date,exercise,set,bands,hold_s,reps,rpe,clean,pain,ahead,note,client\n" +
		"2027-01-11,tuck,,\"narrow + middle, strap 20 cm\",12 12 9.5,,8.5,yes yes no,wrists 2 elbows 1,,warm,\n" +
		"2027-01-11,planche lean,1,,15,,7,yes,0,17.5 cm,,\n" +
		"2027-01-13,tuck,1,free,8,,9,no,wrists 3,,,\n" +
		"2027-01-15,done,,,,,,,,,,\n" +
		"2027-01-16,morning,,,,,,,shoulders 4 other 1,,,\n"
	want, problems := ReadLog(studio, a, "log.csv", []byte(ours))
	if len(want.Entries) != 5 || len(problems) > 0 {
		t.Fatalf("in English, of a German studio:\n%s", reported(problems))
	}
	studio.Coach.Dates = program.DayFirst
	got, problems := ReadLog(studio, a, "log.csv", []byte(theirs))
	if diff := cmp.Diff(want.Entries, got.Entries, withoutPlaces, cmpopts.EquateEmpty()); diff != "" || len(problems) > 0 {
		t.Errorf("(-want +got):\n%s\n%s", diff, reported(problems))
	}

	// New lines go below the German header, and read there.
	added, problems := AddToLog(studio, a, "log.csv", []byte(strings.SplitAfter(theirs, "\n")[0]), want.Entries)
	if first, _, _ := strings.Cut(string(added.Bytes), "\r\n"); first != `2027-01-11;tuck;;narrow + middle strap 20 cm;12 12 9.5;;8.5;yes yes no;wrists 2 elbows 1;;warm;` || problems.Stop() {
		t.Errorf("%q\n%s", first, reported(problems))
	}

	// Pads are help of a press.
	pressing, b := clientOfCase(t, "press-sound")
	germans, _ := german(t)
	pressing.Library.Words = germans.Library.Words
	for cell, want := range map[string]float64{"Polster 10 cm": 0.10, "pad 10": 0.10, "7,5-cm-Polster": 0.075, "Kissen: 4 in": 0.102, "ohne": 0} {
		log, problems := ReadLog(pressing, b, "log.csv", []byte("Datum;Übung;Bänder;Wdh.\n2027-01-11;wall;"+cell+";5 4\n"))
		if len(problems) > 0 || len(log.Entries) != 1 || !log.Entries[0].RigGiven || log.Entries[0].Rig.Pad != want || log.Entries[0].Sets[1].Reps != 4 {
			t.Errorf("%s: %+v\n%s", cell, log.Entries, reported(problems))
		}
	}

	// Blocks are help of a lift.
	lifting, l := clientOfCase(t, "lift-sound")
	lifting.Library.Words = germans.Library.Words
	for cell, want := range map[string]float64{"Klotz 20 cm": 0.20, "block 10": 0.10, "12,5-cm-Klötze": 0.125, "ohne": 0} {
		log, problems := ReadLog(lifting, l, "log.csv", []byte("Datum;Übung;Bänder;Wdh.\n2027-01-11;floor;"+cell+";3 2\n"))
		if len(problems) > 0 || len(log.Entries) != 1 || !log.Entries[0].RigGiven || log.Entries[0].Rig.Block != want || log.Entries[0].Sets[1].Reps != 2 {
			t.Errorf("%s: %+v\n%s", cell, log.Entries, reported(problems))
		}
	}

	// What was missed has no line in German either.
	_, problems = ReadLog(studio, a, "log.csv", []byte("Datum,Übung\n2027-01-11,krank\n"))
	mustContain(t, reported(problems), "Eine Einheit, die ausfiel, hat keine Zeile")
	if problems := LogLacks(studio, "log.csv", []byte(theirs)); len(problems) > 0 {
		t.Error(reported(problems))
	}
}

// What is wrong with an assessment is said in the studio's language.
func TestAssessmentInGerman(t *testing.T) {
	folder := sound(t)
	studio, file := folder["content/studio.yaml"], folder["content/clients/maren/assessment.yaml"]
	folder["content/studio.yaml"] = &fstest.MapFile{Data: []byte(string(studio.Data) + "language: de\n")}
	folder["content/clients/maren/assessment.yaml"] = &fstest.MapFile{Data: []byte(strings.NewReplacer("mass: 58 kg", "mass: 58,500 kg", "arm_span: 168 cm", "arm_span: 210 cm",
		"wrists: sore", "wrists: sour", "minutes: 60", "", "at: 190 cm, force: 3.0 kg", "at: 190 cm, force: 2.0 kg",
		"by: 2027-11-30", "by: 5.6.2028", "conditions: []", "conditions: [Keine]", "kit: [parallettes", "kit: [keine", "step: tuck, hold", "step: tukk, hold").Replace(string(file.Data)))}
	_, problems := Read(folder, os.DirFS("../.."), zeros{})
	got := reported(problems)
	for _, want := range []string{
		`"58,500 kg" hat ein Komma; Dezimalzeichen ist hier der Punkt`, "Schreib 58.500 kg, falls das gemeint ist (Einheiten: kg, lb)",
		"Das ist das 1,27-Fache der Größe", "Erwartet wird zwischen 133 und 199 cm; miss noch einmal, auch die Größe.",
		`"sour" ist keines der Wörter für "wrists"`, `Meintest du "sore"?`, `"minutes" fehlt`, "Ergänz: minutes: 60",
		"Das Band zieht bei 190 cm weniger als bei 160 cm", `"5.6.2028" kann zwei verschiedene Tage meinen`, "Schreib 2028-06-05 oder 2028-05-06; oder sag",
		`"keine" steht neben etwas anderem`, `Es gibt keine Stufe "tukk"`, `Meintest du "tuck"?`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, got)
		}
	}
}

// Every language that is built in has words for every column, for yes and no, and
// for the lines that are no exercise; none of them means two things, and none is an
// English word of another meaning.
func TestWordsOfLogs(t *testing.T) {
	files, err := os.ReadDir("../../content/words")
	if err != nil || len(files) < 2 {
		t.Fatal(files, err)
	}
	for _, f := range files {
		text, err := os.ReadFile("../../content/words/" + f.Name())
		if err != nil {
			t.Fatal(err)
		}
		all := program.Words{}
		newSource(f.Name(), string(text), false).readYAML("", words(all))
		for key := range englishWords {
			if all["log."+key] == "" {
				t.Errorf("%s: log.%s is missing", f.Name(), key)
			}
		}
		lib := program.Library{Words: all}
		for _, group := range [][]string{{"date", "exercise", "set", "bands", "hold_s", "reps", "rpe", "clean", "pain", "ahead", "note", "client"},
			{"clean_yes", "clean_no"}, {"done", "morning", "missed"}, {"wrists", "elbows", "shoulders", "other"}} {
			meaning := map[string]string{}
			for _, key := range group {
				for _, word := range wordsOf(lib.Words, key) {
					if other := meaning[word]; other != "" {
						t.Errorf("%s: %q is %s and %s", f.Name(), word, other, key)
					}
					meaning[word] = key
				}
			}
		}
	}
}

// The words that a built-in library lacks, as a coach's own file may, leave English.
func TestLogWithoutWords(t *testing.T) {
	studio, problems := Read(sound(t), fstest.MapFS(library(t)), nil)
	if problems.Stop() || studio.Library.Words["log.date"] != "" {
		t.Fatal(reported(problems))
	}
	log, problems := ReadLog(&studio, &studio.Clients[0], "log.csv", []byte("date,exercise,ahead\n2027-01-11,planche lean,18 cm\n"))
	if len(log.Entries) != 1 || log.Entries[0].Ahead != 0.18 {
		t.Error(reported(problems))
	}
}
