// Package wood says how much water wood holds in the air of a room, how it
// swells and shrinks with it, and what it weighs. A species and figures of the
// air go in; percents, millimetres and kilograms a cubic metre come out, as
// floating point: this is physics and decides no dimension. The checks come
// next.
//
// Sources: Wood Handbook, Forest Products Laboratory (FPL-GTR-282, 2021; read
// in part in FPL-GTR-190, 2010). Symbols are as printed there.
package wood

import (
	"slatwright/specs/design"
	"slatwright/specs/table"
)

// Equilibrium returns the moisture content in percent that wood comes to in air
// of the temperature in °C and the relative humidity in percent, 0 to 100.
// Wood Handbook, eq. 4-5:
//
//	M = 1800/W [ Kh/(1−Kh) + (K1Kh + 2K1K2K²h²)/(1 + K1Kh + K1K2K²h²) ]
func Equilibrium(celsius, humidity float64) float64 {
	at := func(id string) float64 {
		c := table.FindConstant(id).Value
		return c[0] + c[1]*celsius + c[2]*celsius*celsius
	}
	W, K, K1, K2 := at("emc.w"), at("emc.k"), at("emc.k1"), at("emc.k2")
	Kh := K * humidity / 100
	return 1800 / W * (Kh/(1-Kh) + (K1*Kh+2*K1*K2*Kh*Kh)/(1+K1*Kh+K1*K2*Kh*Kh))
}

// Movement returns the change of a size when its moisture goes from one percent
// to another, in the size's unit: Wood Handbook, eq. 13-2, ΔD = D_I C (M_F − M_I),
// meant for the moistures of the rows move.least to move.most, 6 to 14 %. Beyond
// them it goes on straight, and the checks say so.
func Movement(size, coefficient, from, to float64) float64 {
	return size * coefficient * (to - from)
}

// Air is the room's range over a year and the wood of today.
type Air struct {
	Dry, Moist float64 // moisture content of wood at the least and the greatest humidity, percent
	Today      float64 // moisture content when the rack is made, percent
	Measured   bool    // whether Today was measured; else it is the middle
}

// AirOf returns the moisture that wood takes on in the room of the design.
func AirOf(w design.Wood) Air {
	room := table.Value("emc.room")
	a := Air{Dry: Equilibrium(room, float64(w.HumidityLo)), Moist: Equilibrium(room, float64(w.HumidityHi))}
	a.Today = (a.Dry + a.Moist) / 2
	if w.Moisture > 0 {
		a.Today, a.Measured = float64(w.Moisture)/100, true
	}
	return a
}

// Swing returns the percents between the driest and the moistest wood, that of
// today counted.
func (a Air) Swing() float64 { return max(a.Moist, a.Today) - min(a.Dry, a.Today) }

// Across returns the coefficient of movement across the face of a board of the
// design: that of flat-sawn wood unless it says that its boards are
// quarter-sawn.
func Across(w design.Wood) float64 {
	if w.QuarterSawn {
		return w.Species.Radial.Value
	}
	return w.Species.Tangential.Value
}
