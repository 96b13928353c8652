package people

import (
	"math"
	"math/rand/v2"

	"gatepost/program"
)

// Week is what came of a printed week.
type Week struct {
	Entries []program.Entry // as the client wrote them down
	Ill     bool

	Sets, Failed int       // holds with printed seconds; of these, those that were out of reach
	Efforts      []float64 // printed seconds of each main set as a share of the longest true hold

	held     float64 // s with straight arms
	work     float64 // the same, weighed by what they strain
	sessions int     // that held ten seconds or more
}

// Do does a printed week and ends it.
func (p *Person) Do(printed *program.Week) Week {
	var w Week
	d := p.dice(forWeek, p.week)
	p.sick = d.Float64() < p.Ill && !p.sick
	w.Ill = p.sick
	for i := range printed.Sessions {
		skips := d.Float64() > p.keeps
		if !skips && !p.sick {
			p.session(&w, printed, i)
		}
	}
	p.end(printed.Kind, &w)
	return w
}

// session does one printed session.
func (p *Person) session(w *Week, printed *program.Week, nth int) {
	s := &printed.Sessions[nth]
	d := p.dice(forSession, p.week, nth)
	t := training{Person: p, Rand: d, week: w, form: p.Day * d.NormFloat64(), asPrinted: d.Float64() < p.plain}
	before := w.held
	var entries []program.Entry
	for i := range s.Items {
		item := &s.Items[i]
		entries = joined(entries, t.item(item, s.Date, printed.Kind == program.WeekBuild && !printed.Gate))
	}
	if len(entries) == 0 || t.asPrinted {
		entries = []program.Entry{{Date: s.Date, AsPrinted: true}}
	}
	p.hurts(d, entries)
	w.Entries = append(w.Entries, entries...)
	if morning := p.dice(forMorning, p.week, nth); p.rises {
		w.Entries = append(w.Entries, program.Entry{Date: s.Date + 1, Morning: true, Sets: []program.SetDone{{Pain: p.pain(morning)}}})
	}
	if w.held > before+10 {
		w.sessions++
	}
}

// joined adds entries to those of a day. A check hold and the sets after it are one
// exercise, written as one.
func joined(day, more []program.Entry) []program.Entry {
	for _, e := range more {
		n := len(day) - 1
		if n >= 0 && day[n].Exercise == e.Exercise && !day[n].RigGiven && !e.RigGiven && day[n].Ahead == e.Ahead {
			day[n].Sets = append(day[n].Sets, e.Sets...)
			continue
		}
		day = append(day, e)
	}
	return day
}

// training is one session while it lasts.
type training struct {
	*Person
	*rand.Rand
	week      *Week
	form      float64
	tired     float64 // ln
	asPrinted bool    // everything so far
}

// doing is what a client makes of an item: as printed at first, easier after a bad set.
type doing struct {
	program.Prescription
	load  float64 // N·m, or N, in truth
	asked float64 // s
	eased bool
}

// item does one item of a session and gives its entries as they are written down; none
// where nothing is: what no torque holds goes without saying.
func (t *training) item(item *program.Prescription, date program.Date, build bool) []program.Entry {
	now := doing{Prescription: *item, asked: float64(max(item.Hold, perRep*item.Reps))} // three seconds a repetition of a lean (common practice)
	switch {
	case item.Find.Any():
		return t.find(item, date)
	case item.Reps > 0 && item.Role == program.RoleStrength:
		return t.press(item, date)
	case item.Max || item.Try:
		now.asked = 0
	}
	switch {
	case item.Step != "":
		now.load = t.Load(item.Step, item.Rig, item.Scale)
	case item.Ahead > 0:
		now.load = t.LeanLoad(item.Ahead)
	default:
		return nil
	}
	if now.asked == 0 {
		t.asPrinted = false // it has to be said how long it was
	} else if item.Role == program.RoleMain && build {
		t.week.Efforts = append(t.week.Efforts, now.asked/max(0.5, t.longest(&now, 0)))
	}
	var entries []program.Entry
	for n := range item.Sets {
		done, limit := t.set(&now)
		if n == 0 || now.eased {
			entries = append(entries, now.entry(date))
			now.eased = false
		}
		last := &entries[len(entries)-1]
		last.Sets = append(last.Sets, done)
		short := limit < now.asked
		t.asPrinted = t.asPrinted && !short
		if now.asked > 0 && n+1 < item.Sets && (short || n == 0 && t.careful && limit < now.asked+t.left(&now)) {
			t.ease(&now)
		}
	}
	return entries
}

// entry is an empty entry of what is being done.
func (now *doing) entry(date program.Date) program.Entry {
	e := program.Entry{Date: date, Exercise: now.Exercise, Step: now.Step}
	if now.Scale > 0 {
		e.Step = "" // a step is held off the floor
	}
	if now.eased && now.Step != "" {
		e.Rig, e.RigGiven, e.DropGiven = now.Rig, true, true
	} else if now.eased {
		e.Ahead = now.Ahead
	}
	return e
}

// ease is the day rule: one help more, or a lean two centimetres shorter, or three
// seconds less.
func (t *training) ease(now *doing) {
	now.eased, t.asPrinted = true, false
	if now.Step == "" && now.Ahead > 0.03 {
		now.Ahead -= 0.02
		now.load = t.LeanLoad(now.Ahead)
		return
	}
	if rig, ok := t.helps(now); ok {
		now.Rig, now.load = rig, t.Load(now.Step, rig, now.Scale)
		return
	}
	now.eased = false
	now.asked = max(3, now.asked-3)
}

// helps is the rig of one or two bands that helps a little more: three per cent of the
// load at least.
func (t *training) helps(now *doing) (best program.Rig, ok bool) {
	if now.Step == "" {
		return best, false
	}
	most := 0.0
	for _, rig := range t.rigs {
		if load := t.Load(now.Step, rig, now.Scale); load < 0.97*now.load && load > most {
			best, most, ok = rig, load, true
		}
	}
	return best, ok
}

// counts reports whether an item is a step that is counted in repetitions.
func (t *training) counts(now *doing) bool { return t.repeats && now.Step != "" }

// longest is how long an item could last; a lean is held in every skill.
func (t *training) longest(now *doing, form float64) float64 {
	if now.Step == "" {
		return t.LongestLean(now.load, form)
	}
	return t.Longest(now.load, form)
}

// left is what cards ask to be left: two seconds, or one repetition.
func (t *training) left(now *doing) float64 {
	if t.counts(now) {
		return perRep
	}
	return 2
}

// set does one set and gives it as it is written, and how long it could have lasted.
func (t *training) set(now *doing) (program.SetDone, float64) {
	form := t.form - t.tired + t.Set*t.NormFloat64()
	limit := max(0, t.longest(now, form)+t.Stop*t.NormFloat64())
	if t.counts(now) {
		limit += halfRep
	}
	done := t.hold(now, limit)
	if now.asked > 0 && (now.Step != "" || now.Role == program.RoleMain) { // easy leans would water it down
		if t.week.Sets++; limit < float64(now.Hold) {
			t.week.Failed++
		}
	}
	done.RPE = t.rate(&now.Prescription, done.Seconds, limit, limit < now.asked)
	t.tire(done.Seconds, limit, now.Rest)
	t.week.held += done.Seconds
	t.week.work += done.Seconds * strain(math.Exp(-t.margin(limit)))
	if now.Reps > 0 || t.counts(now) {
		done.Reps, done.Seconds = int(done.Seconds/perRep), 0
	}
	return t.written(done), limit
}

// hold holds a set that could last so long. A set that falls short ends there, or with
// some seconds left where the person is careful; one time in four its form breaks
// instead, and a second or two are added in bad form.
func (t *training) hold(now *doing, limit float64) program.SetDone {
	done := program.SetDone{Seconds: now.asked}
	if t.clean {
		done.Clean = program.CleanYes
	}
	reserve, breaks := t.Stop*(3+1.4*t.NormFloat64()), t.Float64() < 0.25
	switch {
	case now.Max, now.Try:
		done.Seconds = limit
	case now.asked == 0: // until that much is left
		done.Seconds = limit - t.left(now) - 2*t.Stop*t.NormFloat64()
	case limit >= now.asked:
	case breaks && t.Stop > 0:
		done.Seconds, done.Clean = min(now.asked, limit+2), program.CleanNo
	case t.careful:
		done.Seconds = limit - max(0, reserve)
	default:
		done.Seconds = limit
	}
	if done.Seconds = max(0, math.Floor(min(limit+2, done.Seconds))); done.Seconds == 0 {
		done.Clean = program.CleanNo // tried and not held
	}
	return done
}

// tire takes off what a set costs and gives back what its rest brings.
func (t *training) tire(seconds, limit float64, rest int) {
	t.tired += t.Tires * min(1, seconds/max(0.5, limit))
	t.tired *= math.Exp(-float64(rest) / 240)
}

// strain is what a second counts at a share of the instant maximum: nothing below 0.45,
// all of it at 0.80 (our judgement).
func strain(share float64) float64 { return min(1.3, max(0, (share-0.45)/0.35)) }

// rate is the RPE of a set; 0 where it is not said. Who stops short has felt the end
// coming, whatever was left.
func (t *training) rate(item *program.Prescription, seconds, limit float64, short bool) float64 {
	said, scatter := t.Float64() < t.rates, t.NormFloat64()
	if !said || item.Max || item.Try || item.Role == program.RoleSecond && t.careful {
		return 0
	}
	left := max(0, (16*(limit-seconds)/max(10, limit)-1.3)/1.8) // points below ten; short holds are felt in seconds
	if short {
		left = min(left, 0.5)
	}
	rpe := 10 - left + t.Rating*(0.72+0.2*left)*(t.bias+scatter)/math.Sqrt2
	return min(10, max(4, math.Round(2*rpe)/2))
}

// written is a set as it is written: one number in two hundred with its digits swapped.
func (t *training) written(s program.SetDone) program.SetDone {
	if n := int(s.Seconds); t.Float64() < t.Slips && n >= 10 && n < 100 {
		s.Seconds = float64(10*(n%10) + n/10)
	}
	return s
}

// press does repetitions of a push or raise. Their strength follows that of the holds
// by half (our judgement).
func (t *training) press(item *program.Prescription, date program.Date) []program.Entry {
	d := t.dice(append([]int{forStep}, letters(item.Exercise)...)...)
	strength := (1 + (6+8*d.Float64())/30) * math.Exp(t.form+(t.C-t.began)/2)
	most := max(0, 30*(strength-1)) // Epley
	e := program.Entry{Date: date, Exercise: item.Exercise}
	for range item.Sets {
		reps := min(float64(item.Reps), math.Floor(most))
		t.asPrinted = t.asPrinted && int(reps) == item.Reps
		e.Sets = append(e.Sets, program.SetDone{Reps: int(reps), RPE: t.rate(item, reps, most, int(reps) < item.Reps)})
	}
	return []program.Entry{e}
}
