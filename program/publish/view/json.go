package view

import (
	"bytes"
	"cmp"
	_ "embed"
	"encoding/json"
	"math"
	"strings"

	"gatepost/program"
)

// Schema describes what JSON writes (JSON Schema, draft 2020-12).
//
//go:embed program.schema.json
var Schema []byte

// JSON writes a program for machines: UTF-8, two-space indent, fields in a fixed
// order, dates ISO 8601, numbers in the units their names end in and rounded to
// what is meant. Schema describes it. The library gives the steps their names.
func JSON(lib *program.Library, p *program.Program) ([]byte, error) {
	return indented(programJSON(lib, p))
}

func indented(v any) ([]byte, error) {
	var flat, out bytes.Buffer
	enc := json.NewEncoder(&flat)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return nil, err
	}
	out.Grow(3 * flat.Len()) // an encoder that indents grows from nothing every time
	err := json.Indent(&out, flat.Bytes(), "", "  ")
	return out.Bytes(), err
}

type (
	fileJSON struct {
		Client   clientJSON     `json:"client"`
		Skill    string         `json:"skill"`
		Other    []otherJSON    `json:"other"`
		Goal     goalJSON       `json:"goal"`
		Steps    []stepJSON     `json:"steps"`
		Bands    []bandJSON     `json:"bands"`
		Capacity *capacityJSON  `json:"capacity"` // null where balance is practised
		Forecast []forecastJSON `json:"forecast"`
		Weeks    []weekJSON     `json:"weeks"`
		Gates    []gateJSON     `json:"gates"`
		Cues     []cueJSON      `json:"cues"`
		Offsets  []offsetJSON   `json:"offsets"`
		Wishes   []wishJSON     `json:"wishes"`
		Asks     []noteJSON     `json:"asks"`
		Notes    []noteJSON     `json:"notes"`
	}
	clientJSON struct {
		Name string `json:"name"`
		Slug string `json:"slug"`
	}
	otherJSON struct {
		Day  string `json:"day"`
		What string `json:"what"`
		Hard bool   `json:"hard"`
	}
	goalJSON struct {
		Step   string       `json:"step"`
		Hold   int          `json:"hold_s"`
		By     program.Date `json:"by"`
		Chance *float64     `json:"chance"` // null: not forecast
	}
	stepJSON struct {
		ID            string  `json:"id"`
		Name          string  `json:"name"`
		Torque        float64 `json:"torque_nm"`
		Share         float64 `json:"share_of_full"`
		Lean          float64 `json:"lean_deg"`
		ShoulderAhead float64 `json:"shoulder_ahead_m"`
		HipHeight     float64 `json:"hip_height_m"`
		Raised        float64 `json:"hips_above_shoulders_m"`
		FreeHold      float64 `json:"free_hold_s"`
		Allowance     float64 `json:"allowance"`
		HandsAhead    float64 `json:"hands_ahead_of_anchor_m"`
	}
	bandJSON struct {
		Name   string  `json:"name"`
		A      float64 `json:"a_n"`
		B      float64 `json:"b_n"`
		Rest   float64 `json:"rest_m"`
		At     string  `json:"at"`
		Folded bool    `json:"folded"`
	}
	capacityJSON struct {
		Torque    *float64 `json:"torque_nm"` // null where endurance is only assumed
		Low       float64  `json:"low_nm"`
		High      float64  `json:"high_nm"`
		Held12    float64  `json:"held_12_s_nm"`
		Endurance float64  `json:"endurance_per_min"`
	}
	forecastJSON struct {
		Step   string        `json:"step"`
		Early  *program.Date `json:"early"` // null: more than three years away, or held
		Likely *program.Date `json:"likely"`
		Late   *program.Date `json:"late"`
	}
	weekJSON struct {
		Number   int           `json:"number"`
		Start    program.Date  `json:"start"`
		Kind     string        `json:"kind"`
		Step     string        `json:"step"`
		Rig      []string      `json:"rig"`
		Drop     float64       `json:"drop_m"`
		Pad      *float64      `json:"pad_m"`   // null: no pads under the head
		Block    *float64      `json:"block_m"` // null: no block under the feet
		Pull     *float64      `json:"pull_n"`  // null: no band that is hung by a scale
		Help     float64       `json:"help_n"`
		Ahead    *float64      `json:"ahead_m"` // null: no lean
		Scale    *float64      `json:"scale_n"` // null: no toes on a scale
		Capacity float64       `json:"capacity_nm"`
		MaxHold  float64       `json:"max_hold_s"`
		Effort   float64       `json:"effort"`
		Gate     bool          `json:"gate"`
		ByCoach  bool          `json:"by_coach"`
		Hold     int           `json:"hold_s"`
		Sets     int           `json:"sets"`
		Rest     int           `json:"rest_s"`
		Counted  float64       `json:"straight_arm_s"`
		Sessions []sessionJSON `json:"sessions"`
	}
	sessionJSON struct {
		Date    program.Date `json:"date"`
		Minutes int          `json:"minutes"`
		Say     []string     `json:"say"`
		Items   []itemJSON   `json:"items"`
	}
	itemJSON struct {
		Exercise    string   `json:"exercise"`
		Role        string   `json:"role"`
		Step        string   `json:"step"`
		Rig         []string `json:"rig"`
		Drop        float64  `json:"drop_m"`
		Pad         *float64 `json:"pad_m"`   // null: no pads under the head
		Block       *float64 `json:"block_m"` // null: no block under the feet
		Pull        *float64 `json:"pull_n"`  // null: no band that is hung by a scale
		Help        float64  `json:"help_n"`
		Ahead       *float64 `json:"ahead_m"` // null: no lean
		Scale       *float64 `json:"scale_n"` // null: no toes on a scale
		Sets        int      `json:"sets"`
		Hold        int      `json:"hold_s"`
		Reps        int      `json:"reps"`
		Rest        int      `json:"rest_s"`
		StraightArm bool     `json:"straight_arm"`
		Check       bool     `json:"check"`
		Max         bool     `json:"max"`
		Try         bool     `json:"try"`
		ByCoach     bool     `json:"by_coach"`

		Find  *findJSON   `json:"find"` // null: no mark is found
		Found []foundJSON `json:"found"`
	}
	gateJSON struct {
		Step     string   `json:"step"`
		Sets     int      `json:"sets"`
		Hold     int      `json:"hold_s"`
		Single   *int     `json:"single_s"` // null: none
		RPEMax   *float64 `json:"rpe_max"`  // null: nobody asks
		Sessions int      `json:"sessions"`
		Reached  *int     `json:"reached"` // null: no tries, all sets count
	}
	cueJSON struct {
		Cue   string  `json:"cue"`
		Saves float64 `json:"saves_share"`
	}
	offsetJSON struct { // of a step or an exercise, the other null
		Step     *string `json:"step"`
		Exercise *string `json:"exercise"`
		Heavier  float64 `json:"heavier_share"`
		Spread   float64 `json:"spread_share"`
	}
	noteJSON struct {
		Code   string      `json:"code"`
		Values []valueJSON `json:"values"`
	}
	valueJSON struct {
		Name  string `json:"name"`
		Kind  string `json:"kind"`
		Value any    `json:"value"`
	}
)

func programJSON(lib *program.Library, p *program.Program) fileJSON {
	s := newSpeech(program.Coach{}, lib, p)
	capacity, chance := toCapacity(p.Capacity), places(p.Goal.Chance, 3)
	v := fileJSON{
		Client: clientJSON{p.Client.Name, p.Client.Slug}, Skill: p.Skill, Other: each(p.Other, toOther),
		Goal:  goalJSON{p.Goal.Step, p.Goal.Hold, p.Goal.By, &chance},
		Steps: each(p.Steps, s.toStep), Bands: each(p.Bands, toBand), Capacity: &capacity,
		Forecast: each(p.Forecasts, toForecast), Weeks: each(p.Weeks, toWeek), Gates: each(p.Gates, toGate),
		Cues:    each(p.Cues, func(c program.CueWorth) cueJSON { return cueJSON{c.Cue, places(c.Saves, 4)} }),
		Offsets: each(p.Offsets, toOffset), Wishes: each(p.Wishes, toWish), Asks: each(p.Asks, toNote),
		Notes: append(each(p.Withheld, toNote), each(p.Notes, toNote)...),
	}
	if s.balances() {
		v.Capacity, v.Goal.Chance = nil, nil
	}
	return v
}

func (s *speech) toStep(l program.StepLoad) stepJSON {
	return stepJSON{ID: l.ID, Name: s.step(l.ID), Torque: places(l.Torque, 1), Share: places(l.Share, 3),
		Lean: places(l.Lean*180/math.Pi, 1), ShoulderAhead: places(l.ShoulderAhead, 3),
		HipHeight: places(l.HipHeight, 3), Raised: places(l.Raised, 3), FreeHold: places(l.FreeHold, 1), Allowance: places(l.Allowance, 3),
		HandsAhead: places(l.HandsAhead, 3)}
}

func toBand(b program.BandCurve) bandJSON {
	return bandJSON{b.Name, places(b.A, 3), places(b.B, 3), places(b.Rest, 3), string(cmp.Or(b.At, program.AtHip)), b.Folded}
}

func toCapacity(c program.Capacity) capacityJSON {
	v := capacityJSON{Low: places(c.Low, 1), High: places(c.High, 1), Held12: places(c.Held12, 1),
		Endurance: places(c.Endurance, 3)}
	if c.Instant != 0 {
		instant := places(c.Instant, 1)
		v.Torque = &instant
	}
	return v
}

func toForecast(f program.Forecast) forecastJSON {
	return forecastJSON{f.Step, given(f.Early), given(f.Likely), given(f.Late)}
}

func given(d program.Date) *program.Date {
	if d == 0 {
		return nil
	}
	return &d
}

func toWeek(w program.Week) weekJSON {
	return weekJSON{w.Number, w.Start, string(w.Kind), w.Step, names(w.Rig), places(w.Rig.Drop, 3), positive(w.Rig.Pad, 3), positive(w.Rig.Block, 3), positive(w.Rig.Pull, 1), places(w.Help, 1), positive(w.Ahead, 3), positive(w.Scale, 1),
		places(w.Capacity, 1), places(w.MaxHold, 1), places(w.Effort, 3), w.Gate, w.ByCoach, w.Hold, w.Sets, w.Rest,
		float64(w.HalfSeconds) / 2, each(w.Sessions, toSession)}
}

func toSession(s program.Session) sessionJSON {
	return sessionJSON{s.Date, s.Minutes, append([]string{}, s.Say...), each(s.Items, toItem)}
}

func toItem(p program.Prescription) itemJSON {
	return itemJSON{p.Exercise, string(p.Role), p.Step, names(p.Rig), places(p.Rig.Drop, 3), positive(p.Rig.Pad, 3), positive(p.Rig.Block, 3), positive(p.Rig.Pull, 1), places(p.Help, 1), positive(p.Ahead, 3), positive(p.Scale, 1),
		p.Sets, p.Hold, p.Reps, p.Rest, p.StraightArm, p.Check, p.Max, p.Try, p.ByCoach, toFind(p), toFound(p)}
}

func toGate(g program.StepGate) gateJSON {
	v := gateJSON{Step: g.Step, Sets: g.Sets, Hold: g.Hold, RPEMax: positive(g.RPEMax, 2), Sessions: g.Sessions}
	if g.Single > 0 {
		v.Single = &g.Single
	}
	if g.Reached > 0 {
		v.Reached = &g.Reached
	}
	return v
}

func toOther(o program.OtherTraining) otherJSON {
	return otherJSON{strings.ToLower(o.Day.String()[:3]), o.What, o.Hard}
}

func toOffset(o program.Offset) offsetJSON {
	v := offsetJSON{Heavier: places(math.Expm1(o.Ln), 3), Spread: places(o.Spread, 3)}
	if o.Step != "" {
		v.Step = &o.Step
	} else {
		v.Exercise = &o.Exercise
	}
	return v
}

func toNote(n program.Note) noteJSON {
	return noteJSON{n.Code, each(n.Values, toValue)}
}

func toValue(v program.Value) valueJSON {
	out := valueJSON{Name: v.Name, Kind: string(v.Kind), Value: v.Text}
	switch v.Kind {
	case program.ValueSeconds, program.ValueTime, program.ValueMetres, program.ValueNewtons, program.ValueShare, program.ValueCount:
		out.Value = places(v.Number, 3)
	case program.ValueDate:
		out.Value = program.Date(round(v.Number))
	}
	return out
}

func names(r program.Rig) []string { return append([]string{}, r.Bands...) }

// each turns a list into another; an empty one stays [], never null.
func each[A, B any](from []A, to func(A) B) []B {
	all := make([]B, 0, len(from))
	for _, a := range from {
		all = append(all, to(a))
	}
	return all
}

// places rounds to decimal places, so that no processor's last bit reaches the
// file. Infinities and NaN, which JSON cannot carry, become 0.
func places(x float64, n int) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	scale := math.Pow10(n)
	return math.Round(x*scale) / scale
}
