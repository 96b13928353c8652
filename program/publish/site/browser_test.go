package site_test

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// browser runs Chromium, where there is one, without a window and without the
// network, and gives what it prints.
func browser(t *testing.T, args ...string) string {
	t.Helper()
	program, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			t.Fatal("chromium is required here and missing")
		}
		t.Skip("left out: what a browser shows (chromium)")
	}
	args = append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking",
		"--hide-scrollbars", "--user-data-dir=" + t.TempDir()}, args...)
	out, err := exec.Command(program, args...).Output()
	if err != nil {
		t.Fatalf("chromium: %v", err)
	}
	return string(out)
}

// measure opens each page in a frame 320 px wide and writes down, for each, how
// wide it came out, the least target and whether the stylesheet was applied.
// Links within a sentence are no targets of their own (WCAG 2.2, success
// criterion 2.5.8, names the exception); 44 px is that of 2.5.5.
const measure = `<!doctype html><title>measure</title><iframe width=320 height=640></iframe><pre></pre><script>
const frame = document.querySelector("iframe"), out = document.querySelector("pre"), pages = %q.split(" ");
function next() {
  const page = pages.shift();
  if (!page) return;
  frame.onload = () => {
    const doc = frame.contentDocument, low = [];
    for (const a of doc.querySelectorAll("a:not(.skip)")) {
      const box = a.getBoundingClientRect(), style = frame.contentWindow.getComputedStyle(a);
      if (a.getClientRects().length && style.display != "inline" && (box.height < 44 || box.width < 44)) low.push(a.textContent.trim());
    }
    const styled = frame.contentWindow.getComputedStyle(doc.body).marginTop == "0px";
    out.append(page + " | " + doc.documentElement.scrollWidth + " | " + styled + " | " + low.join(", ") + " |\n");
    next();
  };
  frame.src = page;
}
next();
</script>`

func TestOnANarrowPhone(t *testing.T) {
	files := fixtureSite(t)
	dir := written(t, files)
	pages := "index.html roadmaps.html page-measure.html exercises.html exercise-planche-lean.html roadmap-planche.html" +
		" programs.html program-open-hours.html find-open-hours.html level-open-hours-1.html level-open-hours-1-week-5.html" +
		" level-open-hours-1-week-5-day-1.html c/k7f3q9w2m4/index.html c/k7f3q9w2m4/week-1.html c/k7f3q9w2m4/week-12.html" +
		" c/k7f3q9w2m4/day-2027-01-11.html c/k7f3q9w2m4/exercises.html c/k7f3q9w2m4/phone.html"
	narrow(t, dir, pages)
}

// narrow opens pages 320 px wide.
func narrow(t *testing.T, dir, pages string) {
	t.Helper()
	mux := http.NewServeMux()
	mux.Handle("/", http.FileServer(http.Dir(dir)))
	mux.HandleFunc("/measure", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		fmt.Fprintf(w, measure, pages)
	})
	server := httptest.NewServer(mux)
	defer server.Close()
	dom := browser(t, "--virtual-time-budget=20000", "--dump-dom", server.URL+"/measure")
	rows := regexp.MustCompile(`([a-z0-9/-]+\.html) \| (\d+) \| (\w+) \| (.*) \|`).FindAllStringSubmatch(dom, -1)
	if len(rows) != len(strings.Fields(pages)) {
		t.Fatalf("%d pages measured, want %d:\n%s", len(rows), len(strings.Fields(pages)), dom)
	}
	for _, row := range rows {
		if row[2] != "320" || row[3] != "true" {
			t.Errorf("%s: %s px wide in a frame of 320; stylesheet applied: %s", row[1], row[2], row[3])
		}
		if strings.HasPrefix(row[1], "c/") && row[4] != "" {
			t.Errorf("%s: targets smaller than 44 px: %s", row[1], row[4])
		}
	}
}

// The pages of the printed programs and sessions are counted by poppler's pdfinfo. They
// are opened as from a file manager. The sessions are the longest of each number of
// exercises, of all levels and clients.
func TestPrintsOnFewSheets(t *testing.T) {
	if _, err := exec.LookPath("pdfinfo"); err != nil {
		t.Skip("left out: the printed program (pdfinfo)")
	}
	files := demoSite(t)
	dir, longest := written(t, files), map[int]string{}
	for path, text := range files {
		n := strings.Count(text, "<h2")
		if path = strings.TrimPrefix(path, "site/"); strings.Contains(path, "day-") && strings.HasSuffix(path, ".html") && len(text) > len(files["site/"+longest[n]]) {
			longest[n] = path
		}
	}
	sheets := map[string]string{"c/k7v2qm9xw4tdhz3p/index.html": "[12]", "level-ropes-and-bands-1.html": "[12]"}
	for _, path := range longest {
		sheets[path] = "1"
	}
	for page, most := range sheets {
		pdf := filepath.Join(t.TempDir(), "program.pdf")
		browser(t, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+filepath.Join(dir, page))
		out, err := exec.Command("pdfinfo", pdf).Output()
		if err != nil {
			t.Fatal(err)
		}
		if !regexp.MustCompile(`(?m)^Pages:\s+` + most + `$`).Match(out) {
			t.Errorf("%s: want %s pages:\n%s", page, most, out)
		}
	}
}
