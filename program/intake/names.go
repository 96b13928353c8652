package intake

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"gatepost/program"
)

// slugForm is how folders, files and ids are named.
var slugForm = regexp.MustCompile(`^[a-z0-9-]{1,40}$`)

// fold makes two ways to write a name equal: case, spaces and hyphens.
func fold(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return r == ' ' || r == '-' || r == '\u00a0'
	}), "-")
}

// names finds ids by what people write: the id or the name.
type names struct {
	noun string            // "step"
	ids  map[string]string // folded id or name -> id
	list []string          // ids in order, to offer
}

func newNames(noun string) *names { return &names{noun: noun, ids: map[string]string{}} }

// add makes an id known, and gives the id that has its name or id already.
func (n *names) add(id, name string) (taken string) {
	if id == "" {
		return ""
	}
	if !slices.Contains(n.list, id) {
		n.list = append(n.list, id)
	}
	for _, key := range []string{fold(id), fold(name)} {
		if other, ok := n.ids[key]; ok && other != id {
			taken = other
		} else if key != "" {
			n.ids[key] = id
		}
	}
	return taken
}

// around are ways to call a step together with its skill, folded: "tuck-planche" and
// "planche-tuck".
func around(m *program.RoadMap, s *program.Step) (keys []string) {
	for _, skill := range []string{m.ID, m.Name} {
		for _, step := range []string{s.ID, s.Name} {
			keys = append(keys, fold(step+" "+skill), fold(skill+" "+step))
		}
	}
	return keys
}

// addAround makes the steps of a road map known with their skill's name around them.
// What has another meaning keeps it.
func (n *names) addAround(m *program.RoadMap) {
	for i := range m.Steps {
		for _, key := range around(m, &m.Steps[i]) {
			if _, taken := n.ids[key]; !taken {
				n.ids[key] = m.Steps[i].ID
			}
		}
	}
}

// find turns what was written into an id.
func (n *names) find(written string) (id string, known bool) {
	id, known = n.ids[fold(written)]
	return id, known
}

// offer suggests the id that may have been meant, by any of the ways to call it, or lists
// what there is.
func (n *names) offer(words program.Words, written string) string {
	if nearest(written, n.list) == "" {
		written = cmp.Or(n.ids[similar(written, slices.Sorted(maps.Keys(n.ids)))], written)
	}
	return offerIn(words, written, n.list)
}

// inOrder puts ids into the order in which they were added.
func (n *names) inOrder(ids []string) []string {
	slices.SortFunc(ids, func(a, b string) int { return slices.Index(n.list, a) - slices.Index(n.list, b) })
	return ids
}

// resolve turns what was written into an id, or says what is wrong with it.
func (n *names) resolve(written string) (id, message, advice string) {
	if id, ok := n.find(written); ok {
		return id, "", ""
	}
	return "", fmt.Sprintf("there is no %s %s", n.noun, quote(written)), offer(written, n.list)
}

// StepNamed is the id of a road map's step, found by its id or name. Where there is
// none the error says so, and which may have been meant.
func StepNamed(m *program.RoadMap, written string) (string, error) {
	steps := newNames("step")
	for i := range m.Steps {
		steps.add(m.Steps[i].ID, m.Steps[i].Name)
	}
	steps.addAround(m)
	id, message, advice := steps.resolve(written)
	if message != "" {
		return "", errors.New(message + ". " + advice)
	}
	return id, nil
}

// offer suggests the word that may have been meant, or lists what there is.
func offer(written string, known []string) string {
	best := nearest(written, known)
	switch {
	case best != "":
		return fmt.Sprintf("Did you mean %q?", best)
	case len(known) == 0:
		return "There is none yet."
	}
	const most = 24
	if len(known) > most {
		return "Known are " + strings.Join(known[:most], ", ") + " …"
	}
	return "Known are " + strings.Join(known, ", ") + "."
}

// nearest is the known word that is a few slips away, or that was abbreviated;
// empty where none is.
func nearest(written string, known []string) (best string) {
	best = similar(written, known)
	for _, word := range known {
		if best == "" && abbreviates(fold(written), fold(word)) {
			best = word
		}
	}
	return best
}

// similar is the known word that is a few slips away; empty where none is.
func similar(written string, known []string) (best string) {
	least := 1 + len([]rune(written))/3
	written = fold(written)
	for _, word := range known {
		if apart(written, fold(word)) > least {
			continue // at least so many letters have to come or go
		}
		if d := distance(written, fold(word)); d <= least && (best == "" || d < least) {
			best, least = word, d
		}
	}
	return best
}

// apart is by how many letters two words differ in length.
func apart(a, b string) int {
	n := utf8.RuneCountInString(a) - utf8.RuneCountInString(b)
	return max(n, -n)
}

// abbreviates says that each part of a name begins the next part of another, as
// in "adv-tuck" and "advanced-tuck".
func abbreviates(short, long string) bool {
	parts := strings.Split(short, "-")
	for _, whole := range strings.Split(long, "-") {
		if len(parts) > 0 && strings.HasPrefix(whole, parts[0]) {
			parts = parts[1:]
		}
	}
	return short != "" && len(parts) == 0
}

// distance counts the insertions, deletions, replacements and swaps of
// neighbours between two words (Damerau–Levenshtein, neighbours swapped once).
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	if len(s) > 60 || len(t) > 60 {
		return 60
	}
	var before, above, row []int
	for i := range len(s) + 1 {
		before, above, row = above, row, make([]int, len(t)+1)
		row[0] = i
		for j := 1; j <= len(t); j++ {
			if i == 0 {
				row[j] = j
				continue
			}
			change := 1
			if s[i-1] == t[j-1] {
				change = 0
			}
			row[j] = min(above[j]+1, row[j-1]+1, above[j-1]+change)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return row[len(t)]
}

// quote puts what was written in quotes, long text cut.
func quote(s string) string {
	const most = 60
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return strconv.Quote(s)
}
