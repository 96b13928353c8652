package preview

import (
	"bufio"
	"context"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
)

const plain = `<meta content="default-src 'none'; style-src 'self'"><title>x</title></head>good`

// started is a preview that serves until the test ends, and its address.
func started(t *testing.T) (*Preview, string) {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	p := &Preview{}
	p.Show(map[string][]byte{"index.html": []byte(plain), "style.css": []byte("body{}")}, map[string]Folder{
		"c/abc": func() (map[string][]byte, string) {
			return map[string][]byte{"c/abc/index.html": []byte("<head></head>client"), "c/abc/calendar.ics": []byte("BEGIN:VCALENDAR")}, ""
		},
		"c/bad": func() (map[string][]byte, string) { return nil, "bad.yaml:1:1: nothing comes of this" }})
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error)
	go func() { ended <- p.Serve(ctx, l) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Errorf("did not end cleanly: %v", err)
		}
	})
	return p, "http://" + l.Addr().String()
}

func get(t *testing.T, address string) (int, string, http.Header) {
	t.Helper()
	answer, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	return answer.StatusCode, string(body), answer.Header
}

func TestPagesWatch(t *testing.T) {
	_, at := started(t)
	code, body, header := get(t, at+"/")
	want := `<meta content="default-src 'none'; connect-src 'self'; script-src 'self'; style-src 'self'"><title>x</title>` +
		`<script src="/.preview/reload.js" defer></script>` + "\n</head>good"
	if code != 200 || body != want || header.Get("Content-Type") != "text/html; charset=utf-8" || header.Get("Cache-Control") != "no-store" {
		t.Errorf("%d %v\n%s", code, header, body)
	}
	for path, kind := range map[string]string{
		"/c/abc/":               "text/html; charset=utf-8",
		"/c/abc/calendar.ics":   "text/calendar; charset=utf-8",
		"/style.css":            "text/css; charset=utf-8",
		"/.preview/reload.js":   "text/javascript; charset=utf-8",
		"/c/../style.css":       "text/css; charset=utf-8",
		"/../../etc/passwd":     "",
		"/nothing":              "",
		"/c/abc/../../../x":     "",
		"/index.html?last-good": "text/html; charset=utf-8",
	} {
		code, _, header := get(t, at+path)
		if found := code == 200; found != (kind != "") || found && header.Get("Content-Type") != kind {
			t.Errorf("%s: %d %s", path, code, header.Get("Content-Type"))
		}
	}
}

// A policy that lets the page's own scripts in keeps them.
func TestPolicyOfAPageWithScripts(t *testing.T) {
	got := string(watching([]byte(`content="default-src 'none'; style-src 'self'; script-src 'sha256-x'; img-src 'self'"`)))
	if want := `content="default-src 'none'; connect-src 'self'; style-src 'self'; script-src 'self' 'sha256-x'; img-src 'self'"`; got != want {
		t.Errorf("got %s", got)
	}
}

func TestProblemsStandBeforeTheLastGoodPage(t *testing.T) {
	p, at := started(t)
	p.ShowProblems(`a.yaml:1:1: <script>alert(1)</script>`)
	code, body, _ := get(t, at+"/")
	if code != http.StatusServiceUnavailable || !strings.Contains(body, "a.yaml:1:1: &lt;script&gt;") || !strings.Contains(body, `<a href="?last-good">`) {
		t.Errorf("%d\n%s", code, body)
	}
	if code, body, _ := get(t, at+"/?last-good"); code != 200 || !strings.HasSuffix(body, "good") {
		t.Errorf("last good: %d\n%s", code, body)
	}
	if code, body, _ := get(t, at+"/new.html"); code != http.StatusServiceUnavailable || strings.Contains(body, "last-good") {
		t.Errorf("a page that never was: %d\n%s", code, body)
	}
	p.Show(map[string][]byte{"index.html": []byte("mended")}, nil)
	if code, body, _ := get(t, at+"/"); code != 200 || body != "mended" {
		t.Errorf("mended: %d\n%s", code, body)
	}
}

// What is wrong with a page that is made when it is looked at is said there, and nowhere
// else.
func TestProblemsOfAPageThatIsMadeLater(t *testing.T) {
	p, at := started(t)
	if code, body, _ := get(t, at+"/c/bad/"); code != http.StatusServiceUnavailable || !strings.Contains(body, "bad.yaml:1:1: nothing comes of this") {
		t.Errorf("%d\n%s", code, body)
	}
	if code, _, _ := get(t, at+"/"); code != 200 {
		t.Errorf("home: %d", code)
	}
	if pages := p.Pages(); len(pages) != 2 || pages[0] != "c/abc/" || pages[1] != "c/bad/" {
		t.Errorf("pages %q", pages)
	}
}

// The form of events is that of the HTML standard, 9.2.6.
func TestChangesAreTold(t *testing.T) {
	p, at := started(t)
	answer, err := http.Get(at + eventsPath)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	if kind := answer.Header.Get("Content-Type"); kind != "text/event-stream" {
		t.Errorf("content type %s", kind)
	}
	lines := bufio.NewScanner(answer.Body)
	next := func() string { lines.Scan(); return lines.Text() }
	if got := next() + "|" + next(); got != ": here|" {
		t.Errorf("begins with %q", got)
	}
	for range 3 {
		p.Show(map[string][]byte{}, nil)
		if got := next() + "|" + next() + "|" + next(); got != "event: change|data:|" {
			t.Errorf("got %q", got)
		}
	}
}

// A worker would keep a page and hide the next edit of it.
func TestNoWorker(t *testing.T) {
	p, at := started(t)
	p.Show(map[string][]byte{"c/abc/worker.js": []byte("0")}, nil)
	request, _ := http.NewRequest(http.MethodGet, at+"/c/abc/worker.js", nil)
	request.Header.Set("Service-Worker", "script") // Service Workers, W3C, 4.1
	answer, err := http.DefaultClient.Do(request)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != 404 {
		t.Errorf("a worker is answered with %d", answer.StatusCode)
	}
}

// A page elsewhere can give its own name the address 127.0.0.1; requests that
// come that way carry its name.
func TestOnlyThisMachine(t *testing.T) {
	p, at := started(t)
	for host, want := range map[string]int{
		"evil.example.org": 403, "evil.example.org:4170": 403, "192.0.2.1": 403, "localhost.example.org": 403,
		"localhost:4170": 200, "127.0.0.1": 200, "127.8.8.8:1": 200, "[::1]:4170": 200,
	} {
		if got := status(t, at, host, http.MethodGet); got != want {
			t.Errorf("%s: %d, want %d", host, got, want)
		}
	}
	if got := status(t, at, "localhost", http.MethodPost); got != http.StatusMethodNotAllowed {
		t.Errorf("POST: %d", got)
	}
	p.Open = true
	if got := status(t, at, "hall.example.org", http.MethodGet); got != 200 {
		t.Errorf("open, but: %d", got)
	}
}

func status(t *testing.T, at, host, method string) int {
	t.Helper()
	r, err := http.NewRequest(method, at+"/", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Host = host
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	return answer.StatusCode
}
