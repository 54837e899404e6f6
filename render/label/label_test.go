package label_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/label"
	"slatwright/render/pdf"
)

const inchDesign = `
title = "Kitchen rack"
order = "R-021"
[rack]
columns = 4
rows = 5
`

const metricDesign = `
title = "Cellar wall"
order = "An order number that nobody would write but somebody will, 2031/04"
units = "mm"
[rack]
columns = 12
rows = 14
`

// Each piece has one label, with its mark, its number among its kind and its
// length, and nothing leaves its label.
func TestEveryPieceHasItsLabel(t *testing.T) {
	for name, text := range map[string]string{"inch": inchDesign, "metric": metricDesign} {
		r := racktest.Build(t, text)
		sheets, err := label.Sheets(r, "3F9A-77C1")
		if err != nil {
			t.Fatal(err)
		}
		look(t, name, sheets)
		counts := map[string]int{}
		for _, s := range sheets {
			if err := s.Check(); err != nil {
				t.Error(err)
			}
			for _, f := range drawing.Legible(s) {
				t.Error(f)
			}
			for _, m := range s.Marks {
				text, ok := m.(drawing.Text)
				if !ok {
					continue
				}
				if text.Height < 2500 {
					t.Errorf("%s: %q is %v high", s.Name, text.String(), text.Height)
				}
				if strings.Contains(text.String(), " of ") && text.Class == drawing.CellText && !strings.Contains(text.String(), "ladder") {
					counts["number"]++
				}
				if text.Class == drawing.ItemText {
					counts[text.String()]++
				}
			}
		}
		if counts["number"] != len(r.Pieces) {
			t.Errorf("%s: %d labels are numbered, the rack has %d pieces", name, counts["number"], len(r.Pieces))
		}
		for _, p := range r.Parts {
			if counts[p.Mark] != p.Count {
				t.Errorf("%s: %d labels bear %s, want %d", name, counts[p.Mark], p.Mark, p.Count)
			}
		}
	}
}

// look writes sheets where somebody asked to look at them.
func look(t *testing.T, name string, sheets []*drawing.Sheet) {
	t.Helper()
	dir := os.Getenv("SLATWRIGHT_LOOK")
	if dir == "" {
		return
	}
	file, err := pdf.Encode(pdf.Document{Sheets: sheets, FullSize: true})
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "labels-"+name+".pdf"), file, 0o666); err != nil {
		t.Fatal(err)
	}
}

// What hangs on a measured length says so on its label; nothing else does.
func TestCutAfterMeasuring(t *testing.T) {
	r := racktest.Build(t, inchDesign+"[measured]\ncell.channel = \"later\"\n")
	sheets, err := label.Sheets(r, "3F9A-77C1")
	if err != nil {
		t.Fatal(err)
	}
	said := 0
	for _, s := range sheets {
		for _, m := range s.Marks {
			if text, ok := m.(drawing.Text); ok && strings.Contains(text.String(), "cut after measuring") {
				said++
			}
		}
	}
	if said != 5 {
		t.Errorf("said on %d labels; want those of 4 aprons and the top", said)
	}
}
