package program

// Exercise is one thing to do, with everything a person alone at the wall needs
// to do it well.
type Exercise struct {
	ID          string
	Name        string
	Role        Role
	Trains      []Purpose  // what it is for, the most important first
	Kit         [][]string // every entry needed; within an entry, any one will do
	Grip        Grip
	Loads       []string // joints: "wrists", "elbows", "shoulders"
	Dose        Dose
	StraightArm bool // straight arms under load
	Rank        int  // of those that serve one purpose, the highest that the kit allows is taken
	EachSide    bool
	Easier      []string // exercise ids
	Harder      []string // exercise ids
	SetUp       string   // Markdown
	Cues        []string // plain text, three to five
	Faults      []string // plain text
	MakeEasier  string   // Markdown
	MakeHarder  string   // Markdown
	Figures     []Figure // start and end, or one of a hold; none of what a road map draws
	File        string
	Line        int // of the body's first line
}

// Role is the part an item plays in a session, in order of the session.
type Role string

const (
	RolePrepare  Role = "prepare"
	RoleTest     Role = "test"
	RoleAhead    Role = "ahead" // heavier than the main work, short
	RoleMain     Role = "main"
	RoleSecond   Role = "second" // lighter, longer
	RoleStrength Role = "strength"
	RolePull     Role = "pull" // balances pushing
	RolePush     Role = "push" // balances pulling
	RoleTrunk    Role = "trunk"
	RoleMobility Role = "mobility"
)

// Against reports whether a role balances the skill's own work.
func (r Role) Against() bool { return r == RolePull || r == RolePush }

// Purpose is what an exercise is for; the planner chooses by it.
type Purpose string

const (
	ForWrists       Purpose = "wrists" // preparation
	ForElbows       Purpose = "elbows" // preparation
	ForBlades       Purpose = "shoulder blades"
	ForHang         Purpose = "hang" // preparation, hanging
	ForStep         Purpose = "step" // holds a step of a road map
	ForLean         Purpose = "lean"
	ForBalance      Purpose = "balance"
	ForPush         Purpose = "push"
	ForRaise        Purpose = "raise" // straight-arm raise
	ForRow          Purpose = "row"
	ForRearShoulder Purpose = "rear shoulder"
	ForPullUp       Purpose = "pull-up"
	ForStraightPull Purpose = "straight-arm pull"
	ForCurl         Purpose = "curl"
	ForTrunk        Purpose = "trunk"
	ForCompression  Purpose = "compression"
	ForStraddle     Purpose = "straddle"
	ForFold         Purpose = "fold" // of the hips, forward
	ForHandstand    Purpose = "handstand line"
)

// Purposes lists every purpose, for messages that offer the right word.
var Purposes = []Purpose{ForWrists, ForElbows, ForBlades, ForHang, ForStep, ForLean, ForBalance, ForPush, ForRaise,
	ForRow, ForRearShoulder, ForPullUp, ForStraightPull, ForCurl, ForTrunk, ForCompression, ForStraddle, ForFold, ForHandstand}

// Grip is what an exercise asks of the wrists.
type Grip string

const (
	GripNone    Grip = "none"    // no load through the hands
	GripFlat    Grip = "flat"    // palms flat on the floor
	GripSupport Grip = "support" // flat, or neutral where the kit has parallettes
	GripNeutral Grip = "neutral" // a bar or handle in line with the forearm
	GripHang    Grip = "hang"
)

// Dose is how much of an exercise is done where the planner does not compute it.
// Either Hold or Reps is set.
type Dose struct {
	Sets int
	Hold int // s
	Reps int
	Rest int // s between sets
}
