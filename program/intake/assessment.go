package intake

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"time"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

// years that a file may speak of: a client of 99 may be assessed in 2000.
const (
	earliestBirth = 1900
	earliest      = 2000
	latest        = 2150
)

// assessment is the file of one client. Limits of bodies and times are our
// judgement: wide enough for every athlete, narrow enough to catch a wrong unit.
func assessment(a *program.Assessment, like samples) read {
	return group(
		must("name", "Maren", text(&a.Athlete.Name)),
		may("called", "Maren", text(&a.Athlete.Called)),
		may("sex", "female", choice(&a.Athlete.Sex, program.SexFemale, program.SexMale, program.SexUnspecified)),
		must("born", "1991-04-02", date(&a.Athlete.Born, earliestBirth, latest)),
		must("measured", "2027-01-04", date(&a.Measured, earliest, latest)),
		may("share", "print", choice(&a.Share, program.SharePrint, program.ShareSite)),
		may("page", "7k2mxq9f4bd3w", text(&a.Page)),
		may("plan", "plain", choice(&a.Detail, program.DetailFull, program.DetailPlain)),
		may("large", "yes", yesNo(&a.Large)),
		must("body", "{mass: 58 kg, height: 166 cm}", body(&a.Athlete)),
		must("training", "{experience: 8 months, days: [mon, wed, fri], minutes: 60}", training(&a.Training, like)),
		must("health", "{wrists: fine, elbows: fine, shoulders: fine}", health(&a.Health)),
		must("goal", fmt.Sprintf("{skill: %s, step: %s, hold: 10 s, by: 2027-11-30}", like.Skill, like.Step), goal(&a.Goal, like)),
		may("kit", "[parallettes, wall]", each(&a.Kit, text)),
		may("bands", "[{name: narrow, rest: 100 cm, pulls: [{at: 130 cm, force: 1.6 kg}, {at: 190 cm, force: 3.0 kg}]}]", each(&a.Bands, band)),
		may("rig", "{anchor: 215 cm}", rig(&a.Hanging)),
		may("tests", fmt.Sprintf("[{step: %s, hold: 14 s}]", like.FirstStep), each(&a.Tests, like.hold)),
		may("other_tests", fmt.Sprintf("[{skill: %s, step: %s, hold: 10 s}]", like.Skill, like.Step), each(&a.Others, func(o *program.OtherTest) read { return otherTest(o, like) })),
	)
}

func body(a *program.Athlete) read {
	return group(
		must("mass", "58 kg", mass.between(25, 250).usually(35, 140).into(&a.Mass)),
		must("height", "166 cm", length.between(100, 250).usually(130, 210).into(&a.Height)),
		may("arm_span", "168 cm", length.between(80, 300).into(&a.ArmSpan)),
		may("straddle", "110 deg", angle.between(20, 200).usually(50, 175).into(&a.Straddle)),
		may("fold", "130 deg", foldOfHips.into(&a.Fold)),
		may("balance_point", "91 cm", length.between(40, 160).into(&a.BalancePoint)),
	)
}

// foldOfHips is how far hips bend: from upright, at 0, to the chest on the thighs.
var foldOfHips = angle.between(60, 180).usually(90, 165)

func training(t *program.Training, like samples) read {
	return group(
		must("experience", "8 months", trainingAge.between(0, 60).usually(0, 30).into(&t.Experience)),
		may("since", "2026-06-01", date(&t.Since, earliestBirth, latest)),
		may("best", fmt.Sprintf("{step: %s, hold: 8 s}", like.Step), best(&t.Best, like)),
		may("other", "[{day: tue, what: rowing, hard: true}]", each(&t.Other, otherTraining)),
		must("days", "[mon, wed, fri]", each(&t.Days, weekday)),
		must("minutes", "60", minutes.between(20, 240).whole(&t.Minutes)),
		may("away", "[2027-02-15/2027-02-21]", each(&t.Away, interval)),
		may("ill", "[2027-03-08/2027-03-12]", each(&t.Ill, interval)),
		may("start", "2027-01-11", date(&t.Start, earliest, latest)),
		may("weeks", "12", weeks.between(4, 16).whole(&t.Weeks)),
		may("time", `"18:00"`, timeOfDay(&t.Time)),
		may("remind", "2 h", minutes.between(5, longestReminder).whole(&t.Remind)),
	)
}

// longestReminder is in minutes (our judgement): two days.
const longestReminder = 2 * 24 * 60

// timeOfDay reads "18:00" as minutes after midnight. Between midnight and five nobody
// trains (our judgement); it will have been an afternoon.
func timeOfDay(to *int) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		at, err := time.Parse("15:04", s)
		if err != nil || at.Hour() < 5 {
			v.fault("time_of_day", "written", quote(s), "example", v.example())
			return
		}
		*to = 60*at.Hour() + at.Minute()
	}
}

func otherTraining(o *program.OtherTraining) read {
	return group(
		must("day", "tue", weekday(&o.Day)),
		must("what", "rowing", text(&o.What)),
		may("hard", "true", yesNo(&o.Hard)),
	)
}

// health asks for all three joints: one that nobody asked about is not fine.
func health(h *program.Health) read {
	joint := func(j *program.Joint) read {
		return choice(j, program.JointFine, program.JointSore, program.JointInjured)
	}
	return group(
		must("wrists", "fine", joint(&h.Wrists)),
		must("elbows", "fine", joint(&h.Elbows)),
		must("shoulders", "fine", joint(&h.Shoulders)),
		may("guardian", `"A. Name"`, optionalText(&h.Guardian)),
		may("conditions", "[high blood pressure]", each(&h.Conditions, text)),
		may("cleared_by", `"A. Name, 2027-01-02"`, clearance(&h.ClearedBy)),
	)
}

// clearance reads "A. Name, 2027-01-02"; "" means none was needed.
func clearance(c *program.Clearance) read {
	return func(v value) {
		var s string
		optionalText(&s)(v)
		comma := strings.LastIndex(s, ",")
		switch {
		case s == "" || comma < 0 && isNone(v.words(), s):
			return
		case comma <= 0:
			v.fault("clearance_form", "written", quote(s), "example", v.example())
			return
		}
		if on, ok := v.date(strings.TrimSpace(s[comma+1:]), earliest, latest); ok {
			*c = program.Clearance{Name: strings.TrimSpace(s[:comma]), On: on}
		}
	}
}

func goal(g *program.Goal, like samples) read {
	return goalFields(g, like, must("by", "2027-11-30", date(&g.By, earliest, latest)))
}

// goalFields read what is to be shown, and what else a goal has.
func goalFields(g *program.Goal, like samples, more ...field) read {
	return func(v value) {
		amount := v.amountFields(must("hold", "10 s", duration.between(1, 60).usually(2, 30).into(&g.Hold)), may("reps", "5", whole(&g.Reps, 1, 30)))
		group(slices.Concat([]field{must("skill", like.Skill, text(&g.Skill)), must("step", like.Step, text(&g.Step))}, amount, more)...)(v)
		if g.Reps > 0 {
			g.Hold = float64(program.SecondsPerRep * g.Reps)
		}
	}
}

// band is one as it was measured; without pulls, one that nobody measured.
func band(b *program.Band) read {
	return group(
		must("name", "narrow", text(&b.Name)),
		may("rest", "100 cm", length.between(5, 400).usually(15, 250).into(&b.Rest)),
		may("pulls", "[{at: 130 cm, force: 1.6 kg}, {at: 190 cm, force: 3.0 kg}]", each(&b.Pulls, pull)),
		may("at", "hip", choice(&b.At, program.AtHip, program.AtThigh, program.AtAnkle)),
		may("folded", "yes", yesNo(&b.Folded)),
		may("retired", "2027-02-01", date(&b.Retired, earliest, latest)),
	)
}

func pull(p *program.Pull) read {
	return group(
		must("at", "130 cm", length.between(5, 1000).into(&p.At)),
		must("force", "1.6 kg", force.between(0.05, 120).usually(0.1, 80).into(&p.Force)),
	)
}

// bandPull is what a scale reads of a band that nobody measured.
var bandPull = force.between(0.5, 60).usually(0.5, 30)

func rig(h *program.Hanging) read {
	return group(
		may("anchor", "215 cm", length.between(60, 1000).usually(120, 500).into(&h.Anchor)),
		may("offset", "0 cm", length.between(0, 200).usually(0, 60).into(&h.Offset)),
		may("support", "10 cm", length.between(0, 150).usually(0, 60).into(&h.Support)),
		may("drops", "[0 cm, 20 cm, 40 cm]", each(&h.Drops, dropLength)),
		may("strap", "0-80 cm", strapLengths(&h.Strap)),
		may("bar", "230 cm", length.between(150, 350).into(&h.Bar)),
		may("pads", "[5 cm, 10 cm, 15 cm]", each(&h.Pads, padHeight.into)),
		may("blocks", "[10 cm, 20 cm, 30 cm]", each(&h.Blocks, blockHeight.into)),
	)
}

func dropLength(drop *float64) read { return length.between(0, 300).usually(0, 200).into(drop) }

// strapLength is how long a strap can be that is set to any length: our judgement,
// what an arm can still reach above a band.
var strapLength = length.between(0, 100)

// span is two lengths: 0-80 cm, 10 cm - 0.8 m, 0 to 30 in.
var span = regexp.MustCompile(`^([0-9][^\s\p{L}–-]*)\s*(\p{L}*)\s*(?:-|–|to)\s*([0-9][^\s\p{L}–-]*)\s*(\p{L}+)$`)

// strapLengths reads the shortest and the longest that a strap can be set to.
func strapLengths(s *program.Strap) read {
	return func(v value) {
		written, ok := v.scalar()
		if !ok {
			return
		}
		m := span.FindStringSubmatch(written)
		if m == nil {
			key := "strap_lengths"
			if _, fault := length.parse(written); fault == "" {
				key = "strap_single"
			}
			v.fault(key, "written", quote(written), "example", v.example(), "line", "drops: ["+written+"]")
			return
		}
		from := v.part(strapLength, m[1]+" "+cmp.Or(m[2], m[4]))
		if math.IsNaN(from) {
			return // said already
		}
		switch to := v.part(strapLength, m[3]+" "+m[4]); {
		case math.IsNaN(to):
		case from > to:
			v.fault("strap_order", "written", quote(written), "example", v.example())
		default:
			*s = program.Strap{From: from, To: to}
		}
	}
}

// part reads a quantity that is one part of the value; not a number where that
// is wrong.
func (v value) part(q quantity, written string) float64 {
	x, fault := q.parse(written)
	switch {
	case fault != "":
		v.fault("strap_part", "what", v.words().Say("fault."+fault, "written", quote(written)), "example", v.example())
	case !q.within(x, q.least, q.most):
		v.fault(q.outside("impossible", v, written, q.least, q.most)...)
	default:
		return x
	}
	return math.NaN()
}

// longHold: a hold of over a minute tells of endurance, one of over five minutes
// of a slip.
var longHold = duration.between(0, 300).usually(0, 60).because("unusual_hold")

// hold is a test of a step or of an exercise.
func (like samples) hold(h *program.Hold) read {
	keys := group(
		may("step", like.FirstStep, text(&h.Step)),
		may("exercise", like.Lean, text(&h.Exercise)),
		may("bands", "[narrow]", each(&h.Rig.Bands, text)),
		may("drop", "20 cm", dropLength(&h.Rig.Drop)),
		may("pad", "10 cm", padHeight.into(&h.Rig.Pad)),
		may("block", "20 cm", blockHeight.into(&h.Rig.Block)),
		may("pull", "6 kg", bandPull.into(&h.Rig.Pull)),
		may("hold", "10 s", longHold.into(&h.Seconds)),
		may("reps", "8", whole(&h.Reps, 0, 200)),
		may("ahead", "20 cm", length.between(0, 80).usually(0, 45).into(&h.Ahead)),
		may("scale", "12 kg", force.between(0, 120).into(&h.Scale)),
		may("stopped", "yes", yesNo(&h.Stopped)),
		may("reached", "4 of 10", tries(&h.Tries)),
	)
	return func(v value) {
		keys(v)
		if v.node.Kind == yaml.MappingNode && !v.has("step") && !v.has("exercise") {
			v.fault("test_unnamed", "example", v.like)
		}
	}
}

// best is the former best of a step, before a lay-off.
func best(into **program.Hold, like samples) read {
	return func(v value) {
		h := new(program.Hold)
		amount := v.amountFields(must("hold", "8 s", longHold.into(&h.Seconds)), may("reps", "5", whole(&h.Reps, 1, 200)))
		group(slices.Concat([]field{must("step", like.Step, text(&h.Step))}, amount, []field{
			may("bands", "[narrow]", each(&h.Rig.Bands, text)),
			may("drop", "20 cm", dropLength(&h.Rig.Drop)),
			may("pad", "10 cm", padHeight.into(&h.Rig.Pad)),
			may("block", "20 cm", blockHeight.into(&h.Rig.Block)),
			may("pull", "6 kg", bandPull.into(&h.Rig.Pull)),
		})...)(v)
		*into = h
	}
}
