package viewtest

import (
	"time"

	"gatepost/program"
)

// Review is a made-up log read back in the fifth week of Program's block, with
// something of everything.
func Review() *program.Review {
	monday := program.NewDate(2027, time.January, 11)
	on := program.NewDate(2027, time.February, 12)
	p := Program()
	broken := program.SetRead{Date: monday, Exercise: "open-tuck-hold", Step: "open-tuck", Rig: program.Rig{Bands: []string{"narrow"}, Drop: 0.2}, Printed: 12,
		Done: program.SetDone{Number: 3, Seconds: 7, RPE: 9.5, Clean: program.CleanNo, Pain: program.Pain{Given: true, Wrists: -1, Elbows: 3, Shoulders: -1, Other: -1}}}
	joint := program.Value{Name: "joint", Kind: program.ValueWord, Text: "joint.elbows"}
	r := &program.Review{
		Client: p.Client, On: on, Version: 1, Week: 5, Weeks: 12, Done: 2, Missed: 1, Last: on, Pace: -0.03,
		Sessions: []program.SessionRead{
			{Printed: monday, Done: monday, Sets: 4, Held: 3, Short: 1},
			{Printed: monday + 4}, {Printed: monday + 7, Done: monday + 8, Sets: 4, Held: 4},
		},
		Flags: []program.Flag{
			{Level: program.FlagStop, Note: program.Note{Code: "flag-pain-rising", Values: []program.Value{joint, number("pain", program.ValueCount, 4)}}},
			{Level: program.FlagLook, Note: program.Note{Code: "flag-sets-short", Values: []program.Value{number("sets", program.ValueCount, 3), number("of", program.ValueCount, 12)}}},
		},
		Moves:   []program.Move{{Set: broken, Moved: -0.0253}},
		Doubted: []program.Move{{Set: program.SetRead{Date: monday + 2, Exercise: "tuck-hold", Step: "tuck", Printed: 15, Done: program.SetDone{Seconds: 70}}}},
		Before:  p.Capacity, After: p.Capacity, GoalBefore: p.Goal, GoalAfter: p.Goal,
		ForecastBefore: p.Forecasts, ForecastAfter: p.Forecasts, NextTest: monday + 42,
		Gates: []program.GateRead{{StepGate: program.StepGate{Step: "open-tuck", Gate: program.Gate{Sets: 3, Hold: 12, RPEMax: 9, Sessions: 2, Apart: 48, PainMax: 2}},
			State: program.GateNotYet, Tries: 1, Criteria: []program.Criterion{
				{Name: "free", Met: true, Wanted: 3, Shown: 3},
				{Name: "hold", Wanted: 12, Shown: 7, Sets: []program.SetRead{broken}},
				{Name: "clean", Unsaid: true}, {Name: "rpe", Wanted: 9, Shown: 9.5, Sets: []program.SetRead{broken}},
				{Name: "pain", Wanted: 2, Shown: 3, Sets: []program.SetRead{broken}}, {Name: "sessions", Wanted: 2},
			}}},
		PrintNow: []program.Date{monday + 28, monday + 30},
		Changes: []program.Change{{Week: 5, Start: monday + 28, Cards: []program.Date{monday + 28, monday + 30}, Gone: []program.Date{monday + 29},
			Notes: []program.Note{{Code: "change-help", Values: []program.Value{number("before", program.ValueNewtons, 0), number("after", program.ValueNewtons, 29.4)}}}}},
		Notes:  []program.Note{{Code: "joint-eased", Values: []program.Value{joint}}},
		Unread: []program.Note{{Code: "band-gone", Values: []program.Value{{Name: "exercise", Kind: program.ValueExercise, Text: "tuck-hold"}, number("date", program.ValueDate, float64(monday))}}},
	}
	for i := range 4 {
		w := p.Weeks[i]
		r.Progress = append(r.Progress, program.WeekRead{Number: w.Number, Start: w.Start, Kind: w.Kind, Held12: p.Capacity.Held12 * (1 + 0.01*float64(i)),
			Low: p.Capacity.Low, High: p.Capacity.High, Planned: w.Capacity, Printed: 3, Done: 3 - i%2, HoldPrinted: w.Hold, HoldDone: float64(w.Hold) - 0.5,
			Help: w.Help, HalfSeconds: w.HalfSeconds - 10, HalfPrinted: w.HalfSeconds, RPE: 7.5,
			Pain:  program.Pain{Given: true, Wrists: 0, Elbows: 1 + i, Shoulders: -1, Other: -1},
			Tests: []program.TestRead{{Date: w.Start, Held12: p.Capacity.Held12}}})
	}
	return r
}

func number(name string, kind program.ValueKind, n float64) program.Value {
	return program.Value{Name: name, Kind: kind, Number: n}
}

// Replanned is Program as Review planned it anew, from its fifth week on.
func Replanned() *program.Program {
	p := Program()
	p.Version, p.From = 2, p.Weeks[4].Start
	return p
}
