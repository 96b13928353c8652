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
// Drawn examples make much waste, and the machine has memory: garbage is collected a
// fourth as often as usual, which halves the time of the planner's tests.
package steady

import (
	"flag"
	"runtime/debug"

	_ "pgregory.net/rapid" // whose flags must be there first
)

func init() {
	if flag.Lookup("rapid.seed").Value.String() == "0" {
		set("rapid.seed", "1")
	}
	set("rapid.nofailfile", "true")
	debug.SetGCPercent(400)
}

func set(name, value string) {
	if err := flag.Set(name, value); err != nil {
		panic(err) // the library has other flags now
	}
}
