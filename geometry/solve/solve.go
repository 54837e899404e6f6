package solve

import (
	"math/big"
	"slices"

	"slatwright/specs/unit"
)

// Solution is the one best point of a model.
type Solution struct {
	// Counts are the values of the counts, by CountID.
	Counts []int
	// Optima are the values each level was brought to, by level: the sum of
	// distances, the greatest sum of products, the least sum of terms. A level
	// with wishes on both counts and lengths has the distances of the counts
	// in CountOptima.
	Optima      []*big.Rat
	CountOptima []int64
	// AtGuard lists the counts that took the largest value the model declares,
	// though no statement limits them to it: nothing in the design limits them.
	AtGuard []CountID
	// Reasons say where each length has its value from, by LengthID.
	Reasons []Reason

	values []rat
}

// Length returns the value of a length, exact if Whole says so, and else
// rounded to the nearest base unit.
func (s *Solution) Length(id LengthID) unit.Length {
	v := s.values[id]
	if n, ok := v.int(); ok {
		return unit.Length(n)
	}
	n, _ := v.add(ratio(1, 2)).floor().int()
	return unit.Length(n)
}

// Whole reports whether a length is a whole number of base units. Only one
// with Step 0 may not be.
func (s *Solution) Whole(id LengthID) bool { return s.values[id].isWhole() }

// Exact returns the exact value of a length in base units.
func (s *Solution) Exact(id LengthID) *big.Rat { return new(big.Rat).Set(s.values[id].big()) }

// Solve finds the best solution of the model, all statements holding, or the
// conflict that leaves none. The error is for a model that is put together
// wrongly, or ErrTooHard.
func (m *Model) Solve() (s *Solution, c *Conflict, err error) {
	if s, err = m.Best(); s != nil || err != nil {
		return s, nil, err
	}
	c, err = m.Explain()
	return nil, c, err
}

// Best is Solve without an explanation: nil where there is no solution.
func (m *Model) Best() (s *Solution, err error) {
	defer tooHard(&err)
	if err := m.check(); err != nil {
		return nil, err
	}
	e := m.engine()
	if s = e.best(e.m.ask(m.allOn(), e.tables)); s != nil {
		s.Reasons = e.reasons(s)
	}
	return s, nil
}

// Explain is the conflict of a model without a solution.
func (m *Model) Explain() (c *Conflict, err error) {
	defer tooHard(&err)
	if err := m.check(); err != nil {
		return nil, err
	}
	return m.engine().conflict(), nil
}

// tooHard turns the search's giving up into an error.
func tooHard(err *error) {
	switch p := recover(); p {
	case nil:
	case ErrTooHard:
		*err = ErrTooHard
	default:
		panic(p)
	}
}

// engine asks questions about one model and remembers what they share.
type engine struct {
	m      *Model
	tables []*ruleTable
	goals  []goal
}

func (m *Model) engine() *engine {
	return &engine{m: m.lifted(), tables: m.newTables(), goals: m.goals()}
}

// lifted is the model with the grids lifted for good that some statement
// lifts. With all statements it asks the same. Without that, leaving a
// statement out could make a length less free, and a smallest conflict would
// not be one: a set that cannot hold might hold with a line more.
func (m *Model) lifted() *Model {
	c := *m
	c.Lengths = slices.Clone(m.Lengths)
	for _, s := range m.Statements {
		if s.LiftsGrid && s.Length != None {
			l := &c.Lengths[s.Length]
			l.Step = min(l.Step, 1)
		}
	}
	return &c
}

// best answers a question with all levels. Mostly the wishes of the leading
// levels can all be had: with them as fixed values the search is much narrower,
// and what it finds is the best there is. Where they can't, those of fewer
// levels are tried.
func (e *engine) best(q *ask) *Solution {
	q.goals = e.goals
	for n := e.m.leadingWishes(); n > 0; n-- {
		pinned := q.clone()
		if !pinned.pinLevels(n) {
			continue
		}
		if s, f := pinned.run(); f != nil {
			return s.solution(f)
		}
	}
	s, f := q.run()
	if f == nil {
		return nil
	}
	return s.solution(f)
}

// leadingWishes counts the levels at the front that wish for lengths and for
// nothing else.
func (m *Model) leadingWishes() int {
	for i, l := range m.Levels {
		if len(l.Wishes) == 0 || len(l.CountWishes) > 0 {
			return i
		}
	}
	return len(m.Levels)
}

// pinLevels fixes the lengths that the first n levels wish for; false when some
// range or grid forbids it.
func (q *ask) pinLevels(n int) bool {
	for _, l := range q.m.Levels[:n] {
		if !q.pin(l.Wishes) {
			return false
		}
	}
	return true
}

// pin fixes lengths at what is wished; false when a range or grid forbids it.
func (q *ask) pin(wishes []Wish) bool {
	for _, w := range wishes {
		d := &q.lengths[w.Length]
		want := int64(w.Want)
		if want < d.lo || want > d.hi || d.step > 1 && want%d.step != 0 {
			return false
		}
		d.lo, d.hi = want, want
	}
	return true
}

// solution settles the lengths of the winning counts and puts all into a
// Solution, without reasons.
func (s *search) solution(f *found) *Solution {
	m := s.q.m
	out := &Solution{values: make([]rat, len(m.Lengths))}
	for i, d := range s.root.lengths {
		out.values[i] = whole(d.lo)
	}
	for _, l := range f.leaves {
		l.finish()
		for i, length := range l.lengths {
			out.values[length] = l.p.unknowns[i].lo
		}
	}
	for _, c := range f.counts {
		out.Counts = append(out.Counts, int(c.lo))
	}
	out.Optima = make([]*big.Rat, len(m.Levels))
	out.CountOptima = make([]int64, len(m.Levels))
	for i, g := range s.q.goals {
		switch v := f.values[i]; g.kind {
		case countSum:
			out.CountOptima[g.level], _ = v.int()
		case wishSum, leastOf:
			out.Optima[g.level] = new(big.Rat).Set(v.big())
		case mostOf:
			out.Optima[g.level] = new(big.Rat).Set(v.neg().big())
		}
	}
	for c, v := range out.Counts {
		if v == m.Counts[c].Hi && !m.capped(CountID(c)) {
			out.AtGuard = append(out.AtGuard, CountID(c))
		}
	}
	return out
}

// capped reports whether some statement limits a count from above.
func (m *Model) capped(c CountID) bool {
	for _, s := range m.Statements {
		if s.Count == c && s.HasHi && int(s.Hi) <= m.Counts[c].Hi {
			return true
		}
	}
	return false
}
