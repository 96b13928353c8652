package strength

import "math"

// Horizon is how many weeks ahead a path runs: three years. What is likely only
// later is not forecast.
const Horizon = 156

// Kind is what a week is for.
type Kind int

const (
	Build  Kind = iota
	Deload      // a third of the gain
	Test        // the last week before and with the test: as a deload
	Away        // no training: no gain; from the second week on in a row, strength is lost
	Ill         // ill in bed: strength is lost from the first week
)

// Week is one week of a schedule. Build, deload and test weeks without a session
// count as Away.
type Week struct {
	Kind     Kind
	Sessions int // with straight-arm work

	// Slack is the share of the gain that too little counted work costs: 1 less
	// [WorkFactor]; 0 = none.
	Slack float64
}

// Schedule is what is to be done, week after week: the block's weeks, then an
// open-ended rhythm of build weeks and deloads to the horizon.
type Schedule struct {
	Law         Law // zero = DefaultLaw
	Career      Career
	Block       []Week
	Sessions    int     // a week after the block; 0 = 3
	Slack       float64 // of those weeks
	DeloadEvery int     // after the block, every so many weeks is a deload; 0 = 4, below 0 = none
	Lost        float64 // ln C lost in weeks off before now and not yet brought back; 0 = none
	Off         int     // weeks off in a row right before now
}

// Losses and their return, ln C (our judgement, near what is published: under 5 %
// in two weeks, McMaster 2013; 7 to 12 % in eight to twelve weeks, from memory).
const (
	awayLoss = 0.01 // a week, from the second week away
	awayMost = 0.12
	illLoss  = 0.02 // a week ill in bed
	illMost  = 0.15

	// Returning is how much of what was lost, in ln C, comes back in each week of
	// training. Our judgement.
	Returning = 0.01
)

// NewPath lays the schedule from the state's moment to the horizon. Gains are
// multiplied by [Scheduled]. For a client coming back from a lay-off what old
// strength is back is taken from the median course.
func NewPath(s State, plan Schedule) Path {
	p := Path{State: s, Gains: make([]float64, Horizon+1), Lost: make([]float64, Horizon+1)}
	p.grown = append(make([]grown, 0, Horizon+1), s.ungrown())
	career, off, builds := plan.Career, plan.Off, 0 // off and builds: weeks of either sort in a row
	for w := range Horizon {
		gain, lost := p.Gains[w], p.Lost[w]+plan.Lost // what the state has lost already is in its C
		week := plan.week(w, builds)
		if week.off() {
			off, builds = off+1, 0
			p.Gains[w+1], p.Lost[w+1] = gain, Lose(lost, week.Kind, off)-plan.Lost
			p.grown = append(p.grown, p.grown[w].week(0))
			continue
		}
		off, builds = 0, builds+1
		if week.Kind != Build {
			builds = 0
		}
		median, _ := p.grown[w].logNormal()
		at := s.C + median - p.Lost[w]
		p.Gains[w+1] = gain + week.share()*career.WeekGain(plan.Law, at, week.Sessions)
		p.grown = append(p.grown, p.grown[w].week(p.Gains[w+1]-gain))
		p.Lost[w+1] = math.Max(0, lost-Returning) - plan.Lost
		career.Age++
	}
	return p
}

// off says that a week has no training in it.
func (w Week) off() bool { return w.Kind == Away || w.Kind == Ill }

// share of a full week's gain that a week of training is counted on to bring.
func (w Week) share() float64 {
	share := Scheduled * (1 - clamp(w.Slack, 0, 1))
	if w.Kind != Build {
		share *= DeloadShare
	}
	return share
}

// week is the w-th week from now, after so many build weeks in a row.
func (plan Schedule) week(w, builds int) Week {
	if w < len(plan.Block) {
		week := plan.Block[w]
		if week.Sessions <= 0 && week.Kind != Ill {
			week.Kind = Away
		}
		return week
	}
	week := Week{Sessions: plan.Sessions, Slack: plan.Slack}
	if week.Sessions <= 0 {
		week.Sessions = 3
	}
	every := plan.DeloadEvery
	if every == 0 {
		every = 4
	}
	if every > 0 && builds+1 >= every {
		week.Kind = Deload
	}
	return week
}

// Lose adds a week's loss to what is lost already, both in ln C; kind is Away or
// Ill, and off counts the weeks off in a row, this one included.
func Lose(lost float64, kind Kind, off int) float64 {
	switch {
	case kind == Ill:
		return math.Max(lost, math.Min(lost+illLoss, illMost))
	case off > 1:
		return math.Max(lost, math.Min(lost+awayLoss, awayMost))
	default:
		return lost
	}
}
