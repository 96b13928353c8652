package intake

import (
	"fmt"
	"io"
	"slices"
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
	roadMap *program.RoadMap // the goal's; nil: unknown, or with errors of its own
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
	spell := float64(c.Measured-t.Since) / 7
	if t.Since != 0 && t.Since <= c.Measured && !c.wrongAt("training.experience") && spell > t.Experience+6 {
		c.unusual("training.since", "the present spell is longer than the whole experience", "Experience counts all spells, the present one too.")
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

func (c *client) checkBands() {
	for i, b := range c.Bands {
		path := fmt.Sprintf("bands[%d]", i)
		for _, other := range c.Bands[:i] {
			if b.Name != "" && fold(other.Name) == fold(b.Name) {
				c.wrong(path+".name", fmt.Sprintf("two bands are called %s", quote(b.Name)), "Give each band its own name; write it on the band.")
			}
		}
		c.checkPulls(path+".pulls", b)
	}
}

func (c *client) checkPulls(path string, b program.Band) {
	switch n := len(b.Pulls); {
	case b.Pulls == nil: // not given, or not a list: said already
		return
	case n < 2:
		c.wrong(path, "one pull does not make a curve", "Measure two at least, better three: a little, half, and as far as it will be used.")
		return
	case n == 2:
		c.unusual(path, "two pulls are few", "A third one, between them or further out, shows a slip of the scale.")
	}
	for i, p := range b.Pulls {
		at := fmt.Sprintf("%s[%d]", path, i)
		switch {
		case p.At == 0 || p.Force == 0 || b.Rest == 0: // said already
		case p.At <= b.Rest:
			c.wrong(at+".at", fmt.Sprintf("the band is not stretched here: its rest length is %.0f cm", 100*b.Rest), "Give the whole length under load, from end to end.")
		case p.At > 6*b.Rest:
			c.wrong(at+".at", fmt.Sprintf("the band is stretched to %.1f times its rest length", p.At/b.Rest), "No band bears that; measure again, the rest length too.")
		}
		c.checkOrder(at, b.Pulls[:i], p)
	}
}

// checkOrder compares a pull with those written before it.
func (c *client) checkOrder(path string, before []program.Pull, p program.Pull) {
	for _, o := range before {
		near, far := o, p
		if p.At < o.At {
			near, far = p, o
		}
		switch {
		case near.At == 0 || near.Force == 0 || far.Force == 0:
		case near.At == far.At:
			c.wrong(path+".at", "this length is measured twice", "Keep the mean of the two, or measure at another length.")
			return
		case far.Force < near.Force:
			c.wrong(path+".force", fmt.Sprintf("the band pulls less at %.0f cm than at %.0f cm", 100*far.At, 100*near.At), "Measure both again; let the scale settle.")
			return
		}
	}
}

// checkRig fills in what was not said: the strap is left out, and parallettes
// are ten centimetres high (common practice).
func (c *client) checkRig() {
	h := &c.Hanging
	if len(c.Bands) > 0 && !c.given("rig") {
		c.wrong("bands", "bands are listed, but not where they hang", "Add the anchor's height above the floor: rig: {anchor: 215 cm}")
	}
	if !c.given("rig.support") && slices.Contains(c.Kit, "parallettes") {
		h.Support = 0.10
	}
	for i, d := range h.Drops {
		path := fmt.Sprintf("rig.drops[%d]", i)
		if slices.Contains(h.Drops[:i], d) && !c.wrongAt(path) {
			c.wrong(path, "this length is written twice", "Take one of the two away.")
		}
		if h.Anchor > 0 && d >= h.Anchor {
			c.wrong(path, "the strap reaches the floor", "Give lengths shorter than the anchor is high.")
		}
	}
	if len(h.Drops) == 0 {
		h.Drops = []float64{0}
	}
	if h.Anchor > 0 && h.Anchor <= h.Support+0.3 {
		c.wrong("rig.anchor", "the anchor is hardly above the hands' support", "Give both heights from the floor.")
	}
}

// checkPage sees that a shared client has a page whose name nobody can guess.
func (c *client) checkPage(chance io.Reader) {
	switch {
	case c.Page == "" && c.Share == program.ShareSite && !c.given("page"):
		c.wrong("share", "a shared page needs a name that nobody can guess", "Add a line: page: "+randomPage(chance))
	case c.Page == "":
	case !pageForm.MatchString(c.Page):
		c.wrong("page", fmt.Sprintf("%s does not fit", quote(c.Page)), "Use 8 to 32 small letters a to z and digits, at random: page: "+randomPage(chance))
	case len(c.Slug) > 3 && strings.Contains(c.Page, strings.ReplaceAll(c.Slug, "-", "")):
		c.wrong("page", "the page's name gives the client's away", "Use letters at random: page: "+randomPage(chance))
	}
}
