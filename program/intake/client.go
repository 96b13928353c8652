package intake

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// client is an assessment with its file, while it is checked against itself and
// against the library.
type client struct {
	*source
	*program.Assessment
	library *shelf
	kit     *names
	roadMap *program.RoadMap       // the goal's; nil: unknown, or with errors of its own
	public  *program.PublicProgram // what the file is really of; nil: of a client
	log     *source                // the log's file; nil: none was read
	waiting bool                   // nobody has filled the file in yet
	plans   []*source              // the kept plans' files
	hand    *hand                  // what the coach asks for; nil: no such file
}

// check looks at everything that one field alone cannot tell.
func (c *client) check() {
	c.checkBody()
	c.checkDates()
	c.checkTraining()
	c.checkClearance()
	c.checkKit()
	c.checkBands()
	c.checkRig()
	c.checkGoal()
	c.checkBar()
	c.checkGoalKit()
	c.checkLifting()
	c.checkTests()
	c.checkOthers()
}

// wrong notes an error about the value at a path.
func (c *client) wrong(path string, wrong ...string) {
	c.note(fault(wrong).in(c.words(), c.at("%s", path)))
}

// unusual notes a warning about the value at a path.
func (c *client) unusual(path string, wrong ...string) {
	c.note(fault(wrong).doubtIn(c.words(), c.at("%s", path)))
}

// decimal writes a number with some decimals, or as few as it needs (−1), and the
// decimal sign of the language.
func (c *client) decimal(x float64, decimals int) string {
	return strings.Replace(strconv.FormatFloat(x, 'f', decimals, 64), ".", cmp.Or(c.library.Words["unit.decimal"], "."), 1)
}

// checkBody compares lengths with the height. Arm span is .93 to 1.12 of the
// height in nearly everybody, the standing centre of mass at .53 to .58 (common
// practice); the wide limits are our judgement.
func (c *client) checkBody() {
	c.share("body.arm_span", c.Athlete.ArmSpan, 0.8, 1.2, 0.93, 1.12)
	c.share("body.balance_point", c.Athlete.BalancePoint, 0.48, 0.65, 0.52, 0.60)
	c.checkMass()
}

// checkMass asks about a body that is very light or very heavy for its height.
// Outside a body mass index of 15 to 40 a slip of the unit is likelier than such
// an athlete (our judgement; underweight is below 18.5 and the third class of
// obesity begins at 40, WHO Technical Report Series 894, 2000).
func (c *client) checkMass() {
	mass, height := c.Athlete.Mass, c.Athlete.Height
	if mass == 0 || height == 0 {
		return
	}
	index := mass / (height * height)
	values := []string{"mass", c.decimal(mass, 0), "height", program.Centimetres(height), "index", c.decimal(index, 1)}
	switch {
	case index < 15:
		c.unusual("body.mass", append([]string{"mass_light"}, values...)...)
	case index > 40:
		c.unusual("body.mass", append([]string{"mass_heavy"}, values...)...)
	}
}

func (c *client) share(path string, x, least, most, low, high float64) {
	height := c.Athlete.Height
	if x == 0 || height == 0 {
		return
	}
	wrong := func(a, b float64) []string {
		return []string{"of_height", "times", c.decimal(x/height, 2), "least", program.Centimetres(a * height), "most", program.Centimetres(b * height)}
	}
	switch {
	case x < least*height || x > most*height:
		c.wrong(path, wrong(least, most)...)
	case x < low*height || x > high*height:
		c.unusual(path, wrong(low, high)...)
	}
}

// order notes an error when one date comes after another; dates not given pass.
func (c *client) order(path string, early, late program.Date, wrong string) {
	if early != 0 && late != 0 && early > late {
		c.wrong(path, wrong, "early", early.String(), "late", late.String())
	}
}

func (c *client) checkDates() {
	born, measured, by := c.Athlete.Born, c.Measured, c.Goal.By
	c.order("born", born, measured, "born_after")
	c.order("goal.by", measured, by, "goal_before")
	c.order("training.since", c.Training.Since, measured, "since_after")
	c.order("training.since", born, c.Training.Since, "since_before")
	c.order("training.start", measured, c.Training.Start, "start_before")
	c.order("training.start", c.Training.Start, by, "start_after")
	if born != 0 && born <= measured {
		c.checkAge(measured.YearsSince(born))
	}
	if by.Time().Year() > measured.Time().Year()+10 && measured != 0 {
		c.wrong("goal.by", "goal_decade")
	}
	if start := c.Training.Start; start != 0 && start != start.Monday() {
		c.wrong("training.start", "not_monday", "start", start.String(), "before", start.Monday().String(), "after", (start.Monday() + 7).String())
	} else if start > measured+26*7 && measured != 0 {
		c.unusual("training.start", "start_late")
	}
}

func (c *client) checkAge(years int) {
	if years < 8 || years > 99 {
		c.wrong("born", "age", "years", strconv.Itoa(years))
	}
}

func (c *client) checkTraining() {
	t := &c.Training
	if t.Days != nil && len(t.Days) == 0 {
		c.wrong("training.days", "no_days", "example", "days: [mon]")
	}
	for i, day := range t.Days {
		path := fmt.Sprintf("training.days[%d]", i)
		if first := slices.Index(t.Days, day); first < i && !c.wrongAt(path) && !c.wrongAt(fmt.Sprintf("training.days[%d]", first)) {
			c.wrong(path, "day_twice", "day", quote(weekdays[(day+6)%7]))
		}
	}
	fromMonday(t.Days)
	for i, a := range t.Away {
		if a.To != 0 && a.To < c.Measured {
			c.unusual(fmt.Sprintf("training.away[%d]", i), "away_over")
		}
	}
	c.checkAmount()
	spell := float64(c.Measured-t.Since) / 7
	if t.Since != 0 && t.Since <= c.Measured && !c.wrongAt("training.experience") && spell > t.Experience+6 {
		c.unusual("training.since", "since_long")
	}
}

// A novice: less than three months of this work. Six hours of it a week are then
// more than tendons get used to. Both are our judgement.
const (
	noviceWeeks   = 13.0
	noviceMinutes = 360
)

// checkAmount asks for a time to remind of, and about weeks that leave no day of rest, or are much for a
// beginner.
func (c *client) checkAmount() {
	t := &c.Training
	if t.Remind > 0 && !c.given("training.time") {
		c.wrong("training.remind", "remind_what", "example", `time: "18:00"`)
	}
	if len(t.Days) == 7 {
		c.unusual("training.days", "seven_days")
	}
	if week := len(t.Days) * t.Minutes; week >= noviceMinutes && c.given("training.experience") && !c.wrongAt("training.experience") && t.Experience < noviceWeeks {
		c.unusual("training.minutes", "much_for_novice", "hours", c.decimal(float64(week)/60, -1))
	}
}

// checkClearance knows that a guardian called "none" is none.
func (c *client) checkClearance() {
	c.Health.Conditions = c.orNone("health.conditions", c.Health.Conditions)
	if isNone(c.library.Words, c.Health.Guardian) {
		c.Health.Guardian = ""
	}
	on := c.Health.ClearedBy.On
	if on != 0 && on < c.Measured-366 {
		c.unusual("health.cleared_by", "clearance_old")
	}
}

// orNone is a list in which the word for nothing stands for an empty one; beside other
// words it is an error.
func (c *client) orNone(path string, list []string) []string {
	i := slices.IndexFunc(list, func(word string) bool { return isNone(c.library.Words, word) })
	if i >= 0 && len(list) > 1 {
		c.wrong(fmt.Sprintf("%s[%d]", path, i), "none_beside", "written", quote(list[i]))
	}
	if i >= 0 && len(list) == 1 {
		return nil
	}
	return list
}

// checkKit turns what is written into the words the exercises use.
func (c *client) checkKit() {
	var kit []string
	for i, written := range c.orNone("kit", c.Kit) {
		path := fmt.Sprintf("kit[%d]", i)
		id, known := c.kit.find(written)
		switch {
		case written == "" || isNone(c.library.Words, written):
		case id == "bands" || fold(written) == "bands":
			if len(c.Bands) == 0 {
				c.unusual(path, "bands_unmeasured")
			}
		case !known && slices.Contains(wordsOf(c.library.Words, "pad"), fold(written)): // no exercise has pads as kit
			if len(c.Hanging.Pads) == 0 {
				c.unusual(path, "pads_unmeasured")
			}
		case !known:
			c.wrong(path, "unknown_kit", "written", quote(written), "offer", offerIn(c.words(), written, c.kit.list))
		case !slices.Contains(kit, id):
			kit = append(kit, id)
		}
	}
	c.Kit = kit
}
