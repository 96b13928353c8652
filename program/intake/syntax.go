package intake

import (
	"fmt"
	"regexp"
	"strings"

	"gatepost/program"
)

// suspect looks for the usual slips in a file that is not YAML, line by line,
// and gives the first. Nobody asks it about a file that can be read.
func (s *source) suspect(skipped int) (at program.Place, message, advice string) {
	open, levels := opening{}, levels{}
	for i := skipped; i < len(s.lines); i++ {
		line := s.lines[i]
		if skipped > 0 && strings.TrimRight(line, " ") == "---" {
			break
		}
		if open.mark != 0 && topKey.MatchString(line) {
			break
		}
		if open.mark == 0 && levels.inBlockText(line) {
			continue
		}
		column, message, advice := slip(line)
		if message == "" && open.mark == 0 {
			column, message, advice = levels.follow(line)
		}
		if message != "" {
			return s.place(i+1, column), message, advice
		}
		open.follow(line, i+1)
	}
	if open.mark != 0 {
		return s.place(open.line, open.column), fmt.Sprintf("this %c is never closed", open.first()), fmt.Sprintf("Put a %c where it ends.", closer(open.first()))
	}
	return program.Place{}, "", ""
}

var (
	indented  = regexp.MustCompile(`^[ \t\x{a0}]*`)
	listItem  = regexp.MustCompile(`^(?:- +)+`)
	gluedKey  = regexp.MustCompile(`^[a-z_]+:[^\s"']`)
	twoColons = regexp.MustCompile(`^[\w -]+:\s+([^\s"'\[{|>#&*!][^#"'\[{]*?:(?:\s.*|$))`)
	reserved  = regexp.MustCompile("^[\\w -]+:\\s+([@`%].*)")
	quoted    = regexp.MustCompile(`^[\w -]+:\s+("(?:[^"\\]|\\.)*"|'(?:[^']|'')*')\s*[^\s#,\]}'"]`)
	topKey    = regexp.MustCompile(`^[a-z_]+:(\s|$)`)
	noColon   = regexp.MustCompile(`^[a-zA-Z_][^:"'\[{]*$`)
	blockText = regexp.MustCompile(`^[^#"']*:\s+[|>][+-]?\s*$`)
)

// slip finds what is wrong with one line by itself.
func slip(line string) (column int, message, advice string) {
	indent := indented.FindString(line)
	rest := line[len(indent):]
	rest = rest[len(listItem.FindString(rest)):]
	before := runes(line[:len(line)-len(rest)])
	if bad := strings.IndexAny(indent, "\t\u00a0"); bad >= 0 && rest != "" {
		return runes(indent[:bad]) + 1, "something other than spaces indents this line", "Use spaces, two for each level; no tabs."
	}
	if gluedKey.MatchString(rest) {
		key, value, _ := strings.Cut(rest, ":")
		return before + len(key) + 1, "a space is missing after the colon", fmt.Sprintf("Write: %s: %s", key, value)
	}
	if m := twoColons.FindStringSubmatchIndex(rest); m != nil {
		return before + runes(rest[:m[2]]) + 1, "a value with a colon in it needs quotes", inQuotes(rest, m[2], m[3])
	}
	if m := reserved.FindStringSubmatchIndex(rest); m != nil {
		return before + runes(rest[:m[2]]) + 1, fmt.Sprintf("a value that begins with %c needs quotes", rest[m[2]]), inQuotes(rest, m[2], m[3])
	}
	if m := quoted.FindStringSubmatchIndex(rest); m != nil {
		return before + runes(rest[:m[3]]) + 1, "the value goes on after its closing quote", "Put quotes around all of it; write \" within as \\\"."
	}
	return 0, "", ""
}

func inQuotes(line string, from, to int) string {
	return fmt.Sprintf("Write: %s%q", line[:from], strings.TrimRight(line[from:to], " "))
}

func runes(s string) int { return len([]rune(s)) }

// levels follows how far the lines are indented.
type levels struct {
	open  []int // indents of the groups that the last line is in
	full  bool  // the last line had a value, so nothing may be below it
	block int   // indent of a key with text of several lines below it; 0: none, else one more
}

// inBlockText says that a line is part of a text of several lines.
func (l *levels) inBlockText(line string) bool {
	indent := len(indented.FindString(line))
	if l.block > 0 && (indent >= l.block || strings.TrimSpace(line) == "") {
		return true
	}
	l.block = 0
	if blockText.MatchString(line) {
		l.block = indent + 1
	}
	return false
}

// follow reads one more line and says where its indent does not fit.
func (l *levels) follow(line string) (column int, message, advice string) {
	indent := len(indented.FindString(line))
	rest := line[indent:]
	if rest == "" || rest[0] == '#' {
		return 0, "", ""
	}
	key := strings.Contains(rest, ": ") || strings.HasSuffix(strings.TrimRight(rest, " "), ":")
	last := -1
	for len(l.open) > 0 && l.open[len(l.open)-1] > indent {
		l.open = l.open[:len(l.open)-1]
		last = indent
	}
	inner := len(l.open) > 0 && l.open[len(l.open)-1] == indent
	switch {
	case indent == 0 && noColon.MatchString(rest) && !strings.HasPrefix(rest, "---"):
		return 1, "a colon is missing", "A line here is a key, a colon, a space and a value."
	case !inner && last >= 0:
		return indent + 1, "this line is indented less than the ones above it, but not as any line before", "Line it up with the keys it belongs to."
	case !inner && l.full && key:
		return indent + 1, "this line is indented more than the one above it", "Line it up with the keys it belongs to."
	}
	if !inner {
		l.open = append(l.open, indent)
	}
	if dash := len(listItem.FindString(rest)); dash > 0 && key {
		l.open = append(l.open, indent+dash)
		rest = rest[dash:]
	}
	_, value, _ := strings.Cut(rest, ":")
	value, _, _ = strings.Cut(value, " #")
	l.full = key && strings.TrimSpace(value) != ""
	return 0, "", ""
}

// opening follows quotes and brackets from line to line.
type opening struct {
	mark         rune // what is open innermost: a quote or a bracket; 0: nothing
	line, column int  // of the outermost
	depth        []rune
}

func (o *opening) first() rune { return o.depth[0] }

// closer is what closes a quote or bracket.
func closer(r rune) rune {
	switch r {
	case '[':
		return ']'
	case '{':
		return '}'
	}
	return r
}

// follow reads one more line.
func (o *opening) follow(line string, number int) {
	before := ' '
	for i, r := range []rune(line) {
		starts := strings.ContainsRune(" [{,", before)
		switch {
		case o.mark == '"' || o.mark == '\'':
			if r == o.mark && before != '\\' {
				o.close()
			}
		case r == '#' && before == ' ':
			return
		case (r == '"' || r == '\'') && starts, (r == '[' || r == '{') && (o.mark != 0 || starts):
			o.open(r, number, i+1)
		case (r == ']' || r == '}') && o.mark != 0:
			o.close()
		}
		before = r
	}
}

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
