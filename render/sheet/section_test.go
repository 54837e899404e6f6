package sheet_test

import (
	"strings"
	"testing"

	"slatwright/render/drawing"
)

// legs are the straight stretches of a path.
func legs(p drawing.Path) [][2]drawing.Point {
	var out [][2]drawing.Point
	at := p.Start
	for _, s := range p.Segs {
		out = append(out, [2]drawing.Point{at, s.To})
		at = s.To
	}
	return out
}

// On the sections the clearances stand beside the cut in one order, whatever the
// rack, no two of their leaders cross, and none crosses the line of another's
// distance.
func TestSectionLeadersInOrder(t *testing.T) {
	order := []string{"upper apron", "above", "corner", "side", "sag, largest", "sag, smallest", "lower apron"}
	seen := 0
	for name, r := range demos(t) {
		for _, s := range packet(t, r) {
			if !strings.Contains(s.Name, "section") {
				continue
			}
			var leaders []drawing.Path
			last, y := -1, drawing.Um(0)
			for _, m := range s.Marks {
				switch x := m.(type) {
				case drawing.Path:
					if x.Class == drawing.Leader {
						leaders = append(leaders, x)
					}
				case drawing.Text:
					for i, w := range order {
						if x.Class != drawing.FigureText || !strings.HasPrefix(x.String(), w+" ") {
							continue
						}
						if seen++; i < last || last >= 0 && x.At.Y <= y {
							t.Errorf("%s, %s: %s stands out of its order", name, s.Name, w)
						}
						last, y = i, x.At.Y
					}
				}
			}
			for i, a := range leaders {
				for _, b := range leaders[:i] {
					for _, p := range legs(a) {
						for _, q := range legs(b) {
							if drawing.Crossing(p[0], p[1], q[0], q[1]) {
								t.Errorf("%s, %s: leaders cross, %v and %v", name, s.Name, p, q)
							}
						}
					}
				}
				for _, d := range s.Dims {
					if d.Role != drawing.Check || d.Chain != 0 {
						continue
					}
					for _, p := range legs(a) {
						own := p[0].X == d.From.X || p[0] == drawing.Pt((d.From.X+d.To.X)/2, (d.From.Y+d.To.Y)/2)
						if !own && drawing.Crossing(p[0], p[1], d.From, d.To) {
							t.Errorf("%s, %s: the leader %v crosses %s", name, s.Name, p, d.Printed)
						}
					}
				}
			}
		}
	}
	if seen < 30 {
		t.Errorf("only %d clearances seen", seen)
	}
}
