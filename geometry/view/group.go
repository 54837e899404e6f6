package view

import (
	"cmp"
	"slices"
)

// grouped returns the curves' indexes, those of one key next to each other and
// in each group nearest to the eye first.
func grouped(f *frame, curves []curve) []int32 {
	order := make([]int32, len(curves))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortFunc(order, func(p, q int32) int {
		a, b := &curves[p], &curves[q]
		return cmp.Or(a.key.compare(&b.key), cmp.Compare(f.nearness(b), f.nearness(a)), cmp.Compare(p, q))
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
		var covered []span
		for _, i := range group {
			c := &curves[i]
			start, step := f.rate(c)
			s := span{min(start, start+step*c.whole), max(start, start+step*c.whole)}
			switch {
			case c.axis != first.axis:
				return
			case slices.ContainsFunc(covered, func(o span) bool { return o.t0 <= s.t0 && s.t1 <= o.t1 }):
				c.skipped = true
			case c.kind != Way:
				covered = union(append(covered, s))
			}
		}
	})
}
