package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/check"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// The picture of the staves has a bar for every clamp across them, over and under by
// turns, as many as the table says, and one stave beside the other.
func TestStavesAreDrawnInTheirClamps(t *testing.T) {
	drawn := 0
	for name, r := range demos(t) {
		plan := planned(t, r)
		top := plan.Panel()
		if !top.GluedUp() {
			continue
		}
		want := assembly.Sets(r, top)[0].Count
		sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: plan})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sheets {
			if !strings.Contains(lettered([]*drawing.Sheet{s}, "-clamps"), "Thetop'sstavesfromabove") {
				continue
			}
			drawn++
			bars := map[drawing.Class]int{}
			for _, m := range s.Marks {
				if p, ok := m.(drawing.Path); ok && p.Bounds().W() <= 3*drawing.MM && p.Bounds().H() >= 8*p.Bounds().W() && p.Bounds().W() > 0 {
					bars[p.Class]++
				}
			}
			over, under := (want+1)/2, want/2
			if bars[drawing.Hidden] != under {
				t.Errorf("%s: %d clamps under the staves; want %d", name, bars[drawing.Hidden], under)
			}
			// The battens and the bar of the clamp on the apron are as slender.
			if n := bars[drawing.Visible] - over; n < 1 || n > 3 {
				t.Errorf("%s: %d slender outlines; want %d clamps over the staves, two battens and one bar", name, bars[drawing.Visible], over)
			}
		}
	}
	if drawn == 0 {
		t.Error("no design shows its staves")
	}
}
