package planner

// # The rules of training
//
// In numbers, by what a coach asks, with their units and where they come from: "published"
// with its source, "common practice" of the trade, or "our judgement". They stand here and
// nowhere else. A test prints this file as the table in DEVELOPERS.md, another holds each
// number to what a coach expects. What a studio may set otherwise is program.Rules.

// Ages. Common practice; the years are our judgement.
const (
	youthAge = 16 // years, under which wrists stay straight and nothing is tested to its end
	adultAge = 18 // years, under which a guardian agrees first
	olderAge = 45 // years, from which deloads are more often, seconds fewer, rests before the test longer
)

// Effort of the main work, as a share of the longest hold that is predicted. In simulation
// these fail one set in a hundred to one in twenty; a reserve of seconds instead fails one
// in five (testdata/study.txt). Our judgement, in line with common practice for tendons,
// which adapt more slowly than muscle.
const (
	usualEffort      = 0.70 // share, usually
	mostEffort       = 0.75 // share, of a rig that is in use already, of a gate, and at the most of whole repetitions
	gentleEffort     = 0.60 // share, with a sore joint, under 16, after a lay-off
	effortBand       = 10   // per cent of the longest hold below that, to which work still trains
	plannedQuantile  = 0.30 // quantile of the strength that weeks are planned on
	untestedQuantile = 0.10 // the same of who has held nothing yet
)

// Loads, as shares of the instant maximum. Our judgement.
const (
	heavyFrom, heavyTo = 0.85, 0.92 // heavy work
	secondLoad         = 0.72       // the longer hold beside the main work, at the most
	easyLoad           = 0.49       // easy leans, which are not counted
	elbowLoad          = 0.75       // with sore elbows, at the most
	bandShare          = 0.25       // of body weight, the most band help at the main work
)

// Holds. Under ten seconds a hold is too hard to be the main work (common practice); the
// rest is our judgement.
const (
	mainLeast, mainMost     = 10, 15 // s, main work; of repetitions at the most as many as open the next step, where those are more
	middleHold              = 12     // s, the hold that a rig is chosen for
	shortLeast, shortMost   = 5, 9   // s, where no rig allows more
	shortFrom               = 90     // tenths of a second: the least predicted hold that short sets are made of, where there is a lean instead
	secondLeast, secondMost = 15, 25 // s, the longer hold beside the main work
	heavyLeast, heavyMost   = 4, 8   // s, heavy work
	deloadLeast             = 4      // s, the shortest of all
	testedHold              = 8      // s, the shortest main hold of a step that a test has shown
)

// Sets of a day. Our judgement, within common practice.
const (
	mainSetsLeast, mainSetsMost   = 3, 5 // sets, main work
	shortSetsLeast, shortSetsMost = 5, 6 // sets, where holds are short
	secondSetsLeast, secondMostN  = 2, 3 // sets, the longer hold
	heavySetsLeast, heavySetsMost = 4, 6 // sets, heavy work
	leanSets                      = 2    // sets of easy leans
	triesSets                     = 3    // tries of the first step, once a week, until it is held
	againstBetween                = 6    // sets of pulling on a day between straight-arm days, at the most
	usualBalance                  = 100  // per cent of the pushing sets that are pulled; in a hang the other way round
	leastBalance                  = 80   // the same where a session is short of time
)

// Seconds a week: those of straight-arm work, weighed by their load. Elbow tendons set the
// pace. Our judgement.
var spellVolume = []struct {
	from           float64 // weeks
	start, ceiling int     // s
}{
	{0, 90, 180}, {13, 130, 220}, {26, 170, 300}, {52, 210, 360}, {104, 260, 450}, {208, 300, 540},
} // from so many weeks of the present spell, s a week at the start of a block, and at the most

// What changes those seconds; of the shares the two smallest hold together. Our judgement.
const (
	soreFactor   = 0.50 // share, with a sore wrist or elbow
	youthFactor  = 0.75 // share, under 16
	olderFactor  = 0.80 // share, from 45 on
	returnFactor = 0.60 // share, in the first weeks after four or more off
	weeklyRise   = 10   // per cent over what a week rises from, or one set of the main work, whichever is more
	lookBack     = 4    // weeks, whose highest counts as what was done
)

// Days. Our judgement; what is heavy waits for tendons (common practice).
const (
	usualArmDays   = 3   // days of straight-arm work a week
	fourthDayAfter = 104 // weeks of the present spell, after which it is one more
	restBefore     = 2   // days from one to the next: 48 h
	heavyAfter     = 26  // weeks of the present spell before heavy work
	hardDay        = 67  // per cent of the minutes, on a day of hard training elsewhere and after it
)

// Deloads. Fewer training days tire less, so that work stands before rest; the many weeks
// of once a week are within what strength athletes report, 5.6 ± 2.3 weeks (published:
// Rogerson 2024). Our judgement.
const (
	manyDays        = 3  // training days a week, with fewer of which deloads come later
	deloadWeek      = 4  // which week of a round
	oftenWeek       = 3  // the same with a sore joint, under 16, from 45 on, after a lay-off
	deloadDays      = 8  // training days before one, with fewer a week
	deloadWeekLeast = 6  // which week at the soonest, with fewer a week
	oftenDays       = 6  // training days before one, with fewer a week, for who needs it often
	deloadAway      = 5  // days away in a week, which are the deload
	deloadShare     = 60 // per cent of the seconds and of a week's sets; of a day's half the sets
)

// The block and its test. The taper is published: Bosquet 2007, volume less 41 to 60 %.
const (
	defaultWeeks  = 12 // weeks of a block (common practice)
	taperSessions = 2  // short sessions before the test
	taperMost     = 59 // per cent of the last build week's counted work
	taperSets     = 3  // main sets of a short session, at the most
	usualTestRest = 2  // days without straight arms before the test
	olderTestRest = 3  // the same from 45 years on
)

// Moving on. Nothing stands still, nobody is hurried, and an exercise of which a set did not
// come off goes back by a move (our judgement; small steps are common practice).
const (
	reserve           = 6  // s beyond a gate's that must be predicted free before the next step
	repeats           = 2  // times that a week is repeated whose gate was not passed, then a little help is back
	gateWeeksAsked    = 2  // gate weeks printed for a log that never says how the form was
	openWeeks         = 2  // build weeks on a step whose gate before it is open
	backWeeks         = 2  // build weeks that help which came back stays
	sameWeeks         = 3  // build weeks running that a dose may stay what it is
	movesEvery        = 2  // build weeks from one small move of an exercise to the next
	againstMovesEvery = 3  // the same of pulling
	mostReps          = 15 // repetitions, as far as an exercise goes
	mostSets          = 5  // sets, as far as an exercise goes
)

// After a lay-off, weeks off or an illness. What was built in months is not lost in three
// weeks, but elbows have to get used to it again (our judgement, near common practice).
const (
	returnSpell   = 13 // weeks of a new spell with deloads more often
	gentleReturn  = 3  // weeks of it with the gentler effort
	shortBreak    = 2  // weeks off, after which seconds begin again lower
	restartShare  = 70 // per cent of the seconds before them
	longBreak     = 4  // weeks off, after which seconds are fewer for some weeks
	easyReturn    = 2  // such weeks
	comebackFrom  = 2  // weeks off, after which the step before comes first, or more help
	comebackEasy  = 2  // weeks of that
	comebackMost  = 4  // weeks until work is whole again, at the most; else as many as were missed
	comebackShare = 70 // per cent of the sets at first
)

// Pain, of ten. What the card says is common practice; the limits that it leaves open are
// our judgement.
const (
	sorePain      = 3  // of ten within two weeks: the joint counts as sore
	highPain      = 5  // of ten: the exercise is over, and the joint rests
	lately        = 14 // days, in which pain, effort and missed sessions are looked at
	morningUp     = 1  // of ten above usual, next morning: repeat the session easier
	morningHigh   = 3  // of ten above usual: no straight-arm work
	usualDays     = 28 // days of mornings, whose median is usual
	usualLeast    = 3  // mornings that make a usual; with fewer it is 0
	runningDays   = 4  // days between two mornings that are running
	pauseDays     = 7  // days, after which a morning stops nothing any more
	restDays      = 3  // days of rest after high pain, or a morning that stops (the card says three to seven)
	quietMornings = 2  // mornings that have to be quiet before the next session of the way back
)

// The way back from pain, session by session. Common practice for tendons; the numbers are
// our judgement.
const (
	leanSessions  = 1    // sessions of leans alone
	lightSessions = 3    // sessions, short and few
	lightEffort   = 0.65 // share of the predicted hold in them
	lightSets     = 60   // per cent of the sets in them
	nearSessions  = 3    // sessions after them, as many sets
	nearEffort    = 0.72 // share of the predicted hold in those
)

// What is worth a look in the last two weeks. Our judgement.
const (
	highRPE    = 9.0     // mean RPE of the main sets
	lowRPE     = 6.0     // RPE of every main set, at the most
	ratedLeast = 6       // sets rated, before that says anything
	shortMany  = 0.20    // share of the main sets that stopped short; plans reckon with 0.05
	mainsLeast = 8       // main sets, before that says anything
	silentDays = 10      // days without a word
	missedMany = 1.0 / 3 // share of the sessions
	unlikely   = 0.20    // chance, below which a goal's date is called so
	littleGain = 0.5     // share of the gain, below which the forecast says why
)

// Times of a session. Common practice: two to five minutes between hard sets.
const (
	prepareTime      = 300 // s of preparation, never dropped
	prepareTimeShort = 240 // s of it in a short session
	shortSession     = 20  // min, which is short
	changeOver       = 60  // s to set up the next item
	mainRest         = 150 // s after a main set
	aheadRest        = 180 // s after a heavy set
	secondRest       = 90  // s after the longer hold
	leanRest         = 90  // s after a lean
	testRest         = 300 // s after a hold to its end
	pullRest         = 120 // s, a rest that holds a set of pulling
)

// Balance, which is practised. Our judgement, within common practice.
const (
	practiceDays    = 5   // days a week, at the most
	fewDays         = 3   // days a week, with fewer of which balance comes more slowly
	practiceSeconds = 900 // s of one day, rests counted
	triesRise       = 2   // tries more than a gate asks, at the most, one more a build week
	soreTries       = 60  // per cent of the tries and sets, with a joint that is sore
	trainedFrom     = 20  // per cent of the tries that have to reach, for a step to be practised
	backAfter       = 2   // weeks in which fewer do, and the step below comes back
)

// Readers of a public program, whom nobody has measured. Our judgement.
const (
	levelRPE     = 8  // RPE of the hold that shows a level
	levelMargin  = 2  // s that it is longer than the gate's
	levelReserve = 3  // s more that it is taken to last: RPE 8 leaves five, but who was never filmed rates kindly
	readerSpell  = 20 // weeks that the present spell is taken to last at the most: elbows are unknown
)
