package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
)

// No sheet of the order of work or of the shop aids holds notes alone.
func TestNoSheetOfNotesAlone(t *testing.T) {
	for _, text := range []string{
		"[rack]\ncolumns = 4\nrows = 5\n",
		"[[column]]\ncount = 1\nrows = 3\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 3\nrows = 4\n",
		"[rack]\ncolumns = 3\nrows = 12\n[joint]\nglue = false\ntop = \"glued\"\n[finish]\ncoat = \"none\"\n",
	} {
		for _, s := range packet(t, racktest.Build(t, text)) {
			all := lettered([]*drawing.Sheet{s}, "")
			switch {
			case strings.Contains(s.Name, "-hardware"):
				if !strings.Contains(all, "Tohaveathand") && !strings.Contains(all, "Tools") && !strings.Contains(all, "Madeintheshop") {
					t.Errorf("%q: %s has no table", text, s.Name)
				}
			case strings.Contains(s.Name, "-work") && !strings.Contains(all, "afterstep"):
				t.Errorf("%q: %s has no step", text, s.Name)
			}
		}
	}
}
