// Package posture places the figures of exercises on a body. A figure says what the body
// touches and the angles that matter; here the rest follows, so that hands are on what they
// hold, soles on the floor and nothing is in it. Pages and sheets ask an Album for
// pictures; package figure draws them.
//
// # Figures
//
// A page says them under figures: in its front matter, the start and then the end, or one
// of a hold. The second says only what has changed.
//
//	figures:
//	  - {floor: [feet], wall: [back], dumbbells: [hands], shoulder: 0, elbow: 5}
//	  - {elbow: 140}
//
// Angles are degrees, and nothing in who stands straight with the arms hanging. Of the
// trunk: trunk leans the line from hips to shoulders forward (90 face down, −90 face up, 180
// upside down), spine bends the chest against the pelvis (below nothing arched), neck the
// head. Of arms: shoulder lifts them forward (90 ahead, 180 overhead), out to the side,
// elbow, wrist (palm to the forearm; below nothing back of the hand), turn swings a bent
// forearm inward, fingers turns hands that lie out to their sides: these are then shown from
// above as well. Of legs: hip lifts the thigh forward, apart to the side, knee, ankle (toes
// pointed; below nothing drawn up). shrug and reach move the shoulders toward the ears and
// forward round the ribs, in cm. right: {…} and left: {…} hold what one side has otherwise.
//
// Things are keys with the parts that touch them: floor, wall, box, cushion, blocks, scale;
// table, bar, rings and handles, which hands close around; dumbbells, band and towel, which
// go with the parts. {touches: [toes], high: 30 cm} says how high one is, for somebody of
// 1.74 m; without it box, table, bar and rings are as high as the parts come. A band goes
// from an anchor, {touches: [hands], high: 120 cm, ahead: 150 cm}, or from part to part,
// [feet, hands]. A bar or rings without floor: and high: hang in the air. Dumbbells lie along
// the thumbs, or with {touches: [hands], across: yes} as palms hold them that face up or
// down. In the second figure a thing can be none, or untouched: it stands where it stood.
//
// Parts are hands (flat, or closed where they hold something), fingers (which lie while the
// palm is lifted), fists, forearms, elbows, feet (whole soles), toes (balls of the feet),
// tips (of pointed feet), heels, shins, knees, thighs, seat, back, shoulders (the upper
// back), belly, head, crown; of one side "right hand", "left foot".
//
// view: is side (the right one), front, back, above or high (from the front and above).
// slides: names parts that touch something in both figures and not at the same place, or
// hands in rings that swing; moves: parts that an arrow follows; press: parts with an arrow
// into what they touch; circle: parts that an arrow goes round, forearms about their length.
// moves: [fists] and circle: [fists] close a hand that holds nothing.
//
// # How they are placed
//
// A body is moved until the squares of three kinds of misses are least: what touches a
// thing counts most, then angles that the page says, then those it does not, which stay as
// in who stands straight, or in a second figure as in the first. What touches the same
// thing in both figures stays where it was. What hangs, or stands on its feet or its hands
// alone, is brought over what carries it, and left and right are alike where nothing says
// otherwise. Lengths are those of package mechanics, so that one page draws a woman and a
// man.
package posture
