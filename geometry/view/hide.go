package view

import (
	"cmp"
	"math"
	"slices"
)

// trace is a curve in the picture plane, on its way past the solids that may
// hide it.
type trace struct {
	*curve
	start, way spot // of a straight curve
	ring       disc // of an arc
	bounds     window
	hits       []span // hidden stretches so far, in no order
	lo, hi     int64  // all before lo and all after hi is hidden
	cuts       []float64
}

func (f *frame) trace(c *curve, t *trace) {
	*t = trace{curve: c, hits: t.hits[:0], cuts: t.cuts[:0], hi: c.whole, bounds: noWindow()}
	if c.form == arc {
		t.ring = disc{f.spot(c.at), float64(c.size)}
		t.bounds.add(t.ring.centre, t.ring.radius)
	} else {
		p, q := f.spotf(c.place(0)), f.spotf(c.place(1))
		t.start, t.way = p, spot{q.x - p.x, q.y - p.y}
		t.bounds.add(p, 0)
		t.bounds.add(q, 0)
	}
	for _, s := range c.own {
		t.hide(s.t0, s.t1)
	}
}

// hide notes that t0..t1 is hidden.
func (t *trace) hide(t0, t1 int64) {
	t0, t1 = max(t0, 0), min(t1, t.whole)
	if t0 >= t1 {
		return
	}
	t.hits = append(t.hits, span{t0, t1})
	if t0 <= t.lo {
		t.lo = max(t.lo, t1)
	}
	if t1 >= t.hi {
		t.hi = min(t.hi, t0)
	}
}

// done reports whether nothing is left to hide.
func (t *trace) done() bool { return t.lo >= t.hi }

// pass hides what o hides of t.
func (f *frame) pass(t *trace, o *solid) {
	if t.form == rule && o.round == nil {
		if u0, u1, ok := f.shadow(t.at, t.axis, o.lo, o.hi, true); ok {
			t.hide(u0, u1)
		}
		return
	}
	if !t.bounds.meets(o.bounds) {
		return
	}
	t.cut(o)
	slices.Sort(t.cuts)
	last := 0.0
	for _, c := range append(t.cuts, 1) {
		t0, t1 := t.count(last), t.count(c)
		if t0 < t1 && f.hides(o, t.place((last+c)/2)) {
			t.hide(t0, t1)
		}
		last = max(last, c)
	}
}

// count turns a fraction of the parameter into the whole number nearest to it.
func (t *trace) count(x float64) int64 { return int64(math.Round(x * float64(t.whole))) }

// cut collects in t.cuts where t meets the outline of o. A place too many does
// no harm, for each piece between two of them is judged by itself.
func (t *trace) cut(o *solid) {
	t.cuts = t.cuts[:0]
	for i := range o.sides {
		a, b := o.sides[i][0], o.sides[i][1]
		e := spot{b.x - a.x, b.y - a.y}
		if t.form == arc {
			t.ringSide(a, e)
		} else {
			t.lineSide(a, e)
		}
	}
	for _, d := range o.discs {
		if t.form == arc {
			t.ringRing(d, o.round)
		} else {
			t.lineRing(d)
		}
	}
}

// slack is how far beyond its ends a side still cuts, as a part of its length.
const slack = 1e-6

// touch is how far an arc may stay from a side or a circle, in base units, and
// still be cut where it comes nearest. An arc that touches an outline from
// inside must be cut there, lest the middle of a piece lies within graze of the
// outline and nothing seems to be in front of it.
const touch = 32 * graze

func (t *trace) mark(x float64) {
	if x > 0 && x < 1 {
		t.cuts = append(t.cuts, x)
	}
}

func (t *trace) atDirection(x, y float64) {
	a := math.Atan2(y, x) / (2 * math.Pi)
	if a < 0 {
		a++
	}
	t.mark(a)
}

func cross(p, q spot) float64 { return float64(p.x*q.y) - float64(p.y*q.x) }
func dot(p, q spot) float64   { return float64(p.x*q.x) + float64(p.y*q.y) }

// lineSide cuts a straight curve at the side from a along e.
func (t *trace) lineSide(a, e spot) {
	den := cross(t.way, e)
	if den == 0 {
		return
	}
	to := spot{a.x - t.start.x, a.y - t.start.y}
	if w := cross(to, t.way) / den; w >= -slack && w <= 1+slack {
		t.mark(cross(to, e) / den)
	}
}

// lineRing cuts a straight curve at the circle d.
func (t *trace) lineRing(d disc) {
	to := spot{t.start.x - d.centre.x, t.start.y - d.centre.y}
	a, b, c := dot(t.way, t.way), dot(to, t.way), dot(to, to)-squared(d.radius)
	if root := float64(b*b) - float64(a*c); root > 0 {
		root = math.Sqrt(root)
		t.mark((-b - root) / a)
		t.mark((-b + root) / a)
	}
}

// ringSide cuts an arc at the side from a along e.
func (t *trace) ringSide(a, e spot) {
	to := spot{a.x - t.ring.centre.x, a.y - t.ring.centre.y}
	aa, b, c := dot(e, e), dot(to, e), dot(to, to)-squared(t.ring.radius)
	root := float64(b*b) - float64(aa*c)
	if root < -2*touch*aa*t.ring.radius {
		return
	}
	root = math.Sqrt(max(root, 0))
	for _, w := range [...]float64{(-b - root) / aa, (-b + root) / aa} {
		if w >= -slack && w <= 1+slack {
			t.atDirection(to.x+float64(w*e.x), to.y+float64(w*e.y))
		}
	}
}

// ringRing cuts an arc at the circle d of the round o. Where both are the same
// circle, as where two rounds meet end to end, o's outlines leave it at its
// tangents.
func (t *trace) ringRing(d disc, o *rounded) {
	to := spot{d.centre.x - t.ring.centre.x, d.centre.y - t.ring.centre.y}
	dd := dot(to, to)
	if dd < squared(tight) {
		if math.Abs(d.radius-t.ring.radius) < tight {
			for _, n := range o.tangents {
				t.atDirection(n.x, n.y)
			}
		}
		return
	}
	// The chord that both circles share stands square to the way between their
	// centres, at a times that way from ours.
	a := (dd + squared(t.ring.radius) - squared(d.radius)) / (2 * dd)
	h := squared(t.ring.radius)/dd - squared(a)
	if h < -2*touch*t.ring.radius/dd {
		return
	}
	h = math.Sqrt(max(h, 0))
	for _, s := range [...]float64{-h, h} {
		t.atDirection(float64(a*to.x)-float64(s*to.y), float64(a*to.y)+float64(s*to.x))
	}
}

// union sorts spans, joins those that meet, and drops what that leaves over.
func union(spans []span) []span {
	slices.SortFunc(spans, func(p, q span) int {
		return cmp.Or(cmp.Compare(p.t0, q.t0), cmp.Compare(p.t1, q.t1))
	})
	out := spans[:0]
	for _, s := range spans {
		if n := len(out); n > 0 && s.t0 <= out[n-1].t1 {
			out[n-1].t1 = max(out[n-1].t1, s.t1)
			continue
		}
		out = append(out, s)
	}
	return out
}
