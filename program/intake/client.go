package intake

import (
	"fmt"
	"slices"

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
	c.checkTests()
}

// wrong notes an error about the value at a path.
func (c *client) wrong(path, message, advice string) { c.say(c.at("%s", path), message, advice) }

// unusual notes a warning about the value at a path.
func (c *client) unusual(path, message, advice string) { c.doubt(c.at("%s", path), message, advice) }

// given says whether a path was written.
func (c *client) given(path string) bool { _, ok := c.places[path]; return ok }

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
	message := fmt.Sprintf("%.0f kg at %.0f cm is a body mass index of %.1f", mass, 100*height, index)
	switch {
	case index < 15:
		c.unusual("body.mass", message, "Kilograms for pounds, or a slip in the height? Look at both units.")
	case index > 40:
		c.unusual("body.mass", message, "Pounds for kilograms, or a slip in the height? Look at both units.")
	}
}

func (c *client) share(path string, x, least, most, low, high float64) {
	height := c.Athlete.Height
	if x == 0 || height == 0 {
		return
	}
	message := fmt.Sprintf("this is %.2f times the height", x/height)
	advice := func(a, b float64) string {
		return fmt.Sprintf("Expected between %.0f and %.0f cm; measure again, the height too.", 100*a*height, 100*b*height)
	}
	switch {
	case x < least*height || x > most*height:
		c.wrong(path, message, advice(least, most))
	case x < low*height || x > high*height:
		c.unusual(path, message, advice(low, high))
	}
}

// order notes an error when one date comes after another; dates not given pass.
func (c *client) order(path string, early, late program.Date, message string) {
	if early != 0 && late != 0 && early > late {
		c.wrong(path, message, "Correct one of the two dates.")
	}
}

func (c *client) checkDates() {
	born, measured, by := c.Athlete.Born, c.Measured, c.Goal.By
	c.order("born", born, measured, fmt.Sprintf("born after the assessment on %s", measured))
	c.order("goal.by", measured, by, fmt.Sprintf("the goal's date comes before the assessment on %s", measured))
	c.order("training.since", c.Training.Since, measured, fmt.Sprintf("the present spell starts after the assessment on %s", measured))
	c.order("training.since", born, c.Training.Since, "the present spell starts before birth")
	c.order("training.start", measured, c.Training.Start, fmt.Sprintf("the block starts before the assessment on %s", measured))
	c.order("training.start", c.Training.Start, by, fmt.Sprintf("the block starts after the goal's date, %s", by))
	if born != 0 && born <= measured {
		c.checkAge(measured.YearsSince(born))
	}
	if by.Time().Year() > measured.Time().Year()+10 && measured != 0 {
		c.wrong("goal.by", "the goal is more than ten years away", "Choose a nearer goal; the road goes on after it.")
	}
	if start := c.Training.Start; start != 0 && start != start.Monday() {
		c.wrong("training.start", fmt.Sprintf("%s is not a Monday", start), fmt.Sprintf("Weeks begin on Monday: write %s or %s.", start.Monday(), start.Monday()+7))
	} else if start > measured+26*7 && measured != 0 {
		c.unusual("training.start", "the block starts more than half a year after the assessment", "Assess again nearer to the start.")
	}
}

func (c *client) checkAge(years int) {
	if years < 8 || years > 99 {
		c.wrong("born", fmt.Sprintf("%d years old at the assessment", years), "Programs are made from 8 to 99 years; look at the year.")
	}
}

func (c *client) checkTraining() {
	t := &c.Training
	if t.Days != nil && len(t.Days) == 0 {
		c.wrong("training.days", "no training day is given", "Give one at least: days: [mon]")
	}
	for i, day := range t.Days {
		path := fmt.Sprintf("training.days[%d]", i)
		if first := slices.Index(t.Days, day); first < i && !c.wrongAt(path) && !c.wrongAt(fmt.Sprintf("training.days[%d]", first)) {
			c.wrong(path, fmt.Sprintf("%s is written twice", day), "Take one of the two away.")
		}
	}
	fromMonday(t.Days)
	for i, a := range t.Away {
		if a.To != 0 && a.To < c.Measured {
			c.unusual(fmt.Sprintf("training.away[%d]", i), "this is over before the assessment", "Take it away, or look at the year.")
		}
	}
	c.checkAmount()
	spell := float64(c.Measured-t.Since) / 7
	if t.Since != 0 && t.Since <= c.Measured && !c.wrongAt("training.experience") && spell > t.Experience+6 {
		c.unusual("training.since", "the present spell is longer than the whole experience", "Experience counts all spells, the present one too.")
	}
}

// A novice: less than three months of this work. Six hours of it a week are then
// more than tendons get used to. Both are our judgement.
const (
	noviceWeeks   = 13.0
	noviceMinutes = 360
)

// checkAmount asks about weeks that leave no day of rest, or are much for a
// beginner.
func (c *client) checkAmount() {
	t := &c.Training
	if len(t.Days) == 7 {
		c.unusual("training.days", "seven days a week leave no day of rest", "Tendons need one; name the days of this work only.")
	}
	if week := len(t.Days) * t.Minutes; week >= noviceMinutes && c.given("training.experience") && !c.wrongAt("training.experience") && t.Experience < noviceWeeks {
		c.unusual("training.minutes", fmt.Sprintf("%s hours a week are much for a beginner", short(float64(week)/60)), "Are these all hours of the week? Give the days and minutes of straight-arm work; two or three hours are plenty in the first months.")
	}
}

func (c *client) checkClearance() {
	on := c.Health.ClearedBy.On
	if on != 0 && on < c.Measured-366 {
		c.unusual("health.cleared_by", "the clearance is more than a year old", "Ask for a new one.")
	}
}

// checkKit turns what is written into the words the exercises use.
func (c *client) checkKit() {
	var kit []string
	for i, written := range c.Kit {
		path := fmt.Sprintf("kit[%d]", i)
		id, message, advice := c.kit.resolve(written)
		switch {
		case written == "":
		case fold(written) == "bands":
			if len(c.Bands) == 0 {
				c.unusual(path, "bands count only when they are measured", "List them under bands: with their pulls.")
			}
		case message != "":
			c.wrong(path, message, advice)
		case !slices.Contains(kit, id):
			kit = append(kit, id)
		}
	}
	c.Kit = kit
}
