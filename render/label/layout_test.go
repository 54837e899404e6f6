package label

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// racks are of many sorts: with long and short figures, off the grid, of many
// ladders, with lengths still to be measured, without an order, in bundles.
var racks = []string{
	"order = \"R-014\"\ntitle = \"Kitchen rack\"\n[rack]\ncolumns = 4\nrows = 5\n",
	"[rack]\ncolumns = 2\nrows = 3\n[top]\npresent = false\n",
	"order = \"R-014, second half of the long wall\"\n[rack]\ncolumns = 120\nrows = 20\n[measured]\nslat.thickness = \"later\"\n",
	"order = \"An order number that nobody would write but somebody will, 2031/04\"\nunits = \"mm\"\n[rack]\ncolumns = 3\nrows = 4\n[leg]\nthickness = \"3/4 in\"\n",
	"title = \"A title that goes on and on, as long as the wall that it is for\"\n[rack]\ncolumns = 5\nrows = 4\n[leg]\nthickness = \"19.3 mm\"\nwidth = \"44.7 mm\"\n[slat]\nthickness = \"18.9 mm\"\nheight = \"24.3 mm\"\nlength = \"241.7 mm\"\n[measured]\nleg.thickness = \"later\"\nslat.thickness = \"later\"\n",
}

func built(t testing.TB) []*rack.Rack {
	var out []*rack.Rack
	for _, text := range racks {
		out = append(out, racktest.Build(t, text))
	}
	return out
}

// on returns the labels of a rack on sheets of a grid, from a label on.
func on(r *rack.Rack, g table.LabelGrid, first int) ([]*drawing.Sheet, error) {
	d := *r.Design
	d.Labels = design.Labels{Grid: g, First: first}
	copied := *r
	copied.Design = &d
	return Sheets(&copied, "3f9a77c1")
}

// fataler is what testing and rapid have in common.
type fataler interface {
	Errorf(format string, args ...any)
}

// wantLegible wants labels that can be read, each text in the room of one label,
// and nothing of what they say left out but the end of an order or a title.
// Letters that hang below their line have half a millimetre more.
func wantLegible(t fataler, name string, r *rack.Rack, g table.LabelGrid, sheets []*drawing.Sheet) {
	for _, s := range sheets {
		if err := s.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		for _, f := range drawing.Legible(s) {
			t.Errorf("%s: %v", name, f)
		}
		for _, m := range s.Marks {
			text, ok := m.(drawing.Text)
			if !ok {
				continue
			}
			held := false
			for i := range g.Each() {
				held = held || room(g, box(g, i)).Inset(-500).Holds(text.Bounds())
			}
			if !held {
				t.Errorf("%s: %q leaves its label at %v", name, text.String(), text.Bounds())
			}
			start, cut := strings.CutSuffix(text.String(), "...")
			if cut && !strings.HasPrefix(r.Design.Order, start) && !strings.HasPrefix(r.Design.Title, start) {
				t.Errorf("%s: %q is cut off", name, text.String())
			}
		}
	}
}

// On every grid of the table labels keep within the paper and can be read.
func TestEveryGridHoldsItsLettering(t *testing.T) {
	all := built(t)
	for _, g := range table.LabelGrids() {
		for i, r := range all {
			sheets, err := on(r, g, 1)
			if err != nil {
				t.Errorf("%s: %v", g.ID, err)
			}
			wantLegible(t, fmt.Sprintf("%s, rack %d", g.ID, i), r, g, sheets)
		}
	}
}

// Labels of any size that the reader lets pass can be read, in the order of the
// rack from the first free one on; a size that it refuses is refused here too.
func TestAnySizeIsLegibleOrRefused(t *testing.T) {
	all := built(t)
	passed, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		tenths := func(name string, least, most int) unit.Length {
			return unit.Length(rapid.IntRange(least, most).Draw(t, name)) * unit.Millimetre / 10
		}
		near := design.LabelRooms[rapid.IntRange(0, len(design.LabelRooms)-1).Draw(t, "near")]
		g := table.LabelGrid{
			Columns: rapid.IntRange(1, 3).Draw(t, "columns"), Rows: rapid.IntRange(1, 6).Draw(t, "rows"),
			Width: near.Width + tenths("wider", 0, 900), Height: near.Height + tenths("higher", 0, 600),
			Left: tenths("left", 0, 120), Top: tenths("top", 0, 120), AcrossGap: tenths("across", 0, 50), DownGap: tenths("down", 0, 50),
			Cut: rapid.Bool().Draw(t, "cut"),
		}
		w, h := g.Used()
		g.PaperWidth, g.PaperHeight = w+g.Left+tenths("right", 0, 120), h+g.Top+tenths("foot", 0, 120)
		r := all[rapid.IntRange(0, len(all)-1).Draw(t, "rack")]
		first := rapid.IntRange(1, g.Each()).Draw(t, "first")
		sheets, err := on(r, g, first)
		wide, high := g.Room()
		enough := false
		for _, least := range design.LabelRooms {
			enough = enough || wide >= least.Width && high >= least.Height
		}
		if err != nil {
			if refused++; enough {
				t.Errorf("%v, which the reader lets pass", err)
			}
			return
		}
		passed++
		wantLegible(t, "own sheet", r, g, sheets)
	})
	if passed < 20 || refused < 5 {
		t.Errorf("%d sizes passed and %d were refused: too few to tell", passed, refused)
	}
}

// The least rooms that the reader of designs lets pass are enough, and a
// tenth of a millimetre less in height is not.
func TestLeastRooms(t *testing.T) {
	all := built(t)
	for i, least := range design.LabelRooms {
		g := table.LabelGrid{
			PaperWidth: least.Width + 4*unit.Millimetre + 20*unit.Millimetre, PaperHeight: least.Height + 4*unit.Millimetre + 20*unit.Millimetre,
			Columns: 1, Rows: 1, Width: least.Width + 4*unit.Millimetre, Height: least.Height + 4*unit.Millimetre,
			Left: 10 * unit.Millimetre, Top: 10 * unit.Millimetre,
		}
		for k, r := range all {
			sheets, err := on(r, g, 1)
			if err != nil {
				t.Errorf("room %d: %v", i, err)
				continue
			}
			wantLegible(t, fmt.Sprintf("room %d, rack %d", i, k), r, g, sheets)
		}
		if a, _ := layoutOf(t, &design.LabelRooms[i]).set(drawing.Pt(um(least.Width), um(least.Height)-mm/10), widths{}); a.tall() <= um(least.Height)-mm/10 {
			t.Errorf("room %d is higher than its layout needs: %v", i, a.tall())
		}
	}
}

func layoutOf(t *testing.T, room *design.Room) layout {
	t.Helper()
	for _, l := range layouts {
		if l.room == room {
			return l
		}
	}
	t.Fatalf("no layout of room %+v", *room)
	return layout{}
}

// A larger label has larger lettering, what the part is first of all.
func TestLargerLabelsHaveLargerLettering(t *testing.T) {
	r := racktest.Build(t, racks[0])
	var before drawing.Um
	for _, wide := range []unit.Length{60, 90, 160} {
		g := table.LabelGrid{PaperWidth: 200 * unit.Millimetre, PaperHeight: 120 * unit.Millimetre, Columns: 1, Rows: 1,
			Width: wide * unit.Millimetre, Height: wide / 2 * unit.Millimetre, Left: 10 * unit.Millimetre, Top: 10 * unit.Millimetre}
		a, err := arrange(size(g), bundled(inPlace(r, "R-014", "3f9a77c1")))
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range a.rows {
			if row.left != what {
				continue
			}
			if a.high[i] <= before {
				t.Errorf("%d mm: %v high; want more than %v", wide, a.high[i], before)
			}
			before = a.high[i]
			for k := range a.rows {
				if a.high[k] > a.high[i] {
					t.Errorf("%d mm: a row of %v is higher than what the part is", wide, a.rows[k])
				}
			}
		}
	}
}
