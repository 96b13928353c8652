package intake

import (
	"fmt"
	"slices"
	"strings"

	"gatepost/program"
)

func (c *client) checkBands() {
	for i, b := range c.Bands {
		path := fmt.Sprintf("bands[%d]", i)
		for _, other := range c.Bands[:i] {
			if b.Name != "" && fold(other.Name) == fold(b.Name) {
				c.wrong(path+".name", "bands_same", "name", quote(b.Name))
			}
		}
		c.checkMeasured(path, b)
		c.checkPulls(path+".pulls", b)
	}
}

// checkMeasured asks for the rest length of a band whose pulls are given, and about one
// that nobody measured: it is hung by what a scale reads. Readers of a public program can
// compare theirs with measured ones alone.
func (c *client) checkMeasured(path string, b program.Band) {
	switch {
	case c.given(path + ".pulls"):
		if !c.given(path + ".rest") {
			c.lacks(path, must("rest", "100 cm", nil))
		}
	case c.public != nil:
		c.lacks(path, must("pulls", "[{at: 130 cm, force: 1.6 kg}, {at: 190 cm, force: 3.0 kg}]", nil))
	case b.Name != "" && b.Retired == 0:
		c.unusual(path, "band_unmeasured", "band", quote(b.Name))
	}
}

// measuredBands reports whether some band's stretch was measured, so that it counts where
// the bands hang.
func (c *client) measuredBands() bool {
	return slices.ContainsFunc(c.Bands, func(b program.Band) bool { return b.Measured() })
}

func (c *client) checkPulls(path string, b program.Band) {
	switch n := len(b.Pulls); {
	case b.Pulls == nil: // not given, or not a list: said already
		return
	case n < 2:
		c.wrong(path, "one_pull")
		return
	case n == 2:
		c.unusual(path, "two_pulls")
	}
	for i, p := range b.Pulls {
		at := fmt.Sprintf("%s[%d]", path, i)
		switch {
		case p.At == 0 || p.Force == 0 || b.Rest == 0: // said already
		case p.At <= b.Rest:
			c.wrong(at+".at", "not_stretched", "rest", program.Centimetres(b.Rest))
		case p.At > 6*b.Rest:
			c.wrong(at+".at", "overstretched", "times", c.decimal(p.At/b.Rest, 1))
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
			c.wrong(path+".at", "pull_twice")
			return
		case far.Force < near.Force:
			c.wrong(path+".force", "pulls_less", "far", program.Centimetres(far.At), "near", program.Centimetres(near.At))
			return
		}
	}
}

// checkRig fills in what was not said: the strap is left out, and parallettes
// are ten centimetres high (common practice).
func (c *client) checkRig() {
	h := &c.Hanging
	if c.measuredBands() && !c.given("rig") {
		c.wrong("bands", "no_anchor", "example", "rig: {anchor: 215 cm}")
	}
	if !c.given("rig.support") && slices.Contains(c.Kit, "parallettes") {
		h.Support = 0.10
	}
	if c.measuredBands() && c.given("rig") && !c.given("rig.anchor") {
		c.lacks("rig", must("anchor", "215 cm", nil))
	}
	c.checkHips()
	c.checkOnce("rig.pads", h.Pads)
	c.checkOnce("rig.blocks", h.Blocks)
	c.checkOnce("rig.drops", h.Drops)
	slices.Sort(h.Pads)
	slices.Sort(h.Blocks)
	for i, d := range h.Drops {
		if h.Anchor > 0 && d >= h.Anchor {
			c.wrong(fmt.Sprintf("rig.drops[%d]", i), "strap_floor")
		}
	}
	if h.Anchor > 0 && h.Strap.To >= h.Anchor {
		c.wrong("rig.strap", "strap_floor")
	}
	if len(h.Drops) == 0 && h.Strap == (program.Strap{}) {
		h.Drops = []float64{0}
	}
	if h.Anchor > 0 && h.Anchor <= h.Support+0.3 {
		c.wrong("rig.anchor", "anchor_low")
	}
}

// checkOnce sees that each length of a list is there once.
func (c *client) checkOnce(path string, lengths []float64) {
	for i, x := range lengths {
		if at := fmt.Sprintf("%s[%d]", path, i); slices.Contains(lengths[:i], x) && !c.wrongAt(at) {
			c.wrong(at, "length_twice")
		}
	}
}

// checkGoalKit asks for what the goal cannot be held without: nobody hangs from a wall.
func (c *client) checkGoalKit() {
	if c.roadMap == nil || !c.sound() {
		return
	}
	step, _ := c.roadMap.Step(c.Goal.Step)
	if step == nil {
		return
	}
	e, _ := c.library.Exercise(step.Exercise)
	if e == nil {
		return
	}
	at := "goal"
	if c.given("kit") {
		at = "kit"
	}
	for _, oneOf := range e.Kit {
		if !slices.ContainsFunc(oneOf, func(k string) bool { return slices.Contains(c.Kit, k) || k == "bands" && len(c.Bands) > 0 }) {
			c.wrong(at, "goal_kit", "exercise", quote(e.Name), "kit", strings.Join(oneOf, ", "), "example", fmt.Sprintf("kit: [%s]", oneOf[0]))
		}
	}
}

// checkBar asks how high the bar is where the goal hangs from one: without it
// nobody knows how long the bands are at the hips.
func (c *client) checkBar() {
	if c.roadMap == nil || c.roadMap.Hands != program.HandsHang || !c.measuredBands() || c.given("rig.bar") {
		return
	}
	at := "bands"
	if c.given("rig") {
		at = "rig"
	}
	c.wrong(at, "no_bar", "skill", quote(c.roadMap.ID), "example", "rig: {anchor: 250 cm, bar: 230 cm}")
}
