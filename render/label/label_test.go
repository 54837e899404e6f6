package label_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
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
columns = 3
rows = 4
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
		counts, sizes := map[string]int{}, map[string]int{}
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
				var n, of int
				if k, _ := fmt.Sscanf(text.String(), "%d of %d", &n, &of); k == 2 {
					counts["number"]++
				}
				if strings.Count(text.String(), " × ") == 2 {
					sizes[text.String()]++
				}
				if text.Class == drawing.ItemText {
					counts[text.String()]++
				}
			}
		}
		if counts["number"] != len(r.Pieces) {
			t.Errorf("%s: %d labels are numbered, the rack has %d pieces", name, counts["number"], len(r.Pieces))
		}
		if mark := assembly.BlockMark(r); counts[mark] != 1 {
			t.Errorf("%s: %d labels bear %s, want one for the blocks under the top", name, counts[mark], mark)
		}
		for _, p := range r.Parts {
			if counts[p.Mark] != p.Count {
				t.Errorf("%s: %d labels bear %s, want %d", name, counts[p.Mark], p.Mark, p.Count)
			}
			if size := r.Format.Text(p.Thickness) + " × " + r.Format.Text(p.Width) + " × " + r.Format.Unit(p.Length); sizes[size] < p.Count {
				t.Errorf("%s: %d labels bear %s, want %d", name, sizes[size], size, p.Count)
			}
		}
	}
}

// In cutting order every part of every order has its label, the long ones first,
// and spares have theirs.
func TestLabelsInCuttingOrder(t *testing.T) {
	const board = "[top]\npresent = false\n[[board]]\nnominal = \"1x3\"\nlength = \"8 ft\"\nprice = 5\n"
	a := racktest.Build(t, "order = \"R-1\"\n[rack]\ncolumns = 1\nrows = 1\n[shop]\nspares.leg = 1\n"+board)
	b := racktest.Build(t, "order = \"R-2\"\n[rack]\ncolumns = 2\nrows = 2\n"+board)
	plan, err := saw.Make([]*rack.Rack{a, b}, saw.Quick)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := label.InCuttingOrder(label.Batch{Plan: plan, Marks: []string{"aaaaaaaa", "bbbbbbbb"}})
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]int{}
	for _, s := range sheets {
		for _, f := range drawing.Legible(s) {
			t.Error(f)
		}
		for _, m := range s.Marks {
			if text, ok := m.(drawing.Text); ok {
				got[text.String()]++
			}
		}
	}
	look(t, "batch", sheets)
	for text, want := range map[string]int{"aaaaaaaa": len(a.Pieces) + 1, "R-1": len(a.Pieces) + 1, "bbbbbbbb": len(b.Pieces), "R-2": len(b.Pieces), "spare": 1, "B": 5 + 6} {
		if got[text] != want {
			t.Errorf("%d labels bear %q, want %d", got[text], text, want)
		}
	}
	first, last := "", ""
	for _, x := range plan.Sequence() {
		if first == "" {
			first = x.Mark
		}
		last = x.Mark
	}
	var marks []string
	for _, m := range sheets[0].Marks {
		if text, ok := m.(drawing.Text); ok && text.Class == drawing.ItemText {
			marks = append(marks, text.String())
		}
	}
	if n := len(marks); n == 0 || marks[0] != first || marks[n-1] != last {
		t.Errorf("labels %v; the first part off the saw is %s, the last %s", marks, first, last)
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

// The labels of the first row's slats say that it is the lowest, those of the last
// that it is the top one, and every label names the end or the edge its arrow
// points to.
func TestLabelsSayWhichWay(t *testing.T) {
	r := racktest.Build(t, inchDesign)
	sheets, err := label.Sheets(r, "3F9A-77C1")
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]int{}
	for _, s := range sheets {
		for _, m := range s.Marks {
			if text, ok := m.(drawing.Text); ok {
				got[text.String()]++
			}
		}
	}
	faces := r.Counts.Slats / r.Counts.Rows
	for text, want := range map[string]int{
		"slat, row 1, lowest": faces, "slat, row 2": faces, "slat, row 5, top": faces,
		"FOOT": r.Counts.Legs, "LEFT END": r.Counts.Aprons, "FRONT END": r.Counts.Slats, "FRONT EDGE": 1,
	} {
		if got[text] != want {
			t.Errorf("%d labels say %q, want %d", got[text], text, want)
		}
	}
}
