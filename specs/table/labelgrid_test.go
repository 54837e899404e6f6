package table_test

import (
	"testing"

	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Each grid lies on its paper, exactly, no label on another, and margins left
// and right, above and below differ by no more than a thirty-second.
func TestLabelGridsFitTheirPaper(t *testing.T) {
	grids := table.LabelGrids()
	if len(grids) < 10 {
		t.Fatalf("%d grids of labels; want 10 or more", len(grids))
	}
	for _, g := range grids {
		if p, ok := table.FindPaper(g.Paper); !ok || g.PaperWidth != p.Width || g.PaperHeight != p.Height {
			t.Errorf("%s is on paper of %v x %v; want %q", g.ID, g.PaperWidth, g.PaperHeight, g.Paper)
		}
		type span struct{ left, right, top, foot unit.Length }
		var all []span
		for i := range g.Each() {
			x, y := g.Corner(i)
			all = append(all, span{x, x + g.Width, y, y + g.Height})
		}
		for i, a := range all {
			if a.left < 0 || a.right > g.PaperWidth || a.top < 0 || a.foot > g.PaperHeight {
				t.Errorf("%s: label %d runs off the paper: %+v", g.ID, i+1, a)
			}
			for k, b := range all[:i] {
				if a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot {
					t.Errorf("%s: labels %d and %d overlap", g.ID, k+1, i+1)
				}
			}
		}
		last := all[len(all)-1]
		for _, d := range []unit.Length{g.PaperWidth - last.right - g.Left, g.PaperHeight - last.foot - g.Top} {
			if d.Abs() > in/32 {
				t.Errorf("%s is off the middle by %s mm", g.ID, d.Decimal())
			}
		}
		if w, h := g.Used(); last.right != g.Left+w || last.foot != g.Top+h {
			t.Errorf("%s: used %v x %v; the last label ends at %v, %v", g.ID, w, h, last.right, last.foot)
		}
		if g.Cut && min(g.Left, g.Top, g.PaperWidth-last.right, g.PaperHeight-last.foot) < table.EdgeKeep {
			t.Errorf("%s is cut apart and has lines where printers do not reach", g.ID)
		}
	}
	for _, paper := range []string{"letter", "a4"} {
		if g, ok := table.PlainLabels(paper); !ok || !g.Cut || g.Paper != paper {
			t.Errorf("PlainLabels(%q) = %+v, %v", paper, g, ok)
		}
	}
}

func TestLabelGridSizes(t *testing.T) {
	for _, c := range []struct {
		id              string
		each            int
		width, height   unit.Length
		lastX, lastY    unit.Length
		roomWide, roomH unit.Length
	}{
		// Worked by hand: margin, plus labels and gaps before the last one; the
		// room is the label less 2 mm a side, or less what reaches 7 mm in.
		{"letter-cut", 30, 2*in + in/2, in, 5*in + in/2, 9*in + in/2, 2*in + in/2 - 4*mm, in - 4*mm},
		{"letter-30", 30, 2*in + 5*in/8, in, 5*in + 11*in/16, 9*in + in/2, 3*in - 14*mm, in - 4*mm},
		{"a4-24", 24, 70 * mm, 37 * mm, 140 * mm, 259*mm + mm/2, 56 * mm, 24 * mm},
		{"a4-21", 21, 63*mm + mm/2, 381 * mm / 10, 139*mm + mm/4, 24375 * mm / 100, 59*mm + mm/2, 341 * mm / 10},
	} {
		g, ok := table.FindLabelGrid(c.id)
		x, y := g.Corner(g.Each() - 1)
		w, h := g.Room()
		if !ok || g.Each() != c.each || g.Width != c.width || g.Height != c.height || x != c.lastX || y != c.lastY || w != c.roomWide || h != c.roomH {
			t.Errorf("%s: %+v, last at %v, %v, room %v x %v; want %+v", c.id, g, x.Decimal(), y.Decimal(), w.Decimal(), h.Decimal(), c)
		}
	}
	if g, ok := table.FindLabelGrid("letter-31"); ok {
		t.Errorf("FindLabelGrid(letter-31) = %+v; want none", g)
	}
}
