package cutting

import "slices"

// A claim is what any prices of the parts say about whole boards: so many of
// each source, times the most that a board of it can hold at these prices, are
// worth no less than the parts. It holds for every plan, whatever the prices.
// Claims are to the choice of boards what cuts are to a program of whole numbers
// (Benders 1962).
type claim struct {
	holds []int64 // by source
	worth int64
}

// claimAt returns the claim of prices v; p rounds sizes so that no layout is
// missed.
func (s *search) claimAt(p *pricer, v []int64) claim {
	c := claim{holds: make([]int64, len(s.in.sources)), worth: s.worth(v)}
	p.run(v, s.most)
	p.each(func(_ *priceGroup, _ *profile, source int, value int64) { c.holds[source] = value })
	return c
}

// excludes reports whether the boards cannot hold what the claim asks for.
func (c claim) excludes(boards []int) bool {
	need := c.worth
	for i, n := range boards {
		for ; n > 0 && need > 0; n-- {
			need -= c.holds[i]
		}
	}
	return need > 0
}

// lift raises the bound, which lets boards be bought in part, by looking at
// whole boards: the cheapest that meet every claim so far cost no more than any
// plan. Where not even the linear program can put the parts on these boards, its
// prices make one more claim. This ends when it can, or with the effort.
// Plans that cost as much as the limit are not looked for.
func (s *search) lift(limit, steps int64) {
	all := s.work.limit
	s.work.limit = min(all, s.work.used+steps)
	defer func() { s.work.limit = all }()
	p := newPricer(s.in, true, s.work)
	c := &chooser{in: s.in, work: s.work, free: append([]int(nil), s.limits...)}
	for v := s.v; s.bound < limit; {
		c.add(s.claimAt(p, v))
		boards, cost, ok := c.choose(s.bound, limit)
		if !ok {
			return
		}
		s.bound = max(s.bound, cost)
		if boards == nil {
			return
		}
		v = s.pricesAgainst(boards)
		if s.work.out() || !s.claimAt(p, v).excludes(boards) {
			return
		}
	}
}

// pricesAgainst returns prices at which some boards hold least of what is
// needed: those of the linear program in which these boards cost nothing.
func (s *search) pricesAgainst(boards []int) []int64 {
	more := *s.in
	more.sources = slices.Clone(s.in.sources)
	rows := len(s.limits)
	given := map[int]int{}
	for i, n := range boards {
		if n > 0 {
			src := s.in.sources[i]
			src.cost, src.limit, src.limitRow = 0, n, rows
			rows++
			given[i] = len(more.sources)
			more.sources = append(more.sources, src)
		}
	}
	m := newSearch(&more, s.work)
	for _, p := range s.pool {
		m.keep(p)
		if i, ok := given[p.source]; ok {
			p.source = i
			m.keep(p)
		}
	}
	known := len(m.pool)
	m.root()
	for _, p := range m.pool[known:] {
		if p.source < len(s.in.sources) {
			s.keep(p)
		}
	}
	return m.v
}
