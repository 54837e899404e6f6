package check

import (
	"fmt"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/wood"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

var top = Check{
	Code:  "wood.top",
	Title: "the top can swell and shrink with the room's air",
	Doc: "Over the range of wood.humidity the top's width changes. Glued all round it may change by 1/16 in; over 1/8 in it splits or " +
		"opens the joints. Glued in front and slotted behind it is free, and the slot's length and the screw's place in it are told.",
	run: lookTop,
}

var crossing = Check{
	Code:  "wood.cross",
	Title: "glued crossings bear the wood's movement",
	Doc: "Where slats and aprons are glued across legs the one board changes its width over the other's length: by no more than 1/16 in " +
		"over the range of wood.humidity.",
	run: lookCrossing,
}

func lookTop(r *rack.Rack) []Finding {
	if !r.HasTop() {
		return nil
	}
	if r.Design.Joint.TopGlued {
		return []Finding{gluedTop(r)}
	}
	return []Finding{slottedTop(r)}
}

// airText says what the wood goes through.
func airText(r *rack.Rack) string {
	w := r.Design.Wood
	a := wood.AirOf(w)
	return fmt.Sprintf("%s, %s to %s moisture at %d to %d %% humidity", w.Species.Name, percent(a.Dry), percent(a.Moist), w.HumidityLo, w.HumidityHi)
}

// beyond says so where the wood gets drier or moister than the equation of its
// movement is meant for.
func beyond(r *rack.Rack) string {
	a := wood.AirOf(r.Design.Wood)
	least, most := table.Value("move.least"), table.Value("move.most")
	if min(a.Dry, a.Today) >= least && max(a.Moist, a.Today) <= most {
		return ""
	}
	return fmt.Sprintf("; beyond %s to %s %%, for which the equation of movement is meant", figure(least), figure(most))
}

// movementSource is where the movement of the design's wood is from.
func movementSource(r *rack.Rack) string {
	s := r.Design.Wood.Species
	from := s.Tangential.Origin
	if r.Design.Wood.QuarterSawn {
		from = s.Radial.Origin
	}
	return "Wood Handbook, eq. 4-5 and 13-2; coefficient: " + string(from.Standing) + ", " + from.Source + "; " + sources("move.least", "move.most")
}

// gluedTop judges a top that nothing lets move: it pushes the back aprons off
// the legs, or splits.
func gluedTop(r *rack.Rack) Finding {
	w := r.Design.Wood
	width := r.Len("top.width")
	moves := wood.Movement(width.MM(), wood.Across(w), 0, wood.AirOf(w).Swing())
	most, some := table.Value("move.glued_most"), table.Value("move.glued_caution")
	f := Finding{Where: "top", Status: OK, Figure: figure(moves), Limit: figure(some), Unit: "mm", Source: movementSource(r) + "; " + sources("move.glued_caution", "move.glued_most")}
	if moves > most {
		some = most
	}
	f.Says = fmt.Sprintf("glued all round; %s: over %s it moves %s, most %s", airText(r), r.Format.Unit(width), slight(r, moves), slight(r, some)) + beyond(r)
	if moves > table.Value("move.glued_caution") {
		f.Status = Caution
		f.Change = fmt.Sprintf("glue it in front and slot it behind: %s = \"slotted\"", stated("joint.top", r.Design.Joint.TopPlace))
	}
	if moves > most {
		f.Status, f.Limit = Fail, figure(most)
		f.Says += ": it would split, or open the joints"
	}
	return f
}

// slottedTop says how the slots behind are made. The screw stands in the top and
// moves with it, back when the wood is moist; the slot is in the block that it
// passes.
func slottedTop(r *rack.Rack) Finding {
	w := r.Design.Wood
	a := wood.AirOf(w)
	t, _ := fixing.Of(r)
	moves := t.Back + t.Ahead
	most := table.Value("move.slot_most")
	f := Finding{Where: "top", Status: OK, Figure: figure(moves), Limit: figure(most), Unit: "mm", Source: movementSource(r) + "; " + sources("move.screw", "move.slot_most")}
	f.Says = fmt.Sprintf("glued in front, screwed through slotted blocks behind; %s: moves %s at the screws; slots front to back, %s long, the screw's middle %s from the front end at %s",
		airText(r), slight(r, moves), r.Format.Unit(t.Slot), r.Format.Unit(t.Place), today(a)) + beyond(r)
	if out := wood.Movement((r.Len("top.width") - r.Len("overhang.front")).MM(), wood.Across(w), a.Today, a.Moist); out > 0.5 {
		f.Says += "; its back edge comes out by " + slight(r, out)
	}
	if moves > most {
		f.Status = Caution
		f.Change = "take quarter-sawn boards, wood.sawn = \"quarter\", or hold the air of the room closer: " + stated("wood.humidity", w.HumidityPlace)
	}
	if least := unit.Length(fixing.ScrewLeast); t.Up.Into < least {
		f.Status = Caution
		f.Says += fmt.Sprintf("; too thin for a screw from below, which is to go in by %s", r.Format.Unit(least))
		f.Change = "make the top thicker: " + named(r, "top.thickness")
	}
	return f
}

// today says the moisture that the wood has now.
func today(a wood.Air) string {
	if a.Measured {
		return percent(a.Today) + " as today"
	}
	return percent(a.Today) + " moisture, reckoned: measure it"
}

func lookCrossing(r *rack.Rack) []Finding {
	w := r.Design.Wood
	name, piece, width := "", "", unit.Length(0)
	for _, n := range [][2]string{{"leg.width", "a leg"}, {"slat.height", "a slat"}, {"apron.height", "an apron"}} {
		if l := r.Len(n[0]); l > width {
			name, piece, width = n[0], n[1], l
		}
	}
	moves := wood.Movement(width.MM(), wood.Across(w), 0, wood.AirOf(w).Swing())
	most := table.Value("move.cross_most")
	f := Finding{
		Where: "rack", Status: OK, Figure: figure(moves), Limit: figure(most), Unit: "mm",
		Says: fmt.Sprintf("the widest piece across another, %s, %s wide, moves %s with the room's air, most %s",
			piece, r.Format.Unit(width), slight(r, moves), slight(r, most)) + beyond(r),
		Source: movementSource(r) + "; " + sources("move.cross_most"),
	}
	if !r.Design.Joint.Glue {
		f.Says += "; nailed only, it slips"
		return []Finding{f}
	}
	if moves > most {
		f.Status = Caution
		f.Change = "glue only the middle third of the crossing, or make the board narrower: " + named(r, name)
	}
	return []Finding{f}
}
