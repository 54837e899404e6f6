package table_test

import (
	"slices"
	"testing"

	"slatwright/specs/table"
)

// Spans are spans, glues are clamped before they are loaded, and stages follow
// each other.
func TestAdhesivesAndFinishes(t *testing.T) {
	for _, a := range table.Adhesives() {
		for _, s := range []table.Span{a.Open, a.Clamp, a.Stressed, a.Cure, a.Spread, a.Coldest} {
			if s.Lo <= 0 || s.Lo > s.Hi {
				t.Errorf("%s: %v .. %v is no span", a.ID, s.Lo, s.Hi)
			}
		}
		if a.Clamp.Lo <= a.Open.Hi || a.Cure.Hi*60 < a.Clamp.Hi {
			t.Errorf("%s: open %v, in clamps %v min, cured %v h", a.ID, a.Open, a.Clamp, a.Cure)
		}
	}
	stages := []string{"condition", "stain", "seal", "topcoat"}
	last := 0
	for _, f := range table.Finishes() {
		at := slices.Index(stages, f.Stage)
		if at < last {
			t.Errorf("%s: stage %q out of order", f.ID, f.Stage)
		}
		last = at
		for _, s := range []table.Span{f.Coverage, f.Coats, f.Recoat, f.Cure} {
			if s.Lo <= 0 || s.Lo > s.Hi {
				t.Errorf("%s: %v .. %v is no span", f.ID, s.Lo, s.Hi)
			}
		}
	}
	// A maker's page: 125 ft² a quart; 1 ft² is 0.09290304 m², 1 qt 0.946353 l.
	oil, ok := table.FindFinish("oil-polyurethane")
	if want := 125 * 0.09290304 / 0.946353; !ok || oil.Coverage.Lo < want-0.05 || oil.Coverage.Lo > want+0.05 {
		t.Errorf("oil-polyurethane covers %v m²/l; want %.2f", oil.Coverage.Lo, want)
	}
	for _, s := range table.Sandings() {
		if !slices.IsSorted(s.Grits) || len(s.Grits) == 0 {
			t.Errorf("%s: grits %v", s.ID, s.Grits)
		}
	}
}

// Glue technical guide at blog.eroko.com: pine and poplar 100 to 150 psi,
// cherry 150 to 200, oak 200 to 300.
func TestClampPressure(t *testing.T) {
	for _, c := range []struct {
		species string
		lo, hi  float64
	}{{"ponderosa_pine", 100, 150}, {"yellow_poplar", 100, 150}, {"black_cherry", 150, 200}, {"red_oak_commercial", 200, 300}} {
		s, ok := table.FindSpecies(c.species)
		if got := table.ClampPressure(s.Gravity.Value); !ok || got.Lo != c.lo || got.Hi != c.hi {
			t.Errorf("%s: %v .. %v psi; want %v .. %v", c.species, got.Lo, got.Hi, c.lo, c.hi)
		}
	}
}

// Every species that blotches is in the table of species.
func TestBlotches(t *testing.T) {
	found := 0
	for _, s := range table.AllSpecies() {
		if yes, origin := table.Blotches(s.ID); yes && origin.Source != "" {
			found++
		}
	}
	if found < 8 {
		t.Errorf("%d species blotch; want the 8 of the table", found)
	}
	if yes, _ := table.Blotches("white_oak_commercial"); yes {
		t.Error("white oak blotches")
	}
}

func TestUnknownConstantPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an unknown constant has a value")
		}
	}()
	table.Value("no.such")
}
