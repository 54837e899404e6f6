package sheet_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/cutting"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// cuttingSheets composes a packet and returns the sheets of its cutting plan.
func cuttingSheets(t *testing.T, in sheet.Input) []*drawing.Sheet {
	t.Helper()
	all, err := sheet.Packet(in)
	if err != nil {
		t.Fatal(err)
	}
	var out []*drawing.Sheet
	for _, s := range all {
		if strings.Contains(s.Name, "-cutting") {
			out = append(out, s)
		}
	}
	return out
}

// Racks of every proportion, in either unit, on any paper and with boards of
// every width, get cutting sheets that can be read.
func TestRandomCuttingSheets(t *testing.T) {
	n := 10
	if os.Getenv("SLATWRIGHT_LONG") == "1" {
		n = 300
	}
	rng := rand.New(rand.NewPCG(7, 31))
	for range n {
		text := randomDesign(rng)
		if rng.IntN(2) == 0 { // wide boards alone, so that all is ripped
			text += fmt.Sprintf("[[board]]\nthickness = %q\nwidth = %q\nlength = \"16 ft\"\nprice = 30\n[shop]\nspares.slat = 1\n",
				map[bool]string{true: "20 mm", false: "3/4 in"}[strings.Contains(text, "units = \"mm\"")], []string{"5 1/2 in", "11 1/4 in", "300 mm"}[rng.IntN(3)])
		}
		r := racktest.Build(t, text)
		for _, s := range cuttingSheets(t, sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: planned(t, r)}) {
			for _, f := range drawing.Legible(s) {
				t.Errorf("%v\n%s", f, text)
			}
		}
	}
}

// The sheets show every part as often as it is cut, spares and staves included,
// and every setting.
func TestCuttingSheetsAreWhole(t *testing.T) {
	for name, r := range demos(t) {
		plan := planned(t, r)
		want := map[string]int{}
		for _, b := range plan.Boards {
			for _, s := range b.Sections {
				for _, strip := range s.Strips {
					for _, p := range strip.Parts {
						mark := plan.Label(p)
						if p.Spare {
							mark += "+"
						}
						want[mark]++
					}
				}
			}
		}
		got, texts := map[string]int{}, map[string]bool{}
		for _, s := range cuttingSheets(t, sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: plan}) {
			for _, m := range s.Marks {
				if text, ok := m.(drawing.Text); ok {
					texts[text.String()] = true
					if text.Class == drawing.ItemText && text.Bold {
						got[text.String()]++
					}
				}
			}
		}
		for mark, n := range want {
			if got[mark] != n {
				t.Errorf("%s: %d times %s, want %d", name, got[mark], mark, n)
			}
		}
		for _, s := range plan.Steps {
			if s.HasStop && !texts[plan.Format.Text(s.Setting.At)] {
				t.Errorf("%s: no setting of %s", name, plan.Format.Text(s.Setting.At))
			}
			if s.Operation == cutting.GluingUp {
				continue // the order of work says how
			}
			for _, c := range s.Cautions {
				if first, _, _ := strings.Cut(c, ","); !strings.Contains(strings.Join(keys(texts), "\n"), first) {
					t.Errorf("%s: no caution %q", name, first)
				}
			}
		}
	}
}

// A batch of many orders has lists that go on over sheets, and they can be read.
// Boards of any size have their scale.
func TestBatchSheets(t *testing.T) {
	const board = "[top]\npresent = false\n[[board]]\nnominal = \"1x6\"\nlength = \"12 ft\"\nprice = 20\n"
	var racks []*rack.Rack
	for i := range 60 {
		racks = append(racks, racktest.Build(t, fmt.Sprintf("order = \"R-%03d\"\n[rack]\ncolumns = %d\nrows = %d\n", i+1, 1+i%2, 1+i%2)+board))
	}
	plan, err := saw.Make(racks, 1)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := sheet.Cutting(sheet.Input{Rack: racks[0], Mark: "0123abcd", Cutting: plan})
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, s := range sheets {
		for _, f := range drawing.Legible(s) {
			t.Error(f)
		}
		for _, m := range s.Marks {
			if text, ok := m.(drawing.Text); ok {
				all.WriteString(text.String() + "\n")
			}
		}
	}
	for _, p := range plan.Job.Parts {
		if !strings.Contains(all.String(), p.Order+" "+p.Mark+"\n") {
			t.Errorf("no %s %s", p.Order, p.Mark)
		}
	}
	giant := racktest.Build(t, "[rack]\ncolumns = 2\nrows = 2\n[[board]]\nthickness = \"3/4\"\nwidth = \"60 ft\"\nlength = \"65 ft\"\nprice = 1\n")
	if _, err := sheet.Cutting(sheet.Input{Rack: giant, Mark: "0123abcd", Cutting: planned(t, giant)}); err != nil {
		t.Error(err)
	}
}

func keys(m map[string]bool) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	return out
}

// A rack that its boards do not reach for has a sheet that says so.
func TestUncutSheet(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 2\nrows = 2\n")
	sheets := cuttingSheets(t, sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Uncut: "the boards on hand run out"})
	if len(sheets) != 1 || len(drawing.Legible(sheets[0])) > 0 {
		t.Errorf("%d sheets", len(sheets))
	}
	if none := cuttingSheets(t, sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd"}); len(none) != 0 {
		t.Errorf("%d sheets where no plan was asked for", len(none))
	}
}
