package view_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

const kilogram = 9.80665 // N

func finding(item program.Prescription, rpe int, marks ...float64) program.Prescription {
	item.Role, item.Sets, item.Rest = program.RoleMain, len(marks), 90
	item.Find = program.Find{RPE: rpe, Easy: rpe < 7, For: 12}
	for _, m := range marks {
		item.Find.Marks = append(item.Find.Marks, program.Mark{At: m, Load: 0.5})
	}
	return item
}

// A find is a sentence that says what, where, when to stop and to write it down; on its card
// each mark has a box, and what was good another. What is held has a timer, and nothing easier
// or harder stands beside it.
func TestFindsInWords(t *testing.T) {
	for _, c := range []struct {
		item        program.Prescription
		says, boxes string
		rig         string
	}{
		{finding(program.Prescription{Exercise: "planche-lean", Ahead: 0.12, Hold: 15, Reps: 5}, 7, 0.10, 0.14, 0.18),
			"Find your lean: 5 repetitions at 10, 14, 18 cm; stop at RPE 7; write down the last good mark", "10 cm|14 cm|18 cm|good", ""},
		{finding(program.Prescription{Exercise: "planche-lean", Ahead: 0.08, Hold: 10}, 6, 0.02, 0.06, 0.10),
			"Find your lean: 10 s at 2, 6, 10 cm; on to the next only if it was easy; stop at RPE 6; write down the last good mark", "2 cm|6 cm|10 cm|good", ""},
		{finding(program.Prescription{Exercise: "tuck-hold", Step: "tuck", Rig: program.Rig{Pad: 0.10}, Hold: 9, Reps: 3}, 7, 0.15, 0.10, 0.05),
			"Find your pads: 3 repetitions on 15, 10, 5 cm; stop at RPE 7; write down the last good mark", "15 cm|10 cm|5 cm|good", ""},
		{finding(program.Prescription{Exercise: "tuck-hold", Step: "tuck", Rig: program.Rig{Block: 0.30}, Hold: 3, Reps: 1}, 7, 0.40, 0.30),
			"Find your block: 1 repetition from 40, 30 cm; stop at RPE 7; write down the last good mark", "40 cm|30 cm|good", ""},
		{finding(program.Prescription{Exercise: "tuck-hold", Step: "tuck", Scale: 12.5 * kilogram, Hold: 10}, 7, 14*kilogram, 12*kilogram, 10*kilogram),
			"Find the weight on the scale: 10 s with 14, 12, 10 kg; stop at RPE 7; write down the last good mark", "14 kg|12 kg|10 kg|good", ""},
		{finding(program.Prescription{Exercise: "tuck-hold", Step: "tuck", Rig: program.Rig{Bands: []string{"thin"}, Pull: 4 * kilogram}, Hold: 10}, 7, 5*kilogram, 3*kilogram),
			"Find the pull of your band: 10 s with the scale at 5, 3 kg; stop at RPE 7; write down the last good mark, with its strap", "5 kg|3 kg|good|strap",
			"thin: as much strap as lets the scale read the mark, drawn down to the body"},
	} {
		p := viewtest.Program()
		card := cardOf(t, p, c.item)
		v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
		item := v.Weeks[0].Sessions[0].Items[0]
		if got := plain(item.Amount); got != c.says || !item.Open || item.Up || (item.Hold > 0) != (c.item.Reps == 0) || plain(item.Rig) != c.rig {
			t.Errorf("%q, %q, a timer of %d s; want %q", got, item.Rig, item.Hold, c.says)
		}
		var boxes []string
		for _, b := range card.Boxes {
			boxes = append(boxes, plain(b.Caption))
		}
		if got := strings.Join(boxes, "|"); got != c.boxes || card.Easier != "" || card.Harder != "" {
			t.Errorf("boxes %s, easier %q, harder %q; want %s", got, card.Easier, card.Harder, c.boxes)
		}
		if got := plain(card.Amount); !strings.HasPrefix(got, c.says[:strings.Index(c.says, ":")]) || !strings.Contains(got, "at each mark") {
			t.Errorf("on its card: %q", got)
		}
		if !strings.Contains(plain(v.Events[0].Text), c.says) {
			t.Errorf("in the calendar: %q", v.Events[0].Text)
		}
	}
}

// What was found moves the item: a lean by its table, pads by themselves.
func TestFoundInWords(t *testing.T) {
	lean := program.Prescription{Exercise: "planche-lean", Role: program.RoleMain, Ahead: 0.12, Sets: 3, Hold: 15,
		Found: []program.Found{{Mark: 0.10, At: 0.08}, {Mark: 0.14, At: 0.12}, {Mark: 0.18, At: 0.16}}}
	pads := program.Prescription{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleMain, Rig: program.Rig{Pad: 0.1}, Sets: 3, Hold: 12, Reps: 4,
		Found: []program.Found{{Mark: 0.15, At: 0.15}, {Mark: 0.10, At: 0.10}}}
	scale := program.Prescription{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleMain, Scale: 12.5 * kilogram, Sets: 3, Hold: 12,
		Found: []program.Found{{Mark: 14 * kilogram, At: 14.5 * kilogram}, {Mark: 12 * kilogram, At: 12.5 * kilogram}}}
	for want, item := range map[string]program.Prescription{
		"good at 10: 8 cm · 14: 12 cm · 18: 16 cm": lean, "or on the pads you found": pads, "good at 14: 14.5 kg · 12: 12.5 kg": scale,
	} {
		if got := plain(cardOf(t, viewtest.Program(), item).Found); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A band that nobody measured is printed with what a scale has to read, and no strap.
func TestABandNobodyMeasured(t *testing.T) {
	item := program.Prescription{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleMain, Sets: 3, Hold: 12, Help: 5 * kilogram,
		Rig: program.Rig{Bands: []string{"thin"}, Pull: 5 * kilogram}}
	card := cardOf(t, viewtest.Program(), item)
	if got := plain(card.Rig); got != "thin, until the scale reads 5 kg" || card.Help != "" {
		t.Errorf("%q, %q", got, card.Help)
	}
}

// Other software gets the marks in metres and newtons; a plan that is kept holds all of them.
func TestFindsForOtherSoftware(t *testing.T) {
	p := viewtest.Program()
	find := finding(program.Prescription{Exercise: "tuck-hold", Step: "tuck", Rig: program.Rig{Bands: []string{"thin"}, Pull: 4 * kilogram}, Hold: 10}, 6, 5*kilogram, 3*kilogram)
	table := program.Prescription{Exercise: "planche-lean", Role: program.RoleSecond, Ahead: 0.12, Sets: 2, Hold: 15, Found: []program.Found{{Mark: 0.14, At: 0.12}}}
	p.Weeks[0].Sessions[0].Items = []program.Prescription{find, table}
	text, err := view.JSON(viewtest.Library(), p)
	var got struct {
		Weeks []struct {
			Sessions []struct {
				Items []struct {
					Find *struct {
						Unit  string
						Marks []float64
						RPE   int
						Easy  bool
					}
					Found []struct {
						Unit     string
						Mark, At float64
					}
					Pull *float64 `json:"pull_n"`
				}
			}
		}
	}
	if err != nil || json.Unmarshal(text, &got) != nil {
		t.Fatal(err)
	}
	items := got.Weeks[0].Sessions[0].Items
	if f := items[0].Find; f == nil || f.Unit != "N" || len(f.Marks) != 2 || f.Marks[0] != 49.033 || f.RPE != 6 || !f.Easy || *items[0].Pull != 39.2 {
		t.Errorf("%+v", items[0])
	}
	if f := items[1].Found; len(f) != 1 || f[0].Unit != "m" || f[0].Mark != 0.14 || f[0].At != 0.12 || items[1].Find != nil || items[1].Pull != nil {
		t.Errorf("%+v", items[1])
	}
	v := program.PlanVersion{Version: 1, On: p.Measured, Weeks: p.Weeks}
	kept, err := view.PlanJSON(&v)
	var again program.PlanVersion
	if err != nil || json.Unmarshal(kept, &again) != nil {
		t.Fatal(err)
	}
	back, _ := view.PlanJSON(&again)
	if !bytes.Equal(kept, back) || !again.Weeks[0].Sessions[0].SameCard(&p.Weeks[0].Sessions[0]) || again.Weeks[0].Sessions[0].Items[0].Find.For != 12 {
		t.Errorf("kept as %s", kept[:min(len(kept), 900)])
	}
}

// A week in which every day of the main work seeks a mark has no sets on chart and page, but
// what is sought; a week that nobody trained has nothing.
func TestWeeksThatSeekOrRest(t *testing.T) {
	p := viewtest.Program()
	for i := range p.Weeks[0].Sessions {
		items := p.Weeks[0].Sessions[i].Items
		for j := range items {
			if items[j].Role == program.RoleMain {
				items[j].Ahead, items[j].Rig = 0.12, program.Rig{}
				items[j] = finding(items[j], 7, 0.10, 0.14)
			}
		}
	}
	p.Weeks[4].Kind, p.Weeks[4].Sessions = program.WeekAway, nil
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	if w := v.Weeks[0]; w.Main != "" || w.Range != "" || plain(w.Rig) != "find: 10, 14 cm" || w.Help != "" || w.HelpKG != 0 {
		t.Errorf("seeks: %q, %q, %q, %q", w.Main, w.Range, w.Rig, w.Help)
	}
	if w := v.Weeks[1]; w.Main == "" {
		t.Error("the second week has sets, and none are printed")
	}
	if w := v.Weeks[4]; w.Main != "" || w.Step != "" || w.Mark != "" {
		t.Errorf("away: %q, %q, %q", w.Main, w.Step, w.Mark)
	}
}
