package intake

import (
	"fmt"
	"math"
	"regexp"
	"strings"
)

// quantity is a kind of measurement: the units it may be written in, and the
// values that make sense. Outside least … most is an error; outside low … high
// a warning.
type quantity struct {
	noun        string // "a mass"
	form        string // how it is written: "58 kg"
	units       []unit // the first is the one messages use
	least, most float64
	low, high   float64
}

// unit is a way to write a quantity: its names and how many of the unit inside
// (kg, m, N, s, radians, weeks) it is.
type unit struct {
	names []string
	size  float64
}

// Exact by definition: NIST Special Publication 811 (2008), appendix B.8: the
// avoirdupois pound, the international foot and inch, standard gravity.
const (
	pound           = 0.45359237 // kg
	inch            = 0.0254     // m
	foot            = 12 * inch  // m
	standardGravity = 9.80665    // N for a kilogram of force
)

// A year is 365.25 days, a month its twelfth: close enough for a training age.
const (
	year  = 365.25 / 7 // weeks
	month = year / 12  // weeks
)

var (
	mass = quantity{noun: "a mass", form: "58 kg or 128 lb", units: []unit{
		{[]string{"kg"}, 1}, {[]string{"lb", "lbs"}, pound}}}
	length = quantity{noun: "a length", form: "166 cm, 1.66 m or 5 ft 5.5 in", units: []unit{
		{[]string{"cm"}, 0.01}, {[]string{"m"}, 1}, {[]string{"mm"}, 0.001}, {[]string{"ft"}, foot}, {[]string{"in"}, inch}}}
	duration = quantity{noun: "a time", form: "12 s or 1 min 30 s", units: []unit{
		{[]string{"s"}, 1}, {[]string{"min"}, 60}, {[]string{"h"}, 3600}}}
	hours = quantity{noun: "a time", form: "48 h", units: []unit{
		{[]string{"h"}, 3600}, {[]string{"min"}, 60}}}
	trainingAge = quantity{noun: "a time", form: "8 months or 2 years", units: []unit{
		{[]string{"years", "year"}, year}, {[]string{"months", "month"}, month}, {[]string{"weeks", "week"}, 1}, {[]string{"days", "day"}, 1. / 7}}}
	angle = quantity{noun: "an angle", form: "110 deg", units: []unit{
		{[]string{"deg", "°"}, math.Pi / 180}}}
	force = quantity{noun: "a force", form: "3.6 kg, as a luggage scale shows it, or 35 N", units: []unit{
		{[]string{"kg"}, standardGravity}, {[]string{"lb", "lbs"}, pound * standardGravity}, {[]string{"N"}, 1}}}
)

// between sets what is possible, in the quantity's first unit.
func (q quantity) between(least, most float64) quantity {
	q.least, q.most, q.low, q.high = least, most, least, most
	return q
}

// usually sets what is usual, in the quantity's first unit.
func (q quantity) usually(low, high float64) quantity {
	q.low, q.high = low, high
	return q
}

// into reads the quantity in units inside.
func (q quantity) into(x *float64) read {
	return func(v value) { q.read(v, x) }
}

// whole reads the quantity as a whole number of its first unit.
func (q quantity) whole(x *int) read {
	return func(v value) {
		var inside float64
		if !q.read(v, &inside) {
			return
		}
		n := inside / q.units[0].size
		if math.Abs(n-math.Round(n)) > 1e-9 {
			v.wrong(fmt.Sprintf("is not a whole number of %s", q.units[0].names[0]), "Write, for example: %s", v.example())
			return
		}
		*x = int(math.Round(n))
	}
}

// read reads the quantity, and says whether it is possible.
func (q quantity) read(v value, into *float64) bool {
	s, ok := v.scalar()
	if !ok {
		return false
	}
	x, fault := q.parse(s)
	if fault != "" {
		v.say(v.here(), fault, fmt.Sprintf("Write %s: %s", q.form, v.example()))
		return false
	}
	shown := x / q.units[0].size
	const slack = 1e-9 // so that 250 kg written in pounds is still 250 kg
	switch {
	case shown < q.least-slack || shown > q.most+slack:
		v.say(v.here(), fmt.Sprintf("%s is not possible for %s", quote(s), quote(v.name())), q.range_(q.least, q.most))
		return false
	case shown < q.low-slack || shown > q.high+slack:
		v.doubt(v.here(), fmt.Sprintf("%s is unusual for %s", quote(s), quote(v.name())), "Measure again if in doubt; "+q.range_(q.low, q.high))
	}
	*into = x
	return true
}

func (q quantity) range_(least, most float64) string {
	return fmt.Sprintf("expected between %s and %s %s.", short(least), short(most), q.units[0].names[0])
}

// part is a number with a unit.
var part = regexp.MustCompile(`^([^\s\p{L}°]+)\s*([\p{L}°]+)(?:\s+|$)`)

// parse reads a written quantity, such as "58 kg" or "5 ft 5.5 in", into the
// unit inside, or says what is wrong with it. Several parts add up; their units
// get smaller.
func (q quantity) parse(s string) (x float64, fault string) {
	last := math.Inf(1)
	rest := strings.TrimSpace(strings.ReplaceAll(s, "\u00a0", " "))
	if _, fault := parseNumber(rest); fault == "" {
		return 0, fmt.Sprintf("%s has no unit", quote(s))
	}
	for parts := 0; rest != "" || parts == 0; parts++ {
		m := part.FindStringSubmatch(rest)
		if m == nil {
			return 0, fmt.Sprintf("%s is not %s", quote(s), q.noun)
		}
		n, fault := parseNumber(m[1])
		size, known := q.unit(m[2])
		switch {
		case !known || size >= last:
			return 0, fmt.Sprintf("%s is not %s", quote(s), q.noun)
		case fault != "":
			return 0, fmt.Sprintf("%s %s", quote(m[1]), fault)
		}
		x, last, rest = x+n*size, size, rest[len(m[0]):]
	}
	return x, ""
}

func (q quantity) unit(name string) (size float64, known bool) {
	for _, u := range q.units {
		for _, n := range u.names {
			if n == name {
				return u.size, true
			}
		}
	}
	return 0, false
}
