package template_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/pdf"
)

// The pictures are taken at 600 dots to the inch.
const dot = 25.4 / 600 // mm

// A picture is a part of a page as a printer would put it down: how dark each
// dot is, 0 .. 255, row by row, and where its left top corner lies on the page.
type picture struct {
	wide, high  int
	left, upper int
	grey        []byte
}

// photograph has an outside program draw a box of a page, in millimetres.
func photograph(t *testing.T, path string, page int, x, y, w, h float64) picture {
	t.Helper()
	left, upper := int(x/dot), int(y/dot)
	wide, high := int(w/dot)+1, int(h/dot)+1
	out, err := exec.Command("pdftoppm", "-r", "600", "-gray", "-f", fmt.Sprint(page), "-l", fmt.Sprint(page),
		"-x", fmt.Sprint(left), "-y", fmt.Sprint(upper), "-W", fmt.Sprint(wide), "-H", fmt.Sprint(high), path).Output()
	if err != nil {
		t.Fatal(err)
	}
	p := picture{left: left, upper: upper}
	var most int
	head := bytes.NewReader(out)
	if _, err := fmt.Fscanf(head, "P5\n%d %d\n%d\n", &p.wide, &p.high, &most); err != nil || most != 255 {
		t.Fatalf("a picture that begins %q: %v", out[:min(len(out), 20)], err)
	}
	if p.grey = out[len(out)-head.Len():]; len(p.grey) != p.wide*p.high {
		t.Fatalf("a picture of %d x %d with %d dots", p.wide, p.high, len(p.grey))
	}
	return p
}

// upright returns where on the page an upright line stands that is inked over the
// whole height of the picture, within half a millimetre of x: the middle of its
// ink. It is NaN where there is none.
func (p picture) upright(x float64) float64 {
	return middle(x, p.left, p.wide, func(column int) float64 {
		sum := 0.0
		for row := range p.high {
			sum += 255 - float64(p.grey[row*p.wide+column])
		}
		return sum / float64(p.high) / 255
	})
}

// level is upright for a line across the whole width of the picture.
func (p picture) level(y float64) float64 {
	return middle(y, p.upper, p.high, func(row int) float64 {
		sum := 0.0
		for _, g := range p.grey[row*p.wide : (row+1)*p.wide] {
			sum += 255 - float64(g)
		}
		return sum / float64(p.wide) / 255
	})
}

// middle weighs what ink there is within half a millimetre of a place, leaving
// out rows and columns that are mostly white.
func middle(at float64, first, count int, ink func(int) float64) float64 {
	sum, moment, darkest := 0.0, 0.0, 0.0
	for i := max(int((at-0.5)/dot)-first, 0); i < min(int((at+0.5)/dot)-first+1, count); i++ {
		if v := ink(i); v > 0.25 {
			sum, moment, darkest = sum+v, moment+v*(float64(first+i)+0.5)*dot, max(darkest, v)
		}
	}
	if darkest < 0.5 {
		return math.NaN()
	}
	return moment / sum
}

// On a picture of the printed page the edges of the slats lie where they should
// on wood, once the printer has done what it was measured to do; and the strip is
// as wide as the leg.
func TestSlatEdgesInThePicture(t *testing.T) {
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		if os.Getenv("SLATWRIGHT_REFEREES") == "1" {
			t.Fatal("pdftoppm is not there to draw the pages")
		}
		t.Skip("pdftoppm is not there to draw the pages")
	}
	for _, p := range packets {
		t.Run(p.name, func(t *testing.T) {
			m := measureOf(racktest.Build(t, p.text), p.step.MM())
			tiles := firstRow(t, m.r)
			file, err := pdf.Encode(pdf.Document{Sheets: tiles, FullSize: true})
			if err != nil {
				t.Fatal(err)
			}
			path := filepath.Join(t.TempDir(), "tiles.pdf")
			if err := os.WriteFile(path, file, 0o644); err != nil {
				t.Fatal(err)
			}
			found := map[float64]bool{}
			for k, s := range tiles {
				m.photographed(t, path, k, s, found)
			}
			for _, x := range m.want() {
				if !found[x] {
					t.Errorf("no line at %.3f mm in any picture", x)
				}
			}
		})
	}
}

// photographed measures tile k on its picture and notes which edges it found.
func (m measure) photographed(t *testing.T, path string, k int, s *drawing.Sheet, found map[float64]bool) {
	t.Helper()
	leg, _ := m.r.PartNamed("leg")
	d := m.r.Design.Printer
	narrow := d.Across.MM() / d.AcrossNominal.MM() // what the printer makes of a distance across
	cross := firstCross(s)
	upper, lower := cross.y, cross.y+leg.Width.MM()/narrow
	// Beside the strip's edges and its figures: the part of a cross above its ring,
	// and a band of the strip just inside its upper edge.
	at := photograph(t, path, k+1, cross.x-2, cross.y-3.8, 4, 1).upright(cross.x)
	if math.Abs(at-cross.x) > 0.1 || math.IsNaN(at) {
		t.Fatalf("tile %d: the cross at %.3f mm stands at %.3f in the picture", k+1, cross.x, at)
	}
	band := photograph(t, path, k+1, 0, upper+0.6, s.W.MM(), 1)
	for _, x := range m.want() {
		place := at + (x-float64(k)*m.step)/m.stretch
		if place < at-12 || place > s.W.MM()-20 {
			continue
		}
		if got := band.upright(place); !math.IsNaN(got) {
			found[x] = true
			if off := (got - place) * m.stretch; math.Abs(off) > 0.1 {
				t.Errorf("tile %d: the edge at %.3f mm is off by %.3f mm on the wood", k+1, x, off)
			}
		}
	}
	side := photograph(t, path, k+1, cross.x+2, upper-1, 3, lower-upper+2)
	top, foot := side.level(upper), side.level(lower)
	if off := (foot-top)*narrow - leg.Width.MM(); math.IsNaN(off) || math.Abs(off) > 0.1 {
		t.Errorf("tile %d: the strip is %.3f mm wide on the wood; want %.3f", k+1, (foot-top)*narrow, leg.Width.MM())
	}
}

// place is a place on a page in millimetres.
type place struct{ x, y float64 }

// firstCross returns the middle of the left upper register cross of a page.
func firstCross(s *drawing.Sheet) place {
	best := place{math.Inf(1), math.Inf(1)}
	for _, l := range strokesOf(s) {
		if math.Abs(l.length()-8) < 0.2 && (l.x < best.x || l.x == best.x && (l.top+l.bottom)/2 < best.y) {
			best = place{l.x, (l.top + l.bottom) / 2}
		}
	}
	return best
}
