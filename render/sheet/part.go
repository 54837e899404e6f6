package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// Room round the views of one part: title over them, a line of notes under
// them, the end view at the right.
const (
	partTitle = 8 * drawing.MM
	partBelow = 6 * drawing.MM
	partLeft  = 26 * drawing.MM
	partFront = 18 * drawing.MM // more at the left of a top, for figures from its front edge
	partHoles = 8 * drawing.MM  // more at the left of a bored apron, for how far in its holes are
	partEnd   = 60 * drawing.MM // for the end view and its dimension
	partGap   = 4 * drawing.MM  // the least between neighbours
)

// parts returns the part sheets.
func parts(in Input) []*page {
	blank := in.newPage("", "")
	var blocks []partBlock
	for i := range in.Rack.Parts {
		for _, b := range newPartBlocks(in, i) {
			blocks = append(blocks, b.broken(blank))
		}
	}
	var pages []*page
	for _, group := range sharedOut(blank, blocks) {
		p := in.newPage(fmt.Sprintf("parts-%d", len(pages)+1), "")
		var list []int
		for _, b := range group {
			list = append(list, b.part)
		}
		p.tell("Part", list)
		pages = append(pages, p)
		drawParts(p, group)
	}
	return pages
}

// tell says in a page's title, and in the index, which parts it is about.
func (p *page) tell(title string, parts []int) {
	parts = slices.Compact(parts)
	var marks []string
	for _, i := range parts {
		part := p.in.Rack.Parts[i]
		marks, p.about = append(marks, part.Mark), append(p.about, part.Name)
	}
	switch len(parts) {
	case 1:
		title += " " + marks[0] + ", " + p.about[0]
	default:
		title += "s " + strings.Join(marks, ", ")
	}
	p.sheet.Title = title
}

// drawParts draws blocks one below the other, what room is left shared out
// between them.
func drawParts(p *page, blocks []partBlock) {
	left := p.area.H()
	for _, b := range blocks {
		left -= b.height(p)
	}
	space := left / drawing.Um(len(blocks))
	y := p.area.Min.Y
	if len(blocks) == 1 {
		y += space / 3
	}
	for _, b := range blocks {
		box := p.area
		box.Min.Y, box.Max.Y = y, y+b.height(p)
		b.draw(p, box)
		y = box.Max.Y + space
	}
}

// A partBlock draws one part, lying with its grain from left to right.
type partBlock struct {
	part  int
	name  string // of the part
	pair  string // "front pair": which of the aprons, where they differ
	off   int    // how many are made
	piece rack.Piece
	scene view.Scene
	face  view.Direction // at the wide face that is fixed to others
	other bool           // the face's nails stand on the other diagonal
	width space.Axis
	thick space.Axis
	scale int64      // divisor of the picture
	gap   gapped     // what a broken part lacks
	hold  fixing.Top // of the top and of the apron that is bored for its blocks: how it is held; zero of others
}

// newPartBlock draws a piece, n into Pieces.
func newPartBlock(in Input, n int) partBlock {
	r := in.Rack
	piece := r.Pieces[n]
	part := r.Parts[piece.Part]
	b := partBlock{part: piece.Part, name: part.Name, off: part.Count, piece: piece,
		scene: view.Scene{Boxes: []view.Solid{{ID: n, Box: piece.Box}}}}
	switch b.name {
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
		if piece.Box.Min.Y > 0 {
			b.face = view.Front
		}
	default: // the top, from below
		b.width, b.thick, b.face = space.Y, space.Z, view.Bottom
		b.hold, _ = fixing.Of(r)
	}
	return b
}

// lies reports whether the view must be turned for the grain to run from left
// to right.
func (b partBlock) lies() bool { return b.piece.Grain == space.Z }

// left is the room at the left of the view.
func (b partBlock) left() drawing.Um {
	switch {
	case b.slotted():
		return partLeft + partFront
	case b.bored():
		return partLeft + partHoles
	}
	return partLeft
}

// picture returns the part's view at its scale.
func (b partBlock) picture(p *page) picture {
	return picture{proj: view.Projection{Direction: b.face, Num: 1, Den: b.scale}, lies: b.lies()}
}

// largest returns the scale of the largest picture that a sheet has room for.
func (b partBlock) largest(p *page) int64 {
	box := p.area
	box.Min.X += b.left()
	box.Max.X -= partEnd
	box.Max.Y -= partTitle + 25*drawing.MM + partBelow
	return pictured(p.in, b.scene, b.face, b.lies(), box).proj.Den
}

// height returns how much room the block takes.
func (b partBlock) height(p *page) drawing.Um {
	v := b.picture(p)
	return partTitle + b.above(p, v) + v.extent(b.scene).H() + b.second(p, v) + b.under(v) + b.below(p)
}

// second returns how much room the figures under the view take, and the view of
// the outer face with its own.
func (b partBlock) second(p *page, v picture) drawing.Um {
	high := b.outsideAt(p, v)
	if b.nailed() {
		out := v.extent(b.scene)
		high += out.H() + max(nailFigure, b.nailBoard(p, b.outside(v, out.Min)).Room(dim.Below))
	}
	return high
}

// outsideAt returns how far below the view that of the outer face begins.
func (b partBlock) outsideAt(p *page, v picture) drawing.Um {
	out := v.extent(b.scene)
	face, _ := b.boards(p, v, out, b.end(p, v, out))
	high := max(face.Room(dim.Below), b.beside(p.in.Rack, v, out))
	if b.nailed() {
		high += partSecond
	}
	return high
}

// under returns how far below the view its note starts: clear of the arrowhead
// that a narrow part's width has outside, and of the lines of a break.
func (b partBlock) under(v picture) drawing.Um {
	if v.extent(b.scene).H() < partNarrow || !b.gap.none() {
		return 6 * drawing.MM
	}
	return 2 * drawing.MM
}

// partNarrow is a view so narrow that its width's arrowheads stand outside.
const partNarrow = 8 * drawing.MM

// above returns how much room the dimensions over the view take.
func (b partBlock) above(p *page, v picture) drawing.Um {
	out := v.extent(b.scene)
	face, end := b.boards(p, v, out, b.end(p, v, out))
	least := 3 * drawing.MM
	switch {
	case out.H() < partNarrow: // its width's figure may stand over it
		least = 12 * drawing.MM
	case b.bored():
		least = holeFigure
	case b.name == "leg" || b.slotted():
		least = frontEdge
	}
	return max(least, face.Room(dim.Above), end.Room(dim.Above), b.beside(p.in.Rack, v, out))
}

// draw draws the block into the box.
func (b partBlock) draw(p *page, box drawing.Rect) {
	r := p.in.Rack
	part := r.Parts[b.part]
	v := b.picture(p)
	name, stock := part.Name, p.in.wood()
	if part.Stock != "" {
		stock += ", from " + part.Stock
	}
	if b.pair != "" {
		name += ", " + b.pair
	}
	w := newScribe(p.sheet, box)
	w.line(drawing.HeadingText, drawing.FigureHeight, 0, true, drawing.Figure(fmt.Sprintf("%s  %s, %s: %s %s, %s; %s",
		part.Mark, name, word.Count(b.off, "piece"), sizeText(r.Format, part), r.Format.System, stock, scaleText(v))))
	size := v.extent(b.scene)
	v.at = v.at.Add(drawing.Pt(box.Min.X+b.left(), box.Min.Y+partTitle+b.above(p, v)).Sub(size.Min))
	out := v.extent(b.scene)

	var bare []drawing.Rect
	if b.bored() {
		b.drawNails(p, v)
	} else {
		bare = b.bare(p, v)
	}
	v.draw(p.sheet, view.Visible(view.Lines(b.scene, b.face)), func(l view.Line) (drawing.Class, bool) {
		return drawing.Visible, !b.atBreak(l)
	})
	b.breaks(p.sheet, v, out)
	bare = append(bare, b.blocks(p, v)...)
	b.drawHoles(p, v)
	grain(p.sheet, out, append(bare, b.missing(v)...))
	end := b.end(p, v, out)
	p.sheet.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, end))
	onFace, _ := b.boards(p, v, out, end)
	onFace.Draw(out)
	_, onEnd := b.boards(p, v, out, end) // anew: its chains are numbered after those drawn
	onEnd.Draw(end)
	foot := box
	foot.Min.Y = out.Max.Y + b.second(p, v) + b.under(v)
	b.frontBack(p, v, out)
	b.frontWord(p, v, out)
	b.endWord(p, v, out)
	if b.nailed() {
		b.drawOutside(p, v, drawing.Pt(out.Min.X, out.Max.Y+b.outsideAt(p, v)))
	}
	notes := newScribe(p.sheet, foot)
	for _, n := range b.notes(p) {
		notes.note(n, 0)
	}
}

// glued lists the patches of the part that are glued.
func (b partBlock) glued(r *rack.Rack) (out []space.Box) {
	id := b.scene.Boxes[0].ID
	for _, z := range finish.Zones(r) {
		if z.Piece == id {
			out = append(out, z.Patch)
		}
	}
	return out
}

// frontBack letters the front and the back edge of the top.
func (b partBlock) frontBack(p *page, v picture, out drawing.Rect) {
	if b.thick != space.Z {
		return
	}
	front, back := out.Min.Y, out.Max.Y
	if v.point(b.piece.Box.Min).Y > v.point(b.piece.Box.Max).Y {
		front, back = back, front
	}
	for _, x := range []struct {
		y    drawing.Um
		word string
	}{{front, "FRONT"}, {back, "BACK"}} {
		if x.y == back && out.H() < 3*drawing.FigureHeight {
			continue // no room for both
		}
		y := max(out.Min.Y+drawing.FigureHeight, min(out.Max.Y, x.y))
		note(p, x.word, drawing.Pt(out.Max.X+3*drawing.MM, y))
	}
}

// bare hatches the patches of the face that are fixed to other pieces, marks where
// nails come into a leg, and returns the patches on the sheet.
func (b partBlock) bare(p *page, v picture) []drawing.Rect {
	var out []drawing.Rect
	var glued []space.Box
	if b.thick == space.Z { // of the top not all that it sits on is
		glued = b.glued(p.in.Rack)
	}
	for _, c := range b.piece.Fixed {
		if !b.against(c) {
			continue
		}
		patch, ok := b.shifted(c)
		if !ok {
			continue
		}
		r := v.around(patch)
		out = append(out, r)
		if b.thick != space.Z || slices.Contains(glued, c.Patch) {
			p.sheet.Add(drawing.Hatching{Pitch: 3 * drawing.MM / 2}.Hatch(0, r)...)
		}
		p.sheet.Add(drawing.Rectangle(drawing.Thin, 0, drawing.NoFill, r))
		if b.name != "leg" {
			continue // the nails are at the other face; the top's fastening lets it move
		}
		for _, n := range rack.NailPlaces(patch, c.Axis, b.other) {
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
	twoHeaded(s, drawing.Thin, s.Group(), a, b)
}

// end returns the end view's outline, to the right of the face.
func (b partBlock) end(p *page, v picture, out drawing.Rect) drawing.Rect {
	part := p.in.Rack.Parts[b.part]
	scale := drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den * int64(unit.Micrometre)}
	return drawing.Box(out.Max.X+26*drawing.MM, out.Min.Y, scale.Of(drawing.Um(part.Thickness)), out.H())
}

// boards returns the dimensions of the face and of the end view, not yet drawn. The
// length is the last of the figures along a part that has such under its view, else
// it stands over it.
func (b partBlock) boards(p *page, v picture, out, end drawing.Rect) (face, ends *dim.Board) {
	r := p.in.Rack
	part := r.Parts[b.part]
	wide := part.Name + ".width"
	if !r.Has(wide) {
		wide = part.Name + ".height"
	}
	scale := drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den}
	// A piece's sizes are read off it, and checked against the lengths named.
	upTo := func(at drawing.Um, l length, from drawing.Um, name string) dim.Stop {
		return coord{l, drawing.Of(name)}.stop(at, from)
	}
	face = dim.New(p.sheet, r.Format, scale)
	ends = dim.New(p.sheet, r.Format, scale)
	if front := b.fromFront(r, v, out); len(front) > 0 { // which leaves no room there for the width
		face.Running(dim.LeftOf, "FRONT", front, dim.Options{})
		ends.Overall(dim.RightOf, coord{}.stop(end.Max.Y, end.Max.X), upTo(end.Min.Y, part.Width, end.Max.X, wide), dim.Options{})
	} else {
		if b.bored() {
			face.Chain(dim.LeftOf, b.acrossTo(v, out, b.piece.Box.Max, b.holes(r)), dim.Options{})
		}
		face.Overall(dim.LeftOf, coord{}.stop(out.Max.Y, out.Min.X), upTo(out.Min.Y, part.Width, out.Min.X, wide), dim.Options{})
	}
	origin, stops := b.stops(p, v, out)
	side, from := dim.Above, end.Min.Y
	if long := part.Name + ".length"; len(stops) > 0 && !b.nailed() {
		side, from = dim.Below, end.Max.Y
		far := out.Max.X
		if b.startsRight(v) {
			far = out.Min.X
		}
		stops = append(stops, upTo(far, part.Length, out.Max.Y, long))
	} else {
		face.Overall(dim.Above, coord{}.stop(out.Min.X, out.Min.Y), upTo(out.Max.X, part.Length, out.Min.Y, long), dim.Options{Broken: !b.gap.none()})
	}
	if len(stops) > 0 {
		face.Running(dim.Below, origin, stops, dim.Options{})
	}
	ends.Overall(side, coord{}.stop(end.Min.X, from), upTo(end.Max.X, part.Thickness, from, part.Name+".thickness"), dim.Options{})
	return face, ends
}
