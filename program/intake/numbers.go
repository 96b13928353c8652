package intake

import (
	"fmt"
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
			v.say(v.here(), fmt.Sprintf("%s %s", quote(s), fault), fmt.Sprintf("Write a plain number, for example: %s", v.example()))
		case x < least || x > most:
			v.say(v.here(), fmt.Sprintf("%s is out of range", quote(s)), fmt.Sprintf("%s lies between %s and %s.", quote(v.name()), short(least), short(most)))
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
			v.wrong("is not a whole number", "Write, for example: %s", v.example())
		default:
			*into = int(x)
		}
	}
}

// parseNumber reads a plain number, or says what is wrong with it.
func parseNumber(s string) (x float64, fault string) {
	switch {
	case plainNumber.MatchString(s):
		x, _ = strconv.ParseFloat(s, 64)
		return x, ""
	case belowZero.MatchString(s):
		return 0, "is below zero"
	case leadingZero.MatchString(s):
		return 0, "begins with a zero, which some programs read as octal"
	case decimalComma.MatchString(s):
		return 0, "has a comma; the decimal sign here is a point"
	}
	return 0, "is not a plain number"
}

// short writes a number without needless digits.
func short(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
