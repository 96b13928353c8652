package site_test

import (
	"fmt"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/site"
)

// rendered builds a site whose measure page has the given body, from line 4.
func rendered(t *testing.T, body string) (string, program.Problems) {
	t.Helper()
	s := source(t)
	s.Clients, s.Publics = nil, nil // one page is looked at
	for i := range s.Library.Pages {
		if p := &s.Library.Pages[i]; p.ID == "measure" {
			p.Body = body
		}
	}
	lean, _ := s.Library.Exercise("planche-lean")
	lean.SetUp = "Hands down."
	files, problems := site.Build(s)
	for _, f := range files {
		if f.Path == "site/page-measure.html" {
			return string(f.Bytes), problems
		}
	}
	t.Fatal("no measure page")
	return "", nil
}

// The syntax is CommonMark's and, for tables, that of the GitHub Flavored
// Markdown specification, section 4.10.
func TestMarkdownIsMadeToFit(t *testing.T) {
	for _, c := range []struct{ markdown, want string }{
		{"# Title", `<h2 id="title">Title</h2>`},
		{"## Μέτρα του σώματος", `<h2 id="μέτρα-του-σώματος">`},
		{"## Łuk\n\n## Łuk", `<h2 id="łuk-2">`},
		{"## Main", `<h2 id="main-2">`},
		{"## !?", `<h2 id="section">`},
		{"|a|b|\n|:-:|--:|\n|1|2|", `<th class="center" scope="col">a</th>`},
		{"|a|b|\n|:-:|--:|\n|1|2|", `<td class="right">2</td>`},
		{"|a|\n|-|\n|1|", `<div class="scroll" tabindex="0">`},
		{"[x](../exercises/planche-lean.md)", `<a href="exercise-planche-lean.html">`},
		{"[x](numbers.md#a)", `<a href="page-numbers.html#a">`},
		{"[x](home.md)", `<a href="index.html">`},
		{"[x](../roadmaps/planche.yaml)", `<a href="roadmap-planche.html">`},
		{"[x](exercises.html)", `<a href="exercises.html">`},
		{"[x](https://example.org/a)", `<a href="https://example.org/a">`},
		{"## Head {onclick=x}", `Head {onclick=x}`},
	} {
		text, problems := rendered(t, c.markdown)
		if len(problems) > 0 || !strings.Contains(text, c.want) {
			t.Errorf("%q: no %s; problems %v", c.markdown, c.want, problems)
		}
	}
}

func TestMarkdownProblems(t *testing.T) {
	wide := strings.Repeat("|a", 2000) + "|\n" + strings.Repeat("|-", 2000) + "|\n" + strings.Repeat("|a|\n", 3000)
	for _, c := range []struct {
		markdown string
		line     int
		message  string
	}{
		{"a\n\nb [x](nowhere.md) c", 6, `"nowhere.md"`},
		{"[x](javascript:alert(1))", 4, "javascript"},
		{"[x](//example.org/a)", 4, "leads nowhere"},
		{"[x](../../../etc/passwd)", 4, "leads nowhere"},
		{"[x](../clients/maren/assessment.yaml)", 4, "leads nowhere"},
		{"a\n\n<script>alert(1)</script>", 6, "HTML"},
		{"a\nb <b onclick=x>c", 5, "HTML"},
		{"a\n\n![x](https://example.org/a.png)", 6, "picture"},
		{strings.Repeat("long ", 60_000), 4, "larger than 256 KB"},
		{wide, 4, "too large"},
		{"a\nb <javascript:alert(1)> c", 4, "javascript"},
		{"a\n\n" + strings.Repeat("_a*", 1001), 6, "2002 * and _; at most 2000"},
		{strings.Repeat("![a](figure:planche/tuck)\n", 201), 4, "201 pictures; at most 200"},
	} {
		text, problems := rendered(t, c.markdown)
		place := fmt.Sprintf("content/pages/measure.md:%d", c.line)
		if len(problems) == 0 || problems[0].Place.String() != place || !strings.Contains(problems[0].Message, c.message) {
			t.Errorf("%.40q: got %v, want a problem at %s that says %q", c.markdown, problems, place, c.message)
		}
		if strings.Contains(text, "<script>") || strings.Contains(text, `="javascript:`) || strings.Contains(text, "onclick") {
			t.Errorf("%.40q: became markup", c.markdown)
		}
	}
}

// Headings that are called the same get a number each, in one step: of 30,000 a reader of
// notes would otherwise wait for minutes.
func TestManyHeadingsOfOneName(t *testing.T) {
	text, problems := rendered(t, strings.Repeat("# a\n", 30_000)+"# a 2\n")
	if problems != nil || !strings.Contains(text, `<h2 id="a">`) || !strings.Contains(text, `<h2 id="a-30000">`) || !strings.Contains(text, `<h2 id="a-2-2">`) {
		t.Errorf("%v; a heading has no address of its own", problems)
	}
}
