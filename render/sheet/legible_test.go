package sheet_test

import (
	"os"
	"path/filepath"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/golden"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
	"slatwright/specs/design"
)

// demos builds every demo design.
func demos(t *testing.T) map[string]*rack.Rack {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(golden.Root(t), "testdata", "designs", "*.toml"))
	if err != nil || len(files) < 6 {
		t.Fatalf("%d demo designs, %v", len(files), err)
	}
	out := map[string]*rack.Rack{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		d, err := design.Read(filepath.Base(f), text)
		if err != nil {
			t.Fatal(err)
		}
		r, err := rack.Build(d)
		if err != nil {
			t.Fatalf("%s: %v", f, err)
		}
		out[filepath.Base(f)] = r
	}
	return out
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
