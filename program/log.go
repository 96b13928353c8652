package program

// Log is what the client wrote on the cards, read back.
type Log struct {
	Entries []Entry // as they stand in the file
	File    string  // path below the coach's folder; empty: there is no log
}

// Entry is one line of a log: a set, a whole exercise in one cell (several
// Sets), a session done as printed, or how the joints felt one morning. Lines in a
// row that number the sets of one exercise are one Entry too.
//
// A session done as printed has no exercise; the pain it left, where said, is in
// a single set without a number. Other lines of its day stand in place of what
// was printed of their exercises.
//
// A morning has no exercise either. What it has is one set without a number, whose
// Pain is given: how the joints felt on the morning of Date, after the last session
// before it. Nothing was done for it, so it is no session and no day of training. A
// morning may have several Entries; at each joint the highest counts.
type Entry struct {
	Date      Date
	AsPrinted bool   // the whole session was done as printed
	Morning   bool   // the joints the morning after, and nothing done
	Exercise  string // exercise id; the exercise of the step where a step was named
	Step      string // step id, where it holds one
	Rig       Rig
	RigGiven  bool    // bands were named, or "free"; otherwise the rig is the printed one
	DropGiven bool    // the strap was named too; otherwise it is the one printed, or last printed, for these bands
	Ahead     float64 // m, lean as it was done; 0: as printed
	Scale     float64 // N on the toes as it was done; 0: as printed
	Sets      []SetDone
	Note      string
	Place     Place // of its first line
}

// SetDone is one set as it was done.
type SetDone struct {
	Number  int     // of the exercise that day, from 1; 0: not said
	Seconds float64 // s; 0 with Reps 0: not said, or with CleanNo tried and not held
	Reps    int
	RPE     float64 // 0: not said
	Clean   Clean
	Pain    Pain
	Tries   Tries // several tries of a balance; Seconds is then the best of them
}

// Clean says whether the form held to the end of a set.
type Clean string

const (
	CleanUnsaid Clean = ""
	CleanYes    Clean = "yes"
	CleanNo     Clean = "no"
)

// Pain is pain of ten at each pair of joints. The zero Pain is "nothing said".
type Pain struct {
	Given                            bool
	Wrists, Elbows, Shoulders, Other int // 0 to 10; -1: not said
}

// Worst is the most pain that was said, and 0 where none was.
func (p Pain) Worst() int {
	if !p.Given {
		return 0
	}
	return max(0, p.Wrists, p.Elbows, p.Shoulders, p.Other)
}

// signLetters are enough to tell two clients of one name apart, and few enough of an
// address of at least eight letters to keep it unguessed (our judgement).
const signLetters = 4

// Signed is how lines that a client sends say whose they are: by the first name, and the
// beginning of the address of the client's pages, in one word that no mail breaks. Empty
// where there are no pages.
func Signed(first, page string) string {
	if len(page) < signLetters {
		return ""
	}
	return first + "-" + page[:signLetters]
}
