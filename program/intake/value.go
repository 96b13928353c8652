package intake

import (
	"fmt"
	"strconv"
	"strings"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

// value is something written in a file, on its way to a word of package program.
type value struct {
	*source
	node *yaml.Node
	path string // "bands[0].pulls[1].force"
	like string // how such a value is written, for advice: "1.6 kg"
}

// read takes one value in, or notes what is wrong with it.
type read func(value)

// field is one key of a group: how it is written, how it is read, and whether
// it has to be there.
type field struct {
	key, like string
	read      read
	needed    bool
}

func must(key, like string, r read) field { return field{key, like, r, true} }
func may(key, like string, r read) field  { return field{key, like, r, false} }

// group reads keys with values. Any other key is an error.
func group(known ...field) read {
	return func(v value) {
		if v.node.Kind != yaml.MappingNode {
			v.fault("not_group", "example", v.example())
			return
		}
		seen := make(map[string]int, len(known))
		for i := 0; i < len(v.node.Content) && len(v.problems) <= maxProblems; i += 2 {
			v.entry(known, seen, v.node.Content[i], v.node.Content[i+1])
		}
		for _, f := range known {
			if f.needed && seen[f.key] == 0 {
				v.lacks(v.path, f)
			}
		}
	}
}

// entry reads one key of a group with its value.
func (v value) entry(known []field, seen map[string]int, key, val *yaml.Node) {
	at := v.place(key.Line, key.Column)
	f, ok := find(known, key)
	switch word, rest, glued := strings.Cut(key.Value, ":"); {
	case ok:
	case key.Kind != yaml.ScalarNode:
		v.faultAt(at, "key_list", "keys", strings.Join(keys(known), ", "))
		return
	case glued:
		v.faultAt(at, "key_space", "line", word+": "+rest)
		return
	default:
		v.faultAt(at, "unknown_key", "written", quote(key.Value), "offer", offerIn(v.words(), key.Value, keys(known)))
		return
	}
	if first := seen[f.key]; first > 0 {
		v.faultAt(at, "key_twice", "key", quote(f.key), "line", strconv.Itoa(first))
		return
	}
	seen[f.key] = key.Line
	child := value{v.source, val, strings.TrimPrefix(v.path+"."+f.key, "."), f.like}
	child.read(f)
}

func (v value) read(f field) {
	v.places[v.path] = v.place(v.node.Line, v.node.Column)
	switch {
	case v.node.Kind == yaml.AliasNode || v.node.Anchor != "":
		v.fault("alias", "example", v.example())
	case v.node.Style&yaml.TaggedStyle != 0:
		v.fault("tagged", "example", v.example())
	case v.node.Tag == "!!null" && f.needed:
		v.empty = append(v.empty, v.path)
		v.fault("no_value_yet", "example", v.example())
	case v.node.Tag == "!!null":
		v.fault("no_value", "example", v.example())
	default:
		f.read(v)
	}
}

// line is how the field is written.
func (f field) line() string { return f.key + ": " + f.like }

func find(known []field, key *yaml.Node) (field, bool) {
	for _, f := range known {
		if key.Kind == yaml.ScalarNode && f.key == key.Value {
			return f, true
		}
	}
	return field{}, false
}

func keys(known []field) []string {
	var names []string
	for _, f := range known {
		names = append(names, f.key)
	}
	return names
}

// maxItems is the longest list taken: beyond any gym, short of a flood.
const maxItems = 200

// each reads a list, one item after the other.
func each[T any](into *[]T, item func(*T) read) read {
	return func(v value) {
		switch {
		case v.node.Kind == yaml.ScalarNode && isNone(v.words(), v.node.Value):
			*into = []T{}
			return
		case v.node.Kind != yaml.SequenceNode:
			v.fault("not_list", "example", v.example())
			return
		case len(v.node.Content) > maxItems:
			v.fault("list_long", "most", strconv.Itoa(maxItems))
			return
		}
		*into = make([]T, len(v.node.Content))
		for i, n := range v.node.Content {
			child := value{v.source, n, fmt.Sprintf("%s[%d]", v.path, i), inner(v.like)}
			child.read(field{child.name(), child.like, item(&(*into)[i]), true})
		}
	}
}

// inner is the example of one item, from the example of a list.
func inner(like string) string {
	like = strings.TrimSuffix(strings.TrimPrefix(like, "["), "]")
	if strings.HasPrefix(like, "{") {
		return like[:strings.Index(like+"}", "}")+1]
	}
	first, _, _ := strings.Cut(like, ",")
	return first
}

// name is the key the value stands under.
func (v value) name() string {
	key := v.path[strings.LastIndex(v.path, ".")+1:]
	key, _, _ = strings.Cut(key, "[")
	return key
}

// has says whether a key of the group was written.
func (v value) has(key string) bool { return v.given(strings.TrimPrefix(v.path+"."+key, ".")) }

// item says that the value is one of a list.
func (v value) item() bool { return strings.HasSuffix(v.path, "]") }

// subject is how the value is called in messages.
func (v value) subject() string {
	switch {
	case v.path == "":
		return v.words().Say("fault.subject_file")
	case v.item():
		return v.words().Say("fault.subject_item", "name", quote(v.name()))
	}
	return quote(v.name())
}

// example is how the value is written, with its key where it has one.
func (v value) example() string {
	switch {
	case v.path == "":
		return v.words().Say("fault.example_file", "like", v.like)
	case v.item():
		return v.like
	}
	return v.name() + ": " + v.like
}

// here is the spot of the value.
func (v value) here() program.Place { return v.place(v.node.Line, v.node.Column) }

// fault notes an error in the value, said with its {subject}.
func (v value) fault(wrong ...string) { v.faultAt(v.here(), wrong...) }

// faultAt notes an error at a spot.
func (v value) faultAt(at program.Place, wrong ...string) {
	v.note(fault(append(wrong, "subject", v.subject())).in(v.words(), at))
}

// lacks notes that a key of the group at a path is missing.
func (s *source) lacks(path string, f field) {
	s.note(fault{"key_missing", "key", quote(f.key), "line", f.line()}.in(s.words(), s.at("%s", path)))
}

// wrong notes an error in the value: what it is, then advice.
func (v value) wrong(what, advice string, args ...any) {
	v.say(v.here(), v.subject()+" "+what, fmt.Sprintf(advice, args...))
}
