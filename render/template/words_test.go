package template_test

import (
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/check"
	"slatwright/geometry/finish"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/template"
	"slatwright/specs/unit"
)

// A card once cut out still says what it is and at which step it is used: its words
// stand within its outline.
func TestWordsAreInsideTheCards(t *testing.T) {
	for _, d := range designs {
		r := racktest.Build(t, d.text)
		var top finish.Panel // glued up, it moves all later steps on
		if r.HasTop() {
			top = finish.Panel{Tops: 1, Staves: 4, StaveWidth: 2 * unit.Inch, Length: 20 * unit.Inch}
		}
		mark := assembly.Number(assembly.Steps(r, top, nil), assembly.StepMark)
		sheets, err := template.WithTop(r, top, "test")
		if err != nil {
			t.Fatal(err)
		}
		cards := 0
		for _, s := range sheets {
			if !strings.Contains(s.Name, "-gauges") {
				continue
			}
			for _, m := range s.Marks {
				p, ok := m.(drawing.Path)
				if !ok || p.Class != drawing.Visible || p.Bounds().H() == 0 || p.Bounds().W() == 0 {
					continue
				}
				cards++
				said := strings.Join(wordsWithin(s, p.Bounds()), " ")
				if strings.HasPrefix(said, "Nails") && !strings.Contains(said, "Step "+mark+", ") || !strings.Contains(said, "tep W") {
					t.Errorf("%s: %s: a card at %v says %q, without its step", d.name, s.Name, p.Bounds(), said)
				}
				what := []string{"Nails of", "Gap card", "Lowest-slat card", "Thinnest bottle", "Thickest bottle"}
				if !slices.ContainsFunc(what, func(w string) bool { return strings.HasPrefix(said, w) }) {
					t.Errorf("%s: %s: a card at %v says %q, and not what it is", d.name, s.Name, p.Bounds(), said)
				}
			}
		}
		if cards < 3 {
			t.Errorf("%s: %d cards", d.name, cards)
		}
	}
}

// wordsWithin returns the texts of a sheet that stand wholly within a box.
func wordsWithin(s *drawing.Sheet, box drawing.Rect) []string {
	var out []string
	for _, m := range s.Marks {
		if text, ok := m.(drawing.Text); ok && box.Holds(text.Bounds()) {
			out = append(out, text.String())
		}
	}
	return out
}

// One card does for all slats: seen at the slat's outer face the nails of every
// crossing are alike on left and right faces, at front and back legs, and alike when
// the card is turned half round.
func TestOneCardForAllSlats(t *testing.T) {
	for _, text := range []string{inchDesign, strings.Split(metricDesign, "[printer]")[0]} {
		r := racktest.Build(t, text)
		type place struct{ along, across unit.Length }
		seen := map[unit.Length]map[[2]place]int{}
		for _, c := range check.Crossings(r) {
			size := c.Patch.Size()
			var got [2]place
			for i, n := range c.Nails {
				got[i] = place{n.Y - c.Patch.Min.Y, n.Z - c.Patch.Min.Z}
				if !c.Right { // from the left the back is at the left
					got[i].along = size.Y - got[i].along
				}
			}
			if got[0].along > got[1].along {
				got[0], got[1] = got[1], got[0]
			}
			turned := [2]place{{size.Y - got[1].along, size.Z - got[1].across}, {size.Y - got[0].along, size.Z - got[0].across}}
			if turned != got {
				t.Errorf("nails at %v are at %v when the card is turned half round", got, turned)
			}
			if got[0].across < got[1].across {
				t.Errorf("seen at the outer face the left nail is the lower one: %v", got)
			}
			if seen[c.Aside] == nil {
				seen[c.Aside] = map[[2]place]int{}
			}
			seen[c.Aside][got]++
			if c.Aside != 0 && !c.Right {
				t.Errorf("a ringed crossing on a left face")
			}
		}
		for aside, kinds := range seen {
			if len(kinds) != 1 {
				t.Errorf("%d kinds of nails set aside by %v; one card shows them", len(kinds), aside)
			}
		}
	}
}
