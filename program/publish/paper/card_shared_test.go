package paper

import (
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

// Four exercises of three sets beside each other have three ticks each, and their rests:
// a coach reads from the card how many sets were done.
func TestATickForEachSet(t *testing.T) {
	v := fixture(t)
	p := &card{typesetter: setter(), Box: place(A4, 0, false).Inset(cardMargin, cardMargin), v: v, c: &v.Cards[0]}
	item := func(name, amount string) view.CardItem {
		return view.CardItem{Item: view.Item{Amount: amount, Sets: 3}, Name: name, Pause: "rest 45 s"}
	}
	row := cardRow{items: pointers([]view.CardItem{item("Band row", "3 × 10"), item("Pull-up", "3 × 12"), item("Prone raises", "3 × 10"), item("Hollow hold", "3 × 25 s")})}
	for _, p.sharing = range []sharing{{}, {tight: true}, {tight: true, strength: true, bare: true}} {
		marks, h := p.cells(row, 0, p.W, true)
		ticks, rests := 0, 0
		for _, m := range marks {
			switch m := m.(type) {
			case Frame:
				ticks++
				if m.W < 2.6 || m.Bottom() > h+0.01 {
					t.Errorf("%+v: a tick of %.1f mm that ends at %.1f of %.1f", p.sharing, m.W, m.Bottom(), h)
				}
			case Text:
				if strings.Join(m.Lines, " ") == "rest 45 s" {
					rests++
				}
			}
		}
		if ticks != 12 || rests != 4 {
			t.Errorf("%+v: %d ticks and %d rests, want 12 and 4", p.sharing, ticks, rests)
		}
	}
}

// The one rest that a row short of room says is a length of time, and its cells say none:
// what is done between the holds tells nobody how long to rest after the others.
func TestOneRestOfARow(t *testing.T) {
	v := fixture(t)
	p := &card{typesetter: setter(), Box: place(A4, 0, false).Inset(cardMargin, cardMargin), v: v, c: &v.Cards[0], sharing: sharing{tight: true, hush: true}}
	between := view.CardItem{Item: view.Item{Amount: "2 × 9", Sets: 2, Pause: 150, Remark: "in the rests of the main hold"}, Name: "Ring row", Pause: "between the holds"}
	after := view.CardItem{Item: view.Item{Amount: "3 × 10", Sets: 3, Pause: 60}, Name: "Ring face pull", Pause: "rest 60 s"}
	marks, _ := p.cells(cardRow{items: []*view.CardItem{&between, &after, &between, &after}}, 0, p.W, true)
	said := ""
	for _, m := range marks {
		if text, ok := m.(Text); ok {
			said += strings.Join(text.Lines, " ") + "\n"
		}
	}
	if strings.Count(said, "rest 60 s") != 1 || strings.Contains(said, "between") {
		t.Errorf("the row says %q", said)
	}
}

// An abbreviation has its stop already.
func TestSentences(t *testing.T) {
	for want, texts := range map[string][]string{
		"Leichter: 1 Wdh. Schwerer: 3 Wdh.": {"", "Leichter: 1 Wdh.", "Schwerer: 3 Wdh."},
		"rest 60 s. Easier: 7 s":            {"rest 60 s", "Easier: 7 s"},
		"":                                  nil,
	} {
		if got := sentences(texts...); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The cards of the demo studio say how long to rest in every row: without it a client
// alone at the wall rests as long as they like. A row that is short of room says the longest
// of its rests.
func TestCardsSayTheRests(t *testing.T) {
	studio := demoStudio()
	for i := range studio.Clients {
		v := demoView(t, studio.Clients[i].Slug)
		for n := range v.Cards {
			page := A4.portrait("", leastCard)
			layCard(page, setter(), v, &v.Cards[n], place(A4, 0, false), map[any]*Plate{})
			text := textOf(page)
			for _, item := range v.Cards[n].Items {
				pause := strings.ReplaceAll(item.Pause, "\u00a0", " ")
				said := strings.Count(text, pause)
				same := 0
				for _, other := range v.Cards[n].Items {
					if other.Sets > 1 && strings.HasPrefix(other.Pause, item.Pause) {
						same++
					}
				}
				longer := slices.ContainsFunc(v.Cards[n].Items, func(other view.CardItem) bool {
					return other.Item.Pause >= item.Item.Pause && !other.StraightArm && strings.Contains(text, strings.ReplaceAll(other.Pause, "\u00a0", " "))
				})
				if pause != "" && said < same && !longer {
					t.Errorf("%s, card %d: %s: %q is said %d times, not %d", studio.Clients[i].Slug, n+1, item.Name, pause, said, same)
				}
			}
		}
	}
}

// A skill with a long name stands alone in the corner of its cards, whole: the dates of the
// block give way, for each card has its own. One with a short name has both.
func TestTheSkillOfACardIsWhole(t *testing.T) {
	for skill, want := range map[string]string{"Planche": "Planche, 4 Jan to 28 Mar", "Press to handstand": "Press to handstand"} {
		v := *fixture(t)
		v.Skill, v.CardText.Foot = skill, skill+", 4 Jan to 28 Mar"
		page := A4.portrait("", leastCard)
		layCard(page, setter(), &v, &v.Cards[0], place(A4, 0, false), map[any]*Plate{})
		found := false
		for _, m := range page.Marks {
			if text, ok := m.(Text); ok && strings.Join(text.Lines, " ") == want {
				found = true
			}
		}
		if !found {
			t.Errorf("no card says %q", want)
		}
	}
}

// Whoever trains alone reads on the card what to do when its main work is too much or too
// little today, however full the card is, in either language and on either paper.
func TestFullCardsSayEasierAndHarder(t *testing.T) {
	full := 0
	for _, language := range []string{"en", "de"} {
		studio := spoken(t, language)
		for _, studio.Coach.Paper = range papers {
			for _, a := range append(slices.Clone(studio.Clients), others()...) {
				p, _ := planner.Plan(&studio.Library, &a)
				v, _ := view.New(studio.Coach, &studio.Library, &p)
				hand, _ := sheets(studio.Coach.Paper)
				for i := range v.Cards {
					c := &v.Cards[i]
					if len(c.Items) == 0 || c.Items[c.Main].RoleKey != program.RoleMain {
						continue
					}
					page := &Page{}
					layCard(page, setter(), v, c, place(hand, 0, false), map[any]*Plate{})
					text := strings.ReplaceAll(textOf(page), "\n", " ")
					for _, way := range []string{c.Items[c.Main].Easier, c.Items[c.Main].Harder} {
						if !strings.Contains(text, strings.ReplaceAll(way, "\u00a0", " ")) {
							t.Errorf("%s, %s, %s, card %d: no %q", a.Slug, language, studio.Coach.Paper, i+1, way)
						}
					}
					if !strings.Contains(text, strings.ReplaceAll(c.Cue, "\u00a0", " ")) {
						full++ // even the cue has given way
					}
				}
			}
		}
	}
	if full == 0 {
		t.Error("no card is full")
	}
}
