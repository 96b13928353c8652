package intake

import (
	"math"
	"strings"

	"gatepost/program"
)

// pad reads how high pads lay under the head, in m; 0: the cell names none. A plain
// number is one in centimetres.
func (k *logKnown) pad(written string) (height float64, wrong fault) {
	m := k.words.pad.FindStringSubmatch(written)
	if _, band := k.bands.ids[fold(written)]; m == nil || band {
		return 0, nil
	}
	s := strings.ReplaceAll(m[1]+m[2], ",", ".")
	if _, fault := parseNumber(s); fault == "" {
		s += " cm"
	}
	x, none := length.parse(strings.ReplaceAll(s, "-", " "))
	switch {
	case none != "":
		return 0, fault{"pad_not", "written", quote(written)}
	case 100*x < padHeight.least-1e-9 || 100*x > padHeight.most+1e-9:
		return 0, fault{"pad_deep", "written", quote(written), "least", short(padHeight.least), "most", short(padHeight.most)}
	}
	return math.Round(1000*x) / 1000, nil
}

// checkHelp refuses pads where nothing is pressed, and bands where something is.
func (l *logLine) checkHelp(e *program.Entry) {
	press := l.known.presses && e.Step != ""
	switch {
	case e.Exercise == "": // said already
	case e.Rig.Pad > 0 && !press:
		l.fault(l.at(columnBands), "pad_nowhere", "written", quote(l.cell(columnExercise)))
	case len(e.Rig.Bands) > 0 && press:
		l.fault(l.at(columnBands), "band_press", "written", quote(l.cell(columnExercise)))
	}
}

// padCell writes how high pads lay.
func padCell(height float64) string { return "pad " + short(math.Round(1000*height)/10) + " cm" }
