package planner

import (
	"slices"

	"gatepost/program"
)

// What the planner has to say. Each code has its words in the words file under
// "note.<code>".
const (
	noteUnder18      = "guardian-missing"
	noteInjured      = "injured-not-cleared"
	noteCondition    = "condition-not-cleared"
	noteAlwaysAway   = "always-away"
	noteSkillUnknown = "skill-unknown"
	noteGoalMet      = "goal-met"
	noteGoalFar      = "goal-beyond-block"
	noteGoalAhead    = "goal-ahead"
	noteGoalUnlikely = "goal-unlikely"
	noteGoalBefore   = "goal-before-block"
	noteUntested     = "untested"
	noteTypical      = "typical-endurance"
	noteNoHands      = "no-hands"
	noteNeutral      = "neutral-grip"
	noteElbows       = "elbows-sore"
	noteShoulders    = "shoulders-sore"
	noteYouth        = "youth"
	noteOlder        = "older"
	noteReturning    = "returning"
	noteProvisional  = "provisional"
	noteBlockShort   = "block-shorter"
	noteBandBeyond   = "band-beyond-measured"
	noteBandSlant    = "band-slant"
	noteStepDropped  = "step-dropped"
	noteOmitKit      = "left-out-kit"
	noteOmitBlock    = "left-out-block"
	noteOmitWrists   = "left-out-wrists"
	noteHandles      = "needs-handles"
	noteNoRest       = "no-day-of-rest"
	noteRungs        = "floor-rungs"
	noteShortSets    = "short-sets"
	noteMendStrap    = "mend-strap"
	noteMendBand     = "mend-band"
	noteNewStep      = "new-step"
	noteLessHelp     = "less-help"
	noteMoreHelp     = "more-help"
	noteFree         = "free-now"
	noteFewerSets    = "fewer-sets"
	noteLightDay     = "light-day"
	noteHardDay      = "hard-day"
	noteNoTime       = "no-time"
	noteTestUnused   = "test-not-used"
	noteDisagree     = "tests-disagree"
	noteDisagreeBoth = "tests-disagree-both"
	noteKin          = "kin"
	noteNoGain       = "no-work-no-gain"
	noteFoldStands   = "fold-stands"
	noteAwayDeload   = "away-is-deload"
	noteCheckHold    = "check-hold"
	noteEntryCheck   = "entry-check"
	noteGateWeek     = "gate-week"
	noteGateLonger   = "gate-week-longer"
	noteGateDays     = "gate-days"
	noteOpenSet      = "open-set"
	noteGateMinutes  = "gate-no-minutes"
	noteGateSeconds  = "gate-no-seconds"
	noteKitWouldOpen = "kit-would-open"
	noteEntryHold    = "entry-hold"
	noteEntryReps    = "entry-reps"
	noteEntryLean    = "entry-lean"
	noteEntryFold    = "entry-fold"
	noteEntryUnasked = "entry-unasked"

	// of balance
	notePractice     = "practice"
	notePracticeFew  = "practice-few-days"
	notePracticeSore = "practice-sore"
	noteGateTries    = "gate-week-tries"
	noteGateHeld     = "gate-week-held"
	notePracticeStay = "practice-stays"
	notePracticeBack = "practice-back"

	// of a plan made anew from the log
	noteWeekMissed  = "week-missed"
	noteWeeksOff    = "weeks-off"
	noteRepeat      = "gate-repeat"
	noteHelpBack    = "help-back"
	noteEased       = "joint-eased"
	noteFell        = "fell-back"
	noteSetUnplaced = "set-unplaced"
	noteStrapUnsaid = "strap-unsaid"
	notePullUnsaid  = "pull-unsaid"
	noteBandGone    = "band-gone"
	noteBandRetired = "band-retired"
	noteGateOpen    = "gate-open"
	noteJointRests  = "joint-rests"
	noteWayBack     = "way-back"
	noteJointBack   = "joint-back"
	noteComeback    = "comeback"

	askGate = "ask-gate" // words that the log lacks

	flagPainRising = "flag-pain-rising"
	flagPainHigh   = "flag-pain-high"
	flagPainSore   = "flag-pain-sore"
	flagPainOther  = "flag-pain-other"

	flagMorningUp    = "flag-morning-up"
	flagMorningHigh  = "flag-morning-high"
	flagMorningTwice = "flag-morning-twice"
	flagMorningOld   = "flag-morning-old"
	flagMorningOther = "flag-morning-other"

	flagSetsShort  = "flag-sets-short"
	flagRPEHigh    = "flag-rpe-high"
	flagRPELow     = "flag-rpe-low"
	flagSilent     = "flag-silent"
	flagMissed     = "flag-missed"
	flagGatePassed = "flag-gate-passed"
	flagGateUnsaid = "flag-gate-unsaid"
	flagGateNotYet = "flag-gate-not-yet"
	flagGateHelp   = "flag-gate-help"
	flagGoalShown  = "flag-goal-shown"

	flagPracticeBack = "flag-practice-back"

	flagBlockOver = "flag-block-over"
	flagDoubted   = "flag-doubted"

	changeGone = "change-gone"
	changeNew  = "change-new"
	changeKind = "change-kind"
	changeGate = "change-gate"
	changeStep = "change-step"
	changeHelp = "change-help"
	changeLean = "change-lean"
	changeHold = "change-hold"
	changeSets = "change-sets"
	changeNone = "change-no-main"

	// of the first hour, for the coach alone
	hourGoal       = "hour-goal"
	hourSkill      = "hour-skill"
	hourConditions = "hour-conditions"
	hourCleared    = "hour-cleared"
	hourJoints     = "hour-joints"
	hourSore       = "hour-sore"
	hourInjured    = "hour-injured"
	hourGuardian   = "hour-guardian"
	hourBest       = "hour-best"
	hourBeginner   = "hour-beginner"
	hourBreak      = "hour-break"
	hourOther      = "hour-other"
	hourEyes       = "hour-eyes"

	hourBody         = "hour-body"
	hourHang         = "hour-hang"
	hourWrists       = "hour-wrists"
	hourWristsSpared = "hour-wrists-spared"
	hourElbows       = "hour-elbows"
	hourBlades       = "hour-blades"
	hourOverhead     = "hour-overhead"
	hourFold         = "hour-fold"
	hourStraddle     = "hour-straddle"
	hourArmSpan      = "hour-arm-span"
	hourBalancePoint = "hour-balance-point"

	hourWhyEntry = "hour-why-entry"
	hourWhyTries = "hour-why-tries"
	hourWhyLine  = "hour-why-line"
	hourWhyStep  = "hour-why-step"
	hourWhyRig   = "hour-why-rig"
	hourWhyHelp  = "hour-why-help"
	hourWhyLean  = "hour-why-lean"
	hourWhyScale = "hour-why-scale"
	hourWhyTry   = "hour-why-try"
	hourWhySkill = "hour-why-skill"

	hourLeaveCleared = "hour-leave-cleared"
	hourLeaveEntry   = "hour-leave-entry"
	hourLeaveHands   = "hour-leave-hands"
	hourLeaveHeld    = "hour-leave-held"
	hourLeaveFar     = "hour-leave-far"
	hourLeaveSore    = "hour-leave-sore"
	hourLeaveYouth   = "hour-leave-youth"
	hourLeaveBest    = "hour-leave-best"
	hourLeavePair    = "hour-leave-pair"
	hourLeaveBlank   = "hour-leave-blank"

	hourPulls   = "hour-pulls"
	hourPullAll = "hour-pull-all"
	hourHeights = "hour-heights"
	hourNames   = "hour-names"
	hourAnchor  = "hour-anchor"
	hourBar     = "hour-bar"
	hourStraps  = "hour-straps"
	hourPads    = "hour-pads"
	hourBlocks  = "hour-blocks"
	hourLean    = "hour-lean"
	hourScale   = "hour-scale"
	hourSpot    = "hour-spot"
	hourWall    = "hour-wall"
	hourFloor   = "hour-floor"
)

// NoteCodes lists every code the planner may use, so that a words file can be
// checked for them.
var NoteCodes = append([]string{
	noteUnder18, noteInjured, noteCondition, noteAlwaysAway, noteSkillUnknown, noteGoalMet, noteGoalFar, noteGoalAhead,
	noteGoalUnlikely, noteGoalBefore, noteUntested, noteTypical, noteNoHands, noteNeutral, noteElbows,
	noteShoulders, noteYouth, noteOlder, noteReturning, noteProvisional, noteBlockShort, noteBandBeyond,
	noteBandSlant, noteStepDropped, noteOmitKit, noteOmitBlock, noteOmitWrists, noteHandles, noteNoRest, noteRungs, noteShortSets, noteMendStrap, noteMendBand, noteNewStep, noteLessHelp, noteMoreHelp,
	noteFree, noteFewerSets, noteLightDay, noteHardDay, noteNoTime, noteTestUnused, noteDisagree, noteDisagreeBoth, noteKin, noteNoGain, noteFoldStands,
	noteAwayDeload, noteCheckHold, noteEntryCheck, noteGateWeek, noteGateLonger, noteGateDays, noteOpenSet, noteGateMinutes, noteGateSeconds, noteKitWouldOpen, noteEntryHold, noteEntryReps, noteEntryLean, noteEntryFold, noteEntryUnasked,
	notePractice, notePracticeFew, notePracticeSore, noteGateTries, noteGateHeld, notePracticeStay, notePracticeBack, flagPracticeBack,
	noteWeekMissed, noteWeeksOff, noteRepeat, noteHelpBack, noteEased, noteFell, noteSetUnplaced, noteStrapUnsaid, notePullUnsaid, noteBandGone, noteBandRetired, noteGateOpen, noteJointRests, noteWayBack, noteJointBack, noteComeback,
	flagPainRising, flagPainHigh, flagPainSore, flagPainOther,
	flagMorningUp, flagMorningHigh, flagMorningTwice, flagMorningOld, flagMorningOther, flagSetsShort, flagRPEHigh, flagRPELow,
	flagSilent, flagMissed, flagGatePassed, flagGateUnsaid, askGate, flagGateNotYet, flagGateHelp, flagGoalShown, flagBlockOver, flagDoubted,
	changeGone, changeNew, changeKind, changeGate, changeStep, changeHelp, changeLean, changeHold, changeSets, changeNone,
	hourGoal, hourSkill, hourConditions, hourCleared, hourJoints, hourSore, hourInjured, hourGuardian, hourBest, hourBeginner, hourBreak, hourOther,
	hourEyes, hourBody, hourHang, hourWrists, hourWristsSpared, hourElbows, hourBlades, hourOverhead, hourFold, hourStraddle, hourArmSpan,
	hourBalancePoint, hourWhyEntry, hourWhyTries, hourWhyLine, hourWhyStep, hourWhyRig, hourWhyHelp, hourWhyLean, hourWhyScale, hourWhyTry, hourWhySkill,
	hourLeaveCleared, hourLeaveEntry, hourLeaveHands, hourLeaveHeld, hourLeaveFar, hourLeaveSore, hourLeaveYouth, hourLeaveBest, hourLeavePair,
	hourLeaveBlank, hourPulls, hourPullAll, hourHeights, hourNames, hourAnchor, hourBar, hourStraps, hourPads, hourBlocks, hourLean, hourScale, hourSpot,
	hourWall, hourFloor,
}, wishNotes...)

func note(code string, values ...program.Value) program.Note {
	return program.Note{Code: code, Values: values}
}

func seconds(name string, s float64) program.Value {
	return program.Value{Name: name, Kind: program.ValueSeconds, Number: s}
}

// lasting is a time that is no repetitions in any skill.
func lasting(name string, s float64) program.Value {
	return program.Value{Name: name, Kind: program.ValueTime, Number: s}
}

func newtons(name string, n float64) program.Value {
	return program.Value{Name: name, Kind: program.ValueNewtons, Number: n}
}

func shareOf(name string, of float64) program.Value {
	return program.Value{Name: name, Kind: program.ValueShare, Number: of}
}

func metres(name string, m float64) program.Value {
	return program.Value{Name: name, Kind: program.ValueMetres, Number: m}
}

func count(name string, n int) program.Value {
	return program.Value{Name: name, Kind: program.ValueCount, Number: float64(n)}
}

func date(name string, d program.Date) program.Value {
	return program.Value{Name: name, Kind: program.ValueDate, Number: float64(d)}
}

func step(name, id string) program.Value {
	return program.Value{Name: name, Kind: program.ValueStep, Text: id}
}

func exercise(name, id string) program.Value {
	return program.Value{Name: name, Kind: program.ValueExercise, Text: id}
}

func kit(name, thing string) program.Value {
	return program.Value{Name: name, Kind: program.ValueKit, Text: thing}
}

func word(name, key string) program.Value {
	return program.Value{Name: name, Kind: program.ValueWord, Text: key}
}

func text(name, s string) program.Value {
	return program.Value{Name: name, Kind: program.ValueText, Text: s}
}

// hasNote reports whether notes have one of a code.
func hasNote(notes []program.Note, code string) bool {
	return slices.ContainsFunc(notes, func(n program.Note) bool { return n.Code == code })
}
