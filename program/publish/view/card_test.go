package view_test

import (
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// cardOf is the card of a session that holds one item.
func cardOf(t *testing.T, p *program.Program, item program.Prescription) view.CardItem {
	t.Helper()
	return cardIn(t, viewtest.Library(), p, item)
}

func cardIn(t *testing.T, lib *program.Library, p *program.Program, item program.Prescription) view.CardItem {
	t.Helper()
	p.Weeks[0].Sessions[0].Items = []program.Prescription{item}
	v, problems := view.New(viewtest.Coach(), lib, p)
	if problems.Stop() {
		t.Fatal(problems)
	}
	return v.Cards[0].Items[0]
}

// What is written on a card: seconds of each set, a lean's distance if it was
// another, RPE, and whether the main work was clean. A try is written in seconds.
func TestBoxesOfACard(t *testing.T) {
	for name, c := range map[string]struct {
		item program.Prescription
		want string
	}{
		"main":  {program.Prescription{Role: program.RoleMain, Step: "tuck", Sets: 4, Hold: 12}, "1 2 3 4 RPE clean"},
		"lean":  {program.Prescription{Role: program.RoleSecond, Exercise: "planche-lean", Ahead: 0.14, Sets: 2, Hold: 15}, "1 2 14 cm? RPE"},
		"check": {program.Prescription{Role: program.RoleTest, Step: "tuck", Sets: 1, Check: true}, "s RPE clean"},
		"test":  {program.Prescription{Role: program.RoleTest, Step: "tuck", Sets: 1, Max: true}, "s RPE clean"},
		"tries": {program.Prescription{Role: program.RoleAhead, Step: "tuck", Sets: 3, Try: true}, "1 2 3"},
		"drill": {program.Prescription{Role: program.RoleStrength, Exercise: "straight-arm-raise", Sets: 2, Reps: 8}, "1 2 RPE"},
	} {
		var got []string
		for _, b := range cardOf(t, viewtest.Program(), c.item).Boxes {
			got = append(got, plain(b.Caption))
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %s", name, got, c.want)
		}
	}
}

func TestWordsOfOpenSets(t *testing.T) {
	for want, item := range map[string]program.Prescription{
		"3 tries, as long as it stays clean; write the seconds": {Role: program.RoleAhead, Step: "tuck", Sets: 3, Try: true},
		"1 try, as long as it stays clean; write the seconds":   {Role: program.RoleAhead, Step: "tuck", Sets: 1, Try: true},
		"One check hold: until two seconds are left":            {Role: program.RoleTest, Step: "tuck", Sets: 1, Check: true},
		"One hold, as long as it stays clean":                   {Role: program.RoleTest, Step: "tuck", Sets: 1, Max: true},
	} {
		got := cardOf(t, viewtest.Program(), item)
		if plain(got.Amount) != want || got.Hold != 0 || got.Easier != "" || got.Harder != "" {
			t.Errorf("%q of %d s, easier %q, harder %q, want %q and nothing else", got.Amount, got.Hold, got.Easier, got.Harder, want)
		}
	}
	lib := viewtest.Library() // what is pressed or lifted is counted
	lib.RoadMaps[0].Load = program.LoadLift
	got := cardIn(t, lib, viewtest.Program(), program.Prescription{Role: program.RoleTest, Step: "tuck", Sets: 3, Try: true})
	if want := "3 tries, as many as stay clean; write how many"; plain(got.Amount) != want {
		t.Errorf("%q of a lift, want %q", got.Amount, want)
	}
}

// The day rule's numbers (common practice): a free hold that is too much today is
// three seconds shorter, one that was easy a second longer next time.
func TestEasierByThreeSeconds(t *testing.T) {
	p := viewtest.Program()
	p.Bands = nil
	got := cardOf(t, p, program.Prescription{Role: program.RoleMain, Step: "tuck", Sets: 4, Hold: 12})
	if plain(got.Easier) != "9 s" || plain(got.Harder) != "13 s" {
		t.Errorf("easier %q, harder %q than 12 s, want 9 s and 13 s", got.Easier, got.Harder)
	}
}

// Where the block has moved on, the cards of main work say whose gate comes first,
// and no other card does.
func TestGateReminder(t *testing.T) {
	v := newView(t)
	said := 0
	for _, c := range v.Cards {
		main := slices.ContainsFunc(c.Items, func(i view.CardItem) bool { return i.RoleKey == program.RoleMain })
		if want := c.Number >= 9 && main; (c.Note == "Only once the open tuck gate is signed.") != want {
			t.Errorf("week %d, %s: %q", c.Number, c.Date, c.Note)
		} else if want {
			said++
		}
	}
	if said != 7 { // two days in each of weeks 9 to 11, one in the last
		t.Errorf("on %d cards, want 7", said)
	}
}

// Nobody travels to a hall for twelve minutes on the floor: the card says that these may
// be done at home. With a band they may not, nor in a gate's week or a test's.
func TestAShortDayIsAtHome(t *testing.T) {
	hold := program.Prescription{Exercise: "planche-lean", Role: program.RoleMain, Sets: 2, Hold: 9, Ahead: 0.12, Rest: 120}
	for name, c := range map[string]struct {
		bend func(*program.Week, *program.Session)
		want string
	}{
		"twelve minutes": {func(*program.Week, *program.Session) {}, "12 min, at home"},
		"half an hour":   {func(_ *program.Week, s *program.Session) { s.Minutes = 30 }, "30 min"},
		"a band":         {func(_ *program.Week, s *program.Session) { s.Items[0].Rig.Bands = []string{"narrow"} }, "12 min"},
		"a scale":        {func(_ *program.Week, s *program.Session) { s.Items[0].Scale = 50 }, "12 min"},
		"parallettes":    {func(w *program.Week, _ *program.Session) { w.Stance.Grip = true }, "12 min"},
		"a gate":         {func(w *program.Week, _ *program.Session) { w.Gate = true }, "12 min"},
		"a test":         {func(w *program.Week, _ *program.Session) { w.Kind = program.WeekTest }, "12 min"},
	} {
		p := viewtest.Program()
		w := &p.Weeks[3]
		w.Stance.Grip = false
		w.Sessions = w.Sessions[:1]
		day := &w.Sessions[0]
		day.Minutes, day.Items = 12, []program.Prescription{hold}
		c.bend(w, day)
		v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
		if problems.Stop() {
			t.Fatal(problems)
		}
		i := slices.IndexFunc(v.Cards, func(c view.Card) bool { return c.Number == 4 })
		if got := plain(v.Cards[i].Minutes); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// A note of age is for the coach alone.
func TestYouthIsPrivate(t *testing.T) {
	for _, code := range []string{"youth", "older", "elbows-sore", "shoulders-sore", "no-hands"} {
		p := viewtest.Program()
		p.Notes = []program.Note{{Code: code}}
		v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
		if len(v.Notes) != 0 || len(v.AllNotes) != 1 {
			t.Errorf("%s: %d notes on paper, %d for the coach, want 0 and 1", code, len(v.Notes), len(v.AllNotes))
		}
	}
}

// Tries of a balance have the step's figure on their card, as a hold has.
func TestTriesHaveTheirFigure(t *testing.T) {
	p := viewtest.Program()
	w := &p.Weeks[0]
	w.Stance.Height = 1.7
	w.Sessions[0].Items = []program.Prescription{{Exercise: w.Exercise, Step: w.Step, Role: program.RoleTest, Try: true, Sets: 10, Hold: 10, Rest: 60}}
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	if c := v.Cards[0]; !c.Figure.Drawn() || !c.Items[0].Shown {
		t.Errorf("drawn: %v, shown: %v", c.Figure.Drawn(), c.Items[0].Shown)
	}
}

// A card on which work is missing for a joint's sake says so, and on the way back that two
// mornings have to have been quiet; what is shared says neither.
func TestCardsSayThatAJointRests(t *testing.T) {
	p := viewtest.Program()
	week := &p.Weeks[1]
	week.Sessions[0].Dropped = []program.Note{{Code: "joint-rests", Values: []program.Value{{Name: "joint", Kind: program.ValueWord, Text: "joints_log.elbows"}, {Name: "until", Kind: program.ValueDate, Number: float64(week.Sessions[0].Date)}}}}
	week.Sessions[1].Dropped = []program.Note{{Code: "joint-back"}}
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	rests, back := 0, 0
	for _, c := range v.Cards {
		switch c.Joint {
		case "Short on purpose: a joint rests.":
			rests++
		case "The way back: only after two quiet mornings.":
			back++
		}
	}
	if rests != 1 || back != 1 {
		t.Errorf("%d rest and %d are on the way back", rests, back)
	}
	for _, c := range v.Shared(func(string) program.Stance { return program.Stance{} }).Cards {
		if c.Joint != "" {
			t.Errorf("shared: %q", c.Joint)
		}
	}
}

// A card's code leads to its day; of a client who has no pages, and of a public program, to
// the exercise.
func TestACodeLeadsToItsDay(t *testing.T) {
	for _, c := range []struct {
		share program.Share
		want  string
	}{
		{program.ShareSite, "c/k7f3q9w2m4/day-2027-01-11.html"},
		{program.SharePrint, "exercise-open-tuck-hold.html"},
	} {
		p := viewtest.Program()
		p.Client.Share = c.share
		coach := viewtest.Coach()
		coach.Site = "https://hall.example.org/"
		v, _ := view.New(coach, viewtest.Library(), p)
		if got := v.Cards[0].Link; got != "https://hall.example.org/"+c.want {
			t.Errorf("%s: a card of 11 January leads to %s", c.share, got)
		}
	}
}
