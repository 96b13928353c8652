package intake

import (
	"math"
	"regexp"
	"strings"

	"gatepost/program"
)

// height reads how high pads lay under the head, or the block under the feet, in m; 0: the
// cell names none. A plain number is one in centimetres.
func (k *logKnown) height(written string, form *regexp.Regexp, allowed quantity, not, far string) (height float64, wrong fault) {
	m := form.FindStringSubmatch(written)
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
		return 0, fault{not, "written", quote(written)}
	case !allowed.within(x, allowed.least, allowed.most):
		return 0, fault{far, "written", quote(written), "least", short(allowed.least), "most", short(allowed.most)}
	}
	return math.Round(1000*x) / 1000, nil
}

// onHeight reads pads or a block; neither where the cell names none.
func (k *logKnown) onHeight(written string) (r program.Rig, wrong fault) {
	if r.Pad, wrong = k.height(written, k.words.pad, padHeight, "pad_not", "pad_deep"); wrong == nil && r.Pad == 0 {
		r.Block, wrong = k.height(written, k.words.block, blockHeight, "block_not", "block_high")
	}
	return r, wrong
}

// checkHelp refuses pads where nothing is pressed, blocks where nothing is lifted, and
// bands where something is.
func (l *logLine) checkHelp(e *program.Entry) {
	load := program.LoadHold
	if e.Step != "" {
		load = l.known.load
	}
	written := quote(l.cell(columnExercise))
	switch {
	case e.Exercise == "": // said already
	case e.Rig.Pad > 0 && load != program.LoadPress:
		l.fault(l.at(columnBands), "pad_nowhere", "written", written)
	case e.Rig.Block > 0 && load != program.LoadLift:
		l.fault(l.at(columnBands), "block_nowhere", "written", written)
	case len(e.Rig.Bands) > 0 && load == program.LoadPress:
		l.fault(l.at(columnBands), "band_press", "written", written)
	case len(e.Rig.Bands) > 0 && load == program.LoadLift:
		l.fault(l.at(columnBands), "band_lift", "written", written)
	}
}
