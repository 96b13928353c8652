package site_test

import (
	"encoding/json"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
)

// kept are the files that a client's worker keeps, by their path below the site.
func kept(t *testing.T, files map[string]string, folder string) (version string, all []string) {
	t.Helper()
	m := regexp.MustCompile(`const VERSION = "([0-9a-f]{12})", FILES = (\[[^\]]*\]);`).FindStringSubmatch(files["site/"+folder+"worker.js"])
	if m == nil {
		t.Fatal("no worker in ", folder)
	}
	var listed []string
	if err := json.Unmarshal([]byte(m[2]), &listed); err != nil {
		t.Fatal(err)
	}
	for _, file := range listed {
		all = append(all, path.Join(folder, file))
	}
	return m[1], all
}

// withDocuments is a site whose first client has a wall chart to print.
func withDocuments(t *testing.T, files map[string]string, s site.Source, chart string) map[string]string {
	t.Helper()
	files = maps.Clone(files)
	own, problems := site.New(s).Client(s.Clients[0], site.Document{Name: "wall-chart.pdf", Bytes: []byte(chart)})
	if problems != nil {
		t.Fatal(problems)
	}
	for _, f := range own {
		files[f.Path] = string(f.Bytes)
	}
	return files
}

// What a worker keeps is this client's pages, what they load and what is printed for this
// client; of other clients, of the public pages and of the calendar it knows nothing.
func TestAWorkerKeepsOneClient(t *testing.T) {
	s := source(t)
	s.Clients = append(s.Clients, client(s.Library, func(p *program.Program) {
		p.Client = program.Client{Name: "Somebody Else", Slug: "else", Share: program.ShareSite, Page: "zz99zz99zz99"}
	}))
	const folder = "c/k7f3q9w2m4/"
	files := withDocuments(t, build(t, s), s, "%PDF-1.7 for the wall")
	_, all := kept(t, files, folder)
	for file := range files {
		name := strings.TrimPrefix(file, "site/")
		if (isPage(file) || strings.HasSuffix(file, ".pdf")) && strings.HasPrefix(name, folder) && !slices.Contains(all, name) {
			t.Errorf("%s is not kept", name)
		}
	}
	for i, name := range all {
		if _, ok := files["site/"+name]; !ok {
			t.Errorf("%s is no file", name)
		}
		inside, asset := strings.HasPrefix(name, folder) && (isPage(name) || name == folder+"wall-chart.pdf"), regexp.MustCompile(`^[a-z0-9-]+\.(css|js|svg)$`).MatchString(name)
		if !inside && !asset || slices.Contains(all[:i], name) {
			t.Errorf("%s is kept", name)
		}
	}
	if _, most := kept(t, withDocuments(t, files, s, strings.Repeat("%", 500<<10+1)), folder); len(most) != len(all)-1 || slices.Contains(most, folder+"wall-chart.pdf") {
		t.Error("a document of more than half a megabyte is kept")
	}
	// Everything that a page loads is kept, so that it stands without a network as with one.
	for _, name := range all {
		if !isPage(name) {
			continue
		}
		for _, n := range elements(parse(t, files["site/"+name])) {
			loads := attr(n, "src")
			if rel := attr(n, "rel"); n.Data == "link" && (rel == "stylesheet" || rel == "icon") {
				loads = attr(n, "href")
			}
			if loads != "" && !slices.Contains(all, path.Join(path.Dir(name), loads)) {
				t.Errorf("%s loads %s, which is not kept", name, loads)
			}
		}
	}
	if strings.Contains(files["site/"+folder+"worker.js"], "zz99") || strings.Contains(strings.ToLower(files["site/"+folder+"worker.js"]), "somebody") {
		t.Error("a worker names another client")
	}
}

// A worker is a new one as soon as anything that it keeps has changed, and only then.
func TestAWorkerHasTheVersionOfItsPages(t *testing.T) {
	const folder = "c/k7f3q9w2m4/"
	version := func(change func(*site.Source)) string {
		s := source(t)
		change(&s)
		v, _ := kept(t, build(t, s), folder)
		return v
	}
	same := version(func(*site.Source) {})
	for name, c := range map[string]struct {
		change func(*site.Source)
		newer  bool
	}{
		"nothing":            {func(*site.Source) {}, false},
		"a note of the hall": {func(s *site.Source) { s.Notes = s.Notes[:1]; s.Notes[0].Body = "Else." }, false},
		"another client": {func(s *site.Source) {
			s.Clients = append(s.Clients, client(s.Library, func(p *program.Program) {
				p.Client = program.Client{Name: "Else", Slug: "else", Share: program.ShareSite, Page: "zz99zz99zz99"}
			}))
		}, false},
		"a later plan": {func(s *site.Source) {
			s.Clients[0] = client(s.Library, func(p *program.Program) { p.Version = 2 })
		}, true},
		"the look":           {func(s *site.Source) { s.Templates = append(s.Templates, layer{"style.css": "b{}"}) }, true},
		"a script":           {func(s *site.Source) { s.Templates = append(s.Templates, layer{"timer.js": "0"}) }, true},
		"a picture's colour": {func(s *site.Source) { s.Templates = append(s.Templates, layer{"figure.css": ".x{}"}) }, true},
	} {
		if got := version(c.change); (got != same) != c.newer {
			t.Errorf("%s: version %s after %s", name, got, same)
		}
	}
}

// The pages of a client may have a worker and a manifest of their own folder, and that is
// all that their policy leaves open beyond what it always did. Public pages have neither.
func TestPolicyOfWorkers(t *testing.T) {
	policy := regexp.MustCompile(`http-equiv="Content-Security-Policy" content="([^"]*)"`)
	for path, text := range fixtureSite(t) {
		if !isPage(path) {
			continue
		}
		got := strings.ReplaceAll(policy.FindStringSubmatch(text)[1], "&#39;", "'")
		for _, part := range strings.Split(got, "; ") {
			name, values, _ := strings.Cut(part, " ")
			wide := map[string]string{"default-src": "'none'", "base-uri": "'none'", "form-action": "'none'", "worker-src": "'self'", "manifest-src": "'self'"}
			if want := wide[name]; want != "" && values != want {
				t.Errorf("%s: %s", path, part)
			}
			if name == "connect-src" || name == "worker-src" && !isOfClient(path) {
				t.Errorf("%s: has leave for %s", path, part)
			}
		}
		if isOfClient(path) != strings.Contains(text, `src="../../offline.js"`) {
			t.Errorf("%s: has the worker of a client: %v", path, !isOfClient(path))
		}
	}
}

// What a page sends is signed with the first name and four letters of the address; the
// rest of the address is in no page.
func TestLinesAreSigned(t *testing.T) {
	files := fixtureSite(t)
	if text := files["site/c/k7f3q9w2m4/day-2027-01-11.html"]; !strings.Contains(text, `data-client="Maren-k7f3"`) || strings.Contains(text, "k7f3q9w2m4") {
		t.Error("the lines are not signed, or the page says its whole address")
	}
	if v := (view.View{First: "Maren", Page: ""}); program.Signed(v.First, v.Page) != "" {
		t.Error("who has no pages signs lines")
	}
}
