package intake

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gatepost/program"
)

// checkGoal finds the goal's road map and step.
func (c *client) checkGoal() {
	written := c.Goal.Skill
	if written == "" || c.library.broken[fold(written)] {
		return
	}
	c.Goal.Skill = c.resolve(c.library.roadMapNames, "goal.skill", written)
	if m, ok := c.library.RoadMap(c.Goal.Skill); ok && !c.library.broken[m.ID] {
		c.roadMap = m
	}
	c.Goal.Step = c.step("goal.step", c.Goal.Step)
	c.checkCounted("goal")
	c.checkSought()
	if c.Goal.Hold != math.Floor(c.Goal.Hold) {
		c.wrong("goal.hold", "goal_fraction")
	}
}

// step turns a step's name into its id.
func (c *client) step(path, written string) string {
	if c.roadMap == nil || written == "" {
		return written
	}
	return c.resolve(c.library.stepNames[c.roadMap.ID], path, written)
}

// exercise turns an exercise's name into its id.
func (c *client) exercise(path, written string) string {
	if written == "" || c.library.broken[fold(written)] {
		return written
	}
	known := *c.library.exerciseNames
	if offered := c.testable(); len(offered) > 0 {
		known.list = offered
	}
	return c.resolve(&known, path, written)
}

// testable are the exercises whose tests the goal's plan can read: floor rungs and what
// the road map asks for first, then other leans, and counted presses and raises.
func (c *client) testable() (ids []string) {
	if c.roadMap == nil {
		return nil
	}
	leans := false
	for _, r := range c.roadMap.Rungs {
		if r.Kind != program.RungBalance {
			ids = append(ids, r.Exercise)
		}
		leans = leans || r.Kind == program.RungLean
	}
	for _, e := range c.roadMap.Entry {
		ids = append(ids, e.Exercise)
	}
	for _, e := range c.library.Exercises {
		if slices.ContainsFunc(e.Trains, func(p program.Purpose) bool {
			return leans && p == program.ForLean || e.Dose.Reps > 0 && (p == program.ForPush || p == program.ForRaise)
		}) && !slices.Contains(ids, e.ID) {
			ids = append(ids, e.ID)
		}
	}
	return slices.DeleteFunc(ids, func(id string) bool { return id == "" })
}

// mostOffered is how many exercises a warning names.
const mostOffered = 6

// checkRead asks about a test that nothing is reckoned from.
func (c *client) checkRead(path, exercise string) {
	if ids := c.testable(); len(ids) > 0 && c.roadMap.Load != program.LoadBalance && !slices.Contains(ids, exercise) {
		c.unusual(path+".exercise", "test_unread", "exercise", quote(exercise), "exercises", strings.Join(ids[:min(len(ids), mostOffered)], ", "))
	}
}

// resolve turns a name into an id, or notes that nobody knows it.
func (c *client) resolve(known *names, path, written string) string {
	id, ok := known.find(written)
	if !ok {
		c.wrong(path, "unknown_"+strings.ReplaceAll(known.noun, " ", "_"), "written", quote(written), "offer", known.offer(c.words(), written))
	}
	return id
}

func (c *client) checkTests() {
	if c.Training.Best != nil {
		c.checkHold("training.best", c.Training.Best)
	}
	for i := range c.Tests {
		c.checkHold(fmt.Sprintf("tests[%d]", i), &c.Tests[i])
	}
}

// checkHold looks at one test: what was held, how it was helped, how long.
func (c *client) checkHold(path string, h *program.Hold) {
	has := func(key string) bool { return c.given(path + "." + key) }
	switch {
	case has("step") && has("exercise"):
		c.wrong(path+".exercise", "test_of_both")
	case has("step"):
		h.Step = c.step(path+".step", h.Step)
		c.checkStepTest(path, has)
		c.checkTries(path, h, has)
	case has("exercise"):
		h.Exercise = c.exercise(path+".exercise", h.Exercise)
		c.only(path, "exercise", has, "bands", "drop", "pad", "block", "pull", "reached")
		c.checkExerciseTest(path, h, has)
	}
	c.checkStopped(path, h.Stopped, h.Seconds, h.Reps)
	c.checkTestBands(path, &h.Rig)
}

// checkStopped refuses to have stopped what was not held at all.
func (c *client) checkStopped(path string, stopped bool, seconds float64, reps int) {
	if stopped && seconds == 0 && reps == 0 && (c.given(path+".hold") || c.given(path+".reps")) {
		c.wrong(path+".stopped", "stopped_none")
	}
}

// checkStepTest asks for seconds and leaves bands, or of a press or a lift for repetitions
// and leaves pads or blocks.
func (c *client) checkStepTest(path string, has func(string) bool) {
	c.only(path, "step", has, "ahead", "scale")
	if !c.repeats() {
		c.only(path, "step", has, "reps", "pad", "block")
		c.need(path, has, "hold", "10 s")
		return
	}
	other := "block"
	if c.lifts() {
		other = "pad"
	}
	c.only(path, "step", has, "bands", "drop", "pull", other)
	if c.checkCounted(path); !has("hold") {
		c.need(path, has, "reps", "5")
	}
}

// checkExerciseTest asks for the measure that the kind of exercise needs.
func (c *client) checkExerciseTest(path string, h *program.Hold, has func(string) bool) {
	switch e, known := c.library.Exercise(h.Exercise); {
	case has("hold") && has("reps"):
		c.wrong(path+".reps", "test_counted")
	case !has("hold") && !has("reps"):
		c.need(path, has, "hold", "15 s")
	case !known:
	case c.stepOf(e.ID) != "" && c.rung(e.ID) == "":
		c.wrong(path+".exercise", "step_itself", "exercise", quote(e.ID), "line", "step: "+c.stepOf(e.ID))
	case c.rung(e.ID) == program.RungScale:
		c.need(path, has, "scale", "12 kg")
		c.only(path, "drill", has, "ahead")
	case c.rung(e.ID) == program.RungLean || slices.Contains(e.Trains, program.ForLean) && has("hold"):
		c.need(path, has, "ahead", "20 cm")
		c.only(path, "drill", has, "scale")
	default:
		c.only(path, "drill", has, "ahead", "scale")
		c.checkRead(path, e.ID)
	}
}

// rung is what the goal's road map uses an exercise for before its first step.
func (c *client) rung(exercise string) program.RungKind {
	if c.roadMap == nil {
		return ""
	}
	for _, r := range c.roadMap.Rungs {
		if r.Exercise == exercise {
			return r.Kind
		}
	}
	return ""
}

// stepOf is the step of the goal's road map that an exercise holds.
func (c *client) stepOf(exercise string) string {
	if c.roadMap == nil {
		return ""
	}
	for _, s := range c.roadMap.Steps {
		if s.Exercise == exercise {
			return s.ID
		}
	}
	return ""
}

func (c *client) need(path string, has func(string) bool, key, like string) {
	if !has(key) {
		c.lacks(path, must(key, like, nil))
	}
}

func (c *client) only(path, what string, has func(string) bool, keys ...string) {
	for _, key := range keys {
		if has(key) {
			c.wrong(path+"."+key, "not_of_"+what, "key", quote(key))
		}
	}
}

// checkTestBands turns names of bands into those of the list, in its order.
func (c *client) checkTestBands(path string, r *program.Rig) {
	if len(r.Bands) > 2 {
		c.wrong(path+".bands", "test_three_bands")
	}
	if c.given(path+".drop") && len(r.Bands) == 0 {
		c.wrong(path+".drop", "drop_alone")
	}
	bands := bandNames(c.Bands)
	var used []string
	for i, written := range r.Bands {
		if id := c.band(bands, fmt.Sprintf("%s.bands[%d]", path, i), written, used); id != "" {
			used = append(used, id)
			c.checkRetired(fmt.Sprintf("%s.bands[%d]", path, i), id)
		}
	}
	r.Bands = bands.inOrder(used)
	c.checkPull(path, r)
}

// checkPull asks for what a scale read where a test was under a band that nobody measured,
// and refuses it of any other.
func (c *client) checkPull(path string, r *program.Rig) {
	given, weighed := c.given(path+".pull"), false
	for i, name := range r.Bands {
		at := fmt.Sprintf("%s.bands[%d]", path, i)
		if b := slices.IndexFunc(c.Bands, func(b program.Band) bool { return b.Name == name }); b < 0 || c.Bands[b].Measured() {
			continue
		}
		switch weighed = true; {
		case len(r.Bands) > 1:
			c.wrong(at, "pull_beside", "band", quote(name))
		case c.given(path + ".drop"):
			c.wrong(path+".drop", "pull_no_strap", "band", quote(name))
		case !given:
			c.wrong(at, "pull_lacks", "band", quote(name))
		}
	}
	if given && !weighed && !c.given(path+".exercise") {
		c.wrong(path+".pull", "pull_of_none")
	}
}

// checkRetired refuses a test of the assessment's day with a band that was gone by
// then. A former best may have had it.
func (c *client) checkRetired(path, id string) {
	for _, b := range c.Bands {
		if b.Name == id && b.Retired != 0 && b.Retired <= c.Measured && strings.HasPrefix(path, "tests") {
			c.wrong(path, "test_retired", "band", quote(id), "gone", b.Retired.String(), "day", c.Measured.String())
		}
	}
}

func bandNames(bands []program.Band) *names {
	all := newNames("band")
	for _, b := range bands {
		all.add(b.Name, b.Name)
	}
	return all
}

// band turns one band's name into that of the list; empty where it is none, or used already.
func (s *source) band(bands *names, path, written string, used []string) string {
	id, known := bands.find(written)
	wrong := fault{"test_band_twice", "band", quote(id)}
	switch {
	case written == "":
		return ""
	case !known:
		wrong = fault{"unknown_band", "written", quote(written), "offer", offerIn(s.words(), written, bands.list)}
	case !slices.Contains(used, id):
		return id
	}
	s.note(wrong.in(s.words(), s.at("%s", path)))
	return ""
}
