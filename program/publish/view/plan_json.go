package view

import (
	"bytes"
	"encoding/json"

	"gatepost/program"
)

// A kept plan is one JSON object: version, on (the day it was made), passed (steps
// whose gates the coach has signed, where there are any), time and remind (when
// sessions begin, minutes, where the coach wants that), shared (where a page may show
// it) and weeks, one session a line. Fields are those of program.PlanVersion and what it
// holds,
// by their names with a small first letter, in the same units and to the last
// digit, so that what is read again is what was planned; what is nothing is left
// out. Figures are not kept: they follow from the assessment.
type (
	planWeek struct {
		Number      int          `json:"number"`
		Start       program.Date `json:"start"`
		Kind        string       `json:"kind"`
		Step        string       `json:"step,omitempty"`
		Exercise    string       `json:"exercise,omitempty"`
		Rig         *planRig     `json:"rig,omitempty"`
		Help        float64      `json:"help,omitempty"`
		Ahead       float64      `json:"ahead,omitempty"`
		Scale       float64      `json:"scale,omitempty"`
		Capacity    float64      `json:"capacity,omitempty"`
		MaxHold     float64      `json:"maxHold,omitempty"`
		Effort      float64      `json:"effort,omitempty"`
		Hold        int          `json:"hold,omitempty"`
		Sets        int          `json:"sets,omitempty"`
		SetsLeast   int          `json:"setsLeast,omitempty"`
		Rest        int          `json:"rest,omitempty"`
		HalfSeconds int          `json:"halfSeconds,omitempty"`
		MostHalf    int          `json:"mostHalf,omitempty"`
		Provisional bool         `json:"provisional,omitempty"`
		Gate        bool         `json:"gate,omitempty"`
		ByCoach     bool         `json:"byCoach,omitempty"`
		Notes       []planNote   `json:"notes,omitempty"`
	}
	planSession struct {
		Date    program.Date `json:"date"`
		Minutes int          `json:"minutes"`
		Items   []planItem   `json:"items"`
		Dropped []planNote   `json:"dropped,omitempty"`
		Say     []string     `json:"say,omitempty"`
	}
	planItem struct {
		Exercise    string   `json:"exercise"`
		Role        string   `json:"role"`
		Step        string   `json:"step,omitempty"`
		Rig         *planRig `json:"rig,omitempty"`
		Help        float64  `json:"help,omitempty"`
		HandsAhead  float64  `json:"handsAhead,omitempty"`
		Ahead       float64  `json:"ahead,omitempty"`
		Scale       float64  `json:"scale,omitempty"`
		Sets        int      `json:"sets,omitempty"`
		Hold        int      `json:"hold,omitempty"`
		Reps        int      `json:"reps,omitempty"`
		Rest        int      `json:"rest,omitempty"`
		StraightArm bool     `json:"straightArm,omitempty"`
		EachSide    bool     `json:"eachSide,omitempty"`
		InRests     bool     `json:"inRests,omitempty"`
		ByCoach     bool     `json:"byCoach,omitempty"`
		Max         bool     `json:"max,omitempty"`
		Check       bool     `json:"check,omitempty"`
		Try         bool     `json:"try,omitempty"`
		MaxHold     float64  `json:"maxHold,omitempty"`
		Load        float64  `json:"load,omitempty"`

		Find  *planFind   `json:"find,omitempty"`
		Found []planFound `json:"found,omitempty"`
	}
	planRig struct {
		Bands  []string `json:"bands,omitempty"`
		Drop   float64  `json:"drop,omitempty"`
		At     string   `json:"at,omitempty"`
		Folded bool     `json:"folded,omitempty"`
		Pad    float64  `json:"pad,omitempty"`
		Block  float64  `json:"block,omitempty"`
		Pull   float64  `json:"pull,omitempty"`
	}
	planNote struct {
		Code   string      `json:"code"`
		Values []planValue `json:"values,omitempty"`
	}
	planForecast struct {
		Step   string       `json:"step"`
		Early  program.Date `json:"early,omitempty"`
		Likely program.Date `json:"likely,omitempty"`
		Late   program.Date `json:"late,omitempty"`
		Chance float64      `json:"chance,omitempty"`
		Held   bool         `json:"held,omitempty"`
	}
	planValue struct {
		Name   string  `json:"name"`
		Kind   string  `json:"kind"`
		Number float64 `json:"number,omitempty"`
		Text   string  `json:"text,omitempty"`
	}
)

// PlanJSON writes a plan as it is kept in a client's plans folder.
func PlanJSON(v *program.PlanVersion) ([]byte, error) {
	w := planWriter{}
	w.put(`{"version":`, v.Version, `,"on":`, v.On)
	if len(v.Passed) > 0 {
		w.put(`,"passed":`, v.Passed)
	}
	if v.Clock.Time > 0 {
		w.put(`,"time":`, v.Clock.Time, `,"remind":`, v.Clock.Remind)
	}
	if v.Shared {
		w.put(`,"shared":true`)
	}
	if len(v.Forecasts) > 0 {
		w.put(`,"forecasts":`, each(v.Forecasts, func(f program.Forecast) planForecast { return planForecast(f) }))
	}
	w.put(`,"weeks":[`)
	for i := range v.Weeks {
		w.list(i)
		head := w.value(toPlanWeek(&v.Weeks[i]))
		w.Write(bytes.TrimSuffix(head, []byte("}")))
		w.put(`,"sessions":[`)
		for j := range v.Weeks[i].Sessions {
			w.list(j)
			w.Write(w.value(toPlanSession(&v.Weeks[i].Sessions[j])))
		}
		w.put("]}")
	}
	w.put("]}\n")
	return w.Bytes(), w.err
}

// planWriter keeps the first error.
type planWriter struct {
	bytes.Buffer
	err error
}

// put writes texts as they are and everything else as JSON.
func (w *planWriter) put(parts ...any) {
	for _, part := range parts {
		if text, ok := part.(string); ok {
			w.WriteString(text)
		} else {
			w.Write(w.value(part))
		}
	}
}

// list begins an element on a line of its own.
func (w *planWriter) list(i int) {
	if i > 0 {
		w.WriteByte(',')
	}
	w.WriteByte('\n')
}

func (w *planWriter) value(v any) []byte {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil && w.err == nil {
		w.err = err
	}
	return bytes.TrimSuffix(out.Bytes(), []byte("\n"))
}

func toPlanWeek(w *program.Week) planWeek {
	return planWeek{w.Number, w.Start, string(w.Kind), w.Step, w.Exercise, toPlanRig(w.Rig), w.Help, w.Ahead, w.Scale,
		w.Capacity, w.MaxHold, w.Effort, w.Hold, w.Sets, w.SetsLeast, w.Rest, w.HalfSeconds, w.MostHalf, w.Provisional, w.Gate, w.ByCoach, each(w.Notes, toPlanNote)}
}

func toPlanSession(s *program.Session) planSession {
	return planSession{s.Date, s.Minutes, each(s.Items, toPlanItem), each(s.Dropped, toPlanNote), s.Say}
}

func toPlanItem(p program.Prescription) planItem {
	return planItem{p.Exercise, string(p.Role), p.Step, toPlanRig(p.Rig), p.Help, p.HandsAhead, p.Ahead, p.Scale,
		p.Sets, p.Hold, p.Reps, p.Rest, p.StraightArm, p.EachSide, p.InRests, p.ByCoach, p.Max, p.Check, p.Try, p.MaxHold, p.Load,
		toPlanFind(p.Find), each(p.Found, func(f program.Found) planFound { return planFound(f) })}
}

func toPlanNote(n program.Note) planNote {
	return planNote{n.Code, each(n.Values, func(v program.Value) planValue {
		return planValue{v.Name, string(v.Kind), v.Number, v.Text}
	})}
}

func toPlanRig(r program.Rig) *planRig {
	if r.Free() {
		return nil
	}
	return &planRig{r.Bands, r.Drop, string(r.At), r.Folded, r.Pad, r.Block, r.Pull}
}
