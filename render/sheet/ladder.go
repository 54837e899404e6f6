package sheet

import (
	"fmt"
	"slices"

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
	name  string // "face A" and "face B" of a ladder with two, else ""
	under []length
}

// Room around the view of a face, beside the ladder itself.
const (
	ladderTitle = 8 * drawing.MM
	ladderAbove = 20 * drawing.MM // overall length
	ladderBelow = 30 * drawing.MM // running dimensions
	ladderEnds  = 34 * drawing.MM // chain of the legs at the left, foot and top marks
)

// ladders returns the sheets of the ladders, one for each kind; one for each
// face where two do not fit one above the other.
func ladders(in Input) []*page {
	var pages []*page
	for i, s := range in.Rack.Shapes {
		faces := facesOf(s, i)
		name := fmt.Sprintf("ladder-%d", i+1)
		title := fmt.Sprintf("Ladder, %s", s.Name)
		p := in.newPage(name, title)
		if v, ok := ladderFits(p, faces); ok || len(faces) == 1 {
			drawFaces(p, faces, v)
			pages = append(pages, p)
			continue
		}
		for k, f := range faces {
			p := in.newPage(fmt.Sprintf("%s%c", name, 'a'+k), title+", "+f.name)
			v, _ := ladderFits(p, faces[k:k+1])
			drawFaces(p, faces[k:k+1], v)
			pages = append(pages, p)
		}
	}
	return pages
}

// facesOf returns the faces of a shape that carry slats: the left one is A.
func facesOf(s rack.Shape, shape int) []ladderFace {
	var faces []ladderFace
	if len(s.Left) > 0 {
		faces = append(faces, ladderFace{shape: shape, under: s.Left})
	}
	if len(s.Right) > 0 {
		faces = append(faces, ladderFace{shape: shape, right: true, under: s.Right})
	}
	if len(faces) == 2 {
		faces[0].name, faces[1].name = "face A", "face B"
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

// ladderNotes are the words under the faces.
func ladderNotes(in Input, faces []ladderFace) []string {
	r := in.Rack
	s := r.Shapes[faces[0].shape]
	slat, _ := r.PartNamed("slat")
	leg, _ := r.PartNamed("leg")
	per := len(s.Left) + len(s.Right)
	notes := []string{
		fmt.Sprintf("Make %d. Each: 2 legs %s, %s; %d slats %s, %s.", s.Count, leg.Mark, sizeText(r.Format, leg), per, slat.Mark, sizeText(r.Format, slat)),
		"Crosses: two nails to a crossing, a quarter in from its edges, on the one diagonal on this face and on the other on the face behind, so that they do not meet. Bore first.",
		"Keep bare of finish for glue: where slats cross legs, and the outer edges of the legs where aprons sit.",
	}
	return notes
}

// ladderFits returns the largest picture at which the faces fit one above the
// other, and whether that is as large as one of them alone would be.
func ladderFits(p *page, faces []ladderFace) (picture, bool) {
	room := p.area
	room.Min.X += ladderEnds
	room.Max.X -= ladderEnds
	room.Max.Y -= needed(ladderNotes(p.in, faces), p.area.W(), 5*drawing.MM) + 2*drawing.MM
	alone := room
	alone.Min.Y += ladderTitle + ladderAbove
	alone.Max.Y -= ladderBelow
	each := alone
	each.Max.Y = each.Min.Y + room.H()/drawing.Um(len(faces)) - ladderTitle - ladderAbove - ladderBelow
	s := faces[0].scene(p.in.Rack)
	v := pictured(p.in, s, faces[0].from(), true, each)
	best := pictured(p.in, s, faces[0].from(), true, alone)
	return v, v.proj.Den == best.proj.Den
}

// drawFaces draws the faces one above the other, and the notes.
func drawFaces(p *page, faces []ladderFace, v picture) {
	notes := ladderNotes(p.in, faces)
	foot := p.area
	foot.Min.Y = foot.Max.Y - needed(notes, p.area.W(), 5*drawing.MM)
	room := p.area
	room.Max.Y = foot.Min.Y - 2*drawing.MM
	each := room.H() / drawing.Um(len(faces))
	for i, f := range faces {
		box := room
		box.Min.Y += each * drawing.Um(i)
		box.Max.Y = box.Min.Y + each
		f.draw(p, box, v)
	}
	w := newScribe(p.sheet, foot)
	for _, n := range notes {
		w.note(n, 5*drawing.MM)
	}
}

// draw draws one face with its dimensions.
func (f ladderFace) draw(p *page, box drawing.Rect, v picture) {
	r := p.in.Rack
	title := fmt.Sprintf("Slats on the %s face, seen from the %s", handed(f.right), handed(f.right))
	if f.name != "" {
		title = fmt.Sprintf("Face %s: slats on the %s, seen from there", f.name[len("face "):], handed(f.right))
	}
	head := drawing.Pt(box.Centre().X, box.Min.Y-2*drawing.MM)
	p.scale = ratioText(v)
	v.proj.Direction, v.at = f.from(), drawing.Point{}
	captionBelow(p.sheet, head, title+", "+scaleText(v))

	s := f.scene(r)
	box.Min.Y += ladderTitle + ladderAbove
	box.Max.Y -= ladderBelow
	v = v.centred(s, box)
	v.draw(p.sheet, view.Lines(s, f.from()), func(l view.Line) (drawing.Class, bool) {
		if l.Hidden {
			return drawing.Hidden, true
		}
		return drawing.Visible, true
	})
	f.nails(p.sheet, r, s, v)
	out := v.extent(s)
	f.ends(p.sheet, out)
	f.measure(p, s, v, out)
}

// handed names a side of the rack as seen from its front.
func handed(right bool) string {
	if right {
		return "right"
	}
	return "left"
}

// nails draws a cross at each nail of the face.
func (f ladderFace) nails(s *drawing.Sheet, r *rack.Rack, scene view.Scene, v picture) {
	for _, b := range scene.Boxes {
		piece := r.Pieces[b.ID]
		if r.Parts[piece.Part].Name != "slat" {
			continue
		}
		for _, c := range piece.Fixed {
			for _, n := range rack.NailPlaces(c.Patch, c.Axis, f.right) {
				cross := nailCross
				// small crossings take smaller crosses
				if e := v.around(c.Patch); min(e.W(), e.H()) < 3*nailCross {
					cross = min(e.W(), e.H()) / 3
				}
				s.Add(drawing.Cross(drawing.Thin, 0, v.point(n), max(cross, drawing.MM/2))...)
			}
		}
	}
}

// nailCross is the reach of the cross that marks a nail.
const nailCross = 2 * drawing.MM

// ends letters the foot, the top and the front of the ladder.
func (f ladderFace) ends(s *drawing.Sheet, out drawing.Rect) {
	label := func(at drawing.Point, turn int, text string) {
		t := drawing.Label(drawing.NoteText, 0, drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Plain(text))
		t.Turn, t.Bold = turn, true
		s.Add(t.CentredOn(at))
	}
	mid := out.Centre()
	label(drawing.Pt(out.Min.X-8*drawing.MM, out.Max.Y+6*drawing.MM), 0, "FOOT")
	label(drawing.Pt(out.Max.X+4*drawing.MM, mid.Y), 1, "TOP")
	front, back := out.Min.Y, out.Max.Y // seen from the right, the front lies uppermost
	if !f.right {
		front, back = back, front
	}
	in := drawing.Um(1)
	if back < front {
		in = -1
	}
	label(drawing.Pt(out.Max.X+15*drawing.MM, front+in*2*drawing.MM), 0, "FRONT")
	label(drawing.Pt(out.Max.X+15*drawing.MM, back-in*2*drawing.MM), 0, "BACK")
}

// measure puts the dimensions of a face on the sheet: undersides from the foot
// along the near side, the leg's length along the far side, and across the
// foot the legs and what is between them.
func (f ladderFace) measure(p *page, s view.Scene, v picture, out drawing.Rect) {
	r := p.in.Rack
	b := dim.New(p.sheet, r.Format, drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den})
	at := func(y, z length) drawing.Point { return v.point(space.Point{Y: y, Z: z}) }
	bounds := s.Bounds()
	y0, y1 := bounds.Min.Y, bounds.Max.Y
	along := func(z length, edge drawing.Um) dim.Stop {
		return dim.Stop{At: at(y0, z).X, Value: z, From: edge}
	}
	var under []dim.Stop
	for _, z := range f.under {
		under = append(under, along(z, out.Max.Y))
	}
	b.Running(dim.Below, "foot", append([]dim.Stop{along(0, out.Max.Y)}, under...), dim.Options{})
	b.Overall(dim.Above, along(0, out.Min.Y), along(r.Len("leg.length"), out.Min.Y), dim.Options{})

	across := func(y length) dim.Stop {
		return dim.Stop{At: at(y, 0).Y, Value: y - y0, From: out.Min.X}
	}
	wide := r.Len("leg.width")
	stops := []dim.Stop{across(y0), across(y0 + wide), across(y1 - wide), across(y1)}
	if !f.right { // the front lies lowermost
		slices.Reverse(stops)
	}
	b.Chain(dim.LeftOf, stops, dim.Options{})
	b.Overall(dim.LeftOf, stops[0], stops[3], dim.Options{})
	b.Draw(out)
}
