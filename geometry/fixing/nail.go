package fixing

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Set is how deep a nail's head is driven below the face: 1/16 in, or in a metric
// design that in whole tenths of a millimetre, so that sums with it come out.
func Set(r *rack.Rack) unit.Length {
	set := nearest(table.Value("nail.set"))
	if r.Design.Units == unit.Metric {
		set = set.Nearest(unit.Millimetre / 10)
	}
	return set
}

// Bore returns the bit for a nail of the gauge: the largest sold, in 64ths of an
// inch or tenths of a millimetre, that is no wider than the share of the nail
// which the wood allows. It panics where the table has no such gauge.
func Bore(r *rack.Rack, gauge int) unit.Length {
	n, ok := table.FindNail(gauge)
	if !ok {
		panic(fmt.Sprintf("fixing: no nail of gauge %d", gauge)) // the reader refuses it
	}
	share := table.Value("nail.bore")
	if r.Design.Wood.Species.Gravity.Value > 0.6 {
		share = table.Value("nail.bore_dense")
	}
	step := unit.Inch / 64
	if r.Design.Units == unit.Metric {
		step = unit.Millimetre / 10
	}
	return max(step, nearest(share*n.Diameter.MM()).Down(step))
}

// Crossings lists where pieces of a part, "slat" or "apron", cross legs.
func Crossings(r *rack.Rack, part string) (out []rack.Contact) {
	for _, p := range r.Pieces {
		if r.Parts[p.Part].Name != part {
			continue
		}
		for _, c := range p.Fixed {
			if r.Parts[r.Pieces[c.Piece].Part].Name == "leg" {
				out = append(out, c)
			}
		}
	}
	return out
}

// Nails counts the nails at the crossings of a part.
func Nails(r *rack.Rack, part string) int {
	n := 0
	for _, c := range Crossings(r, part) {
		n += len(r.NailPlaces(c.Patch, c.Axis, false))
	}
	return n
}
