package solve

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"slatwright/geometry/solve/solvetest"
	"slatwright/specs/unit"
)

// refereeRule is a rule with its bounds written out, one for each grid line.
type refereeRule struct {
	Terms  []Term
	Const  unit.Length
	On     LengthID
	Owners []StatementID
	Table  []unit.Length
}

type refereeModel struct {
	*Model
	Rules []refereeRule
}

// refereeCase is a model with the answer to be judged.
type refereeCase struct {
	Model    refereeModel
	Solved   bool
	Lengths  []string // exact, "p/q"
	Counts   []int
	Problems []Problem
}

func newRefereeCase(t *testing.T, m *Model) refereeCase {
	t.Helper()
	s, c, err := m.Solve()
	if err != nil {
		t.Fatal(err)
	}
	// Grids lifted by some statement are lifted in explanations too, and with
	// all statements it is all the same.
	out := refereeCase{Model: refereeModel{Model: m.lifted()}, Solved: s != nil}
	for _, r := range m.Rules {
		x := refereeRule{Terms: r.Terms, Const: r.Const, On: r.On, Owners: r.Owners}
		on := out.Model.Lengths[r.On]
		for v := unit.Length(0); v <= on.Hi; v += on.Step {
			x.Table = append(x.Table, r.Bound(v))
		}
		out.Model.Rules = append(out.Model.Rules, x)
	}
	if s == nil {
		out.Problems = c.Problems
		return out
	}
	if faults := plug(m, s); len(faults) > 0 {
		t.Error(faults)
	}
	out.Counts = s.Counts
	for i := range m.Lengths {
		out.Lengths = append(out.Lengths, s.Exact(LengthID(i)).RatString())
	}
	return out
}

// Z3 judges random models: each optimum of each level is proven by asking for
// better, each conflict by asking for every smaller set of statements, each
// change by trying the values up to it.
func TestZ3Agrees(t *testing.T) {
	solvetest.NeedZ3(t)
	models := 40
	if solvetest.MustReferees() {
		models = 400
	}
	rng := rand.New(rand.NewPCG(1, 2))
	solved := 0
	var cases []refereeCase
	for range models {
		c := newRefereeCase(t, randomModel(func(lo, hi int) int { return lo + rng.IntN(hi-lo+1) }))
		solved += b2i(c.Solved)
		cases = append(cases, c)
	}
	if solved < models/8 || solved > models*7/8 {
		t.Errorf("%d of %d models have a solution: too one-sided to tell much", solved, models)
	}
	undecided := 0
	for n, text := range solvetest.Judge(t, cases) {
		switch says, _, _ := strings.Cut(text, " ("); says {
		case "ok":
		case "undecided":
			undecided++
		default:
			model, _ := json.Marshal(cases[n])
			t.Errorf("model %d: %s\n%s", n, text, model)
		}
	}
	if undecided > models/20 {
		t.Errorf("%d of %d models undecided", undecided, models)
	}
}
