package intake

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

// # The coach's own hand
//
// coach.yaml in a client's folder is what the coach asks of that client's plans;
// content/rules.yaml asks it of all of them. Both are lists of wishes under a few keys.
// Here they are read and named; what a plan makes of them is the planner's.

const (
	coachFile = "coach.yaml"
	rulesFile = "content/rules.yaml"
)

// draft is a wish while it is read: where it stands in its file.
type draft struct {
	program.Wish
	path string
}

// hand is a file of wishes.
type hand struct {
	*source
	drafts []draft
}

// drills are exercises beside the main work that examples speak of: of each purpose the
// one that is taken first, or the purpose where there is none.
func (s *samples) drills(lib *program.Library) {
	best := func(p program.Purpose) string {
		id, rank := strings.ReplaceAll(string(p), " ", "-"), -1
		for i := range lib.Exercises {
			if e := &lib.Exercises[i]; len(e.Trains) > 0 && e.Trains[0] == p && e.Rank > rank {
				id, rank = e.ID, e.Rank
			}
		}
		return id
	}
	s.Row, s.PullUp, s.Push, s.Line = best(program.ForRow), best(program.ForPullUp), best(program.ForPush), best(program.ForHandstand)
	s.Easier = best(program.ForBlades)
}

// wishes are the keys of the file. Of the studio's nothing is set by the week: every
// client's block has weeks of its own.
func (h *hand) wishes(like samples, studio bool) read {
	fields := []field{
		may("avoid", "["+like.PullUp+"]", h.list(program.WishAvoid, func(w *program.Wish) read { return text(&w.Exercise) })),
		may("prefer", "{row: "+like.Row+"}", h.prefers),
		may("instead", "[{on: 2027-01-15, exercise: "+like.Push+", use: "+like.Easier+"}]", h.list(program.WishInstead, like.insteadFields)),
		may("add", "[{days: [tue], exercise: "+like.Line+", sets: 4, hold: 30 s}]", h.list(program.WishAdd, like.addFields)),
		may("say", `[{from: 2027-01-11, to: 2027-01-17, text: "Film the side view on Friday."}]`, h.list(program.WishSay, sayFields)),
		may("at", "[{from: 2027-02-15, to: 2027-02-21, kit: [wall], minutes: 30}]", h.list(program.WishAt, atFields)),
		may("rules", "{deload_every: 3, minutes: {sat: 90}}", h.rules()),
	}
	set := h.list(program.WishSet, like.setFields)
	if studio {
		set = func(v value) { v.fault("set_studio", "file", coachFile) }
	}
	return group(append(fields, may("set", "[{week: 3, hold: 10 s, sets: 4}]", set))...)
}

// list reads wishes of one kind.
func (h *hand) list(kind program.WishKind, item func(*program.Wish) read) read {
	return func(v value) {
		var ignored []program.Wish
		each(&ignored, func(*program.Wish) read {
			return func(v value) {
				w := program.Wish{Kind: kind, AllKit: true}
				item(&w)(v)
				h.take(v, w)
			}
		})(v)
	}
}

// take notes a wish that was read.
func (h *hand) take(v value, w program.Wish) {
	w.Place = v.here()
	h.drafts = append(h.drafts, draft{w, v.path})
}

// keyed reads a group whose keys are from a list, as prefer's purposes are; what names a
// key is said where it is none of them.
func (v value) keyed(known []string, unknown string, each func(key string, child value)) {
	if v.node.Kind != yaml.MappingNode {
		v.fault("not_group", "example", v.example())
		return
	}
	seen := map[string]int{}
	for i := 0; i < len(v.node.Content); i += 2 {
		key, val := v.node.Content[i], v.node.Content[i+1]
		at := v.place(key.Line, key.Column)
		n := slices.IndexFunc(known, func(k string) bool { return fold(k) == fold(key.Value) })
		switch {
		case n < 0:
			v.faultAt(at, unknown, "written", quote(key.Value), "offer", offerIn(v.words(), key.Value, known))
		case seen[known[n]] > 0:
			v.faultAt(at, "key_twice", "key", quote(key.Value), "line", strconv.Itoa(seen[known[n]]))
		default:
			seen[known[n]] = key.Line
			child := value{v.source, val, strings.TrimPrefix(v.path+"."+known[n], "."), inner(v.like)}
			child.read(field{key: known[n], like: child.like, read: func(c value) { each(known[n], c) }, needed: true})
		}
	}
}

// preferable are the purposes that an exercise can be preferred for. What holds a step,
// and the lean, are main work, which is set.
func preferable() (names []string) {
	for _, p := range program.Purposes {
		if p != program.ForStep && p != program.ForLean {
			names = append(names, string(p))
		}
	}
	return names
}

func (h *hand) prefers(v value) {
	v.keyed(preferable(), "unknown_purpose", func(purpose string, child value) {
		w := program.Wish{Kind: program.WishPrefer, Purpose: program.Purpose(purpose)}
		text(&w.Exercise)(child)
		h.take(child, w)
	})
}

func (like samples) insteadFields(w *program.Wish) read {
	return func(v value) {
		group(
			must("on", "2027-01-15", date(&w.From, earliest, latest)),
			must("exercise", like.Push, text(&w.Exercise)),
			must("use", like.Easier, text(&w.Use)),
		)(v)
		w.To = w.From
	}
}

// Bounds of what a coach sets: our judgement, as wide as a session can be.
var (
	mainHold  = duration.between(3, 60)
	drillHold = duration.between(3, 300)
)

func (like samples) addFields(w *program.Wish) read {
	return func(v value) {
		group(
			must("days", "[tue]", each(&w.Days, weekday)),
			must("exercise", like.Line, text(&w.Exercise)),
			may("from", "2027-01-11", date(&w.From, earliest, latest)),
			may("to", "2027-02-07", date(&w.To, earliest, latest)),
			may("sets", "4", whole(&w.Sets, 1, 10)),
			may("hold", "30 s", drillHold.whole(&w.Hold)),
			may("reps", "8", whole(&w.Reps, 1, 50)),
		)(v)
		fromMonday(w.Days)
		v.inOrder(w)
		v.one("hold", "reps")
	}
}

// longestSay is how many characters of a coach's words a card has room for.
const longestSay = 120

func sayFields(w *program.Wish) read {
	return func(v value) {
		group(
			must("from", "2027-01-11", date(&w.From, earliest, latest)),
			may("to", "2027-01-17", date(&w.To, earliest, latest)),
			must("text", `"Film the side view on Friday."`, text(&w.Text)),
		)(v)
		if !v.has("to") {
			w.To = w.From
		}
		if n := len([]rune(w.Text)); n > longestSay {
			v.source.note(fault{"say_long", "count", strconv.Itoa(n), "most", strconv.Itoa(longestSay)}.in(v.words(), v.at("%s.text", v.path)))
		}
		v.inOrder(w)
	}
}

func atFields(w *program.Wish) read {
	return func(v value) {
		group(
			must("from", "2027-02-15", date(&w.From, earliest, latest)),
			must("to", "2027-02-21", date(&w.To, earliest, latest)),
			may("kit", "[wall]", each(&w.Kit, text)),
			may("minutes", "30", minutes.between(20, 240).whole(&w.Minutes)),
			may("days", "[tue, thu]", each(&w.Days, weekday)),
		)(v)
		w.AllKit = !v.has("kit")
		fromMonday(w.Days)
		v.inOrder(w)
		if v.node.Kind == yaml.MappingNode && w.AllKit && w.Minutes == 0 && w.Days == nil {
			v.fault("at_nothing", "example", v.like)
		}
	}
}

func (like samples) setFields(w *program.Wish) read {
	return func(v value) {
		var bands []string
		drop, pad, block := program.AnyDrop, 0.0, 0.0
		group(
			must("week", "3", whole(&w.Week, 1, 16)),
			may("step", like.Step, text(&w.Step)),
			may("sets", "4", whole(&w.Sets, 1, 10)),
			may("tries", "10", whole(&w.Sets, 1, mostTries)),
			may("hold", "10 s", mainHold.whole(&w.Hold)),
			may("reps", "5", whole(&w.Reps, 1, 20)),
			may("bands", "[narrow]", each(&bands, text)),
			may("drop", "20 cm", dropLength(&drop)),
			may("pad", "10 cm", length.between(0, deepest).into(&pad)),
			may("block", "20 cm", length.between(0, highestBlock).into(&block)),
			may("ahead", "20 cm", length.between(2, 45).into(&w.Ahead)),
		)(v)
		if v.has("bands") || v.has("pad") || v.has("block") {
			w.Rig = &program.Rig{Bands: bands, Drop: drop, Pad: pad, Block: block}
		}
		v.one("hold", "reps")
		v.one("sets", "tries")
		if v.node.Kind == yaml.MappingNode && v.has("week") && len(v.node.Content) == 2 {
			v.fault("set_nothing", "example", v.like)
		}
	}
}

// inOrder refuses days that end before they begin.
func (v value) inOrder(w *program.Wish) {
	if w.From != 0 && w.To != 0 && w.To < w.From {
		v.fault("wish_back", "from", w.From.String(), "to", w.To.String())
	}
}

// one refuses two keys of which one is enough.
func (v value) one(key, other string) {
	if v.has(key) && v.has(other) {
		v.note(fault{"one_of_both", "key", quote(key), "other", quote(other)}.in(v.words(), v.at("%s.%s", v.path, other)))
	}
}

// readHand reads a file of wishes; nil where there is none. A file of comments alone asks
// for nothing.
func (f *folder) readHand(file string, like samples, studio bool) *hand {
	if !f.exists(file) {
		return nil
	}
	src, ok := f.open(f.coach, file, false)
	if !ok {
		return nil
	}
	src.words = f.said
	h := &hand{source: src}
	blank := func(line string) bool { line = strings.TrimSpace(line); return line == "" || line[0] == '#' }
	if slices.ContainsFunc(src.lines, func(line string) bool { return !blank(line) }) {
		src.readYAML("avoid: ["+like.PullUp+"]", h.wishes(like, studio))
	}
	return h
}

// checkHandName warns of a file that may have been meant as the coach's.
func (f *folder) checkHandName(dir string) {
	for _, e := range f.entries(f.coach, dir) {
		if name := strings.ToLower(e.Name()); name != coachFile && distance(name, coachFile) <= 2 {
			f.problems = append(f.problems, fault{"not_the_hand", "file", coachFile}.doubtIn(f.said(), program.Place{File: dir + "/" + e.Name()}))
		}
	}
}
