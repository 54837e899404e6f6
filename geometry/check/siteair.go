package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

var air = Check{
	Code:  "site.air",
	Title: "air between the rack and the walls, and above it",
	Doc: "On each side, and above, 1/4 in (6 mm) or more is left of site.width and site.height: walls are seldom square or plumb. Looked at " +
		"where the design states them.",
	run: lookAir,
}

var front = Check{
	Code:  "site.front",
	Title: "bottles do not stand out of the site's depth",
	turn:  []string{"site.depth"},
	Doc: "With the base flush with the back of the carcase no bottle reaches further from the wall than site.depth. Looked at where the " +
		"design states a depth.",
	run: eachKind(lookFront),
}

// lookAir judges the air on the rack's two sides and above it.
func lookAir(r *rack.Rack) []Finding {
	var list []Finding
	for _, s := range []struct {
		what, where, measure string
		sides                unit.Length
	}{
		{"width", "on each side of", "floor, middle and top, in front and behind", 2},
		{"height", "above", "left, middle and right, in front and behind", 1},
	} {
		site := "site." + s.what
		room, ok := r.Design.Length(site)
		if !ok {
			continue
		}
		left, least := room.Lo-r.Len("rack."+s.what), leastAir(r)
		f := Finding{
			Where: "rack, " + s.what, Status: OK, Figure: micro(left.Down(s.sides) / s.sides), Limit: least.Decimal(), Unit: "mm",
			Says: fmt.Sprintf("%s of air %s the rack in a %s of %s, least %s",
				r.Format.Unit(left.Down(s.sides)/s.sides), s.where, s.what, r.Format.Unit(room.Lo), r.Format.Unit(least)),
			Source: sources("site.air"),
		}
		if left < s.sides*least {
			f.Status = Caution
			f.Says += ": walls are seldom square or plumb"
			if n := measuredAt(r, site); n >= enoughPlaces {
				f.Says += fmt.Sprintf("; this is the least of %d places", n)
				f.Change = "keep air: " + named(r, "site.fit")
			} else {
				f.Change = fmt.Sprintf("measure at three places, %s, and list the figures: %s; or keep air: %s", s.measure, named(r, site), named(r, "site.fit"))
			}
		}
		list = append(list, f)
	}
	return list
}

// enoughPlaces is at how many places a length of the site is to be measured.
const enoughPlaces = 3

// leastAir returns the air to keep, a figure of the design's own unit.
func leastAir(r *rack.Rack) unit.Length {
	least := table.FindConstant("site.air").Value
	if r.Design.Units == unit.Metric {
		return lengthMM(least[1])
	}
	return lengthMM(least[0])
}

// measuredAt returns at how many places a length of the site was measured.
func measuredAt(r *rack.Rack, site string) int {
	for _, m := range r.Design.SiteMeasures {
		if m.Name == site {
			return len(m.Values)
		}
	}
	return 1
}

// lookFront takes the bottle that reaches furthest from the wall: behind it are
// the air kept at the wall and what the top stands over at the back.
func lookFront(r *rack.Rack, k rack.Kind) (Finding, bool) {
	room, ok := r.Design.Length("site.depth")
	if !ok {
		return Finding{}, false
	}
	face, behind := r.Len("site.fit")+r.Len("rack.depth"), r.Len("site.fit")
	if l, ok := r.Find("overhang.back"); ok {
		behind += l.Value
	}
	far, which := unit.Length(-1), ""
	for row, fit := range k.Fit {
		for _, b := range fit {
			if reach := behind + b.Height.Max; reach > far {
				far, which = reach, inRow(k, b, row)
			}
		}
	}
	f := Finding{
		Status: OK, Figure: far.Up(unit.Micrometre).Decimal(), Limit: room.Lo.Decimal(), Unit: "mm",
		Says: fmt.Sprintf("%s, at its longest, its base flush with the back, reaches %s from the wall, in a depth of %s", which, r.Format.Unit(far), r.Format.Unit(room.Lo)),
	}
	if far > room.Lo {
		f.Status = Caution
		f.Says += fmt.Sprintf(": it stands out by %s, %s beyond the rack", r.Format.Unit(far-room.Lo), r.Format.Unit(far-face))
		f.Change = "see that nothing shuts or passes close before it, have shorter bottles, bottles.fit, or make room: " + named(r, "site.depth")
	}
	return f, far >= 0
}
