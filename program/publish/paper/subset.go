package paper

import (
	"bytes"
	"cmp"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/jung-kurt/gofpdf"
)

// subset is a face cut to some letters, as a PDF holds it: once made, any number
// of documents may share it. Text is written as the numbers of its glyphs. Objects
// of a composite font: ISO 32000-1, 9.6 to 9.10.
type subset struct {
	font     *font
	letters  string
	name     string   // with the tag that a subset has
	glyphs   []uint16 // by character, 0: there is none
	file     []byte   // TrueType, an object
	widths   string   // of the glyphs in their order
	unicode  []byte   // map back to characters, an object
	describe string   // entries of the descriptor
}

// cutTo makes a subset.
func (f *font) cutTo(letters string) *subset {
	ttf := gofpdf.UTF8CutFont(f.ttf, letters)
	sum := sha256.Sum256([]byte(f.family + letters))
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	s := &subset{font: f, letters: letters, name: string(tag) + "+" + f.family}
	tables := tablesOf(ttf)
	cmap, err := unicodeMap(tables["cmap"])
	if err != nil {
		panic("paper: " + f.family + ": " + err.Error()) // the cutter has always made one
	}
	last, _ := utf8.DecodeLastRuneInString(letters)
	s.glyphs = make([]uint16, last+1)
	eachGlyph(cmap, func(r rune, glyph int) { s.glyphs[r] = uint16(glyph) })
	s.file, s.unicode = packed(fmt.Sprintf("/Length1 %d", len(ttf)), ttf), packed("", []byte(s.toUnicode()))
	s.widths, s.describe = s.glyphWidths(), describeFont(tables, f.capHeight)
	return s
}

// packed is a stream, compressed as well as can be: it is made once.
func packed(entries string, data []byte) []byte {
	var out bytes.Buffer
	w, _ := zlib.NewWriterLevel(&out, zlib.BestCompression) // the level is one there is
	w.Write(data)                                           // a Buffer never fails
	w.Close()
	return fmt.Appendf(nil, "<</Length %d%s/Filter /FlateDecode>>\nstream\n%s\nendstream", out.Len(), entries, out.Bytes())
}

// inOrder are the characters by their glyph.
func (s *subset) inOrder() []rune {
	var all []rune
	for r, glyph := range s.glyphs {
		if glyph > 0 {
			all = append(all, rune(r))
		}
	}
	slices.SortStableFunc(all, func(a, b rune) int { return cmp.Compare(s.glyphs[a], s.glyphs[b]) })
	return all
}

func (s *subset) glyphWidths() string {
	var out strings.Builder
	for _, r := range s.inOrder() {
		w, _ := s.font.width(r)
		fmt.Fprintf(&out, "%d [%.0f] ", s.glyphs[r], w)
	}
	return out.String()
}

// toUnicode maps glyphs back, a hundred to a block (ISO 32000-1, 9.10.3).
func (s *subset) toUnicode() string {
	var out strings.Builder
	out.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CMapName /Gatepost def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for block := range slices.Chunk(s.inOrder(), 100) {
		fmt.Fprintf(&out, "%d beginbfchar\n", len(block))
		for _, r := range block {
			fmt.Fprintf(&out, "<%04X> <%04X>\n", s.glyphs[r], r)
		}
		out.WriteString("endbfchar\n")
	}
	out.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return out.String()
}

// describeFont are the measures of the whole face, in thousandths of the type size.
func describeFont(tables map[string][]byte, capHeight float64) string {
	head, hhea := tables["head"], tables["hhea"]
	scale := 1000 / float64(u16(head, 18))
	at := func(table []byte, offset int) int { return int(float64(int16(u16(table, offset))) * scale) }
	return fmt.Sprintf("/Flags 4 /FontBBox [%d %d %d %d] /ItalicAngle 0 /Ascent %d /Descent %d /CapHeight %.0f /StemV 80",
		at(head, 36), at(head, 38), at(head, 40), at(head, 42), at(hhea, 4), at(hhea, 6), capHeight)
}

// fontObjects is how many objects a subset takes.
const fontObjects = 5

// objects writes the subset as objects from a number on.
func (s *subset) objects(from int) [fontObjects][]byte {
	return [fontObjects][]byte{
		fmt.Appendf(nil, "<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>",
			s.name, from+1, from+2),
		fmt.Appendf(nil, "<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> "+
			"/FontDescriptor %d 0 R /DW 1000 /W [%s] /CIDToGIDMap /Identity>>", s.name, from+3, s.widths),
		s.unicode,
		fmt.Appendf(nil, "<</Type /FontDescriptor /FontName /%s %s /FontFile2 %d 0 R>>", s.name, s.describe, from+4),
		s.file,
	}
}

// usualSubsets are cut on first use.
type usualSubsets struct{ plain, latin func() *subset }

func (f *font) usualSubsets() usualSubsets {
	cut := func(letters func(r rune) bool) func() *subset {
		return sync.OnceValue(func() *subset { return f.cutTo(f.those(letters)) })
	}
	return usualSubsets{cut(plainLetter), cut(func(r rune) bool { return plainLetter(r) || r < 0x180 })}
}

// plainLetter says that most documents manage with a character: Latin of Western
// Europe, and the punctuation and signs that the words use.
func plainLetter(r rune) bool {
	return r < 0x100 || r >= 0x2010 && r < 0x2040 || strings.ContainsRune("≤≥−→←↑↓□✓○", r)
}

// those are the face's characters of a kind.
func (f *font) those(kind func(r rune) bool) string {
	var out strings.Builder
	for r := rune(' '); r <= 0xffff; r++ {
		if _, ok := f.width(r); ok && kind(r) {
			out.WriteRune(r)
		}
	}
	return out.String()
}

// subsetFor is the smallest of the usual subsets that has all the characters used,
// or one of their own.
func (f *font) subsetFor(used []rune) *subset {
	for _, usual := range []func() *subset{f.usual.plain, f.usual.latin} {
		if s := usual(); !slices.ContainsFunc(used, func(r rune) bool { return int(r) >= len(s.glyphs) || s.glyphs[r] == 0 }) {
			return s
		}
	}
	return f.cutTo(f.those(func(r rune) bool { return slices.Contains(used, r) || r < 0x80 }))
}
