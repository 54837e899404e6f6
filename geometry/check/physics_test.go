package check

import (
	"math"
	"math/rand"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/specs/unit"
)

func close(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s = %v; want %v", what, got, want)
	}
}

// Worked by hand (derived, no printed answer): a tower 228.6 mm deep, empty 18 kg
// with its centre of gravity 0.90 m up, full 142.8 kg and 0.9437 m.
func TestTopple(t *testing.T) {
	for _, c := range []struct{ kg, z, high, push, angle float64 }{
		{18, 900, 1422, 14.2, 7.24}, {18, 900, 1829, 11.0, 7.24},
		{142.8, 943.7, 1422, 112.6, 6.91}, {142.8, 943.7, 1829, 87.5, 6.91},
	} {
		push, angle := topple(load{kg: c.kg, z: c.kg * c.z}, 114.3, c.high)
		close(t, "push", push, c.push, 0.06)
		close(t, "angle", angle, c.angle, 0.006)
	}
}

// The pieces' weight is that of the cut list, and a rack of equal columns hangs
// in its middle.
func TestWeight(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 3\nrows = 4\n")
	l := woodLoad(r)
	sum := 0.0
	for _, p := range r.Parts {
		sum += float64(p.Count) * p.Thickness.MM() * p.Width.MM() * p.Length.MM() / 1e9 * 448 // ponderosa pine, 0.40 at 12 %
	}
	close(t, "wood", l.kg, sum, 1e-9)
	x, _, z := l.at()
	close(t, "middle", x, r.Len("carcase.width").MM()/2, 1e-6)
	if z <= 0 || z >= r.Len("rack.height").MM() {
		t.Errorf("centre of gravity %v mm up", z)
	}
	full := fullLoad(r)
	heavy := float64(r.Kinds[0].Fit[0][0].Mass.Max) / 1000
	close(t, "bottles", full.kg-l.kg, 12*heavy, 1e-9)
}

// A bottle pressed between two slats: the two forces at the slats and its weight
// close a triangle, for any gap.
func TestSpreadAgainstStatics(t *testing.T) {
	for _, gap := range []unit.Length{40, 57, 62, 70} {
		d, g := 80*unit.Millimetre, gap*unit.Millimetre
		tangent, ok := spread(d, g, 0)
		// The forces pass through the bottle's axis: half the gap sideways for
		// every axis height up.
		h := axis(d, g, 0)
		close(t, "tangent", tangent, float64(gap)/2/h, 1e-9)
		if !ok {
			t.Errorf("a gap of %d mm lets it through", gap)
		}
	}
	if _, ok := spread(70*unit.Millimetre, 70*unit.Millimetre, 0); ok {
		t.Error("a bottle as wide as the gap rests")
	}
}

// A leg held at both ends by turning springs c, its ends shifted sideways: slope
// deflection gives K = 12EI/h³ / (1 + 6EI/(c h)).
func TestSwayAgainstSlopeDeflection(t *testing.T) {
	r := racktest.Build(t, "units = \"mm\"\n[rack]\ncolumns = 3\nrows = 10\n")
	const EI = 1.29e6 * 4.4482216 / (25.4 * 25.4) * 45 * 20 * 20 * 20 / 12 // ponderosa pine, leg 45 x 20 mm
	h := r.Len("leg.length").MM() - 2*65
	close(t, "glued", swayStiffness(r, true), 8*12*EI/(h*h*h), 1e-6)
	h += 65
	c := turning(r)
	close(t, "nailed", swayStiffness(r, false), 8*12*EI/(h*h*h)/(1+6*EI/(c*h)), 1e-6)
	// Two nails 33 mm apart, 16 mm in, each 1,440 D^1.5 lb at 0.015 in: k s²/2.
	k := 1440 * math.Pow(0.0475, 1.5) * 4.4482216 / (0.015 * 25.4)
	close(t, "turning", c, k*33*33/2, 1e-3*c)
}

// A tolerance stack of a tutorial (ficientdesign.com): parts of 2.000 ± 0.005,
// 1.500 ± 0.003 and 0.500 ± 0.002 in a housing of 4.020 ± 0.005 leave 0.020:
// 0.005 at worst, 0.012 by the root of the sum of squares.
func TestToleranceExample(t *testing.T) {
	m := margin{"gap", func(o off) float64 { return 0.020 + o[0] - o[1] - 0.6*o[2] - 0.4*o[3] }}
	drawn, worst, likely, most := m.left(0.005)
	close(t, "drawn", drawn, 0.020, 1e-12)
	close(t, "worst", worst, 0.005, 1e-9)
	close(t, "likely", likely, 0.012, 0.0001)
	if most != sizeNames[0]+", "+sizeNames[1] {
		t.Errorf("it depends most on %s", most)
	}
}

// No rack of 2,000 with sizes off at random has less room than the worst case.
// The root of the sum of squares takes what a size is off by for normal, with the
// tolerance as three standard deviations: then 1.35 in 1,000 have less room.
func TestToleranceAgainstChance(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n")
	tol := r.Design.Shop.Tolerance.MM()
	dice := rand.New(rand.NewSource(1))
	for _, m := range spaces(r, r.Kinds[0]) {
		_, worst, likely, _ := m.left(tol)
		under := 0
		for range 2000 {
			var o off
			for i := range o {
				o[i] = max(-tol, min(tol, dice.NormFloat64()*tol/3))
			}
			got := m.room(o)
			if got < worst-0.05*tol { // the rooms are not quite straight functions
				t.Errorf("%s: %.3f mm, less than %.3f at worst", m.says, got, worst)
			}
			if got < likely {
				under++
			}
		}
		if under > 12 {
			t.Errorf("%s: %d of 2000 under the likely %.3f mm", m.says, under, likely)
		}
	}
}

// Nails of the two faces of a leg that would meet are found: one slat of the
// right face is lowered so that its nails run into those of the left.
func TestNailsThatMeet(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 2\nrows = 3\n")
	if f, ok := meeting(r); !ok || f.Status != OK {
		t.Fatalf("%+v", f)
	}
	for i := range r.Pieces {
		p := &r.Pieces[i]
		for j := range p.Fixed {
			other := r.Pieces[p.Fixed[j].Piece].Name
			if r.Parts[p.Part].Name == "leg" && other == "slat, ladder 2 right row 2" {
				down := unit.Inch / 2 // half a slat: its upper nail meets the lower one
				p.Fixed[j].Patch.Min.Z -= down
				p.Fixed[j].Patch.Max.Z -= down
			}
		}
	}
	if f, _ := meeting(r); f.Status != Caution || f.Figure != "0" || f.Change == "" {
		t.Errorf("%+v; want a caution at 0", f)
	}
}

// The sweep over sorted nails finds the same pair as looking at every pair.
func TestClosestAgainstEveryPair(t *testing.T) {
	r := racktest.Build(t, "[bottles]\nfit = [\"claret-750\"]\n[slat]\nlength = 11\n[[column]]\ncount = 1\nrows = 3\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 2\nrows = 4\n")
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name != "leg" {
			continue
		}
		nails := nailsIn(r, i)
		got, _ := closest(nails)
		for k, a := range nails {
			for _, b := range nails[k+1:] {
				if a.from != b.from && apart(a.line, b.line).Cmp(got.apart) < 0 {
					t.Errorf("%s: a nearer pair than %v", p.Name, got)
				}
			}
		}
	}
}

// Legs turned so that slats are nailed into end grain are a caution.
func TestEndGrainIsFound(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 2\nrows = 3\n")
	if f := lookEndGrain(r)[0]; f.Status != OK || f.Figure != "0" {
		t.Errorf("%+v", f)
	}
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name == "leg" {
			r.Pieces[i].Grain = 0 // along x, into which slats are nailed
		}
	}
	// 12 slats on two legs each.
	if f := lookEndGrain(r)[0]; f.Status != Caution || f.Figure != "24" || f.Change == "" {
		t.Errorf("%+v", f)
	}
}
