package paper

import (
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// Cards prints a session on each card, four to a sheet, to be cut along the
// marks: to train from, alone at the wall, and to write on. With bothSides every
// second page is the back of the one before: flipped on the long edge, each card
// has the session four further on at its back. In large print a card is a sheet. A withheld program has no cards:
// no bytes and no problems. Problems are warnings about characters that could not
// be printed.
func Cards(v *view.View, bothSides bool) ([]byte, program.Problems) {
	return ChangedCards(v, bothSides, v.Cards)
}

// ChangedCards prints some of a view's cards in batches, each of which begins a
// sheet of its own, so that the first can be printed alone.
func ChangedCards(v *view.View, bothSides bool, batches ...[]view.Card) ([]byte, program.Problems) {
	ts := &typesetter{lost: map[rune]bool{}}
	pages := layCards(ts, v, bothSides, batches...)
	if len(pages) == 0 {
		return nil, nil
	}
	return write(v, ts, v.Title, pages...)
}

const (
	leastCard  = 7   // points
	leastHold  = 12  // points, seconds and repetitions
	cardMargin = 4   // mm from the cut
	writingBox = 9.2 // mm; nine are enough for two figures with a pencil stub (our judgement)
)

// layCards fills sheets with cards in reading order, each batch from a sheet of its
// own: the back of the last one's sheet stays empty.
func layCards(ts *typesetter, v *view.View, bothSides bool, batches ...[]view.Card) []*Page {
	hand, _ := sheets(v.Coach.Paper)
	if v.Large {
		return layLargeCards(ts, v, bothSides, hand, batches)
	}
	plates := plateSet{}
	var pages []*Page
	for _, cards := range batches {
		if bothSides && len(pages)%2 == 1 && len(cards) > 0 {
			pages = append(pages, hand.portrait("", leastCard))
		}
		for i := range cards {
			if i%view.CardsASheet == 0 {
				pages = append(pages, hand.portrait("", leastCard))
				pages[len(pages)-1].add(cutMarks(hand)...)
			}
			page := pages[len(pages)-1]
			if c := &cards[i]; i == 0 || cards[i-1].Number != c.Number { // weeks are found by the bookmarks
				page.Name = strings.TrimPrefix(page.Name+", "+c.Week, ", ")
			}
			back := bothSides && len(pages)%2 == 0
			layCard(page, ts, v, &cards[i], place(hand, i%view.CardsASheet, back), plates)
		}
	}
	return pages
}

// layLargeCards are the same cards at twice the size, one a sheet: four of them fill a
// sheet as they are.
func layLargeCards(ts *typesetter, v *view.View, bothSides bool, hand Sheet, batches [][]view.Card) []*Page {
	const by = 2
	b := place(hand, 0, false)
	b.X, b.Y = b.X/by, b.Y/by
	plates := plateSet{}
	var pages []*Page
	for _, cards := range batches {
		if bothSides && len(pages)%2 == 1 && len(cards) > 0 {
			pages = append(pages, hand.portrait("", leastLarge))
		}
		for i := range cards {
			small := Page{}
			layCard(&small, ts, v, &cards[i], b, plates)
			page := hand.portrait("", leastLarge)
			if i == 0 || cards[i-1].Number != cards[i].Number {
				page.Name = cards[i].Week
			}
			page.add(enlarged(small.Marks, by)...)
			pages = append(pages, page)
		}
	}
	return pages
}

// place is a card's box on the sheet. On a back, left and right change places.
func place(sheet Sheet, n int, back bool) Box {
	column, row := n%2, n/2
	if back {
		column = 1 - column
	}
	w, h := (sheet.Width-2*freeEdge)/2, (sheet.Height-2*freeEdge)/2
	return Box{freeEdge + float64(column)*w, freeEdge + float64(row)*h, w, h}
}

// cutMarks are the ends of the four cuts and of the two between the cards, and a
// cross in the middle.
func cutMarks(sheet Sheet) []Mark {
	const long, width = 3, 0.15
	var marks []Mark
	stroke := func(x, y, dx, dy float64) {
		marks = append(marks, Stroke{Points: []Point{{x, y}, {x + dx, y + dy}}, Width: width, Tone: Ink})
	}
	left, right := freeEdge+width/2, sheet.Width-freeEdge-width/2
	top, bottom := freeEdge+width/2, sheet.Height-freeEdge-width/2
	x, y := sheet.Width/2, sheet.Height/2
	for _, edge := range []float64{left, right} {
		in := long * sign(x-edge)
		stroke(edge, top, in, 0)
		stroke(edge, y, in, 0)
		stroke(edge, bottom, in, 0)
		stroke(edge, top, 0, long)
		stroke(edge, bottom, 0, -long)
	}
	stroke(x, top, 0, long)
	stroke(x, bottom, 0, -long)
	stroke(x-long, y, 2*long, 0)
	stroke(x, y-long, 0, 2*long)
	return marks
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}
