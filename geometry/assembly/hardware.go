package assembly

import (
	"fmt"
	"strconv"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/unit"
	"slatwright/specs/word"
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
	if tapes := finish.Tapes(r); len(tapes) > 0 {
		var wide, long []string // one line: amounts in the order of the widths
		for _, t := range tapes {
			wide, long = append(wide, r.Format.Text(t.Wide)), append(long, strconv.FormatInt(tapeLong(r.Format.System, t.Long), 10))
		}
		list = append(list, Item{What: fmt.Sprintf("masking tape, %s %s wide", strings.Join(wide, ", "), r.Format.System), For: "glued joints; cut from a wider one", Amount: strings.Join(long, ", ") + tapeUnit(r.Format.System)})
	}
	tinted := ""
	if r.Design.Finish.Stained() {
		tinted = "; of the stained wood's colour"
	}
	list = append(list, Item{What: "wood filler", For: "nail holes" + tinted, Amount: "a little"})
	list = append(list, jigScrews(r))
	if onCounter(r) {
		list = append(list, Item{What: "angle bracket, with screws", For: "behind, where it stands on a counter", Count: counterBrackets})
	}
	if n, each := check.Anchors(r); n > 0 {
		list = append(list, Item{What: "anchor to studs or masonry", For: fmt.Sprintf("near the top, each to bear %s, as its maker and local codes say", each), Count: n})
	}
	return list
}

// counterBrackets is how many angle brackets hold a low rack on a counter, and
// jigScrew how far apart the screws of the jig's fence and stop are at the most
// (common practice, no source).
const (
	counterBrackets = 2
	jigScrew        = 8 * unit.Inch
)

// jigScrews are those of fence and stop, one near either end of each and between;
// they go through the board and as deep into the other's edge.
func jigScrews(r *rack.Rack) Item {
	step := unit.Inch / 4
	if r.Design.Units == unit.Metric {
		step = 5 * unit.Millimetre
	}
	n := 0
	for _, long := range []unit.Length{r.Len("leg.length"), r.Len("slat.length")} {
		n += 2 + int(long/jigScrew)
	}
	s := fixing.Screw{Length: (2 * Caul(r)).Down(step)}
	return Item{What: "wood screw, " + ScrewText(r, s) + ", countersunk", For: "the jig: from below into fence and stop", Count: n}
}

// spare is a twentieth more, ten at least (common practice, no source).
func spare(n int) int { return max(10, (n+19)/20) }

// nailItems are the nails, those of one size for one use on one line.
func nailItems(r *rack.Rack) []Item {
	var list []Item
	add := func(n design.Nail, where string, count int) {
		if count == 0 {
			return
		}
		i := Item{What: fmt.Sprintf("brad nail, %d ga × %s", n.Gauge, r.Format.Unit(n.Length)), For: where, Count: count, Spare: spare(count)}
		list = append(list, i)
	}
	j := r.Design.Joint
	add(j.SlatNail, "slats on legs", fixing.Nails(r, "slat"))
	add(j.ApronNail, "aprons on legs", fixing.Nails(r, "apron"))
	if t, ok := fixing.Of(r); ok && t.Nails > 0 {
		where := "top on the front upper apron"
		if t.Glued {
			where = "top on the upper aprons"
		}
		add(j.TopNail, where, t.Nails)
	}
	return list
}

// NailNote says how nails are driven: by hand into bores; with a nailer only those
// that are near an end are bored (common practice, no source).
func NailNote(r *rack.Rack) string {
	text := "Brads by hand: into bored holes, a stop on the bit, heads set. With a nailer, as its maker says, unbored"
	if near := check.BoredFirst(r); len(near) > 0 {
		text += fmt.Sprintf("; those of %s where a try splits the end, bored", word.List(near))
	}
	return text + "."
}

// ScrewText names a screw by its length: No. 8, or 4 mm in a metric design.
func ScrewText(r *rack.Rack, s fixing.Screw) string {
	if r.Format.System == unit.Metric {
		return "4 × " + r.Format.Unit(s.Length)
	}
	return "No. 8 × " + r.Format.Unit(s.Length)
}

// topItems are the screws behind, with what they are bored with.
func topItems(r *rack.Rack, t fixing.Top) []Item {
	f, n := r.Format, len(t.Middles)
	washer := fixing.WasherOf(r)
	return []Item{
		{What: "wood screw, " + ScrewText(r, t.Up) + ", round head", For: "up through the blocks' slots into the top", Count: n, Spare: 2},
		{What: fmt.Sprintf("flat washer, %s wide, %s thick", f.Unit(washer.Wide), f.Unit(washer.Thick)), For: "under its head", Count: n, Spare: 2},
		{What: "wood screw, " + ScrewText(r, t.Through) + ", countersunk", For: "through the apron into the blocks", Count: fixing.PerBlock * n, Spare: 2},
	}
}

// tapeLong is a length of tape in whole feet or metres, rounded up.
func tapeLong(sys unit.System, l unit.Length) int64 {
	if sys == unit.Metric {
		return int64((l + 1000*unit.Millimetre - 1) / (1000 * unit.Millimetre))
	}
	return int64((l + 12*unit.Inch - 1) / (12 * unit.Inch))
}

// tapeUnit is what tape is measured in.
func tapeUnit(sys unit.System) string {
	if sys == unit.Metric {
		return " m"
	}
	return " ft"
}
