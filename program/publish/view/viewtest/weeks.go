package viewtest

import "gatepost/program"

// plan is one line of the block: what differs from week to week.
type plan struct {
	kind       program.WeekKind
	step       string
	bands      []string
	drop, help float64
	sets, hold int
	note       string
}

var (
	both   = []string{"narrow", "middle"}
	middle = []string{"middle"}
	narrow = []string{"narrow"}
)

var block = []plan{
	{program.WeekBuild, "open-tuck", both, 0, 64, 3, 12, ""},
	{program.WeekBuild, "open-tuck", both, 0, 64, 4, 12, ""},
	{program.WeekBuild, "open-tuck", both, 0.2, 49, 4, 12, ""},
	{program.WeekDeload, "open-tuck", both, 0.2, 49, 2, 8, ""},
	{program.WeekBuild, "open-tuck", middle, 0.2, 36, 4, 12, ""},
	{program.WeekBuild, "open-tuck", narrow, 0, 22, 4, 11, ""},
	{program.WeekBuild, "open-tuck", nil, 0, 0, 4, 10, ""},
	{program.WeekDeload, "open-tuck", nil, 0, 0, 2, 6, ""},
	{program.WeekBuild, "advanced-tuck", both, 0, 63, 4, 12, ""},
	{program.WeekBuild, "advanced-tuck", both, 0.2, 48, 4, 12, ""},
	{program.WeekBuild, "advanced-tuck", both, 0.2, 48, 5, 13, ""},
	{program.WeekTest, "advanced-tuck", both, 0.2, 48, 2, 8, ""},
}

func weeks() []program.Week {
	var all []program.Week
	for i, p := range block {
		w := program.Week{
			Number: i + 1, Start: start + program.Date(7*i), Kind: p.kind,
			Step: p.step, Exercise: p.step + "-hold", Rig: rig(p), Help: p.help,
			Capacity: 118 + 1.9*float64(i), MaxHold: float64(p.hold) / 0.7, Effort: 0.7,
			Hold: p.hold, Sets: p.sets, Rest: 150, HalfSeconds: 4 * p.sets * p.hold, Provisional: i >= 4,
		}
		w.Sessions = sessions(p, w)
		all = append(all, w)
	}
	return all
}

func rig(p plan) program.Rig { return program.Rig{Bands: p.bands, Drop: p.drop} }

// sessions are Monday, Wednesday and Friday; the last of the block is the test.
func sessions(p plan, w program.Week) []program.Session {
	a, b, c := w.Start, w.Start+2, w.Start+4
	if p.kind == program.WeekTest {
		return []program.Session{
			session(a, 34, prepare(), main(p), pull()),
			session(c, 40, prepare(), test(p), trunk()),
		}
	}
	first := session(a, 57, prepare(), ahead(p), main(p), pull(), trunk(), mobility())
	if p.kind == program.WeekDeload {
		first = session(a, 41, prepare(), main(p), pull(), trunk(), mobility())
	}
	last := session(c, 54, prepare(), main(p), rearShoulder(), raise(), mobility())
	last.Dropped = []program.Note{{Code: FixtureNote, Values: []program.Value{
		{Name: "exercise", Kind: program.ValueExercise, Text: "hollow-hold"},
		{Name: "minutes", Kind: program.ValueCount, Number: 60}}}}
	return []program.Session{first, session(b, 52, prepare(), second(), lean(), pull(), trunk()), last}
}

func session(on program.Date, minutes int, parts ...[]program.Prescription) program.Session {
	s := program.Session{Date: on, Minutes: minutes}
	for _, items := range parts {
		s.Items = append(s.Items, items...)
	}
	return s
}

func main(p plan) []program.Prescription {
	return []program.Prescription{{Exercise: p.step + "-hold", Role: program.RoleMain, Step: p.step, Rig: rig(p),
		Help: p.help, HandsAhead: handsAhead(p.help, 0.26), Sets: p.sets, Hold: p.hold, Rest: 150,
		StraightArm: true, MaxHold: float64(p.hold) / 0.7, Load: 0.79}}
}

func handsAhead(help, m float64) float64 {
	if help == 0 {
		return 0
	}
	return m
}

func ahead(p plan) []program.Prescription {
	return []program.Prescription{{Exercise: "advanced-tuck-hold", Role: program.RoleAhead, Step: "advanced-tuck",
		Rig: program.Rig{Bands: middle}, Help: 47, HandsAhead: 0.24, Sets: 4, Hold: 6, Rest: 180,
		StraightArm: true, MaxHold: 8.4, Load: 0.87}}
}

func second() []program.Prescription {
	return []program.Prescription{{Exercise: "tuck-hold", Role: program.RoleSecond, Step: "tuck", Sets: 3, Hold: 15,
		Rest: 105, StraightArm: true, MaxHold: 22, Load: 0.71}}
}

func lean() []program.Prescription {
	return []program.Prescription{{Exercise: "planche-lean", Role: program.RoleSecond, Ahead: 0.22, Sets: 3, Hold: 15,
		Rest: 90, StraightArm: true, MaxHold: 30, Load: 0.66}}
}

func test(p plan) []program.Prescription {
	return []program.Prescription{
		{Exercise: "open-tuck-hold", Role: program.RoleTest, Step: "open-tuck", Sets: 1, Hold: 0, Rest: 300,
			StraightArm: true, Max: true, MaxHold: 15},
		{Exercise: p.step + "-hold", Role: program.RoleTest, Step: p.step, Sets: 1, Rest: 300,
			StraightArm: true, Max: true, MaxHold: 8},
	}
}

func item(exercise string, role program.Role, sets, hold, reps, rest int) []program.Prescription {
	return []program.Prescription{{Exercise: exercise, Role: role, Sets: sets, Hold: hold, Reps: reps, Rest: rest}}
}

func prepare() []program.Prescription {
	items := item("wrist-preparation", program.RolePrepare, 1, 0, 10, 0)
	items = append(items, item("elbow-preparation", program.RolePrepare, 1, 30, 0, 0)...)
	return append(items, item("scapular-push-up", program.RolePrepare, 2, 0, 10, 30)...)
}

func pull() []program.Prescription {
	items := item("pull-up", program.RolePull, 4, 0, 5, 0)
	items[0].InRests = true
	return items
}

func rearShoulder() []program.Prescription {
	return item("band-face-pull", program.RolePull, 3, 0, 12, 60)
}

func raise() []program.Prescription {
	items := item("straight-arm-raise", program.RoleStrength, 3, 0, 8, 90)
	items[0].StraightArm = true
	return items
}

func trunk() []program.Prescription { return item("hollow-hold", program.RoleTrunk, 3, 25, 0, 60) }

func mobility() []program.Prescription {
	items := item("straddle-stretch", program.RoleMobility, 4, 40, 0, 20)
	items[0].EachSide = true
	return items
}
