package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// Parts that hang on a measured length say so on their sheet, once for each,
// and whether it has been measured; the sheets stay legible.
func TestCutAfterMeasuring(t *testing.T) {
	const rest = ": until then the size drawn here is not the one to cut to."
	const done = ": measured, and the size drawn here follows from it."
	for figure, want := range map[string]string{
		`cell.channel = "later"`:                                rest,
		`cell.channel = "3 23/32"`:                              done,
		"leg.thickness = \"23/32\"\nslat.thickness = \"later\"": rest,
	} {
		r := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n[measured]\n"+figure+"\n")
		sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd"})
		if err != nil {
			t.Fatal(err)
		}
		said := 0
		for _, s := range sheets {
			for _, f := range drawing.Legible(s) {
				t.Errorf("%s: %v", figure, f)
			}
			for _, m := range s.Marks {
				if text, ok := m.(drawing.Text); ok && strings.HasPrefix(text.String(), "Cut after measuring") {
					said++
					if !strings.HasSuffix(text.String(), want) {
						t.Errorf("%s: %q; want it to end with %q", figure, text.String(), want)
					}
				}
			}
		}
		if said != 2 {
			t.Errorf("%s: said of %d parts; want aprons and top", figure, said)
		}
	}
}
