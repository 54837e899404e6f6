package sheet_test

import (
	"fmt"
	"slices"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
)

// strokes are the lines of some classes of a sheet's ladder, between the words at
// its foot and its top, each with its lesser end first, sorted. With mirror set they are turned over top to bottom about the
// middle of what the visible lines span.
func strokes(s *drawing.Sheet, mirror bool, classes ...drawing.Class) []([2]drawing.Point) {
	var out []([2]drawing.Point)
	var lo, hi drawing.Um
	right, below := s.W, s.H
	for _, m := range s.Marks {
		if x, ok := m.(drawing.Text); ok && x.String() == "TOP" && right == s.W {
			right = x.At.X
		}
		if x, ok := m.(drawing.Text); ok && x.String() == "FOOT" {
			below = x.At.Y
		}
	}
	for _, m := range s.Marks {
		p, ok := m.(drawing.Path)
		if !ok || p.Bounds().Max.X > right || p.Bounds().Min.Y > below || len(p.Segs) != 1 || p.Segs[0].Curve {
			continue
		}
		if p.Class == drawing.Visible {
			b := p.Bounds()
			if lo == hi {
				lo, hi = b.Min.Y, b.Max.Y
			}
			lo, hi = min(lo, b.Min.Y), max(hi, b.Max.Y)
		}
		if slices.Contains(classes, p.Class) {
			out = append(out, [2]drawing.Point{p.Start, p.Segs[0].To})
		}
	}
	less := func(a, b drawing.Point) int {
		if a.X != b.X {
			return int(a.X - b.X)
		}
		return int(a.Y - b.Y)
	}
	for i := range out {
		if mirror {
			for k := range out[i] {
				out[i][k].Y = lo + hi - out[i][k].Y
			}
		}
		if less(out[i][0], out[i][1]) > 0 {
			out[i][0], out[i][1] = out[i][1], out[i][0]
		}
	}
	slices.SortFunc(out, func(a, b [2]drawing.Point) int {
		if d := less(a[0], b[0]); d != 0 {
			return d
		}
		return less(a[1], b[1])
	})
	return out
}

// alike reports whether two lists of lines are equal to two micrometres, which
// rounding on paper may move.
func alike(a, b []([2]drawing.Point)) bool {
	near := func(p, q drawing.Point) bool { return max((p.X-q.X).Abs(), (p.Y-q.Y).Abs()) <= 2 }
	left := slices.Clone(b)
	for _, x := range a {
		i := slices.IndexFunc(left, func(y [2]drawing.Point) bool { return near(x[0], y[0]) && near(x[1], y[1]) })
		if i < 0 {
			return false
		}
		left = slices.Delete(left, i, i+1)
	}
	return len(left) == 0
}

// titled returns the sheet of a title.
func titled(t *testing.T, sheets []*drawing.Sheet, title string) *drawing.Sheet {
	t.Helper()
	i := slices.IndexFunc(sheets, func(s *drawing.Sheet) bool { return s.Title == title })
	if i < 0 {
		t.Fatalf("no sheet %q", title)
	}
	return sheets[i]
}

// frontUp reports whether FRONT stands over BACK on a ladder's sheet.
func frontUp(t *testing.T, s *drawing.Sheet) bool {
	t.Helper()
	at := map[string]drawing.Um{}
	for _, m := range s.Marks {
		if x, ok := m.(drawing.Text); ok {
			at[x.String()] = x.At.Y
		}
	}
	if at["FRONT"] == at["BACK"] {
		t.Fatalf("%s: FRONT and BACK stand at one height, or nowhere", s.Name)
	}
	return at["FRONT"] < at["BACK"]
}

// mirrored reports what is wrong where m should be s turned over: its edges are,
// and FRONT changes places with BACK. Nails are not turned over: seen from the
// face they go in by, they stand on one diagonal on every ladder, so that those
// of two faces keep apart.
func mirrored(t *testing.T, s, m *drawing.Sheet) {
	t.Helper()
	if x := strokes(s, true, drawing.Visible); len(x) == 0 || !alike(x, strokes(m, false, drawing.Visible)) {
		t.Errorf("the edges of %s are not those of %s turned over", m.Name, s.Name)
	}
	if frontUp(t, s) == frontUp(t, m) {
		t.Errorf("FRONT stands at the same side on %s and %s", s.Name, m.Name)
	}
	if x := strokes(s, false, drawing.Thin); len(x) == 0 || !alike(x, strokes(m, false, drawing.Thin)) {
		t.Errorf("the nails of %s and %s do not stand on one diagonal", m.Name, s.Name)
	}
}

// The right end ladder's sheet is the left one's turned over.
func TestEndLaddersAreMirrored(t *testing.T) {
	for _, r := range demos(t) {
		if len(r.Kinds) > 1 {
			continue // its ends carry other slats
		}
		sheets := packet(t, r)
		mirrored(t, titled(t, sheets, "Ladder 1"), titled(t, sheets, fmt.Sprint("Ladder ", len(r.Ladders))))
	}
}

// A design with its columns in the other order has the same ladders, left for
// right.
func TestMirroredDesign(t *testing.T) {
	head := "units = \"in\"\n[slat]\nlength = 11\n"
	one := "[[column]]\ncount = 1\nrows = 3\nfit = [\"magnum-1500\"]\n"
	two := "[[column]]\ncount = 2\nrows = 4\nfit = [\"claret-750\"]\n"
	a, b := packet(t, racktest.Build(t, head+one+two)), packet(t, racktest.Build(t, head+two+one))
	mirrored(t, titled(t, a, "Ladder 1"), titled(t, b, "Ladder 4"))
	mirrored(t, titled(t, a, "Ladder 4"), titled(t, b, "Ladder 1"))
}
