package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
)

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

// Racks of many kinds of column, of rows described one by one and of lifted
// aprons without a top draw sheets that can be read. A long order of work had
// once left no room for the carcase beside it.
func TestManyKindsOfColumn(t *testing.T) {
	kinds := []string{"claret-750", "burgundy-750", "half-375", "magnum-1500", "sparkling-750", "longneck-355", "hock-750"}
	many := "units = \"in\"\n[bottles]\nfit = [\"claret-750\"]\n[slat]\nlength = 13\n"
	for i := range 14 {
		many += fmt.Sprintf("[[column]]\ncount = %d\nrows = %d\nfit = [%q]\n", 1+i%3, 2+i%5, kinds[i%7])
	}
	rows := "units = \"mm\"\n[bottles]\nfit = [\"claret-750\"]\n[slat]\nlength = 330\n[paper]\ndrawings = \"a4\"\n[[column]]\ncount = 2\nrows = 12\n"
	for i := range 8 {
		rows += fmt.Sprintf("[[column.row]]\nfit = [%q]\n", kinds[i%7])
	}
	rows += "[[column]]\ncount = 30\nrows = 11\n"
	lifted := "units = \"in\"\n[bottles]\nfit = [\"claret-750\", \"magnum-1500\"]\n[rack]\ncolumns = 2\nrows = 2\n[apron]\nlift = 3\n" +
		"[slat]\nlength = 13\neased = \"1/8\"\n[top]\npresent = false\n[paper]\ndrawings = \"tabloid\"\n"
	// A level tail once ran into the figure of the rises, which stands beyond its end.
	wide := "units = \"in\"\n[bottles]\nfit = [\"magnum-1500\"]\n[slat]\nlength = 13\n[rack]\ncolumns = 20\nrows = 3\n"
	for name, text := range map[string]string{"many kinds": many, "rows described": rows, "lifted, no top": lifted, "wide and low": wide} {
		t.Run(name, func(t *testing.T) {
			for _, s := range packet(t, racktest.Build(t, text)) {
				for _, f := range drawing.Legible(s) {
					t.Error(f)
				}
			}
		})
	}
}
