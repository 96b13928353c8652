package program

// Studio is a coach's folder, read: who the coach is, what the library holds,
// every client, and every public program.
type Studio struct {
	Coach   Coach
	Library Library
	Clients []Assessment    // by slug
	Waiting []string        // slugs of clients whose assessment nobody has filled in yet
	Public  []PublicProgram // by id
	Notes   []CoachNote     // the newest first
}

// Coach is who signs the paper.
type Coach struct {
	Name    string
	Studio  string // name of the place or practice
	Contact string
	Paper   Paper
	Site    string // public address of the site, ending in "/"; empty: none
	Lang    string // language of the words file; empty: "en"
	Dates   DateOrder
	Inks    Inks   // of the print
	Places  Places // where each value was written
}

// DateOrder is how a coach writes dates in numbers, day.month.year or
// month/day/year. The zero DateOrder is "not said": a date that reads both ways
// is then asked about. Year first is always understood.
type DateOrder string

const (
	DayFirst   DateOrder = "day-first"
	MonthFirst DateOrder = "month-first"
)

// Paper is the sheet size of what is handed over.
type Paper string

const (
	PaperA4     Paper = "A4" // also the meaning of ""
	PaperLetter Paper = "Letter"
)

// Library is everything a program is made of that is not about one client.
type Library struct {
	RoadMaps  []RoadMap  // by id
	Exercises []Exercise // by id
	Pages     []Page     // by id
	Words     Words
}

// RoadMap finds a road map by id.
func (l *Library) RoadMap(id string) (*RoadMap, bool) {
	for i := range l.RoadMaps {
		if l.RoadMaps[i].ID == id {
			return &l.RoadMaps[i], true
		}
	}
	return nil, false
}

// Exercise finds an exercise by id.
func (l *Library) Exercise(id string) (*Exercise, bool) {
	for i := range l.Exercises {
		if l.Exercises[i].ID == id {
			return &l.Exercises[i], true
		}
	}
	return nil, false
}

// RoadMap is the way to one skill: steps in order, each a position with a gate.
type RoadMap struct {
	ID    string
	Name  string
	Hands Hands
	Load  Load
	Entry []Hold // what must be shown before any step is trained
	Rungs []Rung // floor work before the first step can be held
	Steps []Step
	Kin   []Kin // other skills whose strength goes with this one's

	// What a session has beside the steps, by purpose: what it begins with, the strength
	// work that takes turns, what balances all that set for set, and what moves the hips,
	// by turns.
	Prepare, Strength, Against, Mobility []Purpose

	Body string // Markdown: how to read this road map
	File string
}

// Kin is how far the strength of another road map goes with that of this one.
type Kin struct {
	Skill       string  // its id
	Correlation float64 // of both strengths' logarithms in people who were not tested
}

// Kinship is the correlation of the strengths of two road maps; either says it of both.
// 0: neither does.
func (l *Library) Kinship(skill, other string) float64 {
	for _, pair := range [][2]string{{skill, other}, {other, skill}} {
		if m, ok := l.RoadMap(pair[0]); ok {
			for _, k := range m.Kin {
				if k.Skill == pair[1] {
					return k.Correlation
				}
			}
		}
	}
	return 0
}

// Step finds a step by id.
func (m *RoadMap) Step(id string) (*Step, bool) {
	for i := range m.Steps {
		if m.Steps[i].ID == id {
			return &m.Steps[i], true
		}
	}
	return nil, false
}

// RoleAgainst is the role of what balances the skill's own work: who pushes pulls, and who
// hangs pushes.
func (m *RoadMap) RoleAgainst() Role {
	if m.Hands == HandsHang {
		return RolePush
	}
	return RolePull
}

// Hands says where the hands are: pushing down on something, or hanging from it.
type Hands string

const (
	HandsSupport Hands = "support"
	HandsHang    Hands = "hang"
)

// Load is what a road map's steps are: held, pressed up from, or lifted into.
type Load string

const (
	LoadHold  Load = "hold"  // also the meaning of "": seconds, and the torque about the shoulders
	LoadPress Load = "press" // repetitions, and the push of both hands
	LoadLift  Load = "lift"  // repetitions, and the torque about the shoulders while the legs come up

	LoadBalance Load = "balance" // tries, and no load that any strength is reckoned from
)

// Repeats reports whether steps are counted in repetitions.
func (l Load) Repeats() bool { return l == LoadPress || l == LoadLift }

// Step is one position of a road map.
type Step struct {
	ID        string
	Name      string
	Exercise  string // id of the exercise that holds it
	Pose      Pose
	Press     Press   // of a press, in place of the pose; of balance how the body stands
	Lift      Lift    // of a lift
	Allowance float64 // skill allowance: effective load = torque × allowance; 0: 1
	Gate      Gate
	Drills    []string // exercise ids that serve this step
	Sides     int      // 2 where sets alternate sides; 0: 1
}

// Rung is floor work before the first step.
type Rung struct {
	Kind     RungKind
	Exercise string
	Repeated string // of a lean: the exercise that goes into it and out again; empty where it is held only
}

// RungKind says how a rung is measured out.
type RungKind string

const (
	RungLean    RungKind = "lean"    // feet on the floor; the lean's distance is the load
	RungBalance RungKind = "balance" // practised, not counted
	RungScale   RungKind = "scale"   // first step with the toes on a scale; its reading is the help
)

// Pose is a step as joint angles.
type Pose struct {
	Legs       [2]Leg
	Rounding   float64 // share by which the trunk shortens
	Depression float64 // m the shoulder moves toward the hips
}

// Press is a step that is pressed up from: what carries the feet, and how steep the trunk
// is above the hands. Heights are from the floor.
type Press struct {
	Rest  PressRest
	Trunk float64 // rad above the horizontal, from the shoulders up to the hips; 0: one straight line
	Feet  float64 // m, what the toes or knees stand on
	Hands float64 // m, what the hands stand on, so that the head goes lower than they are
	Gap   float64 // m from the wrists to the wall
	Lower bool    // only lowered, slowly; the way up is walked or kicked
}

// Lift is a step that is lifted into: straight legs from a block or the floor up to a
// handstand. The hips fold as far as the athlete's do.
type Lift struct {
	Stance float64 // rad between the legs until the toes leave the block
	Open   float64 // rad between them from there on
	Block  float64 // m, what the feet stand on; 0: the floor, and blocks are help
	Lower  bool    // only lowered, slowly
}

// PressRest is what carries the part of a pressing body that its hands do not.
type PressRest string

const (
	PressOnToes  PressRest = "toes"
	PressOnKnees PressRest = "knees"
	PressAtWall  PressRest = "wall"  // toes and belly to it; it keeps the balance and carries nothing
	PressHeels   PressRest = "heels" // heels and back to a wall, likewise
	PressFree    PressRest = "nothing"
)

// Leg is one leg of a pose, in radians.
type Leg struct {
	Hip      float64 // flexion: 0 straight, π/2 thigh square to the trunk
	Straddle bool    // abduct by half the athlete's straddle instead of Abduct
	Abduct   float64
	Knee     float64 // flexion
}

// Gate is what must be shown before the next step: free of help, clean by
// side-view video, on two days.
type Gate struct {
	Sets     int     // of balance the tries; a single one is a step that is held and not tried
	Hold     int     // s; of a press what its repetitions take, at SecondsPerRep
	Reps     int     // of a press
	Reached  int     // of balance: how many of the tries reach the seconds
	Single   int     // s of one longer set shown after those; 0: none
	RPEMax   float64 // of the last set
	Sessions int     // how many
	Apart    int     // hours between them
	PainMax  int     // of ten
}

// Tried reports whether a gate is one of tries that may fail.
func (g *Gate) Tried() bool { return g.Reached > 0 && g.Sets > 1 }

// ReachedIn reports whether so many of so many tries are as many as a gate asks, of as
// many tries as it asks at the least.
func (g *Gate) ReachedIn(reached, tries int) bool {
	return tries >= g.Sets && reached*g.Sets >= g.Reached*tries
}

// SecondsPerRep is how long a repetition takes (common practice); a press is planned and
// read in seconds, and printed and written in repetitions.
const SecondsPerRep = 3

// Page is a page of the coach's words.
type Page struct {
	ID    string
	Title string
	Body  string // Markdown
	File  string
	Line  int // of the body's first line
}
