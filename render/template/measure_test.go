package template_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/pdf"
	"slatwright/render/template"
	"slatwright/specs/unit"
)

// A stroke is an upright line on a page, in millimetres of paper.
type stroke struct{ x, top, bottom float64 }

func (s stroke) length() float64 { return s.bottom - s.top }

// strokesOf returns the upright lines among the marks of a sheet.
func strokesOf(s *drawing.Sheet) []stroke {
	var out []stroke
	for _, m := range s.Marks {
		if p, ok := m.(drawing.Path); ok && len(p.Segs) == 1 && p.Segs[0].To.X == p.Start.X {
			a, b := p.Start.Y.MM(), p.Segs[0].To.Y.MM()
			out = append(out, stroke{p.Start.X.MM(), min(a, b), max(a, b)})
		}
	}
	return out
}

// A measure reads the strips of a packet off its pages as somebody would with a
// rule: from the left register cross of a tile to a mark, plus the distance of
// that cross from the datum. It takes the printer at its word: what it was
// measured to print for 100 mm.
type measure struct {
	r       *rack.Rack
	step    float64 // mm, from cross to cross
	stretch float64 // of the printer along the page: measured over nominal
}

func measureOf(r *rack.Rack, step float64) measure {
	p := r.Design.Printer
	return measure{r, step, p.Along.MM() / p.AlongNominal.MM()}
}

// edges returns the distances from the datum of all upright lines that cross
// the first strip of a page, whose tile is the kth, from 0.
func (m measure) edges(t *testing.T, strokes []stroke, k int) []float64 {
	t.Helper()
	leg, _ := m.r.PartNamed("leg")
	cross, first := math.Inf(1), math.Inf(1)
	for _, s := range strokes { // register crosses are 8 mm high
		if math.Abs(s.length()-8) < 0.2 {
			cross, first = min(cross, s.x), min(first, (s.top+s.bottom)/2)
		}
	}
	if math.IsInf(cross, 1) {
		t.Fatalf("tile %d has no register cross", k+1)
	}
	across := m.r.Design.Printer.AcrossNominal.MM() / m.r.Design.Printer.Across.MM()
	var out []float64
	for _, s := range strokes {
		if math.Abs(s.length()-leg.Width.MM()*across) < 0.05 && math.Abs(s.top-first) < 0.1 {
			out = append(out, float64(k)*m.step+(s.x-cross)*m.stretch)
		}
	}
	return out
}

// want returns the edges of the slats on the first ladder's face, and the ends
// of its legs, in millimetres from the floor.
func (m measure) want() []float64 {
	slat, _ := m.r.PartNamed("slat")
	leg, _ := m.r.PartNamed("leg")
	out := []float64{0, leg.Length.MM()}
	for _, z := range m.r.Shapes[0].Right {
		out = append(out, z.MM(), (z + slat.Width).MM())
	}
	return out
}

// compare wants each edge on some tile and no line that is no edge.
func (m measure) compare(t *testing.T, got []float64, within float64) {
	t.Helper()
	want := m.want()
	near := func(list []float64, x float64) bool {
		return slices.ContainsFunc(list, func(y float64) bool { return math.Abs(x-y) <= within })
	}
	for _, x := range want {
		if !near(got, x) {
			t.Errorf("no line at %.4f mm", x)
		}
	}
	for _, x := range got {
		if !near(want, x) {
			t.Errorf("a line at %.4f mm, where the ladder has no edge", x)
		}
	}
}

// packets are the designs that are measured, with their step from tile to tile.
var packets = []struct {
	name, text string
	step       unit.Length
}{
	{"inch", inchDesign, 9 * unit.Inch},
	{"printer that prints short", metricDesign, 220 * unit.Millimetre},
	{"printer that prints long", longDesign, 9 * unit.Inch},
	{"roll", rollDesign, 1220 * unit.Millimetre},
}

const longDesign = `
title = "Tower"
[rack]
columns = 2
rows = 15
height = "<= 72"
[printer]
along = "4 1/16 in"
across = "3 31/32 in"
`

// Marks stand at their exact distance from the datum across all tiles: the
// ends of a measured distance are each rounded to a micrometre.
func TestSlatEdgesAcrossTiles(t *testing.T) {
	for _, p := range packets {
		t.Run(p.name, func(t *testing.T) {
			m := measureOf(racktest.Build(t, p.text), p.step.MM())
			tiles := firstRow(t, m.r)
			leg, _ := m.r.PartNamed("leg")
			if want := int(math.Ceil(float64(leg.Length) / float64(p.step))); len(tiles) != want {
				t.Errorf("%d tiles, want %d", len(tiles), want)
			}
			var got []float64
			for k, s := range tiles {
				got = append(got, m.edges(t, strokesOf(s), k)...)
			}
			m.compare(t, got, 0.0025)
		})
	}
}

// firstRow returns the tiles of the first row of a packet.
func firstRow(t *testing.T, r *rack.Rack) []*drawing.Sheet {
	t.Helper()
	sheets, err := template.Sheets(r, "test")
	if err != nil {
		t.Fatal(err)
	}
	var out []*drawing.Sheet
	for _, s := range sheets {
		if s.Title == fmt.Sprintf("Template row 1, sheet %d", len(out)+1) {
			out = append(out, s)
		}
	}
	return out
}

// An outside reader of the file finds the same edges, within what a file in
// hundredths of a point can say.
func TestSlatEdgesInTheFile(t *testing.T) {
	if _, err := exec.LookPath("mutool"); err != nil {
		if os.Getenv("SLATWRIGHT_REFEREES") == "1" {
			t.Fatal("mutool is not there to read the file")
		}
		t.Skip("mutool is not there to read the file")
	}
	for _, p := range packets {
		t.Run(p.name, func(t *testing.T) {
			m := measureOf(racktest.Build(t, p.text), p.step.MM())
			tiles := firstRow(t, m.r)
			var got []float64
			for k, page := range tracePages(t, tiles) {
				got = append(got, m.edges(t, page, k)...)
			}
			m.compare(t, got, 0.01)
		})
	}
}

// tracePages has the file of the sheets read back and returns the upright lines
// of each page.
func tracePages(t *testing.T, sheets []*drawing.Sheet) [][]stroke {
	t.Helper()
	file, err := pdf.Encode(pdf.Document{Sheets: sheets, FullSize: true})
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "template.pdf")
	if err := os.WriteFile(path, file, 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("mutool", "draw", "-q", "-F", "trace", path).Output()
	if err != nil {
		t.Fatal(err)
	}
	return readTrace(t, out)
}

// readTrace reads paths of one straight line from a trace, in points from the
// foot of the page.
func readTrace(t *testing.T, trace []byte) [][]stroke {
	t.Helper()
	var pages [][]stroke
	var high float64
	var pts [][2]float64
	d := xml.NewDecoder(bytes.NewReader(trace))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return pages
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			switch e.Name.Local {
			case "page":
				var a, b, w float64
				fmt.Sscan(attr(e, "mediabox"), &a, &b, &w, &high)
				pages = append(pages, nil)
			case "stroke_path":
				pts = nil
			case "moveto", "lineto":
				x, _ := strconv.ParseFloat(attr(e, "x"), 64)
				y, _ := strconv.ParseFloat(attr(e, "y"), 64)
				pts = append(pts, [2]float64{x, high - y})
			}
		case xml.EndElement:
			if e.Name.Local == "stroke_path" && len(pts) == 2 && pts[0][0] == pts[1][0] {
				const mm = 25.4 / 72
				a, b := pts[0][1]*mm, pts[1][1]*mm
				last := &pages[len(pages)-1]
				*last = append(*last, stroke{pts[0][0] * mm, min(a, b), max(a, b)})
			}
		}
	}
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}
