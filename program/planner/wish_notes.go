package planner

// Why a wish of the coach's hand is not done, or which rule it goes against.
const (
	noteWishGone        = "wish-gone"
	noteWishOwn         = "wish-own"
	noteWishPast        = "wish-past"
	noteWishBegun       = "wish-begun"
	noteWishBeyond      = "wish-beyond"
	noteWishAway        = "wish-away"
	noteWishNoSession   = "wish-no-session"
	noteWishNotThere    = "wish-not-there"
	noteWishUnused      = "wish-unused"
	noteWishNoTime      = "wish-no-time"
	noteWishKit         = "wish-kit"
	noteWishGoal        = "wish-goal"
	noteWishMain        = "wish-main"
	noteWishTest        = "wish-test"
	noteWishNoMain      = "wish-no-main"
	noteWishNoStep      = "wish-no-step"
	noteWishNoLean      = "wish-no-lean"
	noteWishFloor       = "wish-floor"
	noteWishRig         = "wish-rig"
	noteWishNoneLeft    = "wish-none-left"
	noteWishGaveWay     = "wish-gave-way"
	noteWishKept        = "wish-kept"
	noteWishUnreached   = "wish-unreached"
	noteWishComeback    = "wish-comeback"
	noteWishWayBack     = "wish-way-back"
	noteWishGentler     = "wish-gentler"
	noteWishPrepare     = "wish-prepare"
	noteWishHands       = "wish-hands"
	noteWishWrists      = "wish-wrists"
	noteWishYoungWrists = "wish-young-wrists"
	noteWishYoungDays   = "wish-young-days"
	noteWishJoint       = "wish-joint"
	noteWishGentle      = "wish-gentle"
	noteWishElbowLoad   = "wish-elbow-load"
	noteWishElbowStep   = "wish-elbow-step"
	noteWishEntry       = "wish-entry"
	noteWishSeconds     = "wish-seconds"
	noteWishEasyWeek    = "wish-easy-week"
	noteWishTestRest    = "wish-test-rest"
	noteWishClose       = "wish-close"
	noteWishEffort      = "wish-effort"
	noteWishMoreHelp    = "wish-more-help"
	noteWishPulls       = "wish-pulls"
	noteWishTries       = "wish-tries"

	noteWishSorePractice = "wish-sore-practice"
	noteWishBear         = "wish-bear"
	noteWishEasyKept     = "wish-easy-kept"
	noteWishRestKept     = "wish-rest-kept"
	noteWishDeload       = "wish-deload"
	noteWishDeloadKept   = "wish-deload-kept"
	noteWishPlanned      = "wish-planned"
	noteWishEffortKept   = "wish-effort-kept"
)

// wishNotes lists them, so that a words file can be checked for them.
var wishNotes = []string{
	noteWishGone, noteWishOwn, noteWishPast, noteWishBegun, noteWishBeyond, noteWishAway, noteWishNoSession, noteWishNotThere, noteWishUnused,
	noteWishNoTime, noteWishKit, noteWishGoal, noteWishMain, noteWishTest, noteWishNoMain, noteWishNoStep, noteWishNoLean, noteWishFloor, noteWishRig,
	noteWishNoneLeft, noteWishGaveWay, noteWishKept, noteWishUnreached, noteWishComeback, noteWishWayBack, noteWishGentler,
	noteWishPrepare, noteWishHands, noteWishWrists, noteWishYoungWrists, noteWishYoungDays, noteWishJoint, noteWishGentle, noteWishElbowLoad,
	noteWishElbowStep, noteWishEntry, noteWishSeconds, noteWishEasyWeek, noteWishTestRest, noteWishClose, noteWishEffort, noteWishMoreHelp, noteWishPulls, noteWishTries, noteWishSorePractice,
	noteWishBear, noteWishEasyKept, noteWishRestKept, noteWishDeload, noteWishDeloadKept, noteWishPlanned, noteWishEffortKept,
}
