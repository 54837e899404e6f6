package assembly_test

import (
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/finish"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/specs/unit"
)

// A turned ladder lies level: packers meet neither each other nor the slats of the
// first face, stay under the legs, and with those slats bear every slat of the
// second face at least in part.
func TestPackersBearEverySlat(t *testing.T) {
	for _, text := range []string{
		"[rack]\ncolumns = 4\nrows = 5\n",
		"[rack]\ncolumns = 3\nrows = 4\n[slat]\nfirst = \"1/2\"\n",
		"[rack]\nrows = 4\n[[column]]\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 3\nfit = [\"claret-750\"]\n",
		"units = \"mm\"\n[rack]\nrows = 3\n[[column]]\nfit = [\"sparkling-750\"]\n[[column]]\ncount = 2\nfit = [\"claret-750\"]\n[[column]]\nfit = [\"half-375\"]\n",
	} {
		r := racktest.Build(t, text)
		wide := r.Len("slat.height")
		for i, s := range r.Shapes {
			places := assembly.PackerPlaces(r, i)
			if s.Role != rack.Inner {
				if len(places) > 0 {
					t.Errorf("%q: packers under a ladder that is not turned", text)
				}
				continue
			}
			meets := func(a, b unit.Length) bool { return (a - b).Abs() < wide }
			for k, z := range places {
				if z < 0 || z+wide > r.Len("leg.length") {
					t.Errorf("%q, shape %d: packer at %v is not under the legs", text, i, z.MM())
				}
				for _, l := range s.Left {
					if meets(z, l) {
						t.Errorf("%q, shape %d: packer at %v meets the slat at %v", text, i, z.MM(), l.MM())
					}
				}
				if k > 0 && meets(z, places[k-1]) {
					t.Errorf("%q, shape %d: packers meet at %v", text, i, z.MM())
				}
			}
			for _, z := range s.Right {
				borne := false
				for _, l := range append(append([]unit.Length(nil), s.Left...), places...) {
					borne = borne || meets(z, l)
				}
				if !borne {
					t.Errorf("%q, shape %d: nothing bears the slat at %v", text, i, z.MM())
				}
			}
		}
	}
}

// The step names the places of packers that the design has, and no other.
func TestStepNamesThePackersPlaces(t *testing.T) {
	for _, c := range []struct{ text, has, not string }{
		{"[rack]\ncolumns = 4\nrows = 5\n", "at the foot and at the top (", "none below it"},
		{"[rack]\nrows = 4\n[[column]]\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 3\nfit = [\"claret-750\"]\n", "at the foot, at the top and wherever a slat comes that has none below it (", "foot and"},
	} {
		all := ""
		for _, s := range assembly.Steps(racktest.Build(t, c.text), finish.Panel{}, nil) {
			all += s.Text + "\n"
		}
		if !strings.Contains(all, c.has) || strings.Contains(all, c.not) {
			t.Errorf("%q: no %q, or %q, in\n%s", c.text, c.has, c.not, all)
		}
	}
}
