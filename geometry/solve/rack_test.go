package solve

import (
	"math/big"
	"testing"

	"slatwright/specs/unit"
)

// rackOptions says what the test rack's file would say; nought leaves a line out.
type rackOptions struct {
	width, height, depth unit.Length // space to stand in
	columns, rows        int
	site                 bool // lengths on the grid all open, sizes by the space
}

const (
	in16 = unit.Inch / 16
	dMax = 3*unit.Inch + unit.Inch/8 // largest bottle
	dMin = 3 * unit.Inch             // smallest bottle
)

// sag is how far a bottle of diameter d hangs below two slats a gap apart,
// rounded up to a whole base unit: r - sqrt(r² - (g/2)²).
func sag(d, gap unit.Length) unit.Length {
	if gap > d {
		return dMax * 1000
	}
	a := new(big.Int).Mul(big.NewInt(int64(d)), big.NewInt(int64(d)))
	b := new(big.Int).Mul(big.NewInt(int64(gap)), big.NewInt(int64(gap)))
	root := new(big.Int).Sqrt(a.Sub(a, b)) // of (2h)²
	return (d - unit.Length(root.Int64()) + 1) / 2
}

// testRack is a model of the size and shape of a rack's: three connected
// directions, side rules on the gap, two counts.
type testRack struct {
	*Model
	columns, rows                                       CountID
	gap, channel, pitch, rise, first, width, height     LengthID
	legT, legLen, slatT, slatH, slatLen, apronH, topLen LengthID
}

func newTestRack(o rackOptions) *testRack {
	r := &testRack{Model: &Model{}}
	m := r.Model
	grid := func(n string) LengthID { return m.AddLength(Length{Name: n, Hi: 400 * unit.Inch, Step: in16}) }
	free := func(n string) LengthID { return m.AddLength(Length{Name: n, Hi: 1000 * unit.Inch, Step: 1}) }
	r.columns = m.AddCount(Count{"columns", 1, 60})
	r.rows = m.AddCount(Count{"rows", 1, 60})
	r.gap, r.channel, r.pitch, r.rise, r.first = grid("gap"), free("channel"), free("pitch"), grid("rise"), grid("first")
	legT, legW, legLen := grid("leg.thickness"), grid("leg.width"), grid("leg.length")
	slatT, slatH, slatLen := grid("slat.thickness"), grid("slat.height"), grid("slat.length")
	apronT, apronH, apronLen, lift := grid("apron.thickness"), grid("apron.height"), free("apron.length"), grid("apron.lift")
	topT, topLen, topW := grid("top.thickness"), free("top.length"), free("top.width")
	side, front, back := grid("overhang.side"), grid("overhang.front"), grid("overhang.back")
	sideClear, topClear, apronClear := grid("side_clearance"), grid("top_clearance"), grid("apron_clearance")
	carW, carD, carH := free("carcase.width"), free("carcase.depth"), free("carcase.height")
	width, depth, height := free("rack.width"), free("rack.depth"), free("rack.height")
	r.legT, r.legLen, r.slatT, r.slatH, r.slatLen, r.apronH, r.topLen = legT, legLen, slatT, slatH, slatLen, apronH, topLen
	r.width, r.height = width, height

	t := func(c int64, l LengthID) Term { return Term{Coef: c, Count: None, Length: l} }
	ct := func(c int64, n CountID, plus int64, l LengthID) Term { return Term{c, n, plus, l} }
	rel := func(name string, op Op, k unit.Length, terms ...Term) {
		m.Relate(Relation{Name: name, Terms: terms, Const: k, Op: op})
	}
	rel("channel = gap + 2 slat", Equal, 0, t(-1, r.channel), t(1, r.gap), t(2, slatT))
	rel("pitch = channel + leg", Equal, 0, t(-1, r.pitch), t(1, r.channel), t(1, legT))
	rel("carcase.width", Equal, 0, t(-1, carW), ct(1, r.columns, 0, r.pitch), t(1, legT))
	rel("apron.length", Equal, 0, t(-1, apronLen), t(1, carW))
	rel("carcase.depth", Equal, 0, t(-1, carD), t(1, slatLen), t(2, apronT))
	rel("carcase.height", Equal, 0, t(-1, carH), t(1, legLen))
	rel("top.length", Equal, 0, t(-1, topLen), t(1, carW), t(2, side))
	rel("top.width", Equal, 0, t(-1, topW), t(1, carD), t(1, front), t(1, back))
	rel("rack.width", Equal, 0, t(-1, width), t(1, topLen))
	rel("rack.depth", Equal, 0, t(-1, depth), t(1, topW))
	rel("rack.height", Equal, 0, t(-1, height), t(1, legLen), t(1, topT))
	rel("side", AtLeast, -dMax, t(1, r.channel), t(-2, sideClear))
	rel("rest most", AtLeast, 90*dMin, t(-100, r.gap))
	rel("rest least", AtLeast, -dMax, t(2, r.gap))
	rel("last row below the upper apron", AtLeast, -dMax, t(1, legLen), t(-1, apronH), t(-1, r.first),
		ct(-1, r.rows, -1, r.rise), t(-1, slatH), t(-1, apronClear))
	rel("slat below the leg's end", AtLeast, 0, t(1, legLen), t(-1, r.first), ct(-1, r.rows, -1, r.rise), t(-1, slatH))
	rule := func(name string, falling bool, bound func(unit.Length) unit.Length, k unit.Length, terms ...Term) {
		m.Rules = append(m.Rules, Rule{Name: name, Terms: terms, Const: k, On: r.gap, Falling: falling, Bound: bound})
	}
	rule("next bottle up", false, func(g unit.Length) unit.Length { return sag(dMin, g) - sag(dMax, g) }, -dMax,
		t(1, r.rise), t(-1, topClear))
	rule("slat above", true, func(g unit.Length) unit.Length { return dMax + unit.Inch/8 - 2*sag(dMax, g) }, 0,
		t(1, r.rise), t(-1, slatH))
	rule("lower apron", false, func(g unit.Length) unit.Length { return sag(dMax, g) }, 0,
		t(1, r.first), t(1, slatH), t(-1, apronH), t(-1, lift), t(-1, apronClear))
	r.statements(o, width, height, depth)
	wish := func(l LengthID, v unit.Length) Wish { return Wish{l, v} }
	m.Levels = append(m.Levels,
		Level{Name: "defaults", Wishes: []Wish{
			wish(legT, 12*in16), wish(legW, 24*in16), wish(slatT, 12*in16), wish(slatH, 16*in16), wish(slatLen, 152*in16),
			wish(apronT, 12*in16), wish(apronH, 40*in16), wish(lift, 0), wish(topT, 12*in16), wish(side, 12*in16), wish(front, 8*in16),
			wish(back, 0), wish(sideClear, 2*in16), wish(topClear, 4*in16), wish(apronClear, 2*in16)}},
		Level{Name: "bottles", Most: []Product{{1, []CountID{r.columns, r.rows}}}},
		Level{Name: "preferred", Wishes: []Wish{wish(r.gap, 37*in16), wish(r.rise, 58*in16), wish(r.first, 38*in16)}},
		Level{Name: "wood", Least: []Term{ct(2, r.columns, 1, legLen), t(4, apronLen), t(1, topLen)}})
	return r
}

func (r *testRack) statements(o rackOptions, width, height, depth LengthID) {
	most := func(name string, l LengthID, hi unit.Length) {
		if hi > 0 {
			r.AddStatement(Statement{Name: name, Length: l, Count: None, Hi: hi, HasHi: true, RepairStep: in16})
		}
	}
	most("width", width, o.width)
	most("height", height, o.height)
	most("depth", depth, o.depth)
	count := func(name string, c CountID, n int) {
		if n > 0 {
			r.AddStatement(Statement{Name: name, Length: None, Count: c, Lo: unit.Length(n), Hi: unit.Length(n), HasLo: true, HasHi: true})
		}
	}
	count("columns", r.columns, o.columns)
	count("rows", r.rows, o.rows)
}

func BenchmarkSolve(b *testing.B) {
	for _, c := range []struct {
		name string
		o    rackOptions
	}{
		{"counts given", rackOptions{columns: 4, rows: 5}},
		{"80 bottles in a space", rackOptions{width: 42 * unit.Inch, height: 42 * unit.Inch}},
		{"depth bends a default", rackOptions{width: 42 * unit.Inch, height: 42 * unit.Inch, depth: 10 * unit.Inch}},
		{"defaults bend", rackOptions{width: 42 * unit.Inch, height: 42 * unit.Inch, columns: 12}},
		{"a wall of 200 by 100 in", rackOptions{width: 200 * unit.Inch, height: 100 * unit.Inch}},
		{"a wall of 260 by 240 in", rackOptions{width: 260 * unit.Inch, height: 240 * unit.Inch}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				r := newTestRack(c.o)
				s, _, err := r.Solve()
				if err != nil || s == nil {
					b.Fatal(err, s)
				}
				b.ReportMetric(float64(s.Counts[0]*s.Counts[1]), "bottles")
			}
		})
	}
}

func BenchmarkConflict(b *testing.B) {
	for _, c := range []struct {
		name string
		o    rackOptions
	}{
		{"counts against a width", rackOptions{width: 42 * unit.Inch, height: 42 * unit.Inch, columns: 20}},
		{"counts against both", rackOptions{width: 12 * unit.Inch, height: 12 * unit.Inch, columns: 4, rows: 9}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				r := newTestRack(c.o)
				_, conflict, err := r.Solve()
				if err != nil || conflict == nil {
					b.Fatal(err, conflict)
				}
			}
		})
	}
}

func BenchmarkOneMore(b *testing.B) {
	r := newTestRack(rackOptions{width: 42 * unit.Inch, height: 42 * unit.Inch})
	s, _, err := r.Solve()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := r.OneMore(r.columns, s); err != nil {
			b.Fatal(err)
		}
	}
}
