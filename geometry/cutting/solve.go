package cutting

import "slices"

// An answer is the best plan of an instance, perhaps order by order.
type answer struct {
	plans       []planned
	cost, bound int64
}

// A planned part of an instance has its tops made as chosen.
type planned struct {
	in       *instance
	patterns []pattern
}

// An option is a choice of how to make the tops; its search begins when it is
// first looked at.
type option struct {
	choice
	of   *search // that of all choices
	one  *search // that of this choice, its linear program solved
	rest *rest
}

// When the bound is lifted: whole boards cost little more than parts of boards
// where many are bought, and the linear program, which is solved again and again
// for it, must not have taken too much of the effort the first time.
const (
	fewBoards = 32 // of the dearest kind
	cheapRoot = 6  // part of the effort
	liftPart  = 3  // part of the effort, kept for lifting
)

// solve plans an instance: by the exact method where that is possible, else
// order by order and by dives for the most promising choices of how to make its
// tops, whichever is cheaper.
func solve(job Job, in *instance, work *effort) (*answer, error) {
	s := newSearch(in, work)
	var best *answer
	if choices, ok := s.small(); ok {
		a, ok := s.exactly(choices, min(exactWork, work.limit/3*2))
		if ok && a == nil {
			return nil, stockOut(job, in.chosen(choices[0].ways))
		}
		if ok {
			a.bound = a.cost
			return a, nil
		}
		best = a
	}
	if apart := s.separate(job); apart != nil {
		best = cheaper(best, apart)
	}
	s.rootWithin(work.limit / 2)
	lifting := int64(0)
	if work.used < work.limit/cheapRoot && s.bound/s.in.dearest() < fewBoards {
		lifting = work.limit / liftPart
	}
	work.limit -= lifting
	best = s.dived(best)
	work.limit += lifting
	if best != nil && lifting > 0 {
		s.lift(best.cost, lifting)
	}
	if best == nil {
		return nil, stockOut(job, s.with(s.settled()).in)
	}
	best.bound = s.bound
	best.bound = min(best.bound, best.cost)
	return best, nil
}

// dived improves on an answer by dives for the most promising choices, which
// share the effort left.
func (s *search) dived(best *answer) *answer {
	choices := s.promising()
	all := s.work.limit
	for i, ways := range choices {
		s.work.limit = s.work.used + (all-s.work.used)/int64(len(choices)-i)
		one := s.with(ways)
		if one.large(); one.best != nil {
			best = cheaper(best, &answer{plans: []planned{{one.in, one.best.patterns}}, cost: one.best.cost})
		}
	}
	s.work.limit = all
	return best
}

// promising lists the choices for the tops to dive for: that of the linear
// program and, where there is effort for both, that of its prices.
func (s *search) promising() [][]int {
	out := [][]int{s.settled()}
	if s.work.used > s.work.limit/50 || len(s.in.tops) == 0 {
		return out
	}
	if choices, _ := s.choices(); !slices.Equal(choices[0].ways, out[0]) {
		out = append(out, choices[0].ways)
	}
	return out
}

func cheaper(a, b *answer) *answer {
	if a == nil || b.cost < a.cost {
		return b
	}
	return a
}

// small lists the choices to be made where there are few enough of them and the
// exact method can solve each.
func (s *search) small() (choices []choice, ok bool) {
	need := append([]int(nil), s.need...)
	for _, t := range s.in.tops {
		most := 0
		for _, w := range t.ways {
			most = max(most, w.staves*t.parts)
		}
		need = append(need, most)
	}
	if s.states(need) > mostStates {
		return nil, false
	}
	s.root()
	return s.choices()
}

// exactly solves every choice by the exact method. It asks for plans little
// dearer than the bound first and for dearer ones only when there are none:
// the nearer the limit, the fewer patterns matter. A nil answer says that no
// plan meets the demand. It is not ok when a choice is too large or the effort
// runs out; the answer is then the best plan so far, or nil.
func (s *search) exactly(choices []choice, steps int64) (a *answer, ok bool) {
	work := &effort{limit: steps}
	defer func() { s.work.spend(int(work.used)) }()
	options := make([]option, len(choices))
	for i, c := range choices {
		options[i] = option{choice: c, of: s}
	}
	lowest := options[0].bound
	for part := int64(16); ; part /= 2 {
		limit := int64(never)
		if part > 1 {
			limit = lowest + lowest/part + 1
		}
		for i := range options {
			o := &options[i]
			if o.bound >= limit || o.lifted() >= limit {
				continue
			}
			sol, ok := o.below(limit, work)
			if !ok {
				return a, false
			}
			if sol != nil {
				a, limit = &answer{plans: []planned{{o.one.in, sol.patterns}}, cost: sol.cost}, sol.cost
			}
		}
		if a != nil || limit == never {
			return a, true
		}
	}
}

// lifted raises the bound to that of the choice alone, which is higher than
// that of all.
func (o *option) lifted() int64 {
	if o.one == nil {
		if o.one = o.of.with(o.ways); o.one != o.of {
			o.one.root()
		}
		o.bound = max(o.bound, o.one.bound)
	}
	return o.bound
}

// below looks for a plan below a limit.
func (o *option) below(limit int64, work *effort) (*solution, bool) {
	if o.rest == nil {
		one := o.one
		if o.rest = one.rest(one.need, one.limits, one.v, work); o.rest == nil {
			return nil, false
		}
	}
	return o.rest.solve(limit, work)
}
