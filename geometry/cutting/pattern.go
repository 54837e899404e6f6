package cutting

// A pattern is one layout of one board: what it gives and how.
type pattern struct {
	source int
	counts []int       // by kind of the instance
	leaves [][]section // one for each leaf
}

// A section of a pattern, sizes on the instance's grids.
type section struct {
	slot   int // length, a kerf included
	full   int // the kind that is as wide as the board, or -1
	strips []strip
}

// A strip of a section: so many of each kind, all of one width.
type strip struct {
	items []item
}

type item struct{ kind, n int }

func (s section) count(counts []int) {
	if s.full >= 0 {
		counts[s.full]++
	}
	for _, t := range s.strips {
		for _, it := range t.items {
			counts[it.kind] += it.n
		}
	}
}

// newPattern counts what the leaves hold.
func newPattern(in *instance, src int, leaves [][]section) pattern {
	p := pattern{source: src, counts: make([]int, len(in.kinds)), leaves: leaves}
	for _, leaf := range leaves {
		for _, s := range leaf {
			s.count(p.counts)
		}
	}
	return p
}

// effort counts elementary steps against a limit, in place of a clock.
type effort struct{ used, limit int64 }

func (e *effort) spend(n int) { e.used += int64(n) }
func (e *effort) out() bool   { return e.used > e.limit }
