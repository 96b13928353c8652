package intake

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// quantity is a kind of measurement: the units it may be written in, and the
// values that make sense. Outside least … most is an error; outside low … high
// a warning.
type quantity struct {
	noun        string // "mass"
	units       []unit // the first is the one messages use
	least, most float64
	low, high   float64
	doubt       string // the fault of what is unusual; empty: measure again
	bare        bool   // a number alone is of the first unit
}

// unit is a way to write a quantity: its names, and what it is in the unit inside
// (kg, m, N, s, radians, weeks): size over per.
type unit struct {
	names     []string
	size, per float64
}

// Exact by definition: NIST Special Publication 811 (2008), appendix B.8: the
// avoirdupois pound .453 592 37 kg, the international foot .3048 m and inch
// .0254 m, a kilogram of force 9.806 65 N.
const standardGravity = 9.80665

// A year is 365.25 days, a month its twelfth: close enough for a training age.
const yearInDays = 365.25

var (
	second = unit{[]string{"s", "sec", "seconds"}, 1, 1}
	minute = unit{[]string{"min", "minutes", "minute"}, 60, 1}
	hour   = unit{[]string{"h", "hours", "hour"}, 3600, 1}
	week   = unit{[]string{"weeks", "week"}, 1, 1}

	mass = quantity{noun: "mass", units: []unit{
		{[]string{"kg"}, 1, 1}, {[]string{"lb", "lbs"}, 45359237, 1e8}}}
	length = quantity{noun: "length", units: []unit{
		{[]string{"cm"}, 1, 100}, {[]string{"m"}, 1, 1}, {[]string{"mm"}, 1, 1000}, {[]string{"ft", "feet"}, 3048, 1e4}, {[]string{"in", "inches"}, 254, 1e4}}}
	duration    = quantity{noun: "time", units: []unit{second, minute, hour}}
	hours       = quantity{noun: "time", units: []unit{hour, minute}}
	minutes     = quantity{noun: "time", bare: true, units: []unit{minute, hour}}
	weeks       = quantity{noun: "time", bare: true, units: []unit{week}}
	trainingAge = quantity{noun: "time", units: []unit{
		{[]string{"years", "year"}, yearInDays, 7}, {[]string{"months", "month"}, yearInDays, 84}, week, {[]string{"days", "day"}, 1, 7}}}
	angle = quantity{noun: "angle", units: []unit{
		{[]string{"deg", "°", "degrees"}, math.Pi, 180}}}
	force = quantity{noun: "force", units: []unit{
		{[]string{"kg"}, standardGravity, 1}, {[]string{"lb", "lbs"}, 45359237 * standardGravity, 1e8}, {[]string{"N"}, 1, 1}}}
)

// inside turns a plain number of the unit into the unit inside. It divides once,
// so that 66.5 cm is the very number that 0.665 m is.
func (u unit) inside(number string) float64 {
	whole, decimals, _ := strings.Cut(number, ".")
	digits, _ := strconv.ParseFloat(whole+decimals, 64)
	return digits * u.size / (u.per * math.Pow10(len(decimals)))
}

// written turns a value inside into a number of the unit.
func (u unit) written(x float64) float64 { return x * u.per / u.size }

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

// because gives the key of why what is unusual is doubtful.
func (q quantity) because(doubt string) quantity {
	q.doubt = doubt
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
		n := q.units[0].written(inside)
		if math.Abs(n-math.Round(n)) > 1e-9 {
			v.fault("not_whole_unit", "unit", q.units[0].names[0], "example", v.example())
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
		v.fault("quantity", "what", v.words().Say("fault."+fault, "written", quote(s)), "how", q.advice(v.words(), s, v.example()))
		return false
	}
	switch {
	case !q.within(x, q.least, q.most):
		v.fault(q.outside("impossible", v, s, q.least, q.most)...)
		return false
	case !q.within(x, q.low, q.high):
		v.note(q.outside(cmp.Or(q.doubt, "unusual"), v, s, q.low, q.high).doubtIn(v.words(), v.here()))
	}
	*into = x
	return true
}

// within reports whether a value inside lies between two numbers of the first unit.
func (q quantity) within(x, least, most float64) bool {
	const slack = 1e-9 // so that 250 kg written in pounds is still 250 kg
	shown := q.units[0].written(x)
	return least-slack <= shown && shown <= most+slack
}

// outside is the fault of a quantity that lies outside what is expected.
func (q quantity) outside(key string, v value, written string, least, most float64) fault {
	return fault{key, "written", quote(written), "name", quote(v.name()), "least", short(least), "most", short(most), "unit", q.units[0].names[0]}
}

// advice shows how the quantity is written, with the units there are.
func (q quantity) advice(words program.Words, written, example string) string {
	var units []string
	for _, u := range q.units {
		units = append(units, u.names[0])
	}
	say := func(key, write string) string {
		return words.Say("fault."+key, "write", write, "units", strings.Join(units, ", "))
	}
	mended := mend(written)
	if x, fault := parseNumber(mended); fault == "" && !q.bare {
		return say("with_unit", mended+" "+q.likely(x).names[0])
	}
	if mended != written {
		if _, fault := q.parse(mended); fault == "" {
			return say("if_meant", mended)
		}
	}
	return say("as_in", example)
}

// likely is the first unit in which a number is possible; failing that, the first.
func (q quantity) likely(number float64) unit {
	for _, u := range q.units {
		if q.within(number*u.size/u.per, q.least, q.most) {
			return u
		}
	}
	return q.units[0]
}

// mend writes a quantity as it was probably meant: a decimal point, no leading
// zeros.
func mend(written string) string {
	return leading.ReplaceAllString(strings.ReplaceAll(written, ",", "."), "$1")
}

var (
	// leading are zeros before a number.
	leading = regexp.MustCompile(`^0+([0-9])`)
	// part is a number with a unit.
	part = regexp.MustCompile(`^([^\s\p{L}°]+)\s*([\p{L}°]+)(?:\s+|$)`)
	// comma is a decimal one: before three digits it may part thousands.
	comma = regexp.MustCompile(`^([0-9]+),([0-9]{1,2})$`)
	// marks are those of feet and inches. Of minutes and seconds they are no times here.
	marks = strings.NewReplacer("\u00a0", " ", "'", " ft ", "′", " ft ", `"`, " in ", "″", " in ")
)

// parse reads a written quantity, such as "58 kg" or "5 ft 5.5 in", into the
// unit inside, or gives the key of what is wrong with it. Several parts add up; their
// units get smaller. A number alone is read where it can mean one thing only: nothing
// of any unit, or of one that goes without saying.
func (q quantity) parse(s string) (x float64, fault string) {
	last := math.Inf(1)
	rest := strings.TrimSpace(marks.Replace(s))
	switch n, fault := parseNumber(rest); {
	case fault == "" && (q.bare || n == 0):
		return q.units[0].inside(rest), ""
	case fault == "":
		return 0, "no_unit"
	case q.bare && fault != "not_number":
		return 0, fault
	}
	for parts := 0; rest != "" || parts == 0; parts++ {
		m := part.FindStringSubmatch(rest)
		if m == nil {
			return 0, "not_" + q.noun
		}
		number := comma.ReplaceAllString(m[1], "$1.$2")
		_, fault := parseNumber(number)
		u, known := q.unit(m[2])
		switch {
		case !known || u.size/u.per >= last:
			return 0, "not_" + q.noun
		case fault != "":
			return 0, fault
		}
		x, last, rest = x+u.inside(number), u.size/u.per, rest[len(m[0]):]
	}
	return x, ""
}

func (q quantity) unit(name string) (found unit, known bool) {
	for _, u := range q.units {
		if slices.ContainsFunc(u.names, func(n string) bool { return strings.EqualFold(n, name) }) {
			return u, true
		}
	}
	return unit{}, false
}
