package paper

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
	"gatepost/templates"
)

// BenchmarkPaperBesideBrowser is one client's one-page plan from here, and the same
// client's program page of the website printed by chromium, where it is installed:
// each from the finished View or file to the bytes of a PDF.
func BenchmarkPaperBesideBrowser(b *testing.B) {
	v := demoView(b, "maren")
	b.Run("here", func(b *testing.B) {
		for b.Loop() {
			OnePage(v)
		}
	})
	b.Run("chromium", func(b *testing.B) {
		chromium, err := exec.LookPath("chromium")
		if err != nil {
			b.Skip("left out: chromium is not here to compare with")
		}
		page, folder := sitePage(b, v), b.TempDir()
		for b.Loop() {
			out := filepath.Join(folder, "page.pdf")
			command := exec.Command(chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking",
				"--user-data-dir="+b.TempDir(), "--print-to-pdf="+out, "file://"+page)
			if err := command.Run(); err != nil {
				b.Fatal(err)
			}
			if pdf, _ := os.ReadFile(out); !strings.HasPrefix(string(pdf), "%PDF-") {
				b.Fatal("chromium printed nothing")
			}
		}
	})
}

// sitePage writes the website of one client and says where the program's page is.
func sitePage(b *testing.B, v *view.View) string {
	b.Helper()
	studio, dir := demo(b), b.TempDir()
	files, _ := site.Build(site.Source{Coach: studio.Coach, Library: &studio.Library, Templates: []fs.FS{templates.FS},
		Clients: []*view.View{v}})
	page := ""
	for _, f := range files {
		name := filepath.Join(dir, f.Path)
		os.MkdirAll(filepath.Dir(name), 0o755)
		if err := os.WriteFile(name, f.Bytes, 0o600); err != nil {
			b.Fatal(err)
		}
		if strings.HasSuffix(f.Path, v.Page+"/index.html") {
			page = name
		}
	}
	if page == "" {
		b.Fatal("the site has no page of the program")
	}
	return page
}
