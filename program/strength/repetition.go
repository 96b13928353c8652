package strength

// SecondsPerRepetition is how long a hold trains like one repetition. Common
// practice of coaches; with Epley's equation it stays within 0.05 of [Share]
// from 10 to 60 s.
const SecondsPerRepetition = 3.0

// OneRepetition is the load, in the unit of the one given, that could be lifted
// once by a client who lifts this load so many times and no more: Epley's
// load·(1 + r/30) (as listed in Biol Sport PMC4042664, Table 1, which warns that
// such equations rest on charts more than on studies). One repetition or fewer
// is the load itself; above 15 counts as 15, beyond which no equation agrees
// with another.
func OneRepetition(load, repetitions float64) float64 {
	if !(repetitions > 1) {
		return load
	}
	return load * (1 + min(repetitions, 15)/30)
}

// HoldOf is the maximal hold, in seconds, that a maximal set of repetitions
// stands for; below one it is 0.
func HoldOf(repetitions float64) float64 {
	if !(repetitions >= 1) {
		return 0
	}
	return SecondsPerRepetition * repetitions
}
