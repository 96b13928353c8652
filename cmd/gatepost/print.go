package main

import (
	"path"
	"sync"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/planner"
	"gatepost/program/posture"
	"gatepost/program/publish/paper"
	"gatepost/program/publish/store"
	"gatepost/program/publish/view"
)

// print adds what goes on paper. Where no program may be made, the one page is a
// letter that says why, and there are no chart, no cards, no page for the coach.
func (m *making) print(c *client, a *program.Assessment) {
	one, problems := paper.OnePage(c.view)
	c.add("one-page.pdf", one, problems)
	if len(c.withheld) == 0 {
		chart, problems := paper.WallChart(c.view)
		c.add("wall-chart.pdf", chart, problems)
		cards, problems := paper.Cards(c.view, m.part.bothSides)
		c.add("cards.pdf", cards, problems)
		coach, problems := paper.CoachPage(c.view)
		c.add("coach-page.pdf", coach, problems)
		m.printHowTo(c, a)
		m.printMessage(c)
		c.add("calendar.ics", view.OwnCalendar(c.view), nil)
		c.printReview(m.part.bothSides)
	}
	if c.review == nil { // until the first session is written down
		m.printFirstSession(c, a)
	}
	data, err := c.view.JSON()
	if err != nil { // a number that is none: a mistake in the planner
		c.problems = append(c.problems, program.Problem{
			Place:   program.Place{File: path.Join(clientsFolder, c.slug, assessmentFile)},
			Message: "the program cannot be written as JSON: " + err.Error(),
			Advice:  "Please report this with the file.",
		})
	}
	c.add("program.json", data, nil)
}

func (m *making) printHowTo(c *client, a *program.Assessment) {
	h, missing := view.NewHowTo(m.studio.Coach, &m.studio.Library, &c.program, m.pictures(a))
	how, problems := paper.HowTo(c.view, h)
	c.add("how-to.pdf", how, append(missing, problems...))
}

// printMessage adds the coming week in five lines.
func (m *making) printMessage(c *client) {
	text, problems := view.NewMessage(m.studio.Coach, &m.studio.Library, &c.program, &c.read, c.changed, c.printNow, m.part.week)
	c.add("message.txt", text.Text(), problems)
}

// printFirstSession adds the coach's script of the first hour.
func (m *making) printFirstSession(c *client, a *program.Assessment) {
	h := planner.FirstHour(&m.studio.Library, a, &c.program)
	f, missing := view.NewFirstSession(m.studio.Coach, &m.studio.Library, &c.program, &h)
	sheet, problems := paper.FirstSession(c.view, f)
	c.add("first-session.pdf", sheet, append(missing, problems...))
}

// printReview adds the log read back, and the cards that the plan on the wall
// changed of the one before it.
func (c *client) printReview(bothSides bool) {
	if c.review != nil {
		review, problems := paper.Review(c.view, c.review)
		c.add("review.pdf", review, problems)
	}
	if first, later := c.view.Changed(&c.program, c.changed, c.printNow); len(first) > 0 {
		cards, problems := paper.ChangedCards(c.view, bothSides, first, later)
		c.add("changed-cards.pdf", cards, problems)
	}
}

func (c *client) add(name string, b []byte, problems program.Problems) {
	c.files = append(c.files, store.File{Path: printFolder(c.slug) + "/" + name, Bytes: b})
	c.problems = append(c.problems, problems...)
}

// madeSheet is a blank form for the next assessment.
type madeSheet struct {
	file     []byte
	problems program.Problems
}

// testSheets are those forms, one for each skill that somebody goes for, and under no name
// that of who waits and has no goal yet. Each is made when it is first asked for, and once.
func testSheets(studio *program.Studio, album *posture.Album) func(skill string) madeSheet {
	var all sync.Map
	return func(skill string) madeSheet {
		make, _ := all.LoadOrStore(skill, sync.OnceValue(func() madeSheet {
			file, problems := blankSheet(studio, skill, album)
			return madeSheet{file, problems}
		}))
		return make.(func() madeSheet)()
	}
}

func (m *making) addSheet(c *client, skill string) {
	sheet := m.sheet(skill)
	c.files = append(c.files, store.File{Path: printFolder(c.slug) + "/test-sheet.pdf", Bytes: sheet.file})
	c.addNew(sheet.problems)
}

// waiting has what somebody is met with whose assessment nobody has filled in yet: the
// blank test sheet, and the first hour.
func (m *making) waiting(slug string) *client {
	c := &client{slug: slug, waits: true}
	m.addSheet(c, "")
	hour, problems := blankHour(m.studio)
	c.files = append(c.files, store.File{Path: printFolder(slug) + "/first-session.pdf", Bytes: hour})
	c.addNew(problems)
	return c
}

func blankHour(studio *program.Studio) ([]byte, program.Problems) {
	h := planner.BlankHour(&studio.Library)
	f, missing := view.NewFirstSession(studio.Coach, &studio.Library, &program.Program{}, &h)
	hour, problems := paper.FirstSession(nil, f)
	return hour, append(missing, problems...)
}

func blankSheet(studio *program.Studio, skill string, album *posture.Album) ([]byte, program.Problems) {
	banded, second := ladder.Shown(&studio.Library, skill)
	return paper.TestSheet(studio.Coach, &studio.Library, skill, paper.Shown{Banded: banded, Second: second, Pictures: album.Of})
}
