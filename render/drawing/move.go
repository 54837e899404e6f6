package drawing

// Translate returns the marks moved by d.
func Translate(marks []Mark, d Point) []Mark {
	return mapPoints(marks, func(p Point) Point { return p.Add(d) })
}

// mapPoints returns copies of the marks with f applied to each of their points;
// radii and heights stay.
func mapPoints(marks []Mark, f func(Point) Point) []Mark {
	out := make([]Mark, 0, len(marks))
	for _, m := range marks {
		switch m := m.(type) {
		case Path:
			m.Start = f(m.Start)
			segs := make([]Seg, len(m.Segs))
			for i, s := range m.Segs {
				segs[i] = Seg{To: f(s.To)}
				if s.Curve {
					segs[i] = Seg{Curve: true, C1: f(s.C1), C2: f(s.C2), To: f(s.To)}
				}
			}
			m.Segs = segs
			out = append(out, m)
		case Circle:
			m.Centre = f(m.Centre)
			out = append(out, m)
		case Text:
			m.At = f(m.At)
			out = append(out, m)
		}
	}
	return out
}

// Ratio is a factor of two whole numbers, Den over zero.
type Ratio struct{ Num, Den int64 }

// Of returns n times the ratio, rounded half away from zero.
func (r Ratio) Of(n Um) Um {
	v := int64(n) * r.Num
	if v < 0 {
		return -Um((-v + r.Den/2) / r.Den)
	}
	return Um((v + r.Den/2) / r.Den)
}

// Stretch returns the marks with x multiplied by fx and y by fy, as a printer
// that prints too short asks for. Where the two differ a circle becomes an
// ellipse. Lettering keeps its size.
func Stretch(marks []Mark, fx, fy Ratio) []Mark {
	f := func(p Point) Point { return Pt(fx.Of(p.X), fy.Of(p.Y)) }
	out := mapPoints(marks, f)
	for i, m := range marks {
		c, ok := m.(Circle)
		if !ok {
			continue
		}
		rx, ry := fx.Of(c.R), fy.Of(c.R)
		if rx == ry {
			moved := out[i].(Circle)
			moved.R = rx
			out[i] = moved
			continue
		}
		p := Ellipse(c.Class, c.Group, c.Fill, f(c.Centre), Pt(rx, 0), Pt(0, -ry))
		p.Margin = c.Margin
		out[i] = p
	}
	return out
}
