package sheet_test

import (
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// demos builds every demo design.
func demos(t *testing.T) map[string]*rack.Rack {
	t.Helper()
	return racktest.DemoRacks(t)
}

// planned plans the cutting of orders.
func planned(t testing.TB, racks ...*rack.Rack) *saw.Plan {
	t.Helper()
	p, err := saw.Make(racks, saw.Quick)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Figures in a second unit find their places too, and are right.
func TestSecondUnitIsLegible(t *testing.T) {
	for name, r := range demos(t) {
		r.Design.Paper.SecondUnit = true
		sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: planned(t, r)})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		twice := 0
		for _, s := range sheets {
			for _, f := range drawing.Legible(s) {
				t.Errorf("%s: %v", name, f)
			}
			for _, d := range s.Dims {
				if d.Second != "" {
					twice++
				}
			}
		}
		if twice < 40 {
			t.Errorf("%s: %d figures in the second unit", name, twice)
		}
	}
}

// Every sheet of every demo design can be read: no text over text or lines,
// nothing outside the frame, chains that add up as printed.
func TestDemoSheetsAreLegible(t *testing.T) {
	for name, r := range demos(t) {
		sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: planned(t, r)})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, s := range sheets {
			for _, f := range drawing.Legible(s) {
				t.Errorf("%s: %v", name, f)
			}
		}
		for _, f := range drawing.Items(sheets) {
			t.Errorf("%s: %v", name, f)
		}
	}
}
