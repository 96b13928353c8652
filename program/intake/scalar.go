package intake

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"
)

// scalar is the single value as it was written, surrounding space taken off.
func (v value) scalar() (string, bool) {
	if v.node.Kind != yaml.ScalarNode {
		v.fault("not_single", "example", v.example())
		return "", false
	}
	v.checkSwallowed()
	return strings.TrimSpace(v.node.Value), true
}

// checkSwallowed warns where the rest of an unquoted value may have become a
// comment unawares, as in "name: A #1 plan".
func (v value) checkSwallowed() {
	at := v.here()
	if !strings.Contains(at.Text, "#") { // as nearly always
		return
	}
	line := []rune(at.Text)
	end := at.Column - 1 + len([]rune(v.node.Value))
	if v.node.Style != 0 || end > len(line) {
		return
	}
	rest := strings.TrimLeft(string(line[end:]), " ")
	if len(rest) > 1 && rest[0] == '#' && !strings.ContainsAny(rest[1:2], " \t#") {
		at.Column += len([]rune(v.node.Value)) + len(line[end:]) - len([]rune(rest))
		v.note(fault{"swallowed", "rest", quote(rest), "line", fmt.Sprintf("%s: %q", v.name(), v.node.Value+" "+rest)}.doubtIn(v.words(), at))
	}
}

// maxText is the longest text of one line: a name, a contact.
const maxText = 200

// text reads words that must not be empty.
func text(into *string) read {
	return func(v value) {
		if optionalText(into)(v); *into == "" && v.node.Kind == yaml.ScalarNode && strings.TrimSpace(v.node.Value) == "" {
			v.fault("text_empty", "example", v.example())
		}
	}
}

// optionalText reads words; "" means there are none.
func optionalText(into *string) read {
	return func(v value) {
		s, ok := v.scalar()
		switch {
		case !ok:
		case v.node.Tag != "!!str":
			v.fault("not_words", "written", quote(s), "quoted", strconv.Quote(s))
		case len([]rune(s)) > maxText:
			v.fault("text_long", "most", strconv.Itoa(maxText))
		case strings.ContainsFunc(s, func(r rune) bool { return unicode.IsControl(r) || steers(r) }): // by an escape: in letters they are not read
			v.fault("text_control", "example", v.example())
		default:
			*into = s
		}
	}
}

// prose reads Markdown of several lines.
func prose(into *string) read {
	return func(v value) {
		if v.node.Kind != yaml.ScalarNode || v.node.Tag != "!!str" {
			v.fault("not_prose", "example", v.example())
			return
		}
		*into = unsteered(v.node.Value)
	}
}

// choice reads one of a few words.
func choice[T ~string](into *T, allowed ...T) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		for _, a := range allowed {
			if fold(s) == fold(string(a)) {
				*into = a
				return
			}
		}
		var words []string
		for _, a := range allowed {
			words = append(words, string(a))
		}
		v.fault("not_choice", "written", quote(s), "name", quote(v.name()), "offer", offerIn(v.words(), s, words))
	}
}

// yesNo reads true or false.
func yesNo(into *bool) read {
	return func(v value) {
		s, ok := v.scalar()
		if ok && !slices.Contains([]string{"true", "yes", "false", "no"}, s) {
			v.fault("yes_no", "written", quote(s), "example", v.example())
		}
		*into = s == "true" || s == "yes"
	}
}
