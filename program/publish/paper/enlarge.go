package paper

// In large print a card fills a sheet: it is laid out as every other card, and drawn at
// twice the size.

// enlarged are marks at so many times their size, seen from the sheet's corner.
func enlarged(marks []Mark, by float64) []Mark {
	all := make([]Mark, len(marks))
	for i, m := range marks {
		all[i] = m.times(by)
	}
	return all
}

func (b Box) times(by float64) Box { return Box{by * b.X, by * b.Y, by * b.W, by * b.H} }

func (p Point) times(by float64) Point { return Point{by * p.X, by * p.Y} }

func (t Text) times(by float64) Mark {
	t.Box, t.Size, t.Lead = t.Box.times(by), by*t.Size, by*t.Lead
	return t
}

func (f Fill) times(by float64) Mark {
	f.Box = f.Box.times(by)
	return f
}

func (h Hatch) times(by float64) Mark {
	h.Box, h.Gap, h.Width = h.Box.times(by), by*h.Gap, by*h.Width
	return h
}

func (f Frame) times(by float64) Mark {
	f.Box, f.Width, f.Dash = f.Box.times(by), by*f.Width, by*f.Dash
	return f
}

func (s Stroke) times(by float64) Mark {
	points := make([]Point, len(s.Points))
	for i, p := range s.Points {
		points[i] = p.times(by)
	}
	s.Points, s.Width, s.Dash = points, by*s.Width, by*s.Dash
	return s
}

func (d Dot) times(by float64) Mark {
	d.At, d.Radius = d.At.times(by), by*d.Radius
	return d
}

func (p Picture) times(by float64) Mark {
	p.Box = p.Box.times(by)
	return p
}
