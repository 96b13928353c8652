package intake

import (
	"strings"
	"testing"

	"gatepost/program"
)

// What is written of balance is what is read: six of ten tries where the gate does not say,
// no word of effort, the best in seconds, and how many of how many reached.
func TestBalanceIsRead(t *testing.T) {
	studio, a := clientOfCase(t, "balance-sound")
	m, _ := studio.Library.RoadMap("poise")
	line, three, minute := m.Steps[0], m.Steps[1], m.Steps[2]
	if want := (program.Press{Rest: "wall", Gap: 0.15}); m.Load != "balance" || line.Press != want || line.Gate.Tried() {
		t.Errorf("%v, line: %+v", m.Load, line)
	}
	if want := (program.Gate{Sets: 10, Hold: 3, Reached: 6, Sessions: 2, Apart: 48, PainMax: 2}); three.Gate != want {
		t.Errorf("gate: %+v", three.Gate)
	}
	if g := minute.Gate; g.Sets != 5 || g.Reached != 4 || g.Hold != 60 || g.Apart != 24 {
		t.Errorf("gate: %+v", g)
	}
	if x := a.Tests[1]; x.Seconds != 12 || x.Tries != (program.Tries{Reached: 4, Of: 10}) || a.Tests[2].Tries != (program.Tries{Of: 10}) || a.Tests[0].Tries.Of != 0 {
		t.Errorf("%+v", a.Tests)
	}
	e := a.Log.Entries
	if s := e[0].Sets[0]; s.Seconds != 12 || s.Tries != (program.Tries{Reached: 4, Of: 10}) || s.Reps != 0 {
		t.Errorf("%+v", s)
	}
	if s := e[1].Sets[0]; s.Seconds != 0 || s.Tries != (program.Tries{Of: 10}) || s.Clean != "" || s.Pain.Wrists != 1 {
		t.Errorf("%+v", s)
	}
	if len(e[2].Sets) != 4 || e[2].Sets[3].Seconds != 7 || e[2].Sets[3].Tries.Of != 0 {
		t.Errorf("%+v", e[2].Sets)
	}
}

// A line of tries that is written reads the same again, and twice it is there once.
func TestTriesRoundTrip(t *testing.T) {
	studio, a := clientOfCase(t, "balance-sound")
	text := LogHeader() + "\n2027-01-11,three,,,12,4 of 10,8,yes,wrists 2,,a note\n2027-01-13,three,,,,0/10,,,,,\n2027-01-16,three,,,3 0 2 7,,,,,,\n"
	readAgain(t, studio, a, text)
	log, _ := ReadLog(studio, a, "log.csv", []byte(text))
	added, problems := AddToLog(studio, a, "log.csv", []byte(text), log.Entries)
	if problems.Stop() || added.Lines != 0 || added.There != 3 {
		t.Errorf("%+v, %v", added, problems)
	}
	drill, problems := ReadLog(studio, a, "log.csv", []byte("date,exercise,reps\n2027-01-14,Tuck on scale,3 x 5\n"))
	if d := drill.Entries; problems.Stop() || len(d) != 1 || d[0].Step != "" || len(d[0].Sets) != 3 || d[0].Sets[0].Reps != 5 {
		t.Errorf("its exercise as a drill: %+v, %v", d, problems)
	}
	studio.Library.Words["log.of"] = "von"
	if german, problems := ReadLog(studio, a, "log.csv", []byte(strings.Replace(text, "4 of 10", "4 von 10", 1))); problems.Stop() || german.Entries[0].Sets[0].Tries.Reached != 4 {
		t.Error(problems)
	}
}
