// Package steady takes chance out of ordinary test runs. A test imports it for its
// effect: drawn examples (rapid) then come from the same seed in every run, so that
// a run passes or fails for everyone alike, and a failure leaves no file behind that
// would make the next run fail too.
//
// Its flags are set before the command line is read, and the seed only where the
// environment names none. So -rapid.seed 7, or RAPID_SEED=7, draws other examples,
// and -rapid.seed 0 different ones every time; a failure prints its seed. What such
// a run finds becomes a plain case.
//
// An ordinary run draws few examples, and .ci/random the same many times over, each time
// from another seed. -rapid.checks 1000, or RAPID_CHECKS=1000, asks for so many at once.
//
// Drawn examples make much waste, and the machine has memory: garbage is collected a
// fourth as often as usual, which halves the time of the planner's tests.
package steady

import (
	"flag"
	"runtime/debug"
	"strconv"

	_ "pgregory.net/rapid" // whose flags must be there first
)

// usual is how many examples an ordinary run draws of a property.
const usual = "40"

func init() {
	unlessAsked("rapid.seed", "0", "1")
	unlessAsked("rapid.checks", "100", usual)
	set("rapid.nofailfile", "true")
	debug.SetGCPercent(400)
}

// unlessAsked sets what the environment has left as the library has it.
func unlessAsked(name, library, value string) {
	if flag.Lookup(name).Value.String() == library {
		set(name, value)
	}
}

// Fewer draws fewer examples of a property that costs much, unless a number was asked for.
func Fewer(t interface{ Cleanup(func()) }, examples int) {
	if flag.Lookup("rapid.checks").Value.String() == usual {
		set("rapid.checks", strconv.Itoa(examples))
		t.Cleanup(func() { set("rapid.checks", usual) })
	}
}

// Ordinary reports whether the examples are those of every ordinary run: only of them can it be
// said that a kind has to be among them.
func Ordinary() bool { return flag.Lookup("rapid.seed").Value.String() == "1" }

func set(name, value string) {
	if err := flag.Set(name, value); err != nil {
		panic(err) // the library has other flags now
	}
}
