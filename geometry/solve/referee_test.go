package solve

import (
	"bufio"
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"testing"

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

// mustReferees is set where a missing referee is a fault.
func mustReferees() bool { return os.Getenv("SLATWRIGHT_REFEREES") == "1" }

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
	const python = "/usr/bin/python3" // where Debian's python3-z3 is found
	if err := exec.Command(python, "-c", "import z3").Run(); err != nil {
		if mustReferees() {
			t.Fatal("python3-z3 is not installed")
		}
		t.Skip("python3-z3 is not installed")
	}
	models := 40
	if mustReferees() {
		models = 400
	}
	rng := rand.New(rand.NewPCG(1, 2))
	var in bytes.Buffer
	enc := json.NewEncoder(&in)
	solved := 0
	var cases []string
	for range models {
		m := randomModel(func(lo, hi int) int { return lo + rng.IntN(hi-lo+1) })
		before := in.Len()
		c := newRefereeCase(t, m)
		solved += b2i(c.Solved)
		if err := enc.Encode(c); err != nil {
			t.Fatal(err)
		}
		cases = append(cases, string(in.Bytes()[before:]))
	}
	if solved < models/8 || solved > models*7/8 {
		t.Errorf("%d of %d models have a solution: too one-sided to tell much", solved, models)
	}
	cmd := exec.Command(python, "../../testdata/solve/referee.py")
	cmd.Stdin, cmd.Stderr = &in, os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(bytes.NewReader(out))
	n, undecided := 0, 0
	for ; lines.Scan(); n++ {
		says, _, _ := strings.Cut(lines.Text(), " (")
		switch says {
		case "ok":
		case "undecided":
			undecided++
		default:
			t.Errorf("model %d: %s\n%s", n, says, cases[n])
		}
	}
	if n != models || undecided > models/20 {
		t.Errorf("%d of %d models judged, %d undecided", n, models, undecided)
	}
}
