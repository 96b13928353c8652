package intake

import (
	"fmt"
	"io"
	"strings"
	"unicode"

	"gatepost/program"
)

// Report writes problems for people to read: the place and what is wrong, the
// line with a caret under the spot, and what to write instead. A count follows.
// It writes nothing where there are none.
func Report(w io.Writer, problems program.Problems) {
	problems = append(program.Problems(nil), problems...)
	problems.Sort()
	warnings := 0
	for _, p := range problems {
		if p.Warning {
			warnings++
		}
		reportOne(w, p)
	}
	if len(problems) > 0 {
		fmt.Fprintln(w, counted(len(problems)-warnings, warnings))
	}
}

func reportOne(w io.Writer, p program.Problem) {
	message := p.Message
	if p.Warning {
		message = "warning: " + message
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

func counted(errors, warnings int) string {
	var parts []string
	if errors > 0 {
		parts = append(parts, plural(errors, "problem"))
	}
	if warnings > 0 {
		parts = append(parts, plural(warnings, "warning"))
	}
	return strings.Join(parts, ", ")
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
