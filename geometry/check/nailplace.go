package check

import (
	"fmt"
	"math/big"
	"slices"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// nearEnds judges the nail that stands nearest to an end, in diameters, over
// slats and aprons and the legs they are nailed to.
func nearEnds(r *rack.Rack) Finding {
	worst, found := Finding{}, false
	ratio := 0.0
	for _, j := range joints(r) {
		at, ok := nearest(r, j)
		if !ok {
			continue
		}
		d := j.wire().Diameter
		if share := at.MM() / d.MM(); !found || share < ratio {
			worst, ratio, found = endFinding(r, j, at, d), share, true
		}
	}
	return worst
}

// BoredFirst names the parts, "slats", with nails so near an end that they are to be
// bored.
func BoredFirst(r *rack.Rack) []string {
	var out []string
	for _, j := range joints(r) {
		least := unit.Length(table.Value("nail.end")) * j.wire().Diameter
		if at, ok := nearest(r, j); ok && at < least && !slices.Contains(out, j.part+"s") {
			out = append(out, j.part+"s")
		}
	}
	return out
}

// endFinding is the finding on a nail of the joint so far from an end.
func endFinding(r *rack.Rack, j joint, at, diameter unit.Length) Finding {
	least, free := unit.Length(table.Value("nail.end_bored"))*diameter, unit.Length(table.Value("nail.end"))*diameter
	f := Finding{
		Where: "nails near ends", Status: OK, Figure: micro(at), Limit: least.Decimal(), Unit: "mm",
		Source: sources("nail.end_bored", "nail.end", "nail.bore"),
	}
	f.Says = fmt.Sprintf("%s, %s from the %s's end, %s diameters", j.where, r.Format.Unit(at), j.part, plain(at.MM()/diameter.MM(), 1))
	switch {
	case at < least:
		f.Status = Caution
		f.Says += ": under 5, it may split even if it is bored"
		f.Change = fmt.Sprintf("take a thinner nail for %s, or wider legs: %s, %s", stated(j.key, j.nail.Place), named(r, "leg.thickness"), named(r, "leg.width"))
	case at < free:
		f.Says += fmt.Sprintf(": under 10, bore first, %s wide", r.Format.Unit(fixing.Bore(r, j.nail.Gauge)))
	}
	return f
}

// nearest returns the least distance along the grain from a nail of the joint
// to an end of the piece it passes. The top's nails have no set places.
func nearest(r *rack.Rack, j joint) (unit.Length, bool) {
	least, found := unit.Length(0), false
	i := slices.IndexFunc(r.Pieces, func(p rack.Piece) bool { return r.Parts[p.Part].Name == j.part })
	if i < 0 || j.part == "top" {
		return 0, false
	}
	p := r.Pieces[i]
	for _, c := range p.Fixed {
		if r.Parts[r.Pieces[c.Piece].Part].Name != j.into {
			continue
		}
		for _, n := range r.NailPlaces(c.Patch, c.Axis, false) {
			at := n.On(p.Grain)
			d := min(at-p.Box.Min.On(p.Grain), p.Box.Max.On(p.Grain)-at)
			if !found || d < least {
				least, found = d, true
			}
		}
	}
	return least, found
}

// driven is a nail in a leg: a line from the leg's face to the nail's point.
type driven struct {
	from  int // the piece it comes through, into Pieces
	line  space.Box
	thick unit.Length
}

// meeting judges the two nails of different pieces that come nearest to each
// other in one leg. Ladders of one shape are alike, so one of each is looked at.
func meeting(r *rack.Rack) (Finding, bool) {
	var nearest pair
	found := false
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name != "leg" || !firstOfShape(r, p.Ladder) {
			continue
		}
		if n, ok := closest(nailsIn(r, i)); ok && (!found || n.apart.Cmp(nearest.apart) < 0) {
			nearest, found = n, true
		}
	}
	if !found {
		return Finding{}, false
	}
	least := unit.Length(table.Value("nail.apart")) * nearest.thick
	apart := unit.Length(new(big.Int).Sqrt(nearest.apart).Int64())
	one, other := r.Pieces[nearest.a].Name, r.Pieces[nearest.b].Name
	f := Finding{
		Where: "nails in one leg", Status: OK, Figure: micro(apart), Limit: least.Decimal(), Unit: "mm",
		Says:   fmt.Sprintf("%s and %s: axes %s apart, least %s", one, other, r.Format.Unit(apart), slight(r, least.MM())),
		Source: sources("nail.apart"),
	}
	if nearest.apart.Cmp(square(least)) < 0 {
		f.Status = Caution
		f.Says += ": they meet"
		f.Change = "set the nails of one face of that leg aside, or take shorter ones: " + stated("joint.slat_nail", r.Design.Joint.SlatNail.Place)
	}
	return f, true
}

// firstOfShape reports whether the ladder is the first of its shape.
func firstOfShape(r *rack.Rack, ladder int) bool {
	shape := r.Ladders[ladder].Shape
	return ladder == slices.IndexFunc(r.Ladders, func(l rack.Ladder) bool { return l.Shape == shape })
}

// nailsIn lists the nails driven into the leg, from the foot up.
func nailsIn(r *rack.Rack, leg int) []driven {
	var list []driven
	for _, j := range joints(r) {
		if j.into != "leg" {
			continue
		}
		for _, c := range r.Pieces[leg].Fixed {
			if r.Parts[r.Pieces[c.Piece].Part].Name != j.part {
				continue
			}
			for _, at := range r.NailPlaces(c.Patch, c.Axis, c.Axis == space.X && c.Far) {
				list = append(list, driven{c.Piece, drive(at, c.Axis, c.Far, max(j.point(r), 0)), j.wire().Diameter})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b driven) int {
		return int(max(-1, min(1, a.line.Min.Z-b.line.Min.Z)))
	})
	return list
}

// drive is the line of a nail from a place on a face so deep into the piece.
func drive(at space.Point, normal space.Axis, far bool, deep unit.Length) space.Box {
	var way space.Point
	switch normal {
	case space.X:
		way.X = deep
	case space.Y:
		way.Y = deep
	default:
		way.Z = deep
	}
	if far {
		return space.Box{Min: at.Sub(way), Max: at}
	}
	return space.Box{Min: at, Max: at.Add(way)}
}

// pair is two nails of different pieces with the square of their distance.
type pair struct {
	a, b  int // pieces
	apart *big.Int
	thick unit.Length
}

// closest returns the two nails of different pieces nearest to each other. The
// nails are sorted by their height, all lie level, and those further
// above each other than the nearest pair so far are left out.
func closest(nails []driven) (pair, bool) {
	var best pair
	found := false
	for i, a := range nails {
		for _, b := range nails[i+1:] {
			rise := b.line.Min.Z - a.line.Max.Z
			if found && rise > 0 && square(rise).Cmp(best.apart) >= 0 {
				break
			}
			if a.from == b.from {
				continue
			}
			if d := apart(a.line, b.line); !found || d.Cmp(best.apart) < 0 {
				best, found = pair{a.from, b.from, d, max(a.thick, b.thick)}, true
			}
		}
	}
	return best, found
}

// apart returns the squared distance of two lines along axes.
func apart(a, b space.Box) *big.Int {
	sum := new(big.Int)
	for _, ax := range []space.Axis{space.X, space.Y, space.Z} {
		if gap := max(a.Min.On(ax)-b.Max.On(ax), b.Min.On(ax)-a.Max.On(ax)); gap > 0 {
			sum.Add(sum, square(gap))
		}
	}
	return sum
}
