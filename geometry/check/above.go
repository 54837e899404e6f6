package check

import (
	"math/big"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

var above = Check{
	Code:  "fit.above",
	Title: "bottles clear what is above them",
	turn:  []string{"cell.rise", "slat.height"},
	Doc: "A bottle is cell.top_clearance from the lowest point of any bottle that may lie above it, and from the inner " +
		"lower corners of the slats that carry that one.",
	run: eachKind(lookAbove),
}

func lookAbove(r *rack.Rack, k rack.Kind) (Finding, bool) {
	least := r.Len("cell.top_clearance")
	var list []clearance
	for row, rise := range k.Rises {
		for _, low := range k.Fit[row] {
			for _, d := range ends(low) {
				for _, up := range k.Fit[row+1] {
					for _, u := range ends(up) {
						list = append(list, stacked(r, k, rise, row, low, up, d, u, least))
					}
				}
				list = append(list, cornered(r, k, rise, row, low, d, least))
			}
		}
	}
	return tightest(r, list, least)
}

// ends returns the diameters to try: what is worst lies at one of them, since
// every clearance rises or falls throughout with the diameter.
func ends(b table.Bottle) []unit.Length { return []unit.Length{b.Diameter.Min, b.Diameter.Max} }

// stacked measures from the top of a bottle of diameter d to the lowest point
// of one of diameter u above it. Doubled, that is
//
//	2 rise − d − u + √q(u) − √q(d)
func stacked(r *rack.Rack, k rack.Kind, rise unit.Length, row int, low, up table.Bottle, d, u, least unit.Length) clearance {
	eased := r.Len("slat.eased")
	qd, fallsD := under(d, k.Gap, eased)
	qu, fallsU := under(u, k.Gap, eased)
	sum := 2*rise - d - u
	return clearance{
		enough: notNegative(sum-2*least, qu, qd) && !fallsD && !fallsU,
		figure: half(sum, qu, qd),
		says:   "from " + inRow(k, low, row) + " to " + inRow(k, up, row+1) + " above" + falling(fallsD || fallsU),
	}
}

// cornered measures from the bottle to the inner lower corners of the slats
// above it, which lie g/2 beside its axis and rise − slat.height − h over it.
// Doubled and squared: g² + (B − √q)² >= (d + 2 least)², B = 2 rise − 2 slat.height + 2e.
func cornered(r *rack.Rack, k rack.Kind, rise unit.Length, row int, low table.Bottle, d, least unit.Length) clearance {
	eased := r.Len("slat.eased")
	q, falls := under(d, k.Gap, eased)
	B := 2*rise - 2*r.Len("slat.height") + 2*eased
	far := square(B)
	far.Add(far, square(k.Gap)).Add(far, q) // g² + B² + q: the distance squared, and 2B√q
	left := new(big.Int).Sub(far, square(d+2*least))

	// For the figure the distance is rounded down: √q up, then the root down.
	gone := new(big.Int).Mul(big.NewInt(2*int64(B)), big.NewInt(rootUp(q)))
	dist := new(big.Int).Sub(far, gone)
	if dist.Sign() < 0 {
		dist.SetInt64(0)
	}
	twice := unit.Length(new(big.Int).Sqrt(dist).Int64()) - d
	return clearance{
		enough: coversRoot(left, B, q) && !falls,
		figure: twice.Down(2) / 2,
		says:   "from " + inRow(k, low, row) + " to the slats above" + falling(falls),
	}
}

// coversRoot reports whether n >= 2B√q.
func coversRoot(n *big.Int, B unit.Length, q *big.Int) bool {
	squared := new(big.Int).Mul(n, n)
	if B < 0 {
		return n.Sign() >= 0 || squared.Cmp(fourfold(B, q)) <= 0
	}
	return n.Sign() >= 0 && squared.Cmp(fourfold(B, q)) >= 0
}
