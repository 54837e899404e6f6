package cutting

import "sort"

// An answer is the best plan of an instance, its tops made as chosen.
type answer struct {
	in    *instance
	best  *solution
	bound int64
}

// An option is a choice of how to make the tops, with its search.
type option struct {
	*search
	rest *rest
}

// solve plans an instance: by the exact method where that is possible, else by
// dives for the most promising choice of how to make its tops.
func solve(job Job, in *instance, work *effort) (*answer, error) {
	s := newSearch(in, work)
	s.root()
	choices, complete := s.choices()
	first := s.with(choices[0].ways)
	if complete && first.states(first.need) <= mostStates {
		if a, ok := s.exactly(choices); ok {
			if a == nil {
				return nil, stockOut(job, first.in)
			}
			return a, nil
		}
	}
	first.large(job)
	if first.best == nil {
		return nil, stockOut(job, first.in)
	}
	bound := first.bound
	if len(choices) > 1 || !complete {
		bound = s.bound
	}
	return &answer{first.in, first.best, min(bound, first.best.cost)}, nil
}

// exactly solves every choice by the exact method. It asks for plans little
// dearer than the bound first and for dearer ones only when there are none:
// the nearer the limit, the fewer patterns matter. It is not ok when a choice
// is too large or the effort runs out; a nil answer says that no plan meets
// the demand.
func (s *search) exactly(choices []choice) (a *answer, ok bool) {
	var options []option
	for _, c := range choices {
		one := s.with(c.ways)
		if one != s {
			one.root()
		}
		one.bound = max(one.bound, c.bound)
		if options = append(options, option{search: one}); s.work.out() {
			return nil, false
		}
	}
	sort.SliceStable(options, func(i, j int) bool { return options[i].bound < options[j].bound })
	lowest := options[0].bound
	for part := int64(16); ; part /= 2 {
		limit := int64(never)
		if part > 1 {
			limit = lowest + lowest/part + 1
		}
		for i := range options {
			o := &options[i]
			if o.bound >= limit {
				continue
			}
			sol, ok := o.below(limit)
			if !ok {
				return nil, false
			}
			if sol != nil {
				a, limit = &answer{o.in, sol, sol.cost}, sol.cost
			}
		}
		if a != nil || limit == never {
			return a, true
		}
	}
}

// below looks for a plan below a limit.
func (o *option) below(limit int64) (*solution, bool) {
	work := &effort{limit: min(exactWork, o.work.limit-o.work.used)}
	defer func() { o.work.spend(int(work.used)) }()
	if o.rest == nil {
		if o.rest = o.search.rest(o.need, o.limits, o.v, work); o.rest == nil {
			return nil, false
		}
	}
	return o.rest.solve(limit, work)
}
