package cutting

import (
	"math"
	"sort"
)

// Limits of the exact method: demand vectors, and steps of the whole search.
const (
	mostStates = 1 << 20
	mostBox    = 1 << 14
	exactWork  = 400_000_000
)

// A solution is the patterns of one instance, one for each board.
type solution struct {
	cost     int64
	patterns []pattern
}

// exact solves an instance by every pattern of every board and dynamic
// programming over the demand that is still open. It returns ok == false when
// the instance is too large, and a nil solution when nothing meets the demand.
// Only plans below the cost given count; the guide's room must belong to it.
func exact(in *instance, g *guide, work *effort, below int64) (best *solution, ok bool) {
	if g.room < 0 {
		return nil, true
	}
	patterns, ok := allPatterns(in, g, work)
	if !ok {
		return nil, false
	}
	return cover(in, patterns, work, below)
}

// states is the number of demand vectors, no more than one above mostStates.
func (s *search) states(open []int) int {
	n := 1
	for _, k := range open {
		if n *= k + 1; n > mostStates {
			return mostStates + 1
		}
	}
	return n
}

// allPatterns enumerates thickness by thickness and drops what a board that
// can be bought for no more gives as well.
func allPatterns(in *instance, g *guide, work *effort) ([]pattern, bool) {
	var out []pattern
	for _, b := range boxes(in) {
		if b == nil {
			return nil, false
		}
		thick := in.kinds[b.kinds[0]].thick
		var sources []int
		for s := range in.sources {
			if in.sources[s].thick == thick {
				sources = append(sources, s)
			}
		}
		ps, ok := enumerate(in, b, sources, g, work)
		if !ok {
			return nil, false
		}
		out = append(out, undominated(in, b, ps, work)...)
	}
	return out, true
}

// boxes returns a box for each thickness, in the order of the kinds.
func boxes(in *instance) []*box {
	var out []*box
	done := map[int64]bool{}
	for _, first := range in.kinds {
		if done[int64(first.thick)] {
			continue
		}
		done[int64(first.thick)] = true
		var kinds, need []int
		for i, k := range in.kinds {
			if k.thick == first.thick {
				kinds, need = append(kinds, i), append(need, k.need)
			}
		}
		out = append(out, newBox(kinds, need, mostBox))
	}
	return out
}

// undominated drops the patterns of boards that can be bought which another
// such board, not dearer, gives as well; all patterns of limited boards stay.
func undominated(in *instance, b *box, ps []pattern, work *effort) []pattern {
	order := make([]int, len(ps))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool {
		return in.sources[ps[order[i]].source].cost < in.sources[ps[order[j]].source].cost
	})
	most := b.fresh()
	most[0].pivot = -1
	var out []pattern
	for _, i := range order {
		p := ps[i]
		if in.sources[p.source].limit >= 0 {
			out = append(out, p)
			continue
		}
		at := 0
		for d, s := range b.stride {
			at += s * min(p.counts[b.kinds[d]], b.need[d])
		}
		pivot := int32(min(p.counts[b.kinds[b.pivot()]], b.need[b.pivot()]))
		if pivot <= most[at].pivot {
			continue
		}
		most[at].pivot = pivot
		b.close(most)
		work.spend(b.size)
		out = append(out, p)
	}
	return out
}

const never = math.MaxInt64 / 4

// A coverer runs the dynamic program over open demands. State d is a number
// in mixed radix, a digit for each kind.
type coverer struct {
	in     *instance
	stride []int
	digits []int // of the state at hand
	size   int
	work   *effort
}

// A move is a pattern as the dynamic program sees it.
type move struct {
	pattern int
	cost    int64
	kinds   []int // those the pattern gives
	counts  []int
}

// cover finds the cheapest patterns that together meet every need. Boards that
// can be bought come first: one of them must give the first kind still open.
// Each limited board is then one more layer, used or not.
func cover(in *instance, patterns []pattern, work *effort, below int64) (*solution, bool) {
	c := &coverer{in: in, work: work, size: 1, digits: make([]int, len(in.kinds))}
	for _, k := range in.kinds {
		c.stride = append(c.stride, c.size)
		c.size *= k.need + 1
	}
	free, limited := c.moves(patterns)
	if len(limited) == 0 {
		return c.path(patterns, free, below)
	}
	cost := make([]int64, c.size)
	layers := [][]int32{c.bought(free, cost)}
	var perLayer [][]move
	for _, moves := range limited {
		for range min(in.sources[patterns[moves[0].pattern].source].limit, c.total()) {
			next := make([]int64, c.size)
			layers = append(layers, c.layer(moves, cost, next))
			perLayer = append(perLayer, moves)
			cost = next
			if work.out() {
				return nil, false
			}
		}
	}
	if work.out() {
		return nil, false
	}
	if cost[c.size-1] >= min(never, below) {
		return nil, true
	}
	return c.trace(patterns, free, perLayer, layers, cost[c.size-1]), true
}

func (c *coverer) total() int {
	n := 0
	for _, k := range c.in.kinds {
		n += k.need
	}
	return n
}

// moves sorts patterns into those that can be bought and, board by board,
// those of limited boards.
func (c *coverer) moves(patterns []pattern) (free []move, limited [][]move) {
	row := map[int]int{}
	for i, p := range patterns {
		src := c.in.sources[p.source]
		m := move{pattern: i, cost: src.cost}
		for k, n := range p.counts {
			if n > 0 {
				m.kinds, m.counts = append(m.kinds, k), append(m.counts, n)
			}
		}
		if src.limit < 0 {
			free = append(free, m)
			continue
		}
		at, ok := row[src.limitRow]
		if !ok {
			at = len(limited)
			row[src.limitRow] = at
			limited = append(limited, nil)
		}
		limited[at] = append(limited[at], m)
	}
	return free, limited
}

// each walks through the states in rising order, c.digits at hand.
func (c *coverer) each(f func(d int)) {
	clear(c.digits)
	for d := range c.size {
		f(d)
		for i := range c.digits {
			if c.digits[i]++; c.digits[i] <= c.in.kinds[i].need {
				break
			}
			c.digits[i] = 0
		}
	}
}

// after returns the state left when move m is made in state d.
func (c *coverer) after(d int, m *move) int {
	for i, k := range m.kinds {
		d -= c.stride[k] * min(c.digits[k], m.counts[i])
	}
	return d
}

// bought fills cost with the least cost from boards that can be bought, and
// returns the move taken in each state, -1 where there is none.
func (c *coverer) bought(free []move, cost []int64) []int32 {
	giving := make([][]int32, len(c.in.kinds))
	for i := range free {
		for _, k := range free[i].kinds {
			giving[k] = append(giving[k], int32(i))
		}
	}
	choice := make([]int32, c.size)
	c.each(func(d int) {
		choice[d] = -1
		if d == 0 || c.work.out() {
			return
		}
		cost[d] = never
		for k := range c.digits {
			if c.digits[k] == 0 {
				continue
			}
			for _, i := range giving[k] {
				m := &free[i]
				if v := m.cost + cost[c.after(d, m)]; v < cost[d] {
					cost[d], choice[d] = v, i
				}
			}
			c.work.spend(4 * len(giving[k]))
			break
		}
	})
	return choice
}

// layer adds one limited board: next is the least cost with it on offer too.
func (c *coverer) layer(moves []move, cost, next []int64) []int32 {
	choice := make([]int32, c.size)
	c.each(func(d int) {
		next[d], choice[d] = cost[d], -1
		for i := range moves {
			m := &moves[i]
			if v := m.cost + cost[c.after(d, m)]; v < next[d] {
				next[d], choice[d] = v, int32(i)
			}
		}
		c.work.spend(4 * len(moves))
	})
	return choice
}

// trace reads the patterns of the best plan off the choices.
func (c *coverer) trace(patterns []pattern, free []move, perLayer [][]move, layers [][]int32, total int64) *solution {
	sol := &solution{cost: total}
	d := c.size - 1
	take := func(m *move) {
		for i := range c.digits {
			c.digits[i] = d / c.stride[i] % (c.in.kinds[i].need + 1)
		}
		sol.patterns = append(sol.patterns, patterns[m.pattern])
		d = c.after(d, m)
	}
	for l := len(perLayer) - 1; l >= 0; l-- {
		if i := layers[l+1][d]; i >= 0 {
			take(&perLayer[l][i])
		}
	}
	for d > 0 {
		take(&free[layers[0][d]])
	}
	return sol
}
