package intake

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

const programsFolder = "content/programs"

// publicProgram is the file of one program for everybody. Its limits are those
// of an assessment.
func publicProgram(p *program.PublicProgram, like samples) read {
	return group(
		must("title", "From the floor up", text(&p.Title)),
		must("blurb", "Three days a week, with parallettes and without bands.", paragraph(&p.Blurb)),
		must("goal", fmt.Sprintf("{skill: %s, step: %s, hold: 10 s}", like.Skill, like.Step), publicGoal(&p.Goal, like)),
		may("weeks", "12", weeks.between(4, 16).whole(&p.Training.Weeks)),
		must("days", "3", trainingDays(&p.Training.Days)),
		must("minutes", "60", minutes.between(20, 240).whole(&p.Training.Minutes)),
		may("kit", "[parallettes, wall]", each(&p.Kit, text)),
		may("bands", "[{name: narrow, rest: 100 cm, pulls: [{at: 130 cm, force: 1.6 kg}, {at: 190 cm, force: 3.0 kg}]}]", each(&p.Bands, band)),
		may("rig", "{anchor: 215 cm}", rig(&p.Hanging)),
	)
}

// publicGoal is a goal without a date.
func publicGoal(g *program.Goal, like samples) read {
	return goalFields(g, like)
}

// maxParagraph is the longest blurb: what a reader takes in at one look.
const maxParagraph = 600

// paragraph reads a text of several lines as one.
func paragraph(into *string) read {
	return func(v value) {
		prose(into)(v)
		*into = strings.Join(strings.Fields(*into), " ")
		switch n := len([]rune(*into)); {
		case n > maxParagraph:
			v.wrong(fmt.Sprintf("is %d characters long", n), "Use at most %d, and a page for the rest.", maxParagraph)
		case n == 0 && v.node.Tag == "!!str":
			v.wrong("is empty", "Fill it in, for example: %s", v.example())
		}
	}
}

// usualDays are the days taken where only their number is said: as far apart as
// a week allows (common practice). Seven would leave no day of rest.
var usualDays = [][]time.Weekday{
	{time.Monday},
	{time.Monday, time.Thursday},
	{time.Monday, time.Wednesday, time.Friday},
	{time.Monday, time.Tuesday, time.Thursday, time.Saturday},
	{time.Monday, time.Tuesday, time.Wednesday, time.Friday, time.Saturday},
	{time.Monday, time.Tuesday, time.Wednesday, time.Thursday, time.Friday, time.Saturday},
}

// trainingDays reads how many days a week, or which.
func trainingDays(into *[]time.Weekday) read {
	return func(v value) {
		if v.node.Kind == yaml.SequenceNode {
			each(into, weekday)(v)
			return
		}
		var n int
		if whole(&n, 1, len(usualDays))(v); n > 0 {
			*into = append(*into, usualDays[n-1]...) // a copy: they are sorted later
		}
	}
}

// readPrograms reads the coach's public programs, by id. There are none built in.
func (f *folder) readPrograms(library *shelf, kit *names) []*client {
	var all []*client
	for _, id := range f.ids(f.coach, programsFolder, ".yaml", false) {
		src, ok := f.open(f.coach, programsFolder+"/"+id+".yaml", false)
		if !ok {
			continue
		}
		all = append(all, f.readProgram(src, id, library, kit))
	}
	return all
}

// readProgram checks a program as the assessment that it stands for.
func (f *folder) readProgram(src *source, id string, library *shelf, kit *names) *client {
	p := &program.PublicProgram{ID: id, File: src.file, Places: src.places}
	src.words = f.said
	src.readYAML("title: From the floor up", publicProgram(p, sample(&library.Library)))
	c := &client{source: src, library: library, kit: kit, public: p, Assessment: &program.Assessment{
		Slug: id, Training: p.Training, Goal: p.Goal, Kit: p.Kit, Bands: p.Bands, Hanging: p.Hanging}}
	if len(src.places) > 1 {
		c.checkDays()
		c.checkKit()
		c.checkBands()
		c.checkRig()
		c.checkGoal()
		c.checkBar()
		c.checkGoalKit()
		c.checkLifting()
	}
	p.Training, p.Goal, p.Kit, p.Bands, p.Hanging = c.Training, c.Goal, c.Kit, c.Bands, c.Hanging
	return c
}

// checkDays sees that each day is there once, and sorts them.
func (c *client) checkDays() {
	days := c.Training.Days
	if days != nil && len(days) == 0 {
		c.wrong("days", "no_days_known", "example", "days: 3")
	}
	for i, day := range days {
		path := fmt.Sprintf("days[%d]", i)
		if first := slices.Index(days, day); first < i && !c.wrongAt(path) && !c.wrongAt(fmt.Sprintf("days[%d]", first)) {
			c.wrong(path, "day_twice", "day", quote(weekdays[(day+6)%7]))
		}
	}
	fromMonday(days)
}

// soundPrograms are the programs without errors.
func soundPrograms(files []*client) []program.PublicProgram {
	var sound []program.PublicProgram
	for _, c := range files {
		if c.sound() {
			sound = append(sound, *c.public)
		}
	}
	return sound
}
