package sheet_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
)

// The figures on the sheets of fitting the top are those of the blocks: each of
// them once, and no other.
func TestTopSheetsShowTheBlocks(t *testing.T) {
	racks := demos(t)
	racks["deep legs"] = racktest.Build(t, "units = \"mm\"\n[rack]\ncolumns = 6\nrows = 3\n[leg]\nwidth = 60\n")
	racks["narrow legs"] = racktest.Build(t, "[rack]\ncolumns = 3\nrows = 3\n[leg]\nwidth = 1\n")
	for name, r := range racks {
		top, ok := fixing.Of(r)
		if !ok || top.Glued {
			continue
		}
		wall, quarter := (top.Block.Y-top.Slot)/2, top.Block.X/4
		want := []length{
			top.Up.Into, top.Block.Z, top.Block.Z / 2, // down: beside the block, and to the apron's screws
			top.Place, wall, top.Slot, wall, top.Block.Y, // front to back, in section
			quarter, top.Block.X - 2*quarter, quarter, top.SlotWide, top.Block.X, top.Through.Into, wall, top.Slot, wall, // from above
		}
		want = append(want, top.Middles...)
		// The piece for the blocks: across it the slot's first and last hole, and
		// along it, from its end, two blocks with a saw cut between them.
		hole := wall + top.SlotWide/2
		want = append(want, hole, top.Slot-top.SlotWide, hole)
		for i := range length(min(2, len(top.Middles))) {
			from := i * (top.Block.X + r.Design.Shop.Kerf)
			want = append(want, from+quarter, from+2*quarter, from+3*quarter, from+top.Block.X)
		}
		var got []length
		for _, s := range packet(t, r) {
			if !strings.Contains(s.Name, "-top") {
				continue
			}
			for _, d := range s.Dims {
				got = append(got, d.Value)
			}
			for _, f := range drawing.Legible(s) {
				t.Errorf("%s: %v", name, f)
			}
		}
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s: figures %v; want %v", name, got, want)
		}
	}
}

// A sheet that a step sends the reader to is there, and of that kind.
func TestStepsNameSheetsByTheirNumbers(t *testing.T) {
	for name, r := range demos(t) {
		sheets := packet(t, r)
		text := lettered(sheets, "work")
		run := func(word string) (first, last int) { // counted from 1
			of := func(s *drawing.Sheet) bool { return strings.Contains(s.Name, "-"+word) }
			first = slices.IndexFunc(sheets, of) + 1
			for last = first; last < len(sheets) && of(sheets[last]); last++ {
			}
			return first, last
		}
		ref := func(first, last int) string {
			if first == last {
				return fmt.Sprintf("sheet%d", first)
			}
			return fmt.Sprintf("sheets%d–%d", first, last)
		}
		clamps, lastClamps := run("clamps")
		figures := clamps + 1
		if !strings.Contains(lettered(sheets[clamps:clamps+1], ""), "clampsfor") {
			figures++ // the sheet of the top's clamps is between
		}
		inspect, lastInspect := run("inspection")
		for _, want := range []string{
			"clampsonit(" + ref(clamps, clamps) + ";howmany:" + ref(figures, lastClamps) + ")",
			"Inspect(" + ref(inspect, lastInspect) + ")",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the steps do not say %q", name, want)
			}
		}
		for _, word := range []string{"clamps", "top", "parts", "inspection", "bare", "jig", "ladder", "carcase", "gauges"} {
			if strings.Contains(text, word+"sheets") {
				t.Errorf("%s: the steps send to %s sheets without a number", name, word)
			}
		}
	}
}

// The sheet with the blocks' places says how the top's left end lies to the
// apron's, from which the places count.
func TestTopsEndIsToldBesideTheAprons(t *testing.T) {
	for text, want := range map[string]string{
		"[overhang]\nside = 0\n": "flush with it: the same figures hold", "units = \"mm\"\n[overhang]\nside = 15\n": "15 mm further left: from there every figure is 15 mm more",
	} {
		r := racktest.Build(t, text+"[rack]\ncolumns = 4\nrows = 4\n")
		if got := lettered(packet(t, r), "top"); !strings.Contains(got, strings.ReplaceAll(want, " ", "")) {
			t.Errorf("%q: no %q in %s", text, want, got)
		}
	}
}
