package view

import (
	"strings"
	"time"

	"gatepost/program"
)

// wishJSON is what a coach asks for by hand, and what became of it. Which fields a wish has
// depends on its kind; the others are null.
type wishJSON struct {
	Kind     string        `json:"kind"`
	Studio   bool          `json:"studio"`
	From     *program.Date `json:"from"`
	To       *program.Date `json:"to"`
	Days     []string      `json:"days"`
	Week     *int          `json:"week"`
	Purpose  *string       `json:"purpose"`
	Exercise *string       `json:"exercise"`
	Use      *string       `json:"use"`
	Step     *string       `json:"step"`
	Rig      []string      `json:"rig"`    // null: as planned
	Drop     *float64      `json:"drop_m"` // null: as planned
	Pad      *float64      `json:"pad_m"`
	Block    *float64      `json:"block_m"`
	Ahead    *float64      `json:"ahead_m"`
	Sets     *int          `json:"sets"`
	Hold     *int          `json:"hold_s"`
	Reps     *int          `json:"reps"`
	Kit      []string      `json:"kit"` // null: as always
	Minutes  *int          `json:"minutes"`
	Rule     *string       `json:"rule"`
	Number   *int          `json:"number"`
	Text     *string       `json:"text"`
	State    string        `json:"state"`
	Why      []noteJSON    `json:"why"`
}

func toWish(w program.WishRead) wishJSON {
	v := wishJSON{Kind: string(w.Kind), Studio: w.Studio, From: given(w.From), To: given(w.To), Week: orNull(w.Week),
		Purpose: orNull(string(w.Purpose)), Exercise: orNull(w.Exercise), Use: orNull(w.Use), Step: orNull(w.Step), Ahead: positive(w.Ahead, 3),
		Sets: orNull(w.Sets), Hold: orNull(w.Hold), Reps: orNull(w.Reps), Minutes: orNull(w.Minutes), Rule: orNull(w.Rule), Number: orNull(w.Number),
		Text: orNull(w.Text), State: string(w.State), Why: each(w.Why, toNote)}
	v.Days = each(w.Days, func(d time.Weekday) string { return strings.ToLower(d.String()[:3]) })
	if w.Kind == program.WishAt && !w.AllKit {
		v.Kit = append([]string{}, w.Kit...)
	}
	if w.Rig != nil {
		v.Rig, v.Pad, v.Block = names(*w.Rig), positive(w.Rig.Pad, 3), positive(w.Rig.Block, 3)
		if w.Rig.Drop != program.AnyDrop {
			drop := places(w.Rig.Drop, 3)
			v.Drop = &drop
		}
	}
	return v
}

// orNull is a value, or null where nothing was said.
func orNull[T comparable](x T) *T {
	var none T
	if x == none {
		return nil
	}
	return &x
}
