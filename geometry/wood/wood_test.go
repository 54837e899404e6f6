package wood_test

import (
	"fmt"
	"math"
	"testing"

	"slatwright/geometry/wood"
	"slatwright/specs/design"
	"slatwright/specs/table"
)

// Ten cells of Wood Handbook (FPL-GTR-282), Table 4-2, read second hand. The
// table was made by the equation and is printed to 0.1; its cell at 21.1 °C and
// 85 % has 17.9 for 17.95, and so 0.06 is allowed.
func TestEquilibriumTable(t *testing.T) {
	for _, c := range []struct{ celsius, humidity, printed float64 }{
		{21.1, 5, 1.3}, {21.1, 30, 6.2}, {21.1, 50, 9.2}, {21.1, 75, 14.4}, {21.1, 85, 17.9}, {21.1, 95, 23.9},
		{-1.1, 75, 14.9}, {-1.1, 95, 24.3}, {37.8, 50, 8.7}, {37.8, 90, 19.5},
	} {
		if got := wood.Equilibrium(c.celsius, c.humidity); math.Abs(got-c.printed) > 0.06 {
			t.Errorf("%g °C, %g %%: %.3f %%; the table prints %g", c.celsius, c.humidity, got, c.printed)
		}
	}
	// Printed with the equation at 20 °C: 65 % gives 12.00, 50 % gives 9.27 (second hand).
	for _, c := range []struct{ humidity, printed float64 }{{65, 12.00}, {50, 9.27}} {
		if got := wood.Equilibrium(20, c.humidity); math.Abs(got-c.printed) > 0.006 {
			t.Errorf("20 °C, %g %%: %.3f %%; printed %g", c.humidity, got, c.printed)
		}
	}
}

// The equation in degrees Fahrenheit, with its own constants (printed beside
// those in Celsius), is an independent second form of it.
func TestEquilibriumInFahrenheit(t *testing.T) {
	in := func(f, h float64) float64 {
		w := 330 + 0.452*f + 0.00415*f*f
		k := 0.791 + 0.000463*f - 0.000000844*f*f
		k1 := 6.34 + 0.000775*f - 0.0000935*f*f
		k2 := 1.09 + 0.0284*f - 0.0000904*f*f
		x := k * h / 100
		return 1800 / w * (x/(1-x) + (k1*x+2*k1*k2*x*x)/(1+k1*x+k1*k2*x*x))
	}
	for f := 40.0; f <= 100; f += 10 {
		for h := 10.0; h <= 90; h += 10 {
			if got, want := wood.Equilibrium((f-32)/1.8, h), in(f, h); math.Abs(got-want) > 0.03 {
				t.Errorf("%g °F, %g %%: %.3f; %.3f in the other form", f, h, got, want)
			}
		}
	}
}

// Wood Handbook, chapter 13, calculation of dimensional change: a flatsawn board
// of white fir, C_T = 0.00245, 9.15 in (232 mm) wide, from 8 to 11 %, comes to
// 9.217 in (233.7 mm). The final figures were read; 8 % and C_T are from memory,
// and the arithmetic agrees with them.
func TestMovementExample(t *testing.T) {
	for _, c := range []struct {
		size           float64
		change, result string // as printed
		places         int
	}{{9.15, "0.067", "9.217", 3}, {232, "1.7", "233.7", 1}} {
		d := wood.Movement(c.size, 0.00245, 8, 11)
		if got := fmt.Sprintf("%.*f", c.places, d); got != c.change {
			t.Errorf("%g moves by %s; printed %s", c.size, got, c.change)
		}
		if got := fmt.Sprintf("%.*f", c.places, c.size+d); got != c.result {
			t.Errorf("%g comes to %s; printed %s", c.size, got, c.result)
		}
	}
	// A magazine of 2021: an 8 in flatsawn board of red alder, 0.0026, over 6 %: 0.1248 in.
	if got := wood.Movement(8, 0.0026, 6, 12); math.Abs(got-0.1248) > 1e-9 {
		t.Errorf("8 in of red alder: %v; printed 0.1248", got)
	}
}

// coefficient returns the change of size for each percent of moisture, as a
// share of the size at 10 %, from the shrinkage S in percent from green to
// oven-dry and the fibre saturation point in percent: Wood Handbook, Table 13-5
// as it follows from Table 4-3 by eq. 13-3.
func coefficient(shrinkage, saturation float64) float64 {
	s := shrinkage / 100
	return s / saturation / (1 - s*(saturation-10)/saturation)
}

// Wood Handbook, Table 13-5 follows from the shrinkage of Table 4-3 to the five
// decimals printed. White fir: shrinkage 3.3 and 7.0 (read) give 0.00112 (read)
// and 0.00245 (memory). The mixtures sold as red and white oak have coefficients
// of their own.
func TestCoefficientsFromShrinkage(t *testing.T) {
	five := func(v float64) string { return fmt.Sprintf("%.5f", v) }
	if r, c := five(coefficient(3.3, 30)), five(coefficient(7.0, 30)); r != "0.00112" || c != "0.00245" {
		t.Errorf("white fir: %s, %s; want 0.00112, 0.00245", r, c)
	}
	seen := 0
	for _, s := range table.AllSpecies() {
		if s.ID == "red_oak_commercial" || s.ID == "white_oak_commercial" {
			continue
		}
		seen++
		r, c := five(coefficient(s.RadialShrink.Value, s.Saturation.Value)), five(coefficient(s.TangShrink.Value, s.Saturation.Value))
		if r != five(s.Radial.Value) || c != five(s.Tangential.Value) {
			t.Errorf("%s: shrinkage gives %s, %s; the table has %v, %v", s.ID, r, c, s.Radial.Value, s.Tangential.Value)
		}
	}
	if seen < 14 {
		t.Errorf("%d species looked at; want 14 or more", seen)
	}
}

// Wood Handbook, chapter 4, as printed at oakmissouri.org/density.html: a gravity
// of 0.4 at 12 % gives 27.968 lb/ft³, 448 kg/m³.
func TestDensityExample(t *testing.T) {
	got := table.Species{Gravity: table.Figure{Value: 0.4}}.Density()
	if math.Abs(got-448) > 1e-9 {
		t.Errorf("%v kg/m³; printed 448", got)
	}
	const pound, foot = 0.45359237, 0.3048
	if lb := got / pound * foot * foot * foot; math.Abs(lb-27.968) > 0.005 {
		t.Errorf("%.4f lb/ft³; printed 27.968", lb)
	}
}

// The moisture of today is the middle of the room's unless it was measured, and
// it counts in the swing.
func TestAir(t *testing.T) {
	w := design.Wood{HumidityLo: 35, HumidityHi: 65}
	a := wood.AirOf(w)
	if math.Abs(a.Dry-6.94) > 0.01 || math.Abs(a.Moist-11.96) > 0.01 || a.Today != (a.Dry+a.Moist)/2 || a.Measured {
		t.Errorf("%+v; want 6.94 to 11.96", a)
	}
	w.Moisture = 1400 // hundredths of a percent
	if a = wood.AirOf(w); a.Today != 14 || !a.Measured || math.Abs(a.Swing()-(14-a.Dry)) > 1e-12 {
		t.Errorf("%+v, swing %v", a, a.Swing())
	}
}
