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
	return v.holding(v.proj.Extremes(s))
}

// holding returns the box on the sheet that holds the places.
func (v picture) holding(places []space.Point) drawing.Rect {
	if len(places) == 0 {
		return drawing.Rect{}
	}
	pts := make([]drawing.Point, len(places))
	for i, q := range places {
		pts[i] = v.point(q)
	}
	return paper.Around(pts...)
}

// centred returns the picture moved so that the scene stands in the middle of
// the box.
func (v picture) centred(s view.Scene, in drawing.Rect) picture {
	return v.amid(v.proj.Extremes(s), in)
}

// amid returns the picture moved so that the places stand in the middle of the
// box.
func (v picture) amid(places []space.Point, in drawing.Rect) picture {
	v.at = v.at.Add(in.Centre().Sub(v.holding(places).Centre()))
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
// the shop's system or smaller, that stays within the box, standing in its middle.
func pictured(in Input, s view.Scene, d view.Direction, lies bool, box drawing.Rect) picture {
	ends := view.Projection{Direction: d}.Extremes(s)
	at := func(den int64) picture {
		return picture{lies: lies, proj: view.Projection{Direction: d, Num: 1, Den: den}}
	}
	den := largestScale(in, func(den int64) bool { return at(den).fits(ends, box) })
	return at(den).amid(ends, box)
}

// fits reports whether the picture of the places is no larger than the box.
func (v picture) fits(places []space.Point, box drawing.Rect) bool {
	e := v.holding(places)
	return e.W() <= box.W() && e.H() <= box.H()
}

// filling returns the picture of the scene that fills the box, to no scale in
// use: for pictorial views, from which nobody takes a measure.
func filling(s view.Scene, d view.Direction, box drawing.Rect) picture {
	const fine = 1000
	v := picture{proj: view.Projection{Direction: d, Num: 1, Den: fine}}
	ends := v.proj.Extremes(s)
	e := v.holding(ends)
	w, h := max(int64(e.W()), 1), max(int64(e.H()), 1)
	v.proj.Num = max(min(int64(box.W())*fine/w, int64(box.H())*fine/h), 1)
	v.proj.Den = fine * fine
	for v.proj.Num > 1 && !v.fits(ends, box) {
		v.proj.Num-- // each corner was rounded by itself
	}
	return v.amid(ends, box)
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
