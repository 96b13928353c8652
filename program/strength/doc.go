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
// rate of gain over the law's; Kappa, the logarithm of k; Day, today's form; and
// offsets. It is an extended Kalman filter: [Prior] or [PriorUntested] start it,
// [State.Assess] reads the first tests, [State.Observe] a later day's tests and
// sets, [State.Trained] and [State.Rested] pass a week. Twelve seconds and not
// the instant maximum, because skill holds last 8 to 20 s and say almost nothing
// of k; while k is unknown ([State.TypicalEndurance]) the typical one is used.
//
// # Offsets
//
// A step that is held lower than drawn, a lean with help from the feet, a band that
// hangs askew is off by the same every time, so its error is one number and not
// fresh noise a set. For each position e and each rig r that was held the state has
// b, the ln of the load felt over the load worked out, with a prior of mean 0 (see
// [Model] for its spread) and no drift. A set of load L held t seconds has the
// surplus
//
//	m = C + n(12, k) + d − 0.004 i − ln L − b_e − b_r − n(t, k)
//	h = (1, 0, n₁₂/(1+n₁₂) − n/(1+n), 1, −1 at b_e, −1 at b_r)
//	V = hᵀ P h + 0.015² + (0.7 s)²,  s = ∂n/∂t
//
// with i the sets before it on the day; P is the covariance of all of it. An exact
// set takes P h m/V off the mean and P h hᵀ P/V off P; the other kinds take what is
// left of the normal law where the set says it lies ([State.Observe]).
// Predictions at a site are of C − b_e − b_r, with the variance and covariances of
// that sum ([State.At]): what was tested predicts itself, and what was never met
// adds its prior. Sets of one easy lean cannot add up to strength, because b_e
// stays as doubtful as it was against C.
//
// A maximal hold is exact at any length. Of k it depends by ∂(n₁₂ − n)/∂ln k, which
// is 0.02 at ten seconds and 0.22 at sixty: h carries that, so a long hold leaves C
// less certain by 0.22 sd(ln k) and no further term is due. Its C is right for the k
// believed, and up to 25 s k learns from it. A longer hold alone would move k and C
// together along a line that only the form of the curve decides; so k is considered
// there (Schmidt: its doubt counts, its mean and variance stay), unless the hold is
// one of a Pair, whose other half holds C.
//
// # Growth and forecast
//
// [Law] gives the gain of a full training week, falling with training age; a former
// best makes it quicker ([Career.WeekGain]), too little counted work smaller
// ([WorkFactor]).
//
// Nobody gains fast, or slowly, for years because they did so in one. The own rate is an
// Ornstein-Uhlenbeck process: after a week that brings g at own gain 1
//
//	C'   = C + e^Rho g                F = (1, e^Rho g; 0, a)
//	Rho' = u + a (Rho − u)            a = e^(−1/52), u = −σ²/2, σ = RateSpread
//	P'   = F P Fᵀ + Q                 Q = diag(0.008², σ² (1 − a²))
//
// with a time of a year (see [RateTime]) and a mean of e^Rho that comes to 1, so that
// over the years rates that come and go add up to the law. In a forecast what is gained
// by week w is G = Σ g_i e^ρ_i, taken as log-normal with the sum of the terms' means e_i
// and, for the variance of its ln, Σ Σ e_i e_j cov(ρ_i, ρ_j) / (Σ e_i)²; both grow from
// week to week by sums, and for equal gains that variance falls as 52/w in the end, so
// that the variance of what is gained grows as w and not as w².
//
// [Schedule] lays weeks in a row, the block first and an open-ended rhythm after
// it, and [NewPath] turns them into a [Path]: capacity at the start of each week
// with its spread. Week w of a path is the moment w whole weeks after the state
// it began from, so week 0 is now. [Path.Arrival] gives early, likely and late
// weeks for a hold, [Path.Chance] the chance at one week, both at a site by
// [Path.At].
package strength
