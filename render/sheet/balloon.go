package sheet

import (
	"cmp"
	"slices"

	"slatwright/render/drawing"
)

// Item marks stand in circles of one size beside a view, one below the other,
// with straight leaders that do not cross (ISO 6433, as read in excerpts:
// circles of one size, lettering larger than the figures, in columns outside
// the view).
const (
	balloonR    = 9 * drawing.MM / 2
	balloonStep = 12 * drawing.MM // between the middles of neighbours
)

// A tag is an item mark that wants a balloon, and the place of what it names.
type tag struct {
	mark string
	at   drawing.Point // on an edge of the part
	to   drawing.Point // middle of its balloon, set by spread
}

// balloons draws the tags in two columns at the left and right inner sides of
// the box, each on the side nearer to its part.
func balloons(s *drawing.Sheet, tags []tag, box drawing.Rect) {
	var left, right []tag
	for _, t := range tags {
		if t.at.X-box.Min.X < box.Max.X-t.at.X {
			left = append(left, t)
		} else {
			right = append(right, t)
		}
	}
	spread(left, box.Min.X+balloonR, box)
	spread(right, box.Max.X-balloonR, box)
	for _, t := range append(left, right...) {
		t.draw(s)
	}
}

// spread gives each tag a place at x, as near to the height of its part as
// the others allow, and then swaps places until no two leaders cross. Each
// swap shortens the leaders together, so that this ends.
func spread(tags []tag, x drawing.Um, box drawing.Rect) {
	slices.SortFunc(tags, func(a, b tag) int {
		return cmp.Or(cmp.Compare(a.at.Y, b.at.Y), cmp.Compare(a.at.X, b.at.X), cmp.Compare(a.mark, b.mark))
	})
	low := box.Max.Y - balloonR - balloonStep*drawing.Um(len(tags)-1)
	for i := range tags {
		y := max(tags[i].at.Y, box.Min.Y+balloonR)
		if i > 0 {
			y = max(y, tags[i-1].to.Y+balloonStep)
		}
		tags[i].to = drawing.Pt(x, min(y, low+balloonStep*drawing.Um(i)))
	}
	for swapped := true; swapped; {
		swapped = false
		for i := range tags {
			for j := range i {
				a, b := &tags[i], &tags[j]
				if leadersCross(a.at, a.to, b.at, b.to) {
					a.to, b.to = b.to, a.to
					swapped = true
				}
			}
		}
	}
}

// leadersCross reports whether the lines a b and c d cross inside both.
func leadersCross(a, b, c, d drawing.Point) bool {
	turn := func(p, q, r drawing.Point) int {
		return cmp.Compare((q.X-p.X)*(r.Y-p.Y), (q.Y-p.Y)*(r.X-p.X))
	}
	return turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0
}

// draw draws the leader with its arrowhead, the circle and the mark.
func (t tag) draw(s *drawing.Sheet) {
	g := s.Group()
	s.Add(drawing.Line(drawing.Leader, g, t.at, t.to), drawing.Arrow(g, t.at, t.to))
	s.Add(drawing.Disc(drawing.Symbol, g, drawing.White, t.to, balloonR))
	s.Add(drawing.Label(drawing.ItemText, g, drawing.Point{}, drawing.HeadingHeight, drawing.Middle, drawing.Plain(t.mark)).CentredOn(t.to))
	s.Items = append(s.Items, drawing.ItemRecord{Mark: t.mark, Where: t.to, Kind: drawing.Balloon})
}
