package solve

import (
	"encoding/json"
	"fmt"
	"math/big"
	"os"
	"slices"
	"strings"
	"testing"

	"slatwright/specs/unit"
)

// The files under testdata/solve hold racks as plain relations and statements,
// and what a general-purpose solver, asked with the same relations, found. They
// were made outside this package; this loader turns them into Models.

type caseModel struct {
	Name string
	Lens []struct {
		Name   string
		Grid   bool
		Lo, Hi int64
	}
	Counts []struct {
		Name   string
		Lo, Hi int
	}
	Stock []struct {
		Role    string
		Options []struct {
			Name string
			Vals map[string]int64
		}
	}
	Rels []struct {
		ID, Text, Op string
		Const        int64
		Terms        []struct {
			Coef       int64
			Len, Count string
			Koff       int64
		}
	}
	Statements []struct {
		ID, Var, Op, Text, Strength, Cls string
		Val, Val2                        int64
	}
	Bottles []struct {
		Mult   int64
		Counts []string
	}
}

// caseNames ties a built Model back to the names of the file.
type caseNames struct {
	lengths    map[string]LengthID
	counts     map[string]CountID
	statements []string
	grid       int64
}

func loadCases(t testing.TB, file string) []caseModel {
	t.Helper()
	var out []caseModel
	readJSON(t, file, &out)
	return out
}

func readJSON(t testing.TB, file string, into any) {
	t.Helper()
	b, err := os.ReadFile("../../testdata/solve/" + file)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, into); err != nil {
		t.Fatal(err)
	}
}

// build turns a case into a Model. The order of levels is that of the files:
// bottles, strong, medium, weak, defaults. A choice of lumber is given by
// stock, one option for each role.
func (c *caseModel) build(stock []int) (*Model, *caseNames) {
	m := &Model{}
	n := &caseNames{lengths: map[string]LengthID{}, counts: map[string]CountID{}}
	var gridOwner []StatementID
	hard := 0
	for _, s := range c.Statements {
		if s.Op == "grid" {
			n.grid = s.Val
			gridOwner = []StatementID{StatementID(hard)}
		}
		if s.Strength == "hard" {
			hard++
		}
	}
	for _, l := range c.Lens {
		d := Length{Name: l.Name, Lo: unit.Length(l.Lo), Hi: unit.Length(l.Hi)}
		if l.Grid {
			d.Step, d.StepOwners = unit.Length(n.grid), gridOwner
		}
		for i, o := range stock {
			if v, ok := c.Stock[i].Options[o].Vals[l.Name]; ok {
				d.Lo, d.Hi = unit.Length(v), unit.Length(v)
			}
		}
		n.lengths[l.Name] = m.AddLength(d)
	}
	for _, k := range c.Counts {
		n.counts[k.Name] = m.AddCount(Count{k.Name, k.Lo, k.Hi})
	}
	c.statements(m, n)
	for _, r := range c.Rels {
		rel := Relation{Name: r.Text, Const: unit.Length(r.Const), Op: AtLeast}
		switch r.Op {
		case "==":
			rel.Op = Equal
		case ">":
			rel.Const-- // at least one base unit more
		}
		for _, t := range r.Terms {
			term := Term{Coef: t.Coef, Count: None, Plus: t.Koff, Length: None}
			if t.Len != "" {
				term.Length = n.lengths[t.Len]
			}
			if t.Count != "" {
				term.Count = n.counts[t.Count]
			}
			rel.Terms = append(rel.Terms, term)
		}
		m.Relate(rel)
	}
	return m, n
}

func (c *caseModel) statements(m *Model, n *caseNames) {
	soft := map[string]*Level{}
	for _, name := range []string{"strong", "medium", "weak", "default"} {
		soft[name] = &Level{Name: name, InOrder: true}
	}
	for _, s := range c.Statements {
		if s.Strength != "hard" {
			if l, ok := n.lengths[s.Var]; ok {
				soft[s.Strength].Wishes = append(soft[s.Strength].Wishes, Wish{l, unit.Length(s.Val)})
			} else {
				soft[s.Strength].CountWishes = append(soft[s.Strength].CountWishes, CountWish{n.counts[s.Var], int(s.Val)})
			}
			continue
		}
		st := Statement{Name: s.Text, Length: None, Count: None, RepairStep: unit.Length(n.grid)}
		if s.Op != "grid" {
			if l, ok := n.lengths[s.Var]; ok {
				st.Length = l
			} else {
				st.Count = n.counts[s.Var]
			}
			lo, hi := s.Val, s.Val
			if s.Op == "in" {
				hi = s.Val2
			}
			st.HasLo, st.HasHi = s.Op != "<=", s.Op != ">="
			st.Lo, st.Hi = unit.Length(lo), unit.Length(hi)
		}
		m.AddStatement(st)
		n.statements = append(n.statements, s.ID)
	}
	most := Level{Name: "bottles"}
	for _, b := range c.Bottles {
		p := Product{Coef: b.Mult}
		for _, k := range b.Counts {
			p.Counts = append(p.Counts, n.counts[k])
		}
		most.Most = append(most.Most, p)
	}
	m.Levels = append(m.Levels, most, *soft["strong"], *soft["medium"], *soft["weak"], *soft["default"])
}

type caseExpected struct {
	Status     string
	Bottles    int64
	Counts     map[string]int
	Values     map[string]any `json:"values_u"`
	Levels     [][2]string    `json:"levels_u"`
	Muses      [][]string
	Complete   *bool // false: the list of conflicts is not complete
	Repairs    map[string]caseRepair
	PerProblem []map[string]caseRepair `json:"repairs per problem"`
	Separate   [][]string              `json:"separate problems"`
	OneMore    []string                `json:"one_more"`
}

// caseRepair is nil where changing the statement alone does not help. Values
// are a length as written ("15 3/8 in") or a count.
type caseRepair *struct {
	Down any `json:"down to"`
	Up   any `json:"up to"`
}

func TestCasesFromTheReference(t *testing.T) {
	for _, set := range []string{"handmade", "random"} {
		expected := map[string]caseExpected{}
		readJSON(t, set+"_expected.json", &expected)
		for _, c := range loadCases(t, set+"_models.json") {
			t.Run(c.Name, func(t *testing.T) {
				want := expected[c.Name]
				var stock []int
				if len(c.Stock) > 0 { // T17: the choice found there
					stock = []int{0, 1}
				}
				m, names := c.build(stock)
				s, conflict, err := m.Solve()
				if err != nil {
					t.Fatal(err)
				}
				if want.Status == "infeasible" {
					if conflict == nil {
						t.Fatal("solved, want a conflict")
					}
					checkConflict(t, conflict, want, names)
					return
				}
				if s == nil {
					t.Fatal("no solution found")
				}
				for k, v := range want.Counts {
					if got := s.Counts[names.counts[k]]; got != v {
						t.Errorf("%s = %d, want %d", k, got, v)
					}
				}
				for k, v := range want.Values {
					if got := s.Exact(names.lengths[k]); got.Cmp(asRat(t, v)) != 0 {
						t.Errorf("%s = %s, want %v", k, got.RatString(), v)
					}
				}
			})
		}
	}
}

func asRat(t *testing.T, v any) *big.Rat {
	t.Helper()
	text := fmt.Sprint(v)
	if f, ok := v.(float64); ok {
		text = fmt.Sprintf("%.0f", f)
	}
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("not a number: %v", v)
	}
	return r
}

// checkConflict holds a conflict against the complete list of minimal ones,
// and its changes against those found there.
func checkConflict(t *testing.T, c *Conflict, want caseExpected, names *caseNames) {
	t.Helper()
	var sets [][]string
	for _, m := range want.Muses {
		sets = append(sets, slices.Sorted(slices.Values(m)))
	}
	size := len(slices.MinFunc(sets, func(a, b []string) int { return len(a) - len(b) }))
	for i, p := range c.Problems {
		var got []string
		for _, s := range p.Statements {
			got = append(got, names.statements[s])
		}
		slices.Sort(got)
		if !slices.ContainsFunc(sets, func(s []string) bool { return slices.Equal(s, got) }) {
			t.Errorf("problem %v is not among the minimal conflicts %v", got, sets)
		}
		if i == 0 && len(got) != size || !p.Smallest {
			t.Errorf("problem %v has %d statements, the smallest %d", got, len(got), size)
		}
		if len(p.Chain.Steps)+len(p.Chain.Relations) == 0 {
			t.Errorf("problem %v: nothing joins it", got)
		}
		repairs := want.Repairs
		if want.PerProblem != nil {
			repairs = want.PerProblem[i]
		}
		for _, ch := range p.Changes {
			if r, ok := repairs[names.statements[ch.Statement]]; ok {
				checkChange(t, names.statements[ch.Statement], ch, r)
			}
		}
	}
	if want.Separate != nil && len(want.Separate) != len(c.Problems) {
		t.Errorf("%d separate problems, want %d", len(c.Problems), len(want.Separate))
	}
}

func checkChange(t *testing.T, name string, got Change, want caseRepair) {
	t.Helper()
	if name == "pr" || name == "grid" { // T13 says so in words; a grid has no nearest value
		return
	}
	if got.Helps != (want != nil) {
		t.Errorf("changing %s helps: %t, want %t", name, got.Helps, want != nil)
	}
	if want == nil {
		return
	}
	if got.Free.HasBelow != (want.Down != nil) || want.Down != nil && got.Free.Below != asWritten(t, want.Down) {
		t.Errorf("%s down to %d %t, want %v", name, got.Free.Below, got.Free.HasBelow, want.Down)
	}
	if got.Free.HasAbove != (want.Up != nil) || want.Up != nil && got.Free.Above != asWritten(t, want.Up) {
		t.Errorf("%s up to %d %t, want %v", name, got.Free.Above, got.Free.HasAbove, want.Up)
	}
}

// asWritten reads "15 3/8 in", "123.825 mm" or a plain count.
func asWritten(t *testing.T, v any) unit.Length {
	t.Helper()
	if n, ok := v.(float64); ok {
		return unit.Length(n)
	}
	sum := new(big.Rat)
	fields := strings.Fields(v.(string))
	for _, f := range fields[:len(fields)-1] {
		r, ok := new(big.Rat).SetString(f)
		if !ok {
			t.Fatalf("not a length: %v", v)
		}
		sum.Add(sum, r)
	}
	scale := unit.Inch
	if fields[len(fields)-1] == "mm" {
		scale = unit.Millimetre
	}
	sum.Mul(sum, big.NewRat(int64(scale), 1))
	if !sum.IsInt() {
		t.Fatalf("no whole base unit: %v", v)
	}
	return unit.Length(sum.Num().Int64())
}

// One more column into 16 1/8 in: how much the width must give with all soft
// values free, and with every one as drawn.
func TestOneMoreColumn(t *testing.T) {
	expected := map[string]caseExpected{}
	readJSON(t, "handmade_expected.json", &expected)
	want := expected["T18"].OneMore
	for _, c := range loadCases(t, "handmade_models.json") {
		if c.Name != "T18" {
			continue
		}
		m, names := c.build(nil)
		s, _, err := m.Solve()
		if err != nil || s == nil {
			t.Fatal("not solved", err)
		}
		n, err := m.OneMore(names.counts["columns"], s)
		if err != nil {
			t.Fatal(err)
		}
		var all []Change // the stated count is a problem of its own
		for _, p := range n.Problems {
			all = append(all, p.Changes...)
		}
		for _, ch := range all {
			if names.statements[ch.Statement] != "spw" {
				continue
			}
			if free, kept := asWritten(t, want[0]), asWritten(t, want[1]); ch.Free.Above != free || ch.Kept.Above != kept {
				t.Errorf("width %d free, %d kept, want %d and %d", ch.Free.Above, ch.Kept.Above, free, kept)
			}
			return
		}
		t.Error("the space is not among what stops it")
	}
}
