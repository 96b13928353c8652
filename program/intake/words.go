package intake

import (
	"cmp"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

var (
	wordKey     = regexp.MustCompile(`^[a-z0-9][a-z0-9 _-]*$`)
	placeholder = regexp.MustCompile(`\{[a-z][a-z0-9_]*\}`)
)

// words reads a words file: sections, and in each names with texts.
func words(into program.Words) read {
	return func(v value) {
		v.open(func(name string, section value) {
			section.open(func(key string, text value) {
				text.word(into, name+"."+key)
			}, "{build: build week}")
		}, "week: {build: build week}")
	}
}

// open reads a group whose keys are free.
func (v value) open(each func(key string, child value), like string) {
	if v.node.Kind != yaml.MappingNode {
		v.wrong("is not a group of keys", "Write, for example: %s", like)
		return
	}
	seen := map[string]int{}
	for i := 0; i < len(v.node.Content); i += 2 {
		key, val := v.node.Content[i], v.node.Content[i+1]
		switch at := v.place(key.Line, key.Column); {
		case !wordKey.MatchString(key.Value):
			v.say(at, fmt.Sprintf("%s is not a key", quote(key.Value)), "Use small letters a to z, digits, spaces, hyphens and underscores.")
		case seen[key.Value] > 0:
			v.say(at, fmt.Sprintf("%s is written twice", quote(key.Value)), fmt.Sprintf("Keep one of the two; the first is on line %d.", seen[key.Value]))
		default:
			seen[key.Value] = key.Line
			child := value{v.source, val, strings.TrimPrefix(v.path+"."+key.Value, "."), `"words"`}
			child.read(field{key: key.Value, read: func(c value) { each(key.Value, c) }, needed: true})
		}
	}
}

// word reads one text; its placeholders must be whole.
func (v value) word(into program.Words, key string) {
	s, ok := v.scalar()
	if !ok {
		return
	}
	if strings.ContainsAny(s, "{}") && strings.ContainsAny(placeholder.ReplaceAllString(s, ""), "{}") {
		v.say(v.here(), fmt.Sprintf("a placeholder in %s is not whole", quote(key)), "A placeholder is a name in curly brackets, such as {seconds}.")
		return
	}
	into[key] = v.node.Value
}

// compareWords sees that a coach's words have the keys and placeholders of the
// built-in ones, since they stand in for the whole file.
func compareWords(src *source, own, model program.Words) {
	known := sortedKeys(model)
	for _, key := range known {
		text, ok := own[key]
		switch missing, extra := differ(placeholders(text), placeholders(model[key])); {
		case !ok:
			src.say(src.at("%s", key), fmt.Sprintf("the words for %s are missing", quote(key)), fmt.Sprintf("Add under %s: %s: %q", strings.Split(key, ".")[0], strings.SplitN(key, ".", 2)[1], model[key]))
		case extra != "":
			src.say(src.at("%s", key), fmt.Sprintf("nothing fills in %s here", extra), fmt.Sprintf("The built-in words are: %q", model[key]))
		case missing != "":
			src.doubt(src.at("%s", key), fmt.Sprintf("%s is left out", missing), fmt.Sprintf("The built-in words are: %q", model[key]))
		}
	}
	for _, key := range sortedKeys(own) {
		if _, ok := model[key]; !ok && !src.full() {
			src.doubt(src.at("%s", key), fmt.Sprintf("nothing uses the words %s", quote(key)), offer(key, known))
		}
	}
}

func placeholders(text string) []string { return placeholder.FindAllString(text, -1) }

// differ gives the first of model that own lacks, and the first of own that
// model lacks.
func differ(own, model []string) (missing, extra string) {
	for _, p := range model {
		if missing == "" && !slices.Contains(own, p) {
			missing = p
		}
	}
	for _, p := range own {
		if extra == "" && !slices.Contains(model, p) {
			extra = p
		}
	}
	return missing, extra
}

func sortedKeys(w program.Words) []string {
	keys := make([]string, 0, len(w))
	for key := range w {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}

// sayings are words for what is wrong. They are read when something is first said, for
// mostly nothing is.
type sayings func() program.Words

// wordless are those where nobody will read what is wrong.
func wordless() program.Words { return nil }

// over are sayings, English ones for what they lack.
func (english sayings) over(own program.Words) sayings {
	return sync.OnceValue(func() program.Words {
		all := maps.Clone(english())
		maps.Copy(all, own)
		return all
	})
}

// ReadWords reads the words of a coach's language, over English ones: these alone,
// where nothing tells which language that is. It reports no problem.
func ReadWords(coach, builtIn fs.FS) program.Words {
	f := newFolder(coach, builtIn)
	all := maps.Clone(f.english())
	about, _ := f.readStudio()
	for _, words := range []program.Words{wordsFrom(builtIn, about.Lang), wordsFrom(coach, cmp.Or(about.Lang, original))} {
		maps.Copy(all, words)
	}
	return all
}
