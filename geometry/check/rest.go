package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

var rest = Check{
	Code:  "fit.rest",
	Title: "bottles rest on their slats",
	turn:  []string{"cell.gap"},
	Doc: "The gap is at least 0.50 of the largest bottle's diameter, so that it does not roll, and at most 0.90 of the " +
		"smallest one's, so that it does not wedge or fall through. Over 0.85 is a caution.",
	run: eachKind(lookRest),
}

// The shares of a diameter between which a gap holds a bottle, in hundredths
// (the project's own, after common practice, no source).
const (
	leastShare   = 50
	cautionShare = 85
	mostShare    = 90
)

// lookRest takes the worst bottle: one that fails before one that is a caution,
// and among equals the one that the gap is widest for.
func lookRest(r *rack.Rack, k rack.Kind) (Finding, bool) {
	var worst Finding
	var widest table.Bottle
	found := false
	for row, fit := range k.Fit {
		for _, b := range fit {
			f := restOf(r, k, row, b)
			switch {
			case !found, f.Status.rank() > worst.Status.rank(),
				f.Status.rank() == worst.Status.rank() && b.Diameter.Min < widest.Diameter.Min:
				worst, widest, found = f, b, true
			}
		}
	}
	return worst, found
}

// restOf judges one bottle.
func restOf(r *rack.Rack, k rack.Kind, row int, b table.Bottle) Finding {
	least, most := b.Diameter.Min, b.Diameter.Max
	if 100*k.Gap < leastShare*most {
		return Finding{
			Status: Fail, Figure: ratio(k.Gap, most, false), Limit: figure(leastShare / 100.0), Unit: "ratio",
			Says: fmt.Sprintf("gap %s is less than half of the largest %s, %s: it may roll out",
				r.Format.Unit(k.Gap), inRow(k, b, row), r.Format.Unit(most)),
		}
	}
	share := ratio(k.Gap, least, true)
	f := Finding{Status: OK, Figure: share, Limit: figure(mostShare / 100.0), Unit: "ratio"}
	f.Says = fmt.Sprintf("gap %s is %s of the smallest %s, %s", r.Format.Unit(k.Gap), share, inRow(k, b, row), r.Format.Unit(least))
	switch {
	case 100*k.Gap > mostShare*least:
		f.Status = Fail
		f.Says += ": it may wedge or fall through"
	case 100*k.Gap > cautionShare*least:
		f.Status, f.Limit = Caution, figure(cautionShare/100.0)
		f.Says += ": close to wedging"
	}
	return f
}
