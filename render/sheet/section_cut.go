package sheet

import (
	"math"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
)

// A cut is what a section shows of a column, from the front: a piece of its
// height with the legs to either side.
type cut struct {
	r      *rack.Rack
	kind   int
	lo, hi length
	sizes  bool // sizes across stand under it
}

// rowCuts are the lowest row, up to the slats over it, and the highest, from the
// slats under it; one where there is one row.
func rowCuts(r *rack.Rack, kind int) []cut {
	under := r.Kinds[kind].Under
	all := cut{r: r, kind: kind, hi: r.Len("rack.height"), sizes: true}
	if len(under) == 1 {
		return []cut{all}
	}
	slat := r.Len("slat.height")
	low, high := all, all
	low.hi = under[1] + slat*5/4
	high.lo, high.sizes = under[len(under)-1]-slat/2, false
	return []cut{low, high}
}

// title says what the cut shows.
func (c cut) title() string {
	switch {
	case c.lo == 0 && c.toTop():
		return "From the front"
	case c.oneRow():
		return "The one row, legs broken off"
	case c.toTop():
		return "Highest row, legs broken off"
	}
	return "Lowest row, legs broken off"
}

// oneRow reports whether the column has one row of cells.
func (c cut) oneRow() bool { return len(c.r.Kinds[c.kind].Under) == 1 }

// toTop reports whether the cut goes up to the top of the rack.
func (c cut) toTop() bool { return c.hi == c.r.Len("rack.height") }

// rowShown reports whether a row's slats lie within the cut.
func (c cut) rowShown(row int) bool {
	z := c.r.Kinds[c.kind].Under[row]
	return z >= c.lo && z+c.r.Len("slat.height") <= c.hi
}

// round is the room that the sizes of the cut take round it at a scale: found by
// setting them on waste paper, and no less than what most cuts need, so that
// cuts look alike from sheet to sheet.
func (c cut) round(in Input, den int64) margins {
	m := margins{sectionLeft, sectionRight, sectionAbove, sectionBare}
	if c.sizes {
		m.below = sectionBelow
	}
	waste := &page{sheet: &drawing.Sheet{}, in: in}
	v := picture{proj: view.Projection{Direction: view.Front, Num: 1, Den: den}}
	e := waste.elevation(v, v.extent(c.scene()))
	c.measure(e)
	e.dim.Draw(e.out)
	for _, mark := range waste.sheet.Marks {
		r := mark.Bounds()
		m.left, m.right = max(m.left, e.out.Min.X-r.Min.X), max(m.right, r.Max.X-e.out.Max.X)
		m.above, m.below = max(m.above, e.out.Min.Y-r.Min.Y), max(m.below, r.Max.Y-e.out.Max.Y)
	}
	return m
}

// size is the room that the cut takes at a scale, its dimensions and its title
// included.
func (c cut) size(in Input, den int64) drawing.Point {
	m := c.round(in, den)
	v := picture{proj: view.Projection{Direction: view.Front, Num: 1, Den: den}}
	e := v.extent(c.scene())
	return drawing.Pt(e.W()+m.left+m.right, e.H()+m.above+m.below+viewTitle)
}

// right is the right leg's inner face; the left leg stands from nought.
func (c cut) right() length { return c.r.Len("leg.thickness") + c.r.Kinds[c.kind].Channel }

// centre is where the bottles' axes stand between the legs.
func (c cut) centre() length {
	return c.r.Len("leg.thickness") + c.r.Kinds[c.kind].Channel/2
}

// slatTop is the upper side of a row's slats.
func (c cut) slatTop(row int) length {
	return c.r.Kinds[c.kind].Under[row] + c.r.Len("slat.height")
}

// box is a box of the cut, clipped to its height; ok is false where nothing of
// it is left.
func (c cut) box(x0, x1, z0, z1 length) (b space.Box, ok bool) {
	z0, z1 = max(z0, c.lo), min(z1, c.hi)
	return space.Box{Min: space.Point{X: x0, Z: z0}, Max: space.Point{X: x1, Y: c.r.Len("slat.length"), Z: z1}}, z0 < z1
}

// scene is the cut's outline: the two legs and the top.
func (c cut) scene() view.Scene {
	var s view.Scene
	for _, b := range append(c.legs(), c.top()...) {
		s.Boxes = append(s.Boxes, view.Solid{Box: b})
	}
	return s
}

func (c cut) legs() []space.Box {
	leg := c.r.Len("leg.thickness")
	a, _ := c.box(0, leg, 0, c.r.Len("leg.length"))
	b, _ := c.box(c.right(), c.right()+leg, 0, c.r.Len("leg.length"))
	return []space.Box{a, b}
}

// top is the piece of the top over the column, if the cut reaches it. It is
// broken off at either side, beyond the legs.
func (c cut) top() []space.Box {
	leg := c.r.Len("leg.thickness")
	b, ok := c.box(-leg/2, c.right()+leg+leg/2, c.r.Len("leg.length"), c.r.Len("rack.height"))
	if !ok {
		return nil
	}
	return []space.Box{b}
}

func (c cut) slats() []space.Box {
	leg, thick := c.r.Len("leg.thickness"), c.r.Len("slat.thickness")
	var out []space.Box
	for row, z := range c.r.Kinds[c.kind].Under {
		for _, x := range []length{leg, c.right() - thick} {
			if b, ok := c.box(x, x+thick, z, c.slatTop(row)); ok {
				out = append(out, b)
			}
		}
	}
	return out
}

// aprons are those behind the legs, as far as they show between them.
func (c cut) aprons() []space.Box {
	leg, low, high := c.r.Len("leg.thickness"), c.r.Len("apron.lift"), c.r.Len("apron.height")
	var out []space.Box
	for _, z := range []length{low, c.r.Len("leg.length") - high} {
		if b, ok := c.box(leg, c.right(), z, z+high); ok {
			out = append(out, b)
		}
	}
	return out
}

// draw inks the cut: aprons behind, cut pieces hatched over them, bottles, and
// the lines along which it is broken off.
func (c cut) draw(s *drawing.Sheet, v picture) {
	for _, b := range c.aprons() {
		c.outline(s, v, b)
	}
	hatched := func(b space.Box, h drawing.Hatching) {
		g, r := s.Group(), v.around(b)
		s.Add(drawing.Rectangle(drawing.Solid, g, drawing.White, r))
		s.Add(h.Hatch(g, r)...)
	}
	solid := func(b space.Box, h drawing.Hatching) {
		hatched(b, h)
		c.outline(s, v, b)
	}
	for _, b := range c.legs() {
		solid(b, drawing.Hatching{Pitch: 2 * drawing.MM})
	}
	for _, b := range c.slats() {
		solid(b, drawing.Hatching{Pitch: 3 * drawing.MM / 2, Falling: true})
	}
	for _, b := range c.top() {
		hatched(b, drawing.Hatching{Pitch: 3 * drawing.MM, Falling: true})
		c.brokenTop(s, v.around(b))
	}
	for row := range c.r.Kinds[c.kind].Under {
		large, small := extremes(c.r.Kinds[c.kind].Fit[row])
		c.bottle(s, v, row, large)
		if small != large {
			c.bottle(s, v, row, small)
		}
	}
	out := v.extent(c.scene())
	const over = 4 * drawing.MM
	for _, z := range []length{c.lo, c.hi} {
		if z > 0 && z < c.r.Len("leg.length") {
			y := v.point(space.Point{Z: z}).Y
			s.Add(drawing.BreakLine(0, drawing.Pt(out.Min.X-over, y), drawing.Pt(out.Max.X+over, y)))
		}
	}
}

// brokenTop draws the top's upper and lower side, and the lines along which it is
// broken off at its left and right.
func (c cut) brokenTop(s *drawing.Sheet, r drawing.Rect) {
	const over = 2 * drawing.MM
	g := s.Group()
	for _, y := range []drawing.Um{r.Min.Y, r.Max.Y} {
		s.Add(drawing.Line(drawing.Visible, g, drawing.Pt(r.Min.X, y), drawing.Pt(r.Max.X, y)))
	}
	for _, x := range []drawing.Um{r.Min.X, r.Max.X} {
		s.Add(drawing.BreakLine(0, drawing.Pt(x, r.Min.Y-over), drawing.Pt(x, r.Max.Y+over)))
	}
}

// outline draws a box's edges, but none along which the cut is broken off.
func (c cut) outline(s *drawing.Sheet, v picture, b space.Box) {
	r := v.around(b)
	g := s.Group()
	edge := func(x0, y0, x1, y1 drawing.Um) {
		s.Add(drawing.Line(drawing.Visible, g, drawing.Pt(x0, y0), drawing.Pt(x1, y1)))
	}
	edge(r.Min.X, r.Min.Y, r.Min.X, r.Max.Y)
	edge(r.Max.X, r.Min.Y, r.Max.X, r.Max.Y)
	if !c.broken(b.Max.Z) {
		edge(r.Min.X, r.Min.Y, r.Max.X, r.Min.Y)
	}
	if !c.broken(b.Min.Z) {
		edge(r.Min.X, r.Max.Y, r.Max.X, r.Max.Y)
	}
}

// broken reports whether the cut is broken off at a height.
func (c cut) broken(z length) bool {
	return z == c.lo && z > 0 || z == c.hi && z < c.r.Len("leg.length")
}

// bottle draws a bottle of a diameter in a row, as far as the cut shows it.
func (c cut) bottle(s *drawing.Sheet, v picture, row int, d length) {
	h, ok := rack.AxisAbove(d, c.r.Kinds[c.kind].Gap, c.r.Len("slat.eased"))
	if !ok {
		return // falls through: the check says so
	}
	z := c.slatTop(row) + h
	at := v.point(space.Point{X: c.centre(), Z: z})
	radius := drawing.Um((d / 2 * length(v.proj.Num) / length(v.proj.Den)).Micrometres())
	g := s.Group()
	// Angles from the right, counter-clockwise, of where the circle passes the
	// cut's upper and lower end.
	angle := func(end length) float64 {
		return math.Asin(min(1, max(-1, float64(end-z)/float64(d/2)))) * 180 / math.Pi
	}
	from, to := angle(c.lo), angle(c.hi)
	switch {
	case from >= to: // above or below the cut
	case from == -90 && to == 90:
		s.Add(drawing.Disc(drawing.Thin, g, drawing.NoFill, at, radius))
	case from == -90: // one arc, open above
		s.Add(drawing.Arc(drawing.Thin, g, at, radius, 180-to, 180+2*to))
	case to == 90: // one arc, open below
		s.Add(drawing.Arc(drawing.Thin, g, at, radius, from, 180-2*from))
	default:
		s.Add(drawing.Arc(drawing.Thin, g, at, radius, from, to-from),
			drawing.Arc(drawing.Thin, g, at, radius, 180-to, to-from))
	}
}
