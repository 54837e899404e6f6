package solve

import (
	"math/rand/v2"
	"testing"

	"slatwright/specs/unit"
)

// A pass that is reined in once took what an earlier pass had found for the
// best, though better was beyond its reach. Small systems with large ranges,
// against trying every pair of values.
func TestReinedInSearchFindsTheBest(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	for range 300 {
		m := &Model{}
		const most = 40
		x := m.AddLength(Length{Name: "x", Hi: most, Step: 1})
		y := m.AddLength(Length{Name: "y", Hi: most, Step: 1})
		a, b, k := 1+rng.IntN(9), 1+rng.IntN(9), rng.IntN(200)
		c, d, l := 1+rng.IntN(9), 1+rng.IntN(9), rng.IntN(40)
		term := func(coef int, v LengthID) Term { return Term{Coef: int64(coef), Count: None, Length: v} }
		// k <= a x + b y <= k + 1, and c x - d y >= -l
		m.Relate(Relation{Terms: []Term{term(a, x), term(b, y)}, Const: unit.Length(-k), Op: AtLeast})
		m.Relate(Relation{Terms: []Term{term(-a, x), term(-b, y)}, Const: unit.Length(k + 1), Op: AtLeast})
		m.Relate(Relation{Terms: []Term{term(c, x), term(-d, y)}, Const: unit.Length(l), Op: AtLeast})
		m.Levels = []Level{{Name: "least", Least: []Term{term(3, x), term(2, y)}}}
		best := -1
		for i := range most + 1 {
			for j := range most + 1 {
				if v := a*i + b*j; v >= k && v <= k+1 && c*i-d*j >= -l && (best < 0 || 3*i+2*j < best) {
					best = 3*i + 2*j
				}
			}
		}
		s, err := m.Best()
		switch {
		case err != nil:
			t.Fatal(err)
		case (s == nil) != (best < 0):
			t.Fatalf("a solution: %t, want %t", s != nil, best >= 0)
		case s != nil && s.Optima[0].Num().Int64() != int64(best):
			t.Fatalf("least %v, want %d", s.Optima[0], best)
		}
	}
}
