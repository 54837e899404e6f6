package sheet_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/check"
	"slatwright/geometry/finish"
	"slatwright/geometry/inspect"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// packet composes all sheets of a rack.
func packet(t *testing.T, r *rack.Rack) []*drawing.Sheet {
	t.Helper()
	sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd"})
	if err != nil {
		t.Fatal(err)
	}
	return sheets
}

// lettered is all text of the sheets whose names hold the word, spaces left out.
func lettered(sheets []*drawing.Sheet, word string) string {
	var b strings.Builder
	for _, s := range sheets {
		if !strings.Contains(s.Name, word) {
			continue
		}
		for _, m := range s.Marks {
			if text, ok := m.(drawing.Text); ok {
				b.WriteString(text.String())
			}
		}
	}
	return strings.Join(strings.Fields(b.String()), "")
}

// The sheets of finishing, assembly and inspection leave nothing out: every row
// to be taped, every figure taken with its source, every step, every set of
// clamps, every dimension.
func TestFinishingSheetsAreWhole(t *testing.T) {
	racks := demos(t)
	racks["stained"] = racktest.Build(t, "date = 2031-03-04\n[rack]\ncolumns = 19\nrows = 24\n[finish]\nstain = \"oil_stain\"\n[paper]\ndrawings = \"a4\"\n")
	for name, r := range racks {
		sheets := packet(t, r)
		texts := map[string]string{}
		for _, word := range []string{"order", "bare", "quantities", "work", "hardware", "clamps", "inspection"} {
			texts[word] = lettered(sheets, word)
		}
		shows := func(word, what string) {
			t.Helper()
			if what = strings.Join(strings.Fields(what), ""); !strings.Contains(texts[word], what) {
				t.Errorf("%s: the %s sheets do not show %s", name, word, what)
			}
		}
		for _, w := range finish.Rows(r) {
			shows("bare", r.Parts[w.Part].Name+", "+w.Face)
		}
		for _, s := range finish.Supplies(r, finish.Panel{}) {
			shows("quantities", finish.Volume(r.Format.System, s.Millilitres))
			shows("order", s.Coverage.Origin.Source)
		}
		for _, s := range assembly.Steps(r, finish.Panel{}, nil) {
			shows("work", s.Name) // its text is broken into lines beside other columns
		}
		for _, c := range assembly.Sets(r, finish.Panel{}) {
			shows("clamps", fmt.Sprint(c.For, c.Count, " ", c.Times)) // the row, cell by cell
			shows("clamps", c.Force.Text(r.Format.System))
		}
		for _, d := range assembly.Diagonals(r) {
			shows("clamps", d.Text(r.Format.System))
			shows("inspection", d.Text(r.Format.System))
		}
		for _, d := range inspect.Dimensions(r) {
			shows("inspection", d.Name+": "+d.Between)
			shows("inspection", r.Format.Text(d.Drawn))
		}
		shows("inspection", "Initials")
		shows("quantities", "Rags wet with oil")
		shows("work", "The full rack is heavy")
		for _, i := range assembly.Hardware(r, finish.Panel{}) {
			shows("hardware", i.What)
		}
	}
	if text := lettered(packet(t, racks["stained"]), "work"); !strings.Contains(text, "Begunon4March2031") {
		t.Error("the order of work does not say when the rack can be ready")
	}
	if text := lettered(packet(t, racks["counter-wide-gap.toml"]), "inspection"); !strings.Contains(text, "FAILSasdrawn:restinthegap") {
		t.Error("the inspection sheet of a failing rack does not say so")
	}
}

// Racks of all finishes, glues and papers, with columns that differ, get sheets
// that can be read.
func TestRandomFinishes(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	pick := func(list ...string) string { return list[rng.IntN(len(list))] }
	for range 16 {
		text := fmt.Sprintf("units = %q\ndate = 2031-05-06\n[bottles]\nfit = [\"claret-750\"]\n[finish]\ncoat = %q\nstain = %q\nglue = %q\n[wood]\nspecies = %q\n[paper]\ndrawings = %q\n",
			pick("in", "mm"), pick("none", "oil_poly", "water_poly", "shellac", "drying_oil"), pick("none", "oil_stain", "water_stain"),
			pick("pva", "pva_water_resistant", "hide_liquid", "polyurethane"), pick("ponderosa_pine", "red_oak_commercial", "black_cherry"),
			pick("letter", "tabloid", "a4", "a3"))
		for range 1 + rng.IntN(4) {
			text += fmt.Sprintf("[[column]]\ncount = %d\nrows = %d\n", 1+rng.IntN(5), 1+rng.IntN(14))
		}
		for _, s := range packet(t, racktest.Build(t, text)) {
			for _, f := range drawing.Legible(s) {
				t.Errorf("%v\n%s", f, text)
			}
		}
	}
}

// Legs with more slats than figures go side by side over them once had figures
// beyond the frame: every other one stands below now, and no place is lost.
func TestManyStripsAreFiguredOnBothSides(t *testing.T) {
	for _, c := range []struct {
		fit, paper string
		rows       int
	}{{"half-375", "letter", 24}, {"longneck-355", "letter", 24}, {"claret-750", "a4", 40}, {"claret-750", "letter", 120}} {
		text := fmt.Sprintf("units = \"mm\"\n[bottles]\nfit = [%q]\n[rack]\ncolumns = 2\nrows = %d\n[paper]\ndrawings = %q\n", c.fit, c.rows, c.paper)
		r := racktest.Build(t, text)
		bare := sheet.Bare(sheet.Input{Rack: r, Mark: "0123abcd"})
		for _, s := range bare {
			for _, f := range drawing.Legible(s) {
				t.Errorf("%v\n%s", f, text)
			}
		}
		all := lettered(bare, "bare")
		missing := 0
		for _, under := range r.Kinds[0].Under {
			if !strings.Contains(all, r.Format.Text(under)) {
				missing++
			}
		}
		if said := strings.Contains(all, "Somefiguresleftout"); said != (missing > 0) {
			t.Errorf("%d places have no figure; that some are left out is said: %v\n%s", missing, said, text)
		}
	}
}

// Sheets once spoke of glue, of what stays bare for it and of clamps to a rack
// that is nailed alone, and called a top free to move that is glued all round.
func TestSheetsSpeakOfTheJointsAsTheyAre(t *testing.T) {
	for _, c := range []struct {
		text         string
		says, silent []string // letters of all sheets but the order and cutting sheets, no spaces
	}{
		{"[joint]\nglue = false\n[top]\npresent = false\n", []string{"Hatched:whereitsits", "Hatched:whereslatssit", "lastnailsaredriven"},
			[]string{"glue", "Glue", "clamp", "Clamp", "tape", "Tape"}},
		{"[joint]\nglue = false\n", []string{"Onlythetopisglued", "frontupperapronalone"}, []string{"aclamp,onacaul", "Keepbareoffinish"}},
		{"[joint]\ntop = \"glued\"\n", []string{"Glueittobothupperaprons", "Keepbareoffinish"}, []string{"swellandshrink", "frontupperapronalone"}},
	} {
		r := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n"+c.text)
		var text string
		for _, s := range packet(t, r) {
			for _, f := range drawing.Legible(s) {
				t.Errorf("%v\n%s", f, c.text)
			}
			if !strings.Contains(s.Name, "order") {
				text += lettered([]*drawing.Sheet{s}, "")
			}
		}
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%q: no sheet says %q", c.text, want)
			}
		}
		for _, bad := range c.silent {
			if strings.Contains(text, bad) {
				t.Errorf("%q: a sheet says %q", c.text, bad)
			}
		}
	}
}
