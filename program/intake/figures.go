package intake

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

// exerciseFigures reads how an exercise is drawn: once, or at its start and its end.
func exerciseFigures(into *[]program.Figure) read {
	return func(v value) {
		each(into, exerciseFigure)(v)
		if n := len(*into); n > 2 {
			v.wrong("has "+strconv.Itoa(n)+" drawings", "Keep two, the start and the end, or one of a hold.")
		}
	}
}

func exerciseFigure(f *program.Figure) read {
	return func(v value) {
		*f = program.Figure{Angles: map[program.Bend]float64{}, Place: v.here()}
		var fields []field
		fields = append(fields, bends(f.Angles, trunkBends)...)
		fields = append(fields, bends(f.Angles, limbBends)...)
		for i, side := range []string{"right", "left"} {
			f.Sides[i] = map[program.Bend]float64{}
			fields = append(fields, may(side, "{elbow: 90}", group(bends(f.Sides[i], limbBends)...)))
		}
		for _, kind := range program.Things {
			fields = append(fields, may(string(kind), likeThing[kind], thing(f, kind)))
		}
		fields = append(fields,
			may("view", "front", choice(&f.View, program.FromSide, program.FromFront, program.FromBack, program.FromAbove, program.FromHigh)),
			may("slides", "[toes]", parts(&f.Slides)),
			may("moves", "[hands]", parts(&f.Moves)),
			may("circle", "[hands]", parts(&f.Circle)),
			may("press", "[fists]", parts(&f.Press)),
		)
		group(fields...)(v)
	}
}

// bend is a joint with what it can do, in degrees, or cm.
type bend struct {
	program.Bend
	least, most float64
}

// Limits are those of package posture's bodies, and of nobody's in particular.
var (
	trunkBends = []bend{{program.BendTrunk, -360, 360}, {program.BendSpine, -60, 90}, {program.BendNeck, -60, 70}}
	limbBends  = []bend{
		{program.BendShoulder, -60, 200}, {program.BendOut, -45, 180}, {program.BendTurn, -90, 180}, {program.BendElbow, 0, 155},
		{program.BendWrist, -90, 90}, {program.BendFingers, -45, 180}, {program.BendHip, -30, 145}, {program.BendApart, -20, 90}, {program.BendKnee, 0, 160}, {program.BendAnkle, -40, 85},
		{program.ShoulderUp, -8, 10}, {program.ShoulderAhead, -8, 10}}
)

// bends are the fields of joints.
func bends(into map[program.Bend]float64, of []bend) []field {
	var fields []field
	for _, b := range of {
		what, like := degrees, "30"
		if b.Bend == program.ShoulderUp || b.Bend == program.ShoulderAhead {
			what, like = length, "4 cm"
		}
		fields = append(fields, may(string(b.Bend), like, signed(what.between(b.least, b.most), func(x float64) { into[b.Bend] = x })))
	}
	return fields
}

// degrees are angles of figures, whose unit goes without saying.
var degrees = quantity{noun: "angle", bare: true, units: angle.units}

// signed reads a quantity that may be less than nothing.
func signed(q quantity, take func(float64)) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		sign, rest := 1.0, s
		if cut, ok := strings.CutPrefix(strings.Replace(s, "−", "-", 1), "-"); ok {
			sign, rest = -1, cut
		}
		x, fault := q.parse(rest)
		switch {
		case fault != "":
			v.fault("quantity", "what", v.words().Say("fault."+fault, "written", quote(s)), "how", q.advice(v.words(), rest, v.example()))
		case !q.within(sign*x, q.least, q.most):
			v.fault(q.outside("impossible", v, s, q.least, q.most)...)
		default:
			take(sign * x)
		}
	}
}

// likeThing is how each thing is written, for advice.
var likeThing = map[program.ThingKind]string{
	program.ThingFloor: "[feet]", program.ThingWall: "[back]", program.ThingBox: "{touches: [toes], high: 30 cm}",
	program.ThingCushion: "[knees]", program.ThingBlocks: "{touches: [hands], high: 10 cm}", program.ThingScale: "[tips]",
	program.ThingTable: "[hands]", program.ThingBar: "[hands]", program.ThingRings: "{touches: [hands], high: 100 cm}",
	program.ThingHandles: "[hands]", program.ThingDumbbells: "[hands]",
	program.ThingBand: "{touches: [hands], high: 120 cm, ahead: 100 cm}", program.ThingTowel: "[feet, hands]",
}

// thing reads what touches it, and where it is; "none" takes away what the first drawing has,
// "untouched" leaves it standing.
func thing(f *program.Figure, kind program.ThingKind) read {
	return func(v value) {
		t := program.Thing{Kind: kind}
		if v.node.Kind == yaml.MappingNode {
			fields := []field{must("touches", "[hands]", parts(&t.Parts))}
			if kind != program.ThingFloor && kind != program.ThingWall {
				fields = append(fields, may("high", "30 cm", length.between(1, 300).into(&t.High)))
			}
			if kind == program.ThingDumbbells {
				fields = append(fields, may("across", "yes", yesNo(&t.Across)))
			}
			if kind == program.ThingBand {
				fields = append(fields, may("ahead", "100 cm", signed(length.between(-300, 300), func(x float64) { t.Ahead = x })))
			}
			group(fields...)(v)
		} else if v.node.Kind == yaml.ScalarNode && takesAway(v) {
			t.Gone = true
		} else if v.node.Kind == yaml.ScalarNode {
			var part program.Part
			if choice(&part, append(program.Parts(), untouched)...)(v); part != untouched {
				t.Parts = []program.Part{part}
			}
		} else {
			parts(&t.Parts)(v)
		}
		f.Things = append(f.Things, t)
	}
}

const untouched = "untouched"

// takesAway reports whether a thing is "none", in the studio's words too; those are read for
// no word that is known.
func takesAway(v value) bool {
	s := strings.TrimSpace(v.node.Value)
	known := s == untouched || slices.Contains(program.Parts(), program.Part(s))
	return s == "none" || !known && isNone(v.words(), s)
}

// parts reads one part of the body, or a list.
func parts(into *[]program.Part) read {
	return func(v value) {
		part := func(p *program.Part) read { return choice(p, program.Parts()...) }
		if v.node.Kind == yaml.ScalarNode {
			*into = make([]program.Part, 1)
			part(&(*into)[0])(v)
			return
		}
		if each(into, part)(v); v.node.Kind == yaml.SequenceNode && len(*into) == 0 {
			v.wrong("names no part of the body", "Write, for example: %s", v.example())
		}
	}
}
