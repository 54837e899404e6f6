package solve

// reduced is a problem after elimination: each unknown is a sum of parameters
// that satisfies every equality and every grid whatever values the parameters
// take, whole ones for those marked whole. What is left are ranges of single
// parameters and rows with a lower and an upper limit, kept in a tableau.
type reduced struct {
	of     *problem  // what it was made of
	expr   []lin     // unknown -> parameters
	whole  []bool    // parameter -> takes whole values only
	limits []limited // parameter -> its own range
	rows   []limited
	tab    *tableau // parameters first, then the rows
	ons    []onRange
	rules  []ruleRow
}

// limited is a combination of parameters with limits. If every parameter in it
// is whole, the coefficients are whole without common divisor, and so are the
// limits.
type limited struct {
	terms  []term
	lo, hi bound
}

// reduce eliminates the equalities. It returns nil if they, a single range or
// two parallel rows show that there is no solution.
func (p *problem) reduce() *reduced {
	r := &reduced{of: p}
	for _, u := range p.unknowns {
		switch {
		case u.hi.less(u.lo):
			return nil
		case u.fixed():
			if !u.holds(u.lo) {
				return nil
			}
			r.expr = append(r.expr, constant(u.lo))
		default:
			f := whole(1)
			if u.step > 0 {
				f = whole(u.step)
			}
			r.expr = append(r.expr, lin{terms: []term{{len(r.whole), f}}})
			r.whole = append(r.whole, u.step > 0)
		}
	}
	for _, c := range p.conditions {
		if c.equal && !r.eliminate(r.substitute(c.sum)) {
			return nil
		}
	}
	// Rows whose two limits meet are equalities that nobody wrote down, such as
	// a distance that is nought. Left to branching their lattice is tried value
	// by value.
	for {
		r.compact()
		if !r.collect(p) {
			return nil
		}
		row, ok := r.tight()
		if !ok {
			break
		}
		if !r.eliminate(row) {
			return nil
		}
	}
	if !r.build() {
		return nil
	}
	return r
}

// tight returns a row that has one value only, as a sum that is nought.
func (r *reduced) tight() (lin, bool) {
	for _, l := range r.rows {
		if l.lo.set && l.hi.set && l.lo.v.eq(l.hi.v) {
			return lin{l.terms, l.lo.v.neg()}, true
		}
	}
	return lin{}, false
}

func (r *reduced) substitute(a lin) lin {
	out := constant(a.k)
	for _, t := range a.terms {
		out = out.plus(t.c, r.expr[t.v])
	}
	return out
}

// eliminate uses the equality e = 0 to remove a parameter. A parameter without
// a grid is simply solved for. Among whole ones the row is brought to coprime
// integers; a divisor that the constant does not share is a contradiction of
// the grid; otherwise Euclid's steps, each an exchange of one whole parameter
// for another, lead to a coefficient of one.
func (r *reduced) eliminate(e lin) bool {
	for {
		if len(e.terms) == 0 {
			return e.k.isZero()
		}
		for _, t := range e.terms {
			if !r.whole[t.v] {
				r.solveFor(e, t)
				return true
			}
		}
		e = coprime(e)
		if !e.k.isWhole() {
			return false
		}
		least := e.terms[0]
		for _, t := range e.terms {
			if t.c.abs().less(least.c.abs()) {
				least = t
			}
		}
		if least.c.abs().eq(whole(1)) {
			r.solveFor(e, least)
			return true
		}
		// least := fresh − Σ floor(c/least.c) × other
		fresh := len(r.whole)
		r.whole = append(r.whole, true)
		by := lin{}
		for _, t := range e.terms {
			if q := t.c.quo(least.c).floor(); t.v != least.v && !q.isZero() {
				by.terms = append(by.terms, term{t.v, q.neg()})
			}
		}
		by.terms = append(by.terms, term{fresh, whole(1)})
		r.exchange(least.v, by)
		e = e.replace(least.v, by)
	}
}

func (r *reduced) solveFor(e lin, t term) {
	rest := lin{k: e.k}
	for _, o := range e.terms {
		if o.v != t.v {
			rest.terms = append(rest.terms, o)
		}
	}
	r.exchange(t.v, rest.times(t.c.inv().neg()))
}

func (r *reduced) exchange(v int, by lin) {
	for i := range r.expr {
		r.expr[i] = r.expr[i].replace(v, by)
	}
}

// coprime scales the terms to whole numbers without common divisor, the first
// one positive.
func coprime(e lin) lin {
	f := whole(1)
	for _, t := range e.terms {
		f = f.mul(t.c.mul(f).denominator())
	}
	e = e.times(f)
	g := rat{}
	for _, t := range e.terms {
		g = gcdRat(t.c, g)
	}
	if e.terms[0].c.sign() != g.sign() {
		g = g.neg()
	}
	return e.times(g.inv())
}

// gcdRat is Euclid's algorithm for fractions of any size; the sign of the result
// is left open.
func gcdRat(a, b rat) rat {
	for !b.isZero() {
		a, b = b, a.sub(b.mul(a.quo(b).floor()))
	}
	return a
}

// spacing is the largest number that all distances of an unknown from a value
// are multiples of: nought where there is none, since it takes any value.
func (r *reduced) spacing(unknown int, from rat) rat {
	e := r.expr[unknown]
	if !r.allWhole(e) {
		return rat{}
	}
	apart := e.k.sub(from)
	for _, t := range e.terms {
		apart = gcdRat(apart, t.c).abs()
	}
	return apart
}

// compact numbers the parameters anew, leaving out those that are gone.
func (r *reduced) compact() {
	seen := make([]bool, len(r.whole))
	for _, e := range r.expr {
		for _, t := range e.terms {
			seen[t.v] = true
		}
	}
	name := make([]int, len(seen))
	kept := 0
	for p, s := range seen {
		if s {
			name[p] = kept
			r.whole[kept] = r.whole[p]
			kept++
		}
	}
	r.whole = r.whole[:kept]
	for i, e := range r.expr {
		terms := make([]term, len(e.terms))
		for j, t := range e.terms {
			terms[j] = term{name[t.v], t.c}
		}
		r.expr[i] = lin{terms, e.k}
	}
}
