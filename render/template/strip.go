package template

import (
	"cmp"
	"fmt"
	"slices"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// A strip is what one long template shows: marks along a piece, measured from
// its datum end, which lies to the left.
type strip struct {
	name       string // "ladders 3 and 4, left face"
	use        string // what it is laid on
	jig        bool   // it lies in the jig too: of a face that is made first
	start, end string // words at the datum end and at the other end
	edge       string // word for the true edge of the piece
	edgeUp     bool   // the true edge is the upper one on paper
	length     unit.Length
	width      unit.Length // of the piece, across the strip
	seats      []seat      // in order from the datum
}

// A seat is where another piece sits: it covers the strip between its edges.
type seat struct {
	from, to unit.Length
	nails    []nail
}

// A nail is where the point of a nail comes through: how far from the datum, and
// how far from the true edge. What nails are started from are cards.
type nail struct{ along, across unit.Length }

// strips returns what is worth a template: each face of each shape of ladder
// that bears slats, and the inner faces of the aprons.
func strips(r *rack.Rack) ([]strip, error) {
	_, okSlat := r.PartNamed("slat")
	leg, okLeg := r.PartNamed("leg")
	_, okApron := r.PartNamed("apron")
	if !okSlat || !okLeg || !okApron {
		return nil, fmt.Errorf("a rack without slats, legs or aprons has no template")
	}
	all := check.Crossings(r)
	var out []strip
	for shape, s := range r.Shapes {
		for _, f := range []struct {
			name  string
			under []unit.Length
			right bool
		}{{"left face", s.Left, false}, {"right face", s.Right, true}} {
			if len(f.under) == 0 {
				continue
			}
			out = append(out, strip{
				name:  rack.Places("ladder", r.LaddersOf(shape)) + ", " + f.name,
				use:   "both legs, " + word.Count(len(f.under), "slat"),
				jig:   !f.right || len(s.Left) == 0,
				start: "FOOT", end: "TOP", edge: "FRONT", edgeUp: f.right,
				length: leg.Length, width: leg.Width,
				seats: slatSeats(r, all, shape, f.right),
			})
		}
	}
	return append(out, apronStrips(r)...), nil
}

// slatSeats returns the seats of slats on the front leg of a shape's ladder, as
// on its back leg, with the nails of each crossing where the ladder's sheet has
// them.
func slatSeats(r *rack.Rack, all []check.Crossing, shape int, right bool) []seat {
	var out []seat
	for _, c := range all {
		leg := r.Pieces[c.Leg].Box
		if r.Ladders[c.Ladder].Shape != shape || c.Right != right || leg.Min.Y != r.Len("apron.thickness") {
			continue
		}
		s := seat{from: c.Patch.Min.Z - leg.Min.Z, to: c.Patch.Max.Z - leg.Min.Z}
		for _, p := range c.Nails {
			s.nails = append(s.nails, nail{along: p.Z - leg.Min.Z, across: p.Y - leg.Min.Y})
		}
		out = append(out, s)
	}
	slices.SortFunc(out, func(a, b seat) int { return cmp.Compare(a.from, b.from) })
	return out
}

// apronStrips returns the strips along the inner faces of the aprons, with the
// places of the legs. Seen at the inner face the front ones have their left end at
// the right, so that theirs lies with the lower edge up. Where the columns are the
// same from either end one strip serves all.
func apronStrips(r *rack.Rack) []strip {
	apron, _ := r.PartNamed("apron")
	var seats []seat
	for _, l := range r.Ladders {
		seats = append(seats, seat{from: l.X, to: l.X + r.Len("leg.thickness")})
	}
	s := strip{
		name: "back aprons, inner face", use: word.Count(len(seats), "leg"),
		start: "LEFT", end: "RIGHT", edge: "LOWER EDGE",
		length: apron.Length, width: apron.Width, seats: seats,
	}
	if alike(seats, apron.Length) {
		s.name, s.start, s.end = "aprons, inner face", "END", "END"
		return []strip{s}
	}
	front := s
	front.name, front.edgeUp = "front aprons, inner face", true
	return []strip{front, s}
}

// alike reports whether seats are the same from either end.
func alike(seats []seat, length unit.Length) bool {
	for i, s := range seats {
		if o := seats[len(seats)-1-i]; s.from != length-o.to {
			return false
		}
	}
	return true
}

// stackBand is the least width of a piece that has room for two rows of stacked
// fractions clear of its nails.
const stackBand = 36 * drawing.MM

// leastBand is the least height of a strip on paper: room for two rows of figures
// with an X between them.
const leastBand = 30 * drawing.MM

// band returns the strip's height on paper, and how much of it the piece
// covers: the whole piece, unless it is wider than a page has room for.
func (f format) band(s strip) (height, covered drawing.Um) {
	w := um(s.width)
	height = min(max(w, leastBand), f.bodyHeight-titleRow-laneGap-crossArm)
	return height, min(w, height)
}

// inPart says what a strip leaves out of a piece that is wider than a page, ""
// where it shows the whole.
func (f format) inPart(s strip, format unit.Format) string {
	_, covered := f.band(s)
	if covered >= um(s.width) {
		return ""
	}
	return fmt.Sprintf(" (%s of its width of %s, from %s on: carry the lines on square, and find the nails on the parts sheet)",
		format.Unit(unit.Length(covered)*unit.Micrometre), format.Unit(s.width), s.edge)
}
