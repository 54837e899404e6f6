package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// The carcase sheet of each demo design says where each leg's left face is, from
// one end, which spacers go in without meeting a slat, and where the aprons' nails
// are; and the ground of the diagonal's figure hides no leg.
func TestCarcaseSheet(t *testing.T) {
	for name, r := range demos(t) {
		for _, s := range packet(t, r) {
			if !strings.HasSuffix(s.Name, "-carcase") {
				continue
			}
			got := map[unit.Length]bool{}
			var plate drawing.Rect
			for _, d := range s.Dims {
				if d.Role == drawing.Running {
					got[d.Value] = true
				}
			}
			for _, l := range r.Ladders[1:] {
				if len(got) > 0 && !got[l.X] { // else there is only room for steps, and words
					t.Errorf("%s: no figure to a leg's left face at %s", name, r.Format.Text(l.X))
				}
			}
			for _, m := range s.Marks {
				if p, ok := m.(drawing.Path); ok && p.Class == drawing.Solid && p.Fill == drawing.White && p.Bounds().H() > 10*drawing.MM {
					plate = p.Bounds()
				}
			}
			for _, m := range s.Marks {
				p, ok := m.(drawing.Path)
				if ok && p.Class == drawing.Visible && p.Bounds().W() == 0 && p.Start.X > plate.Min.X && p.Start.X < plate.Max.X {
					t.Errorf("%s: the ground of the diagonal's figure hides a leg", name)
				}
			}
			text := lettered([]*drawing.Sheet{s}, "")
			for _, want := range []string{"Leftfacesofthelegs", "Spacers:", "twotoacolumn", "belowthelowestslats", "partC,sheet"} {
				if !strings.Contains(text, want) {
					t.Errorf("%s: does not say %q", name, want)
				}
			}
		}
	}
}

// Slats that no apron covers are not said to pass behind one.
func TestSlatsBehindAprons(t *testing.T) {
	for _, lift := range []string{"0", "3"} {
		r := racktest.Build(t, "units = \"in\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 2\nrows = 4\n[slat]\nfirst = 8\n[apron]\nlift = "+lift+"\n")
		low, high := r.Len("apron.lift"), r.Len("apron.lift")+r.Len("apron.height")
		under := r.Kinds[0].Under[0]
		want := under < high && under+r.Len("slat.height") > low
		text := lettered(packet(t, r), "ladder-1")
		if got := strings.Contains(text, "behindtheloweraprons"); got != want {
			t.Errorf("lift %s, first slat at %s: said to pass behind the lower aprons: %v, want %v", lift, r.Format.Text(under), got, want)
		}
	}
}
