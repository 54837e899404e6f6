package cutting_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Cuts ask for care below the sizes of the table of the saw, which people can
// look up, and not at them.
func TestCareBelowTheTable(t *testing.T) {
	size := func(id string) unit.Length {
		return unit.Length(math.Round(table.Value(id) * float64(unit.Millimetre)))
	}
	const hair = unit.Millimetre / 100
	for _, c := range []struct {
		row, operation, says string
		rip                  bool // the size is a width
	}{
		{"saw.push_stick", "rip", "push stick", true}, {"saw.push_block", "rip", "narrow rip", true}, {"saw.narrow", "rip", "thin rip", true},
		{"saw.short", "rip", "short stock", false}, {"saw.crosscut", "crosscut", "short piece", false},
	} {
		for _, off := range []unit.Length{0, -hair} {
			p := cutting.Part{Mark: "A", Name: "slat", Thickness: in, Width: 3 * in, Length: 20 * in, Count: 2}
			if c.rip {
				p.Width = size(c.row) + off
			} else {
				p.Length = size(c.row) + off
			}
			board := cutting.Board{Nominal: "board", Thickness: in, Width: 2*p.Width + in, Length: p.Length, Price: 100}
			if c.operation == "crosscut" {
				board.Width, board.Length = p.Width+in, 2*p.Length+in
			}
			found := false
			for _, s := range mustPlan(t, cutting.Job{Parts: []cutting.Part{p}, Boards: []cutting.Board{board}}).Steps {
				found = found || string(s.Operation) == c.operation && slices.ContainsFunc(s.Cautions, func(s string) bool { return strings.Contains(s, c.says) })
			}
			if want := off < 0 || c.row == "saw.short"; found != want { // a foot or less is short
				t.Errorf("%s, %v off: cautions say %q: %v", c.row, off, c.says, found)
			}
		}
	}
}
