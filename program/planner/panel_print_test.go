package planner_test

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gatepost/program"
)

// printer writes a program as text that a coach can read and a line-by-line
// comparison can show: everything that reaches paper, rounded as the trade counts.
// It is the tests' own and shares nothing with what is printed for clients.
type printer struct{ strings.Builder }

// line writes the parts that are not empty.
func (b *printer) line(parts ...string) {
	parts = slices.DeleteFunc(parts, func(s string) bool { return s == "" })
	b.WriteString(strings.Join(parts, " ") + "\n")
}

// printed is a program, and the review that it came from where there was one.
func printed(p *program.Program, r *program.Review, problems program.Problems) string {
	b := &printer{}
	for _, problem := range problems {
		b.line("problem", problem.Message)
	}
	if r != nil {
		b.review(r)
	}
	b.head(p)
	for i := range p.Weeks {
		b.week(&p.Weeks[i])
	}
	return b.String()
}

func (b *printer) head(p *program.Program) {
	b.notes("withheld", p.Withheld)
	if len(p.Weeks) == 0 {
		return
	}
	b.line("goal", p.Goal.Step, fmt.Sprintf("%d s by %s: %s", p.Goal.Hold, p.Goal.By, share(p.Goal.Chance)), when(p.Goal.Met, "met"))
	b.line("strength", capacity(&p.Capacity))
	b.line("begins at", p.Place, when(p.Rungs, "(on the floor)"))
	for _, s := range p.Steps {
		b.line("step", s.ID, fmt.Sprintf("%.1f N·m, free %.1f s", s.Torque, s.FreeHold))
	}
	for _, f := range p.Forecasts {
		b.line("forecast", f.Step, dates(f.Early, f.Likely, f.Late), "chance "+share(f.Chance), when(f.Held, "held"))
	}
	for _, g := range p.Gates {
		b.line("gate", g.Step, fmt.Sprintf("%d × %d s", g.Sets, g.Hold), nonzero(g.Single, "single %d s"), nonzero(g.Week, "week %d"))
	}
	for _, s := range p.Outline {
		if s.First > 0 {
			b.line("then", s.Step, fmt.Sprintf("weeks %d to %d", s.First, s.Last))
			continue
		}
		b.line("then", s.Step, "from", dates(s.From))
	}
	for _, c := range p.Cues {
		b.line("cue", c.Cue, "saves", share(c.Saves)+",", kilograms(c.Help), rig(c.Rig))
	}
	b.offsets(p.Offsets)
	b.notes("ask", p.Asks)
	b.notes("note", p.Notes)
}

func (b *printer) week(w *program.Week) {
	b.line(fmt.Sprintf("\nweek %d %s %s", w.Number, w.Start, w.Kind), when(w.Gate, "gate"), when(w.Provisional, "provisional"))
	if w.Exercise != "" && w.Sets > 0 {
		b.line("  main", w.Exercise, rig(w.Rig), nonzero(w.Help, "help "+kilograms(w.Help)), centimetres(w.Ahead), toes(w.Scale),
			setsOf(w.SetsLeast, w.Sets)+fmt.Sprintf("%d s, %s of %.1f s (%s meant),", w.Hold, share(float64(w.Hold)/max(w.MaxHold, 0.1)), w.MaxHold, share(w.Effort)),
			fmt.Sprintf("rest %d s", w.Rest))
	}
	b.line("  counted", half(w.HalfSeconds), nonzero(w.MostHalf, "of "+half(w.MostHalf)), fmt.Sprintf("strength %.1f", w.Capacity))
	b.notes("  note", w.Notes)
	seen := map[string]bool{}
	for i := range w.Sessions {
		body := items(&w.Sessions[i])
		if seen[body] {
			continue
		}
		seen[body] = true
		var days []string
		for k := i; k < len(w.Sessions); k++ {
			if s := &w.Sessions[k]; items(s) == body {
				days = append(days, s.Date.Weekday().String()[:3])
			}
		}
		b.line("  "+strings.Join(days, ", "), fmt.Sprintf("(%d min):", w.Sessions[i].Minutes), body)
		b.notes("    dropped", w.Sessions[i].Dropped)
	}
}

// items are a session's items on one line.
func items(s *program.Session) string {
	all := make([]string, len(s.Items))
	for i := range s.Items {
		all[i] = item(&s.Items[i])
	}
	return strings.Join(all, "; ")
}

func item(i *program.Prescription) string {
	length := ""
	switch {
	case i.Reps > 0:
		length = fmt.Sprint(i.Reps)
	case i.Hold > 0:
		length = fmt.Sprintf("%d s", i.Hold)
	default:
		length = "as long as clean"
	}
	b := &printer{}
	b.line(string(i.Role), i.Exercise, setsOf(i.Sets, i.Sets)+length, rig(i.Rig), nonzero(i.Help, "help "+kilograms(i.Help)), centimetres(i.Ahead), toes(i.Scale),
		predicted(i), nonzero(i.Load, "load "+share(i.Load)),
		when(i.EachSide && i.Step != "", "sides alternate"), when(i.EachSide && i.Step == "", "each side"), when(i.InRests, "in rests"), when(i.Max, "max"), when(i.Check, "check"), when(i.Try, "try"), marks(i))
	return strings.TrimSuffix(b.String(), "\n")
}

// predicted is the longest hold there is: what work is planned within, and what of a
// test is likely, which is more.
func predicted(i *program.Prescription) string {
	if i.Max || i.Try {
		return nonzero(i.MaxHold, fmt.Sprintf("likely %.1f s", i.MaxHold))
	}
	return nonzero(i.MaxHold, fmt.Sprintf("of %.1f s", i.MaxHold))
}

// notes are codes with their values, a line each.
func (b *printer) notes(what string, notes []program.Note) {
	for _, n := range notes {
		b.line(what, coded(n))
	}
}

func coded(n program.Note) string {
	words := []string{n.Code}
	for _, v := range n.Values {
		words = append(words, v.Name+"="+value(v))
	}
	return strings.Join(words, " ")
}

func value(v program.Value) string {
	switch v.Kind {
	case program.ValueSeconds, program.ValueTime:
		return fmt.Sprintf("%.1f s", v.Number)
	case program.ValueMetres:
		return fmt.Sprintf("%.0f cm", 100*v.Number)
	case program.ValueNewtons:
		return kilograms(v.Number)
	case program.ValueShare:
		return share(v.Number)
	case program.ValueCount:
		return fmt.Sprintf("%.0f", v.Number)
	case program.ValueDate:
		return program.Date(v.Number).String()
	}
	return v.Text
}

func (b *printer) offsets(all []program.Offset) {
	for _, o := range all {
		b.line("offset", o.Step, o.Exercise, fmt.Sprintf("%+.1f ± %.1f %%", 100*o.Ln, 100*o.Spread))
	}
}

func capacity(c *program.Capacity) string {
	return fmt.Sprintf("%.1f N·m (%.1f to %.1f), endurance %.2f", c.Held12, c.Low, c.High, c.Endurance) +
		when(c.Typical, " typical") + when(c.Untested, " untested")
}

func dates(all ...program.Date) string {
	words := make([]string, len(all))
	for i, d := range all {
		words[i] = d.String()
		if d == 0 {
			words[i] = "beyond"
		}
	}
	return strings.Join(words, " / ")
}

func when(is bool, word string) string {
	if is {
		return word
	}
	return ""
}

// nonzero writes x where it is more than nothing; a format without a verb stands as
// it is.
func nonzero[T int | float64](x T, format string) string {
	switch {
	case x == 0:
		return ""
	case strings.Contains(format, "%d"):
		return fmt.Sprintf(format, x)
	}
	return format
}

// marks are those that an item finds, or what it becomes by them, in cm or kg.
func marks(i *program.Prescription) string {
	measure, _ := i.Measured()
	number := func(at float64) string {
		if measure == program.MeasureScale || measure == program.MeasurePull {
			return fmt.Sprintf("%g", math.Round(2*at/9.80665)/2)
		}
		return fmt.Sprintf("%.0f", 100*at)
	}
	var words []string
	for _, m := range i.Find.Marks {
		words = append(words, fmt.Sprintf("%s (%.0f %%)", number(m.At), 100*m.Load))
	}
	if len(words) > 0 {
		return "finds " + strings.Join(words, ", ") + fmt.Sprintf(" at RPE %d", i.Find.RPE) + when(i.Find.Easy, " if easy")
	}
	for _, f := range i.Found {
		words = append(words, number(f.Mark)+": "+number(f.At))
	}
	return when(len(words) > 0, "found "+strings.Join(words, ", "))
}

func rig(r program.Rig) string {
	if r.Free() {
		return ""
	}
	if r.Pad > 0 {
		return fmt.Sprintf("[pads %.0f cm]", 100*r.Pad)
	}
	if r.Block > 0 {
		return fmt.Sprintf("[block %.0f cm]", 100*r.Block)
	}
	return fmt.Sprintf("[%s, strap %.0f cm]", strings.Join(r.Bands, " + "), 100*r.Drop)
}

// setsOf is a number of sets, or from the least to the most of a week's days.
func setsOf(least, most int) string {
	if least == most || least == 0 {
		return fmt.Sprintf("%d × ", most)
	}
	return fmt.Sprintf("%d to %d × ", least, most)
}

func half(halves int) string           { return fmt.Sprintf("%.1f s", float64(halves)/2) }
func share(x float64) string           { return fmt.Sprintf("%.0f %%", 100*x) }
func kilograms(n float64) string       { return fmt.Sprintf("%.1f kg", n/9.80665) }
func centimetres(ahead float64) string { return nonzero(ahead, fmt.Sprintf("at %.0f cm", 100*ahead)) }
func toes(n float64) string            { return nonzero(n, kilograms(n)+" on the toes") }
