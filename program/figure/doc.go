// Package figure turns numbers and words into drawings: a body in balance and
// the charts of a training block. A Drawing is plain geometry; whoever has ink draws it: SVG here for pages, gofpdf in the paper
// package.
//
// # Drawings
//
// A Drawing is an ordered list of shapes, first drawn first, and of labels. A
// shape is filled outlines or strokes, in one of five inks. All paths are cubic
// curves, so that any ink can follow them; a straight piece has its control
// points on its ends. Lengths are metres: of the gym for figures, of paper for
// charts. Y points up. The box from Min to Max holds every shape.
//
// # Bodies
//
// Draw takes a program.Stance: joints that the statics have put in balance. The
// joints are drawn where they are; only flesh is added. Girths are shares of
// stature and the same for everybody, so nobody's weight is drawn. What the side
// view does not see is told by three liberties: the far leg and arm are lighter,
// legs that are apart are moved down (near) and up (far) in proportion to how far
// out they are, and the far arm stands a little ahead of the near one. The head
// is turned about its own centre of mass to look ahead, which balance does not
// feel. The near hand, the centre of mass and the plumb line between them are
// exact.
//
// # Exercises
//
// Show takes a program.Picture: a stance, or a figure of an exercise that package posture
// placed, seen from the side or otherwise. From the side it is drawn like a stance; far
// limbs stand a little ahead of the near ones, or away from a wall. From elsewhere both
// sides are dark and what is nearer lies over the rest. Frames gives all pictures of an
// exercise in frames of one size. Such drawings have neither marks nor words.
//
// # Words
//
// Every word and number shown is a string of the caller's. An empty string is no
// label.
//
// The same input gives the same drawing and the same bytes. The exported names
// are stable.
package figure
