package check

import (
	"slatwright/geometry/rack"
)

var side = Check{
	Code:  "fit.side",
	Title: "bottles pass between the legs",
	turn:  []string{"cell.gap", "slat.thickness"},
	Doc:   "The channel is at least the largest bottle's diameter and cell.side_clearance on either side of it.",
	run:   eachKind(lookSide),
}

func lookSide(r *rack.Rack, k rack.Kind) (Finding, bool) {
	least := r.Len("cell.side_clearance")
	var list []clearance
	for row, fit := range k.Fit {
		for _, b := range fit {
			both := k.Channel - b.Diameter.Max
			list = append(list, clearance{
				enough: both >= 2*least,
				figure: both.Down(2) / 2,
				says:   "from " + inRow(k, b, row) + " to the leg, each side",
			})
		}
	}
	return tightest(r, list, least)
}
