package program

// Illustration is a stance of an average body that a page can show by its name:
// "planche/tuck" is a step held free, "planche/planche-lean" the lean.
type Illustration struct {
	Name   string
	Stance Stance
	Kind   IllustrationKind
}

// IllustrationKind says what is drawn beside the body.
type IllustrationKind string

const (
	PlainIllustration IllustrationKind = ""      // nothing
	WallIllustration  IllustrationKind = "wall"  // a wall that the hair touches
	BoardIllustration IllustrationKind = "board" // a board on an edge and a scale, the body lying on it
)
