package ladder

import "gatepost/program"

// Reference is what every step of a road map asks of a body of the mean build of
// one sex, for a reader whose body nobody measured: shares of the full position
// differ by a hundredth or two between bodies. Mass and stature are those of
// de Leva's samples (published: 1996, women 61.9 kg, 1.735 m; men 73.0 kg,
// 1.741 m).
func Reference(m *program.RoadMap, sex program.Sex) []program.StepLoad {
	a := referenceAthlete(sex)
	b, _ := New(&a, m, nil)
	var out []program.StepLoad
	for i := range b.All {
		out = append(out, b.StepLoad(&b.All[i]))
	}
	return out
}

func referenceAthlete(sex program.Sex) program.Assessment {
	a := program.Assessment{Athlete: program.Athlete{Sex: sex, Mass: 73.0, Height: 1.741, Fold: drawnFold}, Kit: []string{Parallettes},
		Hanging: program.Hanging{Support: 0.10}}
	if sex == program.SexFemale {
		a.Athlete.Mass, a.Athlete.Height = 61.9, 1.735
	}
	return a
}

// StepLoad is what a step asks, for who reads it.
func (b *Body) StepLoad(r *Rung) program.StepLoad {
	return program.StepLoad{
		ID: r.ID, Torque: r.FreeHold.Torque, Share: b.hardness(r) / b.full, Allowance: allowance(r.Step),
		Lean: r.FreeHold.Lean, ShoulderAhead: r.FreeHold.ShoulderAhead, HipHeight: r.FreeHold.HipHeight,
		Raised: r.raised(), HandsAhead: r.FreeHold.HandsAheadOfAnchor, Stance: b.stance(r, r.Aids()[0]),
	}
}

// raised is how far a free hold's hips are above the shoulders for the floor's sake.
func (r *Rung) raised() float64 {
	if r.FreeHold.Pitch <= r.pose.Pitch {
		return 0
	}
	return r.FreeHold.Joints.Hip.Y - r.FreeHold.Joints.Shoulder.Y
}
