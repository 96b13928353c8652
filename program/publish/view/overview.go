package view

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"gatepost/program"
)

// Standing is one client's line of the studio's overview.
type Standing struct {
	Client string
	Week   string // "6 of 12"
	Last   string // "12 Feb"; empty: nothing in the log
	Course string // "+3 %" ahead of the plan, "as planned"
	Needs  []string
	need   int // the greater, the sooner
	data   standingJSON
}

// Ranks of need (our judgement): a professional, then a decision of the coach's,
// then a look; a plan that has changed waits to be kept.
const (
	needNothing = iota
	needKeep
	needLook
	needAct
	needStop
)

// NewStanding writes one client's line.
func NewStanding(coach program.Coach, lib *program.Library, p *program.Program, r *program.Review) (Standing, program.Problems) {
	s := newSpeech(coach, lib, p)
	v := Standing{Client: r.Client.Name, Week: s.weekOfBlock(r)}
	if r.Last != 0 {
		v.Last = s.brief(r.Last)
		if v.Course = s.say("need.on_course"); s.balances() {
			v.Course = ""
		} else if courseOf(r) != CourseOn {
			v.Course = fmt.Sprintf("%+d", round(100*math.Expm1(r.Pace)))
			v.Course = s.unit("percent", v.Course)
		}
	}
	s.needs(&v, p, r)
	v.data = toStanding(p, r)
	return v, s.problems()
}

// NewUnread is the line of a client whose files have errors. The name is the
// folder's where the assessment cannot be read.
func NewUnread(coach program.Coach, lib *program.Library, client program.Client, errors program.Problems) (Standing, program.Problems) {
	s := newSpeech(coach, lib, &program.Program{})
	v := Standing{Client: cmp.Or(client.Name, client.Slug), Needs: []string{s.say("need.unread")}, need: needAct}
	v.data = toUnread(client, errors)
	return v, s.problems()
}

func (s *speech) weekOfBlock(r *program.Review) string {
	switch {
	case r.Weeks == 0:
		return ""
	case r.Ended:
		return s.say("need.ended")
	case r.Week == 0:
		return s.say("need.not_begun")
	}
	return s.say("need.week", "week", strconv.Itoa(r.Week), "weeks", strconv.Itoa(r.Weeks))
}

// needs gathers what wants the coach, the most urgent first.
func (s *speech) needs(v *Standing, p *program.Program, r *program.Review) {
	add := func(need int, text string) {
		v.need = max(v.need, need)
		v.Needs = append(v.Needs, text)
	}
	if len(r.Withheld) > 0 {
		add(needAct, s.say("need.withheld"))
		return
	}
	for _, f := range r.Flags {
		add(needLook+int(f.Level), s.noteUnder("need", f.Note))
	}
	if r.Last == 0 && r.Week > 1 {
		add(needLook, s.say("need.no_log"))
	}
	if n := len(r.Changes); n > 0 && p.Version > r.Version {
		add(needKeep, s.say(s.plural("need.keep", n), "weeks", strconv.Itoa(n)))
	}
}

// Overview writes the studio for a terminal, one line a client of 80 columns,
// those with the greatest need first and then by name.
func Overview(out io.Writer, coach program.Coach, lib *program.Library, on program.Date, all []Standing) error {
	s := newSpeech(coach, lib, &program.Program{})
	all = slices.Clone(all)
	slices.SortStableFunc(all, func(a, b Standing) int {
		return cmp.Or(cmp.Compare(b.need, a.need), cmp.Compare(len(b.Needs), len(a.Needs)), cmp.Compare(a.Client, b.Client))
	})
	var t text
	t.heading(s.say("need.title", "date", s.date(on)), "=")
	head := [...]string{s.say("need.client"), s.say("need.weeks"), s.say("need.last"), s.say("need.course")}
	widths, left := overviewWidths(head, all)
	row := func(cells [4]string, needs string) {
		for i, width := range widths {
			cells[i] = fmt.Sprintf("%-*s", width, clip(cells[i], width))
		}
		t.line("%s %s", strings.Join(cells[:], " "), needs)
	}
	row(head, s.say("need.needs"))
	waiting := 0
	for _, v := range all {
		if v.need >= needLook {
			waiting++
		}
		row(v.cells(), v.first(left))
	}
	t.line("")
	t.wrap("", s.say("need.count", "clients", strconv.Itoa(len(all)), "need", strconv.Itoa(waiting)))
	_, err := io.WriteString(out, noBreaks(t.String()))
	return err
}

// cells are the narrow columns of a line.
func (v *Standing) cells() [4]string { return [...]string{v.Client, v.Week, v.Last, v.Course} }

// overviewWidths are the widths of the narrow columns and what they leave of a
// line: as wide as their texts, since "12. Sept." is longer than "12 Sep". Most
// is our judgement: all four at their most still leave 34 for a need.
func overviewWidths(head [4]string, all []Standing) (widths [4]int, left int) {
	most := [...]int{14, 9, 9, 10}
	for i := range widths {
		widths[i] = utf8.RuneCountInString(head[i])
		for _, v := range all {
			widths[i] = max(widths[i], utf8.RuneCountInString(v.cells()[i]))
		}
		widths[i] = min(widths[i], most[i])
	}
	left = columns - len(widths)
	for _, width := range widths {
		left -= width
	}
	return widths, left
}

// first is the most urgent need, and how many more there are.
func (v *Standing) first(width int) string {
	switch n := len(v.Needs); n {
	case 0:
		return ""
	case 1:
		return clip(v.Needs[0], width)
	default:
		more := " +" + strconv.Itoa(n-1)
		return clip(v.Needs[0], width-len(more)) + more
	}
}

// noteUnder writes a note in the words of another section.
func (s *speech) noteUnder(section string, n program.Note) string {
	var pairs []string
	for _, value := range n.Values {
		pairs = append(pairs, value.Name, s.value(value))
	}
	return s.say(section+"."+n.Code, pairs...)
}
