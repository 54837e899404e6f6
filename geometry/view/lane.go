package view

import (
	"cmp"
	"slices"

	"slatwright/geometry/space"
)

// lane is a box in a frame with the stretch that its picture takes across the
// ways along one axis. Boxes moved along that axis show on one another somewhere
// just when their lanes share more than an edge.
type lane struct {
	place  int // in the list it was made from
	lo, hi vec
	t0, t1 int64
}

// lanes returns the lanes of boxes moved by at, across axis d, by their starts.
func (f *frame) lanes(boxes []space.Box, at Offset, d int) []lane {
	i, j := (d+1)%3, (d+2)%3
	out := make([]lane, len(boxes))
	for n, b := range boxes {
		lo, hi := f.inBox(b.Moved(at))
		out[n] = lane{n, lo, hi, lo[i]*f.v[j] - hi[j]*f.v[i], hi[i]*f.v[j] - lo[j]*f.v[i]}
	}
	slices.SortFunc(out, byLane)
	return out
}

func byLane(p, q lane) int { return cmp.Or(cmp.Compare(p.t0, q.t0), cmp.Compare(p.place, q.place)) }

// sharing calls each for every pair of one of a and one of b that share a part of
// their lanes. Both come by their starts. It takes them up in that order and
// looks only at those of the other side that have not yet ended.
func sharing(a, b []lane, each func(p, q *lane)) {
	var openA, openB []*lane
	for len(a) > 0 || len(b) > 0 {
		if len(b) == 0 || len(a) > 0 && a[0].t0 <= b[0].t0 {
			p := &a[0]
			openB = ongoing(openB, p.t0)
			for _, q := range openB {
				each(p, q)
			}
			openA, a = append(openA, p), a[1:]
			continue
		}
		q := &b[0]
		openA = ongoing(openA, q.t0)
		for _, p := range openA {
			each(p, q)
		}
		openB, b = append(openB, q), b[1:]
	}
}

// ongoing drops the lanes that have ended at t.
func ongoing(open []*lane, t int64) []*lane {
	return slices.DeleteFunc(open, func(l *lane) bool { return l.t1 <= t })
}

// beside returns the pairs of one of a and one of b, by their places, that touch
// or meet from left to right.
func beside(a, b []Solid) [][2]int {
	level := func(solids []Solid) []lane {
		out := make([]lane, len(solids))
		for n, s := range solids {
			out[n] = lane{place: n, t0: int64(s.Box.Min.X), t1: int64(s.Box.Max.X) + 1}
		}
		slices.SortFunc(out, byLane)
		return out
	}
	var pairs [][2]int
	sharing(level(a), level(b), func(p, q *lane) { pairs = append(pairs, [2]int{p.place, q.place}) })
	slices.SortFunc(pairs, func(p, q [2]int) int { return cmp.Or(cmp.Compare(p[0], q[0]), cmp.Compare(p[1], q[1])) })
	return pairs
}
