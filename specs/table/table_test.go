package table_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"slatwright/specs/table"
	"slatwright/specs/unit"
)

const (
	in = unit.Inch
	mm = unit.Millimetre
)

// Every figure that tables prints says where it is from, and every short key
// in an origin is explained below its table.
func TestEveryFigureHasAnOrigin(t *testing.T) {
	standings := []table.Standing{table.Published, table.Practice, table.Memory, table.Derived, table.Own}
	for _, name := range table.Names() {
		l, ok := table.List(name, unit.Imperial)
		if !ok || len(l.Rows) == 0 {
			t.Errorf("%s: no rows", name)
		}
		var seen []string
		for _, row := range l.Rows {
			if row.Name == "" || len(row.Cells) == 0 {
				t.Errorf("%s: a row without a name or a figure: %+v", name, row)
			}
			for _, c := range row.Cells {
				if !slices.Contains(standings, c.Origin.Standing) || strings.TrimSpace(c.Origin.Source) == "" {
					t.Errorf("%s: %s: %s has the origin %+v", name, row.Name, c.Label, c.Origin)
				}
				for _, key := range keys(c.Origin.Source) {
					if !slices.ContainsFunc(l.Sources, func(s table.Source) bool { return s.Key == key && s.Ref != "" }) {
						t.Errorf("%s: %s: %s names source %s, which is not explained", name, row.Name, c.Label, key)
					}
				}
				if c.Origin.Standing == table.Published && len(l.Sources) > 0 && name == "bottles" && len(keys(c.Origin.Source)) == 0 &&
					!strings.Contains(c.Origin.Source, ".com") {
					t.Errorf("%s: %s: %s is published, but names no source: %q", name, row.Name, c.Label, c.Origin.Source)
				}
			}
			seen = append(seen, row.Name+row.Text)
		}
		slices.Sort(seen)
		if len(slices.Compact(slices.Clone(seen))) != len(seen) {
			t.Errorf("%s: two rows of one name", name)
		}
	}
}

// keys returns the short source keys in a text: S and digits.
func keys(source string) []string {
	return slices.DeleteFunc(strings.FieldsFunc(source, func(r rune) bool {
		return (r < '0' || r > '9') && r != 'S'
	}), func(w string) bool { return len(w) < 2 || w[0] != 'S' || strings.Contains(w[1:], "S") })
}

func TestBottles(t *testing.T) {
	if n := len(table.Bottles()); n < 20 {
		t.Errorf("%d kinds of bottle; want 20 or more", n)
	}
	for _, b := range table.Bottles() {
		for _, r := range []table.Range{b.Diameter, b.Height, b.Body} {
			if r.Min <= 0 || r.Min > r.Nominal || r.Nominal > r.Max {
				t.Errorf("%s: %v .. %v .. %v is no range", b.ID, r.Min, r.Nominal, r.Max)
			}
		}
		for _, m := range []table.Mass{b.Mass, b.Glass} {
			if m.Min <= 0 || m.Min > m.Nominal || m.Nominal > m.Max {
				t.Errorf("%s: %d .. %d .. %d g is no range", b.ID, m.Min, m.Nominal, m.Max)
			}
		}
		// Glass and contents make up the filled mass; spirits and beer weigh
		// about as much as water, within a tenth.
		if filling := b.Mass.Nominal - b.Glass.Nominal; filling < b.Millilitres*9/10 || filling > b.Millilitres*11/10 {
			t.Errorf("%s: %d g of contents in %d ml", b.ID, filling, b.Millilitres)
		}
	}
	// Quattrocalici glossary and three other pages, keys S02 to S09 of the table.
	claret, ok := table.FindBottle("claret-750")
	if want := [3]unit.Length{73 * mm, 75 * mm, 80 * mm}; !ok ||
		[3]unit.Length{claret.Diameter.Min, claret.Diameter.Nominal, claret.Diameter.Max} != want {
		t.Errorf("claret-750: diameter %+v; want %v", claret.Diameter, want)
	}
}

func TestNominals(t *testing.T) {
	for _, c := range []struct {
		name             string
		thickness, width unit.Length
		kind             table.Kind
	}{
		// PS 20-20, American Softwood Lumber Standard, minimum dressed sizes, dry.
		{"1x2", 3 * in / 4, in + in/2, table.Board},
		{"1x3", 3 * in / 4, 2*in + in/2, table.Board},
		{"1x4", 3 * in / 4, 3*in + in/2, table.Board},
		{"1x6", 3 * in / 4, 5*in + in/2, table.Board},
		{"1x8", 3 * in / 4, 7*in + in/4, table.Board},
		{"1x10", 3 * in / 4, 9*in + in/4, table.Board},
		{"1 X 12", 3 * in / 4, 11*in + in/4, table.Board},
		{"5/4x4", in, 3*in + in/2, table.Board},
		{"2x2", in + in/2, in + in/2, table.Dimension},
		{"2×4", in + in/2, 3*in + in/2, table.Dimension},
		// NHLA rules, standard thickness surfaced two sides.
		{"4/4", 13 * in / 16, 0, table.Hardwood},
		{"8/4", in + 3*in/4, 0, table.Hardwood},
		// Common practice, no source.
		{"20x45", 20 * mm, 45 * mm, table.Planed},
	} {
		got, ok := table.FindNominal(c.name)
		if !ok || got.Thickness != c.thickness || got.Width != c.width || got.Kind != c.kind {
			t.Errorf("FindNominal(%q) = %+v, %v; want %v x %v, %s", c.name, got, ok, c.thickness, c.width, c.kind)
		}
	}
	if got, ok := table.FindNominal("9x9"); ok {
		t.Errorf("FindNominal(9x9) = %+v; want none", got)
	}
	for _, k := range []table.Kind{table.Board, table.Dimension, table.Hardwood, table.Planed} {
		if lengths, _ := table.RetailLengths(k); len(lengths) == 0 || !slices.IsSorted(lengths) {
			t.Errorf("%s is sold in %v", k, lengths)
		}
	}
}

func TestPapers(t *testing.T) {
	for _, c := range []struct {
		id            string
		width, height unit.Length
	}{
		{"a4", 210 * mm, 297 * mm}, {"a3", 297 * mm, 420 * mm}, {"a2", 420 * mm, 594 * mm}, // ISO 216
		{"letter", 8*in + in/2, 11 * in}, {"tabloid", 11 * in, 17 * in}, // ANSI/ASME Y14.1, sizes A and B
	} {
		if got, ok := table.FindPaper(c.id); !ok || got.Width != c.width || got.Height != c.height {
			t.Errorf("FindPaper(%q) = %+v, %v; want %v x %v", c.id, got, ok, c.width, c.height)
		}
	}
}

func TestSpecies(t *testing.T) {
	beech, ok := table.FindSpecies("American beech")
	// Wood Handbook (FPL-GTR-282, 2021), Table 5-3b: specific gravity 0.64,
	// and so 1000 x 0.64 x 1.12 kg/m3 at 12 %.
	if want := 716.8; !ok || beech.Density() < want-0.01 || beech.Density() > want+0.01 {
		t.Errorf("american_beech: %v kg/m3; want %v", beech.Density(), want)
	}
	for _, s := range table.AllSpecies() {
		if s.Radial.Value <= 0 || s.Tangential.Value <= s.Radial.Value || s.Gravity.Value <= 0.2 || s.Gravity.Value > 1 {
			t.Errorf("%s: movement %v, %v, gravity %v", s.ID, s.Radial.Value, s.Tangential.Value, s.Gravity.Value)
		}
		// The checks divide by these.
		if s.Rupture.Value <= 0 || s.Elasticity.Value <= 0 || s.Shear.Value <= 0 {
			t.Errorf("%s: rupture %v, elasticity %v, shear %v", s.ID, s.Rupture.Value, s.Elasticity.Value, s.Shear.Value)
		}
	}
}

func TestNails(t *testing.T) {
	var gauges []int
	for _, n := range table.Nails() {
		gauges = append(gauges, n.Gauge)
	}
	if want := []int{15, 16, 18, 21, 23}; !slices.Equal(gauges, want) {
		t.Errorf("gauges %v; want %v", gauges, want)
	}
	if n, ok := table.FindNail(18); !ok || n.Diameter != 19*in/400 { // nominal wire size, 0.0475 in
		t.Errorf("18 gauge: %v, %v", n.Diameter, ok)
	}
}

// The defaults that name a stock agree with the lumber table.
func TestDefaultsAgreeWithStock(t *testing.T) {
	for _, c := range []struct {
		part, second     string
		imperial, metric string
	}{{"leg", "width", "1x2", "20x45"}, {"apron", "height", "1x3", "20x65"}} {
		thick, ok1 := table.FindDefault(c.part + ".thickness")
		second, ok2 := table.FindDefault(c.part + "." + c.second)
		i, ok3 := table.FindNominal(c.imperial)
		m, ok4 := table.FindNominal(c.metric)
		if !ok1 || !ok2 || !ok3 || !ok4 || thick.Imperial != i.Thickness || second.Imperial != i.Width ||
			thick.Metric != m.Thickness || second.Metric != m.Width {
			t.Errorf("%s: defaults %+v %+v do not agree with %s and %s", c.part, thick, second, c.imperial, c.metric)
		}
	}
}

// What a default gives way to lies on both sides of it.
func TestDefaultsGiveWay(t *testing.T) {
	limited := 0
	for _, d := range table.Defaults() {
		for _, sys := range []unit.System{unit.Imperial, unit.Metric} {
			least, most := d.Least(sys), d.Most(sys)
			if least > d.Value(sys) || most > 0 && most < d.Value(sys) {
				t.Errorf("%s: %v, that gives way to %v .. %v", d.Name, d.Value(sys), least, most)
			}
			if most > 0 {
				limited++
			}
		}
		if (d.MostImperial > 0) != (d.MostMetric > 0) || (d.LeastImperial > 0) != (d.LeastMetric > 0) {
			t.Errorf("%s is limited in one unit alone", d.Name)
		}
	}
	if limited < 2*3 {
		t.Errorf("%d limits of what defaults grow to; want those of the overhangs at least", limited)
	}
}

func TestPrint(t *testing.T) {
	var all bytes.Buffer
	if err := table.Print(&all, "", unit.Metric); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"claret-750  Bordeaux (claret), 750 ml\n",
		"297 x 420 mm", "published: ISO 216, trimmed sizes, A series\n",
		"  default       6 mm           the project's own: chosen for this program\n",
		"  S02  Quattrocalici",
	} {
		if !strings.Contains(all.String(), want) {
			t.Errorf("the tables do not say %q", want)
		}
	}
	if err := table.Print(&all, "botles", unit.Metric); err == nil {
		t.Error("a table that does not exist prints without an error")
	}
}

// An example price grows with the board, and is marked as an example.
func TestExamplePrices(t *testing.T) {
	last := int64(0)
	for _, name := range []string{"1x2", "1x4", "1x6", "1x8", "1x10", "1x12"} {
		n, _ := table.FindNominal(name)
		price, from := table.ExamplePrice("ponderosa_pine", n.Thickness, n.Width, 8*unit.Foot)
		if price <= last || price%5 != 0 || from.Standing != table.Own || !strings.Contains(from.Source, "example price") {
			t.Errorf("%s: %d after %d, %+v", name, price, last, from)
		}
		last = price
	}
	// By hand: 20 x 95 x 2400 mm is 4.56 litres; at 1.90 that is 8.664, and 260 % of it 22.5264.
	if got, _ := table.ExamplePrice("white_ash", 20*mm, 95*mm, 2400*mm); got != 2255 {
		t.Errorf("ash: %d; want 2255", got)
	}
}
