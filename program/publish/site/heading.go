package site

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"
)

// headingIDs are the ids used on one page. Letters of every script are kept,
// so that a heading in Greek has an address too; goldmark's own drops them. Each has the
// last number that was put behind it, 1 for none.
type headingIDs map[string]int

// Generate gives a heading its id: lower case, hyphens between words, a number
// behind one that is taken.
func (ids headingIDs) Generate(value []byte, _ ast.NodeKind) []byte {
	base := anchor(string(value))
	id, n := base, max(1, ids[base])
	for ids[id] > 0 { // a heading may be called what another with its number is
		n++
		id = fmt.Sprintf("%s-%d", base, n)
	}
	ids[base] = n
	ids[id] = max(1, ids[id])
	return []byte(id)
}

// Put marks an id as taken.
func (ids headingIDs) Put(value []byte) { ids[string(value)] = max(1, ids[string(value)]) }

// newHeadingIDs begins a page with the ids that the templates use themselves.
func newHeadingIDs() headingIDs { return headingIDs{"main": 1} }

// anchor makes a fragment out of words.
func anchor(words string) string {
	parts := strings.FieldsFunc(strings.ToLower(words), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r)
	})
	if len(parts) == 0 {
		return "section"
	}
	return strings.Join(parts, "-")
}
