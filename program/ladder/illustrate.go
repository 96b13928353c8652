package ladder

import (
	"math"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// What illustrations show: the mean of the published average bodies (de Leva
// 1996, Table 4), on parallettes of 10 cm under an anchor at 2.15 m, with a band
// like many (common practice); a lean of 20 cm; a band hung half a metre off.
const (
	drawnLean  = 0.20 // m
	drawnSlant = 0.50 // m
	drawnToes  = 0.15 // of body weight, on a scale
	drawnBar   = 2.30 // m, height of a bar

	drawnFold = 130 * math.Pi / 180 // of the hips in a lift: of who has just begun them
)

var drawnAthlete = program.Assessment{
	Athlete: program.Athlete{Mass: 67.5, Height: 1.738, Fold: drawnFold},
	Kit:     []string{Parallettes},
	Hanging: program.Hanging{Anchor: 2.15, Support: 0.10},
	Bands:   []program.Band{drawnBand},
}

var drawnBand = program.Band{Name: "drawn", Rest: 1.0, Pulls: []program.Pull{
	{At: 1.3, Force: 50}, {At: 1.6, Force: 75}, {At: 1.9, Force: 95}}}

// Who hangs has a thinner loop, laid double, about the hip or at the ankles.
// A hip that sags under a band at the ankles is twenty degrees off straight, which the
// shoulders hardly notice (our judgement).
const (
	drawnSag   = 20 * math.Pi / 180
	drawnPitch = -12 * math.Pi / 180 // of the trunk, so that the heels stay as high as the shoulders
)

func drawnHanging() *program.Assessment {
	a := drawnAthlete
	thin := program.Band{Name: "drawn", Rest: drawnBand.Rest, Folded: true, Pulls: []program.Pull{{At: 1.3, Force: 16}, {At: 1.6, Force: 24}, {At: 1.9, Force: 30}}}
	a.Hanging = program.Hanging{Anchor: drawnBar, Bar: drawnBar}
	a.Bands = []program.Band{thin, thin}
	a.Bands[1].At = program.AtAnkle
	return &a
}

// Illustrations are the stances that pages about a road map can show. For a road
// map "m" with a step "s" they are: "m/s" held free, "m/s/flat" without rounding
// and depression, "m/s/band" under a band that hangs straight, "m/s/slant" under
// one that does not, of a press "m/s/low" with the crown on the floor, of a lift "m/s/middle" with the legs
// level; "m/e" for the
// exercise e of a floor rung; "m/zero" and "m/lean" for the two ends of measuring a lean
// at a wall; and "m/board" for the reaction board. Where the hands hang they are, of a
// step: free, flat, under a "band" laid double about the hip, with a loop that hangs
// "slack", under a band at the "ankle", and as it "sags" there; and "m/hang" for the
// straight hang.
func Illustrations(m *program.RoadMap) []program.Illustration {
	return illustrate(m, drawnAthlete)
}

// OnFlatHands are those of who has no handles.
func OnFlatHands(m *program.RoadMap) []program.Illustration {
	bare := drawnAthlete
	bare.Kit, bare.Hanging.Support = nil, 0
	return illustrate(m, bare)
}

func illustrate(m *program.RoadMap, drawn program.Assessment) []program.Illustration {
	athlete := &drawn
	if m.Hands == program.HandsHang {
		athlete = drawnHanging()
	}
	b, _ := New(athlete, m, nil)
	var all []program.Illustration
	show := func(name string, kind program.IllustrationKind, s program.Stance) {
		if s.Drawn() {
			all = append(all, program.Illustration{Name: m.ID + "/" + name, Kind: kind, Stance: s})
		}
	}
	for i := range b.All {
		r := &b.All[i]
		show(r.ID, "", b.stance(r, r.Aids()[0]))
		switch m.Load {
		case program.LoadBalance:
			continue
		case program.LoadPress:
			show(r.ID+"/low", "", b.pressedLow(r.Press, 0))
			continue
		case program.LoadLift:
			show(r.ID+"/middle", "", b.lifted(r.Step))
			continue
		}
		show(r.ID+"/flat", "", b.flat(r))
		show(r.ID+"/band", "", b.under(r, 0, 0))
		if m.Hands == program.HandsHang {
			slack := b.stance(r, r.Free())
			slack.Slack = drawnBand.Rest
			show(r.ID+"/slack", "", slack)
			show(r.ID+"/ankle", "", b.under(r, 0, 1))
			show(r.ID+"/sags", "", b.under(r.sagging(), 0, 1))
			continue
		}
		show(r.ID+"/slant", "", b.under(r, drawnSlant, 0))
	}
	if m.Hands == program.HandsHang {
		show("hang", "", b.hanging())
		return all
	}
	for _, rung := range m.Rungs {
		show(rung.Exercise, "", b.onTheFloor(rung.Kind))
	}
	b.support = mechanics.Support{} // a lean is measured with flat hands
	show("zero", program.WallIllustration, b.lean(0))
	show("lean", program.WallIllustration, b.lean(drawnLean))
	show("board", program.BoardIllustration, b.lying())
	return all
}

// flat is a step with a straight back and the shoulders left where they are.
func (b *Body) flat(r *Rung) program.Stance {
	flat := *r
	flat.pose.Rounding, flat.pose.Depression = 0, 0
	flat.FreeHold = mechanics.Solve(b.Body, flat.pose, b.support, nil)
	return b.stance(&flat, Aid{Hold: flat.FreeHold})
}

// sagging is a step whose hips have dropped while a band holds up the heels.
func (r *Rung) sagging() *Rung {
	sags := *r
	sags.pose.Pitch = drawnPitch
	for i := range sags.pose.Legs {
		sags.pose.Legs[i].Hip += drawnSag
	}
	return &sags
}

// under is a step with one of the bands so far off; none where it does not fit.
func (b *Body) under(r *Rung, offset float64, band int) program.Stance {
	b.Hanging.Offset = offset
	defer func() { b.Hanging.Offset = 0 }()
	if o := b.WithRig(r, 0, band); o.Help > 0 && !o.Hold.Unbalanced {
		return b.stance(r, o)
	}
	return program.Stance{}
}

// onTheFloor is a floor rung. Balance alone has no statics of ours.
func (b *Body) onTheFloor(kind program.RungKind) program.Stance {
	switch kind {
	case program.RungLean:
		return b.lean(drawnLean)
	case program.RungScale:
		first := &b.All[0]
		return b.Figure(first, first.Carried(first.Free(), drawnToes*b.Weight))
	}
	return program.Stance{}
}

// hanging is the body in a straight hang, the middle of its hands at the origin.
func (b *Body) hanging() program.Stance {
	at := func(y float64) program.Point { return program.Point{Y: y} }
	wrist := -b.Hand.CoM
	elbow := wrist - b.Forearm.Length
	shoulder := elbow - b.UpperArm.Length
	c7, hip := shoulder+b.Neck, shoulder-b.Trunk.Length
	knee := hip - b.Thigh.Length
	ankle := knee - b.Shank.Length
	toe := program.Point{X: b.Foot.Length * math.Sin(math.Pi/6), Y: ankle - b.Foot.Length*math.Cos(math.Pi/6)}
	return program.Stance{
		Height: b.Height, Fingers: at(wrist + b.FingerTip), Wrist: at(wrist), Elbow: at(elbow), Shoulder: at(shoulder),
		C7: at(c7), Head: at(c7 + b.Head.CoM), Crown: at(c7 + b.Head.Length), Hip: at(hip),
		Knees: [2]program.Point{at(knee), at(knee)}, Ankles: [2]program.Point{at(ankle), at(ankle)}, Toes: [2]program.Point{toe, toe},
		CoM: at(ankle - b.AnkleHeight + b.StandingCoM()), Floor: -b.support.Height, Grip: true, Hang: true,
	}
}

// lying is the body on its back, arms by its sides, soles above the origin and
// the head away from it, as on a reaction board.
func (b *Body) lying() program.Stance {
	at := func(x float64) program.Point { return program.Point{X: -x} }
	knee, hip := b.AnkleHeight+b.Shank.Length, b.AnkleHeight+b.Shank.Length+b.Thigh.Length
	shoulder := hip + b.Trunk.Length
	c7 := shoulder + b.Neck
	elbow := shoulder - b.UpperArm.Length
	wrist := elbow - b.Forearm.Length
	toe := program.Point{Y: b.Foot.Length * math.Sin(math.Pi/3), X: b.Foot.Length * math.Cos(math.Pi/3)}
	ankle := at(b.AnkleHeight)
	toe.X += ankle.X
	return program.Stance{
		Height: b.Height, Shoulder: at(shoulder), Elbow: at(elbow), Wrist: at(wrist), Fingers: at(wrist - b.FingerTip),
		C7: at(c7), Head: at(c7 + b.Head.CoM), Crown: at(c7 + b.Head.Length), Hip: at(hip),
		Knees: [2]program.Point{at(knee), at(knee)}, Ankles: [2]program.Point{ankle, ankle}, Toes: [2]program.Point{toe, toe},
		CoM: at(b.StandingCoM()),
	}
}
