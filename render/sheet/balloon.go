package sheet

import (
	"slices"

	"slatwright/render/drawing"
)

// Item marks stand in circles of one size beside a view, one below the other,
// with straight leaders that do not cross (ISO 6433, as read in excerpts:
// circles of one size, lettering larger than the figures, in columns outside
// the view). Words about a part stand in the same columns.
const (
	balloonR    = 9 * drawing.MM / 2
	balloonStep = 12 * drawing.MM // between the middles of neighbours, at least
	balloonTry  = 3 * drawing.MM  // from one place to the next that is tried
)

// A tag is an item mark or some words that want a place beside the view, and
// where they may point to.
type tag struct {
	mark   string // in a circle
	words  string // without one, where mark is ""
	owner  int    // whose lines the leader may cross at little cost
	points []drawing.Point

	at, to drawing.Point // the ends of the leader, set by place
	right  bool          // stands in the right column
}

// A stroke is a line of a view that a leader should not cross.
type stroke struct {
	a, b  drawing.Point
	owner int
	light bool // a trail, which may be crossed if need be
}

// What makes a place bad, in millimetres of leader.
const (
	costStroke = 12   // to cross a line of another part, or to end behind it
	costLight  = 3    // to cross a trail
	costOwn    = 5    // to cross a line of the part itself
	costMeet   = 1000 // to meet another leader or mark
	costSteep  = 20   // to go at 45 degrees
)

// place gives each tag in turn the place, in two columns at the inner sides of
// the box, from which the leader crosses least on its way to the part.
func place(tags []tag, strokes []stroke, box drawing.Rect) {
	top, foot := box.Min.Y+balloonR, box.Max.Y-balloonR
	for i := range tags {
		t := &tags[i]
		best, least := *t, drawing.Um(-1)
		try := func(y drawing.Um) {
			t.to.Y = y
			if cost := t.cost(tags[:i], strokes, least); least < 0 || cost < least {
				best, least = *t, cost
			}
		}
		for _, t.right = range []bool{false, true} {
			t.to.X = box.Min.X + balloonR
			if t.right {
				t.to.X = box.Max.X - balloonR
			}
			for _, t.at = range t.points {
				try(min(max(t.at.Y, top), foot)) // level, if nothing is against it
				for y := top; y <= foot; y += balloonTry {
					try(y)
				}
			}
		}
		*t = best
	}
}

// cost returns what is bad about a tag's place, in micrometres; where that is
// more than least, which is not negative, any greater number.
func (t *tag) cost(placed []tag, strokes []stroke, least drawing.Um) drawing.Um {
	const mm = drawing.MM
	d := t.to.Sub(t.at)
	across, down := max(d.X.Abs(), 1), d.Y.Abs()
	sum := across + down + costSteep*mm*down/across
	if across < balloonR+drawing.ArrowLength {
		sum += costMeet * mm // no room for the arrowhead
	}
	for i := range placed {
		if t.meets(placed[i : i+1]) {
			sum += costMeet * mm
		}
	}
	over := drawing.Rect{
		Min: drawing.Pt(min(t.at.X, t.to.X), min(t.at.Y, t.to.Y)),
		Max: drawing.Pt(max(t.at.X, t.to.X), max(t.at.Y, t.to.Y)),
	}
	for i := range strokes {
		if least >= 0 && sum > least {
			break
		}
		s := &strokes[i]
		if max(s.a.X, s.b.X) < over.Min.X || min(s.a.X, s.b.X) > over.Max.X ||
			max(s.a.Y, s.b.Y) < over.Min.Y || min(s.a.Y, s.b.Y) > over.Max.Y || !drawing.Through(t.at, t.to, s.a, s.b) {
			continue
		}
		switch {
		case s.light:
			sum += costLight * mm
		case s.owner == t.owner:
			sum += costOwn * mm
		default:
			sum += costStroke * mm
		}
	}
	return sum
}

// meets reports whether the tag or its leader comes too near to one that has its
// place, or to its leader.
func (t *tag) meets(placed []tag) bool {
	return slices.ContainsFunc(placed, func(o tag) bool {
		close := o.right == t.right && (o.to.Y-t.to.Y).Abs() < balloonStep
		return close || drawing.Through(t.at, t.to, o.at, o.to) || passes(t.at, t.to, o.to) || passes(o.at, o.to, t.to) || t.at == o.at
	})
}

// crossed returns how many lines of parts the leader crosses.
func (t *tag) crossed(strokes []stroke) int {
	n := 0
	for _, s := range strokes {
		if !s.light && drawing.Through(t.at, t.to, s.a, s.b) {
			n++
		}
	}
	return n
}

// passes reports whether the line a b comes to within a balloon and a little
// more of the place p.
func passes(a, b, p drawing.Point) bool {
	const near = balloonR + drawing.MM
	d, q := b.Sub(a), p.Sub(a)
	long := d.X*d.X + d.Y*d.Y
	along := min(max(d.X*q.X+d.Y*q.Y, 0), long)
	foot := drawing.Pt(q.X-d.X*along/max(long, 1), q.Y-d.Y*along/max(long, 1))
	return foot.X*foot.X+foot.Y*foot.Y < near*near
}

// draw draws the leader with its arrowhead, and the mark in its circle or the
// words.
func (t tag) draw(s *drawing.Sheet) {
	g := s.Group()
	s.Add(drawing.Line(drawing.Leader, g, t.at, t.to), drawing.Arrow(g, t.at, t.to))
	if t.mark != "" {
		s.Add(drawing.Disc(drawing.Symbol, g, drawing.White, t.to, balloonR))
		s.Add(drawing.Label(drawing.ItemText, g, drawing.Point{}, drawing.HeadingHeight, drawing.Middle, drawing.Plain(t.mark)).CentredOn(t.to))
		s.Items = append(s.Items, drawing.ItemRecord{Mark: t.mark, Where: t.to, Kind: drawing.Balloon})
		return
	}
	s.Add(t.label(g))
}

// label returns the words of a tag, which end where the leader starts.
func (t tag) label(group int) drawing.Text {
	align, aside := drawing.Right, -drawing.MM
	if t.right {
		align, aside = drawing.Left, drawing.MM
	}
	return drawing.Label(drawing.NoteText, group, t.to.Add(drawing.Pt(aside, drawing.FigureHeight/2)), drawing.FigureHeight, align, drawing.Plain(t.words))
}

// few returns at most n of the points, spread over all of them.
func few(points []drawing.Point, n int) []drawing.Point {
	points = slices.Compact(points)
	if len(points) <= n {
		return points
	}
	out := make([]drawing.Point, n)
	for i := range out {
		out[i] = points[i*(len(points)-1)/(n-1)]
	}
	return out
}
