package sheet

import (
	"slices"
	"strings"

	"slatwright/geometry/inspect"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/render/drawing/paper"
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
	notes []string // what the dimensions are
	thin  bool     // running figures were left out
}

// elevated returns the sheet of a scene seen square on with its dimensions, the paper
// across or upright and the picture as large as they all go on it, its scale and
// what the dimensions are under it. Lines of solids from bottles on are thin.
func elevated(in Input, name, sheetTitle string, s view.Scene, d view.Direction, title string, bottles int, measure func(*elevation)) *page {
	in = in.turned(func(blank *page) int64 { return blank.largest(s, d, measure).proj.Den })
	p := in.newPage(name, sheetTitle)
	v := p.largest(s, d, measure)
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
	measure(e)
	e.finish()
	return p
}

// largest returns the picture of a scene at the largest scale in use at which it
// goes on the page with its dimensions: they are set on waste paper to see what
// they take.
func (p *page) largest(s view.Scene, d view.Direction, measure func(*elevation)) picture {
	for den := int64(1); ; den = nextScale(p.in, den) {
		v := picture{proj: view.Projection{Direction: d, Num: 1, Den: den}}
		waste := &page{sheet: &drawing.Sheet{Second: p.sheet.Second}, in: p.in}
		e := waste.elevation(v, v.extent(s))
		measure(e)
		e.dim.Draw(e.out)
		all := paper.Around(e.out.Min, e.out.Max)
		if ink := waste.inked(0); ink.W() > 0 {
			all = paper.Around(e.out.Min, e.out.Max, ink.Min, ink.Max)
		}
		high := viewTitle + captionStep*drawing.Um(len(e.captions(p.area.W())))
		if all.W() <= p.area.W()+2*bleed && all.H()+high <= p.area.H()+bleed {
			return v.centred(s, p.area)
		}
	}
}

// bleed is how far a picture's figures may stand out of the page's area at each
// side, still clear of the frame, where that makes room for a larger scale.
const bleed = 3 * drawing.MM / 2

// elevation starts the dimensions of a picture that is the page's main view.
func (p *page) elevation(v picture, out drawing.Rect) *elevation {
	p.scale = ratioText(v)
	return &elevation{p: p, v: v, out: out, dim: dim.New(p.sheet, p.in.Rack.Format, drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den})}
}

// finish draws the dimensions and, under them, the view's title with what the
// dimensions are, and sets all of it in the middle of the page.
func (e *elevation) finish() {
	e.dim.Draw(e.out)
	at := drawing.Pt(e.out.Centre().X, e.p.inked(0).Max.Y+captionOff)
	e.p.caption(at, e.title+", "+scaleText(e.v))
	for i, line := range e.captions(e.p.area.W()) {
		e.p.caption(at.Add(drawing.Pt(0, captionStep*drawing.Um(i+1))), line)
	}
	e.p.centre()
}

// captions are the notes in lines.
func (e *elevation) captions(width drawing.Um) []string {
	list := e.notes
	if e.thin {
		list = append(slices.Clone(list), "every place: "+sheetRef("ladder")+", "+sheetRef("carcase"))
	}
	if len(list) == 0 {
		return nil
	}
	text := strings.Join(list, "; ")
	return breakLines(strings.ToUpper(text[:1])+text[1:]+".", width, drawing.FigureHeight)
}

// viewTitle is the room for a view's title.
const viewTitle = 9 * drawing.MM

// x and z are stops along the room's axes, as the view shows them.
func (e *elevation) x(c coord, side dim.Side) dim.Stop {
	return c.stop(e.v.point(space.Point{X: c.l}).X, side.Edge(e.out))
}

func (e *elevation) z(c coord, side dim.Side) dim.Stop {
	return c.stop(e.v.point(space.Point{Z: c.l}).Y, side.Edge(e.out))
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

// places puts stops from a named end on a side: running figures where there is
// room for them all, else a chain from that end, in which runs of equal steps
// are one figure. Only where even those are too many are places left out, never
// the first, the one after it or the last, and the view's title says so.
func (e *elevation) places(side dim.Side, origin string, stops []dim.Stop, end dim.Stop) {
	room := e.out.W()
	if side == dim.LeftOf || side == dim.RightOf {
		room = e.out.H()
	}
	most := max(3, int(room/dim.RunningRow))
	if len(stops) <= most {
		e.dim.Running(side, origin, stops, dim.Options{})
		return
	}
	const figure = 20 * drawing.MM // about what one takes, pulled out
	if steps(stops) <= max(3, int(room/figure)) {
		all := ascending(append(stops, end)...)
		if side == dim.LeftOf || side == dim.RightOf {
			slices.Reverse(all)
		}
		e.dim.Chain(side, all, dim.Options{})
		return
	}
	e.thin = true
	step := (len(stops)-2+most-3)/(most-2) + 1
	out := stops[:2:2]
	for i := 1 + step; i < len(stops)-step/2-1; i += step {
		out = append(out, stops[i])
	}
	e.dim.Running(side, origin, append(out, stops[len(stops)-1]), dim.Options{})
}

// steps counts the runs of equal steps between stops.
func steps(stops []dim.Stop) int {
	n, last := 0, length(-1)
	for i := 1; i < len(stops); i++ {
		if d := stops[i].Value - stops[i-1].Value; d != last {
			n, last = n+1, d
		}
	}
	return n
}

// allBottles leaves none out.
func allBottles(rack.Bottle) bool { return true }

// withBottles is the scene of all pieces and, numbered after them, the bottles that
// keep says yes to.
func withBottles(r *rack.Rack, keep func(rack.Bottle) bool) view.Scene {
	s := sceneOf(r, func(rack.Piece) bool { return true })
	for i, b := range r.Bottles {
		if keep(b) {
			s.Rounds = append(s.Rounds, view.Bottle(len(r.Pieces)+i, b.Body, b.Neck)...)
		}
	}
	return s
}

// front is the front elevation: the whole rack with its bottles, overall sizes and
// how high each slat of the last column lies. How high the aprons are the side view
// says, where the ladders stand the plan.
func front(in Input) *page {
	r := in.Rack
	return elevated(in, "front", "Front elevation", withBottles(r, allBottles), view.Front, "Front", len(r.Pieces), func(e *elevation) {
		e.widths()
		e.height(dim.LeftOf)
		last := r.Columns[len(r.Columns)-1].Kind
		under := []dim.Stop{e.z(coord{}, dim.RightOf)}
		for _, c := range undersides(r, last) {
			under = append(under, e.z(c, dim.RightOf))
		}
		e.places(dim.RightOf, "FOOT", ascending(under...), under[len(under)-1])
		e.notes = append(e.notes, "right: underside of each slat"+ofColumns(r, last))
	})
}

// ofColumns says of which columns a figure is, where they differ; those of other
// columns stand on the ladder sheets.
func ofColumns(r *rack.Rack, kind int) string {
	which := inspect.Columns(r, kind)
	if which == "" {
		return ""
	}
	return " of " + which + " (others: " + sheetRef("ladder") + ")"
}

// ladders says over a view from above where each ladder's left face is.
func (e *elevation) ladders() {
	var left []dim.Stop
	for _, c := range ladderFaces(e.p.in.Rack) {
		left = append(left, e.x(c, dim.Above))
	}
	e.places(dim.Above, "LEFT", left, e.x(coordOf(e.p.in.Rack, "carcase.width"), dim.Above))
	e.notes = append(e.notes, "above: left face of each ladder")
}

// heights puts aprons, leg and top on a side of an elevation, from above
// down, and the whole beyond them.
func (e *elevation) heights(side dim.Side) {
	r := e.p.in.Rack
	z := func(names ...string) dim.Stop { return e.z(coordOf(r, names...), side) }
	stops := ascending(z(), z("apron.lift"), z("apron.lift", "apron.height"), z("leg.length", "-apron.height"), z("leg.length"), z("rack.height"))
	slices.Reverse(stops)
	e.dim.Chain(side, stops, dim.Options{})
	e.height(side)
}

// height puts the whole height on a side of an elevation, from above down.
func (e *elevation) height(side dim.Side) {
	r := e.p.in.Rack
	e.dim.Overall(side, e.z(coordOf(r, "rack.height"), side), e.z(coord{}, side), dim.Options{})
}

// widths puts carcase and overhangs under a view from the front or above, and
// the whole under them.
func (e *elevation) widths() {
	r := e.p.in.Rack
	x := func(names ...string) dim.Stop { return e.x(coordOf(r, names...), dim.Below) }
	across := []dim.Stop{x(), x("carcase.width")}
	if r.HasTop() {
		across = ascending(x("-overhang.side"), x(), x("carcase.width"), x("carcase.width", "overhang.side"))
	}
	if len(across) > 2 {
		e.dim.Chain(dim.Below, across, dim.Options{})
	}
	e.dim.Overall(dim.Below, across[0], across[len(across)-1], dim.Options{})
}
