package label

import (
	"testing"

	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/specs/design"
)

// Labels keep within the paper and off each other, and their lettering within
// them, clear of what printers do not reach.
func TestLetteringKeepsWithinItsLabel(t *testing.T) {
	for _, g := range grids {
		_, paper, ok := gridFor(g.paper)
		if !ok {
			t.Fatalf("no paper %s", g.paper)
		}
		sheet := drawing.Box(0, 0, um(paper.Width), um(paper.Height))
		for i := range g.each() {
			if !sheet.Holds(g.box(i)) {
				t.Errorf("%s: label %d leaves the paper", g.paper, i)
			}
			for k := range i {
				if g.box(i).Meets(g.box(k)) {
					t.Errorf("%s: labels %d and %d meet", g.paper, i, k)
				}
			}
		}
		d, err := design.Read("test.toml", []byte("order = \"R-014, second half of the long wall\"\n[rack]\ncolumns = 12\nrows = 20\n[paper]\nlabels = \""+g.paper+"\"\n"))
		if err != nil {
			t.Fatal(err)
		}
		r, err := rack.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		sheets, err := Sheets(r, "3F9A-77C1")
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sheets {
			checkLettering(t, g, s)
		}
	}
}

// checkLettering wants each text of a sheet in the room of one label. Letters
// that hang below their line have half a millimetre more.
func checkLettering(t *testing.T, g grid, s *drawing.Sheet) {
	t.Helper()
	for _, m := range s.Marks {
		text, ok := m.(drawing.Text)
		if !ok {
			continue
		}
		held := false
		for i := range g.each() {
			held = held || g.room(g.box(i)).Inset(-500).Holds(text.Bounds())
		}
		if !held {
			t.Errorf("%s: %q leaves its label at %v", s.Name, text.String(), text.Bounds())
		}
	}
}
