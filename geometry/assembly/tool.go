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

// Tools returns what the steps of a rack are worked with, saw and clamps apart, in
// words: bits with their sizes and how far their stops let them in first.
func Tools(r *rack.Rack, top finish.Panel) []string {
	list := bits(r)
	t, ok := fixing.Of(r)
	slotted := ok && !t.Glued
	add := func(when bool, names ...string) {
		if when {
			list = append(list, names...)
		}
	}
	add(slotted, fmt.Sprintf("a bit of %s and a chisel for the slots", r.Format.Unit(t.SlotWide)), "countersink", "stubby or right-angle screwdriver")
	add(true, "drill", "hammer, nail set", "try square, long steel rule, pencil, knife, awl")
	add(slotted, "moisture meter")
	add(top.GluedUp(), "plane, scraper")
	add(Glued(r), "glue brush, damp rag")
	add(r.Design.Joint.Glue || top.GluedUp(), "wax for jig, cauls and battens")
	add(r.Design.Finish.Coats > 0, "boards with nails through them to dry parts on")
	add(r.Design.Finish.Coats > 0 || r.Design.Finish.Stained(), "brushes, lint-free rags")
	add(true, "labels' sheets, or plain paper and paste")
	return list
}

// bits are those of nails and screws, those of one width and depth as one.
func bits(r *rack.Rack) []string {
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
	add(fixing.Bore(r, j.SlatNail.Gauge), r.Len("slat.thickness"), "slats' nails")
	add(fixing.Bore(r, j.ApronNail.Gauge), r.Len("apron.thickness"), "aprons' nails")
	if t, ok := fixing.Of(r); ok && !t.Glued {
		b := fixing.BitsOf(r)
		add(b.Clear, 0, "blocks' screws in the apron")
		add(b.Pilot, t.Up.Into, "screws in the top")
		add(b.Pilot, 0, "blocks")
	}
	slices.SortStableFunc(all, func(a, b use) int { return cmp.Compare(a.wide, b.wide) })
	var out []string
	for _, u := range all {
		text := fmt.Sprintf("bit of %s (%s", r.Format.Unit(u.wide), u.what)
		if u.stop > 0 {
			text += "; stop at " + r.Format.Unit(u.stop)
		}
		out = append(out, text+")")
	}
	return out
}
