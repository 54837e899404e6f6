package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
)

// mostWhole is how many ladders an exploded view shows all of; past it the row
// is broken off and only ladders that differ are shown.
const mostWhole = 7

// mostInner is how many shapes of inner ladder a shortened row shows.
const mostInner = 3

// A row is what an exploded view shows of a rack: some of its ladders, closed
// up, and boards broken off where ladders are left out.
type row struct {
	rack   *rack.Rack
	shown  []int // ladders, from left to right
	breaks []gap
}

// A gap is what is left out of the boards: from .. to of the rack, of which wide
// stays open.
type gap struct{ from, to, wide length }

// rowOf returns the whole row of a small rack; of a large one both ends with
// their neighbours and the first ladder of each shape of inner ladder, as many as
// the view has room for.
func rowOf(r *rack.Rack) row {
	w := row{rack: r}
	last := len(r.Ladders) - 1
	seen := map[int]bool{}
	for i, l := range r.Ladders {
		end := i <= 2 || i >= last-1
		if last < mostWhole || end || !seen[l.Shape] && len(seen) <= mostInner {
			w.shown = append(w.shown, i)
			seen[l.Shape] = true
		}
	}
	thick := r.Len("leg.thickness")
	bay := func(i int) length { return r.Ladders[i+1].X - r.Ladders[i].X - thick }
	for n, b := range w.shown[1:] {
		if a := w.shown[n]; b > a+1 {
			w.breaks = append(w.breaks, gap{
				from: r.Ladders[a].X + thick + bay(a)/2,
				to:   r.Ladders[b].X - bay(b-1)/2,
				wide: bay(a) * 2 / 3,
			})
		}
	}
	return w
}

// closed returns how far to the left what lies at x moves when the row is closed
// up.
func (w row) closed(x length) length {
	var sum length
	for _, b := range w.breaks {
		if b.to <= x {
			sum += b.to - b.from - b.wide
		}
	}
	return sum
}

// scene returns the pieces that are shown, each with its number in the rack; a
// broken board is as many solids as parts of it are left.
func (w row) scene() view.Scene {
	var s view.Scene
	add := func(id int, b space.Box) {
		s.Boxes = append(s.Boxes, view.Solid{ID: id, Box: b.Moved(space.Point{X: -w.closed(b.Min.X)})})
	}
	for i, p := range w.rack.Pieces {
		if p.Ladder >= 0 {
			if slices.Contains(w.shown, p.Ladder) {
				add(i, p.Box)
			}
			continue
		}
		if w.rack.Parts[p.Part].Name == "block" {
			if w.left(p.Box) {
				add(i, p.Box)
			}
			continue
		}
		rest := p.Box
		for _, b := range w.breaks {
			left := rest
			left.Max.X, rest.Min.X = b.from, b.to
			add(i, left)
		}
		add(i, rest)
	}
	return s
}

// torn reports whether a line of a board lies where the board is broken off.
func (w row) torn(l view.Line) bool {
	if l.Kind != view.Edge || w.rack.Pieces[l.ID].Ladder >= 0 || l.From.X != l.To.X {
		return false
	}
	return slices.ContainsFunc(w.breaks, func(b gap) bool {
		return l.From.X == b.from-w.closed(b.from) || l.From.X == b.to-w.closed(b.to)
	})
}

// words says what a shortened row leaves out, "" for a whole one.
func (w row) words() string {
	if len(w.breaks) == 0 {
		return ""
	}
	shown := map[int]bool{}
	for _, i := range w.shown {
		shown[w.rack.Ladders[i].Shape] = true
	}
	var alike, others []string
	for i, s := range w.rack.Shapes {
		switch {
		case s.Role != rack.Inner:
		case shown[i]:
			alike = append(alike, howMany(w.rack, i))
		default:
			others = append(others, howMany(w.rack, i))
		}
	}
	text := fmt.Sprintf("Broken off: %d of %d ladders shown; %s", len(w.shown), len(w.rack.Ladders), strings.Join(alike, "; "))
	if len(others) > 0 {
		text += "; not shown: " + strings.Join(others, "; ")
	}
	return text
}

// howMany names a kind of ladder by its places: "left end ladder", "inner ladders
// 2 to 4, alike".
func howMany(r *rack.Rack, shape int) string {
	s := r.Shapes[shape]
	if s.Role != rack.Inner {
		return s.Role.String() + " ladder"
	}
	text := "inner " + rack.Places("ladder", r.LaddersOf(shape))
	if s.Count > 1 {
		text += ", alike"
	}
	return text
}
