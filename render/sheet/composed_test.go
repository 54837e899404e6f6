package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
)

// A column of one row was once called its highest row on a sheet named after
// the lowest, and had "one every row alone".
func TestOneRowHasOneSection(t *testing.T) {
	for _, design := range []string{
		"[rack]\ncolumns = 1\nrows = 1\n[top]\npresent = false\n",
		"units = \"mm\"\n[rack]\ncolumns = 3\nrows = 1\n",
	} {
		n := 0
		for _, s := range packet(t, racktest.Build(t, design)) {
			text := lettered([]*drawing.Sheet{s}, "")
			if strings.Contains(s.Name, "section") {
				n++
			}
			for _, bad := range []string{"rowalone", "Highestrow", "lowestrow", "1slats", "1columns"} {
				if strings.Contains(text, bad) {
					t.Errorf("%s\n%s says %q", design, s.Name, bad)
				}
			}
		}
		if n != 1 {
			t.Errorf("%s\n%d sections; want 1", design, n)
		}
	}
}

// Elevations stand in the middle of their sheets, within a micrometre or two,
// and every view's title stands under it, no further than a centimetre from the
// lowest mark of its view.
func TestViewsStandAmidTheirSheets(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n")
	for _, s := range packet(t, r) {
		if !strings.Contains(s.Name, "front") && !strings.Contains(s.Name, "side") && !strings.Contains(s.Name, "plan") {
			continue
		}
		var all, view drawing.Rect
		title := -1
		for i, m := range s.Marks {
			if text, ok := m.(drawing.Text); ok && strings.Contains(text.String(), "scale 1:") {
				title = i
				break
			}
			view = joined(view, m.Bounds(), i)
		}
		if title < 0 {
			t.Errorf("%s has no view's title", s.Name)
			continue
		}
		under := s.Marks[title].Bounds()
		if gap := under.Min.Y - view.Max.Y; gap < 0 || gap > 10*drawing.MM {
			t.Errorf("%s: the title stands %v under its view", s.Name, gap)
		}
		all = joined(view, under, 1)
		for _, m := range s.Marks[title+1:] { // what the figures are, line by line
			text, ok := m.(drawing.Text)
			if !ok || text.Class != drawing.HeadingText {
				break
			}
			all = joined(all, text.Bounds(), 1)
		}
		area := s.Frame
		area.Max.Y -= 26 * drawing.MM // the title block
		if s.W < s.H {
			area.Max.Y -= 4 * drawing.MM // the note over it
		}
		for _, m := range s.Marks[title:] {
			if text, ok := m.(drawing.Text); ok && text.Bounds().Max.Y < area.Max.Y {
				all = joined(all, text.Bounds(), 1) // lines under the title
			}
		}
		if off := all.Centre().Sub(area.Centre()); off.X.Abs() > 2 || off.Y.Abs() > 2 {
			t.Errorf("%s: the view stands %v off the middle", s.Name, off)
		}
	}
}

// joined is the box round two, or the second where the first is not yet one.
func joined(a, b drawing.Rect, before int) drawing.Rect {
	if before == 0 {
		return b
	}
	a.Min = drawing.Pt(min(a.Min.X, b.Min.X), min(a.Min.Y, b.Min.Y))
	a.Max = drawing.Pt(max(a.Max.X, b.Max.X), max(a.Max.Y, b.Max.Y))
	return a
}

// Tall ladders were once drawn at the smallest scale that leaves figures room,
// on sheets that hold them half as large again.
func TestTallLaddersAreDrawnLarge(t *testing.T) {
	n := 0
	for _, s := range packet(t, racktest.Build(t, "[rack]\ncolumns = 2\nrows = 30\n")) {
		if !strings.Contains(s.Name, "ladder-1") {
			continue
		}
		n++
		if text := lettered([]*drawing.Sheet{s}, ""); !strings.Contains(text, "scale1:8") {
			t.Errorf("%s is not at 1:8", s.Name)
		}
	}
	if n != 2 {
		t.Errorf("%d sheets of the left ladder; want 2", n)
	}
}
