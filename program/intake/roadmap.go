package intake

import (
	"fmt"

	"gatepost/program"
)

// roadMap is the file of one skill. Limits of poses and gates are our judgement.
func roadMap(m *program.RoadMap) read {
	return group(
		must("name", "My skill", text(&m.Name)),
		must("hands", "support", choice(&m.Hands, program.HandsSupport, program.HandsHang)),
		may("load", "press", choice(&m.Load, program.LoadHold, program.LoadPress, program.LoadLift, program.LoadBalance)),
		may("body", "|", prose(&m.Body)),
		may("entry", "[{exercise: still-hang, hold: 30 s}, {exercise: chin-up, reps: 8}]", each(&m.Entry, entry)),
		may("prepare", "[wrists, elbows, shoulder blades]", each(&m.Prepare, purpose)),
		may("strength", "[push, raise]", each(&m.Strength, purpose)),
		may("against", "[row, rear shoulder, pull-up]", each(&m.Against, purpose)),
		may("mobility", "[straddle]", each(&m.Mobility, purpose)),
		may("rungs", "[{kind: lean, exercise: wall-lean}]", each(&m.Rungs, rung)),
		may("kin", "[{skill: another-skill, correlation: 0.5}]", each(&m.Kin, kin)),
		must("steps", "[{id: tuck, name: tuck, exercise: tuck-hold, pose: {…}, gate: {…}}]", each(&m.Steps, step)),
	)
}

// entry is a hold, of a lean at a distance, so many repetitions, or a fold of the hips.
func entry(h *program.Hold) read {
	return func(v value) {
		group(
			must("exercise", "still-hang", slug(&h.Exercise)),
			may("hold", "30 s", duration.between(1, 600).into(&h.Seconds)),
			may("reps", "8", whole(&h.Reps, 1, 100)),
			may("ahead", "18 cm", length.between(2, 60).into(&h.Ahead)),
			may("fold", "130 deg", foldOfHips.into(&h.Fold)),
		)(v)
		asked := 0
		for _, key := range []string{"hold", "reps", "fold"} {
			if v.has(key) {
				asked++
			}
		}
		if asked != 1 {
			v.fault("entry_amount", "example", "hold: 30 s, reps: 8, fold: 130 deg")
		}
		if v.has("ahead") && !v.has("hold") {
			v.fault("entry_lean", "example", "hold: 15 s, ahead: 18 cm")
		}
	}
}

func purpose(p *program.Purpose) read { return choice(p, program.Purposes...) }

// beside fills in what a session of a road map has beside its steps where the file says
// nothing: pushing is balanced by pulling, and pulling by pushing (common practice).
func beside(m *program.RoadMap) {
	prepare, strength, against := []program.Purpose{program.ForWrists, program.ForElbows, program.ForBlades},
		[]program.Purpose{program.ForPush, program.ForRaise},
		[]program.Purpose{program.ForRow, program.ForRearShoulder, program.ForPullUp, program.ForStraightPull}
	if m.Hands == program.HandsHang {
		prepare, strength, against = []program.Purpose{program.ForElbows, program.ForBlades, program.ForHang},
			[]program.Purpose{program.ForStraightPull, program.ForRow, program.ForPullUp},
			[]program.Purpose{program.ForPush, program.ForRaise}
	}
	mobility := []program.Purpose{program.ForStraddle}
	if m.Load == program.LoadLift {
		mobility = []program.Purpose{program.ForFold, program.ForStraddle}
	}
	if m.Load == program.LoadPress { // whose own work is the pushing
		strength, against = []program.Purpose{program.ForPush}, []program.Purpose{program.ForRow, program.ForRearShoulder, program.ForPullUp}
	}
	for at, usual := range map[*[]program.Purpose][]program.Purpose{&m.Prepare: prepare, &m.Strength: strength, &m.Against: against, &m.Mobility: mobility} {
		if len(*at) == 0 {
			*at = usual
		}
	}
}

func rung(r *program.Rung) read {
	return group(
		must("kind", "lean", choice(&r.Kind, program.RungLean, program.RungBalance, program.RungScale)),
		must("exercise", "wall-lean", text(&r.Exercise)),
		may("repeated", "wall-lean-in-and-out", text(&r.Repeated)),
	)
}

func step(s *program.Step) read {
	return group(
		must("id", "advanced-tuck", slug(&s.ID)),
		must("name", "advanced tuck", text(&s.Name)),
		must("exercise", "advanced-tuck-hold", text(&s.Exercise)),
		may("pose", "{hip: 90 deg, knee: 90 deg, rounding: 0.04, depression: 2 cm}", pose(&s.Pose)),
		may("press", "{rest: toes, trunk: 45 deg}", press(&s.Press)),
		may("lift", "{stance: 60 deg, open: 100 deg}", lift(&s.Lift)),
		may("stand", "{rest: wall, gap: 15 cm}", press(&s.Press)),
		may("allowance", "1.02", number(&s.Allowance, 0.8, 1.5)),
		must("gate", "{sets: 3, hold: 10 s}", gate(&s.Gate)),
		may("drills", "[scapular-push-up]", each(&s.Drills, text)),
		may("sides", "2", whole(&s.Sides, 1, 2)),
	)
}

// slug reads an id.
func slug(into *string) read {
	return func(v value) {
		text(into)(v)
		if *into != "" && !slugForm.MatchString(*into) {
			v.say(v.here(), fmt.Sprintf("%s is not an id", quote(*into)), "Use small letters a to z, digits and hyphens: "+suggestSlug(*into))
			*into = ""
		}
	}
}

// pose reads both legs at once, or each leg on its own.
func pose(p *program.Pose) read {
	return func(v value) {
		var both program.Leg
		var own []program.Leg
		group(append(legFields(&both),
			may("legs", "[{hip: 120 deg, knee: 150 deg}, {hip: 0 deg, knee: 0 deg}]", each(&own, leg)),
			may("rounding", "0.04", number(&p.Rounding, 0, 0.2)),
			may("depression", "2 cm", length.between(0, 6).into(&p.Depression)),
		)...)(v)
		p.Legs = [2]program.Leg{both, both}
		switch {
		case own == nil:
		case len(own) != 2:
			v.wrong("has legs, but not two of them", "Give two: legs: [{hip: 120 deg, knee: 150 deg}, {hip: 0 deg, knee: 0 deg}]")
		case v.has("hip") || v.has("knee") || v.has("abduct"):
			v.wrong("gives both legs at once and each leg on its own", "Keep one of the two.")
		default:
			p.Legs = [2]program.Leg(own)
		}
	}
}

func leg(l *program.Leg) read { return group(legFields(l)...) }

func legFields(l *program.Leg) []field {
	return []field{
		may("hip", "90 deg", angle.between(0, 170).into(&l.Hip)),
		may("abduct", "straddle", abduct(l)),
		may("knee", "90 deg", angle.between(0, 170).into(&l.Knee)),
	}
}

// abduct reads an angle, or "straddle" for half the athlete's own.
func abduct(l *program.Leg) read {
	return func(v value) {
		if s, ok := v.scalar(); ok && s == "straddle" {
			l.Straddle = true
		} else if ok {
			angle.between(0, 100).read(v, &l.Abduct)
		}
	}
}

// gate reads what must be shown before the next step; the defaults are the
// usual ones of this program.
func gate(g *program.Gate) read {
	*g = program.Gate{RPEMax: 9, Sessions: 2, Apart: 48, PainMax: 2}
	fields := []field{
		may("hold", "10 s", duration.between(1, 60).whole(&g.Hold)),
		may("reps", "8", whole(&g.Reps, 1, 30)),
		may("then", "10 s", duration.between(1, 60).whole(&g.Single)),
		may("rpe", "9", number(&g.RPEMax, 5, 10)),
		may("sessions", "2", whole(&g.Sessions, 1, 5)),
		may("apart", "48 h", hours.between(0, 336).whole(&g.Apart)),
		may("pain", "2", whole(&g.PainMax, 0, 3)),
	}
	return func(v value) { group(append(v.gateFields(g), fields...)...)(v) }
}

// readRoadMap reads a road map's file and checks it in itself.
func readRoadMap(src *source, id string) program.RoadMap {
	m := program.RoadMap{ID: id, File: src.file}
	src.readYAML("name: My skill", roadMap(&m))
	beside(&m)
	if src.checkBalance(&m); m.Load != program.LoadBalance {
		src.checkLoad(&m)
	}
	if m.Steps != nil && len(m.Steps) < 2 {
		src.say(src.at("steps"), "a road map needs two steps at least", "Add the step that comes before, or after.")
	}
	ids := map[string]bool{}
	for i, s := range m.Steps {
		if s.ID != "" && ids[s.ID] {
			src.say(src.at("steps[%d].id", i), fmt.Sprintf("two steps have the id %s", quote(s.ID)), "Give each step an id of its own.")
		}
		if s.Gate.Single != 0 && s.Gate.Single <= s.Gate.Hold {
			src.say(src.at("steps[%d].gate.then", i), "the longer set is not longer than the others", "Write more seconds, or take then: away.")
		}
		ids[s.ID] = true
	}
	return m
}
