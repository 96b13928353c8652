package intake

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode"

	"gatepost/program"
)

// Report writes problems for people to read, in their words: the place and what is
// wrong, the line with a caret under the spot, and what to write instead. A count
// follows. It writes nothing where there are none.
func Report(w io.Writer, words program.Words, problems program.Problems) {
	problems = append(program.Problems(nil), problems...)
	problems.Sort()
	warnings := 0
	for _, p := range problems {
		if p.Warning {
			warnings++
		}
		reportOne(w, words, p)
	}
	if len(problems) > 0 {
		fmt.Fprintln(w, counted(words, len(problems)-warnings, warnings))
	}
}

func reportOne(w io.Writer, words program.Words, p program.Problem) {
	message := p.Message
	if p.Warning {
		message = words.Say("terminal.warning", "message", message)
	}
	fmt.Fprintln(w, printable(p.Place.String()+": "+message))
	if p.Line > 0 && p.Text != "" {
		line, caret := excerpt(p.Text, p.Column)
		fmt.Fprintf(w, "    %s\n", line)
		if p.Column > 0 {
			fmt.Fprintf(w, "    %s^\n", strings.Repeat(" ", caret))
		}
	}
	if p.Advice != "" {
		fmt.Fprintf(w, "    %s\n", printable(p.Advice))
	}
	fmt.Fprintln(w)
}

// excerpt is a line as far as it fits a terminal, with the number of characters
// before the caret.
func excerpt(text string, column int) (line string, caret int) {
	const width = 100
	r := []rune(printable(text))
	caret = max(0, min(column-1, len(r)))
	from := 0
	if caret > width*3/4 {
		from = caret - width/2
	}
	line = string(r[from:min(from+width, len(r))])
	if from+width < len(r) {
		line += "…"
	}
	if from > 0 {
		line = "…" + line
		caret++
	}
	return strings.TrimRight(line, " "), caret - from
}

// printable keeps a terminal from obeying what a file says.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case !unicode.IsPrint(r):
			return '?'
		}
		return r
	}, s)
}

func counted(words program.Words, errors, warnings int) string {
	var parts []string
	for _, c := range []struct {
		key string
		n   int
	}{{"terminal.problems", errors}, {"terminal.warnings", warnings}} {
		if c.n > 0 {
			parts = append(parts, words.Say(words.Plural(c.key, c.n), "count", strconv.Itoa(c.n)))
		}
	}
	return strings.Join(parts, ", ")
}
