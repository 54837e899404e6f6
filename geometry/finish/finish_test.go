package finish_test

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"testing"

	"slatwright/geometry/finish"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/space"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// racks are the demo designs and some of other proportions, one without a top.
func racks(t *testing.T) map[string]*rack.Rack {
	t.Helper()
	out := racktest.DemoRacks(t)
	out["one cell"] = racktest.Build(t, "[rack]\ncolumns = 1\nrows = 1\n[top]\npresent = false\n")
	out["flush"] = racktest.Build(t, "units = \"mm\"\n[rack]\ncolumns = 7\nrows = 3\n[overhang]\nside = 0\nfront = 0\n[apron]\nlift = 30\n")
	return out
}

// contact is a patch that a piece shares with another.
type contact struct {
	piece, flat int // the axis without extent
	lo, hi      [3]unit.Length
}

// touching finds, from boxes in space alone, the patches where glued pieces
// touch, each once for either piece.
func touching(r *rack.Rack) []contact {
	var list []contact
	for i, a := range r.Pieces {
		for j, b := range r.Pieces {
			if i == j || !joined(r, a, b) {
				continue
			}
			c := contact{piece: i, flat: -1}
			apart := false
			for k, ax := range []space.Axis{space.X, space.Y, space.Z} {
				c.lo[k], c.hi[k] = max(a.Box.Min.On(ax), b.Box.Min.On(ax)), min(a.Box.Max.On(ax), b.Box.Max.On(ax))
				if c.lo[k] > c.hi[k] || c.lo[k] == c.hi[k] && c.flat >= 0 {
					apart = true
				} else if c.lo[k] == c.hi[k] {
					c.flat = k
				}
			}
			if !apart && c.flat >= 0 {
				list = append(list, c)
			}
		}
	}
	return list
}

// area multiplies the patch's two sides in whole numbers.
func (c contact) area() *big.Int {
	n := big.NewInt(1)
	for k := range 3 {
		if k != c.flat {
			n.Mul(n, big.NewInt(int64(c.hi[k]-c.lo[k])))
		}
	}
	return n
}

// joined says of two kinds of part whether they are glued where they touch.
func joined(r *rack.Rack, a, b rack.Piece) bool {
	kinds := []string{r.Parts[a.Part].Name, r.Parts[b.Part].Name}
	slices.Sort(kinds)
	switch kinds[0] + "-" + kinds[1] {
	case "leg-slat", "apron-leg":
		return true
	case "apron-top":
		return a.Name == "apron, front upper" || b.Name == "apron, front upper"
	}
	return false
}

// The zones kept bare are the faces that touch in space and are glued, no more
// and no fewer.
func TestZonesAreTheTouchingFaces(t *testing.T) {
	for name, r := range racks(t) {
		var got []string
		for z := range finish.Zones(r) {
			lo, hi := z.Patch.Min, z.Patch.Max
			got = append(got, fmt.Sprint(z.Piece, int(z.Axis), [3]unit.Length{lo.X, lo.Y, lo.Z}, [3]unit.Length{hi.X, hi.Y, hi.Z}))
			box := r.Pieces[z.Piece].Box
			face := box.Min.On(z.Axis)
			if z.Far {
				face = box.Max.On(z.Axis)
			}
			if lo.On(z.Axis) != face {
				t.Errorf("%s: %s: a patch at %v is not on the face at %v", name, r.Pieces[z.Piece].Name, lo.On(z.Axis), face)
			}
		}
		var want []string
		for _, c := range touching(r) {
			want = append(want, fmt.Sprint(c.piece, c.flat, c.lo, c.hi))
		}
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s: %d zones, %d faces touch", name, len(got), len(want))
		}
	}
}

// The rows hold every zone: as many faces, and strips of the same area.
func TestRowsHoldEveryZone(t *testing.T) {
	for name, r := range racks(t) {
		var strips, zones unit.Area
		for _, w := range finish.Rows(r) {
			if w.Count < 1 || w.Face == "" || !slices.IsSortedFunc(w.Strips, func(a, b finish.Strip) int { return cmp.Compare(a.From, b.From) }) {
				t.Errorf("%s: row %+v", name, w)
			}
			for i, s := range w.Strips {
				if s.From < 0 || s.From >= s.To || s.To > w.Length || s.Low < 0 || s.Low >= s.High || s.High > w.Across {
					t.Errorf("%s: strip %+v leaves a face of %v x %v", name, s, w.Length, w.Across)
				}
				for _, o := range w.Strips[:i] {
					if s.From < o.To && o.From < s.To && s.Low < o.High && o.Low < s.High {
						t.Errorf("%s: %s: strips %+v and %+v overlap", name, w.Face, o, s)
					}
				}
				strips = strips.Plus(unit.Rectangle(s.To-s.From, s.High-s.Low).Times(w.Count))
			}
		}
		for z := range finish.Zones(r) {
			zones = zones.Plus(z.Area())
		}
		if strips.Cmp(zones) != 0 || zones.Cmp(unit.Area{}) <= 0 {
			t.Errorf("%s: strips of %s, zones of %s", name, r.Format.Area(strips), r.Format.Area(zones))
		}
	}
}

// The areas are the sums over the faces of all boxes, less what touches, added
// up here with whole numbers of their own.
func TestAreasAgreeWithTheBoxes(t *testing.T) {
	for name, r := range racks(t) {
		want := map[int]*big.Int{}
		for _, p := range r.Pieces {
			if want[p.Part] == nil {
				want[p.Part] = new(big.Int)
			}
			s := p.Box.Size()
			for _, f := range [][2]unit.Length{{s.X, s.Y}, {s.Y, s.Z}, {s.Z, s.X}} {
				side := new(big.Int).Mul(big.NewInt(int64(f[0])), big.NewInt(int64(f[1])))
				want[p.Part].Add(want[p.Part], side.Lsh(side, 1))
			}
		}
		for _, c := range touching(r) {
			sum := want[r.Pieces[c.piece].Part]
			sum.Sub(sum, c.area())
		}
		one := unit.Rectangle(1, 1)
		for _, a := range finish.Areas(r) {
			if got := a.Coated.Over(one); !got.IsInt() || got.Num().Cmp(want[a.Part]) != 0 {
				t.Errorf("%s: %s: %v squares coated; the boxes say %v", name, r.Parts[a.Part].Name, got, want[a.Part])
			}
		}
	}
}

// A rack of one cell by hand, in inches: legs 3/4 x 1 1/2, slats 3/4 x 1 x
// 9 1/2, aprons 3/4 x 2 1/2.
func TestOneCellByHand(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 1\nrows = 1\n[top]\npresent = false\n")
	// Glued: 2 slats at 2 crossings of 1 1/2 x 1; 4 legs at 2 aprons, 3/4 x 2 1/2.
	want := new(big.Rat).Add(big.NewRat(2*2*3, 2), big.NewRat(4*2*15, 8))
	if got := finish.Joints(r).Over(unit.SquareInch); got.Cmp(want) != 0 {
		t.Errorf("joints of %v square inches; want %v", got, want)
	}
	slats := finish.Areas(r)[0]
	// 2 (3/4 + 3/4 x 9 1/2 + 9 1/2) each, less 3.
	if got, want := slats.Coated.Over(unit.SquareInch), big.NewRat(2*(2*(3*4+3*38+4*38)-3*16), 16); got.Cmp(want) != 0 {
		t.Errorf("slats: %v square inches coated; want %v", got, want)
	}
	if got := finish.Rows(r); len(got) != 4 || got[0].Count != 2 || !got[0].Whole() || len(got[0].Strips) != 2 {
		t.Errorf("rows %+v", got)
	}
}

// All is rounded up: to ounces of 29.57 ml and, past 128 of them, to tenths of a
// quart of 946.4 ml; to tens of millilitres and, past 1000, to tenths of a litre.
func TestVolumes(t *testing.T) {
	for _, c := range []struct {
		ml       int64
		imp, met string
	}{
		{9, "1 fl oz", "10 ml"}, {29, "1 fl oz", "30 ml"}, {30, "2 fl oz", "30 ml"},
		{1000, "34 fl oz", "1000 ml"}, {1001, "34 fl oz", "1.1 l"}, {3785, "128 fl oz", "3.8 l"}, {3786, "4.1 qt", "3.8 l"},
	} {
		if got := finish.Volume(unit.Imperial, c.ml); got != c.imp {
			t.Errorf("%d ml: %q; want %q", c.ml, got, c.imp)
		}
		if got := finish.Volume(unit.Metric, c.ml); got != c.met {
			t.Errorf("%d ml: %q; want %q", c.ml, got, c.met)
		}
	}
}

// The quantities follow from the areas by the stated coverage, here in floating
// point; a coat takes as many times as it is put on.
func TestSupplies(t *testing.T) {
	text := "[rack]\ncolumns = 4\nrows = 5\n[finish]\nstain = \"oil_stain\"\ncoats = 2\n"
	r := racktest.Build(t, text)
	coated, _ := finish.Sum(finish.Areas(r)).Coated.Over(unit.SquareFoot).Float64()
	joints, _ := finish.Joints(r).Over(unit.SquareFoot).Float64()
	list := finish.Supplies(r, finish.Panel{})
	if len(list) != 4 {
		t.Fatalf("supplies %+v", list)
	}
	for i, kind := range []finish.Kind{finish.Conditioner, finish.Stain, finish.Coat, finish.Glue} {
		if list[i].Kind != kind {
			t.Errorf("%s is of kind %d; want %d", list[i].Name, list[i].Kind, kind)
		}
	}
	for i, want := range []float64{coated / 500, coated / 500, 2 * coated / 500, joints / 250} {
		want *= 3785.411784 / 0.9
		if got := float64(list[i].Millilitres); got < want-1e-6 || got >= want+1+1e-6 {
			t.Errorf("%s: %v ml; want %.3f rounded up", list[i].Name, got, want)
		}
	}
	papers := finish.Papers(r)
	if n := len(papers); n != 5 || papers[n-1].Grit != 220 || !papers[n-1].Between || papers[3].Grit != 180 {
		t.Errorf("papers %+v", papers)
	}
	bare := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n[finish]\ncoat = \"none\"\n")
	if list := finish.Supplies(bare, finish.Panel{}); len(list) != 1 || list[0].Coverage != bare.Design.Finish.Glue.Coverage {
		t.Errorf("bare wood takes %+v", list)
	}
}

// Staves of the top add the edges between them to the glue: 4 staves 40 in long
// and 3/4 in thick have 3 x 30 sq in.
func TestStavesTakeGlue(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n")
	p := finish.Panel{Tops: 1, Staves: 4, StaveWidth: 4 * unit.Inch, Length: 40 * unit.Inch}
	if got := p.Joints(r).Over(unit.SquareInch); got.Cmp(big.NewRat(90, 1)) != 0 {
		t.Errorf("joints of %v sq in; want 90", got)
	}
	one, glued := finish.Supplies(r, finish.Panel{}), finish.Supplies(r, p)
	last := len(one) - 1
	if a, b := one[last].Area, glued[last].Area; b.Minus(a).Cmp(p.Joints(r)) != 0 || glued[last].Millilitres <= one[last].Millilitres {
		t.Errorf("glue for %v; without staves for %v", glued[last], one[last])
	}
	if (finish.Panel{}).GluedUp() || !p.GluedUp() {
		t.Error("glued up or not")
	}
}

// Every face in a row is of a piece it names, and legs say on which sides of
// which ladders; where columns differ no face is in two rows.
func TestRowsNameTheirFaces(t *testing.T) {
	for name, r := range racks(t) {
		for _, w := range finish.Rows(r) {
			if !slices.IsSorted(w.Pieces) || len(slices.Compact(slices.Clone(w.Pieces))) != len(w.Pieces) || len(w.Pieces) > w.Count {
				t.Errorf("%s: %d faces of pieces %v", name, w.Count, w.Pieces)
			}
			// Each ladder has a front leg and a back one.
			if n := 2 * (len(w.Left) + len(w.Right)); n > 0 && n != w.Count {
				t.Errorf("%s: %s: %d faces; left of ladders %v, right of %v", name, w.Face, w.Count, w.Left, w.Right)
			}
		}
	}
	r := racktest.Build(t, "[[column]]\ncount = 1\nrows = 3\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 3\nrows = 4\n")
	var got []string
	for _, w := range finish.Rows(r) {
		if r.Parts[w.Part].Name == "leg" && len(w.Strips) > 2 {
			got = append(got, fmt.Sprint(w.Left, w.Right, len(w.Pieces)))
		}
	}
	if want := []string{"[1] [0] 4", "[2 3 4] [1 2 3] 8"}; !slices.Equal(got, want) {
		t.Errorf("legs in rows %q; want %q", got, want)
	}
}

// Tape by hand: one column and row, two legs on a bench of 1.2 m. Slats: two
// faces 1 in across, 2 strips; legs' faces: four 1 1/2 in across, 1 strip; legs'
// edges: four 3/4 in across, 2 strips; aprons' faces: four 2 1/2 in across, 2
// strips. Each strip reaches 1 in over at either end, and a tenth is lost.
func TestTapeByHand(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 1\nrows = 1\n[top]\npresent = false\n")
	const in = unit.Inch
	want := map[unit.Length]float64{3 * in / 2: 2 * (2*1.0 + 2), in: 1 * (4*1.5 + 2), 5 * in / 2: 2 * (4*0.75 + 2), 3 * in / 4: 2 * (4*2.5 + 2)}
	got := finish.Tapes(r)
	if len(got) != len(want) {
		t.Errorf("%d widths of tape: %v", len(got), got)
	}
	for i, tape := range got {
		if d := tape.Long.MM() - want[tape.Wide]*1.1*25.4; d < -0.1 || d > 0.1 {
			t.Errorf("%v of tape %v wide; want %.1f mm", tape.Long, tape.Wide, want[tape.Wide]*1.1*25.4)
		}
		if i > 0 && tape.Wide <= got[i-1].Wide {
			t.Errorf("%v after %v", tape.Wide, got[i-1].Wide)
		}
	}
	if got := finish.Tapes(racktest.Build(t, "[rack]\ncolumns = 1\nrows = 1\n[finish]\ncoat = \"none\"\n")); len(got) != 0 {
		t.Errorf("bare wood takes tape: %v", got)
	}
}

func TestCoverage(t *testing.T) {
	// 500 sq ft to the gallon: 46.45 m2 over 3.785 l.
	if got := finish.CoverageText(unit.Metric, table.Coverage{SquareFeet: 500}); got != "12.3 m² to the litre" {
		t.Errorf("%q", got)
	}
	if got := finish.CoverageText(unit.Imperial, table.Coverage{SquareFeet: 500}); got != "500 sq ft to the US gallon" {
		t.Errorf("%q", got)
	}
}
