package assembly

import (
	"fmt"

	"slatwright/geometry/check"
	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// Item is a line of what to have at hand before the work begins.
type Item struct {
	What, For string
	Count     int    // that the rack takes, 0 for what is measured
	Spare     int    // over and above
	Amount    string // of what is measured, in the design's own unit
}

// Hardware returns what holds the rack together: nails by their sizes, counted
// over the real crossings, blocks and screws of the top, glue, tape and filler,
// and anchors where they are asked for.
func Hardware(r *rack.Rack, top finish.Panel) []Item {
	list := nailItems(r)
	if t, ok := fixing.Of(r); ok && !t.Glued {
		list = append(list, topItems(r, t)...)
	}
	for _, s := range finish.Supplies(r, top) {
		if s.Kind == finish.Glue && s.Area.Cmp(unit.Area{}) > 0 {
			list = append(list, Item{What: "glue, " + s.Name, For: "all glued joints", Amount: finish.Volume(r.Format.System, s.Millilitres)})
		}
	}
	if tape := finish.Tape(r); tape > 0 {
		list = append(list, Item{What: "masking tape", For: "what stays bare for glue", Amount: tapeText(r.Format.System, tape)})
	}
	list = append(list, Item{What: "wood filler", For: "nail holes", Amount: "a little"})
	if n, each := check.Anchors(r); n > 0 {
		list = append(list, Item{What: "anchor to studs or masonry", For: fmt.Sprintf("near the top, each to bear %s, as its maker and local codes say", each), Count: n})
	}
	return list
}

// spare is a twentieth more, ten at least (common practice, no source).
func spare(n int) int { return max(10, (n+19)/20) }

// nailItems are the nails, those of one size for one use on one line.
func nailItems(r *rack.Rack) []Item {
	var list []Item
	add := func(n design.Nail, where string, bored bool, count int) {
		if count == 0 {
			return
		}
		i := Item{What: fmt.Sprintf("nail, %d ga × %s", n.Gauge, r.Format.Unit(n.Length)), For: where, Count: count, Spare: spare(count)}
		if bored {
			i.For += fmt.Sprintf("; bore %s wide through the piece in front, no deeper", r.Format.Unit(fixing.Bore(r, n.Gauge)))
		}
		list = append(list, i)
	}
	j := r.Design.Joint
	add(j.SlatNail, "slats on legs", true, fixing.Nails(r, "slat"))
	add(j.ApronNail, "aprons on legs", true, fixing.Nails(r, "apron"))
	if t, ok := fixing.Of(r); ok && t.Nails > 0 {
		where := "top on the front upper apron"
		if t.Glued {
			where = "top on the upper aprons"
		}
		add(j.TopNail, where, false, t.Nails)
	}
	return list
}

// ScrewText names a screw by its length: No. 8, or 4 mm in a metric design.
func ScrewText(r *rack.Rack, s fixing.Screw) string {
	if r.Format.System == unit.Metric {
		return "4 × " + r.Format.Unit(s.Length)
	}
	return "No. 8 × " + r.Format.Unit(s.Length)
}

// topItems are the blocks behind and their screws.
func topItems(r *rack.Rack, t fixing.Top) []Item {
	f, n := r.Format, len(t.Middles)
	return []Item{
		{What: fmt.Sprintf("block, %s × %s × %s", f.Text(t.Block.Z), f.Text(t.Block.Y), f.Unit(t.Block.X)), For: "behind, under the top; from waste, grain along the last figure", Count: n},
		{What: "wood screw, " + ScrewText(r, t.Up) + ", round head, with washer", For: "up through the slot into the top", Count: n, Spare: 2},
		{What: "wood screw, " + ScrewText(r, t.Through) + ", countersunk", For: "from behind through the back upper apron into the block", Count: fixing.PerBlock * n, Spare: 2},
	}
}

// tapeText prints a length of tape in whole feet or metres, rounded up.
func tapeText(sys unit.System, l unit.Length) string {
	if sys == unit.Metric {
		return fmt.Sprintf("%d m", (l+1000*unit.Millimetre-1)/(1000*unit.Millimetre))
	}
	return fmt.Sprintf("%d ft", (l+12*unit.Inch-1)/(12*unit.Inch))
}
