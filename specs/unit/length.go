// Package unit holds exact lengths: a whole number of a base unit in which
// both 1/128 in and 0.01 mm are whole, their parsing and their printed forms.
// Every other package measures with it; it imports nothing of ours.
package unit

// Length is a length in whole base units of 12.5 nm. Sums, differences and
// whole multiples are exact; the range, about ±115,000 km, is far beyond any
// rack, so that sums of lengths never overflow. Do not multiply two lengths:
// the product of lengths over some 38 m does not fit.
type Length int64

// The base unit and its multiples. Each constant is exact.
const (
	Base       Length = 1         // 12.5 nm
	Micrometre Length = 80        // 1 µm
	Millimetre Length = 80_000    // 1 mm
	Inch       Length = 2_032_000 // 25.4 mm, the international inch
	Foot       Length = 12 * Inch
)

// Abs returns the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Micrometres returns l in whole micrometres, rounded half away from zero. It
// is the one place where model lengths become paper lengths.
func (l Length) Micrometres() int64 {
	if l < 0 {
		return -int64((-l + Micrometre/2) / Micrometre)
	}
	return int64((l + Micrometre/2) / Micrometre)
}

// MM returns l in millimetres as a float, for physics and for nothing that
// decides a fit.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }
