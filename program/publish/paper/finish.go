package paper

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"time"
)

var (
	catalogStart = regexp.MustCompile(`(?s)(\d+) 0 obj\s*<<\s*/Type /Catalog`)
	languageTag  = regexp.MustCompile(`^[A-Za-z0-9-]{1,35}$`) // BCP 47
	trailerWords = regexp.MustCompile(`(?s)trailer\s*<<(.*)>>\s*startxref\s*(\d+)\s*%%EOF\s*$`)
)

// finish gives a PDF its language, has readers show the title and not the file's
// name, and an /ID made from the content. The writer has no way to say them, so
// they are appended as an incremental update (ISO 32000-1, 7.5.6).
func finish(pdf []byte, lang string) ([]byte, error) {
	at := catalogStart.FindSubmatchIndex(pdf)
	trailer := trailerWords.FindSubmatch(pdf)
	if at == nil || trailer == nil {
		return nil, errors.New("paper: the PDF has no catalogue to complete")
	}
	if !languageTag.MatchString(lang) {
		return nil, fmt.Errorf("paper: %q is not a language", lang)
	}
	number := pdf[at[2]:at[3]]
	entries, _, ok := bytes.Cut(pdf[at[1]:], []byte("endobj"))
	if !ok {
		return nil, errors.New("paper: the PDF's catalogue does not end")
	}
	sum := sha256.Sum256(pdf)
	out := bytes.NewBuffer(bytes.Clone(pdf))
	if !bytes.HasSuffix(pdf, []byte("\n")) {
		out.WriteByte('\n')
	}
	object := out.Len()
	fmt.Fprintf(out, "%s 0 obj\n<<\n/Type /Catalog\n/Lang (%s)\n/ViewerPreferences << /DisplayDocTitle true >>%sendobj\n",
		number, lang, entries)
	table := out.Len()
	fmt.Fprintf(out, "xref\n%s 1\n%010d 00000 n \n", number, object)
	fmt.Fprintf(out, "trailer\n<<%s/Prev %s\n/ID [<%x> <%x>]\n>>\nstartxref\n%s\n%%%%EOF\n",
		trailer[1], trailer[2], sum[:16], sum[:16], strconv.Itoa(table))
	return out.Bytes(), nil
}

// dayTime is midnight UTC of a day counted from 1970-01-01.
func dayTime(days int) time.Time { return time.Unix(int64(days)*86400, 0).UTC() }
