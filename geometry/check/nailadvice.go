package check

import (
	"fmt"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// serving says which nails would serve a joint: of its own gauge, else of the
// next one that does, else what to change so that one can.
func serving(r *rack.Rack, j joint) string {
	key := stated(j.key, j.nail.Place)
	if least, most := lengths(r, j, j.wire()); least <= most {
		return fmt.Sprintf("take a %s of %s at most, %s at least", key, r.Format.Unit(most), r.Format.Unit(least))
	}
	for _, thinner := range []bool{true, false} {
		if w, ok := other(r, j, thinner); ok {
			least, most := lengths(r, j, w)
			return fmt.Sprintf("no nail of %d ga serves here: take a %s of %d ga, %s at most, %s at least",
				j.nail.Gauge, key, w.Gauge, r.Format.Unit(most), r.Format.Unit(least))
		}
	}
	return "no nail serves here: " + reshape(r, j)
}

// lengths returns the shortest and the longest nail of the wire that is sold,
// goes deep enough into the piece behind and stays inside it, in whole steps of
// the shop; the least is over the most where there is none.
func lengths(r *rack.Rack, j joint, w table.Nail) (least, most unit.Length) {
	step := shopStep(r)
	least = max(j.through-fixing.Set(r)+unit.Length(table.Value("nail.least"))*w.Diameter, w.Shortest)
	most = min(j.through-fixing.Set(r)+j.deep-lengthOf("nail.margin"), w.Longest)
	return least.Up(step), most.Down(step)
}

// shopStep is how finely lengths of nails are told.
func shopStep(r *rack.Rack) unit.Length {
	if r.Design.Units == unit.Metric {
		return unit.Millimetre
	}
	return unit.Inch / 16
}

// other returns the gauge nearest to the joint's own, on the thinner or on the
// thicker side, of which a nail serves.
func other(r *rack.Rack, j joint, thinner bool) (best table.Nail, ok bool) {
	own := j.wire().Diameter
	for _, w := range table.Nails() {
		if w.Diameter == own || w.Diameter < own != thinner {
			continue
		}
		least, most := lengths(r, j, w)
		if least <= most && (!ok || (w.Diameter-own).Abs() < (best.Diameter-own).Abs()) {
			best, ok = w, true
		}
	}
	return best, ok
}

// reshape says which piece to make thinner or thicker where no nail serves: so
// much that one of the joint's own gauge would, in whole steps of the shop.
func reshape(r *rack.Rack, j joint) string {
	w, step := j.wire(), shopStep(r)
	least := unit.Length(table.Value("nail.least")) * w.Diameter
	if most := (w.Longest + fixing.Set(r) - least - step).Down(step); j.through > most {
		return fmt.Sprintf("make the %s thinner, %s %s or less", j.part, named(r, j.thick), r.Format.Unit(most))
	}
	need := max(least, w.Shortest+fixing.Set(r)-j.through) + lengthOf("nail.margin") + step
	return fmt.Sprintf("make the %s behind it thicker, %s %s or more", j.into, named(r, j.behind), r.Format.Unit(need.Up(step)))
}
