package program

// Rules are the rules of training that a studio, or a coach for one client, sets
// otherwise than the planner's table has them (program/planner/rules.go, and DEVELOPERS.md).
// Zero is the table's number. What age, joints and a lay-off ask for holds beside them, and
// of two numbers the more careful one.
type Rules struct {
	DeloadEvery int     // which week of a round is the deload; 0: by the training days a week
	Effort      float64 // share of the predicted longest hold that main work is planned for
	ArmDays     int     // days of straight-arm work a week, at the most; never more than the table has
	HeavyAfter  int     // weeks of the present spell before heavy work
	TestRest    int     // days without straight-arm work before the test
	Rise        int     // per cent that a week may hold over what it rises from
	Ceiling     int     // per cent of the table's counted seconds a week, at the most
	Older       int     // years, from which deloads are more often, seconds fewer, rests before the test longer
}
