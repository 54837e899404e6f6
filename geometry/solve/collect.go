package solve

import (
	"math"
	"slices"

	"slatwright/specs/unit"
)

// onRange is the length a side rule looks at, and where it may lie. The ends
// are on its grid.
type onRange struct {
	unknown int
	at      handle
	step    int64
	lo, hi  int64
}

// ruleRow is a side rule whose length is still open.
type ruleRow struct {
	sum handle
	on  int // index in ons
	*ruleTable
}

// ruleTable remembers the bounds of a side rule, which are costly to work out.
type ruleTable struct {
	falling bool
	bound   func(unit.Length) unit.Length
	memo    map[int64]int64
}

// nothing is the bound where no value will do.
const nothing = math.MaxInt64

func (t *ruleTable) at(x int64) int64 {
	b, ok := t.memo[x]
	if !ok {
		b = int64(t.bound(unit.Length(x)))
		t.memo[x] = b
	}
	return b
}

// easiest is the least bound on a range of the length, which monotony puts at
// one of its ends.
func (t *ruleTable) easiest(lo, hi int64) int64 {
	if t.falling {
		return t.at(hi)
	}
	return t.at(lo)
}

// handle ties an expression to a variable of the tableau: its value is
// scale × variable + k.
type handle struct {
	v        int // -1: the expression is k alone
	scale, k rat
	whole    bool
}

func (h handle) value(t *tableau) rat {
	if h.v < 0 {
		return h.k
	}
	return h.scale.mul(t.vars[h.v].val).add(h.k)
}

// atLeast and atMost narrow the expression; false when nothing is left.
func (h handle) atLeast(t *tableau, x rat) bool {
	if h.v < 0 {
		return !h.k.less(x)
	}
	x = x.sub(h.k).quo(h.scale)
	if h.scale.sign() < 0 {
		return t.atMost(h.v, h.floor(x))
	}
	return t.atLeast(h.v, h.ceil(x))
}

func (h handle) atMost(t *tableau, x rat) bool {
	if h.v < 0 {
		return !x.less(h.k)
	}
	x = x.sub(h.k).quo(h.scale)
	if h.scale.sign() < 0 {
		return t.atLeast(h.v, h.ceil(x))
	}
	return t.atMost(h.v, h.floor(x))
}

func (h handle) floor(x rat) rat {
	if h.whole {
		return x.floor()
	}
	return x
}

func (h handle) ceil(x rat) rat {
	if h.whole {
		return x.ceil()
	}
	return x
}

// collect gathers the inequalities, the ranges of the unknowns and the rules
// as limits on parameters and on rows.
func (r *reduced) collect(p *problem) bool {
	r.limits, r.rows, r.ons, r.rules = make([]limited, len(r.whole)), nil, nil, nil
	for v, u := range p.unknowns {
		if u.fixed() {
			continue
		}
		if _, ok := r.limit(r.expr[v], bound{true, u.lo}, bound{true, u.hi}); !ok {
			return false
		}
	}
	for _, c := range p.conditions {
		if c.equal {
			continue
		}
		if _, ok := r.limit(r.substitute(c.sum), bound{set: true}, bound{}); !ok {
			return false
		}
	}
	for _, s := range p.rules {
		if !r.collectRule(p, s) {
			return false
		}
	}
	return true
}

// collectRule turns a rule into an inequality: for good where its length is
// fixed, and else with the bound that is right anywhere in the range.
func (r *reduced) collectRule(p *problem, s sideRule) bool {
	u := p.unknowns[s.on]
	lo, ok1 := u.lo.int()
	hi, ok2 := u.hi.int()
	if on := r.expr[s.on]; len(on.terms) == 0 {
		if lo, ok1 = on.k.int(); !ok1 {
			return false // off the grid: no such value
		}
		hi, ok2 = lo, true
	}
	if !ok1 || !ok2 {
		panic("solve: the length of a side rule has no grid")
	}
	least := s.easiest(lo, hi)
	if least == nothing {
		return false
	}
	sum, ok := r.limit(r.substitute(s.sum), bound{true, whole(least)}, bound{})
	if !ok || lo == hi {
		return ok
	}
	i := slices.IndexFunc(r.ons, func(o onRange) bool { return o.unknown == s.on })
	if i < 0 {
		at, _ := r.limit(r.expr[s.on], bound{}, bound{})
		i = len(r.ons)
		r.ons = append(r.ons, onRange{s.on, at, u.step, lo, hi})
	}
	r.rules = append(r.rules, ruleRow{sum, i, s.ruleTable})
	return true
}

// limit narrows an expression over parameters: a constant is checked, a single
// parameter narrowed, a row merged with any parallel one. Merging and rounding
// rows of whole parameters is what keeps the search short: a window that no
// grid line meets is seen here, not by trying values.
func (r *reduced) limit(e lin, lo, hi bound) (handle, bool) {
	if len(e.terms) == 0 {
		return handle{v: -1, k: e.k}, !(lo.set && e.k.less(lo.v) || hi.set && hi.v.less(e.k))
	}
	allWhole := r.allWhole(e)
	var n lin
	if allWhole {
		n = coprime(e)
	} else {
		n = e.times(e.terms[0].c.inv())
	}
	h := handle{scale: e.terms[0].c.quo(n.terms[0].c), k: e.k, whole: allWhole}
	if h.scale.sign() < 0 {
		lo, hi = hi, lo
	}
	if lo.set {
		lo.v = h.ceil(lo.v.sub(h.k).quo(h.scale))
	}
	if hi.set {
		hi.v = h.floor(hi.v.sub(h.k).quo(h.scale))
	}
	if len(n.terms) == 1 {
		h.v = n.terms[0].v
		return h, r.limits[h.v].narrow(lo, hi)
	}
	i := slices.IndexFunc(r.rows, func(o limited) bool { return sameTerms(o.terms, n.terms) })
	if i < 0 {
		i = len(r.rows)
		r.rows = append(r.rows, limited{terms: n.terms})
	}
	h.v = len(r.whole) + i
	return h, r.rows[i].narrow(lo, hi)
}

func (r *reduced) allWhole(e lin) bool {
	return !slices.ContainsFunc(e.terms, func(t term) bool { return !r.whole[t.v] })
}

func (l *limited) narrow(lo, hi bound) bool {
	if lo.set && (!l.lo.set || l.lo.v.less(lo.v)) {
		l.lo = lo
	}
	if hi.set && (!l.hi.set || hi.v.less(l.hi.v)) {
		l.hi = hi
	}
	return !(l.lo.set && l.hi.set && l.hi.v.less(l.lo.v))
}

func sameTerms(a, b []term) bool {
	return slices.EqualFunc(a, b, func(x, y term) bool { return x.v == y.v && x.c.eq(y.c) })
}

// build puts the limits into a tableau.
func (r *reduced) build() bool {
	r.tab = newTableau(len(r.whole))
	for _, row := range r.rows {
		r.tab.addRow(row.terms)
	}
	for v, l := range slices.Concat(r.limits, r.rows) {
		if l.lo.set && !r.tab.atLeast(v, l.lo.v) || l.hi.set && !r.tab.atMost(v, l.hi.v) {
			return false
		}
	}
	return true
}
