package template_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/pdf"
	"slatwright/render/template"
)

const inchDesign = `
title = "Kitchen rack"
order = "R-021"
[bottles]
fit = ["claret-750"]
[rack]
columns = 4
rows = 8
`

const metricDesign = `
title = "Cellar wall"
order = "R-022"
units = "mm"
[bottles]
fit = ["claret-750", "burgundy-750"]
[[column]]
count = 2
rows = 6
fit = ["claret-750"]
[[column]]
count = 3
rows = 5
fit = ["burgundy-750"]
[printer]
along = "99.6 mm"
across = "100.3 mm"
`

const rollDesign = `
title = "Hall rack"
units = "mm"
[bottles]
fit = ["claret-750"]
[rack]
columns = 9
rows = 12
[paper]
template = "roll 610 mm"
`

// designs are the packets that must read well, and what each tries.
var designs = []struct{ name, text string }{
	{"inch", inchDesign},
	{"metric", metricDesign},
	{"roll", rollDesign},
	{"long", longDesign},
	{"wide legs", "[leg]\nwidth = 3.5\n[rack]\ncolumns = 1\nrows = 3\n"},
	{"narrow legs", "[leg]\nwidth = \"7/8\"\n[rack]\ncolumns = 2\nrows = 4\n"},
	{"flat slats", "[slat]\nheight = \"3/8\"\n[rack]\ncolumns = 2\nrows = 9\n"},
	{"off the grid", "[leg]\nthickness = \"19 mm\"\n[slat]\nheight = \"23.3 mm\"\n[rack]\ncolumns = 6\nrows = 7\n"},
	{"wall", "units = \"mm\"\n[rack]\ncolumns = 40\nrows = 3\n[top]\npresent = false\n"},
	{"wall on a roll", "units = \"mm\"\n[rack]\ncolumns = 60\nrows = 3\n[paper]\ntemplate = \"roll 300 mm\"\n"},
	{"prints long both ways", "units = \"mm\"\n[rack]\ncolumns = 3\nrows = 6\n[printer]\nalong = \"103 mm\"\nacross = \"103 mm\"\n"},
	{"prints short both ways", "units = \"mm\"\n[rack]\ncolumns = 3\nrows = 6\n[printer]\nalong = \"97 mm\"\nacross = \"97 mm\"\n"},
}

func TestSheetsReadWell(t *testing.T) {
	for _, d := range designs {
		name, text := d.name, d.text
		sheets, err := template.Sheets(racktest.Build(t, text), "3F9A-77C1")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, s := range sheets {
			if err := s.Check(); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			for i, f := range drawing.Legible(s) {
				if i < 5 {
					t.Errorf("%s: %v", name, f)
				}
			}
		}
		if dir := os.Getenv("SLATWRIGHT_LOOK"); dir != "" {
			file, err := pdf.Encode(pdf.Document{Sheets: sheets, FullSize: true})
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, name+".pdf"), file, 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// The same rack gives the same marks.
func TestSheetsAreTheSameEachTime(t *testing.T) {
	var first string
	for range 3 {
		sheets, err := template.Sheets(racktest.Build(t, metricDesign), "3F9A-77C1")
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		for _, s := range sheets {
			if err := s.Fprint(&b); err != nil {
				t.Fatal(err)
			}
		}
		if first == "" {
			first = b.String()
		}
		if b.String() != first {
			t.Fatal("two runs differ")
		}
	}
}

// A gauge is as wide as the gap it is for, after correction as well.
func TestGaugesMeasureTrue(t *testing.T) {
	r := racktest.Build(t, metricDesign)
	sheets, err := template.Sheets(r, "test")
	if err != nil {
		t.Fatal(err)
	}
	var widths []float64
	for _, s := range sheets {
		if !strings.Contains(s.Name, "-gauges") {
			continue
		}
		for _, m := range s.Marks {
			if p, ok := m.(drawing.Path); ok && p.Class == drawing.Visible && p.Bounds().H() > 0 {
				widths = append(widths, p.Bounds().W().MM()*r.Design.Printer.Along.MM()/r.Design.Printer.AlongNominal.MM())
			}
		}
	}
	// After the three cards for nails: gap, thinnest and thickest bottle of either kind
	// of column, and between them how high the lowest slats of both lie.
	widths = widths[min(3, len(widths)):]
	want := []float64{56, r.Kinds[1].Under[0].MM(), 73, 80, 62, 80, 89}
	if len(widths) != len(want) {
		t.Fatalf("%d gauges, want %d: %v", len(widths), len(want), widths)
	}
	for i, w := range want {
		if math.Abs(widths[i]-w) > 0.002 {
			t.Errorf("gauge %d prints %.4f mm wide, want %.4f", i+1, widths[i], w)
		}
	}
}

// A ladder's right face shows its front edge above, its left face below: laid on
// the leg with the foot to the left, as the rack stands.
func TestFrontIsOnTheRightSide(t *testing.T) {
	r := racktest.Build(t, inchDesign)
	for _, s := range firstRow(t, r)[:1] {
		var up []bool
		for _, m := range s.Marks {
			p, ok := m.(drawing.Path)
			if ok && p.Class == drawing.Solid && p.Fill == drawing.Black && len(p.Segs) == 2 && p.Bounds().H() > p.Bounds().W() {
				up = append(up, p.Start.Y < p.Segs[0].To.Y)
			}
		}
		if want := []bool{true, false, true}; !slices.Equal(up, want) { // left end B, inner A, inner B
			t.Errorf("arrows to the front point up: %v, want %v", up, want)
		}
	}
}

// A corrected ruler prints its true length.
func TestRulersAreCorrected(t *testing.T) {
	for _, d := range designs {
		r := racktest.Build(t, d.text)
		sheets, err := template.Sheets(r, "test")
		if err != nil {
			t.Fatal(err)
		}
		p := r.Design.Printer
		for _, s := range sheets {
			along, across := rulerOf(s)
			if got := along * p.Along.MM() / p.AlongNominal.MM(); math.Abs(got-100) > 0.002 {
				t.Errorf("%s: %s: 100 mm along prints as %.4f", d.name, s.Name, got)
			}
			if got := across * p.Across.MM() / p.AcrossNominal.MM(); math.Abs(got-100) > 0.002 {
				t.Errorf("%s: %s: 100 mm across prints as %.4f", d.name, s.Name, got)
			}
		}
	}
}

// rulerOf returns the distance of the figures 0 and 100 on the millimetre
// rulers of a page, along and across: the first of each on the page.
func rulerOf(s *drawing.Sheet) (along, across float64) {
	var zero, hundred [2]drawing.Point
	for _, m := range s.Marks {
		text, ok := m.(drawing.Text)
		if !ok || !text.Table || text.Turn > 1 {
			continue
		}
		switch text.String() {
		case "0":
			if zero[text.Turn] == (drawing.Point{}) {
				zero[text.Turn] = text.At
			}
		case "100":
			if text.Bold { // a long ruler of inches has one too
				hundred[text.Turn] = text.At
			}
		}
	}
	return (hundred[0].X - zero[0].X).MM(), (hundred[1].Y - zero[1].Y).MM()
}

// Nails stand a quarter in, on one diagonal on a left face and on the other on
// a right face.
func TestNailPlaces(t *testing.T) {
	r := racktest.Build(t, inchDesign)
	slat, _ := r.PartNamed("slat")
	leg, _ := r.PartNamed("leg")
	tile := firstRow(t, r)[0]
	datum := tile.W.MM()/2 - 127 + 12.7 // of the page's net width of 10 in
	z := r.Shapes[0].Right[0].MM()
	h, w := slat.Width.MM(), leg.Width.MM()
	var rings []drawing.Circle
	for _, m := range tile.Marks {
		if c, ok := m.(drawing.Circle); ok && c.R == drawing.MM {
			rings = append(rings, c)
		}
	}
	// Two slats stand on this tile; the strips of the right and the left face come first.
	if len(rings) != 3*2*2 {
		t.Fatalf("%d nails, want 12", len(rings))
	}
	check := func(c drawing.Circle, along float64) {
		t.Helper()
		if got := c.Centre.X.MM() - datum; math.Abs(got-along) > 0.0015 {
			t.Errorf("nail at %.4f mm from the foot, want %.4f", got, along)
		}
	}
	right, left := rings[0:2], rings[4:6] // in the order of their distance from the front
	check(right[0], z+h*3/4)
	check(right[1], z+h/4)
	check(left[0], z+h/4)
	check(left[1], z+h*3/4)
	if got := (right[1].Centre.Y - right[0].Centre.Y).MM(); math.Abs(got-w/2) > 0.0015 {
		t.Errorf("nails of the right face stand %.4f mm apart from front to back, want %.4f", got, w/2)
	}
	if got := (left[0].Centre.Y - left[1].Centre.Y).MM(); math.Abs(got-w/2) > 0.0015 {
		t.Errorf("nails of the left face stand %.4f mm apart from back to front, want %.4f", got, w/2)
	}
}
