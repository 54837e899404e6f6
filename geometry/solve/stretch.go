package solve

// stretch is which values of a sum a search looks at next: those from low on, as
// far as span steps up.
type stretch struct {
	set       bool
	low, span rat
}

// closeIn looks for the best within windows of values of the sum, the lowest
// first and each wider than the one before, and reports whether it has seen the
// end of the search. A window ties unknowns to each other that a tree of splits
// follows apart: where it leaves one value to some, their lattice is eliminated
// and not tried value by value (squeeze), and the rest is searched in a basis in
// which steps that belong together are one (straighten).
func (s *branching) closeIn(size int) bool {
	if s.any {
		s.lookInto(s.of.clone(), size)
		return !s.out
	}
	w, step := &s.next, whole(1)
	if s.allInt {
		step = s.scale // between two values
	}
	if !w.set {
		*w = stretch{set: true, low: s.root.mul(s.scale).add(s.k)}
	}
	for {
		p := s.of.clone()
		p.keepAtLeast(s.sum, w.low)
		if r := p.reduce(); r == nil || !r.tab.check() {
			return true // what was found is the best, or there is nothing
		}
		high := w.low.add(w.span.mul(step))
		if s.found && s.least().less(high) {
			high = s.least()
		}
		p.keepAtLeast(s.sum.times(whole(-1)), high.neg())
		if s.lookInto(p, size); s.out {
			return false
		}
		if s.found && !high.less(s.least()) {
			return true
		}
		if w.low = high; s.allInt {
			w.low = high.add(step)
		}
		w.span = w.span.mul(whole(4))
		if w.span.isZero() {
			w.span = whole(1)
		}
	}
}

// keepAtLeast adds sum >= v to the problem.
func (p *problem) keepAtLeast(sum lin, v rat) {
	sum.k = sum.k.sub(v)
	p.conditions = append(p.conditions, condition{sum, false})
}

// lookInto searches a part of the problem for something better than what is
// known. It sets out where it does not come to the end.
func (s *branching) lookInto(p *problem, size int) {
	s.out = false
	s.spend(1)
	if !p.squeeze() {
		return
	}
	r := p.reduce()
	if r == nil || !r.straighten() {
		return
	}
	t := r.branch(s.sum)
	for _, t.near = range []bool{false, true} {
		t.pass(min(size, s.left))
		if t.found {
			s.found, s.values = true, t.values
			s.best = t.least().sub(s.k).quo(s.scale)
		}
		s.spend(t.nodes)
		if s.out = t.out; !s.out || t.found && s.any {
			s.out = false
			return
		}
	}
}

// squeezes bounds the rounds of squeeze: each may leave room for another.
const squeezes = 8

// squeeze narrows the range of each unknown to what the linear relaxation
// leaves of it; false when that is nothing.
func (p *problem) squeeze() bool {
	for range squeezes {
		r := p.reduce()
		if r == nil || !r.tab.check() {
			return false
		}
		narrower := false
		seen := extents{reduced: r}
		for v := range p.unknowns {
			u, e := &p.unknowns[v], r.expr[v]
			if len(e.terms) == 0 {
				continue
			}
			lo, hi := seen.of(e)
			if lo.set && u.lo.less(lo.v) {
				u.lo, narrower = lo.v, true
			}
			if hi.set && hi.v.less(u.hi) {
				u.hi, narrower = hi.v, true
			}
			if u.hi.less(u.lo) {
				return false
			}
		}
		if !narrower {
			return true
		}
	}
	return true
}

// extents works out the least and the greatest value of expressions in the
// linear relaxation, rounded inward to what whole parameters can give. The
// limits of the tableau must hold.
type extents struct {
	*reduced
	known []limited
}

func (x *extents) of(e lin) (lo, hi bound) {
	n := e.times(e.terms[0].c.inv())
	if x.allWhole(e) {
		n = coprime(e)
	}
	f := e.terms[0].c.quo(n.terms[0].c)
	l := x.ofRow(n.terms)
	lo, hi = l.lo, l.hi
	if f.sign() < 0 {
		lo, hi = hi, lo
	}
	lo.v, hi.v = lo.v.mul(f).add(e.k), hi.v.mul(f).add(e.k)
	return lo, hi
}

func (x *extents) ofRow(terms []term) limited {
	for _, l := range x.known {
		if sameTerms(l.terms, terms) {
			return l
		}
	}
	l := limited{terms: terms}
	v := x.tab.addRow(terms)
	if x.tab.push(v, false) {
		l.lo = bound{true, x.tab.vars[v].val}
	}
	if x.tab.push(v, true) {
		l.hi = bound{true, x.tab.vars[v].val}
	}
	if x.allWhole(lin{terms: terms}) {
		l.lo.v, l.hi.v = l.lo.v.ceil(), l.hi.v.floor()
	}
	x.known = append(x.known, l)
	return l
}
