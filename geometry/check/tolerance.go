package check

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

var tolerance = Check{
	Code:  "shop.tolerance",
	Title: "bottles still fit when parts are off by the shop's tolerance",
	Doc: "The least room round a bottle that is left when every size is off by shop.tolerance: in the worst case, all to the worse side, " +
		"and by the root of the sum of squares, as is likely. The latter is not to be less than nothing: then it is ok, though all sizes off " +
		"to the worse side may leave too little, which it says. The leasts of the other checks are of the sizes as drawn; here less than they " +
		"ask may be left. The size on which the fit depends most is named.",
	run: eachKind(lookTolerance),
}

// The sizes that are off, each by itself. Slats are set from the foot by a
// template, each by itself, so that what one is off by is not handed on.
const (
	ladderPlace = iota
	legThickness
	leftThickness
	rightThickness
	slatHeight
	slatPlace
	upperHeight
	upperPlace
	apronHeight
	apronPlace
	sizes
)

var sizeNames = [sizes]string{
	"the ladders' places", "the legs' thickness", "the slats' thickness", "the slats' thickness", "the slats' height", "the slats' places",
	"the height of the slats above", "the places of the slats above", "the aprons' width", "the aprons' places",
}

// off is how much each size is off, in mm.
type off [sizes]float64

// gap is what the gap is off by.
func (o off) gap() float64 { return o.channel() - o[leftThickness] - o[rightThickness] }

func (o off) channel() float64 { return o[ladderPlace] - o[legThickness] }

// A margin is the room between two things, in mm, as a function of what is off.
type margin struct {
	says string
	room func(off) float64
}

// left returns the room as drawn, what is left of it at worst and in all
// likelihood, and the sizes that it depends on most.
func (s margin) left(tol float64) (drawn, worst, likely float64, most string) {
	drawn = s.room(off{})
	sum, squares, greatest := 0.0, 0.0, 0.0
	var each [sizes]float64
	const step = 1e-3
	for i := range sizes {
		var up, down off
		up[i], down[i] = step, -step
		d := math.Abs(s.room(up)-s.room(down)) / (2 * step) * tol
		sum, squares, greatest = sum+d, squares+d*d, max(greatest, d)
		each[i] = d
	}
	var names []string
	for i, d := range each {
		if d > greatest-1e-6 && !slices.Contains(names, sizeNames[i]) {
			names = append(names, sizeNames[i])
		}
	}
	return drawn, drawn - sum, drawn - math.Sqrt(squares), strings.Join(names, ", ")
}

// atWorst says what is left in the worst case.
func atWorst(r *rack.Rack, mm float64) string {
	if mm < 0 {
		return slight(r, -mm) + " too little, though unlikely"
	}
	return slight(r, mm) + " left"
}

// likelyText says what is left in all likelihood; no more than nothing is asked.
func likelyText(r *rack.Rack, mm float64) string {
	if mm < 0 {
		return slight(r, -mm) + " too little"
	}
	return slight(r, mm) + " left, least 0"
}

// stands is how high a bottle's axis stands over the slat tops, in mm, with the
// gap off by so much.
func stands(d, gap, eased unit.Length, off float64) float64 {
	full, wide := d.MM()+2*eased.MM(), gap.MM()+off+2*eased.MM()
	return math.Sqrt(max(0, full*full-wide*wide))/2 - eased.MM()
}

func lookTolerance(r *rack.Rack, k rack.Kind) (Finding, bool) {
	tol := r.Design.Shop.Tolerance
	var f Finding
	found, tightest := false, 0.0
	for _, s := range spaces(r, k) {
		drawn, worst, likely, most := s.left(tol.MM())
		if drawn < 0 || found && likely >= tightest {
			continue // what does not fit as drawn is for the checks of fit to say
		}
		found, tightest = true, likely
		f = Finding{
			Status: OK, Figure: figure(likely), Limit: "0", Unit: "mm",
			Says: fmt.Sprintf("%s, %s drawn; with every size %s off likely %s, all to the worse side %s; hold closest %s",
				s.says, slight(r, drawn), r.Format.Unit(tol), likelyText(r, likely), atWorst(r, worst), most),
			Source: "worst case and root of the sum of squares, each size by itself (standard methods of tolerance analysis)",
		}
		if likely < 0 {
			f.Status = Caution
			f.Change = fmt.Sprintf("measure %s on the first pieces and set the rest by them, or leave more room, or hold %s", most, stated("shop.tolerance", tolerancePlace(r)))
		}
	}
	return f, found
}

// spaces lists the rooms round the bottles of a kind of column.
func spaces(r *rack.Rack, k rack.Kind) []margin {
	e, high := r.Len("slat.eased"), r.Len("slat.height").MM()
	var list []margin
	add := func(says string, room func(off) float64) { list = append(list, margin{says, room}) }
	for row, fit := range k.Fit {
		for _, b := range fit {
			least, most := b.Diameter.Min, b.Diameter.Max
			name := inRow(k, b, row)
			add(name+" does not drop between the slats", func(o off) float64 {
				return least.MM()*mostShare/100 - k.Gap.MM() - o.gap()
			})
			add(name+" does not roll out", func(o off) float64 {
				return k.Gap.MM() + o.gap() - most.MM()*leastShare/100
			})
			add(name+" to the legs, each side", func(o off) float64 {
				return (k.Channel.MM() + o.channel() - most.MM()) / 2
			})
			if row+1 < k.Rows {
				add(name+" to what is above", roomAbove(r, k, row, b))
			}
		}
	}
	for _, b := range k.Fit[0] {
		for _, d := range ends(b) {
			over := (k.Under[0] - r.Len("apron.lift") - r.Len("apron.height")).MM() + high
			add(inRow(k, b, 0)+" to the lower aprons", func(o off) float64 {
				return over + o[slatPlace] + o[slatHeight] - o[apronPlace] - o[apronHeight] + stands(d, k.Gap, e, o.gap()) - d.MM()/2
			})
		}
	}
	last := k.Rows - 1
	for _, b := range k.Fit[last] {
		for _, d := range ends(b) {
			under := (r.Len("leg.length") - r.Len("apron.height") - k.Under[last]).MM() - high
			add(inRow(k, b, last)+" to the upper aprons", func(o off) float64 {
				return under + o[apronPlace] - o[apronHeight] - o[slatPlace] - o[slatHeight] - stands(d, k.Gap, e, o.gap()) - d.MM()/2
			})
		}
	}
	return list
}

// roomAbove is the room from a bottle to the lowest bottle above it, or to the
// corners of the slats under that one, whichever is less.
func roomAbove(r *rack.Rack, k rack.Kind, row int, b table.Bottle) func(off) float64 {
	e, high := r.Len("slat.eased"), r.Len("slat.height").MM()
	rise := k.Rises[row].MM()
	return func(o off) float64 {
		least := math.Inf(1)
		up := rise + o[upperPlace] - o[slatPlace] - o[slatHeight]
		for _, d := range ends(b) {
			axis := stands(d, k.Gap, e, o.gap())
			for _, above := range k.Fit[row+1] {
				for _, u := range ends(above) {
					least = min(least, up+o[upperHeight]+stands(u, k.Gap, e, o.gap())-u.MM()/2-axis-d.MM()/2)
				}
			}
			corner := math.Hypot((k.Gap.MM()+o.gap())/2, up-high-axis)
			least = min(least, corner-d.MM()/2)
		}
		return least
	}
}

// tolerancePlace is where the design states the tolerance.
func tolerancePlace(r *rack.Rack) (at diag.Place) {
	for _, p := range r.Design.Shop.Places {
		if p.Name == "shop.tolerance" {
			at = p.Place
		}
	}
	return at
}
