package template

import (
	"fmt"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// How far marks reach past a seam into the overlap, so that a joint can be
// seen to fit, and the size of a register cross.
const (
	pastSeam  = 3 * mm
	crossArm  = 4 * mm
	crossRing = 2 * mm
	nailRing  = 1 * mm
	figureOff = 1 * mm // from a figure to its line
)

// A tile is the part of one strip that stands on one page: tile k, drawn in the
// net area with its band at top.
type tile struct {
	strip
	f             format
	k, n          int
	page          int        // number of this page
	words         []string   // inside the strip, what it is first
	top           drawing.Um // of the band
	high, covered drawing.Um
	marks         []drawing.Mark
	figures       []drawing.Mark // inked after all lines
	dims          []drawing.DimRecord
}

// window returns how far from the left the seams of the tile stand; the last
// tile ends at the end of the strip.
func (t *tile) window() (from, to drawing.Um) {
	from = t.f.at(unit.Length(t.k)*t.f.step, t.k)
	return from, min(t.f.at(unit.Length(t.k+1)*t.f.step, t.k), t.f.at(t.length, t.k))
}

// reach returns from where to where marks are drawn: a little past the seams.
func (t *tile) reach() (from, to drawing.Um) {
	from, to = t.window()
	if t.k > 0 {
		from -= pastSeam
	}
	if t.k < t.n-1 {
		to += pastSeam
	}
	return from, to
}

func (t *tile) add(marks ...drawing.Mark) { t.marks = append(t.marks, marks...) }

// draw draws the tile's marks; code names the strip.
func (t *tile) draw(code string, format unit.Format) {
	t.outline()
	for _, s := range t.seats {
		t.seat(s, format)
	}
	t.ends()
	t.seams(code, format)
	t.arrows()
	t.inside()
	t.add(t.figures...)
}

// rows returns the feet of the two rows of figures: the upper one for edges
// nearer the datum, the lower one for edges farther from it.
func (t *tile) rows() (upper, lower drawing.Um) {
	a, b := t.piece()
	above, below := drawing.Um(700), drawing.Um(1100) // a slash hangs below its line
	if !t.narrow() {                                  // a stacked fraction stands out both ways
		above, below = 2500, 2500
	}
	return a + above + drawing.FigureHeight, b - below
}

// piece returns the upper and the lower edge of what the piece covers.
func (t *tile) piece() (upper, lower drawing.Um) {
	if t.edgeUp {
		return t.top, t.top + t.covered
	}
	return t.top + t.high - t.covered, t.top + t.high
}

// outline draws, as far as the tile shows them, the long edges along which the strip
// is cut: those of the piece, or how far a wider piece is shown.
func (t *tile) outline() {
	from, to := t.reach()
	upper, lower := t.piece()
	for _, y := range []drawing.Um{upper, lower} {
		t.add(drawing.Line(drawing.Visible, 0, drawing.Pt(from, y), drawing.Pt(to, y)))
	}
}

// seat draws the edges of a seat, an X between them on the side that is
// covered, and the nails. Of a seat that a seam divides each tile has its own X, if
// its part has room for one: none lies over the seam.
func (t *tile) seat(s seat, format unit.Format) {
	from, to := t.reach()
	a, b := t.f.at(s.from, t.k), t.f.at(s.to, t.k)
	if s.from > 0 { // the ends have their own lines and figures
		t.edgeMark(s.from, true, format)
	}
	if s.to < t.length {
		t.edgeMark(s.to, false, format)
	}
	upper, lower := t.piece()
	start, stop := t.window()
	shown := min(b, stop) - max(a, start)
	mid := drawing.Pt(max(a, start)+shown/2, (upper+lower)/2)
	const most, least = 4 * mm, 2 * mm
	if arm := min(shown/2-500, most); arm > 0 && arm >= min(least, (b-a)/2-500) {
		t.add(drawing.Line(drawing.Symbol, 0, mid.Add(drawing.Pt(-arm, -arm)), mid.Add(drawing.Pt(arm, arm))),
			drawing.Line(drawing.Symbol, 0, mid.Add(drawing.Pt(-arm, arm)), mid.Add(drawing.Pt(arm, -arm))))
	}
	box := drawing.Box(from, t.top, to-from, t.high)
	for _, n := range s.nails {
		p := drawing.Pt(t.f.at(n.along, t.k), t.across(n.across))
		if ring := drawing.Disc(drawing.Register, 0, drawing.NoFill, p, nailRing); box.Holds(ring.Bounds()) {
			t.add(ring)
			reach := 3 * nailRing
			if t.narrow() {
				reach = 2 * nailRing
			}
			t.add(drawing.Cross(drawing.Register, 0, p, reach)...)
		}
	}
}

// across returns the height on paper of a place so far from the true edge.
func (t *tile) across(l unit.Length) drawing.Um {
	if t.edgeUp {
		return t.top + um(l)
	}
	return t.top + t.high - um(l)
}

// edgeMark draws one edge of a seat over the height of the piece, with its
// distance from the datum.
func (t *tile) edgeMark(l unit.Length, near bool, format unit.Format) {
	from, to := t.reach()
	x := t.f.at(l, t.k)
	if x < from || x > to {
		return
	}
	upper, lower := t.piece()
	t.add(drawing.Line(drawing.TemplateCut, 0, drawing.Pt(x, upper), drawing.Pt(x, lower)))
	t.figure(l, near, format)
}

// figure prints the distance of an edge from the datum beside its line: before
// it in the upper row, or after it in the lower one. Where a seam is in the way
// it moves to the other side, and where a line's figure belongs to the next
// tile it is left to that.
func (t *tile) figure(l unit.Length, near bool, format unit.Format) {
	start, stop := t.window()
	x := t.f.at(l, t.k)
	if x < start || x > stop || (x == stop && t.k < t.n-1) {
		return
	}
	start, stop = start+besideCross, stop-besideCross
	printed := format.Text(l)
	upper, lower := t.rows()
	runs := drawing.Figure(printed)
	if t.narrow() {
		runs = drawing.Plain(printed)
	}
	g := drawing.Label(drawing.FigureText, 0, drawing.Pt(0, lower), drawing.FigureHeight, drawing.Left, runs)
	left, moved := max(x+figureOff, start), false
	if near {
		g.At.Y = upper
		if moved = x-figureOff-g.Width() < start; !moved {
			left = x - figureOff - g.Width()
		}
	} else if moved = left+g.Width() > stop; moved {
		left = min(x-figureOff, stop) - g.Width()
	}
	g.At.X = left
	if moved { // into the seat, which may be narrower than the figure
		t.figures = append(t.figures, drawing.Rectangle(drawing.Solid, 0, drawing.White, g.Bounds().Inset(-figureOff/2)))
	}
	t.figures = append(t.figures, g)
	at := drawing.Pt(x, g.At.Y)
	t.dims = append(t.dims, drawing.DimRecord{Role: drawing.Note, Value: l, Printed: printed, From: at, To: at, ScaleNum: 1, ScaleDen: 1})
}

// narrow reports whether the piece is too narrow for stacked fractions.
func (t *tile) narrow() bool { return t.covered < stackBand }

// ends draws the datum end and the other end of the piece, where they fall on
// the tile.
func (t *tile) ends() {
	upper, lower := t.piece()
	if t.k == 0 {
		x := t.f.at(0, 0)
		t.add(drawing.Line(drawing.Visible, 0, drawing.Pt(x, upper), drawing.Pt(x, lower)))
	}
	if t.k == t.n-1 {
		x := t.f.at(t.length, t.k)
		t.add(drawing.Line(drawing.Visible, 0, drawing.Pt(x, upper), drawing.Pt(x, lower)))
	}
}

// seams draws the datum end and the seam lines with their crosses, the distance
// of each, and of the other end, from the datum above the strip, and the strip's
// name between them.
func (t *tile) seams(code string, format unit.Format) {
	from, to := t.window()
	t.cross(from)
	if t.k < t.n-1 { // nothing joins at the end of the strip
		t.cross(to)
	}
	first := t.distance(unit.Length(t.k)*t.f.step, t.k == 0, t.start, format)
	first.At.X = from + besideCross
	if t.k > 0 {
		first.Runs = drawing.Plain(fmt.Sprintf("page %d joins at %s", t.page-1, first.String()))
	}
	l, last := unit.Length(t.k+1)*t.f.step, t.k == t.n-1
	if last {
		l = t.length
	}
	second := t.distance(l, last, t.end, format)
	if !last {
		second.Runs = drawing.Plain(fmt.Sprintf("page %d joins at %s", t.page+1, second.String()))
	}
	second.Align, second.At.X = drawing.Right, to-besideCross
	beyond := second.At.X // a short last tile has room past its end
	if last {
		beyond = to + besideCross
		if second.At.X-second.Width() < first.At.X+first.Width()+wordGap {
			second.Align, second.At.X = drawing.Left, beyond
			if first.At.X+first.Width()+besideCross > to { // not even room for the seam's own figure
				second.Runs = drawing.Plain(first.String() + "; " + second.String())
				first.Runs = nil
			}
			beyond += second.Width() + wordGap
		}
	}
	gaps := [][2]drawing.Um{{first.At.X + first.Width() + wordGap, second.At.X - second.Width() - wordGap}}
	if last {
		gaps = append(gaps, [2]drawing.Um{beyond, t.f.net() - um(t.f.half)})
	}
	t.letterName(code, gaps)
	if first.Runs != nil {
		t.add(first)
	}
	t.add(second)
}

// letterName letters as much of the strip's name as the widest words that one of
// the gaps above the strip has room for.
func (t *tile) letterName(code string, gaps [][2]drawing.Um) {
	for _, words := range []string{code + "  " + t.name + ": " + t.use, code + "  " + t.name, code} {
		for _, g := range gaps {
			if name := t.above(words); g[0]+name.Width() <= g[1] {
				name.At.X = g[0]
				t.add(name)
				return
			}
		}
	}
}

// Clear of the register crosses, and between the words above a strip.
const (
	besideCross = crossArm + 500
	wordGap     = 5 * mm
)

// above returns lettering for the row above the strip.
func (t *tile) above(s string) drawing.Text {
	return note(drawing.Pt(0, t.top-2*mm), s)
}

// cross draws a seam or the datum end: a line through the row above the strip and
// crosses on both its long edges.
func (t *tile) cross(x drawing.Um) {
	t.add(drawing.Line(drawing.Phantom, 0, drawing.Pt(x, t.top-titleRow), drawing.Pt(x, t.top+t.high)))
	for _, y := range []drawing.Um{t.top, t.top + t.high} {
		p := drawing.Pt(x, y)
		t.add(drawing.Disc(drawing.Register, 0, drawing.NoFill, p, crossRing))
		t.add(drawing.Cross(drawing.Register, 0, p, 2*crossArm)...)
	}
}

// distance returns how far a seam or an end is from the datum, an end with its
// word, and records the figure.
func (t *tile) distance(l unit.Length, end bool, word string, format unit.Format) drawing.Text {
	printed := format.Text(l)
	text := t.above(printed)
	if end {
		text = t.above(word + " " + printed)
	}
	text.Bold = end
	at := drawing.Pt(t.f.at(l, t.k), t.top)
	t.dims = append(t.dims, drawing.DimRecord{Role: drawing.Note, Value: l, Printed: printed, From: at, To: at, ScaleNum: 1, ScaleDen: 1})
	return text
}

// arrows points to the datum and to the true edge, in the widest stretch of the
// tile that no seat covers. Where all are too narrow the name above the strip
// has to do.
func (t *tile) arrows() {
	const need = 46 * mm
	from, to := t.window()
	at, wide := drawing.Um(0), drawing.Um(0)
	left := from
	try := func(right drawing.Um) {
		if right = min(right, to); right-left > wide {
			at, wide = (left+right)/2, right-left
		}
	}
	for _, s := range t.seats {
		try(t.f.at(s.from, t.k))
		left = max(left, t.f.at(s.to, t.k))
	}
	try(to)
	if wide < need {
		return
	}
	upper, lower := t.piece()
	mid := (upper + lower) / 2
	word := func(x drawing.Um, s string, align drawing.Align) drawing.Text {
		return drawing.Label(drawing.NoteText, 0, drawing.Pt(x, mid+drawing.FigureHeight/2), drawing.FigureHeight, align, drawing.Plain(s))
	}
	g := word(at-10*mm, t.start, drawing.Right)
	g.Bold = true
	tip, tail := drawing.Pt(at-9*mm, mid), drawing.Pt(at-1*mm, mid)
	t.add(g, drawing.Line(drawing.Symbol, 0, tip, tail), drawing.Arrow(0, tip, tail))
	high := min((lower-upper)/2-8500, 6*mm)
	tip, tail = drawing.Pt(at+3*mm, mid-high), drawing.Pt(at+3*mm, mid+high)
	if !t.edgeUp {
		tip, tail = tail, tip
	}
	e := word(at+5*mm, t.edge, drawing.Left)
	e.Bold = true
	t.add(e, drawing.Line(drawing.Symbol, 0, tip, tail), drawing.Arrow(0, tip, tail))
}
