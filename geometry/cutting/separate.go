package cutting

import "sort"

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

// A rest is a demand that the exact method may solve: an instance of the kinds
// still open and the boards still left, and the way back to the search's
// numbers.
type rest struct {
	*instance
	guide   *guide
	kinds   []int
	sources []int
	all     int
}

// rest returns the instance of a remaining demand, nil when it is too large
// for the exact method. Prices steer it.
func (s *search) rest(need, limits []int, prices []int64, work *effort) *rest {
	if s.states(need) > mostStates {
		return nil
	}
	r := &rest{instance: &instance{shop: s.in.shop, ripMin: s.in.ripMin, scale: s.in.scale, step: s.in.step}, all: len(need)}
	var v []int64
	for k, n := range need {
		if n > 0 {
			kd := s.in.kinds[k]
			kd.need = n
			r.instance.kinds = append(r.instance.kinds, kd)
			v = append(v, prices[k])
			r.l, r.w = append(r.l, s.in.l[k]), append(r.w, s.in.w[k])
			r.kinds = append(r.kinds, k)
		}
	}
	for i, src := range s.in.sources {
		if src.limitRow >= 0 {
			if src.limit = limits[src.limitRow]; src.limit == 0 {
				continue
			}
		}
		if servesAny(s.in.shop, src, r.instance.kinds) {
			r.instance.sources = append(r.instance.sources, src)
			r.sources = append(r.sources, i)
		}
	}
	r.guide = newGuide(r.instance, v, s.mu, work)
	return r
}

// solve finds the cheapest plan below a cost, nil when there is none. It is
// not ok when the effort runs out.
func (r *rest) solve(below int64, work *effort) (sol *solution, ok bool) {
	r.guide.below(r.instance, below)
	sol, ok = exact(r.instance, r.guide, work, below)
	if sol == nil {
		return nil, ok
	}
	for i := range sol.patterns {
		sol.patterns[i] = moved(sol.patterns[i], r.sources, r.kinds, r.all)
	}
	return sol, true
}

// solveExactly solves a remaining demand by the exact method: nil when it
// cannot be met below the cost given, and not ok when it is too large.
func (s *search) solveExactly(need, limits []int, steps, below int64) (*solution, bool) {
	work := &effort{limit: steps}
	defer func() { s.work.spend(int(work.used)) }()
	r := s.rest(need, limits, s.v, work)
	if r == nil {
		return nil, false
	}
	return r.solve(below, work)
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
