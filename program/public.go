package program

// PublicProgram is what a coach offers to readers that nobody measured: one
// file, from which a program is made for every starting level of its road map.
type PublicProgram struct {
	ID       string // the file's name
	Title    string
	Blurb    string   // one paragraph of plain text
	Goal     Goal     // By is zero: a public program has no dates
	Training Training // Days, Minutes and Weeks only
	Kit      []string // names as the exercise files use them
	Bands    []Band   // none: a program without bands
	Hanging  Hanging
	Rules    Rules
	Wishes   Wishes // of the studio: what it avoids and prefers, and its rules
	File     string
	Places   Places // where each value was written
}

// Level is one place to start from in a public program, and the program from
// there. Dates in it count from nowhere: only their weekday and their distance
// mean anything.
type Level struct {
	Number  int     // from 1
	Step    string  // step id, held to start here; empty: the first step is not held yet
	Hold    int     // s, of that step
	RPE     float64 // of that hold
	Entry   []Hold  // shown to leave this level, in place of a step
	Next    string  // step id, held to leave this level; the goal on the last one
	NextFor int     // s, of that step
	Helped  string  // step id: a harder one than Next, trained with help in its place; mostly empty
	Longer  string  // step id: what is trained, for longer, where the weeks get no further; mostly empty
	Mass    float64 // kg, of the mean body that it is planned for
	Program Program
	Help    []HelpByMass // in the order of the weeks; empty without bands
}

// HelpByMass is the band help of some weeks for bodies of other mass. Bodies of
// one build need the same share of their weight.
type HelpByMass struct {
	From, To int // numbers of weeks
	Step     string
	Share    float64   // of body weight
	Mass     []float64 // kg
	Help     []float64 // N, for each mass
}
