package site_test

import (
	"testing"

	"gatepost/program"
	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
)

// Pages, calendar and the worker's list are made of what may be told and of nothing else:
// with all that is private changed they are the same to the byte.
func TestPagesAreMadeOfWhatIsShared(t *testing.T) {
	from := source(t)
	s := site.New(from)
	own := from.Clients[0]
	own.Progress = jointsRead(t, from.Library)
	want, problems := s.Client(own)
	if problems.Stop() || len(want) < 20 {
		t.Fatal(len(want), problems)
	}
	other := private(s.Average(own))
	other.Slug = own.Slug // whose address it is
	got, _ := s.Client(other)
	if len(got) != len(want) {
		t.Fatalf("%d files instead of %d", len(got), len(want))
	}
	for i := range want {
		if got[i].Path != want[i].Path || string(got[i].Bytes) != string(want[i].Bytes) {
			t.Errorf("%s tells something of what is private", want[i].Path)
		}
	}
}

// private is a shared view with something in every place that sharing clears.
func private(v *view.View) *view.View {
	const canary = "canary"
	note := []string{canary}
	v.Client, v.On, v.Measured = "Maren Canaryson", canary, 12345
	v.Notes, v.AllNotes, v.Other = note, note, []view.OtherDay{{Day: 2, Line: canary, What: canary}}
	v.CueWorth, v.ForCoach = []view.CueWorth{{Cue: canary, Worth: canary}}, view.CoachPage{Asks: note, Dropped: note}
	v.Labels.Measured, v.Labels.Ladder = canary, canary
	v.Progress.Coach = append(v.Progress.Public, view.Chart{Key: "pain", Title: canary, Desc: canary})
	v.Progress.Public = append(v.Progress.Public, view.Chart{Key: "help", Title: canary, Desc: canary})
	v.Places = program.Places{"name": {File: canary}}
	for i := range v.Ladder {
		v.Ladder[i].Share, v.Ladder[i].ShareOf1, v.Ladder[i].Stance = "79 %", 0.79, program.Stance{Height: 1.9}
	}
	for i := range v.Pictures {
		v.Pictures[i].Help, v.Pictures[i].Raised, v.Pictures[i].Stance = "79 kg", canary, program.Stance{Height: 1.9}
	}
	for i := range v.Weeks {
		w := &v.Weeks[i]
		w.Help, w.Helped, w.Notes, w.Stance = "79 kg", "79 kg", note, program.Stance{Height: 1.9}
		for j := range w.Sessions {
			w.Sessions[j].Dropped = note
			for k := range w.Sessions[j].Items {
				w.Sessions[j].Items[k].Help = "79 kg"
			}
		}
	}
	for i := range v.Cards {
		for _, items := range [][]view.CardItem{v.Cards[i].Prepare, v.Cards[i].Items} {
			for j := range items {
				items[j].Help = "79 kg"
			}
		}
	}
	return v
}
