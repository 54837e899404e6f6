package cutting

import (
	"fmt"
)

// DefaultEffort is the search effort for large jobs, some tens of seconds.
const DefaultEffort = 20_000_000_000

// mostChoices is how many ways to divide the glued-up parts are solved in
// full; beyond that each takes the way that uses the least width.
const mostChoices = 48

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
	best, err := chooseStaves(job, sources, options)
	if err != nil {
		return nil, err
	}
	plan := &Plan{Bound: best.bound}
	var ls []layout
	for i, in := range best.instances {
		ls = append(ls, layouts(in, best.solutions[i])...)
	}
	plan.GlueUps = glueUps(job, options, best.choice)
	finish(job, ls, plan)
	plan.Proven = plan.Cost == plan.Bound
	if best.divided {
		plan.Warnings = append(plan.Warnings, Warning{-1, "the glued-up parts are divided into staves by least width, other divisions were not tried: the bound holds for this one"})
	}
	return plan, nil
}

// An answer is the best plan found for one choice of staves, or for all.
type answer struct {
	cost, bound int64
	choice      []int
	divided     bool // only one of many divisions into staves was tried
	instances   []*instance
	solutions   []*solution
}

// chooseStaves solves the job for every way to divide its glued-up parts, and
// keeps the cheapest. Parts of one size are divided alike.
func chooseStaves(job Job, sources []source, options [][]stave) (*answer, error) {
	free := freeChoices(job, options)
	total := 1
	for _, members := range free {
		total = min(total*len(options[members[0]]), mostChoices+1)
	}
	if total > mostChoices {
		return leastWidth(job, sources, options, free)
	}
	var best *answer
	var firstErr error
	for n := range total {
		choice := make([]int, len(job.Parts))
		for _, members := range free {
			for _, i := range members {
				choice[i] = n % len(options[i])
			}
			n /= len(options[members[0]])
		}
		share := job
		share.Effort /= int64(total)
		below := int64(never)
		if best != nil {
			below = best.cost
		}
		a, err := solve(share, sources, pool(job, options, choice), below)
		if a == nil && err == nil {
			continue
		}
		if err != nil {
			if firstErr == nil {
				firstErr = err
			}
			continue
		}
		a.choice = choice
		if best == nil {
			best = a
			continue
		}
		a.bound = min(a.bound, best.bound)
		if a.cost >= best.cost {
			best.bound = a.bound
			continue
		}
		best = a
	}
	if best == nil {
		return nil, firstErr
	}
	return best, nil
}

// freeChoices lists the glued-up parts, those of one size together.
func freeChoices(job Job, options [][]stave) [][]int {
	var out [][]int
	for i, o := range options {
		if o == nil {
			continue
		}
		at := -1
		for g, members := range out {
			p, q := job.Parts[members[0]], job.Parts[i]
			if p.Thickness == q.Thickness && p.Width == q.Width && p.Length == q.Length {
				at = g
			}
		}
		if at < 0 {
			out = append(out, []int{i})
		} else {
			out[at] = append(out[at], i)
		}
	}
	return out
}

// solve plans the kinds: instance by instance, exactly where that is possible.
// It returns nil without error when it is proven that no plan costs less than
// below.
func solve(job Job, sources []source, kinds []kind, below int64) (*answer, error) {
	a := &answer{}
	for _, in := range split(job.Shop, kinds, sources) {
		sol, bound, err := solveInstance(job, in, below-a.bound)
		if err != nil || sol == nil {
			return nil, err
		}
		a.instances = append(a.instances, in)
		a.solutions = append(a.solutions, sol)
		a.cost += sol.cost
		a.bound += bound
	}
	return a, nil
}

func solveInstance(job Job, in *instance, below int64) (*solution, int64, error) {
	sol, ok := exact(in, below)
	if !ok {
		return large(job, in)
	}
	if sol == nil && below < never/2 {
		return nil, 0, nil
	}
	if sol == nil {
		return nil, 0, stockOut(job, in)
	}
	return sol, sol.cost, nil
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
	sol, ok := exact(&more, never)
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
func glueUps(job Job, options [][]stave, choice []int) []GlueUp {
	var out []GlueUp
	for i, p := range job.Parts {
		if options[i] == nil {
			continue
		}
		o := options[i][choice[i]]
		out = append(out, GlueUp{Order: p.Order, Mark: p.Mark, Name: p.Name, Count: p.Count + p.Spares, Staves: o.n,
			StaveWidth: o.width, StaveLength: p.Length + job.Shop.GlueLength, Width: p.Width, Length: p.Length})
	}
	return out
}
