package intake

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gatepost/program"

	"pgregory.net/rapid"
)

// Conversions printed in NIST Special Publication 811 (2008), appendix B.8 and
// B.9, where each factor is marked exact; the stature of 5 ft 5.5 in is 65.5
// times the inch.
func TestUnitsAgainstNIST811(t *testing.T) {
	for _, c := range []struct {
		of   quantity
		text string
		want float64
	}{
		{mass, "1 lb", 0.45359237},
		{mass, "128 lb", 58.05982336},
		{length, "1 in", 0.0254},
		{length, "1 ft", 0.3048},
		{length, "5 ft 5.5 in", 1.6637},
		{length, "166 cm", 1.66},
		{length, "1660 mm", 1.66},
		{force, "1 kg", 9.80665},
		{force, "1 lb", 4.4482216152605},
		{force, "35 N", 35},
		{duration, "1 min 30 s", 90},
		{duration, "1 h", 3600},
		{angle, "180 deg", math.Pi},
		{angle, "1°", 0.017453292519943295},
	} {
		got, fault := c.of.parse(c.text)
		if fault != "" || math.Abs(got-c.want) > 1e-12*c.want {
			t.Errorf("%s = %.15g %s, want %.15g", c.text, got, fault, c.want)
		}
	}
}

// What can mean one thing only is read, however it is written: a comma before one or
// two digits, capitals, marks of feet and inches, minutes alone or with their unit.
func TestUnitsUnderstood(t *testing.T) {
	for _, c := range []struct {
		of   quantity
		text string
		want float64
	}{
		{mass, "58,5 KG", 58.5}, {length, "1.90 m", 1.9}, {length, "1,9m", 1.9}, {length, `5'5.5"`, 1.6637}, {length, "5′ 6″", 1.6764}, {length, "0", 0},
		{duration, "1 minute 30 sec", 90}, {minutes, "40 min", 2400}, {minutes, "40", 2400}, {minutes, "1 h 15 min", 4500}, {weeks, "12", 12}, {weeks, "12 weeks", 12},
	} {
		got, fault := c.of.parse(c.text)
		if fault != "" || math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s = %.15g %s, want %.15g", c.text, got, fault, c.want)
		}
	}
}

// A Julian year has 365.25 days (IAU); twelve months make a year, and 104 weeks
// with 2.5 days two of them.
func TestTrainingAge(t *testing.T) {
	months, _ := trainingAge.parse("24 months")
	years, _ := trainingAge.parse("2 years")
	weeks, _ := trainingAge.parse("104 weeks 2.5 days")
	mixed, _ := trainingAge.parse("1 year 12 months")
	if months != years || math.Abs(weeks-years) > 1e-12 || math.Abs(mixed-years) > 1e-12 {
		t.Errorf("24 months %v, 2 years %v, 104 weeks 2.5 days %v, a year and twelve months %v", months, years, weeks, mixed)
	}
}

// The same length written in another metric unit is the same number, to the last
// bit, so that a plan cannot depend on it.
func TestMetricUnitsAgreeExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.IntRange(1, 99999).Draw(t, "mm")
		metres, _ := length.parse(trimmed(fmt.Sprintf("%d.%03d", mm/1000, mm%1000)) + " m")
		for _, text := range []string{
			fmt.Sprintf("%d mm", mm),
			trimmed(fmt.Sprintf("%d.%d", mm/10, mm%10)) + " cm",
		} {
			if got, fault := length.parse(text); got != metres || fault != "" {
				t.Fatalf("%s is %v %s, not %v", text, got, fault, metres)
			}
		}
	})
}

func trimmed(number string) string { return strings.TrimSuffix(strings.TrimRight(number, "0"), ".") }

// What is written in any unit comes back from the unit inside.
func TestUnitsRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.SampledFrom([]quantity{mass, length, duration, hours, trainingAge, angle, force}).Draw(t, "quantity")
		u := rapid.SampledFrom(q.units).Draw(t, "unit")
		n := float64(rapid.IntRange(0, 99_999_999).Draw(t, "thousandths")) / 1000
		gap := rapid.SampledFrom([]string{"", " ", "\u00a0"}).Draw(t, "gap")
		text := fmt.Sprintf("%v%s%s", n, gap, u.names[rapid.IntRange(0, len(u.names)-1).Draw(t, "name")])
		x, fault := q.parse(text)
		if fault != "" {
			t.Fatalf("%q: %s", text, fault)
		}
		if back := u.written(x); math.Abs(back-n) > 1e-9*math.Max(1, n) {
			t.Fatalf("%q came back as %v", text, back)
		}
	})
}

// Feet and inches, pounds of half a kilogram: several parts add up.
func TestPartsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		feet, inches := rapid.IntRange(0, 9).Draw(t, "ft"), rapid.IntRange(0, 11).Draw(t, "in")
		both, _ := length.parse(fmt.Sprintf("%d ft %d in", feet, inches))
		only, _ := length.parse(fmt.Sprintf("%d in", 12*feet+inches))
		if math.Abs(both-only) > 1e-12 {
			t.Fatalf("%d ft %d in is %v, not %v", feet, inches, both, only)
		}
	})
}

func TestUnitsRefused(t *testing.T) {
	for _, text := range []string{
		"", "58", "kg", "58 kilo", "58 kg kg", "58 kg 2 lb 3 kg", "-58 kg", "+58 kg", "058 kg", "5e1 kg", ".5 kg", "5. kg", "58,500 kg", "58,5", ",5 kg", "5,8,5 kg", "58'",
		"NaN kg", ".nan", ".inf kg", "0x3a kg", "1_000 kg", "58kg58", "58 kg.", "٥٨ kg", "58 ㎏", "999999999999 kg", "1 lb 58 kg",
	} {
		if x, fault := mass.parse(text); fault == "" {
			t.Errorf("%q was read as %v kg", text, x)
		}
	}
	if _, fault := length.parse("5 in 5 ft"); fault == "" {
		t.Error("inches before feet were read")
	}
}

// Whatever is written, reading it ends with a number that makes sense or with a
// problem.
func FuzzUnits(f *testing.F) {
	for _, seed := range []string{"58 kg", "5 ft 5.5 in", "1 min 30 s", "-1 s", "1e9 kg", ".nan", "12", "8 months", "°", "1\u00a0kg"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, q := range []quantity{mass, length, duration, hours, trainingAge, angle, force} {
			x, fault := q.parse(text)
			if fault == "" && (math.IsNaN(x) || math.IsInf(x, 0) || x < 0) {
				t.Errorf("%q is %v", text, x)
			}
			if fault != "" && x != 0 {
				t.Errorf("%q is %v and %s", text, x, fault)
			}
			_ = q.advice(nil, text, "58 kg")
		}
	})
}

// ISO 8601 calendar dates and intervals, as in ISO 8601-1:2019 (from memory):
// extended format only, both ends of an interval separated by a solidus.
func TestDates(t *testing.T) {
	for text, want := range map[string]string{
		"2027-02-28": "2027-02-28", "2028-02-29": "2028-02-29", "2027-02-29": "", "2027-13-01": "",
		"20270228": "", "2027-W05-1": "", "02/08/2027": "", "28/02/27": "", "31/04/2027": "", "13/13/2027": "", "28.2.": "", "46081": "",
		"2027-2-8": "2027-02-08", "28.02.2027": "2027-02-28", "28/2/2027": "2027-02-28", "2/28/2027": "2027-02-28", "7.7.2027": "2027-07-07",
	} {
		var d program.Date
		src := newSource("x.yaml", "day: "+text, false)
		src.readYAML("day: 2027-01-01", group(must("day", "2027-01-01", date(&d, earliest, latest))))
		if d.String() != want || (want == "") != src.problems.Stop() {
			t.Errorf("%s was read as %q, %v", text, d, src.problems)
		}
	}
	for text, days := range map[string]program.Date{
		"2027-02-15/2027-02-21": 6, "15/02/2027/21/02/2027": 6, "15/02/2027-21/02/2027": 6, "15.2.2027 – 21.2.2027": 6,
		"15/02/2027 to 21/02/2027": 6, "15/02/2027": 0, "2027-02-15": 0, "15.2.2027": 0,
	} {
		var v program.Interval
		src := newSource("x.yaml", "away: "+text, false)
		src.readYAML("x", group(must("away", "x", interval(&v))))
		if v.From.String() != "2027-02-15" || v.To-v.From != days || src.problems != nil {
			t.Errorf("%s is %v: %v", text, v, src.problems)
		}
	}
}
