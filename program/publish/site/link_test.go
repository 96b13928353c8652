package site_test

import (
	"net/url"
	"path"
	"strings"
	"testing"
)

// Every link of every page must lead to a file and, where it names one, to an
// id in it, without a server: that is what a file manager needs. Addresses are
// taken apart by net/url (RFC 3986).
func TestLinksLeadSomewhere(t *testing.T) {
	checkLinks(t, fixtureSite(t), 500)
}

func checkLinks(t *testing.T, files map[string]string, atLeast int) {
	t.Helper()
	ids := map[string]map[string]bool{}
	for page, text := range files {
		if isPage(page) {
			ids[page] = idsOf(t, page, text)
		}
	}
	links := 0
	for page := range ids {
		for _, n := range elements(parse(t, files[page])) {
			for _, name := range []string{"href", "src"} {
				if link := attr(n, name); link != "" {
					links++
					checkLink(t, page, link, files, ids)
				}
			}
		}
	}
	if links < atLeast {
		t.Errorf("only %d links looked at", links)
	}
}

func checkLink(t *testing.T, page, link string, files map[string]string, ids map[string]map[string]bool) {
	u, err := url.Parse(link)
	if err != nil {
		t.Errorf("%s: %q: %v", page, link, err)
		return
	}
	if u.Scheme == "https" || u.Scheme == "mailto" {
		return
	}
	if u.IsAbs() || u.Host != "" || strings.HasPrefix(u.Path, "/") {
		t.Errorf("%s: %q is not relative", page, link)
		return
	}
	to := page
	if u.Path != "" {
		to = path.Join(path.Dir(page), u.Path)
	}
	if _, ok := files[to]; !ok {
		t.Errorf("%s: %q leads to no file", page, link)
	} else if u.Fragment != "" && !ids[to][u.Fragment] {
		t.Errorf("%s: %q: no such id there", page, link)
	}
	if isOfClient(to) && !isOfClient(page) {
		t.Errorf("%s: a public page leads to a client's: %q", page, link)
	}
}

func idsOf(t *testing.T, page, text string) map[string]bool {
	ids := map[string]bool{}
	for _, n := range elements(parse(t, text)) {
		if id := attr(n, "id"); id != "" {
			if ids[id] {
				t.Errorf("%s: the id %q stands twice", page, id)
			}
			ids[id] = true
		}
	}
	return ids
}
