package sheet

import (
	"slices"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
)

// clampHigh is the least height of the pictures over the tables.
const clampHigh = 52 * drawing.MM

// clampSheets show where the clamps stand and which diagonals to measure, over
// tables with their figures; on two sheets where one is too low.
func clampSheets(in Input) []*page {
	p := in.newPage("clamps", "Clamps, squareness")
	pages := []*page{p}
	clamps, squares, notes := clampLedger(in), squareLedger(in), clampNotes(in)
	wide := p.area.W()
	tables := clamps.height(wide) + squares.height(wide) + needed(notes, wide, 5*drawing.MM) + 10*drawing.MM
	pictures := p.area
	foot := p.area
	if pictures.H()-tables >= clampHigh {
		foot.Min.Y = foot.Max.Y - tables
		pictures.Max.Y = foot.Min.Y - 2*drawing.MM
	}
	clampPictures(p, pictures)
	if foot.Min.Y == p.area.Min.Y {
		p = in.newPage("clamps-2", "Clamps, squareness")
		pages = append(pages, p)
	}
	w := newScribe(p.sheet, foot)
	clamps.write(w)
	w.skip(4 * drawing.MM)
	squares.write(w)
	w.skip(4 * drawing.MM)
	for _, n := range notes {
		w.note(n, 5*drawing.MM)
	}
	return pages
}

// clampPictures draws a ladder from the side and the carcase from the front,
// side by side, with clamps and diagonals.
func clampPictures(p *page, box drawing.Rect) {
	r := p.in.Rack
	sets := assembly.Sets(r)
	left, right := box, box
	left.Max.X = box.Min.X + box.W()*2/5
	right.Min.X = left.Max.X + 6*drawing.MM

	at := sets[0].Places[0]
	n := slices.IndexFunc(r.Ladders, func(l rack.Ladder) bool { return l.X == at.X })
	ladder := sceneOf(r, func(q rack.Piece) bool { return q.Ladder == n })
	clampPicture(p, left, ladder, view.Right, sets[0].Places, "A ladder from the side")

	carcase := sceneOf(r, func(q rack.Piece) bool { return r.Parts[q.Part].Name != "slat" && r.Parts[q.Part].Name != "top" })
	places := sets[1].Places
	clampPicture(p, right, carcase, view.Front, places, "The carcase from the front")
}

// clampPicture draws one view with its diagonals and, over all lines, a circle
// with a cross for each clamp.
func clampPicture(p *page, box drawing.Rect, s view.Scene, d view.Direction, places []space.Point, title string) {
	box.Max.Y -= 2*drawing.FigureHeight + 4*drawing.MM
	box = box.Inset(clampR)
	v := pictured(p.in, s, d, false, box)
	v.draw(p.sheet, view.Visible(view.Lines(s, d)), func(view.Line) (drawing.Class, bool) { return drawing.Visible, true })
	out := v.extent(s)
	for _, ends := range [][2]drawing.Point{{out.Min, out.Max}, {drawing.Pt(out.Min.X, out.Max.Y), drawing.Pt(out.Max.X, out.Min.Y)}} {
		g := p.sheet.Group()
		p.sheet.Add(drawing.Line(drawing.Dimension, g, ends[0], ends[1]), drawing.Arrow(g, ends[0], ends[1]), drawing.Arrow(g, ends[1], ends[0]))
	}
	size := clampRadius(v, places)
	for _, q := range places {
		at := v.point(q)
		p.sheet.Add(drawing.Disc(drawing.Symbol, 0, drawing.White, at, size))
		p.sheet.Add(drawing.Cross(drawing.Thin, 0, at, size)...)
	}
	captionBelow(p.sheet, drawing.Pt(out.Centre().X, box.Max.Y+clampR), title+", "+scaleText(v))
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
