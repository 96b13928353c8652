package paper

import (
	"slices"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// cardRow is one item in full, or several that share a row.
type cardRow struct {
	items   []*view.CardItem
	caption string // of a shared row
	first   bool   // what the session is about, and tests: larger
}

// mostRows is what a person takes in at the wall, the preparation counted (our
// judgement).
const (
	rowsAir  = 1.2 // mm over and under the rows
	mostRows = 7
	leastGap = 1.2 // mm between rows, half of it where they are many
)

// sharing says which items a session gives a row together, and what else gives
// way, when its items are more than the card has room for. Holds and tests never
// share.
type sharing struct {
	finish   bool // trunk and mobility share
	pulls    bool // what balances the holds shares, but for what stands between them
	rests    bool // those too
	tight    bool // narrower cells, a smaller figure
	strength bool // strength shares with that, but for what the session is about
	bare     bool // no figure, no larger test
	hush     bool // one rest for a shared row, the longest, under its caption
	terse    bool // a hold's words in small print
	mute     bool // no cue, and no word explained where there is no room
	list     bool // all but holds and tests is listed in one row, with one box to tick
	silent   bool // a hold without easier and harder: the day rule says it
}

// sharings are the ways, the roomiest first.
var sharings = []sharing{
	{},
	{finish: true},
	{finish: true, pulls: true},
	{finish: true, pulls: true, rests: true},
	{finish: true, pulls: true, rests: true, tight: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true, hush: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true, bare: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true, bare: true, terse: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true, bare: true, hush: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true, bare: true, terse: true, hush: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true, bare: true, terse: true, hush: true, mute: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true, bare: true, terse: true, hush: true, mute: true, list: true},
	{finish: true, pulls: true, rests: true, tight: true, strength: true, bare: true, terse: true, hush: true, mute: true, list: true, silent: true},
}

// air is what is left free over and under the rows.
func (p *card) air() float64 {
	if p.list {
		return rowsAir / 2
	}
	return rowsAir
}

// lay puts rows between two heights, and gives what is left over to the gaps.
func (p *card) lay(rows []cardRow, heights []float64, top, bottom float64) {
	spare := bottom - top
	for _, h := range heights {
		spare -= h
	}
	gap := max(min(spare/float64(max(len(rows), 1)), 3.5), 0)
	y := top
	for i, r := range rows {
		if i > 0 {
			p.rule(y, 0.2, Line)
		}
		marks, _ := p.row(r, y+gap/2)
		p.put(append(marks, p.drawnBeside(r, marks, Box{p.X, y, p.W, heights[i] + gap})...)...)
		y += heights[i] + gap
	}
	p.notes(y, bottom)
}

// notes are lines to write on where the items leave room for two or more.
func (p *card) notes(y, bottom float64) {
	const line = 7
	if bottom-y < 2*line {
		return
	}
	p.rule(y, 0.2, Line)
	p.put(p.fit(Box{p.X, y + 0.8, p.W / 3, 2.8}, style{Size: leastCard, Leading: 1.1, Tone: Quiet}, p.v.CardText.Notes))
	for y += line; y <= bottom; y += line {
		p.put(Stroke{Points: []Point{{p.X, y}, {p.Right(), y}}, Width: 0.2, Dash: 0.6, Tone: Quiet})
	}
}

// arrange takes the first way of sharing rows that fits between two heights, the
// preparation above them, cue and words below; and then explains as many words as there
// is room for.
func (p *card) arrange(top, bottom float64) (rows []cardRow, heights []float64) {
	for i, s := range sharings {
		last := i == len(sharings)-1
		rows, heights = s.rows(p.c, p.v.CardText), nil
		if len(rows) >= mostRows && !last {
			continue
		}
		p.sharing = s
		room := bottom - p.cueHeight() - p.prepared(top) - 2*p.air()
		gap := leastGap
		if s.tight {
			gap /= 2
		}
		for _, r := range rows {
			if room < 0 && !last {
				break
			}
			h := p.height(r)
			heights = append(heights, h)
			room -= h + gap
		}
		if p.explain(room) {
			break
		}
	}
	return rows, heights
}

// rowKey is what a row's height depends on; of the preparation, where it ends.
type rowKey struct {
	first   *view.CardItem
	items   int
	caption string
	how     sharing
}

// height of a row.
func (p *card) height(r cardRow) float64 {
	return p.measured(rowKey{r.items[0], len(r.items), r.caption, p.heeded(r)}, func() float64 {
		_, h := p.row(r, 0)
		return h
	})
}

// prepared is where the preparation ends.
func (p *card) prepared(top float64) float64 {
	if len(p.c.Prepare) == 0 {
		return top
	}
	how := sharing{tight: p.tight, hush: p.hush, terse: p.terse, list: p.list}
	return p.measured(rowKey{first: &p.c.Prepare[0], how: how}, func() float64 {
		_, y := p.prepare(top)
		return y
	})
}

// measured lays nothing twice: most ways of sharing leave a row as it was.
func (p *card) measured(key rowKey, lay func() float64) float64 {
	h, ok := p.heights[key]
	if !ok {
		h = lay()
		p.heights[key] = h
	}
	return h
}

// heeded is what of a way of sharing changes a row of the items.
func (s sharing) heeded(r cardRow) sharing {
	if item := r.items[0]; len(r.items) == 1 {
		return sharing{tight: s.tight && (r.first || item.Check), bare: s.bare, terse: s.terse && (s.bare || item.Open), silent: s.silent}
	}
	return sharing{tight: s.tight && len(r.items) == 4, hush: s.hush, terse: s.terse, list: s.list}
}

// rows groups a card's items, each group where its first item stands.
func (s sharing) rows(c *view.Card, t view.CardWords) []cardRow {
	var rows []cardRow
	at := map[string]int{}
	for i := range c.Items {
		item := &c.Items[i]
		caption := s.caption(item, i == c.Main, t)
		if n, ok := at[caption]; ok && caption != "" {
			rows[n].items = append(rows[n].items, item)
			if rows[n].items[0].RoleKey != item.RoleKey && caption == t.Against {
				rows[n].caption = joined(t.Strength, t.Against)
			}
			continue
		}
		at[caption] = len(rows)
		first := i == c.Main || item.RoleKey == program.RoleTest && !item.Check
		named := caption
		if caption == t.Against && item.RoleKey == program.RoleStrength {
			named = t.Strength
		}
		rows = append(rows, cardRow{[]*view.CardItem{item}, named, first})
	}
	return rows
}

// caption is the name of the row that an item shares; empty: it has its own.
func (s sharing) caption(item *view.CardItem, main bool, t view.CardWords) string {
	against := item.RoleKey.Against() && (s.rests || s.pulls && item.Remark == "")
	drill := item.RoleKey.Against() || slices.Contains([]program.Role{program.RoleStrength, program.RoleTrunk, program.RoleMobility}, item.RoleKey)
	switch {
	case s.list && drill:
		return t.Finish
	case main && item.RoleKey == program.RoleStrength: // of who trains the entry
		return ""
	case against || s.strength && item.RoleKey == program.RoleStrength:
		return t.Against
	case s.finish && (item.RoleKey == program.RoleTrunk || item.RoleKey == program.RoleMobility):
		return t.Finish
	}
	return ""
}

// row lays one row and says how high it is.
func (p *card) row(r cardRow, y float64) ([]Mark, float64) {
	switch {
	case len(r.items) > 1:
		return p.shared(r, y)
	case p.bare && (r.first || r.items[0].Rig != "") && !r.items[0].Open:
		return p.compact(r.items[0], y)
	case r.first && !(p.bare && r.items[0].Open):
		return p.large(r.items[0], y)
	}
	return p.small(r.items[0], y)
}
