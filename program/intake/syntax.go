package intake

import (
	"fmt"
	"regexp"
	"strings"

	"gatepost/program"
)

// suspect looks for the usual slips in a file that is not YAML, line by line,
// and gives the first.
func (s *source) suspect(skipped int) (at program.Place, message, advice string) {
	open := opening{}
	for i := skipped; i < len(s.lines); i++ {
		line := s.lines[i]
		if skipped > 0 && strings.TrimRight(line, " ") == "---" {
			break
		}
		if column, message, advice := slip(line); message != "" {
			return s.place(i+1, column), message, advice
		}
		if message := open.follow(line, i+1); message != "" {
			return s.place(open.line, open.column), message, "Close it on the same line."
		}
	}
	if open.mark != 0 {
		return s.place(open.line, open.column), open.message(), "Close it on the same line."
	}
	return program.Place{}, "", ""
}

var (
	indented  = regexp.MustCompile(`^[ \t]*`)
	gluedKey  = regexp.MustCompile(`^\s*[a-z_]+:[^\s"']`)
	twoColons = regexp.MustCompile(`^\s*[\w -]+:\s+([^\s"'\[{|>#&*!][^#"'\[{]*?:(?:\s|$).*)`)
	reserved  = regexp.MustCompile("^\\s*[\\w -]+:\\s+([@`%].*)")
)

// slip finds what is wrong with one line by itself.
func slip(line string) (column int, message, advice string) {
	if tab := strings.IndexByte(indented.FindString(line), '\t'); tab >= 0 {
		return tab + 1, "a tab is used to indent", "Use spaces, two for each level."
	}
	if m := gluedKey.FindStringIndex(line); m != nil {
		colon := strings.IndexByte(line, ':')
		return colon + 1, "a space is missing after the colon", fmt.Sprintf("Write: %s: %s", strings.TrimSpace(line[:colon]), line[colon+1:])
	}
	if m := twoColons.FindStringSubmatchIndex(line); m != nil {
		return runes(line[:m[2]]) + 1, "a value with a colon in it needs quotes", fmt.Sprintf("Write: %s%q", strings.TrimLeft(line[:m[2]], " "), line[m[2]:m[3]])
	}
	if m := reserved.FindStringSubmatchIndex(line); m != nil {
		return runes(line[:m[2]]) + 1, fmt.Sprintf("a value that begins with %s needs quotes", line[m[2]:m[2]+1]), fmt.Sprintf("Write: %s%q", strings.TrimLeft(line[:m[2]], " "), line[m[2]:m[3]])
	}
	return 0, "", ""
}

func runes(s string) int { return len([]rune(s)) }

// opening follows quotes and brackets from line to line.
type opening struct {
	mark         rune // what is open: a quote or the outermost bracket; 0: nothing
	line, column int
	depth        []rune
}

var closing = map[rune]rune{'[': ']', '{': '}'}

// follow reads one more line; a line that begins a new key while something is
// open says where it was left open.
func (o *opening) follow(line string, number int) (message string) {
	if o.mark != 0 && topKey.MatchString(line) {
		return o.message()
	}
	before := ' '
	for i, r := range []rune(line) {
		switch {
		case o.mark == '"' || o.mark == '\'':
			if r == o.mark && before != '\\' {
				o.close()
			}
		case r == '#' && before == ' ':
			return ""
		case (r == '"' || r == '\'') && strings.ContainsRune(" [{,", before):
			o.open(r, number, i+1)
		case closing[r] != 0 && (len(o.depth) > 0 || strings.ContainsRune(" [{,", before)):
			o.open(r, number, i+1)
		case (r == ']' || r == '}') && len(o.depth) > 0:
			o.close()
		}
		before = r
	}
	return ""
}

var topKey = regexp.MustCompile(`^[a-z_]+:(\s|$)`)

func (o *opening) open(r rune, line, column int) {
	o.depth = append(o.depth, r)
	o.mark = r
	if len(o.depth) == 1 {
		o.line, o.column = line, column
	}
}

func (o *opening) close() {
	o.depth = o.depth[:len(o.depth)-1]
	o.mark = 0
	if n := len(o.depth); n > 0 {
		o.mark = o.depth[n-1]
	}
}

func (o *opening) message() string {
	return fmt.Sprintf("this %q is never closed", o.depth[0])
}
