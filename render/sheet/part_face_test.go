package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// Aprons whose legs stand otherwise from the left than from the right are drawn
// as a front and a back pair: at their inner faces, the front one from behind, so
// that its figures run to the left. Where they are alike one drawing serves.
func TestApronPairs(t *testing.T) {
	for name, r := range demos(t) {
		alike := true
		for i, l := range r.Ladders {
			o := r.Ladders[len(r.Ladders)-1-i]
			alike = alike && l.X+r.Len("leg.thickness")+o.X == r.Len("carcase.width")
		}
		left, right := 0, 0
		for _, s := range packet(t, r) {
			if !strings.Contains(s.Name, "-parts-") {
				continue
			}
			apron := strings.Contains(lettered([]*drawing.Sheet{s}, ""), "apron,")
			for _, d := range s.Dims {
				if d.Role != drawing.Running || !apron {
					continue
				}
				for _, l := range r.Ladders[1:] {
					if d.Value == l.X && d.From.X > d.To.X {
						left++
					} else if d.Value == l.X {
						right++
					}
				}
			}
		}
		n := len(r.Ladders) - 1
		if alike && (left != 0 || right != n) || !alike && (left != n || right != n) {
			t.Errorf("%s: %d legs told from the right and %d from the left, want %d, on both pairs: %v", name, left, right, n, !alike)
		}
	}
}

// Where the plan glues the top up, its part's sheet says of what.
func TestTopOfStaves(t *testing.T) {
	r := racktest.DemoRacks(t)["tasting-metric.toml"]
	plan := planned(t, r)
	sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: plan})
	if err != nil {
		t.Fatal(err)
	}
	if plan.Panel().Staves == 0 {
		t.Fatal("the top of this design is to be glued up")
	}
	if !strings.Contains(lettered(sheets, "parts"), "Gluedupof4staves20×95×680") {
		t.Error("the parts sheets do not say of how many staves the top is")
	}
}
