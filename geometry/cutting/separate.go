package cutting

import (
	"slices"
	"sort"
)

// separate plans each order by itself, exactly. Together the plans are the
// first one known, and their patterns start the pool. It returns nil where one
// order alone is too large, or boards on hand do not reach for all.
func (s *search) separate(job Job) *answer {
	var names []string
	for _, kd := range s.in.kinds {
		for _, w := range kd.wants {
			if o := job.Parts[w.part].Order; !slices.Contains(names, o) {
				names = append(names, o)
			}
		}
	}
	if len(names) < 2 {
		return nil
	}
	sort.Strings(names)
	all := &answer{}
	var patterns []pattern
	for _, o := range names {
		one := newSearch(s.in.ordered(job, o), s.work)
		choices, ok := one.small()
		if !ok {
			return nil
		}
		a, ok := one.exactly(choices, exactWork/4)
		if !ok || a == nil {
			return nil
		}
		all.cost += a.cost
		all.plans = append(all.plans, a.plans...)
		to := s.in.number(a.plans[0].in)
		for _, p := range a.plans[0].patterns {
			patterns = append(patterns, moved(p, p.source, to, len(s.in.kinds)))
		}
	}
	for _, p := range patterns {
		s.keep(p)
	}
	if !s.withinLimits(patterns) {
		return nil
	}
	return all
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
