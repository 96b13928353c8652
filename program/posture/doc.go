// Package posture places the figures of exercises on a body. A figure says what the body
// touches and the angles that matter; here the rest follows, so that hands are on what they
// hold, soles on the floor and nothing is in it.
//
// A body is moved until the squares of three kinds of misses are least: what touches a
// thing counts most, then angles that the page says, then those it does not, which stay as
// in who stands straight, or in a second figure as in the first. What touches the same
// thing in both figures stays where it was. Lengths are those of package mechanics, so that
// one page draws a woman and a man.
package posture
