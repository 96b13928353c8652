package intake

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"
)

// scalar is the single value as it was written, surrounding space taken off.
func (v value) scalar() (string, bool) {
	if v.node.Kind != yaml.ScalarNode {
		v.wrong("is a list or group; one value is wanted", "Write %s", v.example())
		return "", false
	}
	v.checkSwallowed()
	return strings.TrimSpace(v.node.Value), true
}

// checkSwallowed warns where the rest of an unquoted value may have become a
// comment unawares, as in "name: A #1 plan".
func (v value) checkSwallowed() {
	at := v.here()
	line := []rune(at.Text)
	end := at.Column - 1 + len([]rune(v.node.Value))
	if v.node.Style != 0 || end > len(line) {
		return
	}
	rest := strings.TrimLeft(string(line[end:]), " ")
	if len(rest) > 1 && rest[0] == '#' && !strings.ContainsAny(rest[1:2], " \t#") {
		at.Column += len([]rune(v.node.Value)) + len(line[end:]) - len([]rune(rest))
		v.doubt(at, fmt.Sprintf("the value ends before %s, which is read as a comment", quote(rest)),
			fmt.Sprintf("If it belongs to the value, put all of it in quotes: %s: %q. If not, put a space after #.", v.name(), v.node.Value+" "+rest))
	}
}

// maxText is the longest text of one line: a name, a contact.
const maxText = 200

// text reads words that must not be empty.
func text(into *string) read {
	return func(v value) {
		if optionalText(into)(v); *into == "" && v.node.Kind == yaml.ScalarNode && strings.TrimSpace(v.node.Value) == "" {
			v.wrong("is empty", "Fill it in, for example: %s", v.example())
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
			v.wrong(fmt.Sprintf("is read as a number, date or yes/no, not as words: %s", quote(s)), "Put it in quotes: %q", s)
		case len([]rune(s)) > maxText:
			v.wrong("is too long", "At most %d characters fit.", maxText)
		case strings.ContainsFunc(s, unicode.IsControl):
			v.wrong("has a line break or another control character in it", "Write it on one line: %s", v.example())
		default:
			*into = s
		}
	}
}

// prose reads Markdown of several lines.
func prose(into *string) read {
	return func(v value) {
		if v.node.Kind != yaml.ScalarNode || v.node.Tag != "!!str" {
			v.wrong("is not text", "Write %s", v.example())
			return
		}
		*into = v.node.Value
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
		v.say(v.here(), fmt.Sprintf("%s is not one of the words for %s", quote(s), quote(v.name())), offer(s, words))
	}
}

// yesNo reads true or false.
func yesNo(into *bool) read {
	return func(v value) {
		s, ok := v.scalar()
		if ok && !slices.Contains([]string{"true", "yes", "false", "no"}, s) {
			v.say(v.here(), fmt.Sprintf("%s is neither yes nor no", quote(s)), fmt.Sprintf("Write %s", v.example()))
		}
		*into = s == "true" || s == "yes"
	}
}
