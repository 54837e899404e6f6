package drawing

// lines finds texts that a line runs through or too near. A line of the text's
// own group may come near but not through it; a line that a filled shape hides
// does not count.
func (l *legibility) lines() {
	if len(l.labels) == 0 {
		return
	}
	for i, m := range l.sheet.Marks {
		switch m := m.(type) {
		case Path:
			l.pathOnText(i, m)
		case Circle:
			l.circleOnText(i, m)
		}
	}
}

// pathOnText reports each text that a path meets, once.
func (l *legibility) pathOnText(i int, p Path) {
	pen := p.Class.Ink().Pen
	if pen == 0 && p.Fill != Black {
		return
	}
	met := map[int]bool{}
	pts := flatten(p)
	if p.Closed {
		pts = append(pts, p.Start)
	}
	for k := 1; k < len(pts); k++ {
		l.segmentOnText(i, p.Group, pen, pts[k-1], pts[k], met)
	}
	if p.Fill == Black {
		for _, k := range l.grid.near(p.Bounds()) {
			if a := l.labels[k]; !met[k] && p.Bounds().Holds(a.box) && !l.hidden(i, a.mark, a.box) {
				l.lineFault(i, k)
			}
		}
	}
}

// segmentOnText looks for texts along a line in pieces no longer than a square
// of the grid, so that a long slanting line asks few squares.
func (l *legibility) segmentOnText(i, group int, pen Um, a, b Point, met map[int]bool) {
	d := b.Sub(a)
	n := max(d.X.Abs(), d.Y.Abs())/gridStep + 1
	from := a
	for k := Um(1); k <= n; k++ {
		to := a.Add(Pt(d.X*k/n, d.Y*k/n))
		for _, t := range l.grid.near(around([]Point{from, to}).Inset(-lineGap - pen)) {
			box := l.reach(l.labels[t], group, pen)
			if met[t] || !Crosses(a, b, box) {
				continue
			}
			met[t] = true // also where it is hidden
			if !l.hidden(i, l.labels[t].mark, l.labels[t].box) {
				l.lineFault(i, t)
			}
		}
		from = to
	}
}

// reach returns the box that a line's middle must not enter: the text's ink
// with a gap around it, or, for a line of its own group, the heart of the ink.
func (l *legibility) reach(a label, group int, pen Um) Rect {
	if group != 0 && group == a.text.Group {
		return a.box.Inset(min(a.box.W(), a.box.H()) * 15 / 100)
	}
	return a.box.Inset(-lineGap - pen/2)
}

// Crosses reports whether the line from a to b enters the inside of r.
func Crosses(a, b Point, r Rect) bool {
	p, q, ok := clipSegment(a, b, r)
	if !ok {
		return false
	}
	// Along an edge it only touches.
	return !(p.X == q.X && (p.X == r.Min.X || p.X == r.Max.X) || p.Y == q.Y && (p.Y == r.Min.Y || p.Y == r.Max.Y))
}

// circleOnText reports each text that a circle's line, or its black inside,
// meets.
func (l *legibility) circleOnText(i int, c Circle) {
	pen := c.Class.Ink().Pen
	if pen == 0 && c.Fill != Black {
		return
	}
	for _, k := range l.grid.near(c.Bounds().Inset(-lineGap - pen)) {
		a := l.labels[k]
		r := l.reach(a, c.Group, pen)
		near, far := distances(c.Centre, r)
		inked := c.R*c.R > near && (c.Fill == Black || c.R*c.R < far)
		if inked && !l.hidden(i, a.mark, a.box) {
			l.lineFault(i, k)
		}
	}
}

// distances returns the squares of the distances from p to the nearest and to
// the farthest point of r.
func distances(p Point, r Rect) (near, far Um) {
	d := p.Sub(into(p, r))
	dx := max((r.Min.X - p.X).Abs(), (r.Max.X - p.X).Abs())
	dy := max((r.Min.Y - p.Y).Abs(), (r.Max.Y - p.Y).Abs())
	return d.X*d.X + d.Y*d.Y, dx*dx + dy*dy
}

func (l *legibility) lineFault(line, text int) {
	a := l.labels[text]
	l.report(TextOnLine, a.box.Centre(), a.mark, line, "%q meets a %s", a.text.String(), nameOf(l.sheet.Marks[line]))
}

// leaders finds leaders that cross or lie on each other. Those of one group,
// and those that only end at the same point, may meet.
func (l *legibility) leaders() {
	type piece struct {
		mark, group int
		a, b        Point
	}
	var pieces []piece
	for i, m := range l.sheet.Marks {
		p, ok := m.(Path)
		if !ok || p.Class != Leader {
			continue
		}
		pts := flatten(p)
		for k := 1; k < len(pts); k++ {
			pieces = append(pieces, piece{i, p.Group, pts[k-1], pts[k]})
		}
	}
	told := map[[2]int]bool{}
	for i, p := range pieces {
		for _, q := range pieces[i+1:] {
			pair := [2]int{p.mark, q.mark}
			if p.mark == q.mark || p.group != 0 && p.group == q.group || told[pair] || !meet(p.a, p.b, q.a, q.b) {
				continue
			}
			told[pair] = true
			l.report(LeadersCross, Pt((p.a.X+p.b.X)/2, (p.a.Y+p.b.Y)/2), p.mark, q.mark, "two leaders meet")
		}
	}
}

// meet reports whether the lines a b and c d cross, or lie on each other for
// some length. It is exact; lines that touch at an end do not meet.
func meet(a, b, c, d Point) bool {
	if Through(a, b, c, d) {
		return true
	}
	if side(a, b, c) != 0 || side(a, b, d) != 0 {
		return false
	}
	// All on one line: compare along the longer direction.
	along := func(p Point) Um { return p.X }
	if (b.X - a.X).Abs() < (b.Y - a.Y).Abs() {
		along = func(p Point) Um { return p.Y }
	}
	lo := max(min(along(a), along(b)), min(along(c), along(d)))
	hi := min(max(along(a), along(b)), max(along(c), along(d)))
	return lo < hi
}

// side says on which side of the line a b the point p lies: -1, 0 or 1.
func side(a, b, p Point) int {
	v := (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
	switch {
	case v < 0:
		return -1
	case v > 0:
		return 1
	}
	return 0
}
