package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/finish"
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
	for z := range finish.ZonesOf(r, b.scene.Boxes[0].ID) {
		out = append(out, z.Patch)
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
		for _, n := range p.in.Rack.NailPlaces(patch, c.Axis, b.other) {
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
