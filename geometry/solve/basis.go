package solve

import "slices"

// finest bounds the factor between the measures of two rows, so that numbers
// stay short.
const finest = 1 << 30

// straighten exchanges the whole parameters for others, so that a step of one
// moves the rows as little as can be, each row measured by how far it reaches.
// Where a row holds a sum of many to a narrow range, steps that make up for each
// other become a parameter, and one that leaves the range has few values left.
// The exchange can be undone in whole numbers: it neither loses a solution nor
// adds one. The parameters with the fewest values come first, which is the order
// of splits. false when there is no solution.
func (r *reduced) straighten() bool {
	var old []int // the parameters to be exchanged
	for p, is := range r.whole {
		if is {
			old = append(old, p)
		}
	}
	if len(old) < 2 {
		return true
	}
	if !r.tab.check() {
		return false
	}
	steps := shortBasis(r.measure(old))
	slices.Reverse(steps)
	by := make([]lin, len(r.whole))
	for p := range by {
		by[p] = lin{terms: []term{{p, whole(1)}}}
	}
	for j, p := range old {
		var terms []term
		for k, step := range steps {
			terms = append(terms, term{old[k], step[j]})
		}
		by[p] = sorted(terms, rat{})
	}
	for v, e := range r.expr {
		sum := constant(e.k)
		for _, t := range e.terms {
			sum = sum.plus(t.c, by[t.v])
		}
		r.expr[v] = sum
	}
	return r.collect(r.of) && r.build()
}

// measure returns the inner products of the parameters' unit steps: how far two
// of them move each row, as parts of what it reaches.
func (r *reduced) measure(of []int) [][]rat {
	var rows []limited
	for _, p := range of {
		rows = append(rows, limited{terms: []term{{p, whole(1)}}})
	}
	for _, row := range r.rows {
		if r.allWhole(lin{terms: row.terms}) {
			rows = append(rows, row)
		}
	}
	reach, widest := make([]rat, len(rows)), whole(1)
	seen := extents{reduced: r}
	for i, row := range rows {
		if l := seen.ofRow(row.terms); l.lo.set && l.hi.set {
			reach[i] = l.hi.v.sub(l.lo.v).abs().add(whole(1))
		}
		if widest.less(reach[i]) {
			widest = reach[i]
		}
	}
	if whole(finest).less(widest) {
		widest = whole(finest)
	}
	gram := make([][]rat, len(of))
	for i := range gram {
		gram[i] = make([]rat, len(of))
	}
	for i, row := range rows {
		scale := whole(1)
		if !reach[i].isZero() && reach[i].less(widest) {
			scale = widest.quo(reach[i]).floor()
		}
		scale = scale.mul(scale)
		for _, a := range row.terms {
			for _, b := range row.terms {
				x, _ := slices.BinarySearch(of, a.v)
				y, _ := slices.BinarySearch(of, b.v)
				gram[x][y] = gram[x][y].add(scale.mul(a.c).mul(b.c))
			}
		}
	}
	return gram
}

// lattice is a basis that is being shortened: its inner products, its vectors as
// whole sums of the first ones, and for each vector what is left of its square
// after taking out its shares of those before.
type lattice struct {
	gram    [][]rat
	vectors [][]rat
	share   [][]rat // share[k][j], j < k
	rest    []rat
}

// shortBasis finds a basis of short and nearly upright vectors, given the inner
// products of those of any basis, as whole sums of these. It is the reduction of
// Lenstra, Lenstra and Lovász (Mathematische Annalen 261, 1982, 515-534; memory,
// believed so) in exact fractions.
func shortBasis(gram [][]rat) [][]rat {
	n := len(gram)
	l := &lattice{gram: gram, rest: make([]rat, n)}
	for i := range n {
		l.share = append(l.share, make([]rat, n))
		l.vectors = append(l.vectors, make([]rat, n))
		l.vectors[i][i] = whole(1)
	}
	l.project(0)
	for k := 1; k < n; {
		l.project(k)
		for j := k - 1; j >= 0; j-- {
			l.shorten(k, j)
		}
		m := l.share[k][k-1]
		if !l.rest[k].less(ratio(3, 4).sub(m.mul(m)).mul(l.rest[k-1])) {
			k++
			continue
		}
		l.swap(k, k-1)
		if k = max(k-1, 1); k == 1 {
			l.project(0)
		}
	}
	return l.vectors
}

// project works out the shares and the rest of vector k, those before it being
// known.
func (l *lattice) project(k int) {
	products := make([]rat, k)
	l.rest[k] = l.gram[k][k]
	for j := range k {
		p := l.gram[k][j]
		for i := range j {
			p = p.sub(l.share[j][i].mul(products[i]))
		}
		products[j], l.share[k][j] = p, p.quo(l.rest[j])
		l.rest[k] = l.rest[k].sub(p.mul(l.share[k][j]))
	}
}

// shorten takes vector j from vector k as often as its share there, rounded.
func (l *lattice) shorten(k, j int) {
	times := l.share[k][j].add(ratio(1, 2)).floor()
	if times.isZero() {
		return
	}
	for i := range j {
		l.share[k][i] = l.share[k][i].sub(times.mul(l.share[j][i]))
	}
	l.share[k][j] = l.share[k][j].sub(times)
	for i := range l.vectors[k] {
		l.vectors[k][i] = l.vectors[k][i].sub(times.mul(l.vectors[j][i]))
	}
	for i := range l.gram {
		l.gram[k][i] = l.gram[k][i].sub(times.mul(l.gram[j][i]))
	}
	for i := range l.gram {
		l.gram[i][k] = l.gram[i][k].sub(times.mul(l.gram[i][j]))
	}
}

func (l *lattice) swap(a, b int) {
	l.gram[a], l.gram[b] = l.gram[b], l.gram[a]
	for _, row := range l.gram {
		row[a], row[b] = row[b], row[a]
	}
	l.vectors[a], l.vectors[b] = l.vectors[b], l.vectors[a]
}
