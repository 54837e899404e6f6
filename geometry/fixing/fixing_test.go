package fixing_test

import (
	"fmt"
	"testing"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/space"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// box is the block at x as it stands on the rack.
func box(r *rack.Rack, t fixing.Top, x unit.Length) space.Box {
	top, back := r.Len("leg.length"), r.Len("apron.thickness")+r.Len("slat.length")
	min := space.Point{X: x - t.Block.X/2, Y: back - t.Block.Y, Z: top - t.Block.Z}
	return space.Box{Min: min, Max: min.Add(t.Block)}
}

// Blocks stand clear of every piece and every bottle, against the back upper
// apron and under the top; the screw stays in its slot from the driest wood to
// the moistest, and neither screw comes out.
func TestBlocksHaveRoom(t *testing.T) {
	for _, text := range []string{
		"[rack]\ncolumns = 1\nrows = 2\n", "[rack]\ncolumns = 4\nrows = 5\n", "[rack]\ncolumns = 11\nrows = 3\n",
		"units = \"mm\"\n[rack]\ncolumns = 5\nrows = 4\n", "[apron]\nthickness = \"1/2\"\n[rack]\ncolumns = 3\nrows = 2\n",
		"[rack]\ncolumns = 3\nrows = 2\n[wood]\nspecies = \"american_beech\"\nhumidity = \"20 .. 80 %\"\nmoisture = 7\n",
		"[[column]]\ncount = 2\nrows = 3\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 3\nrows = 4\n",
	} {
		r := racktest.Build(t, text)
		top, ok := fixing.Of(r)
		if !ok || top.Glued || top.Nails != 0 || len(top.Middles) == 0 {
			t.Fatalf("%s%+v", text, top)
		}
		for i, x := range top.Middles {
			b := box(r, top, x)
			for _, p := range r.Pieces {
				if !b.Meet(p.Box).Empty() {
					t.Errorf("%sblock %d stands in %s", text, i+1, p.Name)
				}
			}
			for _, l := range r.Bottles {
				if !b.Meet(l.Body.Bounds()).Empty() {
					t.Errorf("%sblock %d stands in a bottle", text, i+1)
				}
			}
			if i > 0 && x-top.Middles[i-1] > max(12*unit.Inch, 2*r.Kinds[0].Pitch) {
				t.Errorf("%sblocks %v apart", text, x-top.Middles[i-1])
			}
		}
		half := table.Value("move.screw") / 2
		if front, back := top.Place.MM()-top.Ahead-half, top.Slot.MM()-top.Place.MM()-top.Back-half; front < 0 || back < 0 {
			t.Errorf("%sthe screw runs against its slot: %.2f and %.2f mm left", text, front, back)
		}
		if wall := (top.Block.Y - top.Slot) / 2; wall < 9*unit.Millimetre {
			t.Errorf("%s%v of wood at the slot's ends", text, wall)
		}
		if top.Up.Into >= r.Len("top.thickness") || top.Up.Length != top.Block.Z+fixing.WasherOf(r).Thick+top.Up.Into || top.Through.Into <= 0 || top.Through.Into >= top.Block.Y {
			t.Errorf("%sscrews %+v", text, top)
		}
	}
}

// By hand: pine of 4 columns in inches. A block of 2 x 1 1/2 in, 3/4 high as the
// legs; 1/16 in of washer and 3/4 in of top less 1/8 in leave 1 7/16 in, and screws
// are sold at 1 1/4, of which 7/16 in is in the top.
func TestBlockByHand(t *testing.T) {
	got, _ := fixing.Of(racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n"))
	in := func(l unit.Length) string { return unit.Format{System: unit.Imperial}.Text(l) }
	says := fmt.Sprint(in(got.Block.X), " ", in(got.Block.Y), " ", in(got.Block.Z), " ", in(got.SlotWide), " ", in(got.Up.Length), " ", in(got.Up.Into), " ", in(got.Through.Length), " ", in(got.Through.Into))
	if want := "2 1 1/2 3/4 3/16 1 1/4 7/16 1 1/2 3/4"; says != want || !got.FromLegs {
		t.Errorf("%s; want %s", says, want)
	}
}

// A block has the legs' section, but not where that leaves too little wood round
// the slot, or is higher than the apron that it hangs on.
func TestBlocksAreCutFromLegsWhereTheyCan(t *testing.T) {
	for _, c := range []struct {
		text string
		want bool
	}{
		{"", true}, {"[leg]\nwidth = 2\n", true}, {"[leg]\nwidth = 1\n", false}, {"[leg]\nthickness = 3\n", false},
	} {
		r := racktest.Build(t, "[rack]\ncolumns = 3\nrows = 4\n"+c.text)
		got, _ := fixing.Of(r)
		asLegs := got.Block.Y == r.Len("leg.width") && got.Block.Z == r.Len("leg.thickness")
		if got.FromLegs != c.want || got.FromLegs && !asLegs {
			t.Errorf("%q: from legs %v, block %v; want %v", c.text, got.FromLegs, got.Block, c.want)
		}
	}
}

// Places a foot or less apart where there are such, alike from both ends.
func TestSpread(t *testing.T) {
	for _, c := range []struct {
		places int
		step   unit.Length
		want   string
	}{
		{1, unit.Inch, "[0]"}, {2, 20 * unit.Inch, "[0 1]"}, {4, 4 * unit.Inch, "[0 3]"}, {4, 5 * unit.Inch, "[0 1 2 3]"}, {5, 5 * unit.Inch, "[0 2 4]"},
		{6, 5 * unit.Inch, "[0 2 3 5]"}, {6, 7 * unit.Inch, "[0 1 2 3 4 5]"}, {7, 4 * unit.Inch, "[0 3 6]"}, {3, 20 * unit.Inch, "[0 1 2]"},
	} {
		var at []unit.Length
		for i := range c.places {
			at = append(at, unit.Length(i)*c.step)
		}
		if got := fmt.Sprint(fixing.Spread(at)); got != c.want {
			t.Errorf("%d places %v apart: %s; want %s", c.places, c.step, got, c.want)
		}
	}
}

// By hand: 4.3656 mm is 11/64 in, 2.381 mm is 3/32 in.
func TestBits(t *testing.T) {
	for _, c := range []struct {
		text         string
		clear, pilot unit.Length
		washer       fixing.Washer
	}{
		{"", 11 * unit.Inch / 64, 3 * unit.Inch / 32, fixing.Washer{Wide: 7 * unit.Inch / 16, Thick: unit.Inch / 16}},
		{"units = \"mm\"\n[wood]\nspecies = \"american_beech\"\n", 9 * unit.Millimetre / 2, 3 * unit.Millimetre, fixing.Washer{Wide: 10 * unit.Millimetre, Thick: unit.Millimetre}},
	} {
		r := racktest.Build(t, c.text+"[rack]\ncolumns = 2\nrows = 2\n")
		if b, w := fixing.BitsOf(r), fixing.WasherOf(r); b.Clear != c.clear || b.Pilot != c.pilot || w != c.washer {
			t.Errorf("%q: %+v, %+v", c.text, b, w)
		}
	}
}

func TestNails(t *testing.T) {
	for _, c := range []struct {
		joint string
		rows  int
	}{{"", 0}, {"top_nail = \"18 ga x 1 1/2\"\n", 1}, {"top = \"glued\"\ntop_nail = \"18 ga x 1 1/2\"\n", 2}, {"top = \"glued\"\n", 0}} {
		r := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n[joint]\n"+c.joint)
		got, _ := fixing.Of(r)
		if got.Rows != c.rows || (got.Nails > 0) != (c.rows > 0) {
			t.Errorf("%q: %+v", c.joint, got)
		}
		if each := got.Nails / max(c.rows, 1); c.rows > 0 && unit.Length(each-1)*6*unit.Inch < r.Len("carcase.width") {
			t.Errorf("%q: %d nails", c.joint, got.Nails)
		}
		if got.Glued != (len(got.Middles) == 0) {
			t.Errorf("%q: %+v", c.joint, got)
		}
	}
	if _, ok := fixing.Of(racktest.Build(t, "[rack]\ncolumns = 2\nrows = 2\n[top]\npresent = false\n")); ok {
		t.Error("no top, and it is fixed")
	}
	// 0.0475 in x 0.75 = 0.0356 in, 0.905 mm.
	if got := fixing.Bore(racktest.Build(t, "[rack]\ncolumns = 2\nrows = 2\n"), 18); got != unit.Inch/32 {
		t.Errorf("bit for 18 ga: %v", got)
	}
	if got := fixing.Bore(racktest.Build(t, "units = \"mm\"\n[rack]\ncolumns = 2\nrows = 2\n"), 18); got != 9*unit.Millimetre/10 {
		t.Errorf("bit for 18 ga: %v", got)
	}
}
