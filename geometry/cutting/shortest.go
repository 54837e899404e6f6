package cutting

import (
	"container/heap"
	"math/bits"
)

// Where every board can be bought, the cheapest cover is a shortest path: from
// the whole demand, pattern by pattern, to none. Prices of the parts that
// overprice no pattern turn each pattern's cost into what it costs beyond the
// worth of what it gives. Those lengths are never negative and the paths
// compare as before, but only demands near the linear program's optimum are
// ever looked at.
type shortest struct {
	*coverer
	free   []move
	giving [][]int32
	v      []int64 // prices of the kinds, scaled
	dist   []int64
	from   []int32 // state before, and the move
	move   []int32
	open   stateHeap
}

// A reached is a state on the heap.
type reached struct {
	dist  int64
	state int
}

type stateHeap []reached

func (h stateHeap) Len() int { return len(h) }
func (h stateHeap) Less(i, j int) bool {
	if h[i].dist != h[j].dist {
		return h[i].dist < h[j].dist
	}
	return h[i].state < h[j].state
}
func (h stateHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *stateHeap) Push(x any)   { *h = append(*h, x.(reached)) }
func (h *stateHeap) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}

// path finds the cheapest cover with moves that can be bought; nil when there
// is none, or none below the cost given.
func (c *coverer) path(patterns []pattern, free []move, below int64) (*solution, bool) {
	s := &shortest{coverer: c, free: free, giving: make([][]int32, len(c.in.kinds))}
	for i := range free {
		for _, k := range free[i].kinds {
			s.giving[k] = append(s.giving[k], int32(i))
		}
	}
	s.price(patterns)
	whole := int64(0)
	for k, kd := range c.in.kinds {
		whole += s.v[k] * int64(kd.need)
	}
	limit := int64(never)
	if below < never/c.in.scale {
		if limit = (below-1)*c.in.scale - whole; limit < 0 {
			return nil, true
		}
	}
	s.dist = make([]int64, c.size)
	s.from, s.move = make([]int32, c.size), make([]int32, c.size)
	for d := range s.dist {
		s.dist[d] = never
	}
	s.dist[c.size-1] = 0
	s.open = stateHeap{{0, c.size - 1}}
	for len(s.open) > 0 {
		at := heap.Pop(&s.open).(reached)
		if at.dist > s.dist[at.state] {
			continue
		}
		if at.state == 0 {
			return s.back(patterns), true
		}
		s.expand(at, limit)
		if c.work.out() {
			return nil, false
		}
	}
	return nil, true
}

// expand makes every move that gives the first kind still open.
func (s *shortest) expand(at reached, limit int64) {
	first := -1
	for k := range s.digits {
		s.digits[k] = at.state / s.stride[k] % (s.in.kinds[k].need + 1)
		if first < 0 && s.digits[k] > 0 {
			first = k
		}
	}
	for _, i := range s.giving[first] {
		m := &s.free[i]
		d, to := at.dist+m.cost*s.in.scale, at.state
		for j, k := range m.kinds {
			n := min(s.digits[k], m.counts[j])
			d -= s.v[k] * int64(n)
			to -= s.stride[k] * n
		}
		if d <= limit && d < s.dist[to] {
			s.dist[to], s.from[to], s.move[to] = d, int32(at.state), i
			heap.Push(&s.open, reached{d, to})
		}
	}
	s.work.spend(4 * len(s.giving[first]))
}

// back reads the path from its end.
func (s *shortest) back(patterns []pattern) *solution {
	sol := &solution{}
	for d := 0; d != s.size-1; d = int(s.from[d]) {
		m := &s.free[s.move[d]]
		sol.cost += m.cost
		sol.patterns = append(sol.patterns, patterns[m.pattern])
	}
	return sol
}

// price takes the linear program's prices over the patterns, in whole numbers
// and lowered until no pattern is overpriced.
func (s *shortest) price(patterns []pattern) {
	need := make([]int, len(s.in.kinds))
	dearest := int64(1)
	for k, kd := range s.in.kinds {
		need[k] = kd.need
	}
	for i := range s.free {
		dearest = max(dearest, s.free[i].cost)
	}
	m := newMaster(need, nil, unmet*float64(dearest), s.work)
	for i := range s.free {
		c := column{cost: float64(s.free[i].cost)}
		for j, k := range s.free[i].kinds {
			c.at = append(c.at, int32(k))
			c.value = append(c.value, float64(min(s.free[i].counts[j], need[k])))
		}
		m.add(c)
	}
	m.solve()
	s.v = make([]int64, len(need))
	for k := range s.v {
		s.v[k] = max(0, int64(m.y[k]*float64(s.in.scale)))
		if len(s.giving[k]) == 0 {
			s.v[k] = 0
		}
	}
	num, den := uint64(1), uint64(1)
	for i := range s.free {
		value := int64(0)
		for j, k := range s.free[i].kinds {
			value += s.v[k] * int64(min(s.free[i].counts[j], need[k]))
		}
		if cost := uint64(s.free[i].cost * s.in.scale); value > 0 && less(cost, uint64(value), num, den) {
			num, den = cost, uint64(value)
		}
	}
	for k := range s.v {
		hi, lo := bits.Mul64(uint64(s.v[k]), num)
		q, _ := bits.Div64(hi, lo, den) // num <= den, so that it fits
		s.v[k] = int64(q)
	}
}
