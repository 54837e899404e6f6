package check

import (
	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

var depth = Check{
	Code:  "fit.depth",
	Title: "bottles lie safely on the slats' length",
	turn:  []string{"slat.length"},
	Doc: "With the base flush with the back of the carcase the bottle's centre of gravity is at least 20 mm behind the " +
		"slats' front ends and 20 mm before their rear ends. How far the neck stands out is told.",
	run: eachKind(lookDepth),
}

// inHand is what must be left between the centre of gravity and either end of
// the slats (common practice, no source).
const inHand = 20 * unit.Millimetre

func lookDepth(r *rack.Rack, k rack.Kind) (Finding, bool) {
	board, slat := r.Len("apron.thickness"), r.Len("slat.length")
	var list []clearance
	out := unit.Length(0)
	for row, fit := range k.Fit {
		for _, b := range fit {
			share := unit.Length(b.Centre.Thousandths)
			// In thousandths of a length, so that the share of the height is whole.
			front := 1000*(board+slat) - share*b.Height.Max
			rear := share*b.Height.Min - 1000*board
			list = append(list,
				clearance{front >= 1000*inHand, front.Down(1000) / 1000, "from the centre of gravity of " + inRow(k, b, row) + " to the slats' front ends"},
				clearance{rear >= 1000*inHand, rear.Down(1000) / 1000, "from the centre of gravity of " + inRow(k, b, row) + " to the slats' rear ends"})
			out = max(out, b.Height.Max-r.Len("carcase.depth"))
		}
	}
	f, ok := tightest(r, list, inHand)
	if out > 0 {
		f.Says += "; necks stand out up to " + r.Format.Unit(out) + " beyond the front aprons"
	}
	return f, ok
}
