package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A whole preview: it is started, a file is broken and mended, it is ended.
func TestPreview(t *testing.T) {
	t.Parallel()
	dir := copyOfDemo(t, oneProgram)
	out, in := io.Pipe()
	ctx, interrupt := context.WithCancel(t.Context())
	var messages bytes.Buffer
	ended := make(chan int)
	go func() {
		ended <- run([]string{"preview", "--folder", dir, "--listen", "127.0.0.1:0"},
			surroundings{out: in, err: &messages, builtIn: builtIn, until: ctx})
		in.Close()
	}()
	lines := bufio.NewScanner(out)
	lines.Scan()
	home := lines.Text()
	lines.Scan()
	if !strings.HasPrefix(lines.Text(), home+"c/") {
		t.Errorf("%q is no shared program's page; %s", lines.Text(), messages.String())
	}
	go func() { // a line for each shared program
		for lines.Scan() {
		}
	}()
	if code, body := fetch(t, home); code != 200 || !strings.Contains(body, "<h1>Straight arms") {
		t.Errorf("home: %d\n%s", code, body)
	}
	events, err := http.Get(home + ".preview/events")
	if err != nil {
		t.Fatal(err)
	}
	defer events.Body.Close()
	told := bufio.NewScanner(events.Body)
	page := filepath.Join(dir, "content/pages/home.md")
	if err := os.MkdirAll(filepath.Dir(page), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ text, want string }{
		{"---\ntitle: Mine\n---\n\n[x](nowhere.md)\n", "content/pages/home.md:5"},
		{"---\ntitle: Mine\n---\n\nHello.\n", "<h1>Mine</h1>"},
	} {
		if err := os.WriteFile(page, []byte(c.text), 0o644); err != nil {
			t.Fatal(err)
		}
		for told.Scan() && !strings.HasPrefix(told.Text(), "event: change") {
		}
		if _, body := fetch(t, home); !strings.Contains(body, c.want) {
			t.Errorf("want %s:\n%s", c.want, body)
		}
	}
	interrupt()
	if code := <-ended; code != 0 {
		t.Errorf("ended with %d: %s", code, messages.String())
	}
	if _, err := os.Stat(filepath.Join(dir, outputFolder)); err == nil {
		t.Error("a preview wrote to the output")
	}
}

func fetch(t *testing.T, address string) (int, string) {
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
	return answer.StatusCode, string(body)
}

func TestPreviewIsForThisMachine(t *testing.T) {
	for listen, open := range map[string]bool{"0.0.0.0:0": false, ":0": false, "192.0.2.1:80": false, "example.org:80": false, "4170": true} {
		if err := checkListen(listen, open); err == nil {
			t.Errorf("%s was taken", listen)
		}
	}
	for listen, open := range map[string]bool{"127.0.0.1:0": false, "[::1]:80": false, "localhost:80": false, "0.0.0.0:0": true} {
		if err := checkListen(listen, open); err != nil {
			t.Errorf("%s: %v", listen, err)
		}
	}
}
