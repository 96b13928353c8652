package paper

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// tool runs an outside checker on a PDF. Where the checker is not installed, the
// test is left out, unless GATEPOST_REQUIRE_TOOLS is 1.
func tool(t *testing.T, pdf []byte, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			t.Fatalf("%s is required and not here", name)
		}
		t.Skipf("left out: %s is not here to check the PDF", name)
	}
	file := filepath.Join(t.TempDir(), "paper.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, arg := range args {
		args[i] = strings.ReplaceAll(arg, "FILE", file)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

// documents is every kind of document, of a client with letters from everywhere.
func documents(t *testing.T) map[string][]byte {
	t.Helper()
	p := viewtest.Program()
	p.Client.Name = "Nguyễn Łucja Ωμέγα Жанна"
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	p.Withheld, p.Weeks = []program.Note{{Code: viewtest.FixtureNote, Values: []program.Value{
		{Name: "exercise", Text: "planche"}, {Name: "minutes", Text: "5"}}}}, nil
	withheld, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	docs := map[string][]byte{}
	docs["wall-chart"], _ = WallChart(v)
	docs["one-page"], _ = OnePage(v)
	docs["letter"], _ = OnePage(withheld)
	docs["test-sheet"], _ = TestSheet(viewtest.Coach(), viewtest.Library(), "", shown(t))
	return docs
}

func TestPDFsAreSound(t *testing.T) {
	for name, pdf := range documents(t) {
		t.Run(name, func(t *testing.T) {
			if out := tool(t, pdf, "qpdf", "--check", "FILE"); strings.Contains(out, "WARNING") {
				t.Error(out)
			}
		})
	}
}

// Every face embedded, with a map back to Unicode, says pdffonts.
func TestFontsAreEmbedded(t *testing.T) {
	for name, pdf := range documents(t) {
		t.Run(name, func(t *testing.T) {
			rows := strings.Split(strings.TrimSpace(tool(t, pdf, "pdffonts", "FILE")), "\n")[2:]
			if len(rows) == 0 {
				t.Fatal("no fonts")
			}
			for _, row := range rows {
				if !regexp.MustCompile(`yes\s+(yes|no)\s+yes\s+\d+`).MatchString(row) {
					t.Error(row)
				}
			}
		})
	}
}

// Sizes as ISO 216 gives them, A4 210 × 297 and A3 297 × 420 mm, within the
// 0.5 mm that a point's rounding may cost; Letter and Tabloid by ANSI/ASME Y14.1.
func TestPageSizes(t *testing.T) {
	docs := documents(t)
	letter := viewtest.Coach()
	letter.Paper = program.PaperLetter
	v, _ := view.New(letter, viewtest.Library(), viewtest.Program())
	docs["letter-chart"], _ = WallChart(v)
	docs["letter-page"], _ = OnePage(v)
	for name, want := range map[string][][2]float64{
		"wall-chart": {{420, 297}, {297, 210}}, "one-page": {{210, 297}}, "letter": {{210, 297}}, "test-sheet": {{210, 297}, {210, 297}},
		"letter-chart": {{17 * 25.4, 11 * 25.4}, {11 * 25.4, 8.5 * 25.4}}, "letter-page": {{8.5 * 25.4, 11 * 25.4}},
	} {
		t.Run(name, func(t *testing.T) {
			out := tool(t, docs[name], "pdfinfo", "-f", "1", "-l", "9", "FILE")
			sizes := regexp.MustCompile(`Page +\d+ size: +([\d.]+) x ([\d.]+) pts`).FindAllStringSubmatch(out, -1)
			if len(sizes) != len(want) {
				t.Fatalf("%d pages, want %d", len(sizes), len(want))
			}
			for i, size := range sizes {
				var w, h float64
				fmt.Sscan(size[1], &w)
				fmt.Sscan(size[2], &h)
				if math.Abs(w*mmPerPoint-want[i][0]) > 0.5 || math.Abs(h*mmPerPoint-want[i][1]) > 0.5 {
					t.Errorf("page %d is %s, want %v mm", i+1, size[0], want[i])
				}
			}
		})
	}
}

// What a reader takes out of the file is what the view said.
func TestTextComesOut(t *testing.T) {
	docs := documents(t)
	for name, wants := range map[string][]string{
		"wall-chart": {"Nguyễn Łucja Ωμέγα Жанна", "Straddle for 10 s by 30 November 2027", "6.5 kg", "narrow +", "strap 20 cm",
			"open tuck: 3 × 12 s free", "Push the floor", "Deload", "Provisional until the check hold."},
		"one-page": {"Nguyễn Łucja Ωμέγα Жанна", "4 × 12 s", "narrow + middle, strap 20 cm", "August 2027", "May 2029",
			"last set at RPE 9 or less", "75 %", "tilda@lantern.example.org", "This is training guidance and not medical advice"},
		"letter":     {"No room for the planche in 5 minutes."},
		"test-sheet": {"Balance point", "Held, s", "Rest, cm"},
	} {
		t.Run(name, func(t *testing.T) {
			out := strings.Join(strings.Fields(strings.ReplaceAll(tool(t, docs[name], "pdftotext", "-layout", "FILE", "-"), "\u00a0", " ")), " ")
			for _, want := range wants {
				if !strings.Contains(out, want) {
					t.Errorf("does not say %q", want)
				}
			}
			for _, private := range []string{"N·m", "58 kg", "1991"} {
				if strings.Contains(out, private) {
					t.Errorf("says %q", private)
				}
			}
		})
	}
}

// The document says its title, author, date and language.
func TestDocumentManners(t *testing.T) {
	pdf := documents(t)["one-page"]
	if !bytes.Contains(pdf, []byte("/Lang (en)")) || !bytes.Contains(pdf, []byte("/DisplayDocTitle true")) {
		t.Error("no language, or no title shown")
	}
	out := tool(t, pdf, "pdfinfo", "-isodates", "FILE")
	for _, want := range []string{"Title:           Planche program for Nguyễn", "Author:          Tilda Roake", "CreationDate:    2027-01-04T00:00:00Z"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

// The same bytes each time, and when many are made at once.
func TestSameBytes(t *testing.T) {
	v := fixture(t)
	chart, _ := WallChart(v)
	page, _ := OnePage(v)
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			again, _ := WallChart(v)
			other, _ := OnePage(v)
			if !bytes.Equal(chart, again) || !bytes.Equal(page, other) {
				t.Error("two runs differ")
			}
		})
	}
	group.Wait()
}

func TestUnprintableLettersWarn(t *testing.T) {
	p, coach := viewtest.Program(), viewtest.Coach()
	p.Client.Name, coach.Studio = "Maren \U0001F514", "漢 Hall"
	v, _ := view.New(coach, viewtest.Library(), p)
	pdf, problems := OnePage(v)
	if pdf == nil || len(problems) != 2 || problems.Stop() ||
		problems[0].File != "content/studio.yaml" || problems[1].File != "content/clients/maren/assessment.yaml" {
		t.Errorf("got %v", problems)
	}
}

// A character that cannot be printed is named with the line it is written on.
func TestUnprintableLettersHaveTheirLine(t *testing.T) {
	studio := demo(t)
	client := studio.Clients[slices.IndexFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == "maren" })]
	client.Athlete.Name, client.Bands = "Maren \U0001F514", slices.Clone(client.Bands)
	client.Bands[0].Name = "narrow \u2603\U0001F9E3"
	client.Places = program.Places{
		"name":          {File: "a.yaml", Line: 1, Column: 7, Text: "name: Maren \U0001F514"},
		"bands[0]":      {File: "a.yaml", Line: 25, Column: 5, Text: "  - {name: narrow \u2603\U0001F9E3, rest: 100 cm}"},
		"bands[0].name": {File: "a.yaml", Line: 25, Column: 12, Text: "  - {name: narrow \u2603\U0001F9E3, rest: 100 cm}"},
	}
	v := viewOf(t, studio.Coach, &client)
	v.Places = client.Places
	for what, printed := range map[string]func() ([]byte, program.Problems){
		"chart": func() ([]byte, program.Problems) { return WallChart(v) }, "page": func() ([]byte, program.Problems) { return OnePage(v) },
		"cards": func() ([]byte, program.Problems) { return Cards(v, false) }, "coach": func() ([]byte, program.Problems) { return CoachPage(v) },
	} {
		_, problems := printed()
		lines := []int{}
		for _, p := range problems {
			lines = append(lines, p.Line)
		}
		if !slices.Equal(lines, []int{1, 25}) {
			t.Errorf("%s: %v", what, problems)
		}
	}
}

func TestWithheldHasNoChart(t *testing.T) {
	p := viewtest.Program()
	p.Withheld, p.Weeks = []program.Note{{Code: viewtest.FixtureNote}}, nil
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	if pdf, problems := WallChart(v); pdf != nil || problems != nil {
		t.Error("a chart of no weeks")
	}
}

// Contrast by the formula of WCAG 2.2, at least 4.5 : 1 for text.
func TestContrast(t *testing.T) {
	for _, pair := range [][2]Tone{{Ink, Paper}, {Quiet, Paper}, {Accent, Paper}, {Ink, Tint}, {Quiet, Tint}, {Accent, Tint}, {Paper, Ink}} {
		if c := contrast(shades[pair[0]], shades[pair[1]]); c < 4.5 {
			t.Errorf("tone %d on %d: %.1f", pair[0], pair[1], c)
		}
	}
}

func contrast(a, b [3]int) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func luminance(rgb [3]int) float64 {
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		c := float64(rgb[i]) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}

func BenchmarkOnePage(b *testing.B) {
	v := fixture(b)
	for b.Loop() {
		OnePage(v)
	}
}

func BenchmarkWallChart(b *testing.B) {
	v := fixture(b)
	for b.Loop() {
		WallChart(v)
	}
}

// Every page of every document says whose it is, which of how many it is, and
// which version; every document has a bookmark, a language and a subject.
func TestEveryDocumentSaysWhatItIs(t *testing.T) {
	v := fixture(t)
	docs := documents(t)
	docs["coach-page"], _ = CoachPage(v)
	for name, pages := range map[string]int{"wall-chart": 2, "one-page": 1, "coach-page": 2, "letter": 1, "test-sheet": 2} {
		t.Run(name, func(t *testing.T) {
			info := tool(t, docs[name], "pdfinfo", "FILE")
			for _, want := range []string{"Title: ", "Subject: ", "Author: "} {
				if !regexp.MustCompile(want + ` *\S`).MatchString(info) {
					t.Errorf("no %sin\n%s", want, info)
				}
			}
			if !bytes.Contains(docs[name], []byte("/Outlines")) || !bytes.Contains(docs[name], []byte("/Lang (en)")) {
				t.Error("no bookmarks or no language")
			}
			for page := 1; page <= pages; page++ {
				n := fmt.Sprint(page)
				text := strings.ReplaceAll(tool(t, docs[name], "pdftotext", "-f", n, "-l", n, "FILE", "-"), "\u00a0", " ")
				if want := fmt.Sprintf("Page %d of %d", page, pages); !strings.Contains(text, want) {
					t.Errorf("page %d does not say %q", page, want)
				}
				if name != "test-sheet" && !strings.Contains(text, "Version ") {
					t.Errorf("page %d has no version", page)
				}
			}
		})
	}
}
