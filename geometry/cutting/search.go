package cutting

import (
	"math/bits"
	"slices"
	"sort"
)

// A search is the planning of one instance: a bound from the linear program
// over all patterns, and plans.
type search struct {
	in     *instance
	work   *effort
	need   []int // of the kinds; those of tops not yet chosen left out
	most   []int // of the kinds, whatever is chosen
	limits []int // of the limited boards, by row
	big    float64
	pool   []pattern
	known  map[string]bool // patterns of the pool
	v, mu  []int64         // safe prices behind the bound, scaled
	bound  int64
	best   *solution
}

func newSearch(in *instance, work *effort) *search {
	s := &search{in: in, work: work, known: map[string]bool{}, v: make([]int64, len(in.kinds))}
	for _, k := range in.kinds {
		s.need = append(s.need, k.need)
		s.most = append(s.most, k.most())
	}
	for _, src := range in.sources {
		if src.limitRow >= len(s.limits) {
			s.limits = append(s.limits, src.limit)
		}
	}
	s.mu = make([]int64, len(s.limits))
	s.big = unmet * float64(in.dearest())
	return s
}

// with returns the search for one choice of ways to make the tops. It starts
// with the patterns known.
func (s *search) with(choice []int) *search {
	if len(choice) == 0 {
		return s
	}
	c := newSearch(s.in.chosen(choice), s.work)
	to := c.in.number(s.in)
	for _, p := range s.pool {
		if p = moved(p, p.source, to, len(c.in.kinds)); sumInts(p.counts) > 0 {
			c.keep(p)
		}
	}
	c.bound = s.bound
	return c
}

// keep takes a pattern into the pool unless it is there.
func (s *search) keep(p pattern) bool {
	key := make([]byte, 0, 32)
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
func (s *search) columnOf(p pattern, row []int, needs int) column {
	src := s.in.sources[p.source]
	c := column{cost: float64(src.cost), p: p}
	for k, n := range p.counts {
		if n > 0 && row[k] >= 0 {
			c.at, c.value = append(c.at, int32(row[k])), append(c.value, float64(n))
		}
	}
	if src.limitRow >= 0 {
		c.at, c.value = append(c.at, int32(needs+src.limitRow)), append(c.value, 1)
	}
	return c
}

// rootProgram returns the linear program over the patterns known. Tops have
// rows of their own; making one is a column that takes staves.
func (s *search) rootProgram() (m *master, row []int, needs int) {
	rows := append([]int(nil), s.need...)
	for k := range s.need {
		row = append(row, k)
	}
	for _, t := range s.in.tops {
		rows = append(rows, t.parts)
	}
	m = newMaster(rows, s.limits, s.big, s.work)
	for i, t := range s.in.tops {
		for _, w := range t.ways {
			m.add(column{at: []int32{int32(w.kind), int32(len(s.need) + i)}, value: []float64{float64(-w.staves), 1}})
		}
	}
	for _, p := range s.pool {
		m.add(s.columnOf(p, row, len(rows)))
	}
	return m, row, len(rows)
}

// manyPieces is from how many pieces on the first linear program knows only what
// the exact pricer finds. Which patterns it knows changes what plans cost, by
// some 0.2 %, as batches have shown; why, nobody knows.
const manyPieces = 2000

// root solves the linear program over all patterns and sets the bound. Where
// pieces are few a rough pricer looks for patterns first, an exact one when that
// finds no more.
func (s *search) root() {
	m, row, needs := s.rootProgram()
	exact := newPricer(s.in, false, s.work)
	below := exact
	if !exact.exactGrid() {
		below = newPricer(s.in, true, s.work)
	}
	find := exact
	if sumInts(s.need) < manyPieces {
		find = newRoughPricer(s.in, s.work)
	}
	for rounds := 0; !s.work.out() || rounds == 0; rounds++ {
		m.solve()
		v, mu := s.wholePrices(m, needs)
		calm := s.calmed(v)
		added := s.columns(m, find, calm, mu, row, needs)
		if find == below || rounds%16 == 15 {
			s.raise(below, calm, mu, find != below)
		}
		if !added && !slices.Equal(calm, v) {
			added = s.columns(m, find, v, mu, row, needs)
			calm = v
			if find == below {
				s.raise(below, v, mu, false)
			}
		}
		if !added && find != exact {
			find = exact
			continue
		}
		if !added || (s.best != nil && s.bound >= s.best.cost) {
			if find != below {
				s.raise(below, calm, mu, true)
			}
			break
		}
	}
	s.bound = s.in.formable(s.bound)
}

// rootWithin is root with so much effort, and leaves the rest to the plans.
func (s *search) rootWithin(steps int64) {
	all := s.work.limit
	s.work.limit = min(all, s.work.used+steps)
	s.root()
	s.work.limit = all
}

// calmed draws prices towards those that proved the best bound so far: the
// program's own swing widely while it knows few patterns.
func (s *search) calmed(v []int64) []int64 {
	if sum(s.v) == 0 {
		return v
	}
	out := make([]int64, len(v))
	for k := range v {
		out[k] = s.v[k] + (v[k]-s.v[k])*3/10
	}
	return out
}

// columns adds the patterns worth most at prices v that the program gains
// from, and reports whether there are any.
func (s *search) columns(m *master, find *pricer, v, mu []int64, row []int, needs int) bool {
	added := false
	find.run(v, s.most)
	find.each(func(g *priceGroup, f *profile, source int, value int64) {
		if value == 0 {
			return
		}
		p := find.layout(g, f, source)
		if c := s.columnOf(p, row, needs); m.reduced(&c) < -1e-6 && s.keep(p) {
			m.add(c)
			added = true
		}
	})
	return added
}

// wholePrices floors the program's prices to scaled whole numbers: of the
// kinds, and of the limits (what one more limited board would save, 0 or more).
func (s *search) wholePrices(m *master, needs int) (v, mu []int64) {
	whole := func(y float64) int64 { return max(0, int64(min(y, s.big)*float64(s.in.scale))) }
	for k := range s.need {
		v = append(v, whole(m.y[k]))
	}
	for i := range s.limits {
		mu = append(mu, whole(-m.y[needs+i]))
	}
	return v, mu
}

// raise computes the bound that prices v and mu prove, in whole numbers. Let
// V(s) be the most that a board of source s can hold in value. Then the prices
// f v, f the least of 1 and all (cost(s) + mu(s)) / V(s), overprice no board,
// and their worth less sum(mu limit) is no more than any plan costs (Farley
// 1990, extended by the limits, whose prices are not scaled).
func (s *search) raise(p *pricer, v, mu []int64, run bool) {
	if run {
		p.run(v, s.most)
	}
	f := p.share(mu)
	hi, lo := bits.Mul64(uint64(s.worth(v)), f.num)
	total, _ := bits.Div64(hi, lo, f.den)
	out := int64(total)
	for i, n := range s.limits {
		out -= mu[i] * int64(n)
	}
	if out <= 0 {
		return
	}
	b := ceilDiv(ceilDiv(out, s.in.scale), s.in.step) * s.in.step
	if b >= s.bound || sum(s.v) == 0 {
		s.bound, s.v, s.mu = max(s.bound, b), f.ofAll(v), mu
	}
}

func sumInts(v []int) int {
	t := 0
	for _, x := range v {
		t += x
	}
	return t
}

func ceilDiv(a, b int64) int64 { return (a + b - 1) / b }

func sum(v []int64) int64 {
	t := int64(0)
	for _, x := range v {
		t += x
	}
	return t
}

// worth is what the needs are worth at prices v, each top made in the way that
// is worth least.
func (s *search) worth(v []int64) int64 {
	out := int64(0)
	for k, n := range s.need {
		out += v[k] * int64(n)
	}
	for _, t := range s.in.tops {
		least := int64(never)
		for _, w := range t.ways {
			least = min(least, v[w.kind]*int64(w.staves))
		}
		out += least * int64(t.parts)
	}
	return out
}

// A choice is a way for each top, and a bound on the plans made so.
type choice struct {
	ways  []int
	bound int64
}

// mostChoices is how many choices for the tops are looked at one by one.
const mostChoices = 4096

// choices lists the ways to make up the tops, most promising first. It is not
// complete when there are too many: then it holds the most promising alone.
func (s *search) choices() (out []choice, complete bool) {
	total := 1
	for _, t := range s.in.tops {
		total = min(total*len(t.ways), mostChoices+1)
	}
	base := int64(0)
	for k, n := range s.need {
		base += s.v[k] * int64(n)
	}
	for i, n := range s.limits {
		base -= s.mu[i] * int64(n)
	}
	if total > mostChoices {
		best := choice{bound: s.bound}
		for _, t := range s.in.tops {
			best.ways = append(best.ways, s.leastWay(t))
		}
		return []choice{best}, false
	}
	for n := range total {
		c := choice{}
		worth := base
		for _, t := range s.in.tops {
			w := n % len(t.ways)
			n /= len(t.ways)
			c.ways = append(c.ways, w)
			worth += s.v[t.ways[w].kind] * int64(t.ways[w].staves*t.parts)
		}
		c.bound = max(s.bound, ceilDiv(max(0, worth), s.in.scale))
		out = append(out, c)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].bound < out[j].bound })
	return out, true
}

// leastWay returns the way whose staves are worth least.
func (s *search) leastWay(t top) int {
	best := 0
	worth := func(w way) int64 { return s.v[w.kind] * int64(w.staves) }
	for i, w := range t.ways {
		if worth(w) < worth(t.ways[best]) {
			best = i
		}
	}
	return best
}
