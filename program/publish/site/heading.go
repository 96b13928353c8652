package site

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"
)

// headingIDs are the ids used on one page. Letters of every script are kept,
// so that a heading in Greek has an address too; goldmark's own drops them.
type headingIDs map[string]bool

// Generate gives a heading its id: lower case, hyphens between words, a number
// behind one that is taken.
func (ids headingIDs) Generate(value []byte, _ ast.NodeKind) []byte {
	base := anchor(string(value))
	id := base
	for n := 2; ids[id]; n++ {
		id = fmt.Sprintf("%s-%d", base, n)
	}
	ids[id] = true
	return []byte(id)
}

// Put marks an id as taken.
func (ids headingIDs) Put(value []byte) { ids[string(value)] = true }

// newHeadingIDs begins a page with the ids that the templates use themselves.
func newHeadingIDs() headingIDs { return headingIDs{"main": true} }

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
