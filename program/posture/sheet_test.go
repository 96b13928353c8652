package posture_test

import (
	"crypto/rand"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/intake"
	"gatepost/program/posture"
)

var (
	sheet = flag.String("sheet", "", "a folder to write a contact sheet of the drawings to")
	only  = flag.String("only", "", "the exercises on the sheet, by a pattern of their ids")
)

var repo = sync.OnceValues(func() (program.Studio, program.Problems) {
	root := os.DirFS("../..")
	return intake.Read(root, root, rand.Reader)
})

func library(t testing.TB) *program.Library {
	t.Helper()
	studio, problems := repo()
	if problems.Stop() {
		t.Fatal("the repository's own content does not read: ", problems)
	}
	return &studio.Library
}

// TestSheet writes a page of all drawings, and with chromium a picture of it:
//
//	go test ./program/posture -run Sheet -sheet /tmp/sheet -only 'row|curl'
func TestSheet(t *testing.T) {
	if *sheet == "" {
		t.Skip("left out: no -sheet folder")
	}
	lib := library(t)
	pictures := posture.NewAlbum(lib)
	for _, p := range pictures.Problems() {
		fmt.Println(p)
	}
	wanted := regexp.MustCompile(*only)
	var page strings.Builder
	page.WriteString(`<meta charset="utf-8"><style>body{margin:8px;font:13px sans-serif;display:grid;grid-template-columns:repeat(4,1fr);gap:6px}
div{border:1px solid #bbb;padding:4px}span{display:flex;gap:6px;justify-content:center;align-items:end}
.fig{max-height:170px;max-width:180px}.fig-near{fill:#1b2b34;stroke-linejoin:round}.fig-far{fill:#1b2b34}.fig-accent{color:#b3471f}</style>`)
	n := 0
	for i := range lib.Exercises {
		e := &lib.Exercises[i]
		if !wanted.MatchString(e.ID) || *only == "" && len(e.Figures) == 0 {
			continue
		}
		n++
		fmt.Fprintf(&page, "<div><b>%s</b><span>", e.ID)
		for k, d := range figure.Frames(pictures.Of(e.ID), figure.Options{Headroom: .5}) {
			page.Write(figure.SVG(d, e.Name, "", figure.SVGOptions{Prefix: fmt.Sprint(e.ID, k), Scale: 500}))
		}
		page.WriteString("</span></div>\n")
	}
	file := filepath.Join(*sheet, "sheet.html")
	if err := os.MkdirAll(*sheet, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(page.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		t.Log("no chromium: open ", file)
		return
	}
	size := fmt.Sprintf("--window-size=1500,%d", 20+210*((n+3)/4))
	shot := filepath.Join(*sheet, "sheet.png")
	if out, err := exec.Command(chromium, "--headless", "--no-sandbox", "--hide-scrollbars", "--screenshot="+shot, size, "file://"+file).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	t.Log(shot)
}
