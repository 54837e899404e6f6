package strength

import (
	"math"

	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Nail is a nail driven through a side member into a main member of one species.
type Nail struct {
	Diameter float64 // mm; brads are not quite round, their gauge's wire size is taken
	Side     float64 // mm of the side member, head to joint
	Point    float64 // mm of penetration into the main member
}

// Extrapolated reports whether the nail is thinner than any that NDS covers.
func (n Nail) Extrapolated() bool { return n.Diameter/25.4 < table.Value("nail.thinnest")-1e-9 }

// GravityOvenDry returns the specific gravity on oven-dry volume, as NDS has it.
// Where NDS does not list the species it follows from that on volume at 12 %
// by the shrinkage between: Wood Handbook, eq. 4-8 to 4-11 (memory), with
// ρ = 62.4 G/(1 + 0.009 G m)(1 + m/100) of NDS for the same density.
func GravityOvenDry(s table.Species) float64 {
	if s.GravityNDS.Value > 0 {
		return s.GravityNDS.Value
	}
	g := s.Gravity.Value
	return g / (1 - 0.009*12*g)
}

// Withdrawal returns the ultimate pull in N of a bright common nail from side
// grain: Wood Handbook, eq. 8-1, p = 54.12 G^2.5 D L, D and L in mm, G on volume
// at 12 %. The same in pounds and inches has 7,850 for 54.12.
func Withdrawal(gravity, diameter, length float64) float64 {
	return table.Value("nail.withdraw_metric") * math.Pow(gravity, 2.5) * diameter * length
}

// WithdrawalDesign returns the design pull in pounds for each inch of
// penetration: NDS 2018, eq. 12.2-3, W = 1380 G^2.5 D, D in inches, G oven-dry.
func WithdrawalDesign(gravity, diameter float64) float64 {
	return table.Value("nail.withdraw_nds") * math.Pow(gravity, 2.5) * diameter
}

// Pull returns the design pull of the nail in N from side grain for a permanent
// load: the lesser of the value of NDS and a fifth of the Wood Handbook's
// ultimate. NDS took a fifth of an older form of that equation, and reduces pull
// for the time that it lasts as it does loads sideways (NDS 2018, Table 11.3.1,
// memory). It is zero where nothing is left under the
// head, or the nail ends before the joint.
func (n Nail) Pull(s table.Species) float64 {
	if n.Point <= 0 || n.Side <= 0 {
		return 0
	}
	nds := WithdrawalDesign(GravityOvenDry(s), n.Diameter/25.4) * n.Point / 25.4 * unit.PoundForce
	return min(nds, Withdrawal(s.Gravity.Value, n.Diameter, n.Point)*table.Value("nail.withdraw_share")) * table.Value("load.duration")
}

// Lateral returns the design value in pounds of a nail in single shear between
// members of one specific gravity (oven-dry), sizes in inches, before factors:
// the least of the yield modes of NDS 2018, 12.3.1. The penetration counts as
// the main member's length.
func Lateral(gravity, diameter, side, point, yield float64) float64 {
	c := table.FindConstant("nail.bearing").Value
	D, ls, lm := diameter, side, point
	Fe := c[0] * math.Pow(gravity, c[1])
	Rd := table.Value("nail.reduction")
	if D > 0.17 {
		Rd = 10*D + 0.5
	}
	const Re = 1.0 // F_em / F_es of one species
	Rt := lm / ls
	k1 := (math.Sqrt(Re+2*Re*Re*(1+Rt+Rt*Rt)+Rt*Rt*Re*Re*Re) - Re*(1+Rt)) / (1 + Re)
	k2 := -1 + math.Sqrt(2*(1+Re)+2*yield*(1+2*Re)*D*D/(3*Fe*lm*lm))
	k3 := -1 + math.Sqrt(2*(1+Re)/Re+2*yield*(2+Re)*D*D/(3*Fe*ls*ls))
	return min(
		D*lm*Fe/Rd,                              // I_m
		D*ls*Fe/Rd,                              // I_s
		k1*D*ls*Fe/Rd,                           // II
		k2*D*lm*Fe/((1+2*Re)*Rd),                // III_m
		k3*D*ls*Fe/((2+Re)*Rd),                  // III_s
		D*D/Rd*math.Sqrt(2*Fe*yield/(3*(1+Re))), // IV
	)
}

// Sideways returns the design value of the nail in N for a permanent load,
// reduced where its penetration is under ten diameters; zero under six, for
// which NDS gives none, and where nothing is left under the head.
func (n Nail) Sideways(s table.Species) float64 {
	least, full := table.Value("nail.least")*n.Diameter, table.Value("nail.full")*n.Diameter
	if n.Point < least-1e-9 || n.Side <= 0 {
		return 0
	}
	z := Lateral(GravityOvenDry(s), n.Diameter/25.4, n.Side/25.4, n.Point/25.4, table.Value("nail.yield"))
	return z * min(1, n.Point/full) * table.Value("load.duration") * unit.PoundForce
}

// SlipLoad returns the load in pounds at which a nail of the diameter in inches
// has slipped 0.015 in: Wood Handbook, eq. 8-3, p = K D^1.5 (memory). Woods
// between the classes of gravity take the lower one.
func SlipLoad(gravity, diameter float64, hardwood bool) float64 {
	id, from := "nail.slip_load", []float64{0, 0.43, 0.48}
	if hardwood {
		id, from = "nail.slip_load_hard", []float64{0, 0.48, 0.57}
	}
	k := 0.0
	for i, v := range table.FindConstant(id).Value {
		if gravity >= from[i] {
			k = v
		}
	}
	return k * math.Pow(diameter, 1.5)
}

// Stiffness returns the load of one nail in N over its slip in mm, within the
// first 0.015 in; zero where it joins nothing. The table of species does not say
// which are hardwoods: the lesser of the two factors serves.
func (n Nail) Stiffness(s table.Species) float64 {
	if n.Point <= 0 || n.Side <= 0 {
		return 0
	}
	g, d := s.Gravity.Value, n.Diameter/25.4
	p := min(SlipLoad(g, d, false), SlipLoad(g, d, true)) * unit.PoundForce
	return p / (table.Value("nail.slip") * 25.4)
}
