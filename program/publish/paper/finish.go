package paper

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"sync"
	"time"
)

// files are used for one document after the other, for the room they have.
var files = sync.Pool{New: func() any { return new(bytes.Buffer) }}

var languageTag = regexp.MustCompile(`^[A-Za-z0-9-]{1,35}$`) // BCP 47

// finish writes a PDF anew: on its pages what the pen wrote for them, its streams compressed
// by one compressor for all documents, its faces as subsets that all documents share, its catalogue with a
// language and the wish to show the title and not the file's name, and an /ID made
// from the content. The writer has no way to say these; it starts a compressor for
// every stream and reads and cuts every face for every document, which would be
// most of the work. Structure of the file: ISO 32000-1, 7.5.
func finish(pdf []byte, lang string, faces []*subset, plates, pages [][]byte) ([]byte, error) {
	if !languageTag.MatchString(lang) {
		return nil, fmt.Errorf("paper: %q is not a language", lang)
	}
	offsets, trailer, err := crossReferences(pdf)
	if err != nil {
		return nil, err
	}
	if !bytes.Contains(pdf, resources) || !bytes.Contains(pdf, fontList) || bytes.Count(pdf, catalog) != 1 {
		return nil, errors.New("paper: the PDF has no catalogue, or no list of its faces")
	}
	out := files.Get().(*bytes.Buffer)
	defer files.Put(out)
	out.Reset()
	first := len(offsets) + 1 // number of the first font object
	inFile := slices.Sorted(slices.Values(offsets))
	out.Write(pdf[:inFile[0]])
	for i, start := range inFile {
		end := bytes.LastIndex(pdf, []byte("xref\n0 "))
		if i+1 < len(inFile) {
			end = inFile[i+1]
		}
		offsets[slices.Index(offsets, start)] = -out.Len() // written; below zero until all are
		pages = writeObject(out, withResources(pdf[start:end], faces, plates, first), lang, pages)
	}
	if len(pages) > 0 {
		return nil, errors.New("paper: the PDF has too few pages")
	}
	add := func(object []byte) {
		offsets = append(offsets, -out.Len())
		fmt.Fprintf(out, "%d 0 obj\n", len(offsets))
		out.Write(object)
		out.WriteString("\nendobj\n")
	}
	for i, s := range faces {
		for _, object := range s.objects(first + i*fontObjects) {
			add(object)
		}
	}
	for _, plate := range plates {
		add(plate)
	}
	sum := sha256.Sum256(out.Bytes())
	table := out.Len()
	fmt.Fprintf(out, "xref\n0 %d\n0000000000 65535 f \n", len(offsets)+1)
	for _, at := range offsets {
		fmt.Fprintf(out, "%010d 00000 n \n", -at)
	}
	fmt.Fprintf(out, "trailer\n<<\n/Size %d%s/ID [<%x> <%x>]\n>>\nstartxref\n%d\n%%%%EOF\n", len(offsets)+1, trailer, sum[:16], sum[:16], table)
	return bytes.Clone(out.Bytes()), nil
}

// crossReferences reads where the objects are, in the order of their numbers, and
// what the trailer says.
func crossReferences(pdf []byte) (offsets []int, trailer []byte, err error) {
	broken := errors.New("paper: the PDF has no table of its objects")
	at := bytes.LastIndex(pdf, []byte("xref\n0 "))
	_, table, ok := bytes.Cut(pdf[max(0, at):], []byte(" 65535 f"))
	if at < 0 || !ok {
		return nil, nil, broken
	}
	lines, rest, ok := bytes.Cut(table, []byte("trailer"))
	_, rest, opened := bytes.Cut(rest, []byte("<<"))
	trailer, _, closed := bytes.Cut(rest, []byte(">>"))
	if at = bytes.Index(trailer, []byte("\n/Root")); at >= 0 { // after /Size, which is ours
		trailer = trailer[at:]
	}
	if !ok || !opened || !closed {
		return nil, nil, broken
	}
	for _, line := range bytes.Split(lines, []byte("\n")) {
		if len(line) < 18 || line[17] != 'n' {
			continue
		}
		at, err := strconv.Atoi(string(bytes.TrimLeft(line[:10], "0")))
		if err != nil || at >= len(pdf) {
			return nil, nil, broken
		}
		offsets = append(offsets, at)
	}
	if len(offsets) == 0 {
		return nil, nil, broken
	}
	return offsets, trailer, nil
}

var (
	resources = []byte("2 0 obj\n") // the writer's number for what all pages use
	fontList  = []byte("/Font <<\n")
	formList  = []byte("/XObject <<\n")
)

// withResources names faces and plates where the pages look for them.
func withResources(object []byte, faces []*subset, plates [][]byte, first int) []byte {
	if !bytes.HasPrefix(object, resources) {
		return object
	}
	before, after, _ := bytes.Cut(object, fontList)
	between, after, ok := bytes.Cut(after, formList)
	if !ok {
		return object
	}
	out := append(bytes.Clone(before), fontList...)
	for i := range faces {
		out = fmt.Appendf(out, "/T%d %d 0 R\n", i, first+i*fontObjects)
	}
	out = append(append(out, between...), formList...)
	for i := range plates {
		out = fmt.Appendf(out, "/P%d %d 0 R\n", i, first+len(faces)*fontObjects+i)
	}
	return append(out, after...)
}

var (
	catalog  = []byte("/Type /Catalog")
	stream   = []byte("stream\n")
	lengthOf = []byte("/Length ")
)

// writeObject copies an object: a stream that is not compressed, which is the next page's, as
// one that is, and the catalogue with what was missing. It gives the pages that are left.
func writeObject(out *bytes.Buffer, object []byte, lang string, pages [][]byte) [][]byte {
	words, data, ok := bytes.Cut(object, stream)
	if !ok {
		before, after, isCatalog := bytes.Cut(object, catalog)
		if isCatalog {
			fmt.Fprintf(out, "%s%s\n/Lang (%s)\n/ViewerPreferences << /DisplayDocTitle true >>%s", before, catalog, lang, after)
			return pages
		}
		out.Write(object)
		return pages
	}
	at := bytes.LastIndex(words, lengthOf)
	if at < 0 || bytes.Contains(words, []byte("/Filter")) {
		out.Write(object)
		return pages
	}
	digits := at + len(lengthOf)
	end := digits
	for end < len(words) && words[end] >= '0' && words[end] <= '9' {
		end++
	}
	length, err := strconv.Atoi(string(words[digits:end]))
	if err != nil || length > len(data) {
		out.Write(object)
		return pages
	}
	packed := compress(append([][]byte{data[:length]}, pages[:min(1, len(pages))]...)...)
	fmt.Fprintf(out, "%s%d/Filter /FlateDecode%s%s", words[:digits], len(packed), words[end:], stream)
	out.Write(packed)
	out.Write(data[length:])
	return pages[min(1, len(pages)):]
}

// compressor packs one stream after the other.
type compressor struct {
	*zlib.Writer
	out bytes.Buffer
}

var compressors = sync.Pool{New: func() any {
	w, _ := zlib.NewWriterLevel(nil, zlib.BestSpeed) // the level is one there is
	return &compressor{Writer: w}
}}

func compress(parts ...[]byte) []byte {
	c := compressors.Get().(*compressor)
	defer compressors.Put(c)
	c.out.Reset()
	c.Reset(&c.out)
	for _, part := range parts {
		c.Write(part) // a Buffer never fails
	}
	c.Close()
	return bytes.Clone(c.out.Bytes())
}

// dayTime is midnight UTC of a day counted from 1970-01-01.
func dayTime(days int) time.Time { return time.Unix(int64(days)*86400, 0).UTC() }
