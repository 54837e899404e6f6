package assembly_test

import (
	"math"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/finish"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Every clamp stands on a glued joint, and none is further from the next than
// the table allows unless the places are. A clamp opens to what lies between its
// jaws, two cauls of 3/4 in or 18 mm among it.
func TestClamps(t *testing.T) {
	for _, text := range []string{
		"[rack]\ncolumns = 4\nrows = 5\n", "[rack]\ncolumns = 1\nrows = 1\n", "units = \"mm\"\n[rack]\ncolumns = 9\nrows = 14\n",
		"[[column]]\ncount = 1\nrows = 3\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 3\nrows = 4\n",
	} {
		r := racktest.Build(t, text)
		sets := assembly.Sets(r, finish.Panel{})
		n := len(sets) - 3
		if n < 1 || len(assembly.Sets(r, staves)) != len(sets)+2 {
			t.Fatalf("%s%d sets", text, len(sets))
		}
		faces := 0
		for _, s := range sets[:n] {
			onLadder(t, r, s)
			faces += s.Times
		}
		if faces != 2*len(r.Columns) {
			t.Errorf("%s%d faces are clamped; want two to a column", text, faces)
		}
		cauls := 2 * assembly.Caul(r)
		front, back, top := sets[n], sets[n+1], sets[n+2]
		if front.Opening != r.Len("carcase.depth")-r.Len("apron.thickness")+cauls || back.Opening != r.Len("carcase.depth")+cauls || top.Opening != r.Len("apron.height")+r.Len("top.thickness")+cauls {
			t.Errorf("%sclamps open to %v, %v and %v", text, front.Opening, back.Opening, top.Opening)
		}
		for _, s := range sets[n:] {
			if s.Count != len(s.Places) || s.Face != nil {
				t.Errorf("%s%s: %d clamps at %d places", text, s.For, s.Count, len(s.Places))
			}
			for i := 1; i < len(s.Places); i++ {
				a, b := s.Places[i-1], s.Places[i]
				if step := b.X - a.X; a.Z == b.Z && step > max(12*unit.Inch+1, r.Kinds[0].Pitch) {
					t.Errorf("%s%s: clamps %v apart", text, s.For, step)
				}
			}
		}
	}
	// 1 1/2 x 1 in of ponderosa pine at 100 to 150 psi.
	f := assembly.Sets(racktest.Build(t, "[rack]\ncolumns = 2\nrows = 1\n"), finish.Panel{})[0].Force
	if got := f.Text(unit.Imperial); got != "150 to 230 lb" || math.Abs(f.Greatest-225) > 1e-9 {
		t.Errorf("force %q", got)
	}
	if got := f.Text(unit.Metric); got != "700 to 1000 N" {
		t.Errorf("force %q", got)
	}
	// 40 in of staves 16 in across take clamps at 0, 12, 24, 36 and 40 in at most.
	p := assembly.Sets(racktest.Build(t, "[rack]\ncolumns = 2\nrows = 1\n"), staves)[0]
	if p.Count != 5 || p.Opening != 35*unit.Inch/2 || math.Abs(p.Force.Least-40*0.75*100/5) > 1e-9 {
		t.Errorf("gluing up: %+v", p)
	}
}

// onLadder judges the clamps of a ladder's face: on joints of that face, at its
// lowest and its highest slat, and no further apart than a foot or its rises.
func onLadder(t *testing.T, r *rack.Rack, s assembly.Clamps) {
	t.Helper()
	between := r.Len("leg.thickness") + r.Len("slat.thickness")
	if s.Face.Second {
		between += r.Len("slat.thickness")
	}
	if len(s.Places) != s.Count || s.Opening != between+2*assembly.Caul(r) {
		t.Errorf("%s: %d clamps at %d places, open to %v", s.For, s.Count, len(s.Places), s.Opening)
	}
	for i, p := range s.Places {
		inside := 0
		for _, q := range r.Pieces {
			for _, c := range q.Fixed {
				if c.Axis == space.X && q.Ladder == s.Face.Ladders[0]-1 && r.Parts[q.Part].Name == "slat" && c.Far != s.Face.Right &&
					c.Patch.Min.Y < p.Y && p.Y < c.Patch.Max.Y && c.Patch.Min.Z < p.Z && p.Z < c.Patch.Max.Z {
					inside++
				}
			}
		}
		if inside != 1 {
			t.Errorf("%s: a clamp at %+v is on %d joints", s.For, p, inside)
		}
		if i < 2 {
			continue
		}
		rise := unit.Length(0)
		for k := 1; k < len(s.Face.Slats); k++ {
			rise = max(rise, s.Face.Slats[k]-s.Face.Slats[k-1])
		}
		if step := p.Z - s.Places[i-2].Z; step > max(12*unit.Inch, rise) {
			t.Errorf("%s: clamps %v apart", s.For, step)
		}
	}
	half := r.Len("slat.height") / 2
	if low, high := s.Places[0].Z-half, s.Places[len(s.Places)-1].Z-half; low != s.Face.Slats[0] || high != s.Face.Slats[len(s.Face.Slats)-1] {
		t.Errorf("%s: clamps from %v to %v over slats from %v to %v", s.For, low, high, s.Face.Slats[0], s.Face.Slats[len(s.Face.Slats)-1])
	}
}

// Clamps that serve a set serve it whole: one by one, the widest first.
func TestOwnServesEverySet(t *testing.T) {
	for _, text := range []string{"[rack]\ncolumns = 4\nrows = 5\n", "[rack]\ncolumns = 1\nrows = 9\n", "units = \"mm\"\n[rack]\ncolumns = 9\nrows = 14\n"} {
		sets := assembly.Sets(racktest.Build(t, text), staves)
		own := assembly.Own(sets)
		has := func(opening unit.Length) (n int) {
			for _, o := range own {
				if o.Opening >= opening {
					n += o.Count
				}
			}
			return n
		}
		// together counts the clamps of a set that open so wide, with those of the
		// set that is in use with it.
		together := func(i int, opening unit.Length) (n int) {
			for k := i; k < len(sets) && (k == i || sets[k].Also); k++ {
				if sets[k].Opening >= opening {
					n += sets[k].Count
				}
			}
			return n
		}
		for i, s := range sets {
			if want := max(s.Count, together(i, s.Opening)); has(s.Opening) < want {
				t.Errorf("%s%s: %d clamps open to %v; want %d", text, s.For, has(s.Opening), s.Opening, want)
			}
		}
		for _, o := range own { // and none is too many
			needed := 0
			for i := range sets {
				needed = max(needed, together(i, o.Opening))
			}
			if has(o.Opening) != needed {
				t.Errorf("%s%d clamps open to %v; want %d", text, has(o.Opening), o.Opening, needed)
			}
		}
	}
}
