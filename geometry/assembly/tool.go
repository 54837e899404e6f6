package assembly

import (
	"cmp"
	"fmt"
	"slices"

	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// A Tool is what the work is done with, and what for.
type Tool struct{ What, For string }

// Tools returns what the steps of a rack are worked with, saw and clamps apart: bits
// with their sizes and how far they go in.
func Tools(r *rack.Rack, top finish.Panel) []Tool {
	list := bits(r)
	t, ok := fixing.Of(r)
	slotted := ok && !t.Glued
	add := func(when bool, what, why string) {
		if when {
			list = append(list, Tool{what, why})
		}
	}
	f := r.Design.Finish
	add(slotted, fmt.Sprintf("bit of %s, chisel", r.Format.Unit(t.SlotWide)), "the blocks' slots")
	add(slotted, "stubby or right-angle screwdriver", "up into the top, below the apron")
	add(true, "drill, countersink, screwdriver", "the screws of the jig"+when(slotted, ", of the blocks"))
	add(true, "hammer, nail set", "nails")
	add(true, "try square, long steel rule, pencil, knife, awl", "marking out, measuring")
	add(true, "calliper", "gap gauges, spacers")
	add(slotted, "moisture meter", "where the top's screws stand in their slots")
	add(top.GluedUp(), "plane, scraper", "the top, when its glue has cured")
	add(Glued(r), "glue brush, damp rag", "glue, and what is pressed out")
	add(r.Design.Joint.Glue || top.GluedUp(), "wax", "jig, cauls and battens")
	add(f.Coats > 0, "boards with nails through them", "to dry parts on")
	add(f.Coats > 0 || f.Stained(), "brushes, lint-free rags", "the finish")
	add(true, "labels' sheets, or plain paper and paste", "labels")
	return list
}

// when is text where something holds.
func when(holds bool, text string) string {
	if !holds {
		return ""
	}
	return text
}

// bits are those of nails and screws, those of one width and depth as one.
func bits(r *rack.Rack) []Tool {
	type bit struct{ wide, stop unit.Length }
	type use struct {
		bit
		what string
	}
	var all []use
	add := func(wide, stop unit.Length, what string) {
		k := slices.IndexFunc(all, func(u use) bool { return u.bit == bit{wide, stop} })
		if k < 0 {
			all = append(all, use{bit{wide, stop}, what})
			return
		}
		all[k].what += ", " + what
	}
	j := r.Design.Joint
	add(fixing.Bore(r, j.SlatNail.Gauge), r.Len("slat.thickness"), "the slats' nails")
	add(fixing.Bore(r, j.ApronNail.Gauge), r.Len("apron.thickness"), "the aprons' nails")
	if t, ok := fixing.Of(r); ok && !t.Glued {
		b := fixing.BitsOf(r)
		add(b.Clear, 0, "the blocks' screws, through the apron")
		add(b.Pilot, t.Up.Into, "the screws in the top")
		add(b.Pilot, t.Through.Into, "the blocks' screws, in the blocks")
	}
	slices.SortStableFunc(all, func(a, b use) int { return cmp.Compare(a.wide, b.wide) })
	var out []Tool
	for _, u := range all {
		what := "bit of " + r.Format.Unit(u.wide)
		if u.stop > 0 {
			what += ", a stop at " + r.Format.Unit(u.stop)
		}
		out = append(out, Tool{what, u.what})
	}
	return out
}
