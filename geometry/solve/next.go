package solve

import (
	"fmt"
	"math/big"
)

// Next says why a count of a solution is not larger by one.
type Next struct {
	Count CountID
	Value int // one more than the solution has
	// AtGuard: the model itself allows no more; nothing else was asked.
	AtGuard bool
	// Problems are the statements that stop it, as in a Conflict, and what each
	// would have to give: Free with every soft value let go, Kept with every
	// soft value as solved. Other counts are held at least at their solved
	// values.
	Problems []Problem
	// SoftOnly: the statements leave room, only soft values stop it. Problems
	// are then what stops it with the soft values kept, Free changes are empty
	// (none is needed), and Bent lists what would bend.
	// Bent is nil where the search for it gave up.
	// If BentUnknown, the search for it was given up: it is advice, and not
	// worth many times the work of the answer itself.
	SoftOnly    bool
	Bent        []Bent
	BentUnknown bool
}

// Bent is a wished length in the best solution that has one more.
type Bent struct {
	Length   LengthID
	From, To *big.Rat // exact, in base units
	Level    int      // of its first wish
}

// OneMore says what stops the next one of a count of a solution of the model.
func (m *Model) OneMore(c CountID, s *Solution) (n Next, err error) {
	defer tooHard(&err)
	if err := m.check(); err != nil {
		return Next{}, err
	}
	if len(s.Counts) != len(m.Counts) {
		return Next{}, fmt.Errorf("the solution is not of this model")
	}
	e := m.engine()
	n = Next{Count: c, Value: s.Counts[c] + 1}
	if n.Value > m.Counts[c].Hi {
		n.AtGuard = true
		return n, nil
	}
	more := func(m *Model, on []bool) *ask { return e.askMore(m, on, c, s) }
	keep := func(q *ask, st Statement) { q.keepAll(notOf(st, e.solved(s))) }
	if _, f := more(m, m.allOn()).run(); f == nil {
		n.Problems = e.problems(more, more, keep)
		return n, nil
	}
	n.SoftOnly = true
	n.Bent, n.BentUnknown = e.bent(more(m, m.allOn()), s)
	fixed := func(m *Model, on []bool) *ask {
		q := more(m, on)
		q.fixAsSolved(e.solved(s))
		return q
	}
	n.Problems = e.problems(fixed, more, keep)
	for i := range n.Problems {
		for j := range n.Problems[i].Changes {
			n.Problems[i].Changes[j].Free = Nearest{}
		}
	}
	return n, nil
}

// askMore asks for one more of a count and no less of the others.
func (e *engine) askMore(m *Model, on []bool, c CountID, s *Solution) *ask {
	q := m.ask(on, e.tables)
	for i := range q.counts {
		q.counts[i].lo = max(q.counts[i].lo, int64(s.Counts[i]))
	}
	q.counts[c].lo = max(q.counts[c].lo, int64(s.Counts[c])+1)
	return q
}

// solved lists the wished lengths with the values they have in a solution.
// One that is no whole number of base units cannot be fixed and is left out.
func (e *engine) solved(s *Solution) []soft {
	var out []soft
	for _, l := range e.m.Levels {
		for _, w := range l.Wishes {
			if s.Whole(w.Length) {
				out = append(out, soft{w.Length, None, s.Length(w.Length)})
			}
		}
	}
	return out
}

// fixAsSolved fixes them all, whatever that leads to.
func (q *ask) fixAsSolved(list []soft) {
	for _, v := range list {
		d := &q.lengths[v.length]
		d.lo, d.hi = max(d.lo, int64(v.at)), min(d.hi, int64(v.at))
	}
}

// bentNodes bounds each step of the search for what would bend.
const bentNodes = 500

// bent finds the best solution of the question and the wished lengths that
// differ there; unknown when the search gives up.
func (e *engine) bent(q *ask, s *Solution) (out []Bent, unknown bool) {
	q.nodes = bentNodes
	with, err := e.bestWithin(q)
	if err != nil {
		return nil, true
	}
	seen := make([]bool, len(e.m.Lengths))
	for i, l := range e.m.Levels {
		for _, w := range l.Wishes {
			if seen[w.Length] || with.values[w.Length].eq(s.values[w.Length]) {
				continue
			}
			seen[w.Length] = true
			out = append(out, Bent{w.Length, s.Exact(w.Length), with.Exact(w.Length), i})
		}
	}
	return out, false
}

// bestWithin is best, with the search's giving up as an error.
func (e *engine) bestWithin(q *ask) (s *Solution, err error) {
	defer tooHard(&err)
	return e.best(q), nil
}
