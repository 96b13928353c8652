package paper

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// raster is a page as poppler prints it in greys.
type raster struct {
	w, h int
	pix  []byte  // 0 black to 255 white
	mm   float64 // of a pixel
}

func (r *raster) at(x, y int) byte { return r.pix[y*r.w+x] }

// cell is the pixel that holds a spot of the page.
func (r *raster) cell(x, y float64) (int, int) { return int(x / r.mm), int(y / r.mm) }

// rasters prints all pages of a PDF in greys.
func rasters(t *testing.T, pdf []byte, dpi int) []*raster {
	t.Helper()
	tool(t, pdf, "pdfinfo", "FILE") // poppler is here, or the test is left out
	folder := t.TempDir()
	file := filepath.Join(folder, "paper.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-r", fmt.Sprint(dpi), "-gray", file, filepath.Join(folder, "page")).CombinedOutput(); err != nil {
		t.Fatalf("%v %s", err, out)
	}
	names, _ := filepath.Glob(filepath.Join(folder, "page*.pgm"))
	var all []*raster
	for _, name := range names {
		data, _ := os.ReadFile(name)
		r, most := &raster{mm: 25.4 / float64(dpi)}, 0
		if _, err := fmt.Fscanf(bytes.NewReader(data), "P5\n%d %d\n%d\n", &r.w, &r.h, &most); err != nil || most != 255 {
			t.Fatalf("%s: %v", name, err)
		}
		r.pix = data[len(data)-r.w*r.h:]
		all = append(all, r)
	}
	return all
}

// Office printers leave 5 mm white: at 100 dots an inch nothing but white is
// there, less the pixel that the line of 5 mm falls into.
func TestNothingIsPrintedInTheFreeEdge(t *testing.T) {
	docs := documents(t)
	v := demoView(t, "maren")
	docs["coach-page"], _ = CoachPage(v)
	docs["demo-chart"], _ = WallChart(v)
	docs["cards"], _ = Cards(v, false)
	for name, pdf := range docs {
		t.Run(name, func(t *testing.T) {
			for n, r := range rasters(t, pdf, 100) {
				edge := int(freeEdge/r.mm) - 1
				inked := 0
				for y := range r.h {
					for x := range r.w {
						free := x < edge || y < edge || x >= r.w-edge || y >= r.h-edge
						if r.at(x, y) == 255 {
							continue
						}
						inked++
						if free {
							t.Fatalf("page %d: ink at %.1f, %.1f mm", n+1, float64(x)*r.mm, float64(y)*r.mm)
						}
					}
				}
				if inked < r.w*r.h/200 {
					t.Errorf("page %d is nearly empty", n+1)
				}
			}
		})
	}
}

// In greys the kinds of weeks are told apart by pattern: over a build week the
// strip is white, over a deload it changes between dark and light, over a test it
// is dark throughout. A strip that a copier makes all one tone would fail.
func TestWeeksDifferInGrey(t *testing.T) {
	v := fixture(t)
	pdf, _ := WallChart(v)
	for n, r := range rasters(t, pdf, 100) {
		_, wall := sheets(v.Coach.Paper)
		sheet := []Sheet{wall, A4}[n]
		page := layChart(setter(), v, sheet)
		for _, m := range page.Marks {
			switch m := m.(type) {
			case Hatch:
				if dark, changes := r.scan(m.Box); changes < 6 || dark < 0.1 || dark > 0.7 {
					t.Errorf("page %d: a deload's strip is %.0f %% dark with %d changes", n+1, 100*dark, changes)
				}
				build := m.Box // the week before
				build.X -= build.W
				if dark, changes := r.scan(build); dark > 0.02 || changes > 0 {
					t.Errorf("page %d: a build week's strip is %.0f %% dark with %d changes", n+1, 100*dark, changes)
				}
			case Fill:
				if m.Tone == Ink && m.H > 4 {
					below := Box{m.X, m.Bottom() - 1, m.W, 0.8} // under the words
					if dark, changes := r.scan(below); dark < 0.98 || changes > 0 {
						t.Errorf("page %d: a test's strip is %.0f %% dark with %d changes", n+1, 100*dark, changes)
					}
				}
			}
		}
	}
}

// scan goes along the right half of a strip, where no words are: the share that
// is dark, and the changes between dark and light, in the row that has most.
func (r *raster) scan(b Box) (dark float64, changes int) {
	x0, y0 := r.cell(b.X+0.55*b.W, b.Y+0.2*b.H)
	x1, y1 := r.cell(b.Right()-1, b.Bottom()-0.2*b.H)
	count, all := 0, 0
	for y := y0; y <= y1; y++ {
		turns := 0
		for x := x0; x <= x1; x++ {
			is := r.at(x, y) < 128
			all++
			if is {
				count++
			}
			if x > x0 && is != (r.at(x-1, y) < 128) {
				turns++
			}
		}
		changes = max(changes, turns)
	}
	return float64(count) / float64(all), changes
}

// The studio's own inks are what is printed, in place of the built-in ones, says
// qpdf of the page's colour operators.
func TestStudioInksArePrinted(t *testing.T) {
	v := fixture(t)
	plain, _ := OnePage(v)
	v.Coach.Inks.Dark, v.Coach.Inks.Accent = "#102040", "#1b4f8c"
	own, _ := OnePage(v)
	colours := func(pdf []byte) string { return tool(t, pdf, "qpdf", "--qdf", "--object-streams=disable", "FILE", "-") }
	for _, c := range []struct{ own, plain string }{
		{"0.063 0.125 0.251 rg", "0.11 0.122 0.141 rg"}, {"0.106 0.31 0.549 rg", "0.69 0.212 0.094 rg"},
	} {
		if text := colours(own); !strings.Contains(text, c.own) || strings.Contains(text, c.plain) {
			t.Errorf("%s is not in place of %s", c.own, c.plain)
		}
		if !strings.Contains(colours(plain), c.plain) {
			t.Errorf("without inks, no %s", c.plain)
		}
	}
}
