package drawing

import (
	"math"
	"testing"
)

func end(p Path) Point { return p.Segs[len(p.Segs)-1].To }

// strays returns how far a path's points, curves included, are at most from
// the circle around c of radius r.
func strays(p Path, c Point, r Um) float64 {
	worst := 0.0
	from := p.Start
	for _, s := range p.Segs {
		for k := 0; k <= 32; k++ {
			q := s.To
			if s.Curve {
				q = cubic{from, s.C1, s.C2, s.To}.at(float64(k) / 32)
			}
			d := math.Hypot(float64(q.X-c.X), float64(q.Y-c.Y))
			worst = max(worst, math.Abs(d-float64(r)))
		}
		from = s.To
	}
	return worst
}

func TestArc(t *testing.T) {
	c, r := Pt(50*MM, 40*MM), 30*MM
	for _, tt := range []struct {
		from, sweep float64
		start, end  Point
		segs        int
	}{
		{0, 90, Pt(80*MM, 40*MM), Pt(50*MM, 10*MM), 1},
		{90, 90, Pt(50*MM, 10*MM), Pt(20*MM, 40*MM), 1},
		{0, -90, Pt(80*MM, 40*MM), Pt(50*MM, 70*MM), 1},
		{180, 180, Pt(20*MM, 40*MM), Pt(80*MM, 40*MM), 2},
		{0, 360, Pt(80*MM, 40*MM), Pt(80*MM, 40*MM), 4},
		{30, 10, Pt(75981, 25000), Pt(72981, 20716), 1},
	} {
		p := Arc(Visible, 0, c, r, tt.from, tt.sweep)
		if p.Start != tt.start || end(p) != tt.end || len(p.Segs) != tt.segs {
			t.Errorf("Arc(%v, %v) runs %v .. %v in %d, want %v .. %v in %d", tt.from, tt.sweep, p.Start, end(p), len(p.Segs), tt.start, tt.end, tt.segs)
		}
		if d := strays(p, c, r); d > 0.0003*float64(r)+2 {
			t.Errorf("Arc(%v, %v) strays %.1f µm", tt.from, tt.sweep, d)
		}
	}
}

func TestEllipseTouchesItsParallelogram(t *testing.T) {
	c, u, v := Pt(100*MM, 100*MM), Pt(20*MM, 10*MM), Pt(-15*MM, 12*MM)
	p := Ellipse(Thin, 0, White, c, u, v)
	want := []Point{c.Add(u), c.Add(v), c.Sub(u), c.Sub(v)}
	got := []Point{p.Start, p.Segs[0].To, p.Segs[1].To, p.Segs[2].To}
	for i := range want {
		if d := got[i].Sub(want[i]); d.X.Abs() > 1 || d.Y.Abs() > 1 {
			t.Errorf("point %d is %v, want %v", i, got[i], want[i])
		}
	}
	if !p.Closed || p.Fill != White {
		t.Errorf("closed %v, fill %v", p.Closed, p.Fill)
	}
}

func TestPolylineDropsRepeatedPoints(t *testing.T) {
	a, b := Pt(1, 1), Pt(2, 2)
	if p := Polyline(Visible, 0, a, a, b, b, a); len(p.Segs) != 2 || p.Empty() {
		t.Errorf("got %v", p)
	}
	if p := Line(Visible, 0, a, a); !p.Empty() {
		t.Errorf("a line from a point to itself is not empty: %v", p)
	}
	if p := Polygon(Visible, 0, Black, a, b, Pt(3, 1), a); len(p.Segs) != 2 {
		t.Errorf("a polygon that returns to its start has %d segments, want 2", len(p.Segs))
	}
}

func TestArrow(t *testing.T) {
	p := Arrow(3, Pt(10*MM, 10*MM), Pt(50*MM, 10*MM))
	if got := p.Bounds(); got != Box(10*MM, 10*MM-MM/2, 3*MM, MM) {
		t.Errorf("arrow covers %v", got)
	}
	up := Arrow(3, Pt(10*MM, 10*MM), Pt(10*MM, 50*MM)).Bounds()
	if up != Box(10*MM-MM/2, 10*MM, MM, 3*MM) {
		t.Errorf("upright arrow covers %v", up)
	}
}

func TestHatchStaysInAndLinesUp(t *testing.T) {
	r := Box(10*MM, 20*MM, 13*MM, 7*MM)
	for _, h := range []Hatching{{}, {Falling: true}, {Pitch: 1500, Offset: 333}} {
		marks := h.Hatch(0, r)
		if len(marks) < 8 {
			t.Errorf("%+v: %d lines", h, len(marks))
		}
		for _, m := range marks {
			p := m.(Path)
			if !r.Holds(p.Bounds()) {
				t.Errorf("%+v: line %v leaves the box", h, p)
			}
			if d := p.Segs[0].To.Sub(p.Start); d.X.Abs() != d.Y.Abs() || (d.X == d.Y) != h.Falling {
				t.Errorf("%+v: line steps %v", h, d)
			}
		}
	}
	// Two boxes side by side are hatched as the one they make.
	whole := len(Hatching{}.Hatch(0, r))
	a, b := Box(10*MM, 20*MM, 5*MM, 7*MM), Box(15*MM, 20*MM, 8*MM, 7*MM)
	ks := map[Um]bool{}
	for _, m := range append(Hatching{}.Hatch(0, a), Hatching{}.Hatch(0, b)...) {
		ks[m.(Path).Start.X+m.(Path).Start.Y] = true
	}
	if len(ks) != whole {
		t.Errorf("the parts have %d lines, the whole %d", len(ks), whole)
	}
}

func TestBreakLine(t *testing.T) {
	p := BreakLine(0, Pt(10*MM, 10*MM), Pt(10*MM, 60*MM))
	if b := p.Bounds(); b.W() != 4*MM || b.H() != 50*MM || len(p.Segs) != 5 {
		t.Errorf("break line covers %v in %d segments", b, len(p.Segs))
	}
	if p := BreakLine(0, Pt(10*MM, 10*MM), Pt(10*MM, 12*MM)); len(p.Segs) != 1 {
		t.Errorf("a short break line has %d segments, want a plain line", len(p.Segs))
	}
}

func TestTextPlaces(t *testing.T) {
	base := Label(NoteText, 0, Pt(100*MM, 100*MM), 10*MM, Left, Plain("HH"))
	w := base.Width()
	for turn, want := range []Rect{
		Box(100*MM, 90*MM, w, 10*MM),
		Box(90*MM, 100*MM-w, 10*MM, w),
		Box(100*MM-w, 100*MM, w, 10*MM),
		Box(100*MM, 100*MM, 10*MM, w),
	} {
		x := base
		x.Turn = turn
		if got := x.Bounds(); !want.Holds(got) || got.W() < want.W()*8/10 || got.H() < want.H()*8/10 {
			t.Errorf("turn %d: %v, want nearly %v", turn, got, want)
		}
		p := Pt(50*MM, 60*MM)
		if c := x.CentredOn(p).Bounds().Centre().Sub(p); c.X.Abs() > 100 || c.Y.Abs() > 100 {
			t.Errorf("turn %d: centred text is off by %v", turn, c)
		}
	}
	for _, a := range []Align{Left, Middle, Right} {
		x := base
		x.Align = a
		if got, want := x.Origin().X, 100*MM-w*Um(a)/2; (got - want).Abs() > 1 {
			t.Errorf("%v: starts at %d, want %d", a, got, want)
		}
	}
}

func TestStretch(t *testing.T) {
	marks := []Mark{
		Line(Visible, 1, Pt(1000, 2000), Pt(3000, 5000)),
		Disc(Thin, 0, White, Pt(10*MM, 10*MM), 5*MM),
	}
	got := Stretch(marks, Ratio{1003, 1000}, Ratio{1, 1})
	if p := got[0].(Path); p.Start != Pt(1003, 2000) || p.Segs[0].To != Pt(3009, 5000) || p.Group != 1 {
		t.Errorf("line became %v", p)
	}
	if b := got[1].Bounds(); b != Box(10030-5015, 5*MM, 2*5015, 10*MM) {
		t.Errorf("circle covers %v", b)
	}
	same := Stretch(marks, Ratio{2, 1}, Ratio{2, 1})
	if c, ok := same[1].(Circle); !ok || c.R != 10*MM || c.Centre != Pt(20*MM, 20*MM) {
		t.Errorf("a circle stretched both ways alike became %v", same[1])
	}
	if p := marks[0].(Path); p.Segs[0].To != Pt(3000, 5000) {
		t.Errorf("the marks given were changed: %v", p)
	}
	if got := (Ratio{1, 2}).Of(-3); got != -2 {
		t.Errorf("half of -3 is %d, want -2", got)
	}
}
