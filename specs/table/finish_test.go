package table_test

import (
	"testing"
	"time"

	"slatwright/specs/table"
)

// Every species says whether it blotches, once; no row names a wood that is
// not in the species table.
func TestEverySpeciesBlotchesOrNot(t *testing.T) {
	l, _ := table.List("finishes", 0)
	listed := ""
	for _, row := range l.Rows {
		if row.Name == "stain on" {
			listed += row.Text + ", "
		}
	}
	for _, s := range table.AllSpecies() {
		if _, o := table.Blotches(s.ID); o.Standing == table.Own {
			t.Errorf("%s: not in the table of blotching woods", s.ID)
		}
		listed = cutOnce(t, listed, s.ID+", ")
	}
	if listed != "" {
		t.Errorf("blotching woods that are no species, or listed twice: %s", listed)
	}
	for id, want := range map[string]bool{"ponderosa_pine": true, "black_cherry": true, "sugar_maple": true, "black_walnut": false} {
		if got, _ := table.Blotches(id); got != want {
			t.Errorf("Blotches(%s) = %v", id, got)
		}
	}
}

func cutOnce(t *testing.T, s, part string) string {
	t.Helper()
	for i := 0; i+len(part) <= len(s); i++ {
		if s[i:i+len(part)] == part {
			return s[:i] + s[i+len(part):]
		}
	}
	t.Errorf("%q is in no row", part)
	return s
}

// The figures of each finish hang together.
func TestFinishes(t *testing.T) {
	for _, k := range []table.FinishKind{table.Conditioner, table.Stain, table.Coat} {
		list := table.Finishes(k)
		if len(list) == 0 {
			t.Errorf("no %s", k)
		}
		for _, f := range list {
			if f.Coverage.SquareFeet <= 0 || f.Least < 1 || f.Usual < f.Least || f.Recoat.Least <= 0 || f.Recoat.Greatest < f.Recoat.Least {
				t.Errorf("%s: %+v", f.ID, f)
			}
			if k == table.Coat && (f.Handle.Value <= 0 || f.Cure.Value < f.Handle.Value) {
				t.Errorf("%s: light use after %v, hard after %v", f.ID, f.Handle.Value, f.Cure.Value)
			}
			if f.Within.Value != 0 && f.Within.Value < f.Recoat.Greatest {
				t.Errorf("%s: the next must follow within %v, but not before %v", f.ID, f.Within.Value, f.Recoat.Greatest)
			}
		}
	}
	// A maker's page for oil-based polyurethane at minwax.ca: 125 square feet
	// to the quart, recoat after 4 to 6 h, 2 to 3 coats, 220 between coats.
	f, ok := table.FindFinish(table.Coat, "oil_poly")
	if !ok || f.Coverage.SquareFeet != 4*125 || f.Recoat.Least != 4*time.Hour || f.Recoat.Greatest != 6*time.Hour ||
		f.Least != 2 || f.Usual != 3 || f.Grit != 220 {
		t.Errorf("oil_poly: %+v", f)
	}
}

// Glue technical guide at blog.eroko.com: 30 to 60 min, no load for 24 h;
// pine 100 to 150 psi, cherry 150 to 200, oak 200 to 300.
func TestAdhesives(t *testing.T) {
	a, ok := table.FindAdhesive("pva")
	if !ok || a.Clamp.Least != 30*time.Minute || a.Clamp.Greatest != time.Hour || a.Cure.Value != 24*time.Hour {
		t.Errorf("pva: %+v", a)
	}
	for _, c := range []struct {
		species         string
		least, greatest int
	}{{"ponderosa_pine", 100, 150}, {"yellow_poplar", 100, 150}, {"black_cherry", 150, 200}, {"red_oak_commercial", 200, 300}} {
		s, _ := table.FindSpecies(c.species)
		if p := table.PressureFor(s.Gravity.Value); p.Least != c.least || p.Greatest != c.greatest {
			t.Errorf("%s: %d to %d psi; want %d to %d", c.species, p.Least, p.Greatest, c.least, c.greatest)
		}
	}
}

// A sequence skips at most one grit of those that are sold.
func TestSanding(t *testing.T) {
	sold := []int{80, 100, 120, 150, 180, 220, 240, 320}
	at := func(grit int) int {
		for i, g := range sold {
			if g == grit {
				return i
			}
		}
		t.Fatalf("grit %d is not sold", grit)
		return 0
	}
	for id, finest := range map[string]int{"stain": 180, "film": 220} {
		s, ok := table.FindSanding(id)
		if !ok || s.Grits[len(s.Grits)-1] != finest {
			t.Errorf("%s: %v", id, s.Grits)
			continue
		}
		for i := 1; i < len(s.Grits); i++ {
			if step := at(s.Grits[i]) - at(s.Grits[i-1]); step < 1 || step > 2 {
				t.Errorf("%s: from %d to %d", id, s.Grits[i-1], s.Grits[i])
			}
		}
	}
}

func TestHours(t *testing.T) {
	for _, c := range []struct {
		least, greatest time.Duration
		want            string
	}{
		{30 * time.Minute, time.Hour, "30 to 60 min"}, {4 * time.Hour, 6 * time.Hour, "4 to 6 h"}, {24 * time.Hour, 48 * time.Hour, "24 to 48 h"},
		{time.Hour, time.Hour, "60 min"}, {150 * time.Minute, 5 * time.Hour, "2 h 30 min to 5 h"}, {time.Minute, 3 * time.Hour, "1 min to 3 h"},
		{83 * time.Hour, 106 * time.Hour, "3 days 11 h to 4 days 10 h"},
	} {
		if got := table.HoursRange(c.least, c.greatest); got != c.want {
			t.Errorf("HoursRange(%v, %v) = %q; want %q", c.least, c.greatest, got, c.want)
		}
	}
	for d, want := range map[time.Duration]string{
		15 * time.Minute: "15 min", 60 * time.Minute: "60 min", 6 * time.Hour: "6 h", 24 * time.Hour: "24 h",
		150 * time.Minute: "2 h 30 min", 48 * time.Hour: "2 days", 54 * time.Hour: "2 days 6 h", 720 * time.Hour: "30 days",
	} {
		if got := table.Hours(d); got != want {
			t.Errorf("Hours(%v) = %q; want %q", d, got, want)
		}
	}
}
