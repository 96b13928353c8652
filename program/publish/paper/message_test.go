package paper

import (
	"regexp"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

var doseOf = regexp.MustCompile(`: (?:\d+–)?(\d+) × (\d+)( s)? `)

// What a message says of a week is what its cards say: its days are those of the cards, and
// one of them has the sets, seconds and help that are named.
func TestMessagesAgreeWithCards(t *testing.T) {
	studio := demo(t)
	named := 0
	for seed := range 40 {
		a := clients.Example(seed)
		p, problems := planner.Plan(&studio.Library, &a)
		if problems.Stop() || len(p.Weeks) == 0 {
			continue
		}
		v, _ := view.New(studio.Coach, &studio.Library, &p)
		for i, w := range v.Weeks {
			m, problems := view.NewMessage(studio.Coach, &studio.Library, &p, &program.Review{}, nil, nil, w.Start)
			if problems != nil || len(m.Lines) != 5 {
				t.Fatalf("client %d, week %d: %q %v", seed, i+1, m.Lines, problems)
			}
			line := strings.ReplaceAll(m.Lines[2], "\u00a0", " ")
			for _, s := range w.Sessions {
				if !strings.Contains(line, strings.ReplaceAll(s.DayDate, "\u00a0", " ")) {
					t.Errorf("client %d, week %d: no %s in %q", seed, i+1, s.DayDate, line)
				}
			}
			dose := doseOf.FindStringSubmatch(line)
			if dose == nil {
				continue
			}
			named++
			var cards []view.Card
			for _, c := range v.Cards {
				if c.Number == w.Number {
					cards = append(cards, c)
				}
			}
			text := textOf(layCards(setter(), v, false, cards)...)
			if want := "\n" + dose[1] + " × " + dose[2] + dose[3] + "\n"; !strings.Contains(text, want) {
				t.Errorf("client %d, week %d: the cards have no %q: %q", seed, i+1, strings.TrimSpace(want), line)
			}
			if w.Helped != "" && (!strings.Contains(line, strings.ReplaceAll(w.Helped, "\u00a0", " ")) || !strings.Contains(text, strings.ReplaceAll(w.Help, "\u00a0", " "))) {
				t.Errorf("client %d, week %d: help of %s in %q", seed, i+1, w.Helped, line)
			}
		}
	}
	if named < 100 {
		t.Errorf("only %d doses", named)
	}
}
