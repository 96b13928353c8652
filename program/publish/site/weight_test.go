package site_test

import (
	"bytes"
	"compress/gzip"
	"io"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// paintLimit is what a page may have, compressed as web hosts do, before anything is seen:
// half a second at 400 kbit/s. Of the 2.5 s that a largest paint may take (published: Core
// Web Vitals, "good") that leaves two for a slow processor and the ways there and back.
const paintLimit = 25_000

// Before the first paint a browser waits for the page and one stylesheet, and for nothing
// else: scripts and the print's look come at the end of the page, and pictures in lists
// once they are in sight.
func TestWhatIsWaitedForIsSmall(t *testing.T) {
	files := demoSite(t)
	look := compressed(t, files["site/style.css"])
	for path, text := range files {
		if !isPage(path) {
			continue
		}
		if n := compressed(t, text) + look; n > paintLimit {
			t.Errorf("%s: %d bytes before anything is seen", path, n)
		}
		head, body, _ := strings.Cut(text, "<body>")
		for _, n := range elements(parse(t, head)) {
			script := n.Data == "script" && attr(n, "type") != "application/ld+json"
			if second := n.Data == "link" && attr(n, "rel") == "stylesheet" && !strings.HasSuffix(attr(n, "href"), "style.css"); script || second {
				t.Errorf("%s: the head asks for %v", path, n.Attr)
			}
		}
		eager := 0
		for _, n := range elements(parse(t, body)) {
			if isEager(n) {
				eager++
			}
		}
		if eager > 3 { // whose site it is, and the start and end of what the page is about
			t.Errorf("%s: %d pictures are not waited for until they are in sight", path, eager)
		}
	}
}

func isEager(n *html.Node) bool { return n.Data == "img" && attr(n, "loading") != "lazy" }

func compressed(t *testing.T, text string) int {
	t.Helper()
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	if _, err := io.WriteString(w, text); err != nil || w.Close() != nil {
		t.Fatal("cannot compress")
	}
	return out.Len()
}
