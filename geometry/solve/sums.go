package solve

import "slices"

// wholeSums lists the sums of whole parameters that are worth splitting, as
// variables of the tableau: rows of them, and the parts of a row whose
// coefficients are not its smallest. Where one row holds such a sum to a
// fraction, splits of one parameter at a time only pass the fraction on to the
// next; a split of the sum settles it. They come at a price, a row of the tableau
// each, and few searches need them.
func (s *branching) wholeSums() []int {
	if s.sums != nil {
		return s.sums
	}
	var known [][]term
	var rows []int
	for i, row := range s.rows {
		known = append(known, row.terms)
		if s.allWhole(lin{terms: row.terms}) {
			rows = append(rows, len(s.whole)+i)
		}
	}
	for _, row := range s.rows {
		for _, part := range s.coarseParts(row.terms) {
			if !slices.ContainsFunc(known, func(k []term) bool { return sameTerms(k, part) }) {
				known = append(known, part)
				s.sums = append(s.sums, s.tab.addRow(part))
			}
		}
	}
	s.sums = append(s.sums, rows...)
	return s.sums
}

// coarseParts lists, for each size of coefficient in a row but the smallest, the
// sum of the terms with one no smaller, as far as they are whole, brought to
// coprime coefficients.
func (r *reduced) coarseParts(row []term) (parts [][]term) {
	var sizes []rat
	for _, t := range row {
		if c := t.c.abs(); !slices.ContainsFunc(sizes, c.eq) {
			sizes = append(sizes, c)
		}
	}
	slices.SortFunc(sizes, rat.cmp)
	for _, least := range sizes[1:] {
		var part []term
		for _, t := range row {
			if r.whole[t.v] && !t.c.abs().less(least) {
				part = append(part, t)
			}
		}
		if len(part) > 1 {
			parts = append(parts, coprime(lin{terms: part}).terms)
		}
	}
	return parts
}
