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
		sol, _ := s.solveExactly(orders[o], s.limits, exactWork/4, never, s.v)
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
func (s *search) solveExactly(need, limits []int, steps, below int64, prices []int64) (*solution, bool) {
	if s.states(need) > mostStates {
		return nil, false
	}
	sub := &instance{shop: s.in.shop, ripMin: s.in.ripMin, scale: s.in.scale, step: s.in.step}
	var back []int
	var v []int64
	for k, n := range need {
		if n > 0 {
			kd := s.in.kinds[k]
			kd.need = n
			sub.kinds = append(sub.kinds, kd)
			v = append(v, prices[k])
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
	sol, ok := exact(sub, newGuide(sub, v, s.mu, below, work), work, below)
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
