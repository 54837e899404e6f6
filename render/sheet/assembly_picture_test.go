package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/render/drawing"
)

// The diagonals of ladder and carcase are lettered under the pictures of the clamps:
// once their figures stood on a white patch that hid the slat behind it.
func TestDiagonalsOfClampsHideNothing(t *testing.T) {
	for name, r := range demos(t) {
		found := 0
		for _, s := range packet(t, r) {
			if !strings.HasSuffix(s.Name, "-clamps") {
				continue
			}
			found++
			for _, m := range s.Marks {
				if p, ok := m.(drawing.Path); ok && p.Class == drawing.Solid && p.Fill == drawing.White {
					t.Errorf("%s: a white patch at %v", name, p.Bounds())
				}
			}
			for _, d := range assembly.Diagonals(r)[:2] {
				want := "bothdiagonals" + strings.ReplaceAll(d.Text(r.Format.System), " ", "")
				if !strings.Contains(textOf(s), want) {
					t.Errorf("%s: no %q", name, want)
				}
			}
			if r.Design.Joint.Glue && !strings.Contains(textOf(s), "Caul:astraightstiffstick") {
				t.Errorf("%s: nobody says what a caul is", name)
			}
		}
		if found != 1 {
			t.Errorf("%s: %d sheets of clamps", name, found)
		}
	}
}
