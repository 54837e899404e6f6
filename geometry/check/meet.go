package check

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// A Meet is two pieces whose nails come nearer to each other in one leg than the
// check of nails wants.
type Meet struct {
	Leg  int // into Pieces
	A, B int // the pieces that are nailed, into Pieces
}

// Meets lists all nails that meet in the legs of the first ladder of each shape,
// as the check of nails finds the worst of them: each pair of pieces once to a
// leg, from the foot up.
func Meets(r *rack.Rack) []Meet {
	var out []Meet
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name != "leg" || !firstOfShape(r, p.Ladder) {
			continue
		}
		nails := nailsIn(r, i)
		for k, a := range nails {
			for _, b := range nails[k+1:] {
				least := unit.Length(table.Value("nail.apart")) * max(a.thick, b.thick)
				if b.line.Min.Z-a.line.Max.Z >= least {
					break // all lie level, and the others higher still
				}
				m := Meet{i, min(a.from, b.from), max(a.from, b.from)}
				if a.from != b.from && apart(a.line, b.line).Cmp(square(least)) < 0 && !slices.Contains(out, m) {
					out = append(out, m)
				}
			}
		}
	}
	return out
}

// NailAside says how far the slats' nails of one face of a leg are shifted along
// its width, towards its middle, to keep clear of those of the other face: up to
// the next step of the rack's grid. It is 0 where the leg is too narrow for that.
func NailAside(r *rack.Rack) unit.Length {
	least := unit.Length(table.Value("nail.apart")) * jointOf(r, "slat").wire().Diameter
	grid := r.Design.Grid
	aside := (least + grid - 1) / grid * grid
	wide := r.Len("leg.width")
	if between := wide - 2*r.NailIn(wide); between-2*aside < least {
		return 0
	}
	return aside
}
