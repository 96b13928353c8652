package program

// FirstHour is what a coach does in the first hour with a client: what is still to be
// asked, looked at and tested, and what has to hang and to be marked for the first week.
// It is for the coach alone: joints and conditions are named.
type FirstHour struct {
	Client Client
	Skill  string // road map id; empty: nobody has chosen one yet
	Ask    []Note // what the assessment leaves open, and what it says that wants a word
	Warmup []Prescription
	Ranges []Note // what to look at and to measure of joints and body
	Tests  []FirstTest
	Leave  []Note // what is not tested today, and why
	Rig    []Note // what to measure, to hang and to mark
}

// FirstTest is one test of the hour.
type FirstTest struct {
	Prescription
	Skill string // road map id
	Why   Note
}
