package check

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

var empty = Check{
	Code:  "space.empty",
	Title: "no row's height is left empty above the highest row",
	Doc: "Over what the highest row needs, less than one more rise is free below the upper aprons: otherwise the stated height would hold " +
		"more rows. Looked at where the design states a height.",
	run: lookEmpty,
}

// heights are the lengths that make a rack taller than its rows need.
var heights = []string{"rack.height", "carcase.height", "leg.length"}

func lookEmpty(r *rack.Rack) []Finding {
	said := statedHeights(r)
	if len(said) == 0 {
		return nil
	}
	return eachKind(func(r *rack.Rack, k rack.Kind) (Finding, bool) { return emptyAbove(r, k, said) })(r)
}

// statedHeights names the heights that a line is about, with their lines.
func statedHeights(r *rack.Rack) []string {
	var said []string
	for _, name := range heights {
		if l, ok := r.Design.Length(name); ok {
			said = append(said, stated(name, l.Place))
		}
	}
	for _, w := range r.Design.Where {
		if slices.ContainsFunc(w.Terms, func(t design.Term) bool { return slices.Contains(heights, t.Name) }) {
			said = append(said, stated("where", w.Place))
		}
	}
	return said
}

// emptyAbove compares what is free above the column's highest row with the
// rise of one more, which would hold what that row holds.
func emptyAbove(r *rack.Rack, k rack.Kind, said []string) (Finding, bool) {
	rise := nextRise(r, k)
	room, ok := lookUpper(r, k)
	if !ok || room.Status == Fail || rise <= 0 {
		return Finding{}, false
	}
	free := freeAbove(r, k)
	told := r.Format.Unit(free.Down(r.Design.Grid))
	f := Finding{
		Status: OK, Figure: micro(free), Limit: rise.Decimal(), Unit: "mm",
		Says: fmt.Sprintf("%s free above what the highest row needs, under one more rise of %s", told, r.Format.Unit(rise)),
	}
	if free >= rise {
		more := int(free / rise)
		f.Status = Caution
		f.Says = fmt.Sprintf("%s is empty above what the highest row needs: %s would fit, at %s each",
			told, word.Count(more, "more row"), r.Format.Unit(rise))
		f.Change = fmt.Sprintf("state %d rows, %s, or less height, %s", k.Rows+more, rowsStated(r, k), strings.Join(said, ", "))
	}
	return f, true
}

// freeAbove is what the legs could be shorter by, for this column, rounded down.
func freeAbove(r *rack.Rack, k rack.Kind) unit.Length {
	last, eased := k.Rows-1, r.Len("slat.eased")
	slatTop := r.Len("leg.length") - k.Under[last] - r.Len("slat.height")
	free := slatTop
	for _, b := range k.Fit[last] {
		for _, d := range ends(b) {
			q, _ := under(d, k.Gap, eased)
			left := half(2*(slatTop-r.Len("apron.height"))-d+2*eased, none, q)
			free = min(free, left-r.Len("cell.apron_clearance"))
		}
	}
	return free
}

// nextRise is the rise of one more row like the highest: that below it, and in
// a column of one row that which its bottles ask for. 0 where there is none.
func nextRise(r *rack.Rack, k rack.Kind) unit.Length {
	if n := len(k.Rises); n > 0 {
		return k.Rises[n-1]
	}
	l, _ := r.Find(ownName(k, "cell") + ".rise")
	return l.Value
}

// rowsStated names the count of the column's rows, with its line.
func rowsStated(r *rack.Rack, k rack.Kind) string {
	name := ownName(k, "rack") + ".rows"
	if c, ok := r.Design.Count(name); ok {
		return stated(name, c.Place)
	}
	if c, ok := r.Design.Count("rack.rows"); ok {
		return stated("rack.rows", c.Place)
	}
	return name
}

// ownName is what the names of the column's own lengths and counts begin with;
// all where columns are alike.
func ownName(k rack.Kind, all string) string {
	if k.Name == "" {
		return all
	}
	return strings.ReplaceAll(k.Name, " ", ".")
}
