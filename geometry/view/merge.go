package view

import (
	"cmp"
	"container/heap"
	"math"
	"slices"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// piece is a stretch of one curve that is drawn. While lines that coincide are
// merged its ends count along their common line; afterwards in the curve's own
// parameter.
type piece struct {
	curve  int32
	hidden bool
	t0, t1 int64
	way    bool // of a trail, for which any other line stands
	near   int64
}

// before reports whether p rather than q stands for both where they coincide.
func (p *piece) before(q *piece) bool {
	if p.hidden != q.hidden {
		return q.hidden
	}
	if p.way != q.way {
		return q.way
	}
	if p.near != q.near {
		return p.near > q.near
	}
	return p.curve < q.curve
}

// merge returns what is drawn of the curves, given their hidden stretches and
// the order of [grouped]: where curves coincide in the picture, of one only.
// The pieces come by curve and start.
func merge(f *frame, curves []curve, order []int32, hidden [][]span) []piece {
	out := make([]piece, 0, 2*len(curves))
	var all []piece
	groups(curves, order, func(group []int32) {
		if len(group) == 1 {
			out = split(out, &curves[group[0]], group[0], hidden[group[0]])
			return
		}
		all = all[:0]
		for _, i := range group {
			if c := &curves[i]; !c.skipped {
				all = f.common(all, c, i, hidden[i])
			}
		}
		out = f.own(out, curves, sweep(all))
	})
	return byCurve(out, len(curves))
}

// byCurve sorts pieces by curve and start.
func byCurve(pieces []piece, curves int) []piece {
	first := make([]int32, curves+1)
	for i := range pieces {
		first[pieces[i].curve+1]++
	}
	for i := range curves {
		first[i+1] += first[i]
	}
	out := make([]piece, len(pieces))
	next := slices.Clone(first)
	for i := range pieces {
		c := pieces[i].curve
		out[next[c]] = pieces[i]
		next[c]++
	}
	for i := range curves {
		own := out[first[i]:first[i+1]]
		if !slices.IsSortedFunc(own, byStart) {
			slices.SortFunc(own, byStart)
		}
	}
	return out
}

func byStart(p, q piece) int { return cmp.Compare(p.t0, q.t0) }

// split appends the pieces of one curve, visible and hidden in turn.
func split(to []piece, c *curve, index int32, hidden []span) []piece {
	p := piece{curve: index}
	for _, s := range hidden {
		if p.t0 < s.t0 {
			p.t1 = s.t0
			to = append(to, p)
		}
		to = append(to, piece{curve: index, hidden: true, t0: s.t0, t1: s.t1})
		p.t0 = s.t1
	}
	if p.t0 < c.whole {
		p.t1 = c.whole
		to = append(to, p)
	}
	return to
}

// rate returns how a curve along an axis runs on its line in the picture: where its start
// is, and how far each step of its own parameter goes.
func (f *frame) rate(c *curve) (start, step int64) {
	x, y := f.plane(c.at)
	sx, sy := f.plane(unitVec(c.axis))
	if sx == 0 {
		x, sx = y, sy
	}
	return x * f.k, sx
}

// common appends the pieces of c, counted along the line that it shares.
func (f *frame) common(to []piece, c *curve, index int32, hidden []span) []piece {
	from := len(to)
	to = split(to, c, index, hidden)
	for i := range to[from:] {
		p := &to[from+i]
		p.way, p.near = c.kind == Way, f.nearness(c)
		if c.straight() {
			start, step := f.rate(c)
			p.t0, p.t1 = start+step*p.t0, start+step*p.t1
			if step < 0 {
				p.t0, p.t1 = p.t1, p.t0
			}
		}
	}
	return to
}

// own appends pieces, counted along a common line, in their curves' parameters.
func (f *frame) own(to []piece, curves []curve, pieces []piece) []piece {
	for _, p := range pieces {
		if c := &curves[p.curve]; c.straight() {
			start, step := f.rate(c)
			p.t0, p.t1 = (p.t0-start)/step, (p.t1-start)/step
			if step < 0 {
				p.t0, p.t1 = p.t1, p.t0
			}
		}
		to = append(to, p)
	}
	return to
}

// sweep walks along a common line and keeps, of the pieces at each place, the
// one that stands before the others.
func sweep(pieces []piece) []piece {
	stops := make([]int64, 0, 2*len(pieces))
	for _, p := range pieces {
		stops = append(stops, p.t0, p.t1)
	}
	slices.Sort(stops)
	stops = slices.Compact(stops)
	slices.SortFunc(pieces, func(p, q piece) int {
		return cmp.Or(cmp.Compare(p.t0, q.t0), cmp.Compare(p.curve, q.curve))
	})
	var out []piece
	var open queue
	for i, next := 0, 0; i+1 < len(stops); i++ {
		for ; next < len(pieces) && pieces[next].t0 <= stops[i]; next++ {
			heap.Push(&open, pieces[next])
		}
		for len(open) > 0 && open[0].t1 <= stops[i] {
			heap.Pop(&open)
		}
		if len(open) == 0 {
			continue
		}
		p := open[0]
		p.t0, p.t1 = stops[i], stops[i+1]
		if n := len(out); n > 0 && out[n-1].t1 == p.t0 && out[n-1].curve == p.curve && out[n-1].hidden == p.hidden {
			out[n-1].t1 = p.t1
			continue
		}
		out = append(out, p)
	}
	return out
}

// queue is a heap of pieces, the one that stands before the others on top.
type queue []piece

func (q queue) Len() int           { return len(q) }
func (q queue) Less(i, j int) bool { return q[i].before(&q[j]) }
func (q queue) Swap(i, j int)      { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(p any)        { *q = append(*q, p.(piece)) }
func (q *queue) Pop() any {
	last := (*q)[len(*q)-1]
	*q = (*q)[:len(*q)-1]
	return last
}

// closeRings joins the pieces of arcs that go on across the end of the turn. The
// pieces come by curve and start.
func closeRings(curves []curve, pieces []piece) []piece {
	out := pieces[:0]
	for i := 0; i < len(pieces); {
		n := i + 1
		for n < len(pieces) && pieces[n].curve == pieces[i].curve {
			n++
		}
		first, last := &pieces[i], &pieces[n-1]
		if n > i+1 && curves[first.curve].form == arc &&
			first.t0 == 0 && last.t1 == turn && first.hidden == last.hidden {
			first.t0 = last.t0 - turn
			out = append(out, pieces[i:n-1]...)
		} else {
			out = append(out, pieces[i:n]...)
		}
		i = n
	}
	return out
}

// line turns a piece of c into a line of the room. It reports false for what
// rounding leaves without length.
func (f *frame) line(c *curve, p piece) (Line, bool) {
	l := Line{ID: c.id, Kind: c.kind, Hidden: p.hidden}
	l.From, l.To = f.point(c, p.t0), f.point(c, p.t1)
	if c.form != arc {
		return l, l.From != l.To
	}
	l.Arc, l.Centre, l.Radius = true, f.out(c.at), unit.Length(c.size)
	if f.sign[0]*f.sign[2] < 0 {
		l.From, l.To = l.To, l.From
	}
	if p.t1-p.t0 > turn/2 && l.From == l.To {
		return l, true
	}
	return l, l.From != l.To
}

// point returns the place of c at the parameter t, rounded to base units.
func (f *frame) point(c *curve, t int64) space.Point {
	if c.form == rule {
		p := c.at
		p[c.axis] += roundDiv(t, f.k)
		return f.out(p)
	}
	q := c.place(float64(t) / float64(c.whole))
	return f.out(vec{int64(math.Round(q[0])), int64(math.Round(q[1])), int64(math.Round(q[2]))})
}

// roundDiv returns a/b for b > 0, rounded to the nearest whole number, a half up.
func roundDiv(a, b int64) int64 {
	q := a / b
	r := a % b
	if r < 0 {
		q, r = q-1, r+b
	}
	if 2*r >= b {
		q++
	}
	return q
}
