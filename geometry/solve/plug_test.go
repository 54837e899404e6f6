package solve

import (
	"fmt"
	"math/big"
)

// plug puts a solution into every relation, rule, statement, range and grid of
// its model and returns what does not hold. It shares no code with the solver:
// it works on the exported fields with big.Rat.
func plug(m *Model, s *Solution) (faults []string) {
	bad := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	sum := func(terms []Term, k int64) *big.Rat {
		total := big.NewRat(k, 1)
		for _, t := range terms {
			v := big.NewRat(t.Coef, 1)
			if t.Count != None {
				v.Mul(v, big.NewRat(int64(s.Counts[t.Count])+t.Plus, 1))
			}
			if t.Length != None {
				v.Mul(v, s.Exact(t.Length))
			}
			total.Add(total, v)
		}
		return total
	}
	for _, r := range m.Relations {
		v := sum(r.Terms, int64(r.Const)).Sign()
		if v < 0 || r.Op == Equal && v > 0 {
			bad("relation %s", r.Name)
		}
	}
	for _, r := range m.Rules {
		need := big.NewRat(int64(r.Bound(s.Length(r.On))), 1)
		if sum(r.Terms, int64(r.Const)).Cmp(need) < 0 {
			bad("rule %s", r.Name)
		}
	}
	lifted := map[LengthID]bool{}
	for _, st := range m.Statements {
		var v *big.Rat
		switch {
		case st.Length != None:
			v = s.Exact(st.Length)
			lifted[st.Length] = lifted[st.Length] || st.LiftsGrid
		case st.Count != None:
			v = big.NewRat(int64(s.Counts[st.Count]), 1)
		default:
			continue
		}
		if st.HasLo && v.Cmp(big.NewRat(int64(st.Lo), 1)) < 0 || st.HasHi && v.Cmp(big.NewRat(int64(st.Hi), 1)) > 0 {
			bad("statement %s", st.Name)
		}
	}
	for i, l := range m.Lengths {
		v := s.Exact(LengthID(i))
		if v.Cmp(big.NewRat(int64(l.Lo), 1)) < 0 || v.Cmp(big.NewRat(int64(l.Hi), 1)) > 0 {
			bad("range of %s", l.Name)
		}
		step := int64(l.Step)
		if lifted[LengthID(i)] {
			step = min(step, 1)
		}
		if step > 0 && !new(big.Rat).Quo(v, big.NewRat(step, 1)).IsInt() {
			bad("grid of %s", l.Name)
		}
	}
	for i, c := range m.Counts {
		if s.Counts[i] < c.Lo || s.Counts[i] > c.Hi {
			bad("count %s", c.Name)
		}
	}
	return faults
}
