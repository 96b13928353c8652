package site

import (
	"html/template"
	"strconv"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// Public is a public program with whatever is to be downloaded at each level.
type Public struct {
	View      *view.Public
	Documents [][]Document // in the order of the levels; none: nothing to download
}

// Document is a file to download. Its name without the ending is a key under
// "document": "wall-chart.pdf".
type Document struct {
	Name  string
	Bytes []byte
}

// programsView lists the public programs.
type programsView struct {
	frame
	Programs []programEntry
}

type programEntry struct {
	link
	Blurb, Goal string
	Picture     *pictureView // of the goal
}

// entranceView is the way into a public program: what it needs, and who should see
// a professional first.
type entranceView struct {
	frame
	Blurb      string
	Facts      []view.Fact
	Bands      []string
	Conditions []string
	Pain       []string
	Age        []string
	Find       string // address of the tests
}

// findView is the tests that find a reader's level.
type findView struct {
	frame
	Program link
	How     []string
	Stop    []string
	Tests   []testView
	Levels  []levelEntry
	Last    link // the level of whoever holds every row
}

// testView is one row: a hold, and where to start for whoever does not hold it.
type testView struct {
	link   // to the exercise; no Href: there is no page
	Hold   string
	Figure template.HTML
	From   link
	Timer  *timerView
}

// triesRest is what readers who test a balance wait between tries, s (find.how_tries_order).
const triesRest = 60

// testTimer counts a test up, to its seconds where it has them.
func (b *builder) testTimer(t *view.Test) *timerView {
	v := timerView{Name: sentence(t.Name), Label: b.words.fill("timer.start_for", "exercise", sentence(t.Name)),
		Sets: max(t.Tries, 1), Hold: t.Seconds, Rest: triesRest, Up: true}
	if t.Tries == 0 && t.Seconds == 0 {
		return nil
	}
	return &v
}

type levelEntry struct {
	link
	Shown string
}

// The order in which readers ask themselves, by name in the words file.
var (
	conditions = []string{"heart", "eyes", "pregnancy", "surgery", "shoulder", "arm", "wrist", "neck", "inverted", "loose", "fall"}
	pains      = []string{"low", "middle", "high", "nerves"}
	ages       = []string{"youth", "older"}
)

const programsPage = "programs.html"

func publicPage(id string) string { return "program-" + id + ".html" }
func findPage(id string) string   { return "find-" + id + ".html" }

// levelFiles is what the names of a level's files begin with.
func levelFiles(id string, number int) string { return "level-" + id + "-" + strconv.Itoa(number) }

// publics writes every public program: a list of them, and for each the way in,
// the tests and the levels.
func (b *builder) publics() {
	if len(b.Publics) == 0 {
		return
	}
	list := programsView{frame: b.frame(b.words.word("find.title"), programsPage, "")}
	list.Scripts, list.Description = []string{startScript}, b.words.word("find.programs_lead")
	for i := range b.Publics {
		p := &b.Publics[i]
		list.Programs = append(list.Programs, programEntry{link{Text: p.View.Title, Href: publicPage(p.View.ID)}, p.View.Blurb, p.View.Goal, b.goalPicture(p.View)})
		b.later(func() { b.write(publicPage(p.View.ID), "public.html", b.entrance(p.View)) })
		b.later(func() { b.write(findPage(p.View.ID), "find.html", b.find(p.View)) })
		for n := range p.View.Levels {
			b.later(func() { b.level(p, n) })
		}
	}
	b.write(programsPage, "programs.html", list)
}

// goalPicture is of the last rung on the way; nil: it is not drawn.
func (b *builder) goalPicture(p *view.Public) *pictureView {
	for _, l := range p.Levels {
		for _, r := range l.Ladder {
			if r.State == view.RungGoal {
				return b.picture(r.ExerciseID, "")
			}
		}
	}
	return nil
}

func (b *builder) entrance(p *view.Public) entranceView {
	v := entranceView{
		frame: b.frame(p.Title, publicPage(p.ID), ""),
		Blurb: p.Blurb, Facts: p.Facts, Bands: p.Bands, Find: findPage(p.ID),
		Conditions: b.list("find.condition_", conditions),
		Pain:       b.list("find.pain_", pains),
		Age:        b.list("find.age_", ages),
	}
	v.Description = summary(p.Blurb)
	b.way(&v.frame, link{Text: b.words.word("find.title"), Href: programsPage})
	return v
}

func (b *builder) list(prefix string, names []string) []string {
	all := make([]string, len(names))
	for i, name := range names {
		all[i] = b.words.word(prefix + name)
	}
	return all
}

// find is the tests. The hold that ends a level is the row that opens the next.
func (b *builder) find(p *view.Public) findView {
	v := findView{frame: b.frame(b.words.word("find.title"), findPage(p.ID), ""), Program: link{Text: p.Title, Href: publicPage(p.ID)}}
	v.Title = b.words.fill("site.program_of", "skill", v.Heading, "name", p.Title)
	v.Scripts, v.Description = []string{timerScript}, summary(p.Blurb)
	b.way(&v.frame, link{Text: b.words.word("find.title"), Href: programsPage}, v.Program)
	for i, l := range p.Levels {
		v.Levels = append(v.Levels, levelEntry{link{Text: l.Client, Href: levelFiles(p.ID, l.Number) + ".html"}, l.Shown})
		v.Last = link{Text: l.Name, Href: levelFiles(p.ID, l.Number) + ".html"}
		if i == len(p.Levels)-1 {
			break // what it ends with is the goal
		}
		for j := range l.Tests {
			t := &l.Tests[j]
			row := testView{link: link{Text: sentence(t.Name)}, Hold: t.Hold, From: v.Last, Figure: b.testFigure(&l), Timer: b.testTimer(t)}
			if _, ok := b.Library.Exercise(t.ExerciseID); ok {
				row.Href = exercisePage(t.ExerciseID)
			}
			v.Tests = append(v.Tests, row)
		}
	}
	if len(p.Levels) > 0 {
		v.Stop, v.How = p.Levels[0].Advice.StopRule, b.how(p)
	}
	return v
}

// how is the rules of the tests.
func (b *builder) how(p *view.Public) []string {
	t, prepare := p.Levels[0].Tests[0], "find.how_prepare"
	if m, ok := b.Library.RoadMap(p.SkillID); ok && m.Load == program.LoadBalance {
		return b.list("find.how_tries_", []string{"prepare", "order", "clock", "counts", "end"})
	}
	if m, ok := b.Library.RoadMap(p.SkillID); ok && m.Hands == program.HandsHang {
		prepare += "_hang"
	}
	return []string{
		b.words.word(prepare), b.words.word("find.how_order"), b.words.word("find.how_rest"),
		b.words.fill("find.how_counts", "rpe", t.RPE, "means", b.words.word("rpe."+t.RPE)),
		b.words.word("find.how_end"),
	}
}
