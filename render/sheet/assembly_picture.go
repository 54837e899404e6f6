package sheet

import (
	"slices"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
)

// clampSheets show where the clamps stand and which diagonals to measure, over
// tables with their figures. The pictures get a sheet to themselves where that
// shows them larger.
func clampSheets(in Input) []*page {
	title := "Clamps, squareness"
	if len(assembly.Sets(in.Rack, in.Cutting.Panel())) == 0 {
		title = "Squareness"
	}
	p := in.newPage("clamps", title)
	pages := []*page{p}
	clamps, squares, notes := clampLedger(in), squareLedger(in), clampNotes(in)
	pictures, foot := p.area, p.area
	foot.Min.Y = foot.Max.Y - clamps.height(foot.W()) - squares.height(foot.W()) - needed(notes, foot.W(), 5*drawing.MM) - 10*drawing.MM
	over := p.area
	over.Max.Y = foot.Min.Y - 2*drawing.MM
	if over.H() > clampsHigh && scaleOf(clampPictures(in, over)) == scaleOf(clampPictures(in, pictures)) {
		pictures = over
	}
	for _, c := range clampPictures(in, pictures) {
		c.draw(p)
	}
	if pictures == p.area {
		p = in.newPage("clamps-2", title)
		pages = append(pages, p)
		foot = p.area
	}
	w := newScribe(p.sheet, foot)
	if len(clamps.rows) > 0 {
		clamps.write(w)
		w.skip(4 * drawing.MM)
	}
	squares.write(w)
	w.skip(4 * drawing.MM)
	for _, n := range notes {
		w.note(n, 5*drawing.MM)
	}
	return pages
}

// clampsHigh is the height below which no picture is tried.
const clampsHigh = 30 * drawing.MM

// A clampPicture is a view with its diagonals and the places of its clamps.
type clampPicture struct {
	box    drawing.Rect
	scene  view.Scene
	v      picture
	places []space.Point
	title  string
}

// scaleOf is the divisors of the pictures' scales.
func scaleOf(list [2]clampPicture) [2]int64 { return [2]int64{list[0].v.proj.Den, list[1].v.proj.Den} }

// clampPictures are a ladder from the side and the carcase from the front, side
// by side in the box.
func clampPictures(in Input, box drawing.Rect) [2]clampPicture {
	r := in.Rack
	sets := assembly.Sets(r, in.Cutting.Panel())
	places := func(j assembly.Joint) []space.Point {
		i := slices.IndexFunc(sets, func(c assembly.Clamps) bool { return c.Joint == j })
		if i < 0 {
			return nil // left to nails
		}
		return sets[i].Places
	}
	rungs, aprons := places(assembly.Rungs), places(assembly.Aprons)
	left, right := box, box
	left.Max.X = box.Min.X + box.W()*2/5
	right.Min.X = left.Max.X + 6*drawing.MM

	n := max(0, slices.IndexFunc(r.Ladders, func(l rack.Ladder) bool { return len(rungs) > 0 && l.X == rungs[0].X }))
	ladder := sceneOf(r, func(q rack.Piece) bool { return q.Ladder == n })
	carcase := sceneOf(r, func(q rack.Piece) bool { return r.Parts[q.Part].Name == "leg" || r.Parts[q.Part].Name == "apron" })
	of := func(box drawing.Rect, s view.Scene, d view.Direction, places []space.Point, title string) clampPicture {
		inside := box
		inside.Max.Y -= 2*drawing.FigureHeight + 4*drawing.MM
		return clampPicture{box, s, pictured(in, s, d, false, inside.Inset(clampR)), places, title}
	}
	return [2]clampPicture{
		of(left, ladder, view.Right, rungs, "A ladder from the side"),
		of(right, carcase, view.Front, aprons, "The carcase from the front"),
	}
}

// draw draws the view, a circle with a cross for each clamp, and over all the
// diagonals.
func (c clampPicture) draw(p *page) {
	v, d := c.v, c.v.proj.Direction
	v.draw(p.sheet, view.Visible(view.Lines(c.scene, d)), func(view.Line) (drawing.Class, bool) { return drawing.Visible, true })
	size := clampRadius(v, c.places)
	for _, q := range c.places {
		at := v.point(q)
		p.sheet.Add(drawing.Disc(drawing.Symbol, 0, drawing.White, at, size))
		p.sheet.Add(drawing.Cross(drawing.Thin, 0, at, size)...)
	}
	out := v.extent(c.scene)
	for _, ends := range [][2]drawing.Point{{out.Min, out.Max}, {drawing.Pt(out.Min.X, out.Max.Y), drawing.Pt(out.Max.X, out.Min.Y)}} {
		twoHeaded(p.sheet, drawing.Dimension, p.sheet.Group(), ends[0], ends[1])
	}
	captionBelow(p.sheet, drawing.Pt(out.Centre().X, out.Max.Y+drawing.MM), c.title+", "+scaleText(v))
}

// clampR is the radius of a clamp's mark, where there is room for it.
const clampR = 17 * drawing.MM / 10

// clampRadius is as much as leaves neighbouring marks apart.
func clampRadius(v picture, places []space.Point) drawing.Um {
	size := drawing.Um(clampR)
	for i, a := range places {
		for _, b := range places[:i] {
			p := v.point(a).Sub(v.point(b))
			size = min(size, max(p.X.Abs(), p.Y.Abs())*4/10)
		}
	}
	return max(size, drawing.MM/2)
}
