package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gatepost/program"
)

const standardGravity = 9.80665 // m/s², exact by definition (CGPM 1901)

func round(x float64) int { return int(math.Round(x)) }

// unit writes a number with its unit.
func (s *speech) unit(name, number string) string { return s.say("unit."+name, "number", number) }

// seconds writes a hold: "12 s".
func (s *speech) seconds(n int) string { return s.unit("seconds", strconv.Itoa(n)) }

// length writes how long a step is held, or of one that is repeated how often: "12 s", or
// "4 times".
func (s *speech) length(seconds int) string {
	if !s.repeats() {
		return s.seconds(seconds)
	}
	return s.times(seconds)
}

// times writes seconds as the repetitions they take: "4 times".
func (s *speech) times(seconds int) string {
	n := max(1, seconds/program.SecondsPerRep)
	return s.say(s.plural("unit.times", n), "number", strconv.Itoa(n))
}

// repeats reports whether the road map's steps are counted in repetitions.
func (s *speech) repeats() bool { return s.road.Load.Repeats() }

// counts reports whether work is counted in repetitions: of a step where the road map's are, and
// never what is done on the floor before them.
func (s *speech) counts(step string) bool { return step != "" && s.repeats() }

// lifts reports whether the road map's steps are lifts.
func (s *speech) lifts() bool { return s.road.Load == program.LoadLift }

// minutes writes a session's length: "57 min".
func (s *speech) minutes(n int) string { return s.unit("minutes", strconv.Itoa(n)) }

// pause writes a rest: seconds below two minutes, then minutes; empty for none.
func (s *speech) pause(n int) string {
	switch {
	case n <= 0:
		return ""
	case n < 120:
		return s.seconds(n)
	case n%60 == 0:
		return s.minutes(n / 60)
	case n%30 == 0:
		return s.unit("minutes", halves(float64(n)/60))
	}
	return s.unit("minutes", strconv.Itoa(n/60)+":"+strconv.Itoa(n%60/10)+strconv.Itoa(n%10))
}

// clock writes a rest as a clock on the wall counts it: "2:30", and seconds below a
// minute.
func (s *speech) clock(n int) string {
	switch {
	case n <= 0:
		return ""
	case n < 60:
		return s.seconds(n)
	}
	return fmt.Sprintf("%d:%02d", n/60, n%60)
}

// centimetres writes a length given in metres: "22 cm".
func (s *speech) centimetres(m float64) string {
	return s.unit("centimetres", strconv.Itoa(round(m*100)))
}

// percent writes a share: "75 %".
func (s *speech) percent(share float64) string {
	return s.unit("percent", strconv.Itoa(round(100*share)))
}

// HalfKilograms is a force in newtons as the kilograms shown to people, to the
// nearest half.
func HalfKilograms(newtons float64) float64 {
	return math.Round(2*newtons/standardGravity) / 2
}

// kilograms writes a force given in newtons: "6.5 kg", "<0.5 kg"; empty for none.
func (s *speech) kilograms(newtons float64) string {
	kg := HalfKilograms(newtons)
	switch {
	case newtons <= 0:
		return ""
	case kg == 0:
		return s.unit("kilograms", "<"+s.decimal(0.5))
	}
	return s.unit("kilograms", s.decimal(kg))
}

// decimal writes a number with the language's decimal sign and no more places
// than it needs.
func (s *speech) decimal(x float64) string {
	return strings.Replace(strconv.FormatFloat(x, 'f', -1, 64), ".", s.say("unit.decimal"), 1)
}

// hands is a lean in hand-breadths from the wall to the wrist crease. The pairs are the
// usual ones for a hand of 10.16 cm, head in line and hair touching: 3, 4, 5, 6 hands for
// 0, 9, 18, 28 cm (common practice); between them in proportion, beyond them as between
// the last two. Leans are two centimetres apart, so hands are said only where half a hand
// hits the lean within one: no two leans read alike. Elsewhere it is empty.
func hands(lean float64) string {
	cm := [...]float64{0, 9, 18, 28}
	i := 1
	for i < len(cm)-1 && 100*lean > cm[i] {
		i++
	}
	hand := cm[i] - cm[i-1]
	n := float64(i+2) + (100*lean-cm[i-1])/hand
	half := math.Round(2*n) / 2
	if round(10*math.Abs(n-half)*hand) >= 10 { // millimetres
		return ""
	}
	return halves(half)
}

// halves writes 5.5 as "5½".
func halves(n float64) string {
	whole := int(n)
	switch {
	case n == float64(whole):
		return strconv.Itoa(whole)
	case whole == 0:
		return "½"
	}
	return strconv.Itoa(whole) + "½"
}

// rig writes the bands: "narrow + middle", and where they act if not at the hips; the
// word for none when free.
func (s *speech) rig(r program.Rig) string {
	if r.Free() {
		return s.say("rig.free")
	}
	switch {
	case r.Pad > 0:
		return s.say("rig.pad", "length", s.centimetres(r.Pad))
	case r.Block > 0:
		return s.say("rig.block", "length", s.centimetres(r.Block))
	}
	text := strings.Join(r.Bands, s.say("rig.join"))
	if r.Folded {
		text = s.say("rig.folded", "bands", text)
	}
	switch r.At {
	case program.AtThigh:
		return s.say("rig.at_thigh", "bands", text)
	case program.AtAnkle:
		return s.say("rig.at_ankle", "bands", text)
	}
	return text
}

// drop writes the strap between anchor and band, or of one that nobody measured what a scale
// has to read; empty without one.
func (s *speech) drop(r program.Rig) string {
	if r.Pull > 0 {
		return s.say("rig.pull", "kilograms", s.kilograms(r.Pull))
	}
	if r.Free() || round(100*r.Drop) == 0 {
		return ""
	}
	return s.say("rig.drop", "length", s.centimetres(r.Drop))
}

// dropShort is the same in a column.
func (s *speech) dropShort(r program.Rig) string {
	if r.Pull > 0 {
		return s.say("rig.pull_short", "kilograms", s.kilograms(r.Pull))
	}
	return s.drop(r)
}

// ofHelp writes kilograms of help in a line; empty where nothing helps.
func (s *speech) ofHelp(kilograms string) string {
	if kilograms == "" {
		return ""
	}
	return s.say("rig.help", "kilograms", kilograms)
}

// wall writes a lean as the distance from a wall in hand-breadths, where these tell it.
func (s *speech) wall(ahead float64) string {
	number := hands(ahead)
	if number == "" {
		return ""
	}
	return s.say("rig.wall", "number", number)
}

// join strings what there is with commas.
func join(parts ...string) string {
	var kept []string
	for _, part := range parts {
		if part != "" {
			kept = append(kept, part)
		}
	}
	return strings.Join(kept, ", ")
}
