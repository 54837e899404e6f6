package table

import (
	_ "embed"
	"slices"
	"strings"
	"sync"
)

// Figure is a measured property of wood. It is for physics, not for fit. A
// Value of zero means that the source does not list it.
type Figure struct {
	Value  float64
	Origin Origin
}

// Species is a kind of wood. Strengths are those of small clear specimens at
// 12 % moisture content, no allowable stresses.
type Species struct {
	ID   string // as a design names it, such as "ponderosa_pine"
	Name string // in words

	Radial, Tangential       Figure // change of size per percent of moisture, C_R and C_T
	RadialShrink, TangShrink Figure // green to oven-dry, percent
	Saturation               Figure // fibre saturation point, percent moisture
	Gravity                  Figure // specific gravity: oven-dry mass, volume at 12 %
	GravityNDS               Figure // specific gravity: oven-dry mass, oven-dry volume
	Rupture                  Figure // modulus of rupture, psi
	Elasticity               Figure // modulus of elasticity, million psi
	Crush                    Figure // compression across the grain, psi
	Shear                    Figure // shear along the grain, psi
	Note                     string
}

// Density returns the density at 12 % moisture content in kg/m³, from the
// specific gravity on the volume at that moisture: Wood Handbook, chapter 4,
// ρ = ρ_w G (1 + M/100).
func (s Species) Density() float64 { return Value("density.water") * s.Gravity.Value * (1 + 12.0/100) }

//go:embed species.toml
var speciesText []byte

type speciesFigure struct {
	Value float64
	origin
}

func (f speciesFigure) value() Figure { return Figure{f.Value, f.origin.value()} }

type speciesFile struct {
	Species []struct {
		ID, Name, Note     string
		Radial, Tangential speciesFigure
		RadialShrink       speciesFigure `toml:"radial_shrink"`
		TangShrink         speciesFigure `toml:"tangential_shrink"`
		Saturation         speciesFigure
		Gravity            speciesFigure
		GravityNDS         speciesFigure `toml:"gravity_nds"`
		Rupture            speciesFigure
		Elasticity         speciesFigure
		Crush, Shear       speciesFigure
	}
	Sources map[string]string
}

type speciesTable struct {
	rows    []Species
	sources []Source
}

var species = sync.OnceValue(func() speciesTable {
	var file speciesFile
	meta := decode("species", speciesText, &file)
	t := speciesTable{sources: sourcesOf(meta, file.Sources)}
	for _, s := range file.Species {
		t.rows = append(t.rows, Species{
			ID: s.ID, Name: s.Name, Note: s.Note,
			Radial: s.Radial.value(), Tangential: s.Tangential.value(),
			RadialShrink: s.RadialShrink.value(), TangShrink: s.TangShrink.value(),
			Saturation: s.Saturation.value(), Gravity: s.Gravity.value(), GravityNDS: s.GravityNDS.value(),
			Rupture: s.Rupture.value(), Elasticity: s.Elasticity.value(),
			Crush: s.Crush.value(), Shear: s.Shear.value(),
		})
	}
	return t
})

// AllSpecies returns all species, in the order of the table.
func AllSpecies() []Species { return slices.Clone(species().rows) }

// FindSpecies returns the species with the id. Case does not matter, and a
// space or "-" may stand for "_".
func FindSpecies(id string) (Species, bool) {
	id = strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(id))
	for _, s := range species().rows {
		if s.ID == id {
			return s, true
		}
	}
	return Species{}, false
}
