package site

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// longSummary is how many letters of a text are shown with a link to it (common
// practice).
const longSummary = 160

var (
	linked = regexp.MustCompile(`!?\[([^\]]*)\]\([^)]*\)`)
	tagged = regexp.MustCompile(`<[^>]*>`) // which the page leaves out too
	marks  = strings.NewReplacer("*", "", "`", "", "_", "")
)

// summary is the beginning of a Markdown text in plain words: whole sentences of its
// first paragraph, or whole words where the first sentence is long.
func summary(text string) string {
	paragraph := ""
	for part := range strings.SplitSeq(text, "\n\n") {
		if part = strings.TrimSpace(part); part != "" && !strings.ContainsAny(part[:1], "#|>-!") {
			paragraph = part
			break
		}
	}
	words := strings.Fields(marks.Replace(tagged.ReplaceAllString(linked.ReplaceAllString(paragraph, "$1"), "")))
	whole, sentence := "", ""
	for _, word := range words {
		next := strings.TrimSpace(whole + " " + word)
		if utf8.RuneCountInString(next) > longSummary {
			if sentence != "" {
				return sentence
			}
			return whole + " …"
		}
		if whole = next; strings.HasSuffix(word, ".") {
			sentence = whole
		}
	}
	return whole
}
