package template

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// A strip is what one long template shows: marks along a piece, measured from
// its datum end, which lies to the left.
type strip struct {
	name       string // "inner ladder, left face"
	use        string // what it is laid on
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

// A nail is a place to prick through: how far from the datum, and how far from
// the true edge.
type nail struct{ along, across unit.Length }

// strips returns what is worth a template: each face of each shape of ladder
// that bears slats, and the aprons, which are all spaced alike.
func strips(r *rack.Rack) ([]strip, error) {
	slat, okSlat := r.PartNamed("slat")
	leg, okLeg := r.PartNamed("leg")
	apron, okApron := r.PartNamed("apron")
	if !okSlat || !okLeg || !okApron {
		return nil, fmt.Errorf("a rack without slats, legs or aprons has no template")
	}
	var out []strip
	for shape, s := range r.Shapes {
		faces := []struct {
			name, side string
			under      []unit.Length
			up         bool
		}{{"left face", "left", s.Left, false}, {"right face", "right", s.Right, true}}
		for _, f := range faces {
			if len(f.under) == 0 {
				continue
			}
			out = append(out, strip{
				name:  ladderName(s.Name) + ", " + f.name,
				use:   fmt.Sprintf("%s face of both legs of %s, %s", f.side, rack.Places("ladder", r.LaddersOf(shape)), word.Count(len(f.under), "slat")),
				start: "FOOT", end: "TOP", edge: "FRONT", edgeUp: f.up,
				length: leg.Length, width: leg.Width,
				seats: slatSeats(f.under, slat.Width, leg.Width, f.up),
			})
		}
	}
	return append(out, apronStrip(r, apron)), nil
}

// ladderName sets a shape's name before the word ladder: "left end ladder",
// "inner ladder 2".
func ladderName(shape string) string {
	words := strings.Fields(shape)
	if n := len(words); n > 1 && words[n-1][0] >= '0' && words[n-1][0] <= '9' {
		return strings.Join(words[:n-1], " ") + " ladder " + words[n-1]
	}
	return shape + " ladder"
}

// slatSeats returns the seats of slats on a leg, with the nails of each crossing
// where the ladder's drawing has them.
func slatSeats(under []unit.Length, height, legWidth unit.Length, right bool) []seat {
	var out []seat
	for _, z := range under {
		s := seat{from: z, to: z + height}
		patch := space.Box{Min: space.Point{Z: z}, Max: space.Point{Y: legWidth, Z: z + height}}
		for _, p := range rack.NailPlaces(patch, space.X, right) {
			s.nails = append(s.nails, nail{along: p.Z, across: p.Y})
		}
		out = append(out, s)
	}
	return out
}

// apronStrip returns the strip along an apron, with its seats and nails where the
// first apron is fixed to the legs. Aprons are all alike in this, and their left
// ends are flush with the first leg.
func apronStrip(r *rack.Rack, apron rack.Part) strip {
	s := strip{
		name: word.Count(apron.Count, "apron"), use: "front ones on the outer face, back ones on the inner face",
		start: "LEFT", end: "RIGHT", edge: "LOWER EDGE",
		length: apron.Length, width: apron.Width,
	}
	first := r.Pieces[slices.IndexFunc(r.Pieces, func(p rack.Piece) bool { return r.Parts[p.Part].Mark == apron.Mark })]
	from := first.Box.Min
	for _, c := range first.Fixed {
		if c.Axis != space.Y {
			continue
		}
		at := seat{from: c.Patch.Min.X - from.X, to: c.Patch.Max.X - from.X}
		for _, p := range rack.NailPlaces(c.Patch, space.Y, false) {
			at.nails = append(at.nails, nail{along: p.X - from.X, across: p.Z - from.Z})
		}
		s.seats = append(s.seats, at)
	}
	slices.SortFunc(s.seats, func(a, b seat) int { return cmp.Compare(a.from, b.from) })
	return s
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
