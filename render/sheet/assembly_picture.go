package sheet

import (
	"fmt"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
)

// clampSheets show where the clamps stand and which diagonals to measure, then
// tables with their figures.
func clampSheets(in Input) []*page {
	title := "Clamps, squareness"
	if len(assembly.Sets(in.Rack, in.Cutting.Panel())) == 0 {
		title = "Squareness"
	}
	p := in.newPage("clamps", title)
	p.about = []string{assembly.Crossings}
	pictures, foot := clampLayout(in, p.area)
	for _, c := range pictures {
		c.draw(p)
	}
	if words := clampLegend(in); words != "" {
		legend(p, foot, words)
	}
	f := flow{in: in, name: "clamps", title: title, pages: []*page{p}}
	if q, ok := panelPage(in, "clamps-2", title); ok {
		q.about = []string{assembly.Panel}
		f.pages = append(f.pages, q)
	}
	pictured := len(f.pages)
	if l := clampLedger(in); len(l.rows) > 0 {
		f.block("clamps", l)
	}
	f.block("square", squareLedger(in))
	f.anywhere(clampNotes(in)...)
	for _, p := range f.pages[pictured:] {
		p.about = []string{assembly.Figures}
	}
	return f.pages
}

// clampLayout sets the pictures over their legend or beside it, whichever shows
// them larger, and says where the legend goes.
func clampLayout(in Input, area drawing.Rect) (pictures [2]clampPicture, legend drawing.Rect) {
	words := clampLegend(in)
	if words == "" {
		return clampPictures(in, area), area
	}
	over, under := area, area
	over.Max.Y -= needed([]string{words}, area.W()-legendLeft, 0) + 3*drawing.MM
	under.Min.Y = over.Max.Y + 2*drawing.MM
	left, right := area, area
	left.Max.X -= legendWide + 2*drawing.MM
	right.Min.X = left.Max.X + 2*drawing.MM
	upper, aside := clampPictures(in, over), clampPictures(in, left)
	if dens(aside) < dens(upper) {
		return aside, right
	}
	return upper, under
}

// dens adds up the divisors of the pictures' scales.
func dens(list [2]clampPicture) int64 { return list[0].v.proj.Den + list[1].v.proj.Den }

// The legend: what its mark takes, and how wide it is beside the pictures.
const (
	legendLeft = clampOut + 3*clampR + 2*drawing.MM
	legendWide = 44 * drawing.MM
)

// clampLegend says what the pictures show besides the wood; nothing where there
// are no clamps in them.
func clampLegend(in Input) string {
	if !in.Rack.Design.Joint.Glue {
		return ""
	}
	return "a clamp, on a caul (long thin outline) over nails already set: its bar (square), its arm, its pad with the screw (circle). " + caulWords + " Long arrows: the diagonals."
}

// caulWords say what a caul is.
const caulWords = "Caul: a straight stiff stick that spreads a clamp's pressure."

// legend writes the words beside the mark that they explain.
func legend(p *page, box drawing.Rect, words string) {
	bar := drawing.Pt(box.Min.X+clampR, box.Min.Y+drawing.FigureHeight/2+drawing.MM/4)
	clampMark(p.sheet, bar.Add(drawing.Pt(clampOut+clampR, 0)), bar, clampR)
	box.Min.X += legendLeft
	newScribe(p.sheet, box).note(words, 0)
}

// clampMark draws a clamp seen along its screw: the bar, which stands beside the
// work, the arm from there, and the pad with the screw.
func clampMark(s *drawing.Sheet, at, bar drawing.Point, r drawing.Um) {
	half := drawing.Pt(r/3, r/3)
	arm := drawing.Rect{
		Min: drawing.Pt(min(at.X, bar.X), min(at.Y, bar.Y)).Sub(half), Max: drawing.Pt(max(at.X, bar.X), max(at.Y, bar.Y)).Add(half),
	}
	side := drawing.Pt(r*2/3, r*2/3)
	s.Add(drawing.Rectangle(drawing.Symbol, 0, drawing.White, arm))
	s.Add(drawing.Rectangle(drawing.Symbol, 0, drawing.Mid, drawing.Rect{Min: bar.Sub(side), Max: bar.Add(side)}))
	s.Add(drawing.Disc(drawing.Symbol, 0, drawing.White, at, r))
	s.Add(drawing.Cross(drawing.Thin, 0, at, r)...)
}

// A clampPicture is a view with its diagonals and the places of its clamps, on
// their cauls.
type clampPicture struct {
	box         drawing.Rect
	scene       view.Scene
	v           picture
	cauls       []space.Box
	upright     bool // clamps reach in over the upper and the lower edge, else over the sides
	places      []space.Point
	title       string
	left, right string // what is at either side
	square      assembly.Diagonal
}

// clampPictures are a ladder from the right and the carcase from the front, side
// by side in the box.
func clampPictures(in Input, box drawing.Rect) [2]clampPicture {
	r := in.Rack
	left, right := box, box
	// Each gets a share of the width after what it shows.
	deep, wide := r.Len("slat.length"), r.Len("carcase.width")
	room := max(0, box.W()-4*sideWord-clampApart)
	share := max(drawing.Ratio{Num: int64(deep), Den: int64(deep + wide)}.Of(room), room*3/10)
	left.Max.X = box.Min.X + 2*sideWord + share
	right.Min.X = left.Max.X + clampApart
	d := assembly.Diagonals(r)
	n, rungs := clampedLadder(r)
	ladder := clampPicture{
		box: left, scene: sceneOf(r, func(q rack.Piece) bool { return q.Ladder == n }), places: rungs, square: d[0], left: "FRONT", right: "BACK",
		title: rack.Places("ladder", []int{n + 1}) + " from the right, ",
	}
	carcase := clampPicture{
		box: right, scene: sceneOf(r, func(q rack.Piece) bool { return r.Parts[q.Part].Name == "leg" || r.Parts[q.Part].Name == "apron" }),
		places: assembly.ApronPlaces(r), upright: true, square: d[1], left: "LEFT", right: "RIGHT", title: "The carcase from the front, ",
	}
	if len(rungs) > 0 {
		ladder.cauls, carcase.cauls = ladderCauls(r), apronCauls(r)
	}
	fit := func(c *clampPicture, d view.Direction) {
		inside := c.box
		inside.Min.Y += c.reach()
		inside.Max.Y -= clampLine*drawing.Um(len(c.caption("scale 1:100"))+1) + 17*drawing.MM/10 + c.reach()
		inside.Min.X += sideWord
		inside.Max.X -= sideWord
		c.v = pictured(in, c.scene, d, false, inside)
	}
	fit(&ladder, view.Right)
	fit(&carcase, view.Front)
	return [2]clampPicture{ladder, carcase}
}

// clampedLadder is the ladder, from 0, that is drawn: of those with slats on the
// right face the one with the most, with the clamps on that face where it is
// glued.
func clampedLadder(r *rack.Rack) (n int, places []space.Point) {
	most := 0
	for _, f := range assembly.Faces(r) {
		if f.Right && len(f.Slats) > most {
			n, most = f.Ladders[0]-1, len(f.Slats)
			places = assembly.FacePlaces(r, f)
		}
	}
	return n, places
}

// ladderCauls are the cauls along the legs of a ladder, seen from the side.
func ladderCauls(r *rack.Rack) []space.Box {
	leg, y := r.Len("leg.width"), r.Len("apron.thickness")
	half := assembly.CaulWide(r, leg) / 2
	var out []space.Box
	for _, mid := range []length{y + leg/2, y + r.Len("slat.length") - leg/2} {
		out = append(out, space.Box{Min: space.Point{Y: mid - half}, Max: space.Point{Y: mid + half, Z: r.Len("leg.length")}})
	}
	return out
}

// apronCauls are the cauls along the front aprons, seen from the front.
func apronCauls(r *rack.Rack) []space.Box {
	high := r.Len("apron.height")
	half := assembly.CaulWide(r, high) / 2
	var out []space.Box
	for _, mid := range []length{r.Len("apron.lift") + high/2, r.Len("leg.length") - high/2} {
		out = append(out, space.Box{Min: space.Point{Z: mid - half}, Max: space.Point{X: r.Len("carcase.width"), Z: mid + half}})
	}
	return out
}

// draw draws the view, cauls with their clamps, and over all the diagonals with
// their figure.
func (c clampPicture) draw(p *page) {
	v, d := c.v, c.v.proj.Direction
	v.draw(p.sheet, view.Visible(view.Lines(c.scene, d)), func(view.Line) (drawing.Class, bool) { return drawing.Visible, true })
	for _, b := range c.cauls {
		p.sheet.Add(drawing.Rectangle(drawing.Thin, 0, drawing.NoFill, v.around(b)))
	}
	out := v.extent(c.scene)
	size := clampRadius(v, c.places)
	for _, q := range c.places {
		at := v.point(q)
		clampMark(p.sheet, at, c.bar(at, out), size)
	}
	g := p.sheet.Group()
	for _, ends := range [][2]drawing.Point{{out.Min, out.Max}, {drawing.Pt(out.Min.X, out.Max.Y), drawing.Pt(out.Max.X, out.Min.Y)}} {
		p.sheet.Add(drawing.Line(drawing.Dimension, g, ends[0], ends[1]), drawing.Arrow(g, ends[0], ends[1]), drawing.Arrow(g, ends[1], ends[0]))
	}
	if out.H() >= clampHigh {
		c.words(p, out)
	}
	lines := c.caption(scaleText(v))
	for i, text := range lines {
		p.caption(drawing.Pt(out.Centre().X, out.Max.Y+c.reach()+drawing.MM+clampLine*drawing.Um(i)), text)
	}
	c.figure(p, drawing.Pt(out.Centre().X, out.Max.Y+c.reach()+drawing.MM+clampLine*drawing.Um(len(lines))))
}

// reach is how far clamps stand out over and under the picture.
func (c clampPicture) reach() drawing.Um {
	if !c.upright || len(c.places) == 0 {
		return 0
	}
	return clampOut + clampR
}

// bar is where the bar of a clamp stands: beside the nearer of the edges over which
// clamps reach in.
func (c clampPicture) bar(at drawing.Point, out drawing.Rect) drawing.Point {
	middle := out.Centre()
	switch {
	case c.upright && at.Y < middle.Y:
		return drawing.Pt(at.X, out.Min.Y-clampOut)
	case c.upright:
		return drawing.Pt(at.X, out.Max.Y+clampOut)
	case at.X < middle.X:
		return drawing.Pt(out.Min.X-clampOut, at.Y)
	}
	return drawing.Pt(out.Max.X+clampOut, at.Y)
}

// words letters what is at either side.
func (c clampPicture) words(p *page, out drawing.Rect) {
	for _, side := range []struct {
		x    drawing.Um
		word string
	}{{out.Min.X - sideMiddle, c.left}, {out.Max.X + sideMiddle, c.right}} {
		word := drawing.Label(drawing.NoteText, 0, drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Plain(side.word))
		word.Turn = 1
		p.sheet.Add(word.CentredOn(drawing.Pt(side.x, out.Min.Y+out.H()/4)))
	}
}

// caption is the picture's title with its scale, broken into lines no wider than
// its box.
func (c clampPicture) caption(scale string) []string {
	return breakLines(strings.ToUpper(c.title[:1])+c.title[1:]+scale, c.box.W(), drawing.FigureHeight)
}

// figure letters the diagonals under the picture's title, where they hide nothing.
func (c clampPicture) figure(p *page, at drawing.Point) {
	sys := p.in.Rack.Format.System
	text := c.square.Text(sys)
	l := drawing.Label(drawing.NoteText, 0, drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Figure(fmt.Sprintf("both diagonals %s %s", text, sys)))
	half := l.Width()/2 + 1
	at.X = min(max(at.X, p.area.Min.X+half), p.area.Max.X-half)
	p.sheet.Add(l.CentredOn(at.Add(drawing.Pt(0, captionOff+clampLine/2))))
	noted(p.sheet, at, c.square.Length, text)
}

// sideWord is the room for a turned word beside a picture, clear of clamps at its
// edge, and sideMiddle where the word's middle is.
const (
	sideWord   = 11 * drawing.MM
	sideMiddle = 85 * drawing.MM / 10
)

// clampApart is between the two pictures, clampLine what a line of their captions
// takes, and clampHigh the least height of a picture with words at its sides.
const (
	clampApart = 5 * drawing.MM
	clampLine  = 6 * drawing.MM
	clampHigh  = 40 * drawing.MM
)

// clampR is the radius of a clamp's mark, where there is room for it.
const clampR = 17 * drawing.MM / 10

// clampOut is from a picture's edge to the bars of its clamps.
const clampOut = 3 * drawing.MM

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
