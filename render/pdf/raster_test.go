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
	if inked := sameInk(t, sample.Sheet(), 300); inked < 100000 {
		t.Errorf("only %d pixels are inked", inked)
	}
}

// sameInk fails unless both writers draw the sheet alike, and returns how many
// pixels are inked.
func sameInk(t *testing.T, s *drawing.Sheet, dpi int) int {
	t.Helper()
	a, b := rasterPDF(t, s, dpi), rasterSVG(t, s, dpi)
	if d := a.Bounds().Size().Sub(b.Bounds().Size()); max(d.X, -d.X, d.Y, -d.Y) > 1 {
		t.Fatalf("pages are %v and %v", a.Bounds(), b.Bounds())
	}
	inked, differ := 0, 0
	wide, high := min(a.Bounds().Dx(), b.Bounds().Dx()), min(a.Bounds().Dy(), b.Bounds().Dy())
	p, q := inks(a, wide, high), inks(b, wide, high)
	for i := range p {
		if p[i] > 64 || q[i] > 64 {
			inked++
		}
		if p[i] > 128 && !near(q, i, wide) || q[i] > 128 && !near(p, i, wide) {
			differ++
		}
	}
	t.Logf("%s: %d of %d inked pixels differ", s.Name, differ, inked)
	if differ*1000 > inked {
		t.Errorf("%s: %d of %d inked pixels differ, over 0.1 %%", s.Name, differ, inked)
	}
	return inked
}

// Text that followed a turned stack over a white ground came out white: the
// library did not know the colour of fills after the turn.
func TestTextAfterATurnIsBlack(t *testing.T) {
	s := &drawing.Sheet{Name: "turned", W: 100 * drawing.MM, H: 60 * drawing.MM, Frame: drawing.Box(0, 0, 100*drawing.MM, 60*drawing.MM)}
	s.Add(drawing.Rectangle(drawing.Solid, 0, drawing.White, drawing.Box(10000, 10000, 20000, 40000)))
	turned := drawing.Label(drawing.FigureText, 1, drawing.Pt(20000, 40000), drawing.FigureHeight, drawing.Left, drawing.Figure("4 7/8"))
	turned.Turn = 1
	s.Add(turned)
	s.Add(drawing.Label(drawing.NoteText, 2, drawing.Pt(40000, 30000), drawing.FigureHeight, drawing.Left, drawing.Figure("two 1/2 and 3/4")))
	sameInk(t, s, 150)
}

// inks returns the ink of each pixel of the left top corner, row by row.
func inks(m image.Image, wide, high int) []int {
	all := make([]int, 0, wide*high)
	for y := range high {
		for x := range wide {
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
