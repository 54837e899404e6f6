package drawing_test

import (
	"testing"

	"slatwright/render/drawing"
)

// Through and Crossing part where lines lie on each other.
func TestThrough(t *testing.T) {
	a, b := drawing.Pt(0, 0), drawing.Pt(100, 0)
	for _, c := range []struct {
		name              string
		c, d              drawing.Point
		through, crossing bool
	}{
		{"across", drawing.Pt(50, -10), drawing.Pt(50, 10), true, true},
		{"beside", drawing.Pt(150, -10), drawing.Pt(150, 10), false, false},
		{"ends on it", drawing.Pt(50, 0), drawing.Pt(50, 10), false, false},
		{"at an end", drawing.Pt(100, -10), drawing.Pt(100, 10), false, false},
		{"on it", drawing.Pt(50, 0), drawing.Pt(150, 0), false, true},
		{"after it", drawing.Pt(100, 0), drawing.Pt(150, 0), false, false},
	} {
		if got := drawing.Through(a, b, c.c, c.d); got != c.through {
			t.Errorf("%s: through %v; want %v", c.name, got, c.through)
		}
		if got := drawing.Crossing(a, b, c.c, c.d); got != c.crossing {
			t.Errorf("%s: crossing %v; want %v", c.name, got, c.crossing)
		}
	}
}
