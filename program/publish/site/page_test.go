package site_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"gatepost/program/publish/site"
)

// Pages are parsed with golang.org/x/net/html, which follows the parsing rules
// of the HTML standard.
func parse(t *testing.T, text string) *html.Node {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func elements(doc *html.Node) []*html.Node {
	var all []*html.Node
	for n := range doc.Descendants() {
		if n.Type == html.ElementNode {
			all = append(all, n)
		}
	}
	return all
}

func attr(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func TestEveryPageIsWellMade(t *testing.T) {
	files := fixtureSite(t)
	for _, path := range slices.Sorted(maps.Keys(files)) {
		if !isPage(path) {
			continue
		}
		count := map[string]int{}
		level := 1
		for _, n := range elements(parse(t, files[path])) {
			if n.Namespace == "" { // a drawing's title is its own
				count[n.Data]++
			}
			checkElement(t, path, n)
			if n.Data[0] == 'h' && len(n.Data) == 2 && n.Data[1] >= '1' && n.Data[1] <= '6' {
				if next := int(n.Data[1] - '0'); next > level+1 {
					t.Errorf("%s: <%s> after a heading of level %d", path, n.Data, level)
				} else {
					level = next
				}
			}
		}
		for _, tag := range []string{"title", "h1", "main", "header", "footer"} {
			if count[tag] != 1 {
				t.Errorf("%s: %d <%s>, want one", path, count[tag], tag)
			}
		}
		for _, tag := range []string{"style", "iframe", "form", "object"} {
			if count[tag] != 0 {
				t.Errorf("%s: has a <%s>", path, tag)
			}
		}
	}
}

func checkElement(t *testing.T, path string, n *html.Node) {
	for _, a := range n.Attr {
		switch {
		case a.Key == "style", strings.HasPrefix(a.Key, "on"), a.Key == "srcset":
			t.Errorf("%s: <%s %s>", path, n.Data, a.Key)
		case attr(n, "rel") == "canonical": // loads nothing
		case a.Key == "src", a.Key == "href" && n.Data != "a":
			if strings.Contains(a.Val, ":") || strings.HasPrefix(a.Val, "/") {
				t.Errorf("%s: loads %q", path, a.Val)
			}
		}
	}
	switch {
	case n.Data == "script" && attr(n, "type") != "application/ld+json" && (n.FirstChild != nil || attr(n, "src") == ""):
		t.Errorf("%s: a script within the page", path)
	case n.Data == "html" && attr(n, "lang") != "en":
		t.Errorf("%s: lang is %q", path, attr(n, "lang"))
	case n.Data == "th" && attr(n, "scope") == "":
		t.Errorf("%s: a <th> without scope", path)
	case n.Data == "title" && (n.FirstChild == nil || strings.TrimSpace(n.FirstChild.Data) == ""):
		t.Errorf("%s: no title", path)
	}
}

func TestPolicyAndRobots(t *testing.T) {
	for path, text := range fixtureSite(t) {
		if !isPage(path) {
			continue
		}
		if !strings.Contains(text, `http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self' file:; `) {
			t.Errorf("%s: no content security policy", path)
		}
		if got := strings.Contains(text, `name="robots" content="noindex`); got != isOfClient(path) {
			t.Errorf("%s: asks not to be indexed: %v", path, got)
		}
		if !strings.Contains(text, "page-cautions.html") {
			t.Errorf("%s: does not lead to the cautions", path)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	a, _ := site.Build(source(t))
	b, _ := site.Build(source(t))
	slices.SortFunc(a, func(x, y site.File) int { return strings.Compare(x.Path, y.Path) })
	for i := range a {
		if a[i].Path != b[i].Path || string(a[i].Bytes) != string(b[i].Bytes) {
			t.Fatalf("%s and %s differ", a[i].Path, b[i].Path)
		}
	}
}

// A practical limit for a phone on a poor line: 60 KB a page, drawings included; a
// script is 7 KB (our judgement).
func TestPagesAreSmall(t *testing.T) {
	for _, s := range []site.Source{source(t), demo(t, nil)} {
		for path, text := range build(t, s) {
			if isPage(path) && len(text) > 60<<10 || strings.HasSuffix(path, ".js") && len(text) > 7<<10 {
				t.Errorf("%s has %d bytes", path, len(text))
			}
		}
	}
}
