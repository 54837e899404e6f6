package template_test

import (
	"slices"
	"strconv"
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
		cards, nails := 0, 0
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
				if d.name == "flat slats" && p.Bounds().H() < 12*drawing.MM { // too low for more than its name
					nails++
					if got := wordsWithin(s, p.Bounds()); !slices.Equal(got, []string{"Nails of a slat's end, step " + mark + ", Mark out"}) {
						t.Errorf("%s: the card of a low slat says %q", d.name, got)
					}
					continue
				}
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
		if d.name == "flat slats" && nails != 1 {
			t.Errorf("%s: %d cards for low slats", d.name, nails)
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

// Each strip bears its name inside its outline, clear of its marks, on one of its
// pages at least.
func TestNamesAreInsideTheStrips(t *testing.T) {
	for _, d := range designs {
		r := racktest.Build(t, d.text)
		sheets, err := template.Sheets(r, "test")
		if err != nil {
			t.Fatal(err)
		}
		strips, named := map[string]bool{}, map[string]bool{}
		for _, s := range sheets {
			if !strings.HasPrefix(s.Title, "Template row") {
				continue
			}
			var long []drawing.Um // upper and lower edges, strip by strip
			for _, m := range s.Marks {
				if p, ok := m.(drawing.Path); ok && p.Class == drawing.Visible && p.Bounds().H() == 0 {
					long = append(long, p.Start.Y)
				}
			}
			for _, m := range s.Marks {
				text, ok := m.(drawing.Text)
				if !ok {
					continue
				}
				if rest, ok := strings.CutPrefix(text.String(), "strip "); ok {
					strips[strings.Fields(rest)[0]] = true
				}
				rest, ok := strings.CutPrefix(text.String(), "Strip ")
				if !ok {
					continue
				}
				named[strings.TrimSuffix(strings.Fields(rest)[0], ":")] = true
				box := text.Bounds()
				within := false
				for i := 0; i+1 < len(long); i += 2 {
					within = within || long[i] < box.Min.Y && box.Max.Y < long[i+1]
				}
				if !within {
					t.Errorf("%s: %s: %q is not between the edges of a strip", d.name, s.Name, text.String())
				}
			}
		}
		for s := range strips {
			if !named[s] {
				t.Errorf("%s: strip %s does not bear its name", d.name, s)
			}
		}
		if len(strips) < 2 {
			t.Errorf("%s: %d strips", d.name, len(strips))
		}
	}
}

// No X lies over a seam, where a trim would halve it.
func TestNoXOverASeam(t *testing.T) {
	seen := 0
	for _, d := range designs {
		r := racktest.Build(t, d.text)
		sheets, err := template.Sheets(r, "test")
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sheets {
			var seams []drawing.Um
			for _, m := range s.Marks {
				if p, ok := m.(drawing.Path); ok && p.Class == drawing.Phantom {
					seams = append(seams, p.Start.X)
				}
			}
			for _, m := range s.Marks {
				p, ok := m.(drawing.Path)
				if !ok || p.Class != drawing.Symbol || p.Bounds().W() == 0 || p.Bounds().H() == 0 {
					continue
				}
				seen++
				for _, x := range seams {
					if p.Bounds().Min.X < x && x < p.Bounds().Max.X {
						t.Errorf("%s: %s: an X at %v lies over the seam at %v", d.name, s.Name, p.Bounds().Centre(), x)
					}
				}
			}
		}
	}
	if seen < 100 {
		t.Errorf("%d strokes of an X", seen)
	}
}

// The pages of a row say in which order they are joined, and every page with
// something to cut says once what is cut.
func TestPagesSayHowTheyJoin(t *testing.T) {
	r := racktest.Build(t, inchDesign)
	sheets, err := template.Sheets(r, "test")
	if err != nil {
		t.Fatal(err)
	}
	number := map[string]string{}
	for i, s := range sheets {
		number[s.Title] = strconv.Itoa(i + 1)
	}
	for i, s := range sheets {
		all := strings.Join(wordsOf(s), "\n")
		if i > 0 && strings.Count(all, "heavy lines") != 1 {
			t.Errorf("%s says %d times what is cut", s.Name, strings.Count(all, "heavy lines"))
		}
		if before, ok := strings.CutSuffix(s.Title, ", sheet 2"); ok {
			want := "tape onto page " + number[before+", sheet 1"] + ";"
			if !strings.Contains(all, want) {
				t.Errorf("%s does not say %q", s.Name, want)
			}
			if next := number[before+", sheet 3"]; next != "" && !strings.Contains(all, "page "+next+" joins at ") {
				t.Errorf("%s does not say that page %s joins", s.Name, next)
			}
		}
	}
}
