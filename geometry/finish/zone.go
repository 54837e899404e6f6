// Package finish works out what is finished and what stays bare: the faces of
// each piece that are glued, the rows in which parts are laid to be taped, the
// areas of each part, and how much conditioner, stain, coat, glue and paper
// that takes. A solved rack goes in; plain data comes out, which the finishing
// sheets show. Lengths and areas are exact; only quantities of materials hang
// on measured figures, and are rounded up.
package finish

import (
	"cmp"
	"iter"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Zone is a patch of a piece's face that is glued, and so kept bare of finish.
type Zone struct {
	Piece int        // into the rack's Pieces
	Axis  space.Axis // normal of the face
	Far   bool       // the face at the greater coordinate
	Patch space.Box  // flat along Axis
}

// Zones yields every glued patch of every piece, pieces in the rack's order.
// Slats are glued to legs and legs to aprons, unless the design leaves crossings
// to nails. The top is glued to the front upper apron alone, so that it can move
// across its width, or to the back one as well where the design has it glued all
// round. The ends of legs, and slat ends that stand against aprons, are end grain
// and never glued.
func Zones(r *rack.Rack) iter.Seq[Zone] {
	return func(yield func(Zone) bool) {
		for i := range r.Pieces {
			for z := range ZonesOf(r, i) {
				if !yield(z) {
					return
				}
			}
		}
	}
}

// ZonesOf yields the patches of one piece, a number into the rack's Pieces.
func ZonesOf(r *rack.Rack, piece int) iter.Seq[Zone] {
	return func(yield func(Zone) bool) {
		p := &r.Pieces[piece]
		for _, c := range p.Fixed {
			if glued(r, p, &r.Pieces[c.Piece]) && !yield(Zone{Piece: piece, Axis: c.Axis, Far: c.Far, Patch: c.Patch}) {
				return
			}
		}
	}
}

// glued reports whether two pieces that are fixed to each other are glued.
func glued(r *rack.Rack, a, b *rack.Piece) bool {
	if r.Parts[a.Part].Name == "top" {
		a, b = b, a
	}
	if r.Parts[b.Part].Name != "top" {
		return r.Design.Joint.Glue
	}
	front := a.Box.Min.Y == 0 // of the carcase
	return r.Parts[a.Part].Name == "apron" && (front || r.Design.Joint.TopGlued)
}

// Strip is a bare patch of a face: From and To along the grain, from the end
// that the row is measured from; Low and High across it.
type Strip struct{ From, To, Low, High unit.Length }

// Row is parts that are laid side by side, one face up, to be taped across in
// one go: the same strips on every one.
type Row struct {
	Part   int    // into the rack's Parts
	Face   string // which face is up
	From   string // the end that strips are measured from
	Count  int    // of faces
	Pieces []int  // each with such a face, once; into the rack's Pieces, ascending
	Left   []int  // ladders whose left faces these are, ascending; legs only
	Right  []int  // and whose right faces
	Length unit.Length
	Across unit.Length // of one face
	Strips []Strip     // by From, then Low
}

// Whole reports whether every strip crosses its face from edge to edge.
func (w Row) Whole() bool {
	return !slices.ContainsFunc(w.Strips, func(s Strip) bool { return s.Low != 0 || s.High != w.Across })
}

// Rows gathers the zones of all pieces into rows: by part, by face, and then in
// the order of first use.
func Rows(r *rack.Rack) []Row {
	var rows []Row
	zones := slices.Collect(Zones(r))
	for i := 0; i < len(zones); {
		n := i
		for n < len(zones) && zones[n].Piece == zones[i].Piece {
			n++
		}
		for _, w := range rowsOf(r, zones[i:n]) {
			k := slices.IndexFunc(rows, func(o Row) bool {
				return o.Part == w.Part && o.Face == w.Face && slices.Equal(o.Strips, w.Strips)
			})
			if k < 0 {
				rows = append(rows, w)
			} else {
				rows[k].join(w)
			}
		}
		i = n
	}
	slices.SortStableFunc(rows, func(a, b Row) int { return cmp.Or(cmp.Compare(a.Part, b.Part), cmp.Compare(a.Face, b.Face)) })
	return rows
}

// join adds the one face of another row, of the same piece or a later one.
func (w *Row) join(o Row) {
	w.Count += o.Count
	if p := o.Pieces[0]; w.Pieces[len(w.Pieces)-1] != p {
		w.Pieces = append(w.Pieces, p)
	}
	later := func(list, more []int) []int {
		if len(more) > 0 && !slices.Contains(list, more[0]) {
			list = append(list, more[0])
		}
		return list
	}
	w.Left, w.Right = later(w.Left, o.Left), later(w.Right, o.Right)
}

// rowsOf returns a row of one for each face of a piece that has zones.
func rowsOf(r *rack.Rack, zones []Zone) []Row {
	p := r.Pieces[zones[0].Piece]
	var rows []Row
	for _, f := range []struct {
		axis space.Axis
		far  bool
	}{{space.X, false}, {space.X, true}, {space.Y, false}, {space.Y, true}, {space.Z, false}, {space.Z, true}} {
		if f.axis == p.Grain {
			continue // end grain is not glued
		}
		across := space.X + space.Y + space.Z - f.axis - p.Grain // the third axis
		w := Row{Part: p.Part, Count: 1, Pieces: []int{zones[0].Piece}, Length: p.Box.Size().On(p.Grain), Across: p.Box.Size().On(across)}
		w.Face, w.From = faceNames(r.Parts[p.Part].Name, f.axis)
		switch {
		case r.Parts[p.Part].Name != "leg" || f.axis != space.X:
		case f.far:
			w.Right = []int{p.Ladder}
		default:
			w.Left = []int{p.Ladder}
		}
		for _, z := range zones {
			if z.Axis != f.axis || z.Far != f.far {
				continue
			}
			lo, hi := z.Patch.Min.Sub(p.Box.Min), z.Patch.Max.Sub(p.Box.Min)
			w.Strips = append(w.Strips, Strip{lo.On(p.Grain), hi.On(p.Grain), lo.On(across), hi.On(across)})
		}
		if len(w.Strips) == 0 {
			continue
		}
		slices.SortFunc(w.Strips, func(a, b Strip) int { return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.Low, b.Low)) })
		rows = append(rows, w)
	}
	return rows
}

// faceNames says which face of a part has the normal, and from which end it is
// measured.
func faceNames(part string, normal space.Axis) (face, from string) {
	switch part {
	case "slat":
		return "face against the legs", "FRONT"
	case "leg":
		if normal == space.X {
			return "face under the slats", "FOOT"
		}
		return "outer edge, under the aprons", "FOOT"
	case "apron":
		if normal == space.Y {
			return "inner face", "LEFT"
		}
		return "top edge of the front upper one", "LEFT"
	}
	return "underside", "LEFT"
}
