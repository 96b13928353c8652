package intake

import (
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// readYAML reads a whole file as one YAML document.
func (s *source) readYAML(like string, r read) {
	s.readYAMLFrom(strings.Join(s.lines, "\n"), 0, like, r)
}

// readYAMLFrom reads text that begins after some lines of the file.
func (s *source) readYAMLFrom(text string, skipped int, like string, r read) {
	root, err := parseYAML(text)
	if root != nil {
		shift(root, skipped)
	}
	switch {
	case errors.Is(err, errSecondDocument):
		s.say(s.place(root.Line, root.Column), "a second document begins here", "Keep one in this file; take the line --- above it away.")
	case err != nil:
		s.sayUnreadable(err, skipped)
	case root == nil:
		s.say(s.place(skipped+1, 1), "nothing is written here", "Write keys with values, such as: "+like)
	default:
		value{source: s, node: root, like: like}.read(field{like: like, read: r, needed: true})
	}
}

var errSecondDocument = errors.New("a second document")

// parseYAML gives the root of the only document; nil where there is none, and
// the root of the second where there are two.
func parseYAML(text string) (root *yaml.Node, err error) {
	defer func() { // a library this forgiving must not take the whole report down
		if r := recover(); r != nil {
			root, err = nil, fmt.Errorf("yaml: %v", r)
		}
	}()
	var first, second yaml.Node
	decoder := yaml.NewDecoder(strings.NewReader(text))
	if err := decoder.Decode(&first); err == io.EOF {
		return nil, nil
	} else if err != nil {
		return nil, err
	}
	switch err := decoder.Decode(&second); {
	case err == nil:
		return second.Content[0], errSecondDocument
	case err != io.EOF:
		return nil, err
	}
	return first.Content[0], nil
}

// shift moves nodes down by some lines.
func shift(n *yaml.Node, lines int) {
	n.Line += lines
	for _, child := range n.Content {
		shift(child, lines)
	}
}

var yamlLine = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)`)

// sayUnreadable notes a fault of form. The parser's own line is often that of
// the beginning, or one off, so a look at the lines comes first.
func (s *source) sayUnreadable(err error, skipped int) {
	if at, message, advice := s.suspect(skipped); message != "" {
		s.say(at, message, advice)
		return
	}
	m := yamlLine.FindStringSubmatch(err.Error())
	if m == nil {
		m = []string{"", "", err.Error()}
	}
	line, _ := strconv.Atoi(m[1])
	s.say(s.place(max(line, 1)+skipped, 1), "from about this line on, the file cannot be read: "+m[2],
		"Look for a missing quote, bracket or colon, and for lines that are indented differently from their neighbours.")
}
