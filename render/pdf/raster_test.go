package pdf

import (
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"slatwright/render/drawing"
	"slatwright/render/drawing/sample"
	"slatwright/render/svg"
)

func readPNG(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	m, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// ink returns how dark a pixel is, 0 .. 255. What is see-through is white.
func ink(m image.Image, x, y int) int {
	r, g, b, a := m.At(x, y).RGBA()
	return 255 - int((r+g+b)/3+(0xFFFF-a))*255/0xFFFF
}

// rasterPDF draws a page at dots per inch.
func rasterPDF(t *testing.T, s *drawing.Sheet, dpi int) image.Image {
	t.Helper()
	path := write(t, Document{Sheets: []*drawing.Sheet{s}, FullSize: s.FullSize})
	out := filepath.Join(t.TempDir(), "pdf")
	run(t, "pdftocairo", "-png", "-singlefile", "-r", fmt.Sprint(dpi), path, out)
	return readPNG(t, out+".png")
}

// rasterSVG draws a sheet at dots per inch.
func rasterSVG(t *testing.T, s *drawing.Sheet, dpi int) image.Image {
	t.Helper()
	b, err := svg.Encode(s)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	in, out := filepath.Join(dir, "sheet.svg"), filepath.Join(dir, "svg.png")
	if err := os.WriteFile(in, b, 0o644); err != nil {
		t.Fatal(err)
	}
	run(t, "rsvg-convert", "-d", fmt.Sprint(dpi), "-p", fmt.Sprint(dpi), "-b", "white", "-o", out, in)
	return readPNG(t, out)
}

// Two programs that share no font and no reader draw the two files alike: ink
// in one has ink in the other within a pixel, 0.085 mm. Pixel for pixel they
// differ in more, since each sets the glyphs of real text to places of its own
// within the pixel.
func TestBothWritersDrawTheSame(t *testing.T) {
	const dpi = 300
	a, b := rasterPDF(t, sample.Sheet(), dpi), rasterSVG(t, sample.Sheet(), dpi)
	if a.Bounds() != b.Bounds() {
		t.Fatalf("pages are %v and %v", a.Bounds(), b.Bounds())
	}
	inked, differ := 0, 0
	p, q := inks(a), inks(b)
	for i := range p {
		if p[i] > 64 || q[i] > 64 {
			inked++
		}
		if p[i] > 128 && !near(q, i, a.Bounds().Dx()) || q[i] > 128 && !near(p, i, a.Bounds().Dx()) {
			differ++
		}
	}
	t.Logf("%d of %d inked pixels differ", differ, inked)
	if inked < 100000 {
		t.Errorf("only %d pixels are inked", inked)
	}
	if differ*1000 > inked {
		t.Errorf("%d of %d inked pixels differ, over 0.1 %%", differ, inked)
	}
}

// inks returns the ink of each pixel, row by row.
func inks(m image.Image) []int {
	b := m.Bounds()
	all := make([]int, 0, b.Dx()*b.Dy())
	for y := range b.Dy() {
		for x := range b.Dx() {
			all = append(all, ink(m, x, y))
		}
	}
	return all
}

// near reports whether pixel i, or one beside it, has ink. The edge of the
// page has none.
func near(inks []int, i, width int) bool {
	for _, row := range []int{-width, 0, width} {
		for d := -1; d <= 1; d++ {
			if k := i + row + d; k >= 0 && k < len(inks) && inks[k] > 64 {
				return true
			}
		}
	}
	return false
}

// A full-size sheet measures what it says, on paper of any size.
func TestFullSizeMeasures(t *testing.T) {
	const dpi = 300
	strokes := []drawing.Um{20 * mm, 20*mm + 123825, 210 * mm, 260 * mm}
	s := sample.FullSize(279400, 215900, strokes...)
	for name, m := range map[string]image.Image{"pdf": rasterPDF(t, s, dpi), "svg": rasterSVG(t, s, dpi)} {
		got := columns(m, m.Bounds().Dy()/2, dpi)
		if len(got) != len(strokes) {
			t.Errorf("%s: strokes at %v, want %d of them", name, got, len(strokes))
			continue
		}
		for i, want := range strokes {
			if math.Abs(got[i]-want.MM()) > 0.05 {
				t.Errorf("%s: stroke at %.3f mm, want %.3f", name, got[i], want.MM())
			}
		}
	}
}

// columns returns the centres of ink along a row of pixels, in millimetres.
func columns(m image.Image, y, dpi int) []float64 {
	var centres []float64
	sum, moment := 0.0, 0.0
	for x := range m.Bounds().Dx() {
		v := float64(ink(m, x, y))
		if v == 0 {
			if sum > 0 {
				centres = append(centres, moment/sum*25.4/float64(dpi))
			}
			sum, moment = 0, 0
			continue
		}
		sum += v
		moment += v * (float64(x) + 0.5)
	}
	return centres
}
