package intake

import (
	"io"
	"regexp"
	"strings"

	"gatepost/program"
)

// pageForm is the random part of a shared page's address.
var pageForm = regexp.MustCompile(`^[a-z0-9]{8,32}$`)

// randomPage makes a page name of sixteen characters, 80 bits of chance.
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
	case len(c.Slug) > 3 && strings.Contains(c.Page, strings.ReplaceAll(c.Slug, "-", "")):
		c.wrong("page", "page_name", "line", "page: "+randomPage(chance))
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
