package solve

import "slatwright/specs/unit"

// Question asks for less than the best solution: only whether there is one.
type Question struct {
	Statements []StatementID // those that must hold; no others do
	Keep       []Wish        // wishes that must be had in full
	KeepCounts []CountWish   // likewise
	Least      []int         // by CountID, the least that each may be; nil: as the model declares
}

// Feasible reports whether some solution answers the question. Explanations
// take a grid that some statement of the model lifts as lifted even with that
// statement left out; Feasible does not.
func (m *Model) Feasible(question Question) (ok bool, err error) {
	defer tooHard(&err)
	if err := m.check(); err != nil {
		return false, err
	}
	q := m.put(question)
	if !q.pin(question.Keep) || !q.pinCounts(question.KeepCounts) {
		return false, nil
	}
	_, f := q.run()
	return f != nil, nil
}

// Keepable adds to a feasible question the wishes of all levels in their
// order, each where it can be had in full together with those before it.
func (m *Model) Keepable(question Question) (out Question, err error) {
	defer tooHard(&err)
	if err := m.check(); err != nil {
		return question, err
	}
	q := m.put(question)
	list := m.softs()
	q.keepAll(list)
	for _, s := range list {
		switch {
		case s.length != None && q.lengths[s.length].only(int64(s.at)):
			question.Keep = append(question.Keep, Wish{s.length, s.at})
		case s.length == None && q.counts[s.count].only(int64(s.at)):
			question.KeepCounts = append(question.KeepCounts, CountWish{s.count, int(s.at)})
		}
	}
	return question, nil
}

// put states the question, without the wishes to be kept.
func (m *Model) put(question Question) *ask {
	q := m.ask(m.only(question.Statements), m.newTables())
	q.raise(question.Least)
	return q
}

// only reports whether v is the one value left.
func (s span) only(v int64) bool { return s.lo == v && s.hi == v }

// pinCounts fixes counts at what is wished; false when a range forbids it.
func (q *ask) pinCounts(wishes []CountWish) bool {
	for _, w := range wishes {
		if !q.fix(soft{None, w.Count, unit.Length(w.Want)}) {
			return false
		}
	}
	return true
}

// Change works out what one statement, which the question need not name, would
// have to give for the question to hold. The values as drawn are those of the
// solution given, or without one the wishes of all levels.
func (m *Model) Change(s StatementID, question Question, drawn *Solution) (c Change, err error) {
	defer tooHard(&err)
	if err := m.check(); err != nil {
		return Change{}, err
	}
	e := m.engine()
	vary := func(m *Model, on []bool) *ask {
		q := m.ask(on, e.tables)
		q.raise(question.Least)
		return q
	}
	keep := e.asWished
	if drawn != nil {
		keep = func(q *ask, st Statement) { q.keepAll(notOf(st, e.solved(drawn))) }
	}
	return e.change(s, without(question.Statements, []StatementID{s}), vary, keep), nil
}

// raise sets the least that each count may be.
func (q *ask) raise(least []int) {
	for i, n := range least {
		q.counts[i].lo = max(q.counts[i].lo, int64(n))
	}
}
