package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// packet composes a rack's sheets.
func packet(t *testing.T, r *rack.Rack) []*drawing.Sheet {
	t.Helper()
	sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd"})
	if err != nil {
		t.Fatal(err)
	}
	return sheets
}

// figuresOf gathers what the running dimensions of the sheets of one ladder say.
func figuresOf(sheets []*drawing.Sheet, ladder string) map[string]int {
	out := map[string]int{}
	for _, s := range sheets {
		if _, name, _ := strings.Cut(s.Name, "-"); !strings.HasPrefix(name, ladder) {
			continue
		}
		for _, d := range s.Dims {
			if d.Role == drawing.Running {
				out[d.Printed]++
			}
		}
	}
	return out
}

// Racks of 200 rows, whose ladders had once no sheet, get one on which the
// underside of every slat is given once a face, and can be read; so do racks of
// 100 columns.
func TestTallAndWideRacks(t *testing.T) {
	for _, c := range []struct {
		columns, rows int
		units, paper  string
	}{
		{1, 200, "in", "letter"}, {1, 200, "mm", "a3"}, {1, 30, "in", "a4"}, {2, 60, "mm", "letter"}, {2, 28, "in", "tabloid"},
		{100, 1, "in", "letter"}, {100, 3, "mm", "a4"},
	} {
		t.Run(fmt.Sprint(c), func(t *testing.T) {
			r := racktest.Build(t, fmt.Sprintf("units = %q\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = %d\nrows = %d\n[paper]\ndrawings = %q\n",
				c.units, c.columns, c.rows, c.paper))
			sheets := packet(t, r)
			for _, s := range sheets {
				for _, f := range drawing.Legible(s) {
					t.Error(f)
				}
			}
			for i, shape := range r.Shapes {
				faces := 0
				for _, under := range [][]length{shape.Left, shape.Right} {
					faces += min(1, len(under))
				}
				got := figuresOf(sheets, fmt.Sprintf("ladder-%d", i+1))
				for _, z := range r.Kinds[0].Under {
					if n := got[r.Format.Text(z)]; n != faces {
						t.Errorf("ladder %s: %s is given %d times, want %d", shape.Name, r.Format.Text(z), n, faces)
					}
				}
			}
		})
	}
}
