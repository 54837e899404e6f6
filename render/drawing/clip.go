package drawing

// Clip returns what of the marks lies within r, in the same order. Lines are
// cut where they cross the edge, to the micrometre; a curve or a circle is cut
// into pieces within a micrometre or two of itself. A filled shape becomes its
// filled part and, apart from that, the pieces of its outline, so that no
// outline runs along the cut. Lettering is kept only where it lies wholly
// within r: half a figure is a wrong figure.
func Clip(marks []Mark, r Rect) []Mark {
	var out []Mark
	for _, m := range marks {
		b := m.Bounds()
		if r.Holds(b) {
			out = append(out, m)
			continue
		}
		if b.Max.X < r.Min.X || b.Min.X > r.Max.X || b.Max.Y < r.Min.Y || b.Min.Y > r.Max.Y {
			continue
		}
		switch m := m.(type) {
		case Path:
			out = append(out, clipPath(m, r)...)
		case Circle:
			p := Ellipse(m.Class, m.Group, m.Fill, m.Centre, Pt(m.R, 0), Pt(0, -m.R))
			p.Margin = m.Margin
			out = append(out, clipPath(p, r)...)
		}
	}
	return out
}

// clipPath returns the part of a path's fill and of its line within r.
func clipPath(p Path, r Rect) []Mark {
	var out []Mark
	if p.Fill != NoFill {
		if pts := clipPolygon(flatten(p), r); len(pts) > 2 {
			f := Polygon(Solid, p.Group, p.Fill, pts...)
			f.Margin = p.Margin
			if len(f.Segs) > 1 {
				out = append(out, f)
			}
		}
	}
	if p.Class.Ink().Pen == 0 {
		return out
	}
	for _, piece := range clipLine(p, r) {
		out = append(out, piece)
	}
	return out
}

// outline returns the path's segments, the closing line included.
func outline(p Path) []Seg {
	segs := p.Segs
	if n := len(segs); p.Closed && n > 0 && segs[n-1].To != p.Start {
		segs = append(segs[:n:n], Seg{To: p.Start})
	}
	return segs
}

// clipLine returns the pieces of a path's line within r, as open paths.
func clipLine(p Path, r Rect) []Path {
	var runs []Path
	add := func(from Point, s Seg) {
		if n := len(runs); n > 0 && end(runs[n-1]) == from {
			runs[n-1].Segs = append(runs[n-1].Segs, s)
			return
		}
		runs = append(runs, Path{Class: p.Class, Group: p.Group, Margin: p.Margin, Start: from, Segs: []Seg{s}})
	}
	from := p.Start
	for _, s := range outline(p) {
		if s.Curve {
			c := cubic{from, s.C1, s.C2, s.To}
			c.clip(r, add)
		} else if a, b, ok := clipSegment(from, s.To, r); ok {
			add(a, Seg{To: b})
		}
		from = s.To
	}
	// An outline that starts inside comes back to its start: one piece.
	if n := len(runs); p.Closed && n > 1 && end(runs[n-1]) == runs[0].Start {
		runs[0].Start = runs[n-1].Start
		runs[0].Segs = append(runs[n-1].Segs, runs[0].Segs...)
		runs = runs[:n-1]
	}
	return runs
}

func end(p Path) Point { return p.Segs[len(p.Segs)-1].To }

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

// An edge is one side of a box: a line at X or Y = at, and which side is in.
type edge struct {
	upright bool
	at      Um
	above   bool // the inside has the greater coordinates
}

func edges(r Rect) [4]edge {
	return [4]edge{
		{true, r.Min.X, true}, {true, r.Max.X, false},
		{false, r.Min.Y, true}, {false, r.Max.Y, false},
	}
}

func (e edge) holds(p Point) bool {
	v := p.Y
	if e.upright {
		v = p.X
	}
	if e.above {
		return v >= e.at
	}
	return v <= e.at
}

// cross returns where the line through a and b meets the edge, which it must
// not run along.
func (e edge) cross(a, b Point) Point {
	if e.upright {
		return Pt(e.at, a.Y+ratio(b.Y-a.Y, e.at-a.X, b.X-a.X))
	}
	return Pt(a.X+ratio(b.X-a.X, e.at-a.Y, b.Y-a.Y), e.at)
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

// clipPolygon returns the part of a closed polygon within r, cut by one edge
// after the other (Sutherland and Hodgman). A hollow polygon may come out with
// edges on the border of r, which for a fill shows nothing.
func clipPolygon(pts []Point, r Rect) []Point {
	for _, e := range edges(r) {
		var out []Point
		for i, q := range pts {
			p := pts[(i+len(pts)-1)%len(pts)]
			if e.holds(p) != e.holds(q) {
				out = append(out, e.cross(p, q))
			}
			if e.holds(q) {
				out = append(out, q)
			}
		}
		pts = out
	}
	return pts
}
