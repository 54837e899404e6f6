package main

import (
	"fmt"
	"math"
	"runtime"
	"testing"
	"time"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/render/label"
	"slatwright/render/pdf"
	"slatwright/render/report"
	"slatwright/render/sheet"
	"slatwright/render/svg"
	"slatwright/render/template"
	"slatwright/specs/design"
)

// walls are racks of ten times as many bottles each.
var walls = []struct{ columns, rows int }{{10, 5}, {50, 10}, {200, 25}}

// wall returns the design of a wall of one kind of bottle.
func wall(columns, rows int) []byte {
	return fmt.Appendf(nil, "units = \"mm\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = %d\nrows = %d\n", columns, rows)
}

// solved reads and solves a design.
func solved(t testing.TB, text []byte) *rack.Rack {
	t.Helper()
	d, err := design.Read("wall.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := rack.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// drawAll checks a rack and makes its packet in memory.
func drawAll(t testing.TB, r *rack.Rack) {
	t.Helper()
	in, err := contents(r, check.All(r), report.Mark(r))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := packet(in); err != nil {
		t.Fatal(err)
	}
}

// BenchmarkPacket is the whole way from a design's text to all files in memory.
func BenchmarkPacket(b *testing.B) {
	for _, w := range walls {
		text := wall(w.columns, w.rows)
		b.Run(fmt.Sprintf("%d bottles", w.columns*w.rows), func(b *testing.B) {
			for b.Loop() {
				r := solved(b, text)
				drawAll(b, r)
			}
		})
	}
}

// BenchmarkStages is the same way stage by stage, each on one thread but for the
// hidden lines.
func BenchmarkStages(b *testing.B) {
	for _, w := range walls {
		text := wall(w.columns, w.rows)
		r := solved(b, text)
		findings := check.All(r)
		drawings, err := sheet.Packet(sheet.Input{Rack: r, Findings: findings, Mark: "0123abcd"})
		if err != nil {
			b.Fatal(err)
		}
		templates, err := template.Sheets(r, "0123abcd")
		if err != nil {
			b.Fatal(err)
		}
		encodePDF := func(sheets []*drawing.Sheet, full bool) error {
			_, err := pdf.Encode(document(r, "", sheets, full))
			return err
		}
		stages := []struct {
			name string
			run  func() error
		}{
			{"solve", func() error { solved(b, text); return nil }},
			{"check", func() error { check.All(r); return nil }},
			{"sheets", func() error {
				_, err := sheet.Packet(sheet.Input{Rack: r, Findings: findings, Mark: "0123abcd"})
				return err
			}},
			{"templates", func() error { _, err := template.Sheets(r, "0123abcd"); return err }},
			{"labels", func() error { _, err := label.Sheets(r, "0123abcd"); return err }},
			{"drawings.pdf", func() error { return encodePDF(drawings, false) }},
			{"template.pdf", func() error { return encodePDF(templates, true) }},
			{"svg", func() error {
				for _, s := range drawings {
					if _, err := svg.Encode(s); err != nil {
						return err
					}
				}
				return nil
			}},
			{"report", func() error { _, err := report.JSON(r, findings); return err }},
			{"legible", func() error {
				for _, s := range drawings {
					drawing.Legible(s)
				}
				return nil
			}},
		}
		for _, s := range stages {
			b.Run(fmt.Sprintf("%s %d bottles", s.name, w.columns*w.rows), func(b *testing.B) {
				for b.Loop() {
					if err := s.run(); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// A wall of 5,000 bottles is drawn in under three seconds on two processors, and
// ten times the bottles cost no worse than n log n has it. What counts is the time
// for which processors work, less than six seconds all together, so that a machine
// busy with other work does not decide. Each is the best of three, and the growth
// has half as much again in hand.
func TestWallsDrawInTime(t *testing.T) {
	if testing.Short() {
		t.Skip("takes some seconds")
	}
	var took [3]time.Duration
	for i, w := range walls {
		text := wall(w.columns, w.rows)
		for range 3 {
			runtime.GC()
			start := cpuTime(t)
			r := solved(t, text)
			drawAll(t, r)
			if d := cpuTime(t) - start; took[i] == 0 || d < took[i] {
				took[i] = d
			}
		}
	}
	t.Logf("50, 500 and 5,000 bottles: %v", took)
	if took[2] > 2*3*time.Second {
		t.Errorf("a wall of 5,000 bottles took %v of processors; want under 6 s", took[2])
	}
	if most := 1.5 * 10 * math.Log(5000) / math.Log(500); float64(took[2]) > most*float64(took[1]) {
		t.Errorf("5,000 bottles took %v, 500 took %v: more than %.1f times as long", took[2], took[1], most)
	}
}
