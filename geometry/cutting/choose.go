package cutting

import (
	"math/bits"
	"slices"
	"sort"
)

// A chooser finds the cheapest boards that meet claims.
type chooser struct {
	in     *instance
	work   *effort
	claims []claim
	free   []int   // limited boards left, by row
	order  []int   // of the sources: dear ones first
	best   []rate  // by place in the order and claim: that of the best source from there on
	boards []int   // by source, of the branch
	found  []int   // the cheapest boards so far
	below  int64   // what they cost, or the limit
	enough int64   // no boards cost less
	needs  []int64 // by depth and claim
}

// A rate is what a source holds for what it costs.
type rate struct{ holds, cost int64 }

func (r rate) above(o rate) bool {
	ah, al := bits.Mul64(uint64(r.holds), uint64(o.cost))
	bh, bl := bits.Mul64(uint64(o.holds), uint64(r.cost))
	return ah > bh || ah == bh && al > bl
}

// reaches reports whether so much money buys what is needed at the rate.
func (r rate) reaches(money, need int64) bool {
	return need <= 0 || !rate{need, money}.above(r)
}

// add takes a claim into account, and works out the best rates anew. What is
// for nothing comes first, so that rates are soon finite.
func (c *chooser) add(one claim) {
	c.claims = append(c.claims, one)
	src := c.in.sources
	if c.order == nil {
		for i := range src {
			c.order = append(c.order, i)
		}
		sort.SliceStable(c.order, func(a, b int) bool {
			x, y := src[c.order[a]].cost, src[c.order[b]].cost
			return x != y && (x == 0 || y != 0 && x > y)
		})
	}
	n := len(c.claims)
	c.best = make([]rate, (len(c.order)+1)*n)
	for j := range n {
		c.best[len(c.order)*n+j] = rate{0, 1}
	}
	for i := len(c.order) - 1; i >= 0; i-- {
		for j, one := range c.claims {
			c.best[i*n+j] = c.best[(i+1)*n+j]
			if r := (rate{one.holds[c.order[i]], src[c.order[i]].cost}); r.above(c.best[i*n+j]) {
				c.best[i*n+j] = r
			}
		}
	}
}

// choose returns the cheapest boards that meet every claim and their cost; no
// boards and the limit when there are none below it. It is not ok when the
// effort runs out. None are cheaper than enough.
func (c *chooser) choose(enough, limit int64) (boards []int, cost int64, ok bool) {
	c.boards, c.found = make([]int, len(c.order)), nil
	c.below, c.enough = limit, enough
	c.needs = make([]int64, (len(c.order)+1)*len(c.claims))
	for j, one := range c.claims {
		c.needs[j] = one.worth
	}
	c.branch(0, 0)
	return c.found, c.below, !c.work.out()
}

// branch tries every number of boards of the source at a place in the order,
// after others that cost so much.
func (c *chooser) branch(at int, cost int64) {
	n := len(c.claims)
	needs := c.needs[at*n : (at+1)*n]
	c.work.spend(2 * n)
	if c.work.out() || c.below <= c.enough {
		return
	}
	met := true
	for j, need := range needs {
		if !c.best[at*n+j].reaches(c.below-1-cost, need) {
			return
		}
		met = met && need <= 0
	}
	if met {
		c.found, c.below = slices.Clone(c.boards), cost
		return
	}
	if at == len(c.order) {
		return
	}
	next := c.needs[(at+1)*n : (at+2)*n]
	copy(next, needs)
	i := c.order[at]
	src := c.in.sources[i]
	for spent := cost; ; spent += src.cost {
		c.branch(at+1, spent)
		if !c.another(i, next) || spent+src.cost >= c.below {
			break
		}
		c.boards[i]++
		if src.limitRow >= 0 {
			c.free[src.limitRow]--
		}
		for j, one := range c.claims {
			next[j] -= min(one.holds[i], max(0, next[j]))
		}
	}
	if src.limitRow >= 0 {
		c.free[src.limitRow] += c.boards[i]
	}
	c.boards[i] = 0
}

// another reports whether one more board of a source is on offer and of use.
func (c *chooser) another(i int, needs []int64) bool {
	if r := c.in.sources[i].limitRow; r >= 0 && c.free[r] == 0 {
		return false
	}
	for j, one := range c.claims {
		if needs[j] > 0 && one.holds[i] > 0 {
			return true
		}
	}
	return false
}
