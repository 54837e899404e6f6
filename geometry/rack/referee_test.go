package rack

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"time"

	"slatwright/geometry/solve"
	"slatwright/geometry/solve/solvetest"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// widestGap is the range of gaps that the referee is given: bottles are at most
// five inches across, and no bottle asks for more than 0.90 of that.
const widestGap = 6 * unit.Inch

// mostListed is the most of each count that the referee is given.
const mostListed = 6

// refereed is a design's model with the solver's answer, for the referee.
type refereed struct {
	Model    refereedModel
	Solved   bool
	Lengths  []string
	Counts   []int
	Problems []solve.Problem
}

type refereedModel struct {
	*solve.Model
	Rules []refereedRule
}

// refereedRule has its bounds written out, one for each grid line of its gap.
type refereedRule struct {
	Terms  []solve.Term
	Const  unit.Length
	On     solve.LengthID
	Owners []solve.StatementID
	Table  []unit.Length
}

// refereeCase states and solves a design whose gaps the referee can list.
func refereeCase(t *testing.T, d *design.Design) refereed {
	t.Helper()
	b := state(d, settings{choiceOf(d, topClearance).sought, choiceOf(d, slatEased).sought})
	m := &b.m
	for i := range m.Statements {
		m.Statements[i].LiftsGrid = false // every figure of the designs is on its grid
	}
	for _, r := range m.Rules {
		m.Lengths[r.On].Hi = widestGap
	}
	for i := range m.Counts {
		m.Counts[i].Hi = mostListed
	}
	s, c, err := m.Solve()
	if err != nil {
		t.Fatal(err)
	}
	out := refereed{Model: refereedModel{Model: m}, Solved: s != nil}
	for _, r := range m.Rules {
		x := refereedRule{Terms: r.Terms, Const: r.Const, On: r.On, Owners: r.Owners}
		for gap := unit.Length(0); gap <= widestGap; gap += m.Lengths[r.On].Step {
			x.Table = append(x.Table, r.Bound(gap))
		}
		out.Model.Rules = append(out.Model.Rules, x)
	}
	if s == nil {
		out.Problems = c.Problems
		return out
	}
	out.Counts = s.Counts
	for i := range m.Lengths {
		out.Lengths = append(out.Lengths, s.Exact(solve.LengthID(i)).RatString())
	}
	return out
}

// Z3 judges whole racks as it judges small models in package solve: verdict,
// each level, each conflict and each change.
func TestZ3AgreesOnRacks(t *testing.T) {
	solvetest.NeedZ3(t)
	designs := 4
	if solvetest.MustReferees() {
		designs = 60
	}
	if os.Getenv("SLATWRIGHT_LONG") == "1" {
		designs = 300
	}
	rng := rand.New(rand.NewPCG(20, 6))
	var cases []refereed
	var texts []string
	solved := 0
	var ours time.Duration
	for range designs {
		text := refereeDesign(rng)
		d, err := design.Read("referee.toml", []byte(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		start := time.Now()
		c := refereeCase(t, d)
		ours += time.Since(start)
		if c.Solved {
			solved++
		}
		cases = append(cases, c)
		texts = append(texts, text)
	}
	if designs >= 20 && (solved < designs/5 || solved > designs*4/5) {
		t.Errorf("%d of %d designs have a solution: too one-sided to tell much", solved, designs)
	}
	start := time.Now()
	for n, says := range solvetest.Judge(t, cases) {
		if !strings.HasPrefix(says, "ok") {
			t.Errorf("design %d: %s\n%s", n, says, texts[n])
		}
	}
	t.Logf("%d designs, %d of them with a solution: %v to solve and explain, %v for Z3 to prove or refute that", designs, solved, ours, time.Since(start))
}

// refereeDesign writes a design whose counts have limits, so that the referee
// can list them, and whose figures are on the grid.
func refereeDesign(rng *rand.Rand) string {
	pick := func(list ...string) string { return list[rng.IntN(len(list))] }
	figure := func(lo, hi int) string { // in sixteenths
		n := lo + rng.IntN(hi-lo+1)
		return fmt.Sprintf("%d %d/16", n/16, n%16)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "[bottles]\nfit = [%s]\n", pick(`"claret-750"`, `"half-375"`, `"claret-750", "burgundy-750"`, `"magnum-1500"`))
	b.WriteString("[rack]\n")
	fmt.Fprintf(&b, "columns = %s\n", pick(`"<= 6"`, `"3 .. 4"`, "3", `"~ 4"`))
	fmt.Fprintf(&b, "rows = %s\n", pick(`"<= 6"`, `"3 .. 5"`, "5", "4"))
	if rng.IntN(3) > 0 {
		fmt.Fprintf(&b, "width = \"%s %s\"\n", pick("<=", ">=", "~"), figure(6*16, 18*16))
	}
	if rng.IntN(3) > 0 {
		fmt.Fprintf(&b, "height = \"%s %s\"\n", pick("<=", "<=", "~"), figure(6*16, 20*16))
	}
	if rng.IntN(3) == 0 {
		fmt.Fprintf(&b, "[cell]\ngap = \"%s .. %s\"\n", figure(20, 30), figure(31, 60))
	}
	if rng.IntN(3) == 0 {
		fmt.Fprintf(&b, "[ladder]\npitch = \"%s\"\n", figure(60, 90))
	}
	if rng.IntN(3) == 0 {
		fmt.Fprintf(&b, "[slat]\nheight = \"%s\"\n", figure(10, 24))
	}
	if rng.IntN(4) == 0 {
		return "where = [\"rack.height " + pick("<=", "~", ">=") + " 1.25 * rack.width\"]\n" + b.String()
	}
	return b.String()
}
