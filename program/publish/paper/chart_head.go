package paper

import (
	"math"
	"strings"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

const chartHead = 56 // A3 mm of the head, from the margin down to its rule

// header is the client and the goal at the left, and at the right this body in
// the block's positions and in the goal's.
func (c *chart) header() {
	x, y, right := c.mm(chartMargin), c.mm(chartMargin), c.Width-c.mm(chartMargin)
	w := 0.34 * (right - x)
	if len(c.v.Pictures) == 0 {
		w = right - x
	}
	goal := c.fit(Box{x, y + c.mm(28), w, c.mm(18)}, style{Face: Bold, Size: c.pt(22), Least: c.pt(12), Leading: 1.05}, c.v.Goal)
	goal.H = float64(len(goal.Lines)) * goal.Lead
	block := goal.Bottom() + c.mm(1)
	c.add(
		c.fit(Box{x, y, w, c.mm(7)}, style{Size: c.pt(15), Least: c.Least, Tone: Accent, Face: Bold},
			c.v.Skill+" · "+c.v.Coach.Studio),
		c.fit(Box{x, y + c.mm(7), w, c.mm(19)}, style{Face: Bold, Size: c.pt(48), Least: c.pt(20), Leading: 1}, c.v.Client),
		goal,
		Fill{Box{x, y + c.mm(chartHead), right - x, c.mm(1)}, Ink},
	)
	dates, other := style{Size: c.pt(15), Least: c.Least, Tone: Quiet}, style{Size: c.pt(12), Least: c.Least, Tone: Quiet, Leading: 1.1}
	under := Box{x, block + c.mm(6), w, y + c.mm(chartHead-0.5) - block - c.mm(6)}
	if under.H < other.lead(other.Least) { // a long goal: on the line of the dates
		c.add(c.fit(Box{x, block, w, c.mm(6)}, dates, joined(c.v.Block, c.other())))
	} else {
		c.add(c.fit(Box{x, block, w, c.mm(6)}, dates, c.v.Block), c.fit(under, other, c.other()))
	}
	c.pictures(Box{x + w + c.mm(8), y, right - x - w - c.mm(8), c.mm(chartHead - 1)})
}

// other is the client's other training by weekday.
func (c *chart) other() string {
	var days []string
	for _, o := range c.v.Other {
		days = append(days, o.Line)
	}
	return strings.Join(days, "; ")
}

// mostPictures is how many positions the head has room for; a block that has
// more leaves out those in the middle.
const mostPictures = 5

func (c *chart) positions() []view.Picture {
	all := c.v.Pictures
	if n := len(all); n > mostPictures {
		all = append(append([]view.Picture{}, all[:mostPictures-2]...), all[n-2:]...)
	}
	return all
}

const (
	captionHeight = 10   // A3 mm, of two lines
	captionLeast  = 34   // A3 mm of width, for the words under a figure
	bandShown     = 0.34 // m of band above the hip, then a break
)

// pictures stand on one line at one scale, spread over the box.
func (c *chart) pictures(b Box) {
	all := c.positions()
	if len(all) == 0 {
		return
	}
	var stances []program.Stance
	for _, p := range all {
		stances = append(stances, p.Stance)
	}
	bodies := bodiesOf(stances, func(i int) figure.Options { return figure.Options{Headroom: bandShown, Help: all[i].Help} })
	tall, deep := 0.0, 0.0
	for _, body := range bodies {
		tall, deep = math.Max(tall, body.above()), math.Max(deep, body.below())
	}
	scale := math.Min((b.H-c.mm(captionHeight+0.5))/(tall+deep), widest(bodies, b.W, c.mm(captionLeast)))
	floor := b.Bottom() - c.mm(captionHeight+0.5) - scale*deep
	x, gap := b.X, b.W
	for _, body := range bodies {
		gap -= math.Max(scale*body.Width(), c.mm(captionLeast))
	}
	gap /= float64(len(bodies))
	for i, body := range bodies {
		w := math.Max(scale*body.Width(), c.mm(captionLeast))
		for n := range body.Labels {
			body.Labels[n].Size = c.pt(13) * mmPerPoint / scale
		}
		c.add(c.stand(body, x+gap/2+(w-scale*body.Width())/2, floor, scale)...)
		c.pictureWords(Box{x + 0.5, floor + scale*deep + c.mm(0.5), w + gap - 1, c.mm(captionHeight)}, all[i])
		x += w + gap
	}
}

// widest is the scale, in mm a metre, at which bodies beside each other fill a
// width, each at least so many mm wide.
func widest(bodies []body, width, least float64) float64 {
	scale := 100.0
	for ; scale > 1; scale *= 0.98 {
		sum := 0.0
		for _, b := range bodies {
			sum += math.Max(scale*b.Width(), least)
		}
		if sum <= width {
			break
		}
	}
	return scale
}

// pictureWords are the position's name and when it is trained.
func (c *chart) pictureWords(b Box, p view.Picture) {
	name := style{Face: Bold, Size: c.pt(15), Least: c.Least, Leading: 1.1, Align: AlignCentre}
	when := style{Size: c.pt(12), Least: c.Least, Leading: 1.1, Align: AlignCentre, Tone: Quiet}
	if p.Goal {
		when.Tone, when.Face = Accent, Bold
	}
	text := p.When
	if p.Stance.Help == 0 { // else it stands beside the band
		text = joined(p.When, p.Help)
	}
	under := Box{b.X, b.Y + 0.55*b.H, b.W, 0.45 * b.H}
	if raised := joined(text, p.Raised); p.Raised != "" {
		if _, fits := c.fits(under, when, when.Least, c.clean(raised)); fits { // else it is seen, and cards say it
			text = raised
		}
	}
	c.add(c.fit(Box{b.X, b.Y, b.W, 0.55 * b.H}, name, p.Step), c.fit(under, when, text))
}
