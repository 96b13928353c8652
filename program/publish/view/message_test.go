package view_test

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// messageOn is the fixture's message of a day, in plain spaces.
func messageOn(t *testing.T, p *program.Program, r *program.Review, changes []program.Change, on program.Date) []string {
	t.Helper()
	m, problems := view.NewMessage(viewtest.Coach(), viewtest.Library(), p, r, changes, cardsOf(changes), on)
	if problems != nil {
		t.Fatal(problems)
	}
	if len(m.Lines) == 0 {
		return nil
	}
	return strings.Split(strings.TrimSuffix(string(m.Text()), "\n"), "\n")
}

func cardsOf(changes []program.Change) (all []program.Date) {
	for _, c := range changes {
		all = append(all, c.Cards...)
	}
	return all
}

// A coach writes on Thursday of the week that comes, on Wednesday of the one that is; before
// the block of its first week, after it of the test.
func TestWhichWeekAMessageIsAbout(t *testing.T) {
	for day, want := range map[string]string{
		"2026-12-20": "Maren, week 1 of 12: 11 to 17 Jan.",
		"2027-01-11": "Maren, week 1 of 12: 11 to 17 Jan.",
		"2027-01-13": "Maren, week 1 of 12: 11 to 17 Jan.", // a Wednesday
		"2027-01-14": "Maren, week 2 of 12: 18 to 24 Jan.",
		"2027-01-17": "Maren, week 2 of 12: 18 to 24 Jan.",
		"2027-04-02": "Maren, the block is over. Well done for coming.",
	} {
		on, err := program.ParseDate(day)
		if err != nil {
			t.Fatal(err)
		}
		if got := messageOn(t, viewtest.Program(), &program.Review{}, nil, on)[0]; got != want {
			t.Errorf("%s: %q, want %q", day, got, want)
		}
	}
}

// Five lines whatever the week: which, what is new, what to do, what not to worry about, and
// when to stop, with the coach's name.
func TestMessageIsFiveLines(t *testing.T) {
	p := viewtest.Program()
	p.Weeks[4].Kind, p.Weeks[4].Sessions = program.WeekAway, nil
	p.Weeks[6].Gate = true
	for i, want := range []struct{ is, fine string }{
		0:  {"The block begins. Write on the card what happens, not what should have.", "A bad day is one day."},
		3:  {"A light week: fewer sets, easier holds.", "It is meant to feel too easy."},
		4:  {"Nothing is planned this week.", "Nothing is lost in a week"},
		6:  {"", "Not there yet? The week simply comes again"},
		8:  {"New step: advanced tuck, once the gate before it is signed.", ""},
		11: {"The last week of the block: short days, then the test.", "The test is a number for the plan"},
	} {
		lines := messageOn(t, p, &program.Review{}, nil, p.Weeks[i].Start)
		if len(lines) != 5 {
			t.Errorf("week %d: %d lines: %q", i+1, len(lines), lines)
			continue
		}
		if !strings.HasPrefix(lines[1], want.is) || !strings.HasPrefix(lines[3], want.fine) {
			t.Errorf("week %d: %q", i+1, lines)
		}
		if !strings.HasPrefix(lines[4], "Sharp pain, numbness, dizziness: stop at once.") || !strings.HasSuffix(lines[4], "Tilda Roake") {
			t.Errorf("week %d: %q", i+1, lines[4])
		}
	}
}

// Whoever missed a session in the week before is told the rule of the one-page plan; a week
// that the last review changed says so, and which cards are new; a joint that rests comes
// before both, and none is named that is for the coach alone.
func TestMessageAfterAReview(t *testing.T) {
	p := viewtest.Program()
	week := &p.Weeks[2]
	r := &program.Review{Sessions: []program.SessionRead{{Printed: week.Start - 5}}}
	if lines := messageOn(t, p, r, nil, week.Start); !strings.HasPrefix(lines[3], "A session fell out: do it on the next training day") {
		t.Errorf("missed: %q", lines[3])
	}
	r.Sessions[0].Done = week.Start - 4
	if lines := messageOn(t, p, r, nil, week.Start); strings.HasPrefix(lines[3], "A session fell out") {
		t.Errorf("done a day later: %q", lines[3])
	}
	p.From = week.Start
	changes := []program.Change{{Week: 3, Start: week.Start, Cards: []program.Date{week.Start, week.Start + 4}, Notes: []program.Note{{Code: "change-sets",
		Values: []program.Value{{Name: "before", Kind: program.ValueCount, Number: 4}, {Name: "after", Kind: program.ValueCount, Number: 3}}}}}}
	if got, want := messageOn(t, p, r, changes, week.Start)[1], "The plan has changed from this week on. Sets: 3 instead of 4. New cards for 25 Jan, 29 Jan; the old ones go in the bin."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := messageOn(t, p, r, changes, week.Start+7)[1]; strings.HasPrefix(got, "The plan has changed") {
		t.Errorf("a week on: %q", got)
	}
	p.Notes = append(p.Notes, program.Note{Code: "elbows-sore"}, program.Note{Code: "way-back", Values: []program.Value{{Name: "from", Kind: program.ValueDate, Number: float64(week.Start)}}})
	if got := messageOn(t, p, r, changes, week.Start)[1]; !strings.HasPrefix(got, "From 25 January 2027 the way back") || strings.Contains(got, "elbows") {
		t.Errorf("%q", got)
	}
}

// Pain in the middle of a week: its message says of the cards still to come that a joint rests,
// leaves out the day that is done, and tells nobody to make up for a missed one.
func TestMessageOfAWeekThatBeganWell(t *testing.T) {
	p := viewtest.Program()
	week := &p.Weeks[2]
	p.From = week.Start + 7
	p.Notes = append(p.Notes, program.Note{Code: "way-back", Values: []program.Value{{Name: "from", Kind: program.ValueDate, Number: float64(week.Start + 6)}}})
	r := &program.Review{Sessions: []program.SessionRead{{Printed: week.Start - 5}, {Printed: week.Sessions[0].Date, Done: week.Sessions[0].Date}}}
	var later []program.Date
	for _, s := range week.Sessions[1:] {
		later = append(later, s.Date)
	}
	m, _ := view.NewMessage(viewtest.Coach(), viewtest.Library(), p, r, nil, later, week.Start)
	if !strings.HasPrefix(plain(m.Lines[1]), "From 31 January 2027 the way back") {
		t.Errorf("%q", m.Lines[1])
	}
	if strings.Contains(m.Lines[2], "Mon") || !strings.Contains(m.Lines[2], "Fri") {
		t.Errorf("%q", m.Lines[2])
	}
	if !strings.HasPrefix(m.Lines[3], "It is meant to be less than you can do.") {
		t.Errorf("%q", m.Lines[3])
	}
}

func TestNoProgramNoMessage(t *testing.T) {
	p := viewtest.Program()
	p.Withheld, p.Weeks = []program.Note{{Code: viewtest.FixtureNote}}, nil
	if lines := messageOn(t, p, &program.Review{}, nil, p.Start); lines != nil {
		t.Errorf("%q", lines)
	}
}

// New cards are named also where an earlier review changed them; whoever was off for weeks is
// told so, and not to make up for a session.
func TestMessageAfterWeeksOff(t *testing.T) {
	p := viewtest.Program()
	week := &p.Weeks[2]
	p.From = week.Start
	p.Notes = append(p.Notes, program.Note{Code: "weeks-off", Values: []program.Value{{Name: "weeks", Kind: program.ValueCount, Number: 3}}})
	r := &program.Review{Sessions: []program.SessionRead{{Printed: week.Start - 5}}}
	m, _ := view.NewMessage(viewtest.Coach(), viewtest.Library(), p, r, nil, []program.Date{week.Start, week.Start + 7}, week.Start)
	if want := "3 weeks in a row without training: the weeks ahead begin lower and build up again from there. New cards for 25 Jan; the old ones go in the bin."; plain(m.Lines[1]) != want {
		t.Errorf("%q, want %q", plain(m.Lines[1]), want)
	}
	if !strings.HasPrefix(m.Lines[3], "Weeks off cost less than they feel like.") {
		t.Errorf("%q", m.Lines[3])
	}
}
