package sheet

import (
	"math"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
	"slatwright/render/drawing/paper"
)

// A picture maps the room to one place on a sheet.
type picture struct {
	proj view.Projection
	at   drawing.Point // where the room's origin comes to stand
	lies bool          // turned a quarter clockwise: what was up points right
}

// raw returns where q lies on paper, measured from the room's origin.
func (v picture) raw(q space.Point) drawing.Point {
	x, y := v.proj.Point(q)
	p := drawing.Pt(micrometres(x), micrometres(y))
	if v.lies {
		p = drawing.Pt(-p.Y, p.X)
	}
	return p
}

// point returns where q lies on the sheet.
func (v picture) point(q space.Point) drawing.Point { return v.at.Add(v.raw(q)) }

// around returns the box on the sheet that holds all of b, whichever its sides.
func (v picture) around(b space.Box) drawing.Rect {
	var pts []drawing.Point
	for i := range 8 {
		c := b.Min
		if i&1 != 0 {
			c.X = b.Max.X
		}
		if i&2 != 0 {
			c.Y = b.Max.Y
		}
		if i&4 != 0 {
			c.Z = b.Max.Z
		}
		pts = append(pts, v.point(c))
	}
	return paper.Around(pts...)
}

// extent returns the box on the sheet that holds every solid of a scene. It is
// tighter than the box around the scene's bounds.
func (v picture) extent(s view.Scene) drawing.Rect {
	var all drawing.Rect
	some := false
	add := func(b space.Box) {
		r := v.around(b)
		if some {
			r = r.Join(all)
		}
		all, some = r, true
	}
	for _, b := range s.Boxes {
		add(b.Box)
	}
	for _, r := range s.Rounds {
		add(r.Bounds())
	}
	return all
}

// centred returns the picture moved so that the scene stands in the middle of
// the box.
func (v picture) centred(s view.Scene, in drawing.Rect) picture {
	v.at = v.at.Add(in.Centre().Sub(v.extent(s).Centre()))
	return v
}

// ink returns a line of a view in the given class.
func (v picture) ink(c drawing.Class, l view.Line) drawing.Path {
	if !l.Arc {
		return drawing.Line(c, 0, v.point(l.From), v.point(l.To))
	}
	arc := v.proj.Arc(l)
	turn := arc.Turn * math.Pi / 180
	sin, cos := math.Sincos(turn)
	u := drawing.Pt(micrometres(arc.RX*cos), micrometres(arc.RX*sin))
	w := drawing.Pt(micrometres(-arc.RY*sin), micrometres(arc.RY*cos))
	centre := v.at.Add(drawing.Pt(micrometres(arc.CX), micrometres(arc.CY)))
	if arc.Full {
		return drawing.EllipseArc(c, 0, centre, u, w, 0, 360)
	}
	// angle of an end, as on the circle, from u towards w
	angle := func(x, y float64) float64 {
		dx, dy := x-arc.CX, y-arc.CY
		return math.Atan2((dy*cos-dx*sin)/arc.RY, (dx*cos+dy*sin)/arc.RX) * 180 / math.Pi
	}
	from, to := angle(arc.X0, arc.Y0), angle(arc.X1, arc.Y1)
	sweep := to - from
	switch { // angles grow clockwise as seen, since y is down
	case arc.Clockwise && sweep <= 0:
		sweep += 360
	case !arc.Clockwise && sweep >= 0:
		sweep -= 360
	}
	return drawing.EllipseArc(c, 0, centre, u, w, from, sweep)
}

// draw inks the lines of a view: class says how a line is inked, and whether
// it is.
func (v picture) draw(s *drawing.Sheet, lines []view.Line, class func(view.Line) (drawing.Class, bool)) {
	for _, l := range lines {
		c, ok := class(l)
		if !ok {
			continue
		}
		if p := v.ink(c, l); !p.Empty() {
			s.Add(p)
		}
	}
}

func micrometres(mm float64) drawing.Um { return drawing.Um(math.Round(mm * 1000)) }

// pictured returns the largest picture of the scene, at one of the scales of
// the shop's system, that stays within the box, standing in its middle. A
// scene too large for the least scale stands at the least whole divisor of a
// hundred that holds it.
func pictured(in Input, s view.Scene, d view.Direction, lies bool, box drawing.Rect) picture {
	for _, den := range shopScales(in) {
		v := picture{proj: view.Projection{Direction: d, Num: 1, Den: den}, lies: lies}
		if e := v.extent(s); e.W() <= box.W() && e.H() <= box.H() {
			return v.centred(s, box)
		}
	}
	if box.W() <= 0 || box.H() <= 0 {
		panic("sheet: no room for a picture") // no scale is small enough
	}
	v := picture{proj: view.Projection{Direction: d, Num: 1, Den: 100}, lies: lies}
	for e := v.extent(s); e.W() > box.W() || e.H() > box.H(); e = v.extent(s) {
		v.proj.Den += 100
	}
	return v.centred(s, box)
}

// filling returns the picture of the scene that fills the box, to no scale in
// use: for pictorial views, from which nobody takes a measure.
func filling(s view.Scene, d view.Direction, box drawing.Rect) picture {
	const fine = 1000
	v := picture{proj: view.Projection{Direction: d, Num: 1, Den: fine}}
	e := v.extent(s)
	w, h := max(int64(e.W()), 1), max(int64(e.H()), 1)
	v.proj.Num = max(min(int64(box.W())*fine/w, int64(box.H())*fine/h), 1)
	v.proj.Den = fine * fine
	for e = v.extent(s); v.proj.Num > 1 && (e.W() > box.W() || e.H() > box.H()); e = v.extent(s) {
		v.proj.Num-- // each corner was rounded by itself
	}
	return v.centred(s, box)
}

// sceneOf returns the scene of the pieces that keep says yes to, each with its
// number in the rack.
func sceneOf(r *rack.Rack, keep func(p rack.Piece) bool) view.Scene {
	var s view.Scene
	for i, p := range r.Pieces {
		if keep(p) {
			s.Boxes = append(s.Boxes, view.Solid{ID: i, Box: p.Box})
		}
	}
	return s
}
