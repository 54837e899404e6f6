package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// A ladderFace is one face of a ladder that carries slats. Right is the face
// towards higher x, seen from there.
type ladderFace struct {
	shape int // into Shapes
	right bool
	name  string // "left face" and "right face" of a ladder with two, else ""
	under []length
	marks []coord // the undersides with how they are made
}

// Room around the view of a face, beside the ladder itself.
const (
	ladderTitle = 8 * drawing.MM
	ladderAbove = 4 * drawing.MM
	ladderBelow = 30 * drawing.MM // running dimensions
	ladderFrom  = 41 * drawing.MM // running dimensions that say from where they run
	ladderLeft  = 22 * drawing.MM // chain of the legs
	ladderRight = 24 * drawing.MM // words at the top
	ladderTurn  = 8 * drawing.MM  // the same words, turned
	ladderWords = 46 * drawing.MM // how deep a strip is that has them turned
)

// facesOf returns the faces of a shape that carry slats, the left one first.
func facesOf(r *rack.Rack, shape int) []ladderFace {
	s := r.Shapes[shape]
	n := slices.IndexFunc(r.Ladders, func(l rack.Ladder) bool { return l.Shape == shape })
	var faces []ladderFace
	if len(s.Left) > 0 {
		faces = append(faces, ladderFace{shape: shape, under: s.Left, marks: undersides(r, r.Columns[n-1].Kind)})
	}
	if len(s.Right) > 0 {
		faces = append(faces, ladderFace{shape: shape, right: true, under: s.Right, marks: undersides(r, r.Columns[n].Kind)})
	}
	if len(faces) == 2 {
		faces[0].name, faces[1].name = "left face", "right face"
	}
	return faces
}

// scene returns the legs and the slats of the face, of the first ladder of its
// shape.
func (f ladderFace) scene(r *rack.Rack) view.Scene {
	n := slices.IndexFunc(r.Ladders, func(l rack.Ladder) bool { return l.Shape == f.shape })
	x := r.Ladders[n].X
	return sceneOf(r, func(p rack.Piece) bool {
		return p.Ladder == n && (r.Parts[p.Part].Name == "leg" || (p.Box.Min.X > x) == f.right)
	})
}

// from returns where the face is seen from: the ladder lies with its foot to
// the left, and what is in front is at the top on one face and at the bottom
// on the other.
func (f ladderFace) from() view.Direction {
	if f.right {
		return view.Right
	}
	return view.Left
}

// title says which face a strip shows, which part of it, and from where.
func (s strip) title(r *rack.Rack) string {
	f := s.face
	text := fmt.Sprintf("Slats on the %s face, seen from the %s", handed(f.right), handed(f.right))
	if f.name != "" {
		text = fmt.Sprintf("%s face of the ladder, seen from the %s", strings.ToUpper(handed(f.right)), handed(f.right))
	}
	if n := len(f.under); s.last-s.first < n {
		text += fmt.Sprintf(", slats %d to %d of %d", s.first+1, s.last, n)
	}
	return text + ", " + scaleText(s.v)
}

// draw draws one strip with its dimensions.
func (s strip) draw(p *page, box drawing.Rect) {
	r, f, v := p.in.Rack, s.face, s.v
	p.scale = ratioText(v)
	v.proj.Direction, v.at = f.from(), drawing.Point{}
	from := len(p.sheet.Marks)

	scene := s.scene(r)
	box.Max.Y -= ladderTitle
	box.Min.Y += ladderAbove
	if s.last-s.first < len(f.under) {
		box.Max.Y -= ladderFrom
	} else {
		box.Max.Y -= ladderBelow
	}
	v = v.centred(scene, box)
	v.draw(p.sheet, view.Lines(scene, f.from()), func(l view.Line) (drawing.Class, bool) {
		switch {
		case l.From.Z == l.To.Z && s.broken(r, l.From.Z):
			return drawing.Visible, false
		case l.Hidden:
			return drawing.Hidden, true
		}
		return drawing.Visible, true
	})
	f.nails(p.sheet, r, v, s.lo, s.hi)
	out := v.extent(scene)
	s.breaks(p.sheet, r, v, out)
	s.ends(p.sheet, r, out)
	s.measure(p, scene, v, out)
	p.caption(drawing.Pt(out.Centre().X, p.inked(from).Max.Y+drawing.MM), s.title(r))
}

// handed names a side of the rack as seen from its front.
func handed(right bool) string {
	if right {
		return "right"
	}
	return "left"
}

// crossings are those of the face, of the first ladder of its shape.
func (f ladderFace) crossings(r *rack.Rack) []check.Crossing {
	return slices.DeleteFunc(check.Crossings(r), func(c check.Crossing) bool {
		return r.Ladders[c.Ladder].Shape != f.shape || c.Right != f.right
	})
}

// nails draws a cross at each nail of the face between two heights, and rings
// the crossings whose nails would meet others.
func (f ladderFace) nails(s *drawing.Sheet, r *rack.Rack, v picture, lo, hi length) {
	for _, c := range f.crossings(r) {
		if c.Patch.Min.Z < lo || c.Patch.Max.Z > hi {
			continue
		}
		if c.Meets {
			ringed(s, v, c.Patch)
		}
		e := v.around(c.Patch) // small crossings take smaller crosses
		cross := max(min(nailCross, e.W()/3, e.H()/3), drawing.MM/2)
		for _, n := range c.Nails {
			s.Add(drawing.Cross(drawing.Thin, 0, v.point(n), cross)...)
		}
	}
}

// nailCross is the reach of the cross that marks a nail.
const nailCross = 2 * drawing.MM

// ends letters the top and the front of a strip; the running dimension names its
// foot.
func (s strip) ends(sheet *drawing.Sheet, r *rack.Rack, out drawing.Rect) {
	label := func(at drawing.Point, turn int, text string) {
		t := drawing.Label(drawing.NoteText, 0, drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Plain(text))
		t.Turn, t.Bold = turn, true
		sheet.Add(t.CentredOn(at))
	}
	mid := out.Centre()
	if !s.broken(r, s.hi) {
		label(drawing.Pt(out.Max.X+4*drawing.MM, mid.Y), 1, "TOP")
	}
	front, back := out.Min.Y, out.Max.Y // seen from the right, the front lies uppermost
	if !s.face.right {
		front, back = back, front
	}
	in := drawing.Um(1)
	if back < front {
		in = -1
	}
	if out.H() >= ladderWords {
		label(drawing.Pt(out.Max.X+4*drawing.MM, front+in*5*drawing.MM), 1, "FRONT")
		label(drawing.Pt(out.Max.X+4*drawing.MM, back-in*4*drawing.MM), 1, "BACK")
		return
	}
	inside := min(2*drawing.MM, (out.H()-6*drawing.MM)/2) // clear of each other
	label(drawing.Pt(out.Max.X+15*drawing.MM, front+in*inside), 0, "FRONT")
	label(drawing.Pt(out.Max.X+15*drawing.MM, back-in*inside), 0, "BACK")
}

// measure puts the dimensions of a strip on the sheet: undersides from the foot
// along the near side, and after the last slat the leg's length; at the foot the
// legs and what is between them.
func (s strip) measure(p *page, scene view.Scene, v picture, out drawing.Rect) {
	r, f := p.in.Rack, s.face
	b := dim.New(p.sheet, r.Format, drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den})
	along := func(c coord, edge drawing.Um) dim.Stop { return c.stop(v.point(space.Point{Z: c.l}).X, edge) }
	leg := coordOf(r, "leg.length")
	var under []dim.Stop
	for _, c := range f.marks[s.first:s.last] {
		under = append(under, along(c, out.Max.Y))
	}
	if !s.broken(r, s.hi) {
		under = append(under, along(leg, out.Max.Y))
	}
	foot, origin := along(coord{}, out.Max.Y), "FOOT"
	if s.lo > 0 {
		foot = coord{}.stop(v.point(space.Point{Z: s.lo}).X-12*drawing.MM, out.Max.Y)
		origin = "from FOOT"
	}
	b.Running(dim.Below, origin, append([]dim.Stop{foot}, under...), dim.Options{Broken: s.lo > 0})
	if s.lo == 0 {
		s.across(b, r, scene, v, out)
	}
	b.Draw(out)
}

// across puts on the legs and what is between them, at the foot.
func (s strip) across(b *dim.Board, r *rack.Rack, scene view.Scene, v picture, out drawing.Rect) {
	y0 := scene.Bounds().Min.Y
	at := func(names ...string) dim.Stop {
		c := coordOf(r, names...)
		return c.stop(v.point(space.Point{Y: y0 + c.l}).Y, out.Min.X)
	}
	stops := []dim.Stop{at(), at("leg.width"), at("slat.length", "-leg.width"), at("slat.length")}
	if !s.face.right { // the front lies lowermost
		slices.Reverse(stops)
	}
	b.Chain(dim.LeftOf, stops, dim.Options{})
}
