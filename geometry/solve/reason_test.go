package solve

import (
	"math/big"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"slatwright/specs/unit"
)

// Reasons form a proof: what a length follows from was settled before it, and
// an equality gives it exactly the value it has.
func TestReasonsFormAProof(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		s, _ := mustSolve(t, m)
		if s == nil {
			return
		}
		ranks := map[int]bool{}
		for l, r := range s.Reasons {
			if ranks[r.Rank] {
				t.Fatal("two lengths of one rank")
			}
			ranks[r.Rank] = true
			for _, f := range r.From {
				if s.Reasons[f].Rank >= r.Rank {
					t.Fatalf("length %d rests on %d, which comes later", l, f)
				}
			}
			v := s.Exact(LengthID(l))
			switch r.Kind {
			case Stated:
				st := m.Statements[r.Statement]
				if st.Length != LengthID(l) || v.Cmp(big.NewRat(int64(st.Lo), 1)) != 0 && v.Cmp(big.NewRat(int64(st.Hi), 1)) != 0 {
					t.Fatalf("length %d is not what statement %d says", l, r.Statement)
				}
			case Wished:
				if m.Levels[r.Level].Wishes[r.Wish].Length != LengthID(l) {
					t.Fatalf("length %d has another one's wish", l)
				}
			case Follows:
				if m.Relations[r.Relation].Op != Equal {
					t.Fatalf("length %d follows from an inequality", l)
				}
			}
		}
	})
}

// The optima reported are those of the point, worked out from the point alone.
func TestOptimaAreThoseOfThePoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		s, _ := mustSolve(t, m)
		if s == nil {
			return
		}
		for i, l := range m.Levels {
			want := new(big.Rat)
			for _, w := range l.Wishes {
				d := new(big.Rat).Sub(s.Exact(w.Length), big.NewRat(int64(w.Want), 1))
				want.Add(want, d.Abs(d))
			}
			for _, p := range l.Most {
				v := p.Coef
				for _, c := range p.Counts {
					v *= int64(s.Counts[c])
				}
				want.Add(want, big.NewRat(v, 1))
			}
			for _, x := range l.Least {
				v := big.NewRat(x.Coef, 1)
				if x.Count != None {
					v.Mul(v, big.NewRat(int64(s.Counts[x.Count])+x.Plus, 1))
				}
				want.Add(want, v.Mul(v, s.Exact(x.Length)))
			}
			if got := s.Optima[i]; got != nil && got.Cmp(want) != 0 {
				t.Fatalf("level %d: %s, at the point %s", i, got.RatString(), want.RatString())
			}
			var counts int64
			for _, w := range l.CountWishes {
				counts += absInt(int64(s.Counts[w.Count] - w.Want))
			}
			if s.CountOptima[i] != counts {
				t.Fatalf("level %d: counts %d off, at the point %d", i, s.CountOptima[i], counts)
			}
		}
	})
}

func TestReasonsOfARack(t *testing.T) {
	r := newTestRack(rackOptions{width: 42 * unit.Inch, height: 42 * unit.Inch})
	s, _, err := r.Solve()
	if err != nil || s == nil {
		t.Fatal("not solved", err)
	}
	if faults := plug(r.Model, s); len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, c := range []struct {
		length LengthID
		want   ReasonKind
	}{{r.legT, Wished}, {r.channel, Follows}, {r.pitch, Follows}, {r.topLen, Follows}, {r.width, Follows}} {
		if got := s.Reasons[c.length].Kind; got != c.want {
			t.Errorf("%s: reason %d, want %d", r.Lengths[c.length].Name, got, c.want)
		}
	}
	if len(s.AtGuard) != 0 {
		t.Errorf("counts %v at their guards in a limited space", s.AtGuard)
	}
}

// Nothing limits the counts: the caller is told.
func TestGuardIsReported(t *testing.T) {
	r := newTestRack(rackOptions{height: 42 * unit.Inch})
	for l := range r.Lengths {
		r.Lengths[l].Hi = 4000 * unit.Inch
	}
	s, _, err := r.Solve()
	if err != nil || s == nil {
		t.Fatal("not solved", err)
	}
	if want := []CountID{r.columns}; !reflect.DeepEqual(s.AtGuard, want) {
		t.Errorf("at guard %v, want %v", s.AtGuard, want)
	}
}

func TestDetermined(t *testing.T) {
	r := newTestRack(rackOptions{columns: 3})
	exact := func(l LengthID, v unit.Length) {
		r.AddStatement(Statement{Length: l, Count: None, Lo: v, Hi: v, HasLo: true, HasHi: true})
	}
	exact(r.legT, 12*in16)
	exact(r.slatT, 12*in16)
	exact(r.pitch, 78*in16)
	got, err := r.Determined()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range []LengthID{r.legT, r.slatT, r.pitch, r.channel, r.gap} {
		if !got[l] {
			t.Errorf("%s is determined", r.Lengths[l].Name)
		}
	}
	for _, l := range []LengthID{r.rise, r.topLen, r.legLen} {
		if got[l] {
			t.Errorf("%s is not determined", r.Lengths[l].Name)
		}
	}
}

// One more column in a width that is full: the width stops it, and as drawn it
// would have to give one pitch less what is to spare.
func TestNextOfARack(t *testing.T) {
	r := newTestRack(rackOptions{width: 42 * unit.Inch, height: 42 * unit.Inch})
	s, _, err := r.Solve()
	if err != nil || s == nil {
		t.Fatal("not solved", err)
	}
	n, err := r.OneMore(r.columns, s)
	if err != nil {
		t.Fatal(err)
	}
	if !n.SoftOnly || len(n.Bent) == 0 && !n.BentUnknown || len(n.Problems) != 1 || len(n.Problems[0].Changes) != 1 {
		t.Fatalf("%+v", n)
	}
	want := s.Length(r.width) + s.Length(r.pitch)
	if got := n.Problems[0].Changes[0].Kept; !got.HasAbove || got.Above != want {
		t.Errorf("width as drawn %d, want %d", got.Above, want)
	}
}

// The chain of a contradiction through three relations ends in one that leaves
// no value, and each relation in it is needed.
func TestChainJoins(t *testing.T) {
	r := newTestRack(rackOptions{width: 12 * unit.Inch, columns: 8})
	_, c, err := r.Solve()
	if err != nil || c == nil {
		t.Fatal("solved", err)
	}
	chain := c.Problems[0].Chain
	if !chain.Joined || len(chain.Steps) == 0 {
		t.Fatalf("nothing joins: %+v", chain)
	}
	if last := chain.Steps[len(chain.Steps)-1]; last.Hi >= last.Lo {
		t.Errorf("the last step leaves %d .. %d", last.Lo, last.Hi)
	}
	if len(chain.Relations) < 3 {
		t.Errorf("relations %v", chain.Relations)
	}
}
