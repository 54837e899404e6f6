package drawing

// clipSegment returns the part of the line from a to b within r; ok is false
// where no length of it is. Which part lies within is decided by exact shares
// of the way, and only the two ends found are rounded: a line that runs just
// outside an edge is not taken for one on it.
func clipSegment(a, b Point, r Rect) (p, q Point, ok bool) {
	d := b.Sub(a)
	from, to := share{0, 1}, share{1, 1}
	for _, side := range [...]struct{ way, room Um }{ // way × share <= room
		{-d.X, a.X - r.Min.X}, {d.X, r.Max.X - a.X}, {-d.Y, a.Y - r.Min.Y}, {d.Y, r.Max.Y - a.Y},
	} {
		switch {
		case side.way == 0 && side.room < 0:
			return a, b, false
		case side.way > 0:
			if s := (share{side.room, side.way}); s.less(to) {
				to = s
			}
		case side.way < 0:
			if s := (share{-side.room, -side.way}); from.less(s) {
				from = s
			}
		}
	}
	if to.less(from) {
		return a, b, false
	}
	p, q = from.along(a, d), to.along(a, d)
	return p, q, p != q
}

// A share is a part num / den of a way, den > 0.
type share struct{ num, den Um }

// less compares exactly; sheets are shorter than some metres, so that the
// products fit.
func (s share) less(t share) bool { return s.num*t.den < t.num*s.den }

// along returns the point that share of d away from a, rounded to nearest.
func (s share) along(a, d Point) Point {
	return a.Add(Pt(ratio(d.X, s.num, s.den), ratio(d.Y, s.num, s.den)))
}

// ratio returns n * num / den, rounded to nearest. Sheets are shorter than
// some metres, so that the product fits.
func ratio(n, num, den Um) Um {
	v := n * num
	if den < 0 {
		v, den = -v, -den
	}
	if v < 0 {
		return -((-v + den/2) / den)
	}
	return (v + den/2) / den
}
