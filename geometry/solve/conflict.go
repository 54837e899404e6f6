package solve

import "slices"

// Conflict is why a model has no solution: one or more separate problems.
type Conflict struct {
	// Problems share no statement. The first is the smallest of all minimal
	// sets that cannot hold together, each further one the smallest among the
	// statements left; with all of them gone the rest can hold.
	Problems []Problem
}

// Problem is a set of statements that cannot all hold, though any fewer of
// them can: no line of it can be left out of the story. It is empty when the
// relations contradict each other without any statement.
type Problem struct {
	Statements []StatementID // ascending
	// Smallest says that no other such set has fewer statements. It is false
	// only when the count of questions ran out before that was proven.
	Smallest bool
	// Changes has one entry for each statement, in the same order.
	Changes []Change
	// Chain joins the statements by the arithmetic of the model.
	Chain Chain
}

// maxAsks bounds the questions put for one smallest set. Racks need 20 to 100.
// It counts questions, not seconds: the same model always gives one answer.
const maxAsks = 3000

// conflict explains a model without a solution.
func (e *engine) conflict() *Conflict {
	put := func(m *Model, on []bool) *ask { return m.ask(on, e.tables) }
	return &Conflict{Problems: e.problems(put, put, e.asWished)}
}

// asker states a question for a set of statements.
type asker func(m *Model, on []bool) *ask

// problems finds the separate problems among all statements: sets that cannot
// hold in the question that put states. Their changes are worked out in the
// question that vary states, with the soft values that keep fixes.
func (e *engine) problems(put, vary asker, keep func(*ask, Statement)) []Problem {
	x := explainer{m: e.m, ask: func(on []bool) bool {
		_, f := put(e.m, on).run()
		return f != nil
	}}
	var out []Problem
	left := statementsOf(e.m)
	for {
		p, ok := x.smallest(left)
		if !ok {
			break
		}
		out = append(out, p)
		if len(p.Statements) == 0 {
			return out
		}
		left = without(left, p.Statements)
	}
	for i := range out {
		p := &out[i]
		for _, s := range p.Statements {
			// The other problems are taken as put right.
			rest := append(without(p.Statements, []StatementID{s}), left...)
			p.Changes = append(p.Changes, e.change(s, rest, vary, keep))
		}
		p.Chain = e.chain(put(e.m, e.m.only(p.Statements)))
	}
	return out
}

func statementsOf(m *Model) []StatementID {
	out := make([]StatementID, len(m.Statements))
	for i := range out {
		out[i] = StatementID(i)
	}
	return out
}

func without(list, less []StatementID) []StatementID {
	return slices.DeleteFunc(slices.Clone(list), func(s StatementID) bool { return slices.Contains(less, s) })
}

// only is the choice of just these statements.
func (m *Model) only(list []StatementID) []bool {
	on := make([]bool, len(m.Statements))
	for _, s := range list {
		on[s] = true
	}
	return on
}

// explainer finds smallest sets of statements that cannot hold together,
// under any oracle that says which sets can.
type explainer struct {
	m    *Model
	ask  func(on []bool) bool
	asks int
	good [][]bool // sets known to hold together
	bad  [][]bool // sets known not to
}

// holds asks the oracle unless an earlier answer settles it.
func (x *explainer) holds(list []StatementID) bool {
	on := x.m.only(list)
	if slices.ContainsFunc(x.bad, func(b []bool) bool { return covers(on, b) }) {
		return false
	}
	if slices.ContainsFunc(x.good, func(g []bool) bool { return covers(g, on) }) {
		return true
	}
	x.asks++
	ok := x.ask(on)
	if ok {
		x.good = append(x.good, on)
	} else {
		x.bad = append(x.bad, on)
	}
	return ok
}

// covers reports whether a has all that b has.
func covers(a, b []bool) bool {
	for i := range b {
		if b[i] && !a[i] {
			return false
		}
	}
	return true
}

// smallest finds the smallest set within list that cannot hold, the first in
// the order of statements among equals; ok is false when the list holds.
//
// Each set of statements whose removal mends the list has a member in every
// conflict. So a smallest set that meets all the mending sets known is no
// larger than any conflict: if it cannot hold, it is a smallest conflict, and
// if it can, growing it as far as it holds leaves out a new mending set.
func (x *explainer) smallest(list []StatementID) (p Problem, ok bool) {
	if x.holds(list) {
		return Problem{}, false
	}
	start := x.asks
	var mending [][]StatementID
	for x.asks-start < maxAsks {
		hit := smallestHitting(mending)
		if !x.holds(hit) {
			return Problem{Statements: hit, Smallest: true}, true
		}
		kept := x.grow(hit, without(list, hit))
		mending = append(mending, without(list, kept))
	}
	return Problem{Statements: x.shrink(list)}, true
}

// grow adds to a set that holds as much of more as still holds, in halves, so
// that a long list which fits costs one question.
func (x *explainer) grow(set, more []StatementID) []StatementID {
	if len(more) == 0 {
		return set
	}
	both := append(slices.Clone(set), more...)
	if x.holds(both) {
		return both
	}
	if len(more) == 1 {
		return set
	}
	half := len(more) / 2
	return x.grow(x.grow(set, more[:half]), more[half:])
}

// shrink drops statements, the last first, as long as the rest cannot hold.
func (x *explainer) shrink(list []StatementID) []StatementID {
	for i := len(list) - 1; i >= 0; i-- {
		if rest := slices.Delete(slices.Clone(list), i, i+1); !x.holds(rest) {
			list = rest
		}
	}
	return list
}

// smallestHitting finds a smallest set with a member in each of the sets, and
// of those the first in order.
func smallestHitting(sets [][]StatementID) []StatementID {
	size := 0
	for !hits(sets, nil, nil, size) {
		size++
	}
	var chosen, barred []StatementID
	for _, s := range members(sets) {
		if len(chosen) == size {
			break
		}
		if try := append(slices.Clone(chosen), s); hits(sets, try, barred, size-len(try)) {
			chosen = try
		} else {
			barred = append(barred, s)
		}
	}
	return chosen
}

func members(sets [][]StatementID) []StatementID {
	all := slices.Concat(sets...)
	slices.Sort(all)
	return slices.Compact(all)
}

// hits reports whether chosen and up to more others, none of them barred, meet
// all the sets.
func hits(sets [][]StatementID, chosen, barred []StatementID, more int) bool {
	var open []StatementID
	apart := 0 // sets that share nothing need a member each
	var seen []StatementID
	for _, set := range sets {
		if slices.ContainsFunc(set, func(s StatementID) bool { return slices.Contains(chosen, s) }) {
			continue
		}
		if open == nil || len(set) < len(open) {
			open = set
		}
		if !slices.ContainsFunc(set, func(s StatementID) bool { return slices.Contains(seen, s) }) {
			apart++
			seen = append(seen, set...)
		}
	}
	if open == nil {
		return true
	}
	if apart > more {
		return false
	}
	for _, s := range open {
		if !slices.Contains(barred, s) && hits(sets, append(slices.Clone(chosen), s), barred, more-1) {
			return true
		}
	}
	return false
}
