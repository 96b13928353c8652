package mechanics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func anyRig(t *rapid.T) *Rig {
	r := &Rig{
		Drop:   rapid.Float64Range(0, 0.5).Draw(t, "drop"),
		Anchor: rapid.Float64Range(1.7, 2.6).Draw(t, "anchor"),
		Offset: rapid.Float64Range(-0.3, 0.3).Draw(t, "offset"),
	}
	for range rapid.IntRange(1, 2).Draw(t, "bands") {
		r.Bands = append(r.Bands, anyCurve(t))
	}
	return r
}

var (
	thin  = Curve{A: 8, B: 12, Rest: 1, Longest: 1.9}
	thick = Curve{A: 15, B: 30, Rest: 1, Longest: 1.9}
)

// Source: statics by hand. A weightless arm of length L carries a point mass m
// at x behind the shoulder and a vertical pull F at h behind it:
// sin(lean) = (m g x − F h) / (L (m g − F)), torque = m g x − F h.
func TestPointMassOnAWeightlessArm(t *testing.T) {
	const m, x, h, l = 50.0, 0.35, 0.45, 0.6
	b := Body{
		Mass: m, Height: 1.6,
		Trunk:    Segment{Mass: m, Length: h, CoM: x},
		UpperArm: Segment{Length: l / 2}, Forearm: Segment{Length: l / 2},
	}
	got := Solve(b, Pose{}, onBar, &Rig{Bands: []Curve{thick}, Anchor: 2.2})
	force := thick.Force(got.BandLength)
	near(t, "help", got.Help, force, 1e-9)
	near(t, "torque", got.Torque, m*Gravity*x-force*h, 1e-9)
	near(t, "sin lean", math.Sin(got.Lean), (m*Gravity*x-force*h)/(l*(m*Gravity-force)), 1e-9)
	near(t, "band length", got.BandLength, 2.2-l*math.Cos(got.Lean), 1e-12)
	near(t, "hip behind the hands", got.HandsAheadOfAnchor, h-l*math.Sin(got.Lean), 1e-12)
}

// More band: more help, less torque, less lean, higher hips.
func TestMoreBandMoreHelp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, rig := anyBody(t), anyRig(t)
		p := rapid.SampledFrom([]Pose{{}, legs(0, 50, 0), legs(90, 0, 90), legs(120, 0, 150), halfLay()}).Draw(t, "pose")
		rig.Offset = 0
		more := *rig
		extra := anyCurve(t)
		extra.Rest = rig.Bands[0].Rest // taut whenever the first band is
		more.Bands = append(rig.Bands[:len(rig.Bands):len(rig.Bands)], extra)
		less, got := Solve(b, p, onBar, rig), Solve(b, p, onBar, &more)
		if got.Torque < 0 || got.BandLength <= extra.Rest {
			return // nobody trains a hold that the bands do, or that they do not touch
		}
		if !(got.Help > less.Help && got.Torque < less.Torque && got.Lean < less.Lean && got.HipHeight > less.HipHeight) {
			t.Errorf("less band %+v\nmore band %+v", less, got)
		}
	})
}

// A lower strap hangs the same band slacker: less help.
func TestLongerStrapLessHelp(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 1.68)
	last := math.Inf(1)
	for _, drop := range []float64{0, 0.2, 0.4} {
		h := Solve(b, legs(0, 50, 0), onBar, &Rig{Bands: []Curve{thin, thick}, Anchor: 2.05, Drop: drop})
		if h.Help >= last {
			t.Errorf("strap %v m: help %v N, with less strap %v N", drop, h.Help, last)
		}
		last = h.Help
	}
}

func TestSlackRigIsAFreeHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, p, s := anyBody(t), anyPose(t), anySupport(t)
		free := Solve(b, p, s, nil)
		slack := Solve(b, p, s, &Rig{Bands: []Curve{{A: 20, B: 20, Rest: 9}}, Anchor: 2})
		if slack.Help != 0 || slack.Strain != 0 || slack.BeyondMeasured || slack.Unbalanced != free.Unbalanced ||
			math.Abs(slack.Torque-free.Torque) > 1e-9 || math.Abs(slack.Lean-free.Lean) > 1e-9 {
			t.Errorf("free %+v\nslack %+v", free, slack)
		}
	})
}

func TestNoBandsIsAFreeHold(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 1.68)
	free, none := Solve(b, Pose{}, onBar, nil), Solve(b, Pose{}, onBar, &Rig{Anchor: 2})
	if free.Torque != none.Torque || free.Lean != none.Lean {
		t.Errorf("free %+v, no bands %+v", free, none)
	}
}

// The anchor stands where it was asked for, and the hands are where the report
// says they are.
func TestAnchorStaysOverTheHip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, rig := anyBody(t), anyRig(t)
		h := Solve(b, legs(0, 50, 0), onBar, rig)
		j := h.Joints
		if math.Abs(j.Anchor.X-j.Hip.X-rig.Offset) > 1e-12 || math.Abs(j.Anchor.Y-rig.Anchor) > 1e-12 {
			t.Errorf("anchor at %v, hip at %v, offset %v", j.Anchor, j.Hip, rig.Offset)
		}
		if math.Abs(h.HandsAheadOfAnchor+j.Anchor.X) > 1e-12 {
			t.Errorf("hands %v ahead, anchor at %v", h.HandsAheadOfAnchor, j.Anchor)
		}
		angle := math.Atan(math.Abs(rig.Offset) / (rig.Anchor - h.HipHeight))
		if math.Abs(h.BandAngle-angle) > 1e-9 {
			t.Errorf("band %v off the vertical, want %v", h.BandAngle, angle)
		}
	})
}

// A band that pulls ahead lets the arms lean less; one that pulls back, more.
func TestSidewaysPullChangesTheLean(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 1.68)
	lean := func(offset float64) float64 {
		return Solve(b, legs(0, 50, 0), onBar, &Rig{Bands: []Curve{thick}, Anchor: 2.05, Offset: offset}).Lean
	}
	if !(lean(0.2) < lean(0) && lean(0) < lean(-0.2)) {
		t.Errorf("leans %v %v %v", lean(0.2), lean(0), lean(-0.2))
	}
}

func TestBeyondTheMeasuredLength(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 1.68)
	short := Curve{A: 8, B: 12, Rest: 0.5, Longest: 0.95}
	h := Solve(b, legs(0, 50, 0), onBar, &Rig{Bands: []Curve{thick, short}, Anchor: 2.05})
	if !h.BeyondMeasured || math.Abs(h.Strain-(h.BandLength/0.5-1)) > 1e-12 {
		t.Errorf("length %v, strain %v, beyond %v", h.BandLength, h.Strain, h.BeyondMeasured)
	}
	short.Longest = 0 // not known: nothing to warn of
	if Solve(b, legs(0, 50, 0), onBar, &Rig{Bands: []Curve{short}, Anchor: 2.05}).BeyondMeasured {
		t.Error("an unknown longest length was exceeded")
	}
}

func TestBandsThatLiftTheBodyOff(t *testing.T) {
	b := mustBody(t, Female, 40, 1.50, 1.50)
	h := Solve(b, Pose{}, onBar, &Rig{Bands: []Curve{{A: 900, B: 900, Rest: 0.4}}, Anchor: 2.5})
	if !h.Unbalanced || math.IsNaN(h.Torque) || math.IsNaN(h.Lean) {
		t.Errorf("%+v", h)
	}
}

func BenchmarkSolve(b *testing.B) {
	body := mustBody(b, Female, 58, 1.66, 1.68)
	rig := &Rig{Bands: []Curve{thin, thick}, Anchor: 2.05, Drop: 0.2, Offset: 0.1}
	b.Run("free", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			Solve(body, Pose{}, onBar, nil)
		}
	})
	b.Run("banded", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			Solve(body, Pose{}, onBar, rig)
		}
	})
}
