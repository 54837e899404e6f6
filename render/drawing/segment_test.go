package drawing

import "testing"

// A line that runs less than a micrometre outside an edge was once taken for
// one along it.
func TestSegmentsAreDecidedBeforeTheyAreRounded(t *testing.T) {
	a, b := Pt(1500, 1), Pt(0, -1)
	if p, q, ok := clipSegment(a, b, Box(0, 0, 500, 500)); ok {
		t.Errorf("the line leaves the box above, yet %v to %v is within", p, q)
	}
	p, q, ok := clipSegment(a, b, Box(500, 0, 500, 500))
	if !ok || p.X-q.X != 250 || p.X != 1000 || q.X != 750 {
		t.Errorf("%v to %v, %v; want the 250 from 1000 to 750", p, q, ok)
	}
}
