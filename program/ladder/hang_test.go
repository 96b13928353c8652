package ladder

import (
	"crypto/rand"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/intake"
)

func lever(t *testing.T) *program.RoadMap {
	t.Helper()
	root := os.DirFS("../..")
	studio, _ := intake.Read(root, root, rand.Reader)
	road, ok := studio.Library.RoadMap("front-lever")
	if !ok {
		t.Fatal("no road map front-lever")
	}
	return road
}

// Shares of the full front lever, computed with a statics model that is not ours, for
// mean bodies: a woman of 58 kg and 1.66 m, a man of 73 kg and 1.76 m (de Leva's
// segments), within .02.
func TestSharesOfTheFrontLever(t *testing.T) {
	want := map[string][2]float64{"tuck": {.59, .57}, "open-tuck": {.67, .65}, "advanced-tuck": {.75, .735}, "one-leg": {.80, .79},
		"wide-open-tuck": {.86, .86}, "straddle": {.885, .885}, "half-lay": {.915, .92}, "narrow-straddle": {.957, .957}, "full": {1, 1}}
	road := lever(t)
	for i, who := range []program.Athlete{
		{Sex: program.SexFemale, Mass: 58, Height: 1.66}, {Sex: program.SexMale, Mass: 73, Height: 1.76}} {
		a := program.Assessment{Athlete: who, Goal: program.Goal{Step: "full"}, Hanging: program.Hanging{Bar: 2.3}}
		b, _ := New(&a, road, nil)
		if len(b.All) != len(want) {
			t.Errorf("%d steps", len(b.All))
		}
		for _, r := range b.All {
			if got := r.FreeHold.Torque / b.full; math.Abs(got-want[r.ID][i]) > .02 {
				t.Errorf("%s, %s: %.3f, want %.3f", who.Sex, r.ID, got, want[r.ID][i])
			}
		}
	}
}

// A loop of one metre between a bar and the hips, some half a metre under it, is slack
// and helps nobody; laid double it pulls in a tuck, and at the ankles of a full lever the
// same band is worth more than at the hips, newton for newton.
func TestWhereABandHelpsALever(t *testing.T) {
	road := lever(t)
	help := map[string]float64{}
	for name, hung := range map[string]program.Band{"loop": {}, "folded": {Folded: true}, "ankle": {At: program.AtAnkle}} {
		hung.Name, hung.Rest = "narrow", 1
		hung.Pulls = []program.Pull{{At: 1.3, Force: 16}, {At: 1.6, Force: 24}, {At: 1.9, Force: 30}}
		a := program.Assessment{Athlete: program.Athlete{Sex: program.SexMale, Mass: 73, Height: 1.76},
			Goal: program.Goal{Step: "full"}, Hanging: program.Hanging{Bar: 2.3}, Bands: []program.Band{hung}}
		b, problems := New(&a, road, nil)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		held := &b.All[0]
		if name == "ankle" {
			held = &b.All[len(b.All)-1]
		}
		for _, o := range held.Aids() {
			if !o.Rig.Free() {
				help[name] = float64(o.Help) / 10
				if name == "ankle" {
					if worth := help[name] / o.Hold.Help; worth < 2 || worth > 3.4 {
						t.Errorf("a newton at the ankles is worth %.2f at the hips, want about 2.7", worth)
					}
					if o.Rig.At != program.AtAnkle {
						t.Errorf("hung at %q", o.Rig.At)
					}
				}
			}
		}
	}
	if help["loop"] != 0 || help["folded"] < 5 || help["ankle"] < 5 {
		t.Errorf("help in newtons: %v", help)
	}
}

// Of 25 bands, alone and in twos on 25 straps, 8,125 rigs, no more are solved than half
// newtons lie below three tenths of a body's weight: 60 kg weigh 588 N, and a step has 353
// of them and the free one.
func TestManyBandsOnManyStraps(t *testing.T) {
	a := program.Assessment{Athlete: program.Athlete{Sex: program.SexMale, Mass: 60, Height: 1.76}, Goal: program.Goal{Step: "full"}}
	a.Hanging.Bar = 2.3
	for i := range 25 {
		force := float64(20 + 2*i)
		a.Bands = append(a.Bands, program.Band{Name: fmt.Sprint("band ", i), Rest: 1, Folded: true,
			Pulls: []program.Pull{{At: 1.3, Force: force}, {At: 1.6, Force: 1.5 * force}, {At: 1.9, Force: 1.9 * force}}})
		a.Hanging.Drops = append(a.Hanging.Drops, float64(i)/100)
	}
	b, problems := New(&a, lever(t), nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, r := range b.All {
		if n := len(b.hangings(&r.FreeHold.Joints)); n > 353 {
			t.Errorf("%s: %d rigs are looked at", r.ID, n)
		}
		if n := len(r.Aids()); n > 354 {
			t.Errorf("%s: %d ways", r.ID, n)
		}
	}
	if n := len(b.hangings(&b.All[0].FreeHold.Joints)); n < 150 {
		t.Errorf("only %d rigs pull at all", n)
	}
}

// Under a bar that is lower than the client's grip overhead the feet touch the floor.
func TestLowBar(t *testing.T) {
	road := lever(t)
	for bar, warned := range map[float64]bool{1.9: true, 2.4: false} {
		a := program.Assessment{Athlete: program.Athlete{Sex: program.SexMale, Mass: 73, Height: 1.76}, Goal: program.Goal{Step: "full"}, Hanging: program.Hanging{Bar: bar}}
		_, problems := New(&a, road, program.Words{"unfit.bar": "reaches {reach}"})
		if got := len(problems) == 1 && problems[0].Warning && strings.Contains(problems[0].Message, "reaches 2"); got != warned || problems.Stop() {
			t.Errorf("%.1f m: %v", bar, problems)
		}
	}
}
