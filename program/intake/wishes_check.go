package intake

import (
	"fmt"
	"path"
	"slices"
	"time"

	"gatepost/program"
)

// namer turns the names in a file of wishes into ids, and sees that no two wishes
// contradict each other.
type namer struct {
	*hand
	library *shelf
	kit     *names
	client  *client // nil: the studio's rules
}

// wrong notes an error about a key of a wish.
func (n *namer) wrong(d *draft, key string, wrong ...string) {
	n.note(fault(wrong).in(n.words(), n.at("%s%s", d.path, key)))
}

// check goes through all wishes of the file.
func (n *namer) check() {
	for i := range n.drafts {
		d := &n.drafts[i]
		switch d.Kind {
		case program.WishPrefer:
			n.exercise(d, "", &d.Exercise)
			n.checkPurpose(d)
		case program.WishAvoid:
			n.exercise(d, "", &d.Exercise)
		case program.WishInstead:
			n.exercise(d, ".exercise", &d.Exercise)
			n.exercise(d, ".use", &d.Use)
		case program.WishAdd:
			n.exercise(d, ".exercise", &d.Exercise)
			n.checkDose(d)
		case program.WishAt:
			n.checkPlaceKit(d)
		case program.WishSet:
			n.checkSet(d)
		}
		n.checkTwice(i)
	}
	n.checkAvoided()
}

// exercise turns a name into an id. What the coach took away from the library is said,
// and kept as gone.
func (n *namer) exercise(d *draft, key string, written *string) {
	switch id, ok := n.library.exerciseNames.find(*written); {
	case *written == "" || n.library.broken[fold(*written)]:
		d.Gone = true
	case ok:
		*written = id
	case n.library.removed[fold(*written)] != "":
		*written, d.Gone = fold(*written), true
	default:
		n.wrong(d, key, "unknown_exercise", "written", quote(*written), "offer", offerIn(n.words(), *written, n.library.exerciseNames.list))
		d.Gone = true
	}
}

// checkPurpose asks whether an exercise is for what it is preferred for.
func (n *namer) checkPurpose(d *draft) {
	e, ok := n.library.Exercise(d.Exercise)
	if !ok || d.Gone || slices.Contains(e.Trains, d.Purpose) {
		return
	}
	var fit []string
	for _, x := range n.library.Exercises {
		if len(x.Trains) > 0 && x.Trains[0] == d.Purpose {
			fit = append(fit, x.ID)
		}
	}
	n.wrong(d, "", "not_for_purpose", "exercise", quote(e.ID), "purpose", quote(string(d.Purpose)), "offer", offerIn(n.words(), "", fit))
}

// checkDose refuses seconds of what is counted, and the other way round.
func (n *namer) checkDose(d *draft) {
	e, ok := n.library.Exercise(d.Exercise)
	switch {
	case !ok || d.Gone:
	case e.Dose.Reps > 0 && d.Hold > 0:
		n.wrong(d, ".hold", "added_held", "exercise", quote(e.ID), "example", fmt.Sprintf("reps: %d", e.Dose.Reps))
	case e.Dose.Reps == 0 && d.Reps > 0:
		n.wrong(d, ".reps", "added_counted", "exercise", quote(e.ID), "example", fmt.Sprintf("hold: %d s", e.Dose.Hold))
	}
}

// checkPlaceKit turns what there is at a place into the words that exercises use.
func (n *namer) checkPlaceKit(d *draft) {
	var kit []string
	for i, written := range d.Kit {
		id, known := n.kit.find(written)
		switch {
		case written == "" || isNone(n.library.Words, written):
		case fold(written) == "bands":
			kit = append(kit, "bands")
		case !known:
			n.wrong(d, fmt.Sprintf(".kit[%d]", i), "unknown_kit", "written", quote(written), "offer", offerIn(n.words(), written, n.kit.list))
		case !slices.Contains(kit, id):
			kit = append(kit, id)
		}
	}
	d.Kit = kit
}

// checkSet looks at a week that is set by hand as at a test of the same step.
func (n *namer) checkSet(d *draft) {
	c := n.client
	has := func(key string) bool { return n.given(d.path + "." + key) }
	if c.roadMap == nil {
		return
	}
	if d.Step != "" {
		if id, ok := c.library.stepNames[c.roadMap.ID].find(d.Step); ok {
			d.Step = id
		} else {
			n.wrong(d, ".step", "unknown_step", "written", quote(d.Step), "offer", c.library.stepNames[c.roadMap.ID].offer(n.words(), d.Step))
		}
	}
	only := func(keys ...string) {
		for _, key := range keys {
			if has(key) && !n.wrongAt(d.path+"."+key) {
				n.wrong(d, "."+key, "not_set_here", "key", quote(key), "skill", quote(c.roadMap.ID))
			}
		}
	}
	switch load := c.roadMap.Load; {
	case c.balances():
		only("bands", "drop", "pad", "block", "reps", "ahead")
	case load == program.LoadPress:
		only("bands", "drop", "block", "hold", "tries", "ahead")
	case load == program.LoadLift:
		only("bands", "drop", "pad", "hold", "tries", "ahead")
	default:
		only("pad", "block", "reps", "tries")
	}
	if d.Reps > 0 {
		d.Hold = program.SecondsPerRep * d.Reps
	}
	if has("drop") && !has("bands") {
		n.wrong(d, ".drop", "drop_alone")
	}
	n.setBands(d)
}

// setBands turns names of bands into those of the client's list, in its order.
func (n *namer) setBands(d *draft) {
	if d.Rig == nil {
		return
	}
	if len(d.Rig.Bands) > 2 {
		n.wrong(d, ".bands", "test_three_bands")
	}
	bands := bandNames(n.client.Bands)
	var used []string
	for i, written := range d.Rig.Bands {
		if id := n.band(bands, fmt.Sprintf("%s.bands[%d]", d.path, i), written, used); id != "" {
			used = append(used, id)
		}
	}
	d.Rig.Bands = bands.inOrder(used)
}

// checkTwice refuses a wish that speaks of the same thing as one above it.
func (n *namer) checkTwice(i int) {
	d := &n.drafts[i]
	for j := range n.drafts[:i] {
		if o := &n.drafts[j]; sameThing(&d.Wish, &o.Wish) {
			line := fmt.Sprint(n.at("%s", o.path).Line)
			n.wrong(d, "", "wish_"+string(d.Kind)+"_twice", "line", line)
			return
		}
	}
}

// sameThing reports whether two wishes are for one and the same.
func sameThing(a, b *program.Wish) bool {
	if a.Kind != b.Kind {
		return false
	}
	meet := (a.To == 0 || b.From <= a.To) && (b.To == 0 || a.From <= b.To)
	switch a.Kind {
	case program.WishAvoid:
		return a.Exercise == b.Exercise && a.Exercise != ""
	case program.WishInstead:
		return a.Exercise == b.Exercise && a.From == b.From && a.From != 0
	case program.WishSet:
		return a.Week == b.Week && a.Week != 0
	case program.WishAdd:
		day := slices.ContainsFunc(a.Days, func(d time.Weekday) bool { return slices.Contains(b.Days, d) })
		return a.Exercise == b.Exercise && a.Exercise != "" && meet && day
	case program.WishAt:
		return meet && a.From != 0 && b.From != 0
	case program.WishRule:
		return a.Rule == b.Rule && slices.Equal(a.Days, b.Days)
	}
	return false
}

// checkAvoided refuses to ask for what the same file avoids.
func (n *namer) checkAvoided() {
	avoided := map[string]int{}
	for _, d := range n.drafts {
		if d.Kind == program.WishAvoid && d.Exercise != "" {
			avoided[d.Exercise] = n.at("%s", d.path).Line
		}
	}
	for i := range n.drafts {
		d := &n.drafts[i]
		asked, key := d.Exercise, ""
		switch d.Kind {
		case program.WishPrefer:
		case program.WishAdd:
			key = ".exercise"
		case program.WishInstead:
			asked, key = d.Use, ".use"
		default:
			continue
		}
		if line := avoided[asked]; line > 0 {
			n.wrong(d, key, "wish_avoided", "exercise", quote(asked), "line", fmt.Sprint(line))
		}
	}
}

// all are the wishes of a file.
func (h *hand) all(studio bool) program.Wishes {
	if h == nil {
		return nil
	}
	var all program.Wishes
	for _, d := range h.drafts {
		d.Wish.Studio = studio
		all = append(all, d.Wish)
	}
	return all
}

// written is the file itself; nil where there is none.
func (h *hand) written() *source {
	if h == nil {
		return nil
	}
	return h.source
}

// readRules reads the studio's rules.
func (f *folder) readRules(library *shelf, kit *names) *hand {
	h := f.readHand(rulesFile, sample(&library.Library), true)
	if h != nil {
		(&namer{hand: h, library: library, kit: kit}).check()
	}
	return h
}

// readWishes reads what the coach asks for one client, and lays it over the studio's.
func (f *folder) readWishes(c *client, studio *hand, library *shelf, kit *names) {
	dir := path.Join(clientsFolder, c.Slug)
	f.checkHandName(dir)
	if !c.waiting {
		c.hand = f.readHand(path.Join(dir, coachFile), sample(&library.Library), false)
	}
	if c.hand != nil {
		(&namer{hand: c.hand, library: library, kit: kit, client: c}).check()
	}
	c.Wishes = append(studio.all(true), c.hand.all(false)...)
	c.Rules = rulesIn(c.Wishes)
}

// forEverybody are the studio's wishes that a program without a client and without dates
// can have.
func (h *hand) forEverybody() program.Wishes {
	return slices.DeleteFunc(h.all(true), func(w program.Wish) bool {
		return w.Kind != program.WishAvoid && w.Kind != program.WishPrefer && w.Kind != program.WishRule
	})
}
