package paper

// passage is one piece of running text.
type passage struct {
	text string
	kind passageKind
}

type passageKind int

const (
	prose passageKind = iota
	title
	strong
	bullet
)

// bullets makes a titled list.
func bullets(heading string, items []string) []passage {
	all := []passage{{heading, title}}
	for _, item := range items {
		all = append(all, passage{item, bullet})
	}
	return all
}

// column sets passages under each other from a corner and says where they end.
// Where most is not 0, a passage gets so many lines and its rest is left out.
func (ts *typesetter) column(x, y, width, size float64, most int, all []passage) ([]Mark, float64) {
	var marks []Mark
	for i, p := range all {
		s, indent := style{Size: size}, 0.0
		switch p.kind {
		case title:
			s.Face, s.Tone = Bold, Accent
			if i > 0 {
				y += 0.5 * s.lead(size)
			}
		case strong:
			s.Face = Bold
		case bullet:
			indent = 0.32 * size * mmPerPoint * 2
			at := Point{x + indent/4, y + s.lead(size)/2}
			marks = append(marks, Dot{At: at, Radius: size * mmPerPoint / 9, Tone: Quiet})
		}
		t, end := ts.flow(x+indent, y, width-indent, s, p.text)
		if most > 0 && len(t.Lines) > most {
			t.Lines = clip(t.Face, size, t.W, t.Lines, most)
			t.H = float64(most) * t.Lead
			end = y + t.H
		}
		marks = append(marks, t)
		y = end
		if p.kind == bullet {
			y += 0.12 * s.lead(size)
		}
	}
	return marks, y
}
