package site_test

import (
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"gatepost/program/publish/view"
)

// inBrowser runs one of the checks in testdata/browser with playwright-core, in
// Debian's Chromium. What it prints is what is wrong.
func inBrowser(t *testing.T, script string, args ...string) {
	t.Helper()
	node, modules := browserTools(t)
	cmd := exec.Command(node, append([]string{filepath.Join("testdata/browser", script)}, args...)...)
	chromium, _ := exec.LookPath("chromium")
	cmd.Env = append(os.Environ(), "GATEPOST_NODE_MODULES="+modules, "GATEPOST_CHROMIUM="+chromium)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Errorf("%s %v: %v\n%s", script, args, err, out)
	}
}

// browserTools are node and where .ci/run puts its packages; without them the
// test is left out, unless it is required.
func browserTools(t *testing.T) (node, modules string) {
	t.Helper()
	modules, _ = filepath.Abs("../../../.ci/node_modules")
	node, err := exec.LookPath("node")
	missing := err != nil
	for _, need := range []string{"playwright-core", "axe-core", "ical.js"} {
		if _, err := os.Stat(filepath.Join(modules, need)); err != nil {
			missing = true
		}
	}
	if _, err := exec.LookPath("chromium"); err != nil {
		missing = true
	}
	switch {
	case !missing:
	case os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1":
		t.Fatal("node, chromium, or playwright-core and axe-core in .ci/node_modules are missing")
	default:
		t.Skip("left out: what a browser does (node, chromium, playwright-core and axe-core in .ci/node_modules)")
	}
	return node, modules
}

// under serves a site below a path, as many web hosts do.
func under(t *testing.T, folder, path string) string {
	t.Helper()
	mux := http.NewServeMux()
	mux.Handle(path, http.StripPrefix(path, http.FileServer(http.Dir(folder))))
	server := httptest.NewServer(mux)
	t.Cleanup(server.Close)
	return server.URL + path
}

// shared finds the one shared program that lies in a demo site.
func sharedPage(t *testing.T, clients []*view.View) string {
	t.Helper()
	for _, v := range clients {
		if v.Public && len(v.Withheld) == 0 {
			return "c/" + v.Page + "/"
		}
	}
	t.Fatal("no shared program")
	return ""
}

// axe-core's rules are those of WCAG 2.2, A and AA, and its own best practices.
func TestAccessibility(t *testing.T) {
	browserTools(t)
	s := demo(t, nil)
	files := build(t, s)
	client := sharedPage(t, s.Clients)
	pages := []string{"index.html", "page-measure.html", "exercises.html", "exercise-tuck-hold.html", "roadmap-planche.html",
		"notes.html", "programs.html", "roadmaps.html", client + "index.html", client + "week-1.html", client + "day-2027-01-11.html", client + "exercises.html", client + "phone.html"}
	for _, prefix := range []string{"program-", "find-", "level-", "note-"} {
		pages = append(pages, firstPage(t, files, prefix))
	}
	inBrowser(t, "axe.mjs", append([]string{under(t, written(t, files), "/")}, pages...)...)
}

func firstPage(t *testing.T, files map[string]string, prefix string) string {
	t.Helper()
	first := ""
	for path := range files {
		name := strings.TrimPrefix(path, "site/")
		if isPage(path) && strings.HasPrefix(name, prefix) && (first == "" || name < first) {
			first = name
		}
	}
	if first == "" {
		t.Fatalf("no page %s…", prefix)
	}
	return first
}

// The same walk under a sub-path of a host and from the file system.
func TestTheWayToASession(t *testing.T) {
	browserTools(t)
	s := demo(t, nil)
	folder := written(t, build(t, s))
	client := sharedPage(t, s.Clients)
	inBrowser(t, "walk.mjs", under(t, folder, "/some/where/"), client)
	inBrowser(t, "walk.mjs", "file://"+folder+"/", client)
}

func TestByKeyboardAlone(t *testing.T) {
	browserTools(t)
	s := demo(t, nil)
	inBrowser(t, "keys.mjs", under(t, written(t, build(t, s)), "/some/where/"), sharedPage(t, s.Clients))
}

// The fixture's program is written by hand, so that what its pages send is too.
func TestAPhoneAnswers(t *testing.T) {
	browserTools(t)
	folder := written(t, fixtureSite(t))
	inBrowser(t, "phone.mjs", under(t, folder, "/some/where/"), "c/k7f3q9w2m4/")
	inBrowser(t, "phone.mjs", "file://"+folder+"/", "c/k7f3q9w2m4/")
}

func TestInAHallWithoutSignal(t *testing.T) {
	browserTools(t)
	inBrowser(t, "hall.mjs", written(t, withDocuments(t, fixtureSite(t), source(t), "%PDF-1.7 for the wall")), "c/k7f3q9w2m4/")
}

func TestAStartDay(t *testing.T) {
	browserTools(t)
	folder := written(t, demoSite(t))
	inBrowser(t, "start.mjs", under(t, folder, "/some/where/"), "level-ropes-and-bands-2.html")
}
