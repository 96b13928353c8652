// Package mechanics turns a body, a pose and a rig of rubber bands into the
// torque that two straight arms have to hold at the shoulders, or into the force
// that they have to press with.
//
// # The side view
//
// Everything happens in the plane seen from the side. X points ahead (the way
// the head points), Y points up, and the origin is the point where the hands
// carry the body. The arms are straight, the body's axis is horizontal or
// pitched. Both arms, and both shoulders, count together.
//
// # The body
//
// Segments are those of de Leva (1996), Table 4, female, male or the mean of
// both. Every length is the table's ratio times stature; the arm's lengths are
// scaled once more by arm span / stature. The trunk is the row from mid-shoulder
// to mid-hip; the head's centre of mass is placed from the seventh neck vertebra
// (C7). A pointed foot lies in line with the shank.
//
// # The statics
//
// The straight arm leans by an angle from the vertical, shoulder ahead of the
// hand, so that gravity on every segment and the pull of the bands at the hip
// balance about the support. The load is the moment about the shoulder line of
// everything but the arms. Bands lengthen as the hip sinks with the lean, so
// length, pull and lean are solved together. A hanging lever is the same
// picture turned over: the support is above, the chest faces up.
//
// The support is a grip (at the hand's centre of mass), flat hands (under the base
// of the fingers) or the bare wrist. A planche lean keeps its toes on the floor,
// so the hands carry only part of the body.
//
// # The bands
//
// Rubber follows Mooney and Rivlin's curve, fitted to the client's own readings.
// Bands hang side by side from an anchor to the hip, a thigh or an ankle, a strap
// may go between, and a slack band does nothing. Help is the vertical part of their
// pull. In a hang the anchor is the bar itself, between the hands, or a beam over it;
// a pull from the bar turns nobody about it, so the arms lean as they do without it.
//
// # Pressing and lifting
//
// A body that presses itself up with its feet or knees on something is a lever about
// them, and its hands push along the arms; against a wall and free its hands carry
// all of it. How deep a press goes counts by a table of our judgement. Its
// joints, for whoever draws it, are those of that lever, and where the crown touches the
// floor a shape that the same bones can take. The wrists are the origin of both. A lift of the
// straight legs into a handstand weighs most where the toes leave the block, balanced
// and weightless, or on the way up where the legs are level.
//
// # How far to trust it
//
// Absolute torques differ by about nine per cent between published segment
// tables, shares of the full position by one or two: compare shares. Shoulder
// blades move only by the pose's depression, the spine rounds only by getting
// shorter, the neck stays in line, and heights of wrist and grip over the floor
// are left out; leans are therefore upper bounds.
//
// # Units
//
// Kilograms, metres, newtons, newton metres and radians, throughout. Nothing
// here knows a skill, a client or a date, and nothing is rounded.
package mechanics

// Gravity is standard gravity in m/s² (published: 3rd General Conference on
// Weights and Measures, 1901).
const Gravity = 9.80665

// Point is a place in the side view, in metres: X ahead, Y up.
type Point struct{ X, Y float64 }

// plus returns p moved by q.
func (p Point) plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// times returns p stretched by k.
func (p Point) times(k float64) Point { return Point{k * p.X, k * p.Y} }

// along returns p moved a distance d along u.
func (p Point) along(u Point, d float64) Point { return Point{p.X + d*u.X, p.Y + d*u.Y} }
