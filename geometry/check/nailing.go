package check

import (
	"fmt"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/strength"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

var nailing = Check{
	Code:  "joint.nail",
	Title: "nails reach, stay inside, and keep clear of ends and of each other",
	Doc: "A nail, its head set 1/16 in (1.6 mm) below the surface, goes at least six diameters into the piece behind and ends 1/8 in before its far side. " +
		"It stands at least five diameters from an end, bored first, and nails from two faces of a leg keep three diameters apart.",
	run: lookNails,
}

// A joint is where one part is nailed through into another.
type joint struct {
	where         string
	part, into    string // names of the parts
	key           string // of the nail
	nail          design.Nail
	through, deep unit.Length // what the nail passes, and what there is behind it
	thick, behind string      // the lengths that these are
}

// joints lists the nailed joints of the rack. The top is nailed only where the
// design states a nail for it.
func joints(r *rack.Rack) []joint {
	j := r.Design.Joint
	list := []joint{
		{"slat on leg", "slat", "leg", "joint.slat_nail", j.SlatNail, r.Len("slat.thickness"), r.Len("leg.thickness"), "slat.thickness", "leg.thickness"},
		{"apron on leg", "apron", "leg", "joint.apron_nail", j.ApronNail, r.Len("apron.thickness"), r.Len("leg.width"), "apron.thickness", "leg.width"},
	}
	if t, ok := fixing.Of(r); ok && t.Nails > 0 {
		where := "top on the front upper apron"
		if t.Glued {
			where = "top on the upper aprons"
		}
		list = append(list, joint{where, "top", "apron", "joint.top_nail", j.TopNail, r.Len("top.thickness"), r.Len("apron.height"), "top.thickness", "apron.height"})
	}
	return list
}

// jointOf returns the joint by which slats or aprons are fixed to legs.
func jointOf(r *rack.Rack, part string) joint {
	for _, j := range joints(r) {
		if j.part == part && j.into == "leg" {
			return j
		}
	}
	panic("check: no joint of " + part)
}

// wire returns the nail of the joint as the table has it.
func (j joint) wire() table.Nail {
	n, ok := table.FindNail(j.nail.Gauge)
	if !ok {
		panic(fmt.Sprintf("check: no nail of gauge %d", j.nail.Gauge)) // the reader refuses it
	}
	return n
}

// point is how deep the nail goes into the piece behind, its head set.
func (j joint) point(r *rack.Rack) unit.Length { return j.nail.Length + fixing.Set(r) - j.through }

// bears returns the nail as the equations take it.
func (j joint) bears(r *rack.Rack) strength.Nail {
	return strength.Nail{Diameter: j.wire().Diameter.MM(), Side: max(j.through-fixing.Set(r), 0).MM(), Point: max(j.point(r).MM(), 0)}
}

func lookNails(r *rack.Rack) []Finding {
	var list []Finding
	for _, j := range joints(r) {
		list = append(list, reach(r, j))
	}
	list = append(list, nearEnds(r))
	if f, ok := meeting(r); ok {
		list = append(list, f)
	}
	return list
}

// reach judges how deep a nail goes and whether it comes out behind.
func reach(r *rack.Rack, j joint) Finding {
	wire := j.wire()
	least := unit.Length(table.Value("nail.least")) * wire.Diameter
	margin := lengthOf("nail.margin")
	point, left := j.point(r), j.deep-j.point(r)
	diameters := plain(point.MM()/wire.Diameter.MM(), 1)
	f := Finding{
		Where: j.where, Status: OK, Figure: micro(point), Limit: least.Decimal(), Unit: "mm",
		Source: sources("nail.least", "nail.margin", "nail.set"),
	}
	f.Says = fmt.Sprintf("%s, set %s below the surface: %s into the %s, %s diameters, least 6, %s left; ",
		nailText(r, j), r.Format.Unit(fixing.Set(r)), r.Format.Unit(point), j.into, diameters, r.Format.Unit(left))
	change := serving(r, j)
	switch {
	case j.through <= fixing.Set(r):
		f.Status, f.Figure, f.Limit = Caution, micro(j.through), fixing.Set(r).Decimal()
		f.Says = fmt.Sprintf("%s, set %s below the surface: nothing is left under the head, the %s is %s thick",
			nailText(r, j), r.Format.Unit(fixing.Set(r)), j.part, r.Format.Unit(j.through))
		f.Change = "make it thicker: " + named(r, j.thick)
		return f
	case left < margin:
		f.Status, f.Figure, f.Limit = Caution, micro(left), margin.Decimal()
		f.Change = change
		if left <= 0 {
			f.Status = Fail
			f.Says = fmt.Sprintf("%s through %s leaves nothing of the %s behind it, its head set: it comes out, where a hand may be", nailText(r, j), r.Format.Unit(j.through), j.into)
		}
	case point <= 0:
		f.Status, f.Change = Fail, change
		f.Says = fmt.Sprintf("%s ends within the %s, %s thick", nailText(r, j), j.part, r.Format.Unit(j.through))
	case point < least:
		f.Status, f.Change = Caution, change
	case j.nail.Length > wire.Longest.Up(unit.Millimetre) || j.nail.Length < wire.Shortest.Down(unit.Millimetre):
		f.Status = Caution
		f.Change = fmt.Sprintf("%d ga is usually sold from %s to %s", wire.Gauge, r.Format.Unit(wire.Shortest), r.Format.Unit(wire.Longest))
	}
	if f.Status != Fail {
		f.Says += holds(r, j)
		f.Source += "; " + sources("nail.bearing", "nail.withdraw_nds", "nail.withdraw_metric", "load.duration", "nail.thinnest")
	}
	return f
}

// holds says what one nail bears by equation.
func holds(r *rack.Rack, j joint) string {
	n, species := j.bears(r), r.Design.Wood.Species
	return fmt.Sprintf("bears %s sideways, %s pulled%s", force(r, n.Sideways(species)), force(r, n.Pull(species)), extrapolated(r, j))
}

func nailText(r *rack.Rack, j joint) string {
	return fmt.Sprintf("%d ga x %s", j.nail.Gauge, r.Format.Unit(j.nail.Length))
}
