package intake

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"gatepost/program"
)

// toesWeight is what toes can leave on a scale.
var toesWeight = force.between(0.5, 120)

// weight reads a force that a scale showed, a plain number being one in kilograms, to the
// gram.
func weight(written string, allowed quantity) (newtons float64, wrong fault) {
	s := strings.ReplaceAll(written, ",", ".")
	if _, fault := parseNumber(s); fault == "" {
		s += " kg"
	}
	x, none := force.parse(s)
	switch {
	case none != "":
		return 0, fault{"weight_not", "written", quote(written)}
	case !allowed.within(x, allowed.least, allowed.most):
		return 0, fault{"weight_far", "written", quote(written), "least", short(allowed.least), "most", short(allowed.most)}
	}
	return math.Round(1000*x/Kilogram) / 1000 * Kilogram, nil
}

// onScale reads what the toes left on a scale; 0: the cell says nothing of one.
func (k *logKnown) onScale(written string) (newtons float64, wrong fault) {
	m := k.words.scale.FindStringSubmatch(written)
	if _, band := k.bands.ids[fold(written)]; m == nil || band {
		return 0, nil
	}
	return weight(m[1]+m[2], toesWeight)
}

// weighed is a band with what a scale read of it: "thin 6 kg".
var weighed = regexp.MustCompile(`(?i)^(.*\S)\s+([0-9][0-9.,]*\s*(?:kg|lbs?|n))$`)

// pulled reads a band that nobody measured, with what a scale read of it; not there where the
// cell names none with a weight.
func (k *logKnown) pulled(written string) (r program.Rig, there bool, wrong fault) {
	m := weighed.FindStringSubmatch(written)
	if _, whole := k.bands.ids[fold(written)]; m == nil || whole {
		return r, false, nil
	}
	id, known := k.bands.ids[fold(m[1])]
	switch {
	case !known:
		return r, false, nil
	case k.measured(id):
		return r, true, fault{"pull_measured", "band", quote(id)}
	}
	r.Bands = []string{id}
	r.Pull, wrong = weight(m[2], bandPull)
	return r, true, wrong
}

// measured reports whether somebody measured a band.
func (k *logKnown) measured(name string) bool {
	return slices.ContainsFunc(k.client.Bands, func(b program.Band) bool { return b.Name == name && b.Measured() })
}

// strapOf refuses the strap of a band that nobody measured: it tells nothing of its pull.
func (k *logKnown) strapOf(band string) fault {
	if id, known := k.bands.ids[fold(band)]; known && !k.measured(id) {
		return fault{"strap_unmeasured", "band", quote(id)}
	}
	return nil
}

// beside refuses a band that nobody measured beside another: nobody knows what both pull.
func (k *logKnown) beside(bands []string) fault {
	for _, name := range bands {
		if len(bands) > 1 && !k.measured(name) {
			return fault{"pull_beside", "band", quote(name)}
		}
	}
	return nil
}

// checkScale refuses a weight on the toes where they stand on no scale.
func (l *logLine) checkScale(e *program.Entry) {
	if e.Scale > 0 && e.Exercise != "" && !slices.Contains(l.known.scales, e.Exercise) {
		l.fault(l.at(columnBands), "scale_nowhere", "written", quote(l.cell(columnExercise)))
	}
}

// Kilogram is what a kilogram weighs, N.
const Kilogram = standardGravity

// ScaleCell is what the toes leave on a scale as a log has it, in English.
func ScaleCell(newtons float64) string { return "scale " + inKilograms(newtons) }
