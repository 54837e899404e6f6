package cutting

import "math/bits"

// A guide tells the exact method which patterns can occur in a plan cheaper
// than one already known. Prices of the parts that overprice no pattern make
// up a bound; a plan costs that much and what each of its patterns costs
// beyond the worth of what it gives. A pattern that costs more beyond its
// worth than the room between bound and known plan is in no better one.
type guide struct {
	v    []int64    // safe prices of the kinds, scaled
	mu   []int64    // what a limited board costs besides, by row, scaled
	base int64      // bound on every plan, scaled
	room int64      // never: every pattern counts
	rest [][]int64  // by source: an upper bound on the worth of each length
	rips []ripWorth // by source: the same for one ripped section
	q    int        // steps of the instance's length grid to one of rest
}

// newGuide lowers prices v until they are safe.
func newGuide(in *instance, v, mu []int64, work *effort) *guide {
	p := newPricer(in, true, work)
	need := make([]int, len(in.kinds))
	for k, kd := range in.kinds {
		need[k] = kd.need
	}
	p.run(v, need)
	f := p.share(mu)
	g := &guide{mu: mu, v: f.ofAll(v), q: p.q, room: never, rest: make([][]int64, len(in.sources)), rips: make([]ripWorth, len(in.sources))}
	p.each(func(gr *priceGroup, pr *profile, source int, _ int64) {
		if g.rest[source] != nil {
			return
		}
		rest := make([]int64, len(pr.value))
		for x, worth := range pr.value {
			rest[x] = f.above(worth)
		}
		rips := ripWorth{slots: gr.slots, worth: make([]int64, len(gr.slots))}
		for i := range gr.slots {
			rips.worth[i] = f.above(gr.value[i][pr.wid])
		}
		for _, s := range pr.sources {
			g.rest[s], g.rips[s] = rest, rips
		}
	})
	g.base = g.bound(in)
	return g
}

// below takes the room below a cost.
func (g *guide) below(in *instance, cost int64) {
	g.room = never
	if cost < never {
		g.room = (cost-1)*in.scale - g.base
	}
}

// bound is what every plan of the instance costs at least, scaled.
func (g *guide) bound(in *instance) int64 {
	worth := int64(0)
	for k, kd := range in.kinds {
		worth += g.v[k] * int64(kd.need)
	}
	paid := map[int]bool{}
	for _, s := range in.sources {
		if s.limitRow >= 0 && !paid[s.limitRow] {
			paid[s.limitRow] = true
			worth -= g.mu[s.limitRow] * int64(s.limit)
		}
	}
	return worth
}

// least is the least worth that sections up to a length must have if the whole
// board is to be used in a better plan.
func (g *guide) least(in *instance, source, length int) int64 {
	if g.room >= never {
		return 0
	}
	s := in.sources[source]
	rest := g.rest[source]
	return s.cost*in.scale + limitPrice(g.mu, s) - g.room - int64(s.leaves-1)*rest[s.capL/g.q] - rest[(s.capL-length)/g.q]
}

// A ripWorth is what a ripped section can be worth at most, by its length.
type ripWorth struct {
	slots []int
	worth []int64
}

// ripped reports whether a ripped section of that length can be part of a
// better plan in some board.
func (g *guide) ripped(in *instance, sources []int, length int) bool {
	for _, s := range sources {
		if in.sources[s].capL < length {
			continue
		}
		r := g.rips[s]
		worth := int64(0) // of a length that holds nothing of worth
		if i := floor(r.slots, length/g.q); i >= 0 {
			worth = r.worth[i]
		}
		if worth >= g.least(in, s, length) {
			return true
		}
	}
	return false
}

// A share is a fraction of at most 1 that lowers prices.
type share struct{ num, den uint64 }

// share returns the largest fraction of the prices last run that overprices no
// layout.
func (p *pricer) share(mu []int64) share {
	f := share{1, 1}
	p.each(func(_ *priceGroup, _ *profile, source int, worth int64) {
		src := p.in.sources[source]
		cost := uint64(src.cost*p.in.scale + limitPrice(mu, src))
		if worth > 0 && less(cost, uint64(worth), f.num, f.den) {
			f = share{cost, uint64(worth)}
		}
	})
	return f
}

// of rounds down; num is no more than den, so that the quotient fits.
func (f share) of(x int64) int64 {
	hi, lo := bits.Mul64(uint64(x), f.num)
	q, _ := bits.Div64(hi, lo, f.den)
	return int64(q)
}

// above rounds up, or one more.
func (f share) above(x int64) int64 {
	if f.num == f.den {
		return x
	}
	return f.of(x) + 1
}

func (f share) ofAll(v []int64) []int64 {
	out := make([]int64, len(v))
	for k := range v {
		out[k] = f.of(v[k])
	}
	return out
}

// less compares a/b with c/d exactly.
func less(a, b, c, d uint64) bool {
	h1, l1 := bits.Mul64(a, d)
	h2, l2 := bits.Mul64(c, b)
	return h1 < h2 || (h1 == h2 && l1 < l2)
}

// limitPrice is what using a limited board costs besides, in scaled units.
func limitPrice(mu []int64, src source) int64 {
	if src.limitRow < 0 {
		return 0
	}
	return mu[src.limitRow]
}
