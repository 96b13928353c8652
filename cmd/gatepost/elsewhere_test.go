package main

import (
	"slices"
	"testing"

	"gatepost/program"
	"gatepost/program/posture"
)

// Maren has handles at home and none in the third week, which she spends where there is a
// wall: its cards draw nothing on handles and no band, and not her own figure, which stands
// on them; before and after they do.
func TestDaysElsewhereAreDrawnWithTheirKit(t *testing.T) {
	j := &job{path: copyOfDemo(t, ""), surroundings: surroundings{builtIn: builtIn}}
	if err := j.open(); err != nil {
		t.Fatal(err)
	}
	defer j.root.Close()
	studio, problems := j.read()
	if problems.Stop() {
		t.Fatal(problems)
	}
	a := studio.Clients[slices.IndexFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == "maren" })]
	a.Log, a.Plans = program.Log{}, nil
	from := a.Measured + 14
	a.Wishes = append(a.Wishes, program.Wish{Kind: program.WishAt, From: from, To: from + 6, Kit: []string{"wall"}})
	with := making{studio: &studio, album: posture.NewAlbum(&studio.Library)}
	c := with.client(&a)
	shown := map[bool]int{}
	for _, card := range c.view.Cards {
		there := card.Number == 3
		if there && card.Figure.Drawn() {
			t.Errorf("%s: her own figure, on handles", card.Date)
		}
		for _, item := range card.Items {
			for _, p := range item.Pictures {
				held := p.Stance.Grip || p.Stance.Help > 0 || slices.ContainsFunc(p.Placed.Set, func(s program.Set) bool { return s.Kind == program.ThingHandles })
				if there && held {
					t.Errorf("%s: %s is drawn with what is not there", card.Date, item.Name)
				}
			}
			if item.RoleKey == program.RoleMain && (item.Shown || len(item.Pictures) > 0) {
				shown[there]++
			}
		}
	}
	if shown[true] == 0 || shown[false] == 0 {
		t.Errorf("main work is drawn %d times there and %d at home", shown[true], shown[false])
	}
}
