package cutting

import (
	"fmt"
	"sort"
)

// DefaultEffort is the search effort for large jobs, some half a minute. Each
// order beyond the twentieth adds a fortieth of it.
const DefaultEffort = 12_000_000_000

// QuickEffort is the search effort of a plan that must not keep anybody
// waiting: orders of usual size are still solved and proven, large ones get a
// good plan and an honest bound.
const QuickEffort = 100_000_000

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
		job.Effort = defaultEffort(job)
	}
	plan := &Plan{}
	var ls []layout
	plans := 0
	instances := split(job.Shop, pool(job, options), sources)
	for _, in := range instances {
		a, err := solve(job, in, &effort{limit: job.Effort / int64(len(instances))})
		if err != nil {
			return nil, err
		}
		plan.Bound += a.bound
		for _, p := range a.plans {
			plan.GlueUps = append(plan.GlueUps, glueUps(job, p.in)...)
			ls = append(ls, layouts(p.in, plans, p.patterns)...)
			plans++
		}
	}
	sort.SliceStable(plan.GlueUps, func(i, j int) bool { return plan.GlueUps[i].part < plan.GlueUps[j].part })
	finish(job, ls, plan)
	plan.Proven = plan.Cost == plan.Bound
	return plan, nil
}

func defaultEffort(job Job) int64 {
	orders := map[string]bool{}
	for _, p := range job.Parts {
		orders[p.Order] = true
	}
	return DefaultEffort + DefaultEffort/40*int64(max(0, len(orders)-20))
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
	sol, ok := s.solveExactly(s.need, s.limits, exactWork, never)
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
