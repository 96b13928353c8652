package intake

import (
	"regexp"
	"strconv"
)

// plainNumber is the only form of a number: no exponent, no leading zero, no
// underscore, which YAML would each read in its own way.
var (
	plainNumber  = regexp.MustCompile(`^(0|[1-9][0-9]{0,8})(\.[0-9]{1,6})?$`)
	leadingZero  = regexp.MustCompile(`^0[0-9]`)
	decimalComma = regexp.MustCompile(`^[0-9]+,[0-9]+$`)
	belowZero    = regexp.MustCompile(`^-[0-9]`)
)

// number reads a number that has no unit.
func number(into *float64, least, most float64) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		x, fault := parseNumber(s)
		switch {
		case fault != "":
			v.fault("number", "what", v.words().Say("fault."+fault, "written", quote(s)), "example", v.example())
		case x < least || x > most:
			v.fault("out_of_range", "written", quote(s), "name", quote(v.name()), "least", short(least), "most", short(most))
		default:
			*into = x
		}
	}
}

// whole reads a whole number that has no unit.
func whole(into *int, least, most int) read {
	return func(v value) {
		var x float64
		before := len(v.problems)
		number(&x, float64(least), float64(most))(v)
		switch {
		case len(v.problems) > before && v.problems[len(v.problems)-1].Place == v.here():
		case x != float64(int(x)):
			v.fault("not_whole", "example", v.example())
		default:
			*into = int(x)
		}
	}
}

// parseNumber reads a plain number, or gives the key of what is wrong with it.
func parseNumber(s string) (x float64, fault string) {
	switch {
	case plainNumber.MatchString(s):
		x, _ = strconv.ParseFloat(s, 64)
		return x, ""
	case belowZero.MatchString(s):
		return 0, "below_zero"
	case leadingZero.MatchString(s):
		return 0, "leading_zero"
	case decimalComma.MatchString(s):
		return 0, "decimal_comma"
	}
	return 0, "not_number"
}

// short writes a number without needless digits.
func short(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
