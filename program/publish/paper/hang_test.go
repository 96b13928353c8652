package paper

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
)

// Bodies that hang have their bars at one height and a line a hand's breadth below the
// lowest of them, not the floor of a hall 2.4 m below the bar.
func TestBodiesHangAboveOneLine(t *testing.T) {
	tuck, lay := fixture(t).Ladder[0].Stance, fixture(t).Ladder[0].Stance
	tuck.Hang, lay.Hang, tuck.Floor, lay.Floor = true, true, -2.4, -2.4
	lay.Toes[0].Y -= 0.4
	bodies := bodiesOf([]program.Stance{tuck, lay}, func(int) figure.Options { return figure.Options{Plain: true} })
	lowest := math.Min(bodies[0].Min.Y, bodies[1].Min.Y)
	for i, b := range bodies {
		if math.Abs(lowest-b.floor-0.12) > 1e-9 {
			t.Errorf("body %d hangs %.2f m above the line", i, lowest-b.floor)
		}
	}
}
