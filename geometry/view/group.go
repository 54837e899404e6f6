package view

import (
	"cmp"
	"slices"
)

// grouped returns the curves' indexes, those of one key next to each other and
// in each group nearest to the eye first. Groups come in the order of their
// first curves.
func grouped(f *frame, curves []curve) []int32 {
	group := make([]int32, len(curves))
	number := make(map[key]int32, len(curves))
	var ends []int32 // of each group: how many curves it has, later where it ends
	for i := range curves {
		n, ok := number[curves[i].key]
		if !ok {
			n = int32(len(ends))
			number[curves[i].key] = n
			ends = append(ends, 0)
		}
		group[i] = n
		ends[n]++
	}
	at := int32(0)
	for n, size := range ends {
		ends[n], at = at, at+size
	}
	order := make([]int32, len(curves))
	for i, n := range group {
		order[ends[n]] = int32(i)
		ends[n]++
	}
	groups(curves, order, func(same []int32) {
		if len(same) > 1 {
			slices.SortFunc(same, func(p, q int32) int {
				return cmp.Or(cmp.Compare(f.nearness(&curves[q]), f.nearness(&curves[p])), cmp.Compare(p, q))
			})
		}
	})
	return order
}

// groups calls each with every run of one key in order.
func groups(curves []curve, order []int32, each func([]int32)) {
	for i := 0; i < len(order); {
		n := i + 1
		for n < len(order) && curves[order[n]].key == curves[order[i]].key {
			n++
		}
		each(order[i:n])
		i = n
	}
}

// nearness grows towards the eye among curves with one key and one axis: such
// curves differ by a slide along the sight line and one along their axis, and
// any other coordinate that changes along the sight line tells the first.
func (f *frame) nearness(c *curve) int64 {
	if !c.straight() {
		return c.at[f.m]
	}
	for i, v := range f.v {
		if i != c.axis && v != 0 {
			return c.at[i]
		}
	}
	return 0
}

// skip marks the curves that need not be looked at, for each place of theirs
// shows on a nearer curve: whatever hides the nearer one there hides them too.
func (f *frame) skip(curves []curve, order []int32) {
	groups(curves, order, func(group []int32) {
		first := &curves[group[0]]
		if len(group) == 1 || !first.straight() {
			return
		}
		spans := make([]span, len(group))
		for n, i := range group {
			c := &curves[i]
			if c.axis != first.axis {
				spans = spans[:n]
				break
			}
			start, step := f.rate(c)
			spans[n] = span{min(start, start+step*c.whole), max(start, start+step*c.whole)}
		}
		line := newCover(spans)
		for n, s := range spans {
			c := &curves[group[n]]
			if line.covered(s) {
				c.skipped = true
			} else if c.kind != Way {
				line.cover(s)
			}
		}
	})
}

// cover keeps which of the stretches between the ends of some spans are covered.
// It costs hardly more than sorting the ends, however many spans lie apart.
type cover struct {
	stops []int64
	next  []int32 // of each stretch, one at or after it from which on none is known to be covered
}

func newCover(spans []span) cover {
	stops := make([]int64, 0, 2*len(spans))
	for _, s := range spans {
		stops = append(stops, s.t0, s.t1)
	}
	slices.Sort(stops)
	stops = slices.Compact(stops)
	next := make([]int32, len(stops))
	for i := range next {
		next[i] = int32(i)
	}
	return cover{stops, next}
}

// open returns the first stretch at or after i that is not covered, and shortens
// the way there.
func (c *cover) open(i int32) int32 {
	for c.next[i] != i {
		c.next[i] = c.next[c.next[i]]
		i = c.next[i]
	}
	return i
}

// slots returns the stretches of s, from the first up to before the last.
func (c *cover) slots(s span) (from, to int32) {
	a, _ := slices.BinarySearch(c.stops, s.t0)
	b, _ := slices.BinarySearch(c.stops, s.t1)
	return int32(a), int32(b)
}

func (c *cover) covered(s span) bool {
	from, to := c.slots(s)
	return c.open(from) >= to
}

func (c *cover) cover(s span) {
	from, to := c.slots(s)
	for i := c.open(from); i < to; i = c.open(i) {
		c.next[i] = i + 1
	}
}
