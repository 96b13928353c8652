// Package strength says how much a client can hold, for how long, how fast that
// grows, and when a step is within reach. It knows numbers only: no step, band
// or date by name, no text, no clock, no chance.
//
// Units. Loads and capacities are torques in N·m about the shoulder line, both
// arms together; holds are seconds; growth is counted in weeks; every standard
// deviation is in natural logarithms unless it says otherwise (0.02 is about
// two per cent).
//
// # Endurance
//
// A share f of the maximum is held for t minutes, t = −ln f / (k f), with k per
// minute (Ma, Chablat, Bennis, Zhang 2009). Turned round, f = exp(−W(k t)), W
// being Lambert's function. The margin n(t, k) = W(k t/60) is how far, in ln,
// the instant maximum must lie above a load that is to be held t seconds.
//
// # Capacity
//
// [State] holds what is believed of one client: C, the logarithm of the torque
// that can be held for twelve seconds; Rho, the logarithm of the client's own
// rate of gain over the law's; Kappa, the logarithm of k; and Day, today's form.
// It is an extended Kalman filter: [Prior] or [PriorUntested] start it,
// [State.Assess] reads the first tests, [State.Observe] a later day's tests and
// sets, [State.Trained] and [State.Rested] pass a week. Twelve seconds and not
// the instant maximum, because skill holds last 8 to 20 s and say almost nothing
// of k; while k is unknown ([State.TypicalEndurance]) the typical one is used.
//
// # Growth and forecast
//
// [Law] gives the gain of a full training week, falling with training age.
// [Schedule] lays weeks in a row, the block first and an open-ended rhythm after
// it, and [NewPath] turns them into a [Path]: capacity at the start of each week
// with its spread. Week w of a path is the moment w whole weeks after the state
// it began from, so week 0 is now. [Path.Arrival] gives early, likely and late
// weeks for a hold, [Path.Chance] the chance at one week.
package strength
