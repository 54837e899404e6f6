package cutting

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
		p := sol.patterns[i]
		sol.patterns[i] = moved(p, r.sources[p.source], r.kinds, r.all)
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
