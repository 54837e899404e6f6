package cutting

import (
	"sort"

	"slatwright/specs/unit"
)

// A layout is one board's pattern in real sizes, cut down to what is wanted.
type layout struct {
	in     *instance
	plan   int // number of the plan that it belongs to, with kinds of its own
	source source
	rows   []cut
}

// A cut is a section of a layout. Full-width sections hold one strip of one
// part.
type cut struct {
	leaf   int
	length unit.Length
	ripped bool
	rest   bool // it is what remains of the board: no stop is set for it
	strips [][]int
}

// layouts turns a solution's patterns into layouts that hold exactly what is
// needed. What a plan would give too much of is left out where that frees
// most: whole sections first.
func layouts(in *instance, plan int, patterns []pattern) []layout {
	spare := make([]int, len(in.kinds))
	for k := range in.kinds {
		spare[k] = -in.kinds[k].need
	}
	out := make([]layout, len(patterns))
	for i, p := range patterns {
		out[i] = layout{in: in, plan: plan, source: in.sources[p.source]}
		for leaf, sections := range p.leaves {
			for _, s := range sections {
				out[i].rows = append(out[i].rows, cutsOf(in, in.sources[p.source], leaf, s)...)
				s.count(spare)
			}
		}
	}
	for i := range out {
		out[i].dropSections(spare)
	}
	for i := range out {
		out[i].dropParts(spare)
	}
	kept := out[:0]
	for _, l := range out {
		if len(l.rows) > 0 {
			l.tighten()
			kept = append(kept, l)
		}
	}
	return kept
}

// cutsOf gives the sections of a pattern's section: one, or one for each part
// as wide as the board.
func cutsOf(in *instance, src source, leaf int, s section) []cut {
	if s.full >= 0 {
		return []cut{{leaf: leaf, strips: [][]int{{s.full}}}}
	}
	c := cut{leaf: leaf, ripped: true}
	for _, t := range s.strips {
		var parts []int
		for _, it := range t.items {
			for range it.n {
				parts = append(parts, it.kind)
			}
		}
		c.strips = append(c.strips, parts)
	}
	if len(c.strips) == 1 && in.kinds[c.strips[0][0]].width == src.width {
		var out []cut
		for _, k := range c.strips[0] {
			out = append(out, cut{leaf: leaf, strips: [][]int{{k}}})
		}
		return out
	}
	return []cut{c}
}

// dropSections leaves out sections that hold nothing but surplus, the longest
// possible first.
func (l *layout) dropSections(spare []int) {
	l.tighten()
	kept := l.rows[:0]
	for _, c := range l.rows {
		need := map[int]int{}
		surplus := true
		for _, s := range c.strips {
			for _, k := range s {
				need[k]++
				surplus = surplus && need[k] <= spare[k]
			}
		}
		if surplus {
			for _, s := range c.strips {
				for _, k := range s {
					spare[k]--
				}
			}
			continue
		}
		kept = append(kept, c)
	}
	l.rows = kept
}

// dropParts leaves out single parts that are too many.
func (l *layout) dropParts(spare []int) {
	var rows []cut
	for _, c := range l.rows {
		var strips [][]int
		for _, s := range c.strips {
			var parts []int
			for _, k := range s {
				if spare[k] > 0 {
					spare[k]--
					continue
				}
				parts = append(parts, k)
			}
			if len(parts) > 0 {
				strips = append(strips, parts)
			}
		}
		if len(strips) > 0 {
			c.strips = strips
			rows = append(rows, c)
		}
	}
	l.rows = rows
}

// tighten gives each section the length its contents ask for and puts long
// sections, wide strips and long parts first.
func (l *layout) tighten() {
	for i := range l.rows {
		c := &l.rows[i]
		c.rest = false
		c.length = 0
		for _, s := range c.strips {
			sort.SliceStable(s, func(a, b int) bool { return l.in.kinds[s[a]].length > l.in.kinds[s[b]].length })
			c.length = max(c.length, l.in.run(s))
		}
		if c.ripped {
			c.length = max(c.length, l.in.shop.MinRipLength)
		}
		sort.SliceStable(c.strips, func(a, b int) bool { return l.in.stripBefore(c.strips[a], c.strips[b]) })
	}
	sort.SliceStable(l.rows, func(a, b int) bool {
		x, y := l.rows[a], l.rows[b]
		if x.leaf != y.leaf {
			return x.leaf < y.leaf
		}
		if x.length != y.length {
			return x.length > y.length
		}
		return compareStrips(x.strips, y.strips) < 0
	})
}

// run is the length of parts in a row with the kerfs between them.
func (in *instance) run(parts []int) unit.Length {
	n := -in.shop.Kerf
	for _, k := range parts {
		n += in.kinds[k].length + in.shop.Kerf
	}
	return n
}

func (in *instance) stripBefore(a, b []int) bool {
	if wa, wb := in.kinds[a[0]].width, in.kinds[b[0]].width; wa != wb {
		return wa > wb
	}
	return compareInts(a, b) < 0
}

func compareInts(a, b []int) int {
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return a[i] - b[i]
		}
	}
	return len(a) - len(b)
}

func compareStrips(a, b [][]int) int {
	for i := range min(len(a), len(b)) {
		if c := compareInts(a[i], b[i]); c != 0 {
			return c
		}
	}
	return len(a) - len(b)
}

// left is the usable length that one leaf's sections leave over, their kerfs
// taken off; negative when the last kerf runs out of the board.
func (l *layout) left(leaf int) unit.Length {
	left := l.source.usable
	for _, c := range l.rows {
		if c.leaf == leaf {
			left -= c.length + l.in.shop.Kerf
		}
	}
	return left
}
