package fixing_test

import (
	"fmt"
	"math"
	"testing"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack/racktest"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// For every reading of the meter the screw stands in its slot and stays in it, from
// the driest wood of the year to the moistest. Movement is worked out here apart:
// Wood Handbook (FPL-GTR-282), eq. 13-2, with the tangential coefficient 0.00216 of
// ponderosa pine in its table 13-5, over the way from the middle of the front apron
// to the screws.
func TestScrewPlacesByMoisture(t *testing.T) {
	const ponderosa = 0.00216
	for _, text := range []string{
		"[rack]\ncolumns = 4\nrows = 5\n", "units = \"mm\"\n[rack]\ncolumns = 5\nrows = 4\n",
		"[rack]\ncolumns = 3\nrows = 2\n[wood]\nmoisture = 12\n", "units = \"mm\"\n[rack]\ncolumns = 3\nrows = 2\n[wood]\nhumidity = \"20 .. 80 %\"\nmoisture = 5\n",
	} {
		r := racktest.Build(t, text)
		top, _ := fixing.Of(r)
		reads := top.Readings()
		least, most := top.Reads()
		if reads[0] != least || reads[len(reads)-1] != most {
			t.Errorf("%sreadings %v; want %v to %v", text, reads, least, most)
		}
		free := (r.Len("apron.thickness")/2 + r.Len("slat.length") - top.Block.Y/2).MM()
		half, spare := table.Value("move.screw")/2, 25.4/32 // at either end
		rounded := 25.4 / 64
		if r.Design.Units == unit.Metric {
			rounded = 0.25
		}
		for i, m := range reads {
			at := top.ScrewAt(r, m).MM()
			front, back := at-half-free*ponderosa*(m-least), top.Slot.MM()-at-half-free*ponderosa*(most-m)
			if front < spare-rounded-1e-6 || back < spare-rounded-1e-6 {
				t.Errorf("%sat %.1f %% the screw stands %.2f mm in: %.2f and %.2f mm are left over the year", text, m, at, front, back)
			}
			if i > 0 && at < top.ScrewAt(r, reads[i-1]).MM() {
				t.Errorf("%sat %.1f %% the screw stands further to the front than drier", text, m)
			}
		}
	}
}

// The blocks come off the piece they are bored in one after the other, a saw cut
// between them, each bored as BlockAt and SlotAt have it on the rack.
func TestStrip(t *testing.T) {
	for _, text := range []string{"[rack]\ncolumns = 4\nrows = 5\n", "units = \"mm\"\n[rack]\ncolumns = 9\nrows = 2\n[shop]\nkerf = 2\n"} {
		r := racktest.Build(t, text)
		top, _ := fixing.Of(r)
		s := top.Strip(r)
		if len(s.Blocks) != len(top.Middles) {
			t.Fatalf("%s%d blocks; want %d", text, len(s.Blocks), len(top.Middles))
		}
		for i, b := range s.Blocks {
			if i > 0 && b.From-s.Blocks[i-1].To != r.Design.Shop.Kerf {
				t.Errorf("%sblock %d begins %v behind the one before it", text, i+1, b.From-s.Blocks[i-1].To)
			}
			box := top.BlockAt(r, top.Middles[i])
			slot, _ := top.SlotAt(r, top.Middles[i])
			holes := top.HolesAt(r, top.Middles[i])
			got := fmt.Sprint(b.To-b.From, b.Slot-b.From, b.Holes[0]-b.From, b.Holes[1]-b.From, s.Across[0]-s.Slot/2, s.Across[1]+s.Slot/2)
			want := fmt.Sprint(box.Max.X-box.Min.X, top.Middles[i]-box.Min.X, holes[0].X-box.Min.X, holes[1].X-box.Min.X, box.Max.Y-slot.Max.Y, box.Max.Y-slot.Min.Y)
			if got != want {
				t.Errorf("%sblock %d: %s; want %s", text, i+1, got, want)
			}
		}
		if left := s.Long - s.Blocks[len(s.Blocks)-1].To; math.Abs((left - r.Design.Shop.Kerf - table.Length("saw.crosscut")).MM()) > 0 {
			t.Errorf("%s%v is left to hold", text, left)
		}
	}
}
