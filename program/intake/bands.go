package intake

import (
	"fmt"
	"slices"

	"gatepost/program"
)

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
	if h.Anchor > 0 && h.Strap.To >= h.Anchor {
		c.wrong("rig.strap", "the strap reaches the floor", "Give lengths shorter than the anchor is high.")
	}
	if len(h.Drops) == 0 && h.Strap == (program.Strap{}) {
		h.Drops = []float64{0}
	}
	if h.Anchor > 0 && h.Anchor <= h.Support+0.3 {
		c.wrong("rig.anchor", "the anchor is hardly above the hands' support", "Give both heights from the floor.")
	}
}

// checkBar asks how high the bar is where the goal hangs from one: without it
// nobody knows how long the bands are at the hips.
func (c *client) checkBar() {
	if c.roadMap == nil || c.roadMap.Hands != program.HandsHang || len(c.Bands) == 0 || c.given("rig.bar") {
		return
	}
	at := "bands"
	if c.given("rig") {
		at = "rig"
	}
	c.wrong(at, fmt.Sprintf("%s hangs from a bar, and its height is missing", quote(c.roadMap.ID)), "Add the bar's height above the floor, as the anchor's: rig: {anchor: 250 cm, bar: 230 cm}")
}
