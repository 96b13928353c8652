package view_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"

	"github.com/google/go-cmp/cmp"
)

func newPublic(t *testing.T) *view.Public {
	t.Helper()
	from, levels := viewtest.Public()
	p, problems := view.NewPublic(viewtest.Coach(), viewtest.Library(), from, levels)
	if problems != nil {
		t.Fatalf("the words file lacks: %v", problems)
	}
	return p
}

func TestPublicInWords(t *testing.T) {
	p := newPublic(t)
	first, last := p.Levels[0], p.Levels[1]
	for got, want := range map[string]string{
		p.Goal:              "Half-open tuck for 10 s",
		p.Bands[0]:          "narrow, 100 cm long at rest: 1.6 kg at 130 cm, 3 kg at 190 cm",
		p.Facts[1].Text:     "3 a week, such as Mon, Wed, Fri",
		p.Facts[3].Text:     "parallettes, wall",
		first.Client:        "Level 1: open tuck to advanced tuck with help", // what its weeks train
		first.Shown:         "You start here if you do not hold the tuck for 12 s yet.",
		last.Shown:          "You start here if you hold the tuck for 12 s at RPE 8, and not yet the half-open tuck for 10 s.",
		first.Block:         "12 weeks, no dates",
		first.Tests[0].Hold: "12 s",
		first.Help.Mean:     "67 kg",
		last.Tests[0].Name:  "half-open tuck",
		first.Weeks[2].Line: "4 × 12 s, narrow + middle, strap 20 cm",
	} {
		if plain(got) != want {
			t.Errorf("got %q, want %q", plain(got), want)
		}
	}
	if !strings.Contains(first.After, "level 2") || strings.Contains(last.After, "level") {
		t.Errorf("the way on: %q, then %q", first.After, last.After)
	}
}

// A level whose weeks get no further than what they train is named for that.
func TestALevelIsNamedForWhatItTrains(t *testing.T) {
	from, levels := viewtest.Public()
	levels[1].Longer = "tuck"
	lib := viewtest.Library()
	lib.Words["level.longer"] = "{step}, longer"
	p, problems := view.NewPublic(viewtest.Coach(), lib, from, levels)
	if problems != nil || p.Levels[1].Client != "Level 2: tuck, longer" {
		t.Errorf("%v, %q", problems, p.Levels[1].Client)
	}
}

// Worked by hand: a tenth of 50 kg and of 90 kg, then half as much.
func TestHelpTable(t *testing.T) {
	p := newPublic(t)
	want := view.HelpTable{Mean: "67 kg", Head: []string{"Weeks 1 to 3, tuck", "Week 5, tuck"},
		Rows: []view.HelpRow{{"50 kg", []string{"5 kg", "2.5 kg"}}, {"90 kg", []string{"9 kg", "4.5 kg"}}}}
	got := p.Levels[0].Help
	text, _ := json.Marshal(got)
	json.Unmarshal([]byte(plain(string(text))), &got)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if len(p.Levels[1].Help.Rows) != 0 {
		t.Error("a level without bands has a table of help")
	}
}

// calendarWords are what would give a day of the calendar away. May is a word of
// its own as well.
var calendarWords = regexp.MustCompile(`\b20[0-9]{2}\b|\b(January|February|March|April|June|July|August|September|October|November|December|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b`)

// The program that a level is made of has dates, a client and forecasts; nothing
// of them is in any field of what is published.
func TestLevelsHaveNoDateAndNoClient(t *testing.T) {
	for _, l := range newPublic(t).Levels {
		text, err := json.Marshal(l)
		if err != nil {
			t.Fatal(err)
		}
		coach, _ := json.Marshal(l.Coach)
		rest := strings.ReplaceAll(string(text), string(coach), "")
		if found := calendarWords.FindString(rest); found != "" {
			t.Errorf("level %d says %q: …%s", l.Number, found, rest[max(0, strings.Index(rest, found)-80):])
		}
		if strings.Contains(rest, "Maren") || strings.Contains(rest, "maren") {
			t.Errorf("level %d names a client", l.Number)
		}
		if l.Forecast.Likely != "" || l.Forecast.Chance != "" || len(l.Outline) > 0 || l.Public {
			t.Errorf("level %d has a forecast or is a client's", l.Number)
		}
		for _, w := range l.Weeks {
			for i, s := range w.Sessions {
				if s.Title == "" || s.Day == "" || s.Number != i+1 {
					t.Errorf("level %d, %s: session %+v", l.Number, w.Title, s)
				}
			}
		}
	}
}

// A level's view leaves the program it was made of as it was.
func TestNewPublicChangesNothing(t *testing.T) {
	from, levels := viewtest.Public()
	before, _ := json.Marshal(levels)
	view.NewPublic(viewtest.Coach(), viewtest.Library(), from, levels)
	if after, _ := json.Marshal(levels); string(before) != string(after) {
		t.Error("the levels were changed")
	}
}

func TestPublicOfOneLevel(t *testing.T) {
	from, levels := viewtest.Public()
	from.Bands, from.Kit = nil, nil
	p, problems := view.NewPublic(viewtest.Coach(), viewtest.Library(), from, levels[:1])
	if problems != nil || len(p.Levels) != 1 || strings.Contains(p.Levels[0].After, "level") {
		t.Errorf("%v, %+v", problems, p.Levels)
	}
	if plain(p.Facts[4].Text) != "none" || p.Facts[3].Text != "Nothing but a floor" {
		t.Errorf("facts: %v", p.Facts)
	}
}
