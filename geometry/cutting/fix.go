package cutting

import "sort"

// program solves the linear program for the demand that is left, over the
// patterns at hand, none holding more than is left, and new ones.
func (d *dive) program(step int) *master {
	row, need := make([]int, len(d.open)), []int(nil)
	for k, n := range d.open {
		row[k] = -1
		if n > 0 {
			row[k] = len(need)
			need = append(need, n)
		}
	}
	m := newMaster(need, d.left, d.big, d.work)
	known := map[string]bool{}
	for _, p := range d.pool {
		if p, ok := d.clipped(p); ok && fresh(known, d.in, p) {
			m.add(d.columnOf(p, row, len(need)))
		}
	}
	rounds := pricingRounds
	if step > 0 {
		rounds = pricingRounds / 3
	}
	v := make([]int64, len(d.open))
	for range rounds {
		m.solve()
		if d.work.out() {
			break
		}
		for k, r := range row {
			v[k] = 0
			if r >= 0 {
				v[k] = max(0, int64(m.y[r]*float64(d.in.scale)))
			}
		}
		if !d.price(m, v, row, len(need), known) {
			break
		}
	}
	d.carry(m)
	return m
}

// price adds patterns that the program's prices v make worth having, and
// reports whether there were any. The best board of each width is worked out
// with care, the others in passing.
func (d *dive) price(m *master, v []int64, row []int, needs int, known map[string]bool) bool {
	type offer struct {
		g      *priceGroup
		f      *profile
		source int
		gain   float64
	}
	var offers []offer
	best := map[*profile]int{}
	added := false
	take := func(p pattern) {
		c := d.columnOf(p, row, needs)
		if m.reduced(&c) < -1e-6 && fresh(known, d.in, p) {
			m.add(c)
			added = true
		}
	}
	d.find.run(v, d.open)
	d.find.each(func(g *priceGroup, f *profile, source int, value int64) {
		src := d.in.sources[source]
		price := src.cost * d.in.scale
		if src.limitRow >= 0 {
			price += max(0, int64(-m.y[needs+src.limitRow]*float64(d.in.scale)))
		}
		if value <= price+d.in.scale/1_000_000 {
			return
		}
		o := offer{g, f, source, float64(value) / float64(price+1)}
		if at, ok := best[f]; !ok {
			best[f] = len(offers)
			offers = append(offers, o)
		} else if o.gain > offers[at].gain {
			offers[at] = o
		}
		take(d.find.proper(g, f, source, v, d.open))
	})
	for _, o := range offers {
		take(d.find.careful(o.g, o.f, o.source, v, d.open))
	}
	return added
}

// carry keeps the most promising patterns for the next step.
func (d *dive) carry(m *master) {
	order := make([]int, len(m.cols))
	cost := make([]float64, len(m.cols))
	for j := range order {
		order[j] = j
		cost[j] = m.reduced(&m.cols[j])
		if m.inBasis[j] {
			cost[j] = -1
		}
	}
	sort.SliceStable(order, func(a, b int) bool { return cost[order[a]] < cost[order[b]] })
	d.pool = nil
	for _, j := range order[:min(len(order), mostPooled)] {
		d.pool = append(d.pool, m.cols[j].p)
	}
}

// clipped takes from a pattern's counts what is more than is left.
func (d *dive) clipped(p pattern) (pattern, bool) {
	some, same := false, true
	for k, n := range p.counts {
		some = some || (n > 0 && d.open[k] > 0)
		same = same && n <= d.open[k]
	}
	if !some || same {
		return p, some
	}
	counts := make([]int, len(p.counts))
	for k, n := range p.counts {
		counts[k] = min(n, d.open[k])
	}
	p.counts = counts
	return p, true
}

// fresh takes note of a pattern and reports whether it is new: one of the same
// price that gives the same is not.
func fresh(known map[string]bool, in *instance, p pattern) bool {
	src := in.sources[p.source]
	key := make([]byte, 0, 32)
	for x := src.cost; x > 0; x >>= 8 {
		key = append(key, byte(x))
	}
	key = append(key, byte(src.limitRow+1), 0)
	for k, n := range p.counts {
		if n > 0 {
			key = append(key, byte(k), byte(k>>8), byte(n), byte(n>>8))
		}
	}
	if known[string(key)] {
		return false
	}
	known[string(key)] = true
	return true
}

// A candidate is a column in the program's solution.
type candidate struct {
	col   int
	level float64
}

func candidates(m *master) []candidate {
	var out []candidate
	for r, b := range m.basis {
		if b >= 0 && m.x[r] > 1e-5 {
			out = append(out, candidate{b, m.x[r]})
		}
	}
	sort.Slice(out, func(i, j int) bool {
		if out[i].level != out[j].level {
			return out[i].level > out[j].level
		}
		return out[i].col < out[j].col
	})
	return out
}

// fixFloors fixes every pattern as often as the program uses it in full.
func (d *dive) fixFloors(m *master) bool {
	some := false
	for _, c := range candidates(m) {
		for n := int(c.level + 1e-5); n > 0 && d.fix(m.cols[c.col].p); n-- {
			some = true
		}
	}
	return some
}

// fixLargest fixes the pattern that the program uses most nearly in full, and
// more of them where many boards are open. At the dive's step astray it takes
// another one.
func (d *dive) fixLargest(m *master, step int) bool {
	list := candidates(m)
	if len(list) == 0 {
		return false
	}
	if step == d.astray {
		at := min(d.second, len(list)-1)
		list[0], list[at] = list[at], list[0]
	}
	sum := 0.0
	for _, c := range list {
		sum += c.level
	}
	some := false
	for n, c := range list[:1+min(int(sum)/20, len(list)-1)] {
		if n == 0 || c.level > 0.6 {
			some = d.fix(m.cols[c.col].p) || some
		}
	}
	return some
}

// fix takes one board of a pattern into the plan if it holds no more than is
// left and a board is left.
func (d *dive) fix(p pattern) bool {
	for k, n := range p.counts {
		if n > d.open[k] {
			return false
		}
	}
	src := d.in.sources[p.source]
	if src.limitRow >= 0 {
		if d.left[src.limitRow] == 0 {
			return false
		}
		d.left[src.limitRow]--
	}
	for k, n := range p.counts {
		d.open[k] -= n
	}
	d.done = append(d.done, p)
	d.cost += src.cost
	return true
}

// greedy finishes a plan board by board: always the one whose contents are
// worth most for its price, at the linear program's prices of the parts.
func (d *dive) greedy() *solution {
	v := make([]int64, len(d.open))
	for k := range v {
		v[k] = int64(d.in.l[k]) * int64(d.in.w[k])
		if d.v[k] > 0 {
			v[k] = d.v[k]
		}
	}
	for !d.closed() {
		d.find.run(v, d.open)
		var best pattern
		ratio := -1.0
		d.find.each(func(g *priceGroup, f *profile, source int, value int64) {
			src := d.in.sources[source]
			if value == 0 || (src.limitRow >= 0 && d.left[src.limitRow] == 0) {
				return
			}
			p := d.find.proper(g, f, source, v, d.open)
			worth := int64(0)
			for k, n := range p.counts {
				worth += int64(n) * v[k]
			}
			if r := float64(worth) / (float64(src.cost) + 1e-3); r > ratio {
				best, ratio = p, r
			}
		})
		if ratio < 0 || !d.fix(best) {
			return nil
		}
		for d.fix(best) {
			continue
		}
	}
	return d.end(&solution{})
}
