package revision

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Size is what a part measures on the bench, where it can be turned: Small and
// Large are the sides of its section, Length runs along the grain, and Eased is
// the radius of its edges.
type Size struct {
	Small, Large, Length, Eased unit.Length
}

// Lot is a number of parts that are cut and drilled alike.
type Lot struct {
	Mark, Name string // of the part in its rack: "A", "slat"
	Size       Size
	Seats      string // where it is fixed to others, the same however it is turned
	Count      int
	Measured   bool // drawn otherwise: the size is what was measured since
}

// lots returns the parts of a rack, spares among them, as they are once cut: in
// the order of the rack. A spare is taken to be marked out like the first piece
// of its part.
func lots(r *rack.Rack) []Lot { return lotsOf(r, nil) }

// lotsOf returns the lots with their sizes as they were measured since.
func lotsOf(r *rack.Rack, is asMeasured) []Lot {
	var out []Lot
	add := func(l Lot) {
		for i := range out {
			if x := out[i]; x.Mark == l.Mark && x.Seats == l.Seats {
				out[i].Count += l.Count
				return
			}
		}
		out = append(out, l)
	}
	first := map[string]Lot{}
	for _, p := range r.Pieces {
		part, changed := is.part(r.Parts[p.Part])
		l := Lot{Mark: part.Mark, Name: part.Name, Size: sizeOf(r, part), Seats: seats(r, p, part), Count: 1, Measured: changed}
		if _, ok := first[part.Name]; !ok {
			first[part.Name] = l
		}
		add(l)
	}
	for _, s := range r.Design.Shop.Spares {
		if l, ok := first[s.Part]; ok && s.Count > 0 {
			l.Count = s.Count
			add(l)
		}
	}
	return out
}

// alreadyCut returns the lots of a rack, as they were measured since, but for
// parts that wait for something to be measured.
func alreadyCut(r *rack.Rack, is asMeasured) []Lot {
	waits := map[string]bool{}
	for _, p := range r.Parts {
		waits[p.Mark] = r.Waits(p)
	}
	return slices.DeleteFunc(lotsOf(r, is), func(l Lot) bool { return waits[l.Mark] })
}

func sizeOf(r *rack.Rack, p rack.Part) Size {
	s := Size{Small: min(p.Thickness, p.Width), Large: max(p.Thickness, p.Width), Length: p.Length}
	if p.Name == "slat" {
		s.Eased = r.Len("slat.eased")
	}
	return s
}

// seat is a patch of a piece that is fixed to another part, in the piece's own
// frame: along the large side of its section, the small one, and the grain.
type seat struct {
	part   string
	lo, hi [3]unit.Length
}

// seats writes down where a piece is fixed to others. Nails follow from the
// seats by one rule that turns with the piece, so pieces with the same seats
// are drilled alike. A piece may be turned by half a turn about each of its
// axes; of the four ways to write its seats the first in order is taken. Is has
// the sizes that the piece came out at.
func seats(r *rack.Rack, p rack.Piece, is rack.Part) string {
	axes := frame(p)
	var size [3]unit.Length
	for i, a := range axes {
		size[i] = p.Box.Size().On(a)
	}
	var list []seat
	for _, c := range p.Fixed {
		s := seat{part: r.Parts[r.Pieces[c.Piece].Part].Name}
		for i, a := range axes {
			s.lo[i] = c.Patch.Min.On(a) - p.Box.Min.On(a)
			s.hi[i] = c.Patch.Max.On(a) - p.Box.Min.On(a)
		}
		list = append(list, s)
	}
	to := [3]unit.Length{max(is.Width, is.Thickness), min(is.Width, is.Thickness), is.Length}
	list, size = moved(list, size, to), to
	best := written(list)
	for about := range axes {
		best = min(best, written(turned(list, size, about)))
	}
	return best
}

// frame returns the axes of a piece's own frame: large side, small side, grain.
func frame(p rack.Piece) [3]space.Axis {
	var side []space.Axis
	for _, a := range []space.Axis{space.X, space.Y, space.Z} {
		if a != p.Grain {
			side = append(side, a)
		}
	}
	if size := p.Box.Size(); size.On(side[0]) < size.On(side[1]) {
		side[0], side[1] = side[1], side[0]
	}
	return [3]space.Axis{side[0], side[1], p.Grain}
}

// turned returns the seats after half a turn of the piece about one of its axes.
func turned(list []seat, size [3]unit.Length, about int) []seat {
	out := slices.Clone(list)
	for i := range out {
		for a := range size {
			if a != about {
				out[i].lo[a], out[i].hi[a] = size[a]-out[i].hi[a], size[a]-out[i].lo[a]
			}
		}
	}
	return out
}

func written(list []seat) string {
	slices.SortFunc(list, func(a, b seat) int {
		return cmp.Or(strings.Compare(a.part, b.part), slices.Compare(a.lo[:], b.lo[:]), slices.Compare(a.hi[:], b.hi[:]))
	})
	var b strings.Builder
	for _, s := range list {
		fmt.Fprintf(&b, "%s %d %d;", s.part, s.lo, s.hi)
	}
	return b.String()
}
