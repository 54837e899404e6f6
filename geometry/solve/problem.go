package solve

import "slices"

// term is one product of a coefficient and a numbered variable.
type term struct {
	v int
	c rat
}

// lin is a sum of terms, sorted by variable and none of them nought, and a
// constant.
type lin struct {
	terms []term
	k     rat
}

func constant(k rat) lin { return lin{k: k} }

// plus returns a + f × b.
func (a lin) plus(f rat, b lin) lin {
	out := lin{k: a.k.add(f.mul(b.k)), terms: make([]term, 0, len(a.terms)+len(b.terms))}
	i, j := 0, 0
	for i < len(a.terms) || j < len(b.terms) {
		switch {
		case j == len(b.terms) || i < len(a.terms) && a.terms[i].v < b.terms[j].v:
			out.terms = append(out.terms, a.terms[i])
			i++
		case i == len(a.terms) || b.terms[j].v < a.terms[i].v:
			out.terms = append(out.terms, term{b.terms[j].v, f.mul(b.terms[j].c)})
			j++
		default:
			if c := a.terms[i].c.add(f.mul(b.terms[j].c)); !c.isZero() {
				out.terms = append(out.terms, term{a.terms[i].v, c})
			}
			i, j = i+1, j+1
		}
	}
	return out
}

// coef returns the coefficient of v.
func (a lin) coef(v int) rat {
	for _, t := range a.terms {
		if t.v == v {
			return t.c
		}
	}
	return rat{}
}

// replace puts the expression by in the place of variable v.
func (a lin) replace(v int, by lin) lin {
	c := a.coef(v)
	if c.isZero() {
		return a
	}
	rest := lin{k: a.k}
	for _, t := range a.terms {
		if t.v != v {
			rest.terms = append(rest.terms, t)
		}
	}
	return rest.plus(c, by)
}

// times returns f × a for f other than nought.
func (a lin) times(f rat) lin {
	out := lin{k: a.k.mul(f), terms: make([]term, len(a.terms))}
	for i, t := range a.terms {
		out.terms[i] = term{t.v, t.c.mul(f)}
	}
	return out
}

// sorted brings terms in any order, perhaps naming a variable twice, into the
// form lin asks for.
func sorted(terms []term, k rat) lin {
	slices.SortStableFunc(terms, func(a, b term) int { return a.v - b.v })
	out := lin{k: k}
	for _, t := range terms {
		if n := len(out.terms); n > 0 && out.terms[n-1].v == t.v {
			out.terms[n-1].c = out.terms[n-1].c.add(t.c)
			if out.terms[n-1].c.isZero() {
				out.terms = out.terms[:n-1]
			}
		} else if !t.c.isZero() {
			out.terms = append(out.terms, t)
		}
	}
	return out
}

// unknown is one length of a problem with the counts put in: between lo and
// hi, and a whole multiple of step unless that is 0.
type unknown struct {
	lo, hi rat
	step   int64
}

func (u unknown) fixed() bool { return u.lo.eq(u.hi) }

// holds reports whether x lies in the range and on the grid.
func (u unknown) holds(x rat) bool {
	if x.less(u.lo) || u.hi.less(x) {
		return false
	}
	return u.step == 0 || x.quo(whole(u.step)).isWhole()
}

// condition says that a sum over unknowns is nought, or at least nought.
type condition struct {
	sum   lin
	equal bool
}

// sideRule says that a sum over unknowns is at least bound(x) for x the value
// of the unknown on, which sits on a grid.
type sideRule struct {
	sum lin
	on  int
	*ruleTable
}

// problem is a linear system with side rules: what is left of a connected
// part of a model once its counts are put in.
type problem struct {
	unknowns   []unknown
	conditions []condition
	rules      []sideRule
}

// clone copies what the levels change: the ranges and the list of conditions.
func (p *problem) clone() *problem {
	return &problem{
		unknowns:   slices.Clone(p.unknowns),
		conditions: slices.Clip(p.conditions),
		rules:      p.rules,
	}
}

// fix gives an unknown one value; false when its range or grid forbids it.
func (p *problem) fix(v int, x rat) bool {
	if !p.unknowns[v].holds(x) {
		return false
	}
	p.unknowns[v].lo, p.unknowns[v].hi = x, x
	return true
}
