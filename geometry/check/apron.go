package check

import (
	"fmt"
	"math/big"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

var lowerApron = Check{
	Code:  "fit.lower_apron",
	Title: "bottles of the lowest row slide in over the lower aprons",
	turn:  []string{"slat.first", "apron.height"},
	Doc:   "The lowest point of any bottle in the lowest row is at least cell.apron_clearance above the lower aprons.",
	run:   eachKind(lookLower),
}

var upperApron = Check{
	Code:  "fit.upper_apron",
	Title: "bottles of the highest row slide in under the upper aprons",
	turn:  []string{"leg.length", "apron.height"},
	Doc:   "The highest point of any bottle in the highest row is at least cell.apron_clearance below the upper aprons.",
	run:   eachKind(lookUpper),
}

// none is the square root that is not there.
var none = new(big.Int)

// lookLower measures, doubled, 2 (slat top − apron top) − d − 2e + √q.
func lookLower(r *rack.Rack, k rack.Kind) (Finding, bool) {
	least, eased := r.Len("cell.apron_clearance"), r.Len("slat.eased")
	over := k.Under[0] + r.Len("slat.height") - r.Len("apron.lift") - r.Len("apron.height")
	var list []clearance
	for _, b := range k.Fit[0] {
		for _, d := range ends(b) {
			q, falls := under(d, k.Gap, eased)
			sum := 2*over - d - 2*eased
			list = append(list, clearance{
				enough: notNegative(sum-2*least, q, none) && !falls,
				figure: half(sum, q, none),
				says:   "from " + inRow(k, b, 0) + " to the lower aprons" + falling(falls),
			})
		}
	}
	return tightest(r, list, least)
}

// lookUpper measures, doubled, 2 (apron underside − slat top) − d + 2e − √q.
func lookUpper(r *rack.Rack, k rack.Kind) (Finding, bool) {
	least, eased := r.Len("cell.apron_clearance"), r.Len("slat.eased")
	last := k.Rows - 1
	room := r.Len("leg.length") - r.Len("apron.height") - k.Under[last] - r.Len("slat.height")
	var list []clearance
	for _, b := range k.Fit[last] {
		for _, d := range ends(b) {
			q, falls := under(d, k.Gap, eased)
			sum := 2*room - d + 2*eased
			list = append(list, clearance{
				enough: notNegative(sum-2*least, none, q) && !falls,
				figure: half(sum, none, q),
				says:   "from " + inRow(k, b, last) + " to the upper aprons" + falling(falls),
			})
		}
	}
	return tightest(r, list, least)
}

// inRow names a bottle, and its row, which is counted from 0, where the rows of
// the column hold different bottles.
func inRow(k rack.Kind, b table.Bottle, row int) string {
	for _, fit := range k.Fit {
		if !slices.EqualFunc(fit, k.Fit[0], func(x, y table.Bottle) bool { return x.ID == y.ID }) {
			return fmt.Sprintf("%s in row %d", b.ID, row+1)
		}
	}
	return b.ID
}

// falling adds, where the bottle does not rest at all, what was assumed.
func falling(falls bool) string {
	if falls {
		return " (it falls through; taken as hanging by its middle)"
	}
	return ""
}
