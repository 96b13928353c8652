package program

import (
	"math"
	"slices"
	"strings"
	"time"
)

// Assessment is what a coach measured, asked and tested of one athlete, and the
// goal they agreed on.
type Assessment struct {
	Slug     string // the client's folder name, [a-z0-9-]{1,40}
	Measured Date   // the day of the tests
	Share    Share
	Detail   Detail // of the shared page
	Page     string // random part of the page's address; needed for ShareSite
	Large    bool   // what the client is handed is printed for weak eyes
	Athlete  Athlete
	Training Training
	Health   Health
	Goal     Goal
	Rules    Rules    // of training, where the coach sets them otherwise
	Kit      []string // names as the exercise files use them: "parallettes", "wall"
	Bands    []Band
	Hanging  Hanging
	Tests    []Hold
	Others   []OtherTest   // of other road maps
	Log      Log           // what was done since; empty where there is none
	Plans    []PlanVersion // as they hung on the wall, by version
	Wishes   Wishes        // of the coach's own hand
	Places   Places        // where each value was written
}

// Share says how far a client's program may go.
type Share string

const (
	SharePrint Share = "print" // paper only; also the meaning of ""
	ShareSite  Share = "site"  // may be published, without body data or health
)

// Detail says how much of a plan its shared page shows.
type Detail string

const (
	DetailFull  Detail = "full"  // all that is trained; also the meaning of ""
	DetailPlain Detail = "plain" // no preparation, whose exercises tell which joints are sore
)

// Sex chooses the segment table; unspecified takes the mean of both.
type Sex string

const (
	SexUnspecified Sex = "unspecified"
	SexFemale      Sex = "female"
	SexMale        Sex = "male"
)

// Athlete is the body that trains.
type Athlete struct {
	Name         string
	Called       string // the first name, where it is not the name's first word
	Sex          Sex
	Born         Date
	Mass         float64 // kg
	Height       float64 // m
	ArmSpan      float64 // m; 0: equal to the height
	Straddle     float64 // rad between the legs; 0: DefaultStraddle
	Fold         float64 // rad the hips bend standing, legs straight; 0: DefaultFold
	BalancePoint float64 // m from the soles to the centre of mass; 0: from the table
}

// Training is the athlete's past and week.
type Training struct {
	Experience float64 // weeks of this kind of work, all spells
	Since      Date    // start of the present spell; 0: Experience before Measured
	Best       *Hold   // former best before a lay-off; nil: no lay-off
	Other      []OtherTraining
	Days       []time.Weekday // in the order of the week, Monday first
	Minutes    int            // a session
	Away       []Interval
	Ill        []Interval // ill in bed: away, and strength is lost from the first week
	Start      Date       // first day of the block; 0: first Monday on or after Measured
	Weeks      int        // length of the block; 0: 12
	Clock
}

// Clock is when on its day a session begins, for calendars.
type Clock struct {
	Time   int // minutes after midnight; 0: whenever
	Remind int // minutes before that, when a calendar reminds; 0: never
}

// OtherTraining is what else a week holds. Hard days spoil the next morning: both days
// are short and hold no main work, where other days can.
type OtherTraining struct {
	Day  time.Weekday
	What string
	Hard bool
}

// Joint is the state of a pair of joints.
type Joint string

const (
	JointFine    Joint = "fine"
	JointSore    Joint = "sore"    // pain of 3/10 or more within two weeks
	JointInjured Joint = "injured" // needs clearance
)

// Health is what decides whether, and how gently, a program may be made.
// It is never published and never printed.
type Health struct {
	Wrists, Elbows, Shoulders Joint
	Guardian                  string   // required under 18
	Conditions                []string // any needs clearance
	ClearedBy                 Clearance
}

// Clearance is who cleared the athlete for training, and when.
type Clearance struct {
	Name string
	On   Date
}

// Goal is a step of a road map, held for a time, by a date.
type Goal struct {
	Skill string  // road map id
	Step  string  // step id
	Hold  float64 // s; of a press what its repetitions take
	Reps  int     // of a press
	By    Date
}

// Band is an elastic band as measured with a luggage scale, in the way it will
// be used (a loop as a loop).
type Band struct {
	Name    string
	Rest    float64 // m, unstretched
	Pulls   []Pull  // none: nobody measured it; then it is hung until a scale reads what is planned
	At      BandAt
	Folded  bool // hung as a loop laid double: twice the strands, half the length
	Retired Date // from this day on no plan hangs it; 0: in use. Older lines of the log still name it
}

// Measured reports whether a band's pulls were measured.
func (b *Band) Measured() bool { return len(b.Pulls) > 0 }

// InUse reports whether a plan may hang a band on a day.
func (b *Band) InUse(on Date) bool { return b.Retired == 0 || b.Retired > on }

// BandAt is where on the body a band acts. The further from the shoulders, the more a
// newton helps, and the less of a sagging hip it shows.
type BandAt string

const (
	AtHip   BandAt = "hip" // also the meaning of ""
	AtThigh BandAt = "thigh"
	AtAnkle BandAt = "ankle"
)

// Pull is one measured point of a band.
type Pull struct {
	At    float64 // m, length under load
	Force float64 // N
}

// Hanging is where bands hang in the athlete's gym. Heights are from the floor.
type Hanging struct {
	Anchor  float64   // m, height of the anchor
	Offset  float64   // m, sideways from above the hip
	Support float64   // m, height of the hands' support
	Drops   []float64 // m, lengths of unstretched strap that may go between
	Strap   Strap     // a strap of any length, beside those; the zero Strap is none
	Bar     float64   // m, height of the bar to hang from; 0: none
	Pads    []float64 // m, heights of pads under the head that can be stacked from what there is
	Blocks  []float64 // m, heights of blocks to lift the feet from
}

// blockNear is how far a block may be off the height that a step names (our judgement:
// a mat more or less).
const blockNear = 0.02 // m

// HasBlock reports whether there is a block of about a height.
func (h Hanging) HasBlock(height float64) bool {
	return slices.ContainsFunc(h.Blocks, func(b float64) bool { return math.Abs(b-height) < blockNear+1e-9 })
}

// Strap is one that can be set to any length between two, in steps of five centimetres.
type Strap struct{ From, To float64 } // m

// strapStep is how finely a strap is set. Our judgement: what can be read off a tape
// on a hanging strap.
const strapStep = 0.05 // m

// Lengths are all lengths of strap that may hang between anchor and band, the
// shortest first; none at all is one of 0.
func (h Hanging) Lengths() []float64 {
	lengths := slices.Clone(h.Drops)
	if h.Strap != (Strap{}) {
		for n := 0; h.Strap.From+float64(n)*strapStep < h.Strap.To+1e-9; n++ {
			lengths = append(lengths, math.Round(1000*(h.Strap.From+float64(n)*strapStep))/1000)
		}
	}
	if len(lengths) == 0 {
		return []float64{0}
	}
	slices.Sort(lengths)
	return slices.Compact(lengths)
}

// Rig is which bands are hung, and how low. The zero Rig is no help at all.
type Rig struct {
	Bands  []string // names, in the order of the assessment; at most two
	Drop   float64  // m of strap between anchor and band
	At     BandAt   // of both; empty at the hip
	Folded bool     // both
	Pad    float64  // m of pads under the head, in a press
	Block  float64  // m of a block under the feet, in a lift
	Pull   float64  // N that a scale reads of its one band, which nobody measured: the strap is as long as that takes
}

// Free reports whether nothing helps.
func (r Rig) Free() bool { return len(r.Bands) == 0 && r.Pad == 0 && r.Block == 0 }

// Hold is a static position kept for a time: a test, or a former best.
// Either Step or Exercise is set.
type Hold struct {
	Step     string // step id
	Exercise string // exercise id
	Rig      Rig
	Seconds  float64 // s; 0 in a test: tried, not held
	Reps     int     // where the exercise is counted
	Ahead    float64 // m, shoulder ahead of the wrist crease in a lean
	Scale    float64 // N still carried by the toes, read from a bathroom scale
	Fold     float64 // rad the hips bend; asked for by an entry, and measured of the body
	Stopped  bool    // the coach ended it: it could have lasted longer
	Tries    Tries   // of balance; Seconds is then the best of them
}

// OtherTest is a step of another road map than the goal's, shown without help.
type OtherTest struct {
	Skill   string // road map id
	Step    string
	Seconds float64
	Reps    int // of a press
	Stopped bool
}

// Tries are so many tries of a balance, and how many reached their step's seconds. The
// zero Tries is a single one, told by its seconds.
type Tries struct{ Reached, Of int }

// DefaultFold is how far the hips bend where nobody measured: 120 degrees (our judgement:
// hands flat on the floor with straight legs).
const DefaultFold = 120 * 3.141592653589793 / 180

// DefaultStraddle is the angle between the legs where none was measured:
// 100 degrees (our judgement: a usual active straddle).
const DefaultStraddle = 100 * 3.141592653589793 / 180

// FirstName is what somebody is called on pages that others may read: as the file says, or
// the name's first word.
func FirstName(name, called string) string {
	if words := strings.Fields(name); called == "" && len(words) > 0 {
		return words[0]
	}
	return called
}
