package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
)

// The detail of each ladder's sheet has two nails on one diagonal and, on an inner
// ladder with level rows, the two of the other face on the other.
func TestDetailShowsBothDiagonals(t *testing.T) {
	for _, units := range []string{"in", "mm"} {
		r := racktest.Build(t, "units = \""+units+"\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 3\nrows = 4\n")
		for _, s := range packet(t, r) {
			if !strings.Contains(s.Name, "-ladder-") {
				continue
			}
			var through []drawing.Point
			var nails []drawing.Point
			for _, m := range s.Marks {
				switch x := m.(type) {
				case drawing.Circle:
					if x.Class == drawing.Hidden {
						through = append(through, x.Centre)
					}
				case drawing.Path: // the level stroke of a cross
					b := x.Bounds()
					if x.Class == drawing.Visible && len(x.Segs) == 1 && b.H() < 2 && b.W() > 3*drawing.MM && b.W() < 45*drawing.MM/10 {
						nails = append(nails, b.Centre())
					}
				}
			}
			inner := r.Shapes[1].Role == rack.Inner && strings.Contains(s.Name, "ladder-2")
			if want := map[bool]int{true: 2, false: 0}[inner]; len(through) != want || len(nails) != 2 {
				t.Fatalf("%s, %s: %d nails and %d of the other face, want 2 and %d", units, s.Name, len(nails), len(through), want)
			}
			if nails[0].X == nails[1].X || nails[0].Y == nails[1].Y {
				t.Errorf("%s, %s: nails %v stand in a row", units, s.Name, nails)
			}
			for _, q := range through {
				if slices.Contains(nails, q) || !slices.ContainsFunc(nails, func(n drawing.Point) bool { return n.X == q.X }) ||
					!slices.ContainsFunc(nails, func(n drawing.Point) bool { return n.Y == q.Y }) {
					t.Errorf("%s, %s: a nail of the other face at %v is not on the other diagonal of %v", units, s.Name, q, nails)
				}
			}
		}
	}
}
