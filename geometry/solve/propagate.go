package solve

import "slices"

// maxRounds bounds the rounds of narrowing: the full fixpoint may take as many
// rounds as a range has grid lines, and the search does not depend on it.
const maxRounds = 12

// box is a part of the search: ranges of all counts and lengths. Lengths
// without a grid are rounded outward when narrowed, so that no solution is
// ever lost; lengths on a grid and counts inward.
type box struct {
	lengths, counts []span
}

func (b *box) clone() *box {
	return &box{slices.Clone(b.lengths), slices.Clone(b.counts)}
}

func (b *box) decided() bool {
	return !slices.ContainsFunc(b.counts, func(c span) bool { return !c.fixed() })
}

// propagate narrows the box by each relation and rule in turn until nothing
// changes. It reports false when some range becomes empty.
func (q *ask) propagate(b *box) bool {
	for _, s := range b.lengths {
		if s.empty() {
			return false
		}
	}
	for _, s := range b.counts {
		if s.empty() {
			return false
		}
	}
	for range maxRounds {
		changed := false
		for _, i := range q.relations {
			r := &q.m.Relations[i]
			if !b.narrowBy(r.Terms, int64(r.Const), r.Op == Equal, &changed) {
				return false
			}
		}
		for _, i := range q.rules {
			if !b.narrowByRule(&q.m.Rules[i], q.tables[i], &changed) {
				return false
			}
		}
		if !changed {
			return true
		}
	}
	return true
}

// factor is the range of Coef × (count + Plus).
func (b *box) factor(t Term) (lo, hi int64) {
	if t.Count == None {
		return t.Coef, t.Coef
	}
	c := b.counts[t.Count]
	return ends(t.Coef*(c.lo+t.Plus), t.Coef*(c.hi+t.Plus))
}

func ends(a, b int64) (lo, hi int64) { return min(a, b), max(a, b) }

// far stands for "so large that it is no limit".
const far = 1 << 61

// mul multiplies and stops at ±far.
func mul(a, b int64) int64 {
	p, ok := mulInt(a, b)
	switch {
	case !ok && (a < 0) != (b < 0):
		return -far
	case !ok:
		return far
	}
	return max(-far, min(far, p))
}

func (b *box) termRange(t Term) (lo, hi int64) {
	flo, fhi := b.factor(t)
	if t.Length == None {
		return flo, fhi
	}
	x := b.lengths[t.Length]
	p, r, s, u := mul(flo, x.lo), mul(flo, x.hi), mul(fhi, x.lo), mul(fhi, x.hi)
	return min(p, r, s, u), max(p, r, s, u)
}

func (b *box) sumRange(terms []Term, k int64) (lo, hi int64, ok bool) {
	lo, hi = k, k
	for _, t := range terms {
		l, h := b.termRange(t)
		if l <= -far || h >= far {
			return 0, 0, false
		}
		lo, hi = lo+l, hi+h
		if lo <= -far || hi >= far {
			return 0, 0, false
		}
	}
	return lo, hi, true
}

// narrowBy uses Σ terms + k = 0, or >= 0. What is out of 64-bit reach is left
// to the exact arithmetic.
func (b *box) narrowBy(terms []Term, k int64, equal bool, changed *bool) bool {
	lo, hi, ok := b.sumRange(terms, k)
	if !ok {
		return true
	}
	if hi < 0 || equal && lo > 0 {
		return false
	}
	for _, t := range terms {
		tlo, thi := b.termRange(t)
		w := window{lo: -(hi - thi), hi: -(lo - tlo), capped: equal}
		if w.lo <= tlo && (!equal || w.hi >= thi) {
			continue
		}
		if !b.narrowTerm(t, w, changed) {
			return false
		}
		// The ranges may have shrunk: the sum with them.
		nlo, nhi := b.termRange(t)
		lo, hi = lo-tlo+nlo, hi-thi+nhi
	}
	return true
}

// window is where a term must lie; above hi too unless capped.
type window struct {
	lo, hi int64
	capped bool
}

func (b *box) narrowTerm(t Term, w window, changed *bool) bool {
	flo, fhi := b.factor(t)
	if t.Length != None && (flo > 0 || fhi < 0) {
		x := &b.lengths[t.Length]
		if !x.shrink(w.over(flo, fhi, x.step > 0), changed) {
			return false
		}
	}
	if t.Count == None {
		return true
	}
	xlo, xhi := int64(1), int64(1)
	if t.Length != None {
		xlo, xhi = b.lengths[t.Length].lo, b.lengths[t.Length].hi
	}
	clo, chi := ends(mul(t.Coef, xlo), mul(t.Coef, xhi))
	if clo <= 0 && chi >= 0 || clo <= -far || chi >= far {
		return true
	}
	c := w.over(clo, chi, true)
	c.lo, c.hi = c.lo-t.Plus, c.hi-t.Plus
	return b.counts[t.Count].shrink(c, changed)
}

// over divides the window by a range that does not meet nought: inward for
// whole numbers, else outward.
func (w window) over(flo, fhi int64, inward bool) span {
	out := span{lo: -far, hi: far}
	down, up := floorDiv, ceilDiv
	if inward {
		down, up = up, down
	}
	switch {
	case flo > 0:
		out.lo = min(down(w.lo, flo), down(w.lo, fhi))
		if w.capped {
			out.hi = max(up(w.hi, flo), up(w.hi, fhi))
		}
	default:
		out.hi = max(up(w.lo, flo), up(w.lo, fhi))
		if w.capped {
			out.lo = min(down(w.hi, flo), down(w.hi, fhi))
		}
	}
	return out
}

// shrink narrows s to o; false when nothing is left.
func (s *span) shrink(o span, changed *bool) bool {
	n := span{max(s.lo, o.lo), min(s.hi, o.hi), s.step}.round()
	if n != *s {
		*changed = true
		*s = n
	}
	return !s.empty()
}

// narrowByRule uses the bound that holds anywhere in the range of the rule's
// length, and then cuts off the values of that length whose bound the sum
// cannot reach; the bound is monotone, so that halving finds where to cut.
func (b *box) narrowByRule(r *Rule, t *ruleTable, changed *bool) bool {
	on := &b.lengths[r.On]
	least := t.easiest(on.lo, on.hi)
	if least == nothing {
		return false
	}
	if k, ok := addInt(int64(r.Const), -least); ok && !b.narrowBy(r.Terms, k, false, changed) {
		return false
	}
	_, hi, ok := b.sumRange(r.Terms, int64(r.Const))
	if !ok || on.fixed() {
		return true
	}
	n := (on.hi - on.lo) / on.step // grid lines beyond the first
	reach := func(i int64) bool {
		if t.falling {
			return t.at(on.hi-i*on.step) <= hi
		}
		return t.at(on.lo+i*on.step) <= hi
	}
	if reach(n) {
		return true
	}
	good, bad := int64(-1), n // reach(good) holds, reach(bad) does not
	for bad-good > 1 {
		if mid := (good + bad) / 2; reach(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	if good < 0 {
		return false
	}
	cut := span{on.lo, on.lo + good*on.step, on.step}
	if t.falling {
		cut = span{on.hi - good*on.step, on.hi, on.step}
	}
	return on.shrink(cut, changed)
}
