// Package strength holds the equations of strength that the checks use: bending
// and deflection of bars, nails pulled and nails pushed sideways, and glued
// crossings twisted. Sizes, species and loads go in as floating point, forces in
// newtons and lengths in millimetres unless a name says otherwise; what comes
// out judges nothing and decides no dimension. The checks come next.
//
// The figures are means or published design values for other work than
// furniture: a benchmark for a maker, no design by a licensed practitioner.
package strength

import (
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Bar is a bar bent on its depth: Breadth by Depth in section, Depth in the
// direction of the load.
type Bar struct {
	Breadth, Depth float64 // mm
	Elasticity     float64 // N/mm²
}

// Inertia returns the second moment of area, b h³/12, in mm⁴.
func (b Bar) Inertia() float64 { return b.Breadth * b.Depth * b.Depth * b.Depth / 12 }

// Modulus returns the section modulus, b h²/6, in mm³.
func (b Bar) Modulus() float64 { return b.Breadth * b.Depth * b.Depth / 6 }

// Case is how a bar is held and loaded, with its coefficients in Wood Handbook,
// Table 9-1 (memory; standard mechanics): δ = k_b W L³/(E I) + k_s W L/(G A′),
// and the greatest moment over W L.
type Case struct{ Bend, Shear, Moment float64 }

// The cases. Uniform and Middle lie on two supports, Fixed is built in at both
// ends and loaded evenly.
var (
	Uniform = Case{5.0 / 384, 1.0 / 8, 1.0 / 8}
	Middle  = Case{1.0 / 48, 1.0 / 4, 1.0 / 4}
	Fixed   = Case{1.0 / 384, 1.0 / 8, 1.0 / 12}
)

// Deflection returns how far the bar gives under the load in N over the span in
// mm: Wood Handbook, eq. 9-2, bending and shear, A′ = 5bh/6.
func (b Bar) Deflection(c Case, load, span float64) float64 {
	shear := b.Elasticity * table.Value("load.shear_modulus")
	return c.Bend*load*span*span*span/(b.Elasticity*b.Inertia()) + c.Shear*load*span/(shear*5*b.Breadth*b.Depth/6)
}

// Stress returns the greatest bending stress in N/mm².
func (b Bar) Stress(c Case, load, span float64) float64 { return c.Moment * load * span / b.Modulus() }

// Elasticity returns the modulus of elasticity of the species in N/mm².
func Elasticity(s table.Species) float64 { return s.Elasticity.Value * 1e6 * unit.PSI }

// Allowable returns a bending stress that boards of the species can bear for
// good, in N/mm²: the 5 % lower limit of clear wood, derated, graded and for a
// permanent load, after the logic of ASTM D245 (memory).
func Allowable(s table.Species) float64 {
	low := s.Rupture.Value * (1 - 1.645*table.Value("load.variation"))
	return low / table.Value("load.derate") * table.Value("load.grade") * table.Value("load.duration") * unit.PSI
}

// GlueTwist returns the moment in N mm that a glued crossing of the two sizes in
// mm bears in its plane, from the shear along the grain of the species and the
// share of it that load.glue_shear allows: τ = M/(α a² b) of a rectangle a <= b
// in torsion, with α = 1/(3 + 1.8 a/b) (standard mechanics).
func GlueTwist(s table.Species, u, v float64) float64 {
	a, b := min(u, v), max(u, v)
	return s.Shear.Value * unit.PSI * table.Value("load.glue_shear") * a * a * b / (3 + 1.8*a/b)
}
