package fixing

import (
	"math"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// ScrewAt returns how far behind its slot's front end a screw's middle belongs while
// the wood of the top reads so many percent of moisture. Where it is as dry as it
// gets the screw stands at the front end, but for what the slot has to spare there.
// It is rounded to half of the size that slots are marked out by.
func (t Top) ScrewAt(r *rack.Rack, moisture float64) unit.Length {
	size, _ := steps(r)
	least, _ := t.Reads()
	return nearest((table.Value("move.screw")+slotSpare)/2 + t.moves*(moisture-least)).Nearest(size / 2)
}

// Reads returns the least and the greatest moisture, in percent, that a slot has
// room for: what the wood comes to in the room's air over a year, and what it has
// today.
func (t Top) Reads() (least, most float64) {
	return min(t.air.Dry, t.air.Today), max(t.air.Moist, t.air.Today)
}

// Readings lists what a moisture meter may read, ascending: the least and the
// greatest that the slot has room for, what the drawing holds for, and every whole
// percent between them that is not next to one of these.
func (t Top) Readings() []float64 {
	const near = 0.5 // of a percent: meters read no finer
	least, most := t.Reads()
	out := []float64{least, t.Today(), most}
	for m := math.Ceil(least); m < most; m++ {
		if !slices.ContainsFunc(out[:3], func(o float64) bool { return math.Abs(o-m) < near }) {
			out = append(out, m)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// Today is the moisture, in percent, that the screws' places are drawn for.
func (t Top) Today() float64 { return t.air.Today }
