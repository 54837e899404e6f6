package solve

import (
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"slatwright/specs/unit"
)

func drawModel(t *rapid.T) *Model {
	return randomModel(func(lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, "pick") })
}

func mustSolve(t *rapid.T, m *Model) (*Solution, *Conflict) {
	s, c, err := m.Solve()
	if err != nil {
		t.Fatal(err)
	}
	if (s == nil) == (c == nil) {
		t.Fatal("neither or both of a solution and a conflict")
	}
	return s, c
}

func TestEverySolutionHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		s, _ := mustSolve(t, m)
		if s == nil {
			return
		}
		if faults := plug(m, s); len(faults) > 0 {
			t.Fatal(faults)
		}
		again, _ := mustSolve(t, m)
		if !reflect.DeepEqual(s, again) {
			t.Fatal("another answer the second time")
		}
	})
}

// A conflict is minimal, and each change named is enough and the nearest.
func TestConflictsAreMinimalAndChangesHelp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		_, c := mustSolve(t, m)
		if c == nil {
			return
		}
		m = m.lifted() // as explanations do
		feasible := func(list []StatementID) bool {
			ok, err := m.Feasible(Question{Statements: list})
			if err != nil {
				t.Fatal(err)
			}
			return ok
		}
		left := statementsOf(m)
		for _, p := range c.Problems {
			left = without(left, p.Statements)
			if feasible(p.Statements) {
				t.Fatal("a conflict that can hold", p.Statements)
			}
			for _, s := range p.Statements {
				if !feasible(without(p.Statements, []StatementID{s})) {
					t.Fatal("not minimal", p.Statements)
				}
			}
		}
		for _, p := range c.Problems {
			for _, ch := range p.Changes {
				checkNearest(t, m, append(slices.Clone(left), p.Statements...), ch)
			}
		}
	})
}

// checkNearest tries the values between the statement's own and the one named.
func checkNearest(t *rapid.T, m *Model, list []StatementID, ch Change) {
	st := m.Statements[ch.Statement]
	if st.Length == None && st.Count == None {
		return
	}
	step := max(1, st.RepairStep)
	try := func(lo, hi int64) bool {
		c := *m
		c.Statements = slices.Clone(m.Statements)
		c.Statements[ch.Statement].Lo, c.Statements[ch.Statement].Hi = unit.Length(lo), unit.Length(hi)
		ok, err := c.Feasible(Question{Statements: list})
		if err != nil {
			t.Fatal(err)
		}
		return ok
	}
	exact := st.HasLo && st.HasHi && st.Lo == st.Hi
	at := func(v int64, above bool) bool {
		switch {
		case exact:
			return try(v, v)
		case above:
			return try(int64(st.Lo), v)
		}
		return try(v, int64(st.Hi))
	}
	if exact || st.HasHi {
		for v := (floorDiv(int64(st.Hi), int64(step)) + 1) * int64(step); v <= 60; v += int64(step) {
			if want := ch.Free.HasAbove && v == int64(ch.Free.Above); at(v, true) != want {
				t.Fatalf("statement %d at %d: want %t, change %+v", ch.Statement, v, want, ch)
			} else if want {
				break
			}
		}
	}
	if exact || st.HasLo {
		for v := (ceilDiv(int64(st.Lo), int64(step)) - 1) * int64(step); v >= -20; v -= int64(step) {
			if want := ch.Free.HasBelow && v == int64(ch.Free.Below); at(v, false) != want {
				t.Fatalf("statement %d at %d: want %t, change %+v", ch.Statement, v, want, ch)
			} else if want {
				break
			}
		}
	}
}

// The order of statements changes nothing, nor does saying a thing twice; and
// saying less never makes the impossible of the possible.
func TestStatementsAreASet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		s, _ := mustSolve(t, m)
		perm := rapid.Permutation(statementsOf(m)).Draw(t, "order")
		p := m.withStatements(perm)
		sp, _ := mustSolve(t, p)
		if (s == nil) != (sp == nil) || s != nil && !reflect.DeepEqual(s.values, sp.values) {
			t.Fatal("the order of statements matters")
		}
		if s == nil {
			return
		}
		again := p.withStatements(statementsOf(p))
		again.Statements = append(again.Statements, m.Statements[rapid.IntRange(0, len(m.Statements)-1).Draw(t, "twice")])
		if sa, _ := mustSolve(t, again); sa == nil || !reflect.DeepEqual(s.values, sa.values) {
			t.Fatal("saying a thing twice matters")
		}
		m = m.lifted() // a statement that lifts a grid takes away and gives
		for i := range m.Statements {
			if ok, _ := m.Feasible(Question{Statements: without(statementsOf(m), []StatementID{StatementID(i)})}); !ok {
				t.Fatal("with a statement less there is no solution")
			}
		}
	})
}

// withStatements returns the model with its statements in another order.
func (m *Model) withStatements(order []StatementID) *Model {
	c := *m
	c.Statements = nil
	name := make([]StatementID, len(order))
	for i, s := range order {
		c.Statements = append(c.Statements, m.Statements[s])
		name[s] = StatementID(i)
	}
	rename := func(owners []StatementID) (out []StatementID) {
		for _, o := range owners {
			out = append(out, name[o])
		}
		return out
	}
	c.Relations = slices.Clone(m.Relations)
	for i := range c.Relations {
		c.Relations[i].Owners = rename(c.Relations[i].Owners)
	}
	c.Rules = slices.Clone(m.Rules)
	for i := range c.Rules {
		c.Rules[i].Owners = rename(c.Rules[i].Owners)
	}
	return &c
}
