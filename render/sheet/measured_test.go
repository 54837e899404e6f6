package sheet_test

import (
	"fmt"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// Parts that hang on a measured length say so on their sheet, once for each:
// what is still to be measured, or that all has been; the sheets stay legible.
func TestCutAfterMeasuring(t *testing.T) {
	const rest = "Cut after measuring %s: until then the size drawn here is not the one to cut to."
	const done = "Follows from what was measured of %s: cut to this size."
	for figure, want := range map[string]string{
		`cell.channel = "later"`:                                fmt.Sprintf(rest, "cell.channel"),
		`cell.channel = "3 23/32"`:                              fmt.Sprintf(done, "cell.channel"),
		"leg.thickness = \"23/32\"\nslat.thickness = \"later\"": fmt.Sprintf(rest, "slat.thickness"),
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
				if text, ok := m.(drawing.Text); ok && text.String() == want {
					said++
				}
			}
		}
		if said != 2 {
			t.Errorf("%s: said of %d parts; want aprons and top", figure, said)
		}
	}
}
