package cutting

import (
	"fmt"
	"sort"
)

// DefaultEffort is the search effort for large jobs, some tens of seconds.
const DefaultEffort = 20_000_000_000

// QuickEffort is the search effort of a plan that must not keep anybody
// waiting: orders of usual size are still solved and proven, large ones get a
// good plan and an honest bound.
const QuickEffort = 150_000_000

// Make plans a job. The error, if any, is an *Error that names the part or
// board and what would help. A plan without parts costs nothing.
func Make(job Job) (*Plan, error) {
	if err := validate(job); err != nil {
		return nil, err
	}
	sources := sourcesFor(job, thicknesses(job))
	options, err := staveOptions(job, sources)
	if err != nil {
		return nil, err
	}
	if job.Effort == 0 {
		job.Effort = DefaultEffort
	}
	plan := &Plan{}
	var ls []layout
	instances := split(job.Shop, pool(job, options), sources)
	for _, in := range instances {
		a, err := solve(job, in, &effort{limit: job.Effort / int64(len(instances))})
		if err != nil {
			return nil, err
		}
		plan.Bound += a.bound
		plan.GlueUps = append(plan.GlueUps, glueUps(job, a.in)...)
		ls = append(ls, layouts(a.in, a.best)...)
	}
	sort.SliceStable(plan.GlueUps, func(i, j int) bool { return plan.GlueUps[i].part < plan.GlueUps[j].part })
	finish(job, ls, plan)
	plan.Proven = plan.Cost == plan.Bound
	return plan, nil
}

// An answer is the best plan of an instance, its tops made as chosen.
type answer struct {
	in    *instance
	best  *solution
	bound int64
}

// solve plans an instance: exactly where that is possible, choice by choice of
// how to make its tops, the most promising first.
func solve(job Job, in *instance, work *effort) (*answer, error) {
	s := newSearch(in, work)
	s.root()
	choices, _ := s.choices()
	a := &answer{bound: never}
	for i, c := range choices {
		if a.best != nil && c.bound >= a.best.cost {
			a.bound = min(a.bound, c.bound)
			break
		}
		if i > 0 && a.best != nil && work.out() {
			a.bound = min(a.bound, c.bound)
			break
		}
		one := s.with(c.ways)
		if !one.exactly(a, len(choices) > 1) {
			if i == 0 {
				one.large(job)
			}
			a.take(one)
		}
	}
	if a.best == nil {
		return nil, stockOut(job, in.chosen(choices[0].ways))
	}
	a.bound = min(a.bound, a.best.cost)
	return a, nil
}

// take keeps a search's plan if it is the best, and lowers the bound to what
// the search has proven.
func (a *answer) take(s *search) {
	a.bound = min(a.bound, s.bound)
	if s.best != nil && (a.best == nil || s.best.cost < a.best.cost) {
		a.best, a.in = s.best, s.in
	}
}

// exactly looks for a plan cheaper than the answer by the exact method. It
// reports whether the method could tell.
func (s *search) exactly(a *answer, again bool) bool {
	if s.states(s.need) > mostStates {
		return false
	}
	if again { // the bound of this choice alone is higher than that of all
		s.root()
	}
	below := int64(never)
	if a.best != nil {
		below = a.best.cost
	}
	if s.bound >= below {
		a.bound = min(a.bound, s.bound)
		return true
	}
	if below == never {
		if d := newDive(s); !s.work.out() {
			s.best = d.greedy()
		}
		if s.best != nil {
			below = s.best.cost + 1
		}
	}
	sol, ok := s.solveExactly(s.need, s.limits, min(exactWork, s.work.limit-s.work.used), below, s.v)
	if !ok {
		return false
	}
	if sol != nil {
		s.best, s.bound = sol, sol.cost
		a.take(s)
	}
	return true
}

// stockOut says which part the boards on hand do not reach for, and how many
// more of them would do: the same instance is solved with as many more as it
// likes, each at a price that outweighs everything else.
func stockOut(job Job, in *instance) error {
	more := *in
	more.sources = append([]source(nil), in.sources...)
	for i := range more.sources {
		more.sources[i].cost = 0
	}
	for _, s := range in.sources {
		if s.limit >= 0 {
			s.limit, s.limitRow, s.cost = -1, -1, 1
			more.sources = append(more.sources, s)
		}
	}
	first := &job.Parts[in.kinds[0].wants[0].part]
	e := &Error{Kind: ErrStockOut, Part: first, Help: "add boards, or one that can be bought"}
	s := newSearch(&more, &effort{limit: exactWork})
	sol, ok := s.solveExactly(s.need, s.limits, exactWork, never, s.v)
	if !ok || sol == nil {
		return e
	}
	count := make([]int, len(job.Boards))
	short := -1
	for _, p := range sol.patterns {
		if p.source < len(in.sources) {
			continue
		}
		count[more.sources[p.source].board]++
		for k, n := range p.counts {
			if n > 0 && (short < 0 || k < short) {
				short = k
			}
		}
	}
	if short >= 0 {
		e.Part = &job.Parts[in.kinds[short].wants[0].part]
	}
	e.detail, e.Help = "", "add"
	for i, n := range count {
		if n > 0 {
			e.Help += fmt.Sprintf(" %d of %s", n, boardName(job.Boards[i]))
			if e.Board == nil {
				e.Board = &job.Boards[i]
			}
		}
	}
	e.Help += ", or one that can be bought"
	return e
}

// glueUps lists the parts made up from staves, in the order of the job.
func glueUps(job Job, in *instance) []GlueUp {
	var out []GlueUp
	for _, k := range in.kinds {
		for _, w := range k.wants {
			if w.staves == 0 {
				continue
			}
			p := job.Parts[w.part]
			out = append(out, GlueUp{Order: p.Order, Mark: p.Mark, Name: p.Name, Count: p.Count + p.Spares, Staves: w.staves,
				StaveWidth: k.width, StaveLength: k.length, Width: p.Width, Length: p.Length, part: w.part})
		}
	}
	return out
}
