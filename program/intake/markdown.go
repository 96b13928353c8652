package intake

import (
	"fmt"
	"regexp"
	"strings"
)

// readFrontMatter reads the YAML between two lines "---" at the top of the file,
// and gives the text after it with the number of its first line.
func (s *source) readFrontMatter(like string, r read) (body []string, first int) {
	isFence := func(line string) bool { return strings.TrimRight(line, " \t") == "---" }
	if !isFence(s.lines[0]) {
		s.say(s.place(1, 1), "the file does not begin with its front matter", "Begin with a line ---, then keys such as: "+like+", then a line ---.")
		return nil, 0
	}
	for end := 1; end < len(s.lines); end++ {
		if isFence(s.lines[end]) {
			s.readYAMLFrom(strings.Join(s.lines[1:end], "\n"), 1, like, r)
			return s.skipBlank(end + 1)
		}
	}
	s.say(s.place(1, 1), "the front matter has no end", "Put a line --- after its last key.")
	return nil, 0
}

// skipBlank gives the lines from the first that is not blank.
func (s *source) skipBlank(from int) (body []string, first int) {
	for from < len(s.lines) && strings.TrimSpace(s.lines[from]) == "" {
		from++
	}
	return s.lines[from:], from + 1
}

// section is what stands under one heading of the second level.
type section struct {
	heading string
	line    int // of the heading
	lines   []string
}

func (s section) text() string { return strings.TrimSpace(strings.Join(s.lines, "\n")) }

var heading = regexp.MustCompile(`^##[ \t]+(.*?)[ \t#]*$`)

// sections splits a body at its headings of the second level.
func (s *source) sections(body []string, first int) []section {
	var all []section
	fenced := false
	for i, line := range body {
		if strings.HasPrefix(line, "```") {
			fenced = !fenced
		}
		m := heading.FindStringSubmatch(line)
		switch {
		case m != nil && !fenced:
			all = append(all, section{heading: m[1], line: first + i})
		case len(all) > 0:
			last := &all[len(all)-1]
			last.lines = append(last.lines, line)
		case strings.TrimSpace(line) != "":
			s.say(s.place(first+i, 1), "this text stands before the first heading", "Move it below ## Set-up.")
			return nil
		}
	}
	return all
}

var bullet = regexp.MustCompile(`^[-*] +(.*)`)

// items are the entries of a section that is a list; lines that are indented go
// on with the entry above.
func (s *source) items(sec section) []string {
	var items []string
	for i, line := range sec.lines {
		m := bullet.FindStringSubmatch(line)
		switch {
		case m != nil:
			items = append(items, strings.TrimSpace(m[1]))
			s.checkPlain(line, sec.line+1+i)
		case strings.TrimSpace(line) == "":
		case len(items) > 0 && strings.HasPrefix(line, "  "):
			items[len(items)-1] += " " + strings.TrimSpace(line)
			s.checkPlain(line, sec.line+1+i)
		default:
			s.say(s.place(sec.line+1+i, 1), fmt.Sprintf("%s is a list, and this line is not one of its items", quote(sec.heading)), "Begin each item with a hyphen and a space; indent what goes on with two spaces.")
		}
	}
	return items
}

var markup = regexp.MustCompile("\\*\\*?[^* ][^*]*\\*|`[^`]+`|\\]\\(")

// checkPlain warns of Markdown where plain text is printed.
func (s *source) checkPlain(line string, number int) {
	if !strings.ContainsAny(line[1:], "*`]") { // as nearly always
		return
	}
	if m := markup.FindStringIndex(line[1:]); m != nil {
		s.doubt(s.place(number, runes(line[:m[0]+1])+1), "marks for bold, code or links are printed as they stand here", "Write plain words.")
	}
}
