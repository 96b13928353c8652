package site_test

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// canaries stand in every field of a program that is private; none may appear
// in any byte or file name of the site, in capitals or not.
var canaries = []string{"canary", "paperonly", "paperpaper", "notcleared", "waitwaitwait", "791.3", "197.7", "117.2"}

// whispered is what a coach says to one client: it is on their own pages and on no other.
const whispered = "whispered words"

func withCanaries(p *program.Program) {
	note := program.Note{Code: "canary-code", Values: []program.Value{{Name: "x", Kind: program.ValueText, Text: "canary text"}}}
	p.Client = program.Client{Name: "Maren Canary-Name", Slug: "canary-slug", Share: program.ShareSite, Page: "k7f3q9w2m4"}
	p.Notes, p.Asks = append(p.Notes, note), append(p.Asks, note)
	p.Offsets = []program.Offset{{Exercise: "canary-lean", Ln: 0.2, Spread: 0.01}}
	p.Other = []program.OtherTraining{{What: "canary rowing"}}
	p.Wishes = []program.WishRead{{Wish: program.Wish{Kind: program.WishSay, Text: "canary wish"}, State: program.WishRefused, Why: []program.Note{note}}}
	p.Capacity.Held12, p.Capacity.Instant = 791.3, 791.3
	for i := range p.Weeks {
		p.Weeks[i].Notes = append(p.Weeks[i].Notes, note)
		for j := range p.Weeks[i].Sessions {
			p.Weeks[i].Sessions[j].Dropped = append(p.Weeks[i].Sessions[j].Dropped, note)
			p.Weeks[i].Sessions[j].Say = []string{whispered}
		}
	}
}

// jointsRead is a log read back, with a canary in every chart that is the coach's:
// work, sessions, effort, joints in sessions and on mornings.
func jointsRead(t *testing.T, lib *program.Library) view.Progress {
	t.Helper()
	r := viewtest.Review()
	for i := range r.Progress {
		r.Progress[i].Mornings = program.Pain{Given: true, Wrists: -1, Elbows: 4, Shoulders: -1, Other: -1}
	}
	progress, _ := view.NewProgress(viewtest.Coach(), lib, viewtest.Program(), r)
	mornings := false
	for i := range progress.Coach {
		c := &progress.Coach[i]
		c.Title, c.Desc = "canary "+c.Title, "canary"
		for j := range c.Series {
			mornings = mornings || c.Series[j].Name == "mornings"
			c.Series[j].Name = "canary " + c.Series[j].Name
		}
	}
	if len(progress.Public) == 0 || !mornings {
		t.Fatal("the log read back has no charts")
	}
	return progress
}

func TestNothingPrivate(t *testing.T) {
	s := source(t)
	shared := client(s.Library, withCanaries)
	shared.Progress = jointsRead(t, s.Library)
	s.Clients = append(s.Clients[1:], shared)
	files := build(t, s)
	home := files["site/c/k7f3q9w2m4/index.html"]
	if !strings.Contains(home, "Maren") || !strings.Contains(home, shared.Progress.Public[0].Title) {
		t.Fatal("the shared program is not there by first name, with its progress")
	}
	own := 0
	for path, text := range files {
		all := strings.ToLower(path + "\n" + text)
		if strings.Contains(all, whispered) {
			own++
		}
		for _, canary := range canaries {
			if strings.Contains(all, canary) {
				t.Errorf("%s contains %q", path, canary)
			}
		}
		if !isOfClient(path) && (strings.Contains(all, "maren") || strings.Contains(all, "k7f3q9w2m4") || strings.Contains(all, whispered)) {
			t.Errorf("%s, a public page, names a client", path)
		}
	}
	if own == 0 {
		t.Error("the coach's words are on none of the client's pages")
	}
}

// A coach's own template has nothing private to print either.
func TestTemplatesAreGivenNothingPrivate(t *testing.T) {
	for _, field := range []string{".Slug", ".Client", ".Notes", ".Measured", ".Withheld"} {
		s := source(t)
		s.Publics = nil
		s.Templates = append(s.Templates, layer{"program.html": `{{define "main"}}<h1>x</h1>{{` + field + `}}{{end}}`})
		if _, problems := site.Build(s); !problems.Stop() {
			t.Errorf("a template can read %s of a client's program", field)
		}
	}
}

// The names of the escapes come from the HTML standard, 13.1.4: a text has no
// markup when its "<" is a character reference.
func TestWordsOfAClientAreNoMarkup(t *testing.T) {
	s := source(t)
	s.Clients = []*view.View{client(s.Library, func(p *program.Program) {
		p.Client.Name = `<script>alert(1)</script>`
		for i := range p.Weeks {
			p.Weeks[i].Rig = program.Rig{Bands: []string{`"><img src=x onerror=alert(1)>`}}
		}
	})}
	for path, text := range build(t, s) {
		if isPage(path) && (strings.Contains(text, "<script>") || strings.Contains(text, "</script>alert") || strings.Contains(text, "<img src=x")) {
			t.Errorf("%s: a client's words became markup", path)
		}
	}
}

func TestAddressesThatAreRefused(t *testing.T) {
	for _, page := range []string{"../../etc", "short", "UPPERCASE1", "with space", strings.Repeat("a", 33), "k7f3q9w2m4"} {
		s := source(t)
		s.Publics = nil
		s.Clients = append(s.Clients, client(s.Library, func(p *program.Program) {
			p.Client = program.Client{Name: "Other", Slug: "other", Share: program.ShareSite, Page: page}
		}))
		files, problems := site.Build(s)
		if len(problems) != 1 || problems[0].File != "content/clients/other/assessment.yaml" {
			t.Errorf("page %q: problems %v", page, problems)
		}
		for _, f := range files {
			if strings.Contains(string(f.Bytes), "Other") {
				t.Errorf("page %q: %s was written", page, f.Path)
			}
		}
	}
}
