package sheet_test

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// explodedOf returns the exploded view of a rack.
func explodedOf(t *testing.T, r *rack.Rack) *drawing.Sheet {
	t.Helper()
	sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd"})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sheets {
		if strings.HasSuffix(s.Name, "exploded") {
			return s
		}
	}
	t.Fatal("no exploded view")
	return nil
}

// straights returns the straight paths of a class as pairs of ends.
func straights(s *drawing.Sheet, c drawing.Class) [][2]drawing.Point {
	var out [][2]drawing.Point
	for _, m := range s.Marks {
		if p, ok := m.(drawing.Path); ok && p.Class == c && len(p.Segs) == 1 {
			out = append(out, [2]drawing.Point{p.Start, p.Segs[0].To})
		}
	}
	return out
}

// offLine returns how far p lies from the stretch l, in micrometres.
func offLine(p drawing.Point, l [2]drawing.Point) float64 {
	dx, dy := float64(l[1].X-l[0].X), float64(l[1].Y-l[0].Y)
	px, py := float64(p.X-l[0].X), float64(p.Y-l[0].Y)
	t := min(max((px*dx+py*dy)/(dx*dx+dy*dy), 0), 1)
	return math.Hypot(px-t*dx, py-t*dy)
}

// crossed counts the lines that cross the leader inside both.
func crossed(leader [2]drawing.Point, lines [][2]drawing.Point) int {
	turn := func(p, q, r drawing.Point) int64 {
		return int64(q.X-p.X)*int64(r.Y-p.Y) - int64(q.Y-p.Y)*int64(r.X-p.X)
	}
	opposite := func(a, b int64) bool { return a < 0 && b > 0 || a > 0 && b < 0 }
	n := 0
	for _, l := range lines {
		if opposite(turn(leader[0], leader[1], l[0]), turn(leader[0], leader[1], l[1])) &&
			opposite(turn(l[0], l[1], leader[0]), turn(l[0], l[1], leader[1])) {
			n++
		}
	}
	return n
}

// Each leader ends on a line that is in sight. An item mark's passes at most one
// other piece on its way, of which no more than three edges are in sight; the words about an inner ladder may
// have to pass the end ladder before it.
func TestLeadersEndInSight(t *testing.T) {
	racks := demos(t)
	racks["a long row"] = racktest.Build(t, "units = \"mm\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 30\nrows = 6\n")
	racks["one column"] = racktest.Build(t, "units = \"in\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 1\nrows = 3\n")
	racks["mixed columns"] = racktest.Build(t, "units = \"mm\"\n[bottles]\nfit = [\"claret-750\", \"burgundy-750\"]\n[[column]]\ncount = 4\nrows = 6\nfit = [\"claret-750\"]\n[[column]]\ncount = 5\nrows = 5\nfit = [\"burgundy-750\"]\n")
	for name, r := range racks {
		s := explodedOf(t, r)
		visible := straights(s, drawing.Visible)
		leaders := straights(s, drawing.Leader)
		if len(leaders) < len(r.Parts) {
			t.Errorf("%s: %d leaders for %d parts", name, len(leaders), len(r.Parts))
		}
		for _, l := range leaders {
			near := math.Inf(1)
			for _, v := range visible {
				near = min(near, offLine(l[0], v))
			}
			if near > 3 {
				t.Errorf("%s: the leader from %v ends %.0f µm from the nearest line", name, l[0], near)
			}
			most := 4
			for _, item := range s.Items {
				if item.Where == l[1] {
					most = 3
				}
			}
			if n := crossed(l, visible); n > most {
				t.Errorf("%s: the leader from %v crosses %d lines", name, l[0], n)
			}
		}
	}
}

// A long row is broken off, says how many ladders are like the one that is
// shown, and keeps whole counts in its list.
func TestLongRowIsBrokenOff(t *testing.T) {
	for _, c := range []struct {
		columns string
		breaks  bool
		words   []string
	}{
		{"6", false, nil},
		{"30", true, []string{"Broken off: 5 of 31 ladders shown; inner ladders 2 to 30, alike", "left end ladder", "right end ladder", "360", "62"}},
	} {
		r := racktest.Build(t, "units = \"mm\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = "+c.columns+"\nrows = 6\n")
		s := explodedOf(t, r)
		torn := 0
		texts := map[string]bool{}
		for _, m := range s.Marks {
			switch m := m.(type) {
			case drawing.Path:
				if m.Class == drawing.Break {
					torn++
				}
			case drawing.Text:
				texts[m.String()] = true
			}
		}
		if (torn > 0) != c.breaks {
			t.Errorf("%s columns: %d break lines", c.columns, torn)
		}
		for _, w := range c.words {
			if !texts[w] {
				t.Errorf("%s columns: the sheet does not say %q", c.columns, w)
			}
		}
		if lines := len(straights(s, drawing.Visible)); lines > 1500 {
			t.Errorf("%s columns: %d lines", c.columns, lines)
		}
	}
}

// Each apron is named by its place, and the end ladders of a whole row by their
// numbers.
func TestApronsAndLaddersAreNamed(t *testing.T) {
	for name, r := range demos(t) {
		s := explodedOf(t, r)
		texts := map[string]int{}
		for _, m := range s.Marks {
			if x, ok := m.(drawing.Text); ok {
				texts[x.String()]++
			}
		}
		want := []string{"front lower apron", "front upper apron", "back lower apron", "back upper apron"}
		if len(straights(s, drawing.Break)) == 0 && !strings.Contains(strings.Join(sortedKeys(texts), " "), "Broken off") {
			want = append(want, "ladder 1", fmt.Sprintf("ladder %d", len(r.Ladders)))
		}
		for _, w := range want {
			if texts[w] != 1 {
				t.Errorf("%s: %q stands %d times", name, w, texts[w])
			}
		}
	}
}

// sortedKeys are the keys of a map in their order.
func sortedKeys(m map[string]int) []string { return slices.Sorted(maps.Keys(m)) }
