package fixing

import (
	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Screw is a wood screw by its length, with how much of it is in the piece that
// it draws.
type Screw struct{ Length, Into unit.Length }

// Lengths of screws (common practice, no source).
const (
	topMargin = unit.Inch / 8     // left over a screw's point
	drawn     = 3 * unit.Inch / 4 // of a screw in a block

	// ScrewLeast is the least that a screw is to go into the top.
	ScrewLeast = 3 * unit.Inch / 8
)

// Washer is the flat washer under the head of the screw in a slot.
type Washer struct{ Wide, Thick unit.Length }

// WasherOf returns the washer that goes with the rack's screws, rounded to what
// its unit shows.
func WasherOf(r *rack.Rack) Washer {
	step := unit.Inch / 16
	if r.Design.Units == unit.Metric {
		step = unit.Millimetre
	}
	return Washer{Wide: nearest(table.Value("screw.washer_wide")).Nearest(step), Thick: max(step, nearest(table.Value("screw.washer")).Nearest(step))}
}

// screws picks the lengths of both kinds of screw.
func (t *Top) screws(r *rack.Rack) {
	_, sold := steps(r)
	under := t.Block.Z + WasherOf(r).Thick
	t.Up.Length = (under + r.Len("top.thickness") - topMargin).Down(sold)
	t.Up.Into = max(0, t.Up.Length-under)
	t.Through.Length = (r.Len("apron.thickness") + drawn).Down(sold)
	t.Through.Into = t.Through.Length - r.Len("apron.thickness")
}

// Bits are the holes that a screw asks for.
type Bits struct {
	Clear unit.Length // through the piece that is drawn on
	Pilot unit.Length // in the piece that the screw bites
}

// BitsOf returns the bits for the rack's screws, in 64ths of an inch or halves
// of a millimetre.
func BitsOf(r *rack.Rack) Bits {
	pilot := table.Value("screw.pilot")
	if r.Design.Wood.Species.Gravity.Value > 0.6 {
		pilot = table.Value("screw.pilot_dense")
	}
	step := unit.Inch / 64
	if r.Design.Units == unit.Metric {
		step = unit.Millimetre / 2
	}
	return Bits{Clear: nearest(table.Value("screw.clear")).Up(step), Pilot: nearest(pilot).Nearest(step)}
}
