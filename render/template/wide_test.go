package template_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/template"
	"slatwright/specs/unit"
)

// apronTiles returns the pages whose only strip is that of the aprons.
func apronTiles(t *testing.T, r *rack.Rack) []*drawing.Sheet {
	t.Helper()
	sheets, err := template.Sheets(r, "test")
	if err != nil {
		t.Fatal(err)
	}
	var out []*drawing.Sheet
	for _, s := range sheets {
		if strings.HasPrefix(s.Title, "Template row") && slices.ContainsFunc(wordsOf(s), func(w string) bool { return strings.Contains(w, "LOWER EDGE") }) {
			out = append(out, s)
		}
	}
	return out
}

// wordsOf returns the texts of a page.
func wordsOf(s *drawing.Sheet) []string {
	var out []string
	for _, m := range s.Marks {
		if text, ok := m.(drawing.Text); ok {
			out = append(out, text.String())
		}
	}
	return out
}

// The aprons' strip has the edges of each leg, as far from its datum as they are in
// the rack, is as wide as the apron, and no nail, which would come out at its
// other face. Where columns differ the front pair has a strip of its own, whose
// lower edge is up.
func TestApronStrips(t *testing.T) {
	const head = "units = \"mm\"\n[bottles]\nfit = [\"claret-750\"]\n[slat]\nlength = 280\n"
	for _, c := range []struct {
		name, text string
		strips     int
	}{
		{"alike", head + "[rack]\ncolumns = 5\nrows = 4\n", 1},
		{"columns differ", head + "[[column]]\ncount = 1\nrows = 3\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 2\nrows = 3\n", 2},
	} {
		r := racktest.Build(t, c.text)
		apron, _ := r.PartNamed("apron")
		const step, half = 230, 12 // mm, of the tiles and of their overlap
		found, strips := map[string]int{}, 0
		for _, s := range apronTiles(t, r) {
			var row, k int
			if _, err := fmt.Sscanf(s.Title, "Template row %d, sheet %d", &row, &k); err != nil {
				t.Fatal(err)
			}
			if k == 1 {
				strips++
			}
			left := (s.W.MM()-254)/2 + half
			for _, l := range strokesOf(s) {
				if math.Abs(l.length()-apron.Width.MM()) < 0.05 {
					found[fmt.Sprintf("%.1f", float64(k-1)*step+l.x-left)]++
				}
			}
			for _, m := range s.Marks {
				if x, ok := m.(drawing.Circle); ok && x.R == drawing.MM {
					t.Errorf("%s: page %s has a nail", c.name, s.Name)
				}
			}
		}
		if strips != c.strips {
			t.Errorf("%s: %d strips, want %d", c.name, strips, c.strips)
		}
		for _, l := range r.Ladders {
			for _, x := range []float64{l.X.MM(), (l.X + r.Len("leg.thickness")).MM()} {
				if found[fmt.Sprintf("%.1f", x)] < c.strips {
					t.Errorf("%s: no line at %.1f mm on each strip", c.name, x)
				}
			}
		}
	}
}

// The cards have the nails where the pieces have them, seen at the outer face: of
// a slat from the right with the front at the left, and the same from the left.
func TestCards(t *testing.T) {
	r := racktest.Build(t, "units = \"mm\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 5\nrows = 4\n")
	sheets, err := template.Sheets(r, "test")
	if err != nil {
		t.Fatal(err)
	}
	var boxes []drawing.Rect
	var nails []drawing.Point
	lines := 0
	for _, m := range sheets[1].Marks {
		switch x := m.(type) {
		case drawing.Path:
			if x.Class == drawing.Visible && len(x.Segs) > 2 {
				boxes = append(boxes, x.Bounds())
			}
			if x.Class == drawing.TemplateCut && lines < len(boxes) { // the nails are left of it
				boxes[lines].Max.X = x.Start.X
				lines++
			}
		case drawing.Circle:
			nails = append(nails, x.Centre)
		}
	}
	if len(boxes) < 2 || len(nails) != 4 {
		t.Fatalf("%d cards and bars, %d nails", len(boxes), len(nails))
	}
	within := func(box drawing.Rect, q drawing.Point) (x, y float64) {
		return (q.X - box.Min.X).MM() / box.W().MM(), (q.Y - box.Min.Y).MM() / box.H().MM()
	}
	// A slat of 25 mm on a leg of 45 mm, an apron of 65 mm: a quarter in whole millimetres.
	const u, w, h = 11.0 / 45, 6.0 / 25, 16.0 / 65
	for i, want := range [][2]float64{{u, w}, {1 - u, 1 - w}, {0.5, h}, {0.5, 1 - h}} {
		if x, y := within(boxes[i/2], nails[i]); math.Abs(x-want[0]) > 0.001 || math.Abs(y-want[1]) > 0.001 {
			t.Errorf("nail %d at %.3f of the width and %.3f of the height, want %v", i+1, x, y, want)
		}
	}
	for i, want := range []unit.Length{r.Len("leg.width"), r.Len("leg.thickness")} {
		if got := boxes[i].W().MM(); math.Abs(got-want.MM()) > 0.002 {
			t.Errorf("card %d is %.3f mm wide, want %.3f", i+1, got, want.MM())
		}
	}
}

// Where nails of two faces would meet, the strip has them where the ladder's sheet
// has them: nearer to the middle of the leg's width.
func TestShiftedNails(t *testing.T) {
	text, _, _ := strings.Cut(metricDesign, "[printer]")
	r := racktest.Build(t, text)
	aside := 0
	for _, c := range check.Crossings(r) {
		if c.Aside > 0 {
			aside++
		}
	}
	if aside == 0 {
		t.Fatal("no nails meet in this rack")
	}
	sheets, err := template.Sheets(r, "test")
	if err != nil {
		t.Fatal(err)
	}
	w, off := r.Len("leg.width").MM(), check.NailAside(r).MM()
	got := 0
	for _, s := range sheets {
		if !strings.HasPrefix(s.Title, "Template ") {
			continue
		}
		var rings []drawing.Point
		for _, m := range s.Marks {
			if x, ok := m.(drawing.Circle); ok && x.R == drawing.MM {
				rings = append(rings, x.Centre)
			}
		}
		for i, a := range rings {
			for _, b := range rings[:i] {
				if d := (a.Y - b.Y).Abs().MM(); math.Abs(d-(w-2*math.Floor(w/4)-2*off)) < 0.01 && (a.X-b.X).Abs().MM() < r.Len("slat.height").MM() {
					got++
				}
			}
		}
	}
	if got < aside/2 {
		t.Errorf("%d pairs of nails stand nearer to the middle, want %d for each of two legs", got, aside/2)
	}
}

// A piece that a page has room for is shown whole; of a wider one the page says
// that it is shown in part, and the first page how much and what to do.
func TestWidePieces(t *testing.T) {
	for _, c := range []struct {
		height string
		part   bool
	}{{"65 mm", false}, {"120 mm", false}, {"150 mm", true}} {
		r := racktest.Build(t, "units = \"mm\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 3\nrows = 6\n[apron]\nheight = \""+c.height+"\"\n")
		sheets, err := template.Sheets(r, "test")
		if err != nil {
			t.Fatal(err)
		}
		first := strings.Join(wordsOf(sheets[0]), " ")
		tile := strings.Join(wordsOf(apronTiles(t, r)[0]), " ")
		if got := strings.Contains(first, "carry the lines on square"); got != c.part {
			t.Errorf("an apron %s high: the first page says that it is shown in part: %v; want %v", c.height, got, c.part)
		}
		if got := strings.Contains(tile, "aprons, inner face, in part"); got != c.part {
			t.Errorf("an apron %s high: its page says that it is shown in part: %v; want %v", c.height, got, c.part)
		}
		for _, s := range sheets {
			for _, f := range drawing.Legible(s) {
				t.Errorf("an apron %s high: %v", c.height, f)
			}
		}
	}
}

// A gauge that no page has room for is asked for as a stick.
func TestGaugesTooWide(t *testing.T) {
	r := racktest.Build(t, "units = \"mm\"\n[bottles]\nfit = [\"jar\"]\n[bottle.jar]\ndiameter = \"300 mm\"\nheight = \"400 mm\"\n[rack]\ncolumns = 2\nrows = 2\n")
	sheets, err := template.Sheets(r, "test")
	if err != nil {
		t.Fatal(err)
	}
	first := strings.Join(wordsOf(sheets[0]), " ")
	for _, want := range []string{"cut a stick", "thickest bottle 300 mm"} {
		if !strings.Contains(first, want) {
			t.Errorf("the first page does not say %q", want)
		}
	}
}
