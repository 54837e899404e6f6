package sheet

import (
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// margins is what the dimensions of a view take at each side.
type margins struct{ left, right, above, below drawing.Um }

// within returns the box that is left of r.
func (m margins) within(r drawing.Rect) drawing.Rect {
	r.Min = r.Min.Add(drawing.Pt(m.left, m.above))
	r.Max = r.Max.Sub(drawing.Pt(m.right, m.below))
	return r
}

// elevation is a view with its dimensions to come.
type elevation struct {
	p     *page
	v     picture
	out   drawing.Rect
	dim   *dim.Board
	title string
	thin  bool // running figures were left out
}

// elevate draws a scene square on, as large as the page and the margins allow,
// and notes its scale under it. Lines of solids from bottles on are thin.
func (p *page) elevate(s view.Scene, d view.Direction, m margins, title string, bottles int) *elevation {
	m.below += viewTitle
	v := pictured(p.in, s, d, false, m.within(p.area))
	v.draw(p.sheet, view.Lines(s, d), func(l view.Line) (drawing.Class, bool) {
		switch {
		case l.ID >= bottles:
			return drawing.Thin, !l.Hidden
		case l.Hidden:
			return drawing.Hidden, true
		}
		return drawing.Visible, true
	})
	e := p.elevation(v, v.extent(s))
	e.title = title
	return e
}

// elevation starts the dimensions of a picture that is the page's main view.
func (p *page) elevation(v picture, out drawing.Rect) *elevation {
	p.scale = ratioText(v)
	return &elevation{p: p, v: v, out: out, dim: dim.New(p.sheet, p.in.Rack.Format, drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den})}
}

// finish draws the dimensions, and the view's title at the foot of the page.
func (e *elevation) finish() {
	e.dim.Draw(e.out)
	text := e.title + ", " + scaleText(e.v)
	if e.thin {
		text += "; every place: see ladder and carcase sheets"
	}
	captionBelow(e.p.sheet, drawing.Pt(e.p.area.Min.X+e.p.area.W()/2, e.p.area.Max.Y-viewTitle), text)
}

// viewTitle is the room for a view's title at the foot of a page.
const viewTitle = 9 * drawing.MM

// x, y and z are stops along the room's axes, as the view shows them.
func (e *elevation) x(l unit.Length, side dim.Side) dim.Stop {
	return dim.Stop{At: e.v.point(space.Point{X: l}).X, Value: l, From: e.edge(side)}
}

func (e *elevation) z(l unit.Length, side dim.Side) dim.Stop {
	return dim.Stop{At: e.v.point(space.Point{Z: l}).Y, Value: l, From: e.edge(side)}
}

// edge is the outline's coordinate on a side.
func (e *elevation) edge(side dim.Side) drawing.Um {
	switch side {
	case dim.Above:
		return e.out.Min.Y
	case dim.Below:
		return e.out.Max.Y
	case dim.LeftOf:
		return e.out.Min.X
	}
	return e.out.Max.X
}

// ascending leaves out stops that do not lie beyond the one before.
func ascending(stops ...dim.Stop) []dim.Stop {
	out := stops[:1:1]
	for _, s := range stops[1:] {
		if s.Value > out[len(out)-1].Value {
			out = append(out, s)
		}
	}
	return out
}

// thinned leaves out stops, but never the first, the one after it or the last,
// until their figures go into the room beside the view: an overview need not
// show every one, since the ladder and carcase sheets do. The view's title says so.
func (e *elevation) thinned(stops []dim.Stop, room drawing.Um) []dim.Stop {
	most := max(3, int(room/dim.RunningRow))
	if len(stops) <= most {
		return stops
	}
	e.thin = true
	step := (len(stops)-2+most-3)/(most-2) + 1
	out := stops[:2:2]
	for i := 1 + step; i < len(stops)-step/2-1; i += step {
		out = append(out, stops[i])
	}
	return append(out, stops[len(stops)-1])
}

// withBottles is the scene of all pieces and, numbered after them, all bottles.
func withBottles(r *rack.Rack) view.Scene {
	s := sceneOf(r, func(rack.Piece) bool { return true })
	for i, b := range r.Bottles {
		s.Rounds = append(s.Rounds, view.Bottle(len(r.Pieces)+i, b.Body, b.Neck)...)
	}
	return s
}

// front is the front elevation: the whole rack with its bottles, overall sizes,
// where each ladder stands and how high each slat of the last column lies.
func front(in Input) *page {
	p := in.newPage("front", "Front elevation")
	r := in.Rack
	m := margins{44 * drawing.MM, 40 * drawing.MM, 31 * drawing.MM, 34 * drawing.MM}
	if len(r.Columns) < 3 {
		m.below += 8 * drawing.MM // the overall figure is wider than the rack
	}
	e := p.elevate(withBottles(r), view.Front, m, "Front", len(r.Pieces))

	left := []dim.Stop{}
	for _, l := range r.Ladders {
		left = append(left, e.x(l.X, dim.Above))
	}
	e.dim.Running(dim.Above, "LEFT", e.thinned(left, e.out.W()), dim.Options{})

	e.widths()
	e.heights()
	last := r.Kinds[r.Columns[len(r.Columns)-1].Kind]
	under := []dim.Stop{e.z(0, dim.RightOf)}
	for _, z := range last.Under {
		under = append(under, e.z(z, dim.RightOf))
	}
	e.dim.Running(dim.RightOf, "FOOT", e.thinned(ascending(under...), e.out.H()), dim.Options{})
	e.finish()
	return p
}

// heights puts aprons, leg and top on the left of an elevation.
func (e *elevation) heights() {
	r := e.p.in.Rack
	lift, high, leg := r.Len("apron.lift"), r.Len("apron.height"), r.Len("leg.length")
	z := func(l unit.Length) dim.Stop { return e.z(l, dim.LeftOf) }
	e.dim.Chain(dim.LeftOf, ascending(z(0), z(lift), z(lift+high), z(leg-high), z(leg), z(r.Len("rack.height"))), dim.Options{})
	e.dim.Overall(dim.LeftOf, z(0), z(r.Len("rack.height")), dim.Options{Names: []string{"rack.height"}})
}

// widths puts carcase and overhangs under a view from the front or above, and
// the whole under them.
func (e *elevation) widths() {
	r := e.p.in.Rack
	x := func(l unit.Length) dim.Stop { return e.x(l, dim.Below) }
	side, carcase := unit.Length(0), r.Len("carcase.width")
	if r.HasTop() {
		side = r.Len("overhang.side")
	}
	across := ascending(x(-side), x(0), x(carcase), x(carcase+side))
	if len(across) > 2 {
		e.dim.Chain(dim.Below, across, dim.Options{Names: []string{"overhang.side", "carcase.width", "overhang.side"}})
	}
	e.dim.Overall(dim.Below, across[0], across[len(across)-1], dim.Options{Names: []string{"rack.width"}})
}
