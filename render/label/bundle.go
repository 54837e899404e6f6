package label

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/word"
)

// mostSingle is how many labels a packet has at most with one for each piece;
// past it a ladder's pieces of one part and one face share a label, since nobody
// sticks hundreds on slats that are alike.
const mostSingle = 60

// bundled puts the pieces of a ladder that are alike under one label each, at the
// place of the first, where there are more labels than one would stick on. Aprons
// and tops, each at a place of its own, and spares keep theirs.
func bundled(entries []entry) []entry {
	if len(entries) <= mostSingle {
		return entries
	}
	type key struct {
		rack        *rack.Rack
		order, part string
		ladder      int
		right       bool
	}
	at := map[key]int{}
	var out []entry
	for _, e := range entries {
		if e.piece < 0 || e.rack.Pieces[e.piece].Ladder < 0 {
			out = append(out, e)
			continue
		}
		k := key{e.rack, e.order, e.part.Mark, e.rack.Pieces[e.piece].Ladder, e.right()}
		if i, ok := at[k]; ok {
			out[i].pieces++
			continue
		}
		e.pieces = 1
		at[k] = len(out)
		out = append(out, e)
	}
	for i := range out {
		if out[i].pieces == 0 {
			continue
		}
		same := func(e entry) bool {
			return e.pieces > 0 && e.rack == out[i].rack && e.order == out[i].order && e.part.Mark == out[i].part.Mark
		}
		out[i].n, out[i].of = 1, 0
		for k, e := range out {
			if same(e) {
				out[i].of++
				if k < i {
					out[i].n++
				}
			}
		}
	}
	return out
}

// onRight reports whether a piece of a ladder is a slat on its right face.
func onRight(r *rack.Rack, p rack.Piece) bool {
	return r.Parts[p.Part].Name == "slat" && p.Box.Min.X > r.Ladders[p.Ladder].X
}

// right reports whether an entry is of a slat on the right face of its ladder.
func (e entry) right() bool { return onRight(e.rack, e.rack.Pieces[e.piece]) }

// bundleWords says what a bundle holds: "14 slats, left face".
func (e entry) bundleWords() string {
	text := word.Count(e.pieces, e.part.Name)
	if e.part.Name != "slat" {
		return text
	}
	if e.right() {
		return text + ", right face"
	}
	return text + ", left face"
}

// numbered says which of how many labels of a part an entry's is.
func (e entry) numbered() string {
	if e.pieces > 0 {
		return fmt.Sprintf("bundle %d of %d", e.n, e.of)
	}
	return fmt.Sprintf("%d of %d", e.n, e.of)
}
