package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// partBlock is the room for one part: title, dimensions over the view, the
// view, and a line of notes.
const (
	partTitle = 9 * drawing.MM
	partUsual = 22 * drawing.MM // over the view, as a rule
	partBelow = 9 * drawing.MM
	partLeft  = 26 * drawing.MM
	partEnd   = 60 * drawing.MM // for the end view and its dimension
)

// parts returns the part sheets, as many parts to a sheet as fit.
func parts(in Input) []*page {
	var pages []*page
	var p *page
	var y drawing.Um
	for i := range in.Rack.Parts {
		b := newPartBlock(in, i)
		if p == nil || y+b.height(p) > p.area.Max.Y {
			p = in.newPage(fmt.Sprintf("parts-%d", len(pages)+1), "Parts")
			pages = append(pages, p)
			y = p.area.Min.Y
		}
		h := b.height(p)
		box := p.area
		box.Min.Y, box.Max.Y = y, y+h
		b.draw(p, box)
		y += h + 4*drawing.MM
	}
	return pages
}

// A partBlock draws one part, lying with its grain from left to right.
type partBlock struct {
	part  int
	piece rack.Piece
	scene view.Scene
	face  view.Direction // at the wide face that is fixed to others
	other bool           // the face's nails stand on the other diagonal
	width space.Axis
	thick space.Axis
}

// newPartBlock picks the piece to draw: the first of its part.
func newPartBlock(in Input, part int) partBlock {
	r := in.Rack
	n := slices.IndexFunc(r.Pieces, func(p rack.Piece) bool { return p.Part == part })
	piece := r.Pieces[n]
	b := partBlock{part: part, piece: piece, scene: view.Scene{Boxes: []view.Solid{{ID: n, Box: piece.Box}}}}
	name := r.Parts[part].Name
	switch name {
	case "slat": // seen at the face that sits on the legs
		b.width, b.thick, b.face = space.Z, space.X, view.Left
		if piece.Box.Min.X < r.Ladders[piece.Ladder].X {
			b.face = view.Right
		} else {
			b.other = true
		}
	case "leg": // at a face that carries slats
		b.width, b.thick, b.face, b.other = space.Y, space.X, view.Right, true
		if len(r.Shapes[r.Ladders[piece.Ladder].Shape].Right) == 0 {
			b.face, b.other = view.Left, false
		}
	case "apron": // at the face that sits on the legs
		b.width, b.thick, b.face = space.Z, space.Y, view.Back
	default: // the top, from below
		b.width, b.thick, b.face = space.Y, space.Z, view.Bottom
	}
	return b
}

// lies reports whether the view must be turned for the grain to run from left
// to right.
func (b partBlock) lies() bool { return b.piece.Grain == space.Z }

// picture returns the part's view at the largest scale for the sheet's width.
func (b partBlock) picture(p *page) picture {
	box := p.area
	box.Min.X += partLeft
	box.Max.X -= partEnd
	box.Max.Y = box.Min.Y + p.area.H()*6/10 - partTitle - partUsual - partBelow
	return pictured(p.in, b.scene, b.face, b.lies(), box)
}

// height returns how much room the block takes.
func (b partBlock) height(p *page) drawing.Um {
	v := b.picture(p)
	return partTitle + b.above(p, v) + b.below(p) + max(v.extent(b.scene).H(), partLeast)
}

// partLeast keeps the figure of a narrow part's width clear of its neighbours.
const partLeast = 10 * drawing.MM

// below returns how much room the notes under the view take.
func (b partBlock) below(p *page) drawing.Um {
	part := p.in.Rack.Parts[b.part]
	if len(part.After) == 0 {
		return partBelow
	}
	return partBelow + needed([]string{cutAfter(p.in.Rack, part)}, p.area.W(), 0)
}

// above returns how much room the dimensions over the view take.
func (b partBlock) above(p *page, v picture) drawing.Um {
	out := v.extent(b.scene)
	face, end := b.boards(p, v, out, b.end(p, v, out))
	const figure = 8 * drawing.MM // of the outermost track
	return max(face.Room(dim.Above), end.Room(dim.Above)) + figure/2
}

// draw draws the block into the box.
func (b partBlock) draw(p *page, box drawing.Rect) {
	r := p.in.Rack
	part := r.Parts[b.part]
	v := b.picture(p)
	stock := "to size"
	if part.Stock != "" {
		stock = "from " + part.Stock
	}
	w := newScribe(p.sheet, box)
	w.line(drawing.HeadingText, drawing.FigureHeight, 0, true, drawing.Figure(fmt.Sprintf("%s  %s, %d off: %s %s, %s; %s",
		part.Mark, part.Name, part.Count, sizeText(r.Format, part), r.Format.System, stock, scaleText(v))))
	size := v.extent(b.scene)
	v.at = v.at.Add(drawing.Pt(box.Min.X+partLeft, box.Min.Y+partTitle+b.above(p, v)).Sub(size.Min))
	out := v.extent(b.scene)

	bare := b.bare(p, v)
	v.draw(p.sheet, view.Visible(view.Lines(b.scene, b.face)), func(view.Line) (drawing.Class, bool) { return drawing.Visible, true })
	grain(p.sheet, out, bare)
	end := b.end(p, v, out)
	p.sheet.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, end))
	onFace, onEnd := b.boards(p, v, out, end)
	onFace.Draw(out)
	onEnd.Draw(end)
	foot := box
	foot.Min.Y = max(out.Max.Y, out.Min.Y+partLeast) + 2*drawing.MM
	notes := newScribe(p.sheet, foot)
	notes.note(partNote(part.Name), 0)
	if len(part.After) > 0 {
		notes.note(cutAfter(r, part), 0)
	}
}

// cutAfter says what is measured before a part is cut, and whether it was.
func cutAfter(r *rack.Rack, part rack.Part) string {
	text := "Cut after measuring " + strings.Join(part.After, ", ")
	for _, m := range r.Measured {
		if m.Later && slices.Contains(part.After, m.Name) {
			return text + ": until then the size drawn here is not the one to cut to."
		}
	}
	return text + ": measured, and the size drawn here follows from it."
}

// partNote says what the marks on a part's face mean.
func partNote(name string) string {
	switch name {
	case "slat":
		return "Face against the legs. Hatched: bare for glue. Crosses: nails, from the other face. Arrow: grain."
	case "leg":
		return "One face. Hatched: bare for glue, as is the outer edge under aprons. Crosses: nails. Arrow: grain."
	case "apron":
		return "Face against the legs. Hatched: bare for glue. Crosses: nails, from the other face. Arrow: grain."
	}
	return "Underside. Hatched: where it sits. Arrow: grain. Fix it so that it can swell and shrink."
}

// bare hatches the patches of the face that are fixed to other pieces, marks
// their nails, and returns the patches on the sheet.
func (b partBlock) bare(p *page, v picture) []drawing.Rect {
	var out []drawing.Rect
	for _, c := range b.piece.Fixed {
		if c.Axis != b.thick || c.Far != (b.face.On(b.thick) > 0) {
			continue
		}
		r := v.around(c.Patch)
		out = append(out, r)
		p.sheet.Add(drawing.Hatching{Pitch: 3 * drawing.MM / 2}.Hatch(0, r)...)
		p.sheet.Add(drawing.Rectangle(drawing.Thin, 0, drawing.NoFill, r))
		if b.thick == space.Z {
			continue // the top's fastening lets it move
		}
		for _, n := range rack.NailPlaces(c.Patch, c.Axis, b.other) {
			p.sheet.Add(drawing.Cross(drawing.Thin, 0, v.point(n), max(min(nailCross, min(r.W(), r.H())/3), drawing.MM/2))...)
		}
	}
	return out
}

// grain draws an arrow along the grain, in the longest stretch of the face's
// middle that no patch takes.
func grain(s *drawing.Sheet, out drawing.Rect, taken []drawing.Rect) {
	edges := []drawing.Um{out.Min.X, out.Max.X}
	mid := out.Centre()
	taken = slices.DeleteFunc(slices.Clone(taken), func(r drawing.Rect) bool {
		return r.Max.Y < mid.Y-2*drawing.MM || r.Min.Y > mid.Y+2*drawing.MM
	})
	for _, r := range taken {
		edges = append(edges, r.Min.X, r.Max.X)
	}
	slices.Sort(edges)
	var lo, hi drawing.Um
	for i := 1; i < len(edges); i++ {
		x := (edges[i-1] + edges[i]) / 2
		free := !slices.ContainsFunc(taken, func(r drawing.Rect) bool { return r.Min.X < x && x < r.Max.X })
		if free && edges[i]-edges[i-1] > hi-lo {
			lo, hi = edges[i-1], edges[i]
		}
	}
	if hi-lo < 12*drawing.MM {
		return
	}
	reach := min((hi-lo)*3/4, 30*drawing.MM)
	a, b := drawing.Pt((lo+hi-reach)/2, mid.Y), drawing.Pt((lo+hi+reach)/2, mid.Y)
	g := s.Group()
	s.Add(drawing.Line(drawing.Thin, g, a, b), drawing.Arrow(g, a, b), drawing.Arrow(g, b, a))
}

// end returns the end view's outline, to the right of the face.
func (b partBlock) end(p *page, v picture, out drawing.Rect) drawing.Rect {
	part := p.in.Rack.Parts[b.part]
	scale := drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den * int64(unit.Micrometre)}
	return drawing.Box(out.Max.X+26*drawing.MM, out.Min.Y, scale.Of(drawing.Um(part.Thickness)), out.H())
}

// boards returns the dimensions of the face and of the end view, not yet drawn.
func (b partBlock) boards(p *page, v picture, out, end drawing.Rect) (face, ends *dim.Board) {
	r := p.in.Rack
	part := r.Parts[b.part]
	scale := drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den}
	stop := func(at drawing.Um, l length, from drawing.Um) dim.Stop { return dim.Stop{At: at, Value: l, From: from} }
	face = dim.New(p.sheet, r.Format, scale)
	face.Overall(dim.Above, stop(out.Min.X, 0, out.Min.Y), stop(out.Max.X, part.Length, out.Min.Y), dim.Options{})
	face.Overall(dim.LeftOf, stop(out.Min.Y, 0, out.Min.X), stop(out.Max.Y, part.Width, out.Min.X), dim.Options{})
	ends = dim.New(p.sheet, r.Format, scale)
	ends.Overall(dim.Above, stop(end.Min.X, 0, end.Min.Y), stop(end.Max.X, part.Thickness, end.Min.Y), dim.Options{})
	return face, ends
}
