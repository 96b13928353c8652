package intake

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// plansFolder holds the plans that hung on the wall, in a client's folder: one
// file a version, named after the day it was made and its number. They are
// written by the program and never changed again.
const plansFolder = "plans"

var planName = regexp.MustCompile(`^(\d{4}-\d\d-\d\d)-([1-9]\d{0,5})\.json$`)

// PlanFile is the name of a version's file below the client's folder.
func PlanFile(v *program.PlanVersion) string {
	return fmt.Sprintf("%s/%s-%d.json", plansFolder, v.On, v.Version)
}

// readPlans reads a client's kept plans.
func (f *folder) readPlans(c *client) {
	dir := path.Join(clientsFolder, c.Slug, plansFolder)
	for _, e := range f.entries(f.coach, dir) {
		name := planName.FindStringSubmatch(e.Name())
		if name == nil {
			f.doubt(dir+"/"+e.Name(), "this file is not read", "Kept plans are called like 2027-02-12-2.json.")
			continue
		}
		src, ok := f.open(f.coach, dir+"/"+e.Name(), false)
		if !ok {
			continue
		}
		c.plans = append(c.plans, src)
		if v, ok := src.readPlan(); ok && src.namedAfter(&v, name) {
			c.Plans = append(c.Plans, v)
		}
	}
	c.orderPlans(dir)
	c.checkClock()
}

// checkClock says that a time of day waits for a plan to be kept with it.
func (c *client) checkClock() {
	n := len(c.Plans)
	if n == 0 || !c.sound() || c.Plans[n-1].Clock == c.Training.Clock {
		return
	}
	path := "training.time"
	if !c.given(path) {
		path = "training"
	}
	c.unusual(path, "time_waits", "client", c.Slug)
}

// orderPlans sorts by version, and refuses two of one number or a later one made
// earlier.
func (c *client) orderPlans(dir string) {
	slices.SortStableFunc(c.Plans, func(a, b program.PlanVersion) int { return cmp.Compare(a.Version, b.Version) })
	for i := 1; i < len(c.Plans); i++ {
		before, after := &c.Plans[i-1], &c.Plans[i]
		file := program.Place{File: path.Join(path.Dir(dir), PlanFile(after))}
		switch {
		case before.Version == after.Version:
			c.say(file, fmt.Sprintf("there are two plans of version %d", after.Version), "Take away the one that did not hang on the wall.")
		case before.On > after.On:
			c.say(file, fmt.Sprintf("version %d was made before version %d", after.Version, before.Version), "Kept plans are not to be renamed; put the names back.")
		}
	}
}

func (s *source) namedAfter(v *program.PlanVersion, name []string) bool {
	if v.On.String() == name[1] && strconv.Itoa(v.Version) == name[2] {
		return true
	}
	s.sayFile(fmt.Sprintf("the file holds version %d, made on %s", v.Version, v.On), "Its name must say the same: "+path.Base(PlanFile(v)))
	return false
}

func (s *source) sayFile(message, advice string) {
	s.say(program.Place{File: s.file}, message, advice)
}

// readPlan reads one kept plan, strictly: it decides what was asked of a client.
func (s *source) readPlan() (program.PlanVersion, bool) {
	var v program.PlanVersion
	text := strings.Join(s.lines, "\n")
	dec := json.NewDecoder(strings.NewReader(text))
	dec.DisallowUnknownFields()
	err := dec.Decode(&v)
	if err == nil {
		if _, more := dec.Token(); more != io.EOF {
			err = errors.New("there is more after the plan")
		}
	}
	if err != nil {
		s.say(s.placeOf(text, err), "this is not a plan as it was kept: "+plain(err), planAdvice)
		return v, false
	}
	if wrong := planFault(&v); wrong != "" {
		s.sayFile("this is not a plan as it was kept: "+wrong, planAdvice)
		return v, false
	}
	return v, true
}

const planAdvice = "Kept plans are not to be edited; take the file from a copy, or take it away if that plan never hung on the wall."

// placeOf is the line where reading stopped, where that is known.
func (s *source) placeOf(text string, err error) program.Place {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	var at int64
	switch {
	case errors.As(err, &syntax):
		at = syntax.Offset
	case errors.As(err, &kind):
		at = kind.Offset
	default:
		return program.Place{File: s.file}
	}
	return program.Place{File: s.file, Line: 1 + strings.Count(text[:min(at, int64(len(text)))], "\n")}
}

// plain is an error of the JSON reader without its Go names.
func plain(err error) string {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		field := kind.Field[strings.LastIndex(kind.Field, ".")+1:]
		return fmt.Sprintf("%s can't be a %s", strings.ToLower(field), kind.Value)
	}
	if errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) {
		return "it ends in the middle"
	}
	return strings.TrimPrefix(err.Error(), "json: ")
}

// planFault says what no plan can be.
func planFault(v *program.PlanVersion) string {
	switch n := len(v.Weeks); {
	case v.Version < 1 || v.On == 0:
		return "it has no version or no day"
	case n == 0 || n > 53:
		return fmt.Sprintf("it has %d weeks", n)
	}
	if v.Time < 0 || v.Time >= 24*60 || v.Remind < 0 || v.Remind > longestReminder {
		return fmt.Sprintf("its sessions begin %d minutes after midnight", v.Time)
	}
	for i, step := range v.Passed {
		if step == "" || slices.Contains(v.Passed[:i], step) {
			return fmt.Sprintf("the gate of %q can't have been passed twice, or by no step", step)
		}
	}
	for _, f := range v.Forecasts {
		if f.Step == "" || f.Chance < 0 || f.Chance > 1 {
			return fmt.Sprintf("it forecasts %q with a chance of %g", f.Step, f.Chance)
		}
	}
	for i := range v.Weeks {
		w := &v.Weeks[i]
		switch {
		case w.Start != w.Start.Monday() || i > 0 && w.Start != v.Weeks[i-1].Start+7:
			return fmt.Sprintf("week %d starts on %s", i+1, w.Start)
		case w.Number != i+1:
			return fmt.Sprintf("week %d has the number %d", i+1, w.Number)
		case !slices.Contains(weekKinds, w.Kind):
			return fmt.Sprintf("week %d is of the kind %q", i+1, w.Kind)
		case w.Stance.Drawn():
			return "figures are not kept"
		}
		if wrong := sessionFault(w); wrong != "" {
			return wrong
		}
	}
	return ""
}

var roles = []program.Role{program.RolePrepare, program.RoleTest, program.RoleAhead, program.RoleMain, program.RoleSecond,
	program.RoleStrength, program.RolePull, program.RolePush, program.RoleTrunk, program.RoleMobility}

var weekKinds = []program.WeekKind{program.WeekBuild, program.WeekDeload, program.WeekTest, program.WeekAway}

func sessionFault(w *program.Week) string {
	for i, s := range w.Sessions {
		if s.Date < w.Start || s.Date > w.Start+6 || i > 0 && s.Date <= w.Sessions[i-1].Date {
			return fmt.Sprintf("week %d has a session on %s", w.Number, s.Date)
		}
		for _, p := range s.Items {
			if p.Rig.Pad < 0 || p.Rig.Pad > deepest/100. {
				return fmt.Sprintf("the session on %s has pads of %g m", s.Date, p.Rig.Pad)
			}
			if p.Rig.Pull < 0 || p.Rig.Pull > mostMark {
				return fmt.Sprintf("the session on %s has a band that pulls %g N", s.Date, p.Rig.Pull)
			}
			if wrong := markFault(&p); wrong != "" {
				return fmt.Sprintf("the session on %s %s", s.Date, wrong)
			}
			if p.Rig.Block < 0 || p.Rig.Block > highestBlock/100. {
				return fmt.Sprintf("the session on %s has a block of %g m", s.Date, p.Rig.Block)
			}
			if p.Exercise == "" || !slices.Contains(roles, p.Role) || p.Sets < 0 || p.Sets > 99 || p.Hold < 0 || p.Hold > 600 || p.Reps < 0 || p.Reps > 999 {
				return fmt.Sprintf("the session on %s has %d × %d s or %d of %q as %q", s.Date, p.Sets, p.Hold, p.Reps, p.Exercise, p.Role)
			}
		}
	}
	return ""
}

// markFault says what no marks of an item can be.
func markFault(p *program.Prescription) string {
	measure, _ := p.Measured()
	if (p.Find.Any() || len(p.Found) > 0) && measure == program.MeasureNone {
		return fmt.Sprintf("finds a mark of %q, which has none", p.Exercise)
	}
	var at []float64
	for _, m := range p.Find.Marks {
		at = append(at, m.At)
	}
	for _, f := range p.Found {
		at = append(at, f.Mark, f.At)
	}
	for _, x := range at {
		if x <= 0 || x > mostMark {
			return fmt.Sprintf("has a mark of %g", x)
		}
	}
	if p.Find.Any() && (p.Find.RPE < 1 || p.Find.RPE > 10 || p.Find.For < 0 || p.Find.For > 600) {
		return fmt.Sprintf("finds a mark at RPE %d in place of %d s", p.Find.RPE, p.Find.For)
	}
	return ""
}

// mostMark is more than any mark can be: of m it is out of a room, of N a heavy body.
const mostMark = 2500
