package cutting

import (
	"math/bits"
	"slices"
	"sort"
)

// scale turns a price of a part into a whole number.
const scale = 1 << 20

// A search is the planning of one instance too large for the exact method.
type search struct {
	in     *instance
	work   *effort
	need   []int
	limits []int // of the limited boards, by row
	big    float64
	pool   []pattern
	known  map[string]bool // patterns of the pool
	prices []float64       // of the kinds, at the program's optimum
	bound  int64
	best   *solution
}

// large plans an instance by column generation: a bound from the linear
// program, plans from diving into it. The plans of the single orders are the
// first one known.
func large(job Job, in *instance) (*solution, int64, error) {
	s := newSearch(in, &effort{limit: job.Effort})
	s.separate(job)
	s.root()
	s.dives(0, firstDives)
	if s.onePrice() { // a few boards less one is rarely enough
		s.dives(firstDives, mostDives)
	}
	s.improve()
	if s.best == nil {
		return nil, 0, stockOut(job, in)
	}
	return s.best, min(s.bound, s.best.cost), nil
}

func (s *search) onePrice() bool {
	for _, src := range s.in.sources {
		if src.cost != s.in.sources[0].cost {
			return false
		}
	}
	return true
}

func newSearch(in *instance, work *effort) *search {
	s := &search{in: in, work: work, known: map[string]bool{}}
	for _, k := range in.kinds {
		s.need = append(s.need, k.need)
	}
	dearest := int64(1)
	for _, src := range in.sources {
		dearest = max(dearest, src.cost)
		if src.limitRow >= len(s.limits) {
			s.limits = append(s.limits, src.limit)
		}
	}
	s.big = 1000 * float64(dearest)
	return s
}

// keep takes a pattern into the pool unless it is there.
func (s *search) keep(p pattern) bool {
	key := make([]byte, 0, 2*len(p.counts)+4)
	key = append(key, byte(p.source), byte(p.source>>8))
	for k, n := range p.counts {
		if n > 0 {
			key = append(key, byte(k), byte(k>>8), byte(n), byte(n>>8))
		}
	}
	if s.known[string(key)] {
		return false
	}
	s.known[string(key)] = true
	s.pool = append(s.pool, p)
	return true
}

// columnOf makes a pattern a column; row tells each kind's row, or -1.
func (s *search) columnOf(p pattern, row []int, kinds int) column {
	src := s.in.sources[p.source]
	c := column{cost: float64(src.cost), p: p}
	for k, n := range p.counts {
		if n > 0 && row[k] >= 0 {
			c.at, c.value = append(c.at, int32(row[k])), append(c.value, float64(n))
		}
	}
	if src.limitRow >= 0 {
		c.at, c.value = append(c.at, int32(kinds+src.limitRow)), append(c.value, 1)
	}
	return c
}

// root solves the linear program over all patterns and sets the bound.
func (s *search) root() {
	row := make([]int, len(s.need))
	for k := range row {
		row[k] = k
	}
	m := newMaster(s.need, s.limits, s.big, s.work)
	for _, p := range s.pool {
		m.add(s.columnOf(p, row, len(s.need)))
	}
	find := newPricer(s.in, false, s.work)
	below := find
	if !find.exactGrid() {
		below = newPricer(s.in, true, s.work)
	}
	for rounds := 0; !s.work.out(); rounds++ {
		m.solve()
		v, mu := s.wholePrices(m)
		find.run(v, s.need)
		if find == below || rounds%16 == 15 {
			s.raise(below, v, mu, find != below)
		}
		added := false
		find.each(func(g *priceGroup, f *profile, source int, value int64) {
			src := s.in.sources[source]
			if value > src.cost*scale+limitPrice(mu, src)+scale/1_000_000 {
				if p := find.layout(g, f, source); s.keep(p) {
					m.add(s.columnOf(p, row, len(s.need)))
					added = true
				}
			}
		})
		if !added || (s.best != nil && s.bound >= s.best.cost) {
			s.raise(below, v, mu, find != below)
			break
		}
	}
	s.prices = append([]float64(nil), m.y[:len(s.need)]...)
}

// limitPrice is what using a limited board costs besides, in scaled units.
func limitPrice(mu []int64, src source) int64 {
	if src.limitRow < 0 {
		return 0
	}
	return mu[src.limitRow]
}

// wholePrices floors the program's prices to scaled whole numbers: of the
// parts, and of the limits (what one more limited board would save, 0 or more).
func (s *search) wholePrices(m *master) (v, mu []int64) {
	for i, y := range m.y {
		if i < len(s.need) {
			v = append(v, max(0, int64(y*scale)))
		} else {
			mu = append(mu, max(0, int64(-y*scale)))
		}
	}
	return v, mu
}

// raise computes the bound that prices v and mu prove, in whole numbers. Let
// V(s) be the most that a board of source s can hold in value. Then the prices
// f v, f the least of 1 and all (cost(s) + mu(s)) / V(s), overprice no board,
// and f sum(v need) - sum(mu limit) is no more than any plan costs (Farley
// 1990, extended by the limits, whose prices are not scaled).
func (s *search) raise(p *pricer, v, mu []int64, run bool) {
	if run {
		p.run(v, s.need)
	}
	num, den := uint64(1), uint64(1)
	p.each(func(_ *priceGroup, _ *profile, source int, value int64) {
		src := s.in.sources[source]
		cost := uint64(src.cost*scale + limitPrice(mu, src))
		if value > 0 && less(cost, uint64(value), num, den) {
			num, den = cost, uint64(value)
		}
	})
	worth := uint64(0)
	for k, n := range s.need {
		worth += uint64(v[k]) * uint64(n)
	}
	hi, lo := bits.Mul64(worth, num)
	if hi >= den {
		return // the prices are far too high: they prove nothing
	}
	total, _ := bits.Div64(hi, lo, den)
	out := int64(total)
	for i, n := range s.limits {
		out -= mu[i] * int64(n)
	}
	if out > 0 {
		s.bound = max(s.bound, s.formable((out+scale-1)/scale))
	}
}

// less compares a/b with c/d exactly.
func less(a, b, c, d uint64) bool {
	h1, l1 := bits.Mul64(a, d)
	h2, l2 := bits.Mul64(c, b)
	return h1 < h2 || (h1 == h2 && l1 < l2)
}

// mostFormable is the largest total for which every sum of prices is tried.
const mostFormable = 1 << 22

// formable returns the least total, not below least, that prices can add up to.
func (s *search) formable(least int64) int64 {
	var prices []int64
	step := int64(0)
	dearest := int64(0)
	for _, src := range s.in.sources {
		if src.cost > 0 && !slices.Contains(prices, src.cost) {
			prices = append(prices, src.cost)
			dearest = max(dearest, src.cost)
			for a, b := step, src.cost; ; a, b = b%a, a {
				if a == 0 {
					step = b
					break
				}
			}
		}
	}
	if step == 0 {
		return least
	}
	least = (least + step - 1) / step * step
	top := (least + dearest) / step
	if top > mostFormable {
		return least
	}
	can := make([]bool, top+1)
	can[0] = true
	for _, p := range prices {
		for x := p / step; x <= top; x++ {
			can[x] = can[x] || can[x-p/step]
		}
	}
	for x := least / step; x <= top; x++ {
		if can[x] {
			return x * step
		}
	}
	return least
}

// separate plans each order by itself, exactly. The patterns start the pool,
// and together the plans are the first one known.
func (s *search) separate(job Job) {
	orders := map[string][]int{}
	var names []string
	for k, kd := range s.in.kinds {
		for _, w := range kd.wants {
			o := job.Parts[w.part].Order
			if orders[o] == nil {
				orders[o] = make([]int, len(s.in.kinds))
				names = append(names, o)
			}
			orders[o][k] += w.count + w.spares
		}
	}
	if len(names) < 2 {
		return
	}
	sort.Strings(names)
	all := &solution{}
	for _, o := range names {
		sol, _ := s.solveExactly(orders[o], s.limits, exactWork/4, never)
		if sol == nil {
			all = nil
			break
		}
		all.cost += sol.cost
		all.patterns = append(all.patterns, sol.patterns...)
		for _, p := range sol.patterns {
			s.keep(p)
		}
	}
	if all != nil && s.withinLimits(all.patterns) {
		s.best = all
	}
}

func (s *search) withinLimits(ps []pattern) bool {
	used := make([]int, len(s.limits))
	for _, p := range ps {
		if r := s.in.sources[p.source].limitRow; r >= 0 {
			if used[r]++; used[r] > s.limits[r] {
				return false
			}
		}
	}
	return true
}

// solveExactly solves a remaining demand by the exact method: nil when it
// cannot be met below the cost given, and not ok when it is too large.
func (s *search) solveExactly(need, limits []int, steps, below int64) (*solution, bool) {
	sub := &instance{shop: s.in.shop, ripMin: s.in.ripMin}
	var back []int
	for k, n := range need {
		if n > 0 {
			kd := s.in.kinds[k]
			kd.need = n
			sub.kinds = append(sub.kinds, kd)
			sub.l, sub.w = append(sub.l, s.in.l[k]), append(sub.w, s.in.w[k])
			back = append(back, k)
		}
	}
	var sources []int
	for i, src := range s.in.sources {
		if src.limitRow >= 0 {
			if src.limit = limits[src.limitRow]; src.limit == 0 {
				continue
			}
		}
		if servesAny(s.in.shop, src, sub.kinds) {
			sub.sources = append(sub.sources, src)
			sources = append(sources, i)
		}
	}
	work := &effort{limit: steps}
	sol, ok := exactWithin(sub, work, below)
	s.work.spend(int(work.used))
	if sol == nil {
		return nil, ok
	}
	for i := range sol.patterns {
		sol.patterns[i] = moved(sol.patterns[i], sources, back, len(s.in.kinds))
	}
	return sol, true
}

// moved renumbers a pattern's source and kinds.
func moved(p pattern, sources, kinds []int, total int) pattern {
	out := pattern{source: sources[p.source], counts: make([]int, total)}
	for k, n := range p.counts {
		out.counts[kinds[k]] = n
	}
	for _, leaf := range p.leaves {
		var row []section
		for _, s := range leaf {
			t := section{slot: s.slot, full: -1}
			if s.full >= 0 {
				t.full = kinds[s.full]
			}
			for _, st := range s.strips {
				var items []item
				for _, it := range st.items {
					items = append(items, item{kinds[it.kind], it.n})
				}
				t.strips = append(t.strips, strip{items})
			}
			row = append(row, t)
		}
		out.leaves = append(out.leaves, row)
	}
	return out
}
