package program

// Program is one client's dated training program.
// Withheld is not empty where no program may be made; Weeks is empty then.
type Program struct {
	Client    Client
	Skill     string // road map id
	Goal      GoalForecast
	Measured  Date
	Other     []OtherTraining // what else the client's weeks hold
	Start     Date            // Monday of the first week
	Version   int             // of the plan on the wall; 0: planned from the assessment alone
	From      Date            // Monday of the first week planned anew; 0: all of them
	Withheld  []Note
	Steps     []StepLoad // this body's order, the dropped ones left out
	Rungs     bool       // some weeks are on the floor rungs
	Bands     []BandCurve
	Capacity  Capacity
	Forecasts []Forecast
	Weeks     []Week
	Gates     []StepGate // of the steps that the block trains, and the goal's
	Outline   []Stage    // the road from the first week's step to the goal
	Cues      []CueWorth
	Place     string     // step id of the first week's work; empty on the floor rungs
	Offsets   []Offset   // what this client's own sets have taught of the model's error
	Wishes    []WishRead // what the coach asked for by hand, and what became of it
	Asks      []Note     // what the coach has to answer: tests that contradict each other, a body that does not fit the room
	Notes     []Note     // about the whole program
}

// Offset is how far one step, lean or press of this client lies from the model:
// what is held is heavier (above zero) or lighter than it was drawn.
type Offset struct {
	Step     string  // step id, or else
	Exercise string  // exercise id
	Ln       float64 // ln of the load over the model's
	Spread   float64 // its sd
}

// Client is whose program it is, without anything private.
type Client struct {
	Name   string
	Called string // the first name; empty: the first word of Name
	Slug   string
	Share  Share
	Page   string
	Plain  bool // the shared page shows no preparation
	Large  bool // the client's sheets are printed for weak eyes
	Clock
}

// GoalForecast is the goal with an honest chance of meeting it by its date.
type GoalForecast struct {
	Step   string
	Hold   int // s
	By     Date
	Chance float64 // 0 to 1
	Met    bool    // the assessment shows it already
}

// StepLoad is what a step asks of this body today, without help.
type StepLoad struct {
	ID            string
	Torque        float64 // N·m about the shoulders, both together
	Share         float64 // of the full position
	Allowance     float64
	Lean          float64 // rad, of the arms
	ShoulderAhead float64 // m ahead of the hands
	HipHeight     float64 // m above the hands' support
	Raised        float64 // m, hips above the shoulders so that knees and toes clear the floor; 0: level
	FreeHold      float64 // s, predicted maximal hold at the median
	HandsAhead    float64 // m, hands ahead of the spot under the anchor
	Stance        Stance  // held free
}

// BandCurve is a band's measured curve: F = (A + B/λ)(λ − λ⁻²).
type BandCurve struct {
	At      BandAt
	Folded  bool // the curve is that of the loop laid double
	Name    string
	A, B    float64 // N
	Rest    float64 // m
	Longest float64 // m, longest measured
}

// Capacity is the torque the athlete can hold, with an 80 % range.
type Capacity struct {
	Held12    float64 // N·m, torque held twelve seconds, median
	Low, High float64 // N·m, of Held12
	Instant   float64 // N·m; 0 where endurance is only assumed
	Endurance float64 // per minute
	Typical   bool    // endurance is the typical one, not measured
	Untested  bool    // no test was held at all
}

// Forecast is when a step will be held free for the goal's seconds.
// A zero date is "not forecast": more than three years away.
type Forecast struct {
	Step                string
	Early, Likely, Late Date    // 10, 50, 90 %
	Chance              float64 // by the goal date
	Held                bool    // already
}

// WeekKind is build, deload, test or away.
type WeekKind string

const (
	WeekBuild  WeekKind = "build"
	WeekDeload WeekKind = "deload"
	WeekTest   WeekKind = "test"
	WeekAway   WeekKind = "away" // no training day left; counts as a deload
)

// Week is seven days of a block, Monday first. Its step, rig and hold are those
// of the main work; all zero where there is none.
type Week struct {
	Number      int
	Start       Date
	Kind        WeekKind
	Step        string // step id; empty on the floor rungs
	Exercise    string // exercise id of the main work
	Rig         Rig
	Help        float64 // N, vertical
	Ahead       float64 // m, lean of the shoulder, on the floor rungs
	Scale       float64 // N carried by the toes, on the scale rung
	Capacity    float64 // N·m held twelve seconds, median
	MaxHold     float64 // s, predicted maximal hold the plan reckons with
	Effort      float64 // share of MaxHold that is prescribed
	Hold        int     // s
	Sets        int     // of main work on the day that has most
	SetsLeast   int     // on the day with main work that has fewest
	Rest        int     // s
	HalfSeconds int     // counted straight-arm work in half seconds: seconds × weight × 2
	MostHalf    int     // the most half seconds that the week's rise and ceiling allow; 0 outside build weeks
	Provisional bool    // stands until the next check hold has spoken
	Gate        bool    // a gate week: the main work is the step's gate itself, free
	ByCoach     bool    // the main work is of the coach's own hand
	Stance      Stance  // of the main hold with its rig, or of its lean
	Sessions    []Session
	Notes       []Note
}

// Session is one day's work.
type Session struct {
	Date    Date
	Minutes int // planned, rests counted, rounded up
	Items   []Prescription
	Dropped []Note   // what the minutes or the joints left no room for
	Say     []string // the coach's own words, for this client
}

// Prescription is what to do once: one line of a session.
type Prescription struct {
	Exercise    string
	Role        Role
	Step        string // where it holds a step
	Rig         Rig
	Help        float64 // N, vertical
	HandsAhead  float64 // m, hands ahead of the spot under the anchor; with a band only
	Ahead       float64 // m, lean
	Scale       float64 // N carried by the toes
	Sets        int     // all sets; half each side where EachSide
	Hold        int     // s
	Reps        int
	Rest        int // s between sets
	StraightArm bool
	EachSide    bool
	InRests     bool    // done in the rests of the main work
	ByCoach     bool    // of the coach's own hand
	Max         bool    // a maximal test hold: as long as it stays clean
	Check       bool    // a check hold: stop with two seconds left; with Hold 0 as long as that leaves
	Try         bool    // a try of what is not held yet: as long as it stays clean, and a second counts; of balance Hold is what it seeks
	MaxHold     float64 // s, predicted: of work with care, as the plan reckons; of tests and tries the likely one; 0: nothing predicts it
	Load        float64 // share of instant capacity; 0 where nothing predicts it
	Find        Find    // what is found by it, in place of one mark; its sets are one a mark
	Found       []Found // what it becomes by the mark that was found before, until the log is read
}

// StepGate is a step's gate, named.
type StepGate struct {
	Step string
	Gate
	Week int // number of its last gate week; 0: none in this block
}

// Stage is one step of the road: the weeks of the block that are on it, or, by the
// likely forecast, when work on it begins.
type Stage struct {
	Step        string
	First, Last int  // numbers of the block's weeks on it; 0: none
	From        Date // of one without weeks; zero: more than three years away
}

// CueWorth is what a better position saves, as a share of the step's load.
type CueWorth struct {
	Cue   string // "depression", "rounding", "straddle"; of a lift "fold"
	Saves float64
	Help  float64 // N of band help worth as much
	Tried float64 // what it was tried with: m, share of the trunk's length, rad
	Rig   Rig     // one band that helps about as much; free: none of the client's does. Of a lift so much block
}

// Note is something the planner has to say: a code, whose words are in the words
// file under "note.<code>", and the values that go into them.
type Note struct {
	Code   string
	Values []Value
}

// Value is one value of a note. Kind tells the view how to write it.
type Value struct {
	Name   string
	Kind   ValueKind
	Number float64 // seconds, metres, newtons, shares, counts and dates (as Date)
	Text   string  // steps, exercises, roles and plain text
}

// ValueKind says what a Value is.
type ValueKind string

const (
	ValueSeconds  ValueKind = "seconds" // of a step: where it is repeated, what its repetitions take
	ValueTime     ValueKind = "time"    // s, of anything else
	ValueMetres   ValueKind = "metres"
	ValueNewtons  ValueKind = "newtons"
	ValueShare    ValueKind = "share"
	ValueCount    ValueKind = "count"
	ValueDate     ValueKind = "date"
	ValueStep     ValueKind = "step"     // Text is a step id
	ValueExercise ValueKind = "exercise" // Text is an exercise id
	ValueKit      ValueKind = "kit"      // Text is a thing, as files call it; of several any one will do
	ValueWord     ValueKind = "word"     // Text is a key of the words file
	ValueText     ValueKind = "text"
	ValueList     ValueKind = "list" // Text is one a line: keys of the words file, or what stands for itself
)
