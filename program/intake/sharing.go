package intake

import (
	"io"
	"regexp"
	"slices"
	"strings"

	"gatepost/program"
)

// pageForm is the random part of a shared page's address. Thirteen characters of 32 are the
// first that hold 64 bits.
var pageForm = regexp.MustCompile(`^[a-z0-9]{13,32}$`)

// randomPage makes a page name of sixteen characters, 78 bits of chance; the last is a
// digit, so that it is no word.
func randomPage(chance io.Reader) string {
	const letters = "abcdefghijkmnpqrstuvwxyz23456789" // none that look alike; 32, so that a byte divides evenly
	name := make([]byte, 16)
	if chance == nil {
		return "(letters and digits at random)"
	}
	if _, err := io.ReadFull(chance, name); err != nil {
		return "(letters and digits at random)"
	}
	for i, b := range name {
		name[i] = letters[b%32]
	}
	name[15] = letters[24+name[15]%8]
	return string(name)
}

// checkPage sees that a shared client has a page whose name nobody can guess.
func (c *client) checkPage(chance io.Reader) {
	switch {
	case c.Page == "" && c.Share == program.ShareSite && !c.given("page"):
		c.wrong("share", "no_page", "line", "page: "+randomPage(chance))
	case c.Page == "":
	case !pageForm.MatchString(c.Page):
		c.wrong("page", "page_form", "page", quote(c.Page), "line", "page: "+randomPage(chance))
	case c.tells(c.Page):
		c.wrong("page", "page_name", "line", "page: "+randomPage(chance))
	}
}

// tells reports whether a page's name can be guessed: part of the client's name is in it, or
// the year of birth; it has no digit, as words have none, or few letters again and again.
func (c *client) tells(page string) bool {
	different := map[rune]bool{}
	for _, r := range page {
		different[r] = true
	}
	inIt := func(word string) bool { return len(word) > 2 && strings.Contains(page, word) }
	return len(different) < 7 || !strings.ContainsAny(page, "0123456789") ||
		slices.ContainsFunc(strings.Split(c.Slug, "-"), inIt) || inIt(c.Athlete.Born.String()[:4])
}

// plainName is a name whose first word is what somebody is called: "Maren", "Ann Canaryson".
// Of one with a comma, of one written together or in a script without spaces it is not.
var plainName = regexp.MustCompile(`^[\p{Latin}\p{Greek}\p{Cyrillic}][\p{Ll}\p{M}'’-]+([-'’]\p{Lu}[\p{Ll}\p{M}]+)*( [\p{L}\p{M}'’.-]+)*$`)

// checkCalled asks what a client with a shared page is called, where the name does not say.
func (c *client) checkCalled() {
	if c.Share == program.ShareSite && c.Athlete.Called == "" && !plainName.MatchString(c.Athlete.Name) {
		c.wrong("name", "no_called", "name", quote(c.Athlete.Name))
	}
}

// checkPagesDiffer notes where two clients would share one page.
func checkPagesDiffer(clients []*client) {
	owner := map[string]*client{}
	for _, c := range clients {
		if first := owner[c.Page]; first != nil && c.Page != "" {
			c.wrong("page", "page_taken", "client", first.Slug)
		}
		owner[c.Page] = c
	}
}

// clashes reports whether a client has the page of one who was not read.
func (f *folder) clashes(clients []*client) bool {
	taken := map[string]bool{"": false}
	for _, page := range f.known {
		taken[page] = page != ""
	}
	return slices.ContainsFunc(clients, func(c *client) bool { return taken[c.Page] })
}
