package program

// PlanVersion is the plan as it hung on the wall: one version of a client's
// block, kept so that what was printed can be compared with what was done.
type PlanVersion struct {
	Version int      // from 1
	On      Date     // the day it was made; it holds from its first day on or after that
	Weeks   []Week   // the whole block; without figures
	Passed  []string // step ids whose gates the coach has signed, whatever the log says
	Clock            // when its sessions begin
	Shared  bool     // made for the body that fifty others share, as a page needs it

	Forecasts []Forecast // what it said of dates and chances; none in files from before that was kept
}

// Review is what a client's log says, held against what was printed.
type Review struct {
	Client  Client
	On      Date // the day of the review
	Version int  // of the plan on the wall
	Week    int  // of the block, from 1; 0: not begun
	Weeks   int  // in the block
	Ended   bool // the block is over: the next one begins

	Sessions     []SessionRead // printed and done, in order of their dates
	Done, Missed int           // printed sessions up to the day of the review
	Last         Date          // of the last session done; 0: none yet

	Moves    []Move // what moved the estimate since the plan on the wall, the most first
	Doubted  []Move // sets too far from belief to be used
	Unread   []Note // lines that no printed work and no model can place
	Progress []WeekRead

	Before, After         Capacity // when the plan on the wall was made, and now
	GoalBefore, GoalAfter GoalForecast
	ForecastBefore        []Forecast
	ForecastAfter         []Forecast
	Pace                  float64 // ln of the capacity now over the one planned for now
	Gates                 []GateRead
	Flags                 []Flag // what a coach has to look at, the most urgent first
	Offsets               []Offset
	Wishes                []WishRead // of the coach's own hand, in the weeks ahead
	Asks                  []Note     // what the coach has to answer: the words that a gate still lacks
	NextTest              Date       // 0: none in the weeks ahead
	Changes               []Change
	PrintNow              []Date // cards of the coming week, see Program.ToPrint
	Notes                 []Note // why the weeks ahead are what they are
	Withheld              []Note // no program may be made; nothing was planned anew
}

// SessionRead is one session, printed or done or both.
type SessionRead struct {
	Printed Date // 0: not on the plan
	Done    Date // 0: missed
	Sets    int  // printed sets of straight-arm holds
	Held    int  // of these, held as printed or longer
	Short   int  // stopped before their seconds
}

// SetRead is one set done, beside what was printed for it.
type SetRead struct {
	Date     Date
	Exercise string
	Step     string
	Rig      Rig
	Ahead    float64 // m, of a lean; 0 where none was printed
	Scale    float64 // N carried by the toes, as printed
	Printed  int     // s, or repetitions where Done counts them; 0: no length was printed
	Done     SetDone
	Place    Place // in the log; the zero Place where it was done as printed
}

// Move is how far one set moved the estimate.
type Move struct {
	Set   SetRead
	Moved float64 // of ln C12: 0.01 is one per cent
}

// WeekRead is one week of the block as it was done.
type WeekRead struct {
	Number        int
	Start         Date
	Kind          WeekKind // as printed
	Held12        float64  // N·m held twelve seconds, estimated at its start
	Low, High     float64  // N·m, of Held12, 80 % range
	Planned       float64  // N·m, what the plan reckoned with
	Printed, Done int      // sessions up to the day of the review
	HoldPrinted   int      // s, of the main work
	HoldDone      float64  // s, mean of the main sets, of balance the best; 0: none
	Tries         Tries    // of balance: the best day's
	Help          float64  // N, vertical, mean over the main sets done
	HalfSeconds   int      // counted straight-arm work done
	HalfPrinted   int      // the same as printed
	RPE           float64  // mean of the main sets; 0: not said
	Pain          Pain     // worst of the week at each joint, in sessions
	Mornings      Pain     // the same on the mornings after them
	Tests         []TestRead
}

// TestRead is a maximal hold, as the torque held twelve seconds that it stands for.
type TestRead struct {
	Date   Date
	Held12 float64 // N·m
}

// GateState says how far a gate is.
type GateState string

const (
	GateOpen   GateState = "open"    // not shown, not tried
	GateNotYet GateState = "not-yet" // tried in the last weeks, not passed
	GatePassed GateState = "passed"
)

// GateRead is a gate as the log shows it.
type GateRead struct {
	StepGate
	State    GateState
	On       Date // the day it was passed
	Signed   bool // by the coach's word, and not by the log
	Tries    int  // weeks in a row in which it was tried and not passed
	Days     []GateDay
	Criteria []Criterion
}

// GateDay is a day that counts for a gate, or the last one that tried it, with
// the sets that decide.
type GateDay struct {
	Date   Date
	Sets   []SetRead
	Counts bool
}

// Criterion is one thing that a gate asks. Shown and Wanted are of the kind its
// name says: sets (count), hold and single (s), rpe, pain (of ten), sessions
// (count); clean and free are met or not.
type Criterion struct {
	Name          string // "sets", "hold", "single", "free", "clean", "rpe", "pain", "sessions"
	Met           bool
	Unsaid        bool // the log does not say
	Wanted, Shown float64
	Sets          []SetRead // that decide
}

// FlagLevel is how much a flag needs the coach.
type FlagLevel int

const (
	FlagLook FlagLevel = iota // worth a look
	FlagAct                   // the plan has changed because of it
	FlagStop                  // a professional should see it
)

// Flag is something that a coach has to look at.
type Flag struct {
	Level FlagLevel
	Note
}

// Change is one week of the new plan that differs from the plan on the wall.
type Change struct {
	Week  int // number
	Start Date
	Notes []Note // what differs
	Cards []Date // sessions whose cards must be printed again
	Gone  []Date // printed sessions that are no more
}
