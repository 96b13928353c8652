package ladder

import (
	"slices"

	"gatepost/program"
)

// What a form about measuring shows, on the body of Reference: a hold of about
// three quarters of the full position under one band, and a lean.
const (
	shownShare = 0.75
	shownLean  = 0.20 // m, ahead of the wrist crease
)

// Shown are a hold under a band, and a lean or a straight hang, for who explains how to
// rig and how to measure: of a road map, or else of the first that rests on the hands;
// not Drawn where there is none.
func Shown(lib *program.Library, skill string) (banded, second program.Stance) {
	m := shownOn(lib, skill)
	if m == nil {
		return banded, second
	}
	hangs := m.Hands == program.HandsHang
	a := referenceAthlete(program.SexFemale)
	a.Bands = []program.Band{{Name: "band", Rest: 1, Folded: hangs, Pulls: []program.Pull{{At: 1.3, Force: 40}, {At: 1.6, Force: 60}, {At: 1.9, Force: 75}}}}
	a.Hanging.Anchor = 2.15
	if hangs {
		a.Hanging = program.Hanging{Anchor: drawnBar, Bar: drawnBar}
	}
	b, _ := New(&a, m, nil)
	r := &b.All[0]
	for i := range b.All {
		if b.All[i].FreeHold.Torque <= shownShare*b.full && b.All[i].FreeHold.Torque > r.FreeHold.Torque {
			r = &b.All[i]
		}
	}
	banded = b.stance(r, r.Aids()[len(r.Aids())-1])
	if hangs {
		return banded, b.hanging()
	}
	a.Kit, a.Hanging.Support = nil, 0 // flat hands, so that the wrist is the mark
	flat, _ := New(&a, m, nil)
	return banded, flat.lean(shownLean)
}

// shownOn is a road map that hangs, or else the first of holds that rests on the hands;
// nil where there is none.
func shownOn(lib *program.Library, skill string) *program.RoadMap {
	if own, ok := lib.RoadMap(skill); ok && own.Hands == program.HandsHang && len(own.Steps) > 0 {
		return own
	}
	i := slices.IndexFunc(lib.RoadMaps, func(m program.RoadMap) bool {
		return m.Hands != program.HandsHang && !m.Load.Repeats() && m.Load != program.LoadBalance && len(m.Steps) > 0
	})
	if i < 0 {
		return nil
	}
	return &lib.RoadMaps[i]
}
