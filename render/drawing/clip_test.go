package drawing

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestClipLine(t *testing.T) {
	r := Box(10, 10, 100, 100)
	for _, tt := range []struct {
		a, b, wantA, wantB Point
		none               bool
	}{
		{a: Pt(0, 50), b: Pt(200, 50), wantA: Pt(10, 50), wantB: Pt(110, 50)},
		{a: Pt(50, 50), b: Pt(50, 500), wantA: Pt(50, 50), wantB: Pt(50, 110)},
		{a: Pt(0, 0), b: Pt(200, 200), wantA: Pt(10, 10), wantB: Pt(110, 110)},
		{a: Pt(110, 0), b: Pt(110, 60), wantA: Pt(110, 10), wantB: Pt(110, 60)}, // along the edge
		{a: Pt(0, 10), b: Pt(10, 0), none: true},
		{a: Pt(0, 20), b: Pt(20, 0), none: true}, // through the corner only
		{a: Pt(0, 0), b: Pt(5, 500), none: true},
	} {
		got := Clip([]Mark{Line(Visible, 2, tt.a, tt.b)}, r)
		if tt.none {
			if len(got) != 0 {
				t.Errorf("%v %v: got %v, want nothing", tt.a, tt.b, got)
			}
			continue
		}
		want := []Mark{Line(Visible, 2, tt.wantA, tt.wantB)}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%v %v: %s", tt.a, tt.b, d)
		}
	}
}

func TestClipOutlineLeavesNoLineAlongTheCut(t *testing.T) {
	got := Clip([]Mark{Rectangle(Visible, 1, Light, Box(0, 0, 100, 100))}, Box(-10, -10, 60, 200))
	if len(got) != 2 {
		t.Fatalf("got %d marks, want a fill and an open line: %v", len(got), got)
	}
	fill, line := got[0].(Path), got[1].(Path)
	if fill.Class != Solid || fill.Fill != Light || !fill.Closed || fill.Bounds() != Box(0, 0, 50, 100) {
		t.Errorf("fill %v", fill)
	}
	want := Polyline(Visible, 1, Pt(50, 100), Pt(0, 100), Pt(0, 0), Pt(50, 0))
	if d := cmp.Diff(want, line); d != "" {
		t.Errorf("line: %s", d)
	}
}

func TestClipCircle(t *testing.T) {
	c, r := Pt(100*MM, 100*MM), 30*MM
	window := Box(100*MM, 60*MM, 80*MM, 55*MM) // cuts it right of the middle, 15 mm below it
	got := Clip([]Mark{Disc(Thin, 0, NoFill, c, r)}, window)
	total := 0.0
	for _, m := range got {
		p := m.(Path)
		if !window.Holds(around(flatten(p))) {
			t.Errorf("piece %v leaves the window", p)
		}
		if d := strays(p, c, r); d > 0.0003*float64(r)+3 {
			t.Errorf("piece strays %.1f µm from the circle", d)
		}
		pts := flatten(p)
		for i := 1; i < len(pts); i++ {
			total += math.Hypot(float64(pts[i].X-pts[i-1].X), float64(pts[i].Y-pts[i-1].Y))
		}
	}
	// From straight up, clockwise to 15 mm below the middle: 120 degrees.
	if want := float64(r) * 2 * math.Pi / 3; math.Abs(total-want) > 30 {
		t.Errorf("pieces are %.0f µm long, want %.0f", total, want)
	}
	inside := []Mark{Disc(Thin, 0, Black, c, r)}
	if d := cmp.Diff(inside, Clip(inside, Box(0, 0, 200*MM, 200*MM))); d != "" {
		t.Errorf("a circle wholly inside was changed: %s", d)
	}
	if got := Clip(inside, Box(95*MM, 95*MM, 10*MM, 10*MM)); len(got) != 1 || got[0].Bounds() != Box(95*MM, 95*MM, 10*MM, 10*MM) {
		t.Errorf("a window within a black disc shows %v", got)
	}
	if got := Clip([]Mark{Disc(Thin, 0, NoFill, c, r)}, Box(95*MM, 95*MM, 10*MM, 10*MM)); len(got) != 0 {
		t.Errorf("a window within a ring shows %v", got)
	}
}

func TestClipKeepsWholeTextsOnly(t *testing.T) {
	x := Label(NoteText, 0, Pt(20*MM, 20*MM), 3500, Left, Plain("half"))
	if got := Clip([]Mark{x}, Box(0, 0, 100*MM, 100*MM)); len(got) != 1 {
		t.Error("a text inside is gone")
	}
	if got := Clip([]Mark{x}, Box(0, 0, 23*MM, 100*MM)); len(got) != 0 {
		t.Errorf("part of a text is left: %v", got)
	}
}

// A line that runs less than a micrometre outside an edge was once taken for
// one along it, and drawn in both tiles.
func TestClipDecidesBeforeItRounds(t *testing.T) {
	line := []Mark{Line(Visible, 0, Pt(1500, 1), Pt(0, -1))}
	if got := Clip(line, Box(0, 0, 500, 500)); len(got) != 0 {
		t.Errorf("the line leaves the box above, yet %v is kept", got)
	}
	if got := Clip(line, Box(500, 0, 500, 500)); len(got) != 1 || got[0].Bounds().W() != 250 {
		t.Errorf("kept %v, want the 250 from 750 to 1000", got)
	}
}

// Tiles of a sheet hold together exactly what the sheet holds.
func TestClippedTilesMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		um := rapid.Int64Range(-500, 1500)
		pt := func(label string) Point { return Pt(Um(um.Draw(rt, label+" x")), Um(um.Draw(rt, label+" y"))) }
		a, b := pt("a"), pt("b")
		if a == b {
			return
		}
		length := func(marks []Mark) (sum float64) {
			for _, m := range marks {
				p := m.(Path)
				for _, s := range p.Segs {
					sum += math.Hypot(float64(s.To.X-p.Start.X), float64(s.To.Y-p.Start.Y))
					p.Start = s.To
				}
			}
			return sum
		}
		line := []Mark{Line(Visible, 0, a, b)}
		whole := length(Clip(line, Box(0, 0, 1000, 1000)))
		tiles := 0.0
		for _, y := range []Um{0, 500} {
			for _, x := range []Um{0, 500} {
				part := Clip(line, Box(x, y, 500, 500))
				tiles += length(part)
				if len(part) > 0 && !Box(x, y, 500, 500).Holds(part[0].Bounds()) {
					rt.Errorf("%v leaves its tile", part)
				}
			}
		}
		// A line along a seam stands on both sides of it.
		onSeam := a.X == b.X && a.X == 500 || a.Y == b.Y && a.Y == 500
		if !onSeam && math.Abs(whole-tiles) > 6 {
			rt.Errorf("%v %v: whole %.1f, tiles %.1f", a, b, whole, tiles)
		}
	})
}
