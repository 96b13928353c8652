package view

import (
	_ "embed"

	"gatepost/program"
)

// ReviewSchema describes what ReviewJSON writes (JSON Schema, draft 2020-12).
//
//go:embed review.schema.json
var ReviewSchema []byte

// ReviewJSON writes a review for machines, as JSON writes a program.
func ReviewJSON(r *program.Review) ([]byte, error) { return indented(reviewJSON(r)) }

type (
	reviewFile struct {
		Client   clientJSON        `json:"client"`
		On       program.Date      `json:"on"`
		Version  int               `json:"version"` // of the plan on the wall
		Week     int               `json:"week"`    // 0: not begun
		Weeks    int               `json:"weeks"`
		Ended    bool              `json:"ended"`
		Done     int               `json:"done"`
		Missed   int               `json:"missed"`
		Last     *program.Date     `json:"last"`
		Pace     float64           `json:"pace"`
		Flags    []flagJSON        `json:"flags"`
		Before   readJSON          `json:"before"`
		After    readJSON          `json:"after"`
		Moves    []moveJSON        `json:"moves"`
		Doubted  []setJSON         `json:"doubted"`
		Unread   []noteJSON        `json:"unread"`
		Gates    []gateReadJSON    `json:"gates"`
		Offsets  []offsetJSON      `json:"offsets"`
		Asks     []noteJSON        `json:"asks"`
		Wishes   []wishJSON        `json:"wishes"`
		Sessions []sessionReadJSON `json:"sessions"`
		Progress []progressJSON    `json:"progress"`
		NextTest *program.Date     `json:"next_test"`
		Changes  []changeJSON      `json:"changes"`
		PrintNow []program.Date    `json:"print_now"` // cards of the coming week
		Notes    []noteJSON        `json:"notes"`
		Withheld []noteJSON        `json:"withheld"`
	}
	// readJSON is what was believed at one time.
	readJSON struct {
		Held12   float64        `json:"held_12_s_nm"`
		Low      float64        `json:"low_nm"`
		High     float64        `json:"high_nm"`
		Chance   *float64       `json:"chance"` // null: not forecast
		Forecast []forecastJSON `json:"forecast"`
	}
	flagJSON struct {
		Level string `json:"level"`
		noteJSON
	}
	moveJSON struct {
		Moved float64 `json:"moved"` // of ln of the torque
		setJSON
	}
	setJSON struct {
		Date     program.Date `json:"date"`
		Exercise string       `json:"exercise"`
		Step     string       `json:"step"`
		Rig      []string     `json:"rig"`
		Drop     float64      `json:"drop_m"`
		Ahead    float64      `json:"ahead_m"`
		Scale    float64      `json:"scale_n"`
		Set      int          `json:"set"`     // 0: not said
		Printed  int          `json:"printed"` // s, or repetitions
		Hold     float64      `json:"hold_s"`
		Reps     int          `json:"reps"`
		RPE      *float64     `json:"rpe"`
		Clean    *bool        `json:"clean"`
		Pain     *int         `json:"pain"`  // the worst said
		Tries    *triesJSON   `json:"tries"` // null: a single one
	}
	gateReadJSON struct {
		Step     string          `json:"step"`
		State    string          `json:"state"`
		On       *program.Date   `json:"on"`
		Tries    int             `json:"tries"`
		Criteria []criterionJSON `json:"criteria"`
	}
	criterionJSON struct {
		Name   string    `json:"name"`
		Met    bool      `json:"met"`
		Unsaid bool      `json:"unsaid"`
		Wanted float64   `json:"wanted"`
		Shown  float64   `json:"shown"`
		Sets   []setJSON `json:"sets"`
	}
	sessionReadJSON struct {
		Printed *program.Date `json:"printed"`
		Done    *program.Date `json:"done"`
		Sets    int           `json:"sets"`
		Held    int           `json:"held"`
		Short   int           `json:"short"`
	}
	progressJSON struct {
		Number   int          `json:"number"` // 0: before the block
		Start    program.Date `json:"start"`
		Kind     string       `json:"kind"`
		Held12   float64      `json:"held_12_s_nm"`
		Low      float64      `json:"low_nm"`
		High     float64      `json:"high_nm"`
		Planned  float64      `json:"planned_nm"`
		Printed  int          `json:"printed"`
		Done     int          `json:"done"`
		Holds    holdsJSON    `json:"holds"`
		Counted  holdsJSON    `json:"straight_arm"`
		Help     float64      `json:"help_n"`
		RPE      *float64     `json:"rpe"`
		Pain     painJSON     `json:"pain"`
		Mornings painJSON     `json:"mornings"`
		Tests    []testJSON   `json:"tests"`
		Tries    *triesJSON   `json:"tries"` // null: none
	}
	triesJSON struct {
		Reached int `json:"reached"`
		Of      int `json:"of"`
	}
	holdsJSON struct {
		Printed float64 `json:"printed_s"`
		Done    float64 `json:"done_s"`
	}
	painJSON struct { // null: nothing said
		Wrists    *int `json:"wrists"`
		Elbows    *int `json:"elbows"`
		Shoulders *int `json:"shoulders"`
		Other     *int `json:"other"`
	}
	testJSON struct {
		Date   program.Date `json:"date"`
		Held12 float64      `json:"held_12_s_nm"`
	}
	changeJSON struct {
		Week  int            `json:"week"`
		Start program.Date   `json:"start"`
		Notes []noteJSON     `json:"notes"`
		Cards []program.Date `json:"cards"`
		Gone  []program.Date `json:"gone"`
	}
)

var levels = [...]string{program.FlagLook: "look", program.FlagAct: "changed", program.FlagStop: "stop"}

func reviewJSON(r *program.Review) reviewFile {
	return reviewFile{
		Client: clientJSON{r.Client.Name, r.Client.Slug}, On: r.On, Version: r.Version, Week: r.Week, Weeks: r.Weeks, Ended: r.Ended,
		Done: r.Done, Missed: r.Missed, Last: given(r.Last), Pace: places(r.Pace, 4),
		Flags:  each(r.Flags, toFlag),
		Before: toRead(r.Before, r.GoalBefore, r.ForecastBefore), After: toRead(r.After, r.GoalAfter, r.ForecastAfter),
		Moves:   each(r.Moves, func(m program.Move) moveJSON { return moveJSON{places(m.Moved, 4), toSet(m.Set)} }),
		Doubted: each(r.Doubted, func(m program.Move) setJSON { return toSet(m.Set) }),
		Unread:  each(r.Unread, toNote), Gates: each(r.Gates, toGateRead), Offsets: each(r.Offsets, toOffset), Asks: each(r.Asks, toNote), Wishes: each(r.Wishes, toWish), Sessions: each(r.Sessions, toSessionRead),
		Progress: each(r.Progress, toProgress), NextTest: given(r.NextTest), Changes: each(r.Changes, toChange),
		PrintNow: each(r.PrintNow, sameDay),
		Notes:    each(r.Notes, toNote), Withheld: each(r.Withheld, toNote),
	}
}

func toFlag(f program.Flag) flagJSON { return flagJSON{levels[f.Level], toNote(f.Note)} }

func toRead(c program.Capacity, g program.GoalForecast, all []program.Forecast) readJSON {
	v := readJSON{places(c.Held12, 1), places(c.Low, 1), places(c.High, 1), nil, each(all, toForecast)}
	if chance := places(g.Chance, 3); len(all) > 0 {
		v.Chance = &chance
	}
	return v
}

func toTries(t program.Tries) *triesJSON {
	if t.Of == 0 {
		return nil
	}
	return &triesJSON{t.Reached, t.Of}
}

func toSet(s program.SetRead) setJSON {
	v := setJSON{Date: s.Date, Exercise: s.Exercise, Step: s.Step, Rig: names(s.Rig), Drop: max(0, places(s.Rig.Drop, 3)), Ahead: places(s.Ahead, 3), Scale: places(s.Scale, 1),
		Set: s.Done.Number, Printed: s.Printed, Hold: places(s.Done.Seconds, 1), Reps: s.Done.Reps, RPE: positive(s.Done.RPE, 2), Tries: toTries(s.Done.Tries)}
	if s.Done.Clean != program.CleanUnsaid {
		clean := s.Done.Clean == program.CleanYes
		v.Clean = &clean
	}
	if s.Done.Pain.Given {
		worst := s.Done.Pain.Worst()
		v.Pain = &worst
	}
	return v
}

// positive is null for a number that was not said or is nothing, else rounded to
// decimal places.
func positive(x float64, n int) *float64 {
	if x = places(x, n); x <= 0 {
		return nil
	}
	return &x
}

func toGateRead(g program.GateRead) gateReadJSON {
	return gateReadJSON{g.Step, string(g.State), given(g.On), g.Tries, each(g.Criteria, func(c program.Criterion) criterionJSON {
		return criterionJSON{c.Name, c.Met, c.Unsaid, places(c.Wanted, 1), places(c.Shown, 1), each(c.Sets, toSet)}
	})}
}

func toSessionRead(s program.SessionRead) sessionReadJSON {
	return sessionReadJSON{given(s.Printed), given(s.Done), s.Sets, s.Held, s.Short}
}

func toProgress(w program.WeekRead) progressJSON {
	return progressJSON{w.Number, w.Start, string(w.Kind), places(w.Held12, 1), places(w.Low, 1), places(w.High, 1), places(w.Planned, 1),
		w.Printed, w.Done, holdsJSON{float64(w.HoldPrinted), places(w.HoldDone, 1)},
		holdsJSON{float64(w.HalfPrinted) / 2, float64(w.HalfSeconds) / 2}, places(w.Help, 1), positive(w.RPE, 2), toPain(w.Pain), toPain(w.Mornings),
		each(w.Tests, func(t program.TestRead) testJSON { return testJSON{t.Date, places(t.Held12, 1)} }), toTries(w.Tries)}
}

func toPain(p program.Pain) painJSON {
	said := func(n int) *int {
		if !p.Given || n < 0 {
			return nil
		}
		return &n
	}
	return painJSON{said(p.Wrists), said(p.Elbows), said(p.Shoulders), said(p.Other)}
}

func toChange(c program.Change) changeJSON {
	return changeJSON{c.Week, c.Start, each(c.Notes, toNote), each(c.Cards, sameDay), each(c.Gone, sameDay)}
}

// sameDay keeps lists of days lists where they are empty, see each.
func sameDay(d program.Date) program.Date { return d }
