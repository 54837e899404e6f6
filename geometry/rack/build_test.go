package rack_test

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/unit"
)

// The relations of a slatted rack at sizes that can be added up by hand
// (common practice, no source).
func TestRelationsByHand(t *testing.T) {
	r := racktest.Build(t, `
[bottles]
fit = ["claret-750"]
[rack]
columns = 3
rows = 4
[ladder]
pitch = "4 7/8"
[leg]
thickness = "3/4"
[slat]
thickness = "3/4"
[overhang]
side = "3/8"
`)
	for name, want := range map[string]string{
		"cell.gap": "2 5/8", "cell.channel": "4 1/8", "carcase.width": "15 3/8", "top.length": "16 1/8", "apron.length": "15 3/8",
	} {
		if got := r.Format.Text(r.Len(name)); got != want {
			t.Errorf("%s = %s, want %s", name, got, want)
		}
	}
	c := r.Counts
	if c.Ladders != 4 || c.Legs != 8 || c.Slats != 24 || c.Aprons != 4 || c.Bottles != 12 {
		t.Errorf("counts %+v", c)
	}
}

func TestStarterSolves(t *testing.T) {
	for _, sys := range []unit.System{unit.Imperial, unit.Metric} {
		r := racktest.Build(t, design.Starter(sys))
		if r.Counts.Bottles == 0 {
			t.Errorf("%v: no bottles", sys)
		}
	}
}

func TestMost(t *testing.T) {
	r := racktest.Build(t, "[site]\nwidth = 42\nheight = 42\n[rack]\ncolumns = \"most\"\nrows = \"most\"\n")
	if r.Len("rack.width") > 42*unit.Inch || r.Len("rack.height") > 42*unit.Inch {
		t.Errorf("too large: %v by %v", r.Len("rack.width"), r.Len("rack.height"))
	}
	more := "[rack]\nwidth = \"<= 42\"\nheight = \"<= 42\"\n"
	for _, counts := range []string{"columns = 10\nrows = 9\n", "columns = 9\nrows = 10\n"} {
		next, err := racktest.Try(t, more+counts)
		if err != nil {
			continue
		}
		// One more must cost a standing default, else "most" was not the most.
		kept := !slices.ContainsFunc(next.Lengths, func(l rack.Solved) bool { return strings.Contains(l.Because, "as near as") })
		if kept {
			t.Errorf("%q keeps every default, so 9 by 9 was not the most", counts)
		}
	}
	if r.Counts.Columns != 9 || r.Counts.Rows != 9 {
		t.Errorf("%d by %d, want 9 by 9", r.Counts.Columns, r.Counts.Rows)
	}
	if len(r.Nexts) != 2 || len(r.Nexts[0].StoppedBy) == 0 {
		t.Errorf("nexts %+v", r.Nexts)
	}
}

func TestNothingLimits(t *testing.T) {
	_, err := racktest.Try(t, "[rack]\nrows = 5\n")
	var list diag.List
	if !errors.As(err, &list) || !strings.Contains(list.Error(), "nothing limits rack.columns") {
		t.Errorf("got %v", err)
	}
}

// A line of bottles is named only where leaving it out, or another bottle, would
// help.
func TestClashNamesLines(t *testing.T) {
	for _, c := range []struct {
		fit  string
		want []int
	}{{"claret-750", []int{2, 3}}, {"magnum-1500", []int{2, 3}}} {
		t.Run(c.fit, func(t *testing.T) { clashesAt(t, c.fit, c.want) })
	}
}

func clashesAt(t *testing.T, fit string, want []int) {
	_, err := racktest.Try(t, "[rack]\nwidth = \"<= 12\"\ncolumns = 4\nrows = 5\n[bottles]\nfit = [\""+fit+"\"]\n")
	var clash *rack.Clash
	if !errors.As(err, &clash) {
		t.Fatalf("got %v", err)
	}
	var lines []int
	for _, l := range clash.Lines {
		lines = append(lines, l.Line)
	}
	slices.Sort(lines)
	if !slices.Equal(lines, want) {
		t.Errorf("lines %v, want %v", lines, want)
	}
	if len(clash.Changes) == 0 || !strings.Contains(clash.Messages()[0].Hint, "any one of these") {
		t.Errorf("changes %v", clash.Changes)
	}
}

// A figure that the maker states is not overruled by a requirement.
func TestStatedGapStillDraws(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 2\nrows = 2\n[cell]\ngap = \"3 1/2\"\n")
	if r.Len("cell.gap") != 7*unit.Inch/2 {
		t.Errorf("gap %v", r.Len("cell.gap"))
	}
}

func TestColumnsThatDiffer(t *testing.T) {
	r := racktest.Build(t, `
[bottles]
fit = ["claret-750"]
[rack]
rows = 5
[[column]]
count = 3
[[column]]
fit = ["magnum-1500"]
rows = 3
`)
	if len(r.Kinds) != 2 || r.Counts.Columns != 4 || r.Counts.Bottles != 18 {
		t.Fatalf("%d kinds, counts %+v", len(r.Kinds), r.Counts)
	}
	if r.Kinds[1].Gap <= r.Kinds[0].Gap {
		t.Errorf("magnums lie in %v, clarets in %v", r.Kinds[1].Gap, r.Kinds[0].Gap)
	}
	var roles []string
	for _, s := range r.Shapes {
		roles = append(roles, s.Name)
	}
	if want := []string{"left end", "inner", "inner 2", "right end"}; !slices.Equal(roles, want) {
		t.Errorf("shapes %v, want %v", roles, want)
	}
}

// Pieces never share volume, slats sit on the legs of their own ladder, and the
// rack's box is its stated size.
func TestPiecesInSpace(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 12 {
		r := racktest.Build(t, randomDesign(rng))
		for i, a := range r.Pieces {
			for _, b := range r.Pieces[i+1:] {
				if !a.Box.Meet(b.Box).Empty() {
					t.Fatalf("%s and %s overlap", a.Name, b.Name)
				}
			}
			if r.Parts[a.Part].Name == "slat" && len(a.Fixed) != 2 {
				t.Fatalf("%s is fixed to %d legs", a.Name, len(a.Fixed))
			}
		}
		size := r.Bounds().Size()
		if size.X != r.Len("rack.width") || size.Y != r.Len("rack.depth") || size.Z != r.Len("rack.height") {
			t.Errorf("bounds %v", size)
		}
	}
}

func randomDesign(rng *rand.Rand) string {
	units := []string{"in", "mm"}[rng.IntN(2)]
	fit := []string{"claret-750", "burgundy-750", "half-375", "magnum-1500"}[rng.IntN(4)]
	return "units = \"" + units + "\"\n[bottles]\nfit = [\"" + fit + "\"]\n[rack]\ncolumns = " +
		string(rune('1'+rng.IntN(5))) + "\nrows = " + string(rune('1'+rng.IntN(6))) + "\n"
}

// The same length in another unit gives the same rack.
func TestUnitsOfAFigureDoNotMatter(t *testing.T) {
	a := racktest.Build(t, "[rack]\nwidth = \"<= 24 in\"\nrows = 5\n")
	b := racktest.Build(t, "[rack]\nwidth = \"<= 609.6 mm\"\nrows = 5\n")
	for i, l := range a.Lengths {
		if b.Lengths[i].Value != l.Value {
			t.Errorf("%s: %v and %v", l.Name, l.Value, b.Lengths[i].Value)
		}
	}
}

// Every lettered relation of the rack, added up again from the solved lengths.
func TestSolvedLengthsAddUp(t *testing.T) {
	r := racktest.Build(t, "[site]\nwidth = 31\nheight = \"1 m\"\n[rack]\ncolumns = \"most\"\nrows = \"most\"\n")
	n := unit.Length(r.Counts.Columns)
	for _, s := range []struct {
		name string
		want unit.Length
	}{
		{"cell.channel", r.Len("cell.gap") + 2*r.Len("slat.thickness")},
		{"ladder.pitch", r.Len("cell.channel") + r.Len("leg.thickness")},
		{"carcase.width", n*r.Len("ladder.pitch") + r.Len("leg.thickness")},
		{"carcase.depth", r.Len("slat.length") + 2*r.Len("apron.thickness")},
		{"top.length", r.Len("carcase.width") + 2*r.Len("overhang.side")},
		{"rack.height", r.Len("leg.length") + r.Len("top.thickness")},
	} {
		if r.Len(s.name) != s.want {
			t.Errorf("%s = %v, want %v", s.name, r.Len(s.name), s.want)
		}
	}
}

// The count that tells whether rows follow the described ones was once reported
// as one that nothing limits.
func TestDescribedRowsWithOpenCount(t *testing.T) {
	r := racktest.Build(t, "[site]\nheight = 40\n[[column]]\ncount = 2\n[[column.row]]\nfit = [\"claret-750\"]\n")
	if r.Counts.Columns != 2 || r.Counts.Rows < 3 {
		t.Errorf("counts %+v", r.Counts)
	}
}
