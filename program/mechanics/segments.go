package mechanics

// row is one line of a segment table: the segment's share of body mass, its
// length as a share of stature, and its centre of mass as a share of its length
// from the origin endpoint.
type row struct{ mass, length, com float64 }

// table holds the rows the side view needs.
type table struct {
	head, trunk, upperArm, forearm, hand, thigh, shank, foot row

	trunkC7     float64 // length from C7 to mid-hip, share of stature
	handLength  float64 // wrist to the tip of the middle finger, share of stature
	heelToAnkle float64 // heel to ankle along the foot, share of stature
}

// Published: de Leva P. (1996), J Biomech 29(9):1223–1230, Table 4. Endpoints:
// head vertex–C7, trunk mid-shoulder–mid-hip, upper arm shoulder–elbow, forearm
// elbow–wrist, hand wrist–third knuckle, thigh hip–knee, shank knee–ankle, foot
// heel–toe tip; trunkC7 is the C7–mid-hip row, handLength the wrist–third
// fingertip row. The joints are joint centres. The distance from heel to ankle,
// 0.035 of stature, is common practice; the table does not give it.
var (
	female = table{
		head:        row{.0668, .1405, .4841},
		trunk:       row{.4257, .2870, .3782},
		upperArm:    row{.0255, .1586, .5754},
		forearm:     row{.0138, .1523, .4559},
		hand:        row{.0056, .0450, .7474},
		thigh:       row{.1478, .2124, .3612},
		shank:       row{.0481, .2528, .4352},
		foot:        row{.0129, .1316, .4014},
		trunkC7:     .3544,
		handLength:  .0980,
		heelToAnkle: .035,
	}
	male = table{
		head:        row{.0694, .1395, .5002},
		trunk:       row{.4346, .2961, .4310},
		upperArm:    row{.0271, .1618, .5772},
		forearm:     row{.0162, .1545, .4574},
		hand:        row{.0061, .0495, .7900},
		thigh:       row{.1416, .2425, .4095},
		shank:       row{.0433, .2529, .4395},
		foot:        row{.0137, .1482, .4415},
		trunkC7:     .3465,
		handLength:  .1079,
		heelToAnkle: .035,
	}
)

// tableFor returns the published table, or the mean of both.
func tableFor(s Sex) table {
	switch s {
	case Female:
		return female
	case Male:
		return male
	}
	return meanTable(female, male)
}

func meanTable(a, b table) table {
	mean := func(x, y float64) float64 { return (x + y) / 2 }
	both := func(x, y row) row {
		return row{mean(x.mass, y.mass), mean(x.length, y.length), mean(x.com, y.com)}
	}
	return table{
		head: both(a.head, b.head), trunk: both(a.trunk, b.trunk),
		upperArm: both(a.upperArm, b.upperArm), forearm: both(a.forearm, b.forearm),
		hand: both(a.hand, b.hand), thigh: both(a.thigh, b.thigh),
		shank: both(a.shank, b.shank), foot: both(a.foot, b.foot),
		trunkC7: mean(a.trunkC7, b.trunkC7), handLength: mean(a.handLength, b.handLength),
		heelToAnkle: mean(a.heelToAnkle, b.heelToAnkle),
	}
}
