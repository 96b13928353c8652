package paper

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// metrics are what layout needs of a TrueType file: which characters there are
// and how wide, in thousandths of the type size. Table layouts: the OpenType
// specification (ISO/IEC 14496-22), tables head, hhea, hmtx, cmap and OS/2.
type metrics struct {
	widths    []float32 // by character; absent ones -1
	capHeight float64
}

// width is a character's, and whether the face has it.
func (m *metrics) width(r rune) (float64, bool) {
	if int(r) >= len(m.widths) || m.widths[r] < 0 {
		return 0, false
	}
	return float64(m.widths[r]), true
}

// readMetrics reads the characters up to U+FFFF, which is what the PDF writer
// can encode. A face without a cmap of format 4 is an error.
func readMetrics(ttf []byte) (m metrics, err error) {
	defer func() { // a cut-off file shows as an index out of range
		if r := recover(); r != nil {
			err = fmt.Errorf("not a TrueType file: %v", r)
		}
	}()
	tables := tablesOf(ttf)
	head, hhea, hmtx := tables["head"], tables["hhea"], tables["hmtx"]
	scale := 1000 / float64(u16(head, 18))
	last := u16(hhea, 34) - 1                    // later glyphs are as wide as this one
	if os2 := tables["OS/2"]; u16(os2, 0) >= 2 { // older versions do not say
		m.capHeight = float64(u16(os2, 88)) * scale
	}
	m.widths = slices.Repeat([]float32{-1}, 0x10000)
	cmap, err := unicodeMap(tables["cmap"])
	if err != nil {
		return m, err
	}
	eachGlyph(cmap, func(r rune, glyph int) {
		m.widths[r] = float32(float64(u16(hmtx, 4*min(glyph, last))) * scale)
	})
	return m, nil
}

func u16(b []byte, at int) int { return int(binary.BigEndian.Uint16(b[at:])) }
func u32(b []byte, at int) int { return int(binary.BigEndian.Uint32(b[at:])) }

func tablesOf(ttf []byte) map[string][]byte {
	tables := map[string][]byte{}
	for i := range u16(ttf, 4) {
		entry := ttf[12+16*i:]
		tables[string(entry[:4])] = ttf[u32(entry, 8):][:u32(entry, 12)]
	}
	return tables
}

// unicodeMap finds the format 4 subtable for Windows, Unicode (3, 1).
func unicodeMap(cmap []byte) ([]byte, error) {
	for i := range u16(cmap, 2) {
		entry := cmap[4+8*i:]
		sub := cmap[u32(entry, 4):]
		if u16(entry, 0) == 3 && u16(entry, 2) == 1 && u16(sub, 0) == 4 {
			return sub, nil
		}
	}
	return nil, errors.New("the face has no Unicode map of format 4")
}

// eachGlyph walks the segments of a format 4 map.
func eachGlyph(sub []byte, visit func(r rune, glyph int)) {
	twice := u16(sub, 6)
	ends, starts, deltas, offsets := 14, 16+twice, 16+2*twice, 16+3*twice
	for i := 0; i < twice; i += 2 {
		start, end, delta, offset := u16(sub, starts+i), u16(sub, ends+i), u16(sub, deltas+i), u16(sub, offsets+i)
		for c := start; c <= end && c != 0xffff; c++ {
			glyph := c
			if offset != 0 {
				glyph = u16(sub, offsets+i+offset+2*(c-start))
				if glyph == 0 {
					continue
				}
			}
			if glyph = (glyph + delta) & 0xffff; glyph != 0 {
				visit(rune(c), glyph)
			}
		}
	}
}
