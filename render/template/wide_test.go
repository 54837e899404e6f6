package template_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
	"slatwright/render/template"
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
		if slices.ContainsFunc(wordsOf(s), func(w string) bool { return strings.Contains(w, "LOWER EDGE") }) {
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

// The aprons' strip has two nails for each leg, where the drawing of the part has
// them, and is as wide as the apron.
func TestApronNails(t *testing.T) {
	r := racktest.Build(t, "units = \"mm\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 5\nrows = 4\n")
	apron, _ := r.PartNamed("apron")
	first := r.Pieces[slices.IndexFunc(r.Pieces, func(p rack.Piece) bool { return r.Parts[p.Part].Name == "apron" })]
	const step, half = 230, 12 // mm, of the tiles and of their overlap
	found := map[string]bool{}
	for k, s := range apronTiles(t, r) {
		left := (s.W.MM()-254)/2 + half
		var upper, lower float64
		for _, l := range strokesOf(s) {
			if math.Abs(l.length()-apron.Width.MM()) < 0.05 {
				upper, lower = l.top, l.bottom
			}
		}
		if lower == 0 {
			t.Fatalf("page %s has no line as long as the apron is wide", s.Name)
		}
		for _, m := range s.Marks {
			if c, ok := m.(drawing.Circle); ok && c.R == drawing.MM {
				if c.Centre.Y.MM() < upper || c.Centre.Y.MM() > lower {
					t.Errorf("page %s: a nail outside of the apron", s.Name)
				}
				found[nailKey(float64(k)*step+c.Centre.X.MM()-left, lower-c.Centre.Y.MM())] = true
			}
		}
	}
	nails := 0
	for _, c := range first.Fixed {
		if c.Axis != space.Y {
			continue
		}
		for _, n := range rack.NailPlaces(c.Patch, space.Y, false) {
			nails++
			if key := nailKey((n.X - first.Box.Min.X).MM(), (n.Z - first.Box.Min.Z).MM()); !found[key] {
				t.Errorf("no nail at %s", key)
			}
		}
	}
	if nails != 12 || len(found) != nails {
		t.Errorf("%d nails on the strip, %d on the part; want 12", len(found), nails)
	}
}

// nailKey is a nail's place, along and across, in tenths of a millimetre.
func nailKey(along, across float64) string {
	return fmt.Sprintf("%.1f, %.1f mm", along, across)
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
		if got := strings.Contains(tile, "aprons, in part"); got != c.part {
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
