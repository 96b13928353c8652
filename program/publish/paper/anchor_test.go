package paper

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"
)

// What finish takes hold of is how the writer lays a file out, and no promise of it: the
// numbers of its objects, where it lists faces, its catalogue, the table of objects and the
// trailer. So a small file of the writer's stands here byte by byte. Where this fails after
// the writer changed, read finish.go against the new bytes before putting them here.
func TestTheWriterWritesWhatFinishReads(t *testing.T) {
	pdf := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: 100, Ht: 50}})
	describe(pdf, document{Title: "T", Author: "A", Subject: "S", Date: 20822})
	pdf.AddPageFormat("P", gofpdf.SizeType{Wd: 100, Ht: 50})
	pdf.Bookmark(inUTF16("P"), 0, 0)
	pdf.Rect(10, 10, 20, 20, "F")
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		t.Fatal(err)
	}
	if got := visible(out.Bytes()); got != strings.TrimPrefix(written, "\n") {
		t.Errorf("the writer's bytes are\n%s", got)
	}
}

// visible are bytes as ASCII.
func visible(b []byte) string {
	var out strings.Builder
	for _, c := range b {
		if c == '\n' || c >= ' ' && c < 0x7f {
			out.WriteByte(c)
		} else {
			fmt.Fprintf(&out, `\x%02x`, c)
		}
	}
	return out.String()
}

const written = `
%PDF-1.3
3 0 obj
<</Type /Page
/Parent 1 0 R
/Resources 2 0 R
/Contents 4 0 R>>
endobj
4 0 obj
<</Length 62>>
stream
0 J
1 j
0.57 w
0.000 G
0.000 g
28.35 113.39 56.69 -56.69 re f

endstream
endobj
1 0 obj
<</Type /Pages
/Kids [3 0 R ]
/Count 1
/MediaBox [0 0 283.46 141.73]
>>
endobj
2 0 obj
<<
/ProcSet [/PDF /Text /ImageB /ImageC /ImageI]
/Font <<
>>
/XObject <<
>>
/ColorSpace <<
>>
>>
endobj
5 0 obj
<</Title (\xfe\xff\x00P)
/Parent 6 0 R
/Dest [3 0 R /XYZ 0 141.73 null]
/Count 0>>
endobj
6 0 obj
<</Type /Outlines /First 5 0 R
/Last 5 0 R>>
endobj
7 0 obj
<<
/Producer (\xfe\xff\x00F\x00P\x00D\x00F\x00 \x001\x00.\x007)
/Title (\xfe\xff\x00T)
/Subject (\xfe\xff\x00S)
/Author (\xfe\xff\x00A)
/Creator (\xfe\xff\x00G\x00a\x00t\x00e\x00p\x00o\x00s\x00t)
/CreationDate (D:20270104000000)
/ModDate (D:20270104000000)
>>
endobj
8 0 obj
<<
/Type /Catalog
/Pages 1 0 R
/Outlines 6 0 R
/PageMode /UseOutlines
/Names <<
/EmbeddedFiles << /Names [
  
] >>
>>
>>
endobj
xref
0 9
0000000000 65535 f 
0000000197 00000 n 
0000000284 00000 n 
0000000009 00000 n 
0000000087 00000 n 
0000000396 00000 n 
0000000485 00000 n 
0000000545 00000 n 
0000000733 00000 n 
trailer
<<
/Size 9
/Root 8 0 R
/Info 7 0 R
>>
startxref
869
%%EOF
`

// Each part that finish needs and does not find is an error, or is left as it is: never a
// file that only looks whole.
func TestFinishWithoutItsAnchors(t *testing.T) {
	objects := []string{"1 0 obj\n<</Length 3>>\nstream\nq Q\nendstream\nendobj\n", "2 0 obj\n<<\n/Font <<\n>>\n>>\nendobj\n", "3 0 obj\n<<\n/Type /Catalog\n>>\nendobj\n"}
	whole, table := "%PDF-1.3\n", "xref\n0 4\n0000000000 65535 f \n"
	for _, object := range objects {
		table += fmt.Sprintf("%010d 00000 n \n", len(whole))
		whole += object
	}
	whole += table + "trailer\n<<\n/Size 4\n/Root 3 0 R\n>>\nstartxref\n0\n%%EOF\n"
	out, err := finish([]byte(whole), "en", nil, nil, nil)
	for _, want := range []string{"/Type /Catalog\n/Lang (en)\n/ViewerPreferences << /DisplayDocTitle true >>", "/Filter /FlateDecode", "\n/Root 3 0 R", "/ID [<"} {
		if err != nil || !bytes.Contains(out, []byte(want)) {
			t.Errorf("%v: no %q in\n%s", err, want, out)
		}
	}
	for _, lost := range []string{"xref\n0 ", " 65535 f", "trailer", " n \n", "2 0 obj\n", "/Font <<\n", "/Type /Catalog"} {
		if out, err := finish([]byte(strings.ReplaceAll(whole, lost, "")), "en", nil, nil, nil); err == nil {
			t.Errorf("without %q there is a file:\n%s", lost, out)
		}
	}
	two := [][]byte{[]byte("n\n"), []byte("n\n")}
	if out, err := finish([]byte(whole), "en", nil, nil, two); err == nil {
		t.Errorf("of two pages the writer has one, and there is a file:\n%s", out)
	}
}
