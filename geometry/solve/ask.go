package solve

import (
	"fmt"

	"slatwright/specs/unit"
)

// span is a range of whole numbers, ends included; for a length with the step
// of its grid. A length of step 0 may take any rational value between.
type span struct {
	lo, hi int64
	step   int64
}

func (s span) empty() bool { return s.lo > s.hi }
func (s span) fixed() bool { return s.lo == s.hi }

// round moves the ends inward onto the grid.
func (s span) round() span {
	if s.step > 1 {
		s.lo = ceilDiv(s.lo, s.step) * s.step
		s.hi = floorDiv(s.hi, s.step) * s.step
	}
	return s
}

// ask is one question: the model under some of its statements, with the ranges
// that follow from these at once.
type ask struct {
	m         *Model
	on        []bool // which statements hold
	lengths   []span
	counts    []span
	relations []int // those in force
	rules     []int
	tables    []*ruleTable // of all rules, shared between questions
	goals     []goal
	nodes     int // limit of one branch and bound; 0: maxNodes
}

// allOn has every statement hold.
func (m *Model) allOn() []bool {
	on := make([]bool, len(m.Statements))
	for i := range on {
		on[i] = true
	}
	return on
}

// newTables prepares the memories of the side rules.
func (m *Model) newTables() []*ruleTable {
	var out []*ruleTable
	for i := range m.Rules {
		r := &m.Rules[i]
		out = append(out, &ruleTable{r.Falling, r.Bound, map[int64]int64{}})
	}
	return out
}

func allOf(owners []StatementID, on []bool) bool {
	for _, o := range owners {
		if o != Always && !on[o] {
			return false
		}
	}
	return true
}

// ask states the question for a set of statements. The ends are not yet
// rounded onto the grid, so that a caller may narrow or step them first.
func (m *Model) ask(on []bool, tables []*ruleTable) *ask {
	q := &ask{m: m, on: on, tables: tables}
	for _, l := range m.Lengths {
		s := span{int64(l.Lo), int64(l.Hi), int64(l.Step)}
		if !allOf(l.StepOwners, on) {
			s.step = 0
		}
		q.lengths = append(q.lengths, s)
	}
	for _, c := range m.Counts {
		q.counts = append(q.counts, span{int64(c.Lo), int64(c.Hi), 1})
	}
	for i, s := range m.Statements {
		if !on[i] {
			continue
		}
		if s.Length != None {
			q.narrow(&q.lengths[s.Length], s)
		}
		if s.Count != None {
			q.narrow(&q.counts[s.Count], s)
		}
	}
	for i, r := range m.Relations {
		if allOf(r.Owners, on) {
			q.relations = append(q.relations, i)
		}
	}
	for i, r := range m.Rules {
		if allOf(r.Owners, on) {
			q.rules = append(q.rules, i)
		}
	}
	return q
}

func (q *ask) narrow(to *span, s Statement) {
	if s.HasLo {
		to.lo = max(to.lo, int64(s.Lo))
	}
	if s.HasHi {
		to.hi = min(to.hi, int64(s.Hi))
	}
	if s.LiftsGrid && to.step > 1 {
		to.step = 1
	}
}

// clone copies what a caller may narrow.
func (q *ask) clone() *ask {
	c := *q
	c.lengths = append([]span(nil), q.lengths...)
	c.counts = append([]span(nil), q.counts...)
	return &c
}

// check reports the first thing wrong with how the model is put together. It
// is the caller's mistake, never the design's.
func (m *Model) check() error {
	for _, l := range m.Lengths {
		if l.Step < 0 || l.Lo < -limit || l.Hi > limit {
			return fmt.Errorf("length %s: step below nought or range beyond %d", l.Name, int64(limit))
		}
	}
	for _, c := range m.Counts {
		if c.Lo < 0 || c.Hi > maxCount {
			return fmt.Errorf("count %s: outside 0 .. %d", c.Name, maxCount)
		}
	}
	for _, r := range m.Relations {
		if err := m.checkTerms(r.Name, r.Terms, r.Owners); err != nil {
			return err
		}
	}
	for _, r := range m.Rules {
		if err := m.checkTerms(r.Name, r.Terms, r.Owners); err != nil {
			return err
		}
		if r.On < 0 || int(r.On) >= len(m.Lengths) || m.Lengths[r.On].Step == 0 || len(m.Lengths[r.On].StepOwners) > 0 {
			return fmt.Errorf("rule %s: its length must have a grid for good", r.Name)
		}
	}
	for _, l := range m.Levels {
		if err := m.checkTerms(l.Name, l.Least, nil); err != nil {
			return err
		}
	}
	return nil
}

// The largest length and count a model may speak of: some 6,000 km and 10,000.
// With coefficients to match, sums stay within 64 bits while ranges are
// narrowed; the exact arithmetic after that has no limit.
const (
	limit    unit.Length = 1 << 49
	maxCount             = 10_000
)

func (m *Model) checkTerms(name string, terms []Term, owners []StatementID) error {
	for _, t := range terms {
		if t.Length != None && int(t.Length) >= len(m.Lengths) || t.Count != None && int(t.Count) >= len(m.Counts) {
			return fmt.Errorf("%s: a term names what is not declared", name)
		}
	}
	for _, o := range owners {
		if int(o) >= len(m.Statements) {
			return fmt.Errorf("%s: an owner that is not declared", name)
		}
	}
	return nil
}
