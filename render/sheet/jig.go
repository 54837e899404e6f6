package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// jigSheets show the jig in which the faces of ladders are fitted, from above and
// from the ladders' top end: with a first face up and, where ladders are turned,
// with a second one, lying on packers.
func jigSheets(in Input) []*page {
	r := in.Rack
	first, turned := 0, -1 // the shapes with most slats, and with most packers
	most := func(i int) int { return len(r.Shapes[i].Left) + len(r.Shapes[i].Right) }
	packers := func(i int) int { return len(assembly.PackerPlaces(r, i)) }
	for i, s := range r.Shapes {
		if most(i) > most(first) {
			first = i
		}
		if s.Role == rack.Inner && (turned < 0 || packers(i) > packers(turned)) {
			turned = i
		}
	}
	if turned < 0 {
		return []*page{newJig(in, first, false).page("jig", "Jig")}
	}
	return []*page{
		newJig(in, first, false).page("jig-1", "Jig, first faces"),
		newJig(in, turned, true).page("jig-2", "Jig, second faces"),
	}
}

// A jig is one ladder in the jig. Lengths along the legs count from the foot,
// which lies at the left at the stop; those across from the fence, which lies
// nearest to who works there.
type jig struct {
	in     Input
	shape  int
	second bool // the ladder is turned and lies on packers
	caul   length
	leg    length // how wide
	wide   length // the ladder
	long   length
	up     []length // undersides of the slats that are fitted, from the foot
	under  []length // and of those below the legs
	packed []length // the packers' edges nearer the foot
}

func newJig(in Input, shape int, second bool) jig {
	r := in.Rack
	j := jig{in: in, shape: shape, second: second, caul: assembly.Caul(r), leg: r.Len("leg.width"), wide: r.Len("slat.length"), long: r.Len("leg.length")}
	s := r.Shapes[shape]
	switch j.up = s.Left; {
	case second:
		j.up, j.under, j.packed = s.Right, s.Left, assembly.PackerPlaces(r, shape)
	case len(s.Left) == 0:
		j.up = s.Right
	}
	return j
}

// Room round the pictures.
const (
	jigLeft   = 34 * drawing.MM // of dimensions
	jigRight  = 34 * drawing.MM // of names
	jigApart  = 6 * drawing.MM
	jigLeast  = 36 * drawing.MM // what names and figures beside a picture take
	jigRow    = 6 * drawing.MM  // from one name to the next
	jigNotes  = 70 * drawing.MM // the least width of words
	jigEnd    = 10 * drawing.MM // a picture's title
	jigColumn = 10 * drawing.MM // from a picture to its names
)

// leastStrip is how wide the template's strip of a leg is at the least.
const leastStrip = 30 * unit.Millimetre

// A jigLayout is the scales of the plan and of the view from the end, and what the
// latter takes with the words beside it.
type jigLayout struct {
	plan, end int64
	foot      drawing.Um
}

// layout picks the scales: the plan's as large as it goes, then that of the view
// from the end.
func (j jig) layout(p *page) (best jigLayout) {
	first := largestScale(j.in, func(den int64) bool {
		return onPaper(j.wide+j.caul, den) <= p.area.W()-jigLeft-jigRight-jigNotes && onPaper(j.high(), den) <= p.area.H()/4
	})
	for _, end := range []int64{first, nextScale(j.in, first)} {
		l := jigLayout{end: end, foot: max(max(onPaper(j.high(), end), jigRow*5)+jigEnd, needed(j.notes(), j.beside(p, end).W(), 5*drawing.MM)) + jigApart}
		l.plan = largestScale(j.in, func(den int64) bool {
			return onPaper(j.long+j.caul, den) <= p.area.W()-jigLeft-jigRight && onPaper(j.wide+j.caul, den) <= p.area.H()-l.foot-j.above(p, den)-j.below(p)
		})
		if best.plan == 0 || l.plan < best.plan {
			best = l
		}
	}
	return best
}

// above is what the plan's dimensions take over it, or names beside a small one.
func (j jig) above(p *page, den int64) drawing.Um {
	return max(j.sizes(p, drawing.Rect{}, 1).Room(dim.Above), (jigLeast-onPaper(j.wide+j.caul, den))/2) + 2*drawing.MM
}

// below is what its dimensions take under it, and its title.
func (j jig) below(p *page) drawing.Um {
	return j.sizes(p, drawing.Rect{}, 1).Room(dim.Below) + jigEnd
}

// page draws the sheet: the plan over the view from the end, words beside that.
func (j jig) page(name, title string) *page {
	p := j.in.newPage(name, title)
	l := j.layout(p)
	p.scale = fmt.Sprintf("1:%d", l.plan)
	spare := p.area.W() - jigLeft - jigRight - onPaper(j.long+j.caul, l.plan)
	j.plan(p, l.plan, drawing.Pt(p.area.Min.X+jigLeft+spare/2, p.area.Min.Y+j.above(p, l.plan)))
	top := p.area.Max.Y - l.foot + jigApart
	j.fromEnd(p, l.end, drawing.Pt(p.area.Min.X+jigLeft, top))
	words := j.beside(p, l.end)
	words.Min.Y = top
	w := newScribe(p.sheet, words)
	for _, n := range j.notes() {
		w.note(n, 5*drawing.MM)
	}
	return p
}

// high is how high the board with all on it is.
func (j jig) high() length {
	r := j.in.Rack
	h := j.caul + r.Len("leg.thickness") + r.Len("slat.thickness")
	if j.second {
		h += r.Len("slat.thickness")
	}
	if r.Design.Joint.Glue {
		h += j.caul
	}
	return h
}

// beside is the room for words beside the view from the end.
func (j jig) beside(p *page, den int64) drawing.Rect {
	box := p.area
	box.Min.X += jigLeft + onPaper(j.wide+j.caul, den) + jigRight
	return box
}

// notes say how the jig is made and how a ladder lies in it.
func (j jig) notes() []string {
	r, f := j.in.Rack, j.in.Rack.Format
	waxed, held := "", "Slide the packers out"
	if r.Design.Joint.Glue {
		waxed, held = " Wax them, the strip and the cauls.", "When the glue holds, slide the packers out"
	}
	if j.second {
		return []string{
			fmt.Sprintf("Turn the ladder over about its length: feet to the stop again, the other leg to the fence. Packers %s thick lie crosswise under its legs, figures above from the foot to their edges: it rests on them and on the slats of its first face, level.",
				f.Unit(r.Len("slat.thickness"))),
			held + " before the ladder is lifted.",
		}
	}
	return []string{
		"Fence and stop stand on edge on the board, screwed from below, square to each other." + waxed,
		"A ladder lies as its own sheet (" + sheetRef("ladder") + ") shows it: feet to the stop, the leg that is lower there to the fence. The strip of that face is stapled to the board beside that leg, FOOT to the stop: set the slats to its lines.",
	}
}

// plan draws the jig from above with the board's left upper corner at a place.
func (j jig) plan(p *page, den int64, corner drawing.Point) {
	r, s := j.in.Rack, p.sheet
	um := func(l length) drawing.Um { return onPaper(l, den) }
	out := drawing.Box(corner.X, corner.Y, um(j.long+j.caul), um(j.wide+j.caul))
	// x from the foot, y from the fence upwards
	box := func(x0, y0, x1, y1 length) drawing.Rect {
		return drawing.Rect{Min: drawing.Pt(corner.X+um(j.caul+x0), corner.Y+um(j.wide-y1)), Max: drawing.Pt(corner.X+um(j.caul+x1), corner.Y+um(j.wide-y0))}
	}
	solid := func(c drawing.Class, b drawing.Rect) { s.Add(drawing.Rectangle(c, 0, drawing.White, b)) }
	legs := []drawing.Rect{box(0, 0, j.long, j.leg), box(0, j.wide-j.leg, j.long, j.wide)}
	high := r.Len("slat.height")
	solid(drawing.Visible, out)
	fence, stop := box(0, -j.caul, j.long, 0), box(-j.caul, 0, 0, j.wide)
	names := []jigName{{"fence", drawing.Pt(fence.Max.X, fence.Centre().Y)}, {"leg", drawing.Pt(legs[0].Max.X, legs[0].Centre().Y)}, {"leg", drawing.Pt(legs[1].Max.X, legs[1].Centre().Y)}}
	if !j.second {
		strip := box(0, j.leg, j.long, j.leg)
		strip.Min.Y = strip.Max.Y - min(um(max(j.leg, leastStrip)), legs[0].Min.Y-legs[1].Max.Y)
		solid(drawing.Thin, strip)
		names = append(names, jigName{"strip", drawing.Pt(strip.Max.X, strip.Centre().Y)})
	}
	for _, z := range j.under {
		solid(drawing.Visible, box(z, 0, z+high, j.wide))
	}
	reach := min(j.packer(), j.wide/2)
	for _, z := range j.packed {
		solid(drawing.Visible, box(z, 0, z+high, reach))
		solid(drawing.Visible, box(z, j.wide-reach, z+high, j.wide))
	}
	if n := len(j.packed); n > 0 && reach > j.leg {
		z := j.packed[n-1]
		names = append(names, jigName{"packer", box(z, j.leg, z+high, reach).Max.Sub(drawing.Pt(0, um(reach-j.leg)/2))})
	}
	for _, l := range legs {
		solid(drawing.Visible, l)
	}
	for _, z := range j.up {
		solid(drawing.Visible, box(z, 0, z+high, j.wide))
	}
	for _, z := range j.packed { // what legs and slats hide of them
		for _, b := range []drawing.Rect{box(z, 0, z+high, reach), box(z, j.wide-reach, z+high, j.wide)} {
			s.Add(drawing.Rectangle(drawing.Hidden, 0, drawing.NoFill, b))
		}
	}
	solid(drawing.Visible, fence)
	solid(drawing.Visible, stop)
	names = append(names, jigName{"board", drawing.Pt(out.Max.X, (legs[0].Min.Y+3*legs[1].Max.Y)/4)})
	nameAll(p, names, out)
	j.sizes(p, out, den).Draw(out)
	which := "a first face"
	if j.second {
		which = "the second face"
	}
	caption := fmt.Sprintf("Ladder %d in the jig, %s up, from above, scale 1:%d. Feet and stop at the left.", r.LaddersOf(j.shape)[0], which, den)
	p.caption(drawing.Pt(out.Centre().X, p.inked(0).Max.Y+drawing.MM), caption)
}

// packer is how long a packer is.
func (j jig) packer() length {
	for _, a := range assembly.Aids(j.in.Rack, j.in.Cutting.Panel()) {
		if a.Name == "packer" {
			return a.Long
		}
	}
	return 0
}

// sizes returns the dimensions of the plan: of a first face those of board, fence and
// stop; of a second one the packers' places from the foot, where they go side by side.
func (j jig) sizes(p *page, out drawing.Rect, den int64) *dim.Board {
	um := func(l length) drawing.Um { return onPaper(l, den) }
	b := dim.New(p.sheet, j.in.Rack.Format, drawing.Ratio{Num: 1, Den: den})
	along := func(l length, from drawing.Um) dim.Stop {
		return dim.Stop{At: out.Min.X + um(j.caul+l), Value: l, From: from}
	}
	if j.second {
		stops := []dim.Stop{along(0, out.Min.Y)}
		for _, z := range j.packed {
			if z > 0 {
				stops = append(stops, along(z, out.Min.Y))
			}
		}
		if n := len(stops); n > 1 && (out.W() == 0 || dim.RunningRow*drawing.Um(n) <= out.W()) {
			b.Running(dim.Above, "FOOT", stops, dim.Options{})
		}
		return b
	}
	at := func(name string, place func(length) drawing.Um, from drawing.Um) dim.Stop {
		c := coordOf(j.in.Rack, name)
		return c.stop(place(c.l), from)
	}
	x := func(l length) drawing.Um { return out.Min.X + um(j.caul+l) }
	y := func(l length) drawing.Um { return out.Max.Y - um(j.caul+l) }
	for _, side := range []struct {
		side        dim.Side
		board, zero dim.Stop
		far         dim.Stop
	}{
		{dim.LeftOf, dim.Stop{At: y(-j.caul), Value: -j.caul, From: out.Min.X}, coord{}.stop(y(0), out.Min.X), at("slat.length", y, out.Min.X)},
		{dim.Below, dim.Stop{At: x(-j.caul), Value: -j.caul, From: out.Max.Y}, coord{}.stop(x(0), out.Max.Y), at("leg.length", x, out.Max.Y)},
	} {
		b.Chain(side.side, []dim.Stop{side.board, side.zero, side.far}, dim.Options{})
		b.Overall(side.side, side.board, side.far, dim.Options{})
	}
	return b
}

// fromEnd draws the jig from the ladder's top end, where there is no stop, with
// the fence at the left, its left upper corner at a place.
func (j jig) fromEnd(p *page, den int64, corner drawing.Point) {
	r, s := j.in.Rack, p.sheet
	um := func(l length) drawing.Um { return onPaper(l, den) }
	all := j.high()
	// y from the fence to the right, z from the underside of the board
	box := func(y0, z0, y1, z1 length) drawing.Rect {
		return drawing.Rect{Min: drawing.Pt(corner.X+um(j.caul+y0), corner.Y+um(all-z1)), Max: drawing.Pt(corner.X+um(j.caul+y1), corner.Y+um(all-z0))}
	}
	solid := func(c drawing.Class, b drawing.Rect) { s.Add(drawing.Rectangle(c, 0, drawing.White, b)) }
	slat, leg := r.Len("slat.thickness"), r.Len("leg.thickness")
	z := j.caul
	board := box(-j.caul, 0, j.wide, z)
	fence := box(-j.caul, z, 0, z+slat+leg)
	solid(drawing.Visible, board)
	solid(drawing.Visible, fence)
	var names []jigName
	right := func(word string, b drawing.Rect) {
		names = append(names, jigName{word, drawing.Pt(b.Max.X, b.Centre().Y)})
	}
	right("board", board)
	if j.second {
		solid(drawing.Visible, box(0, z, j.wide, z+slat))
		reach := min(j.packer(), j.wide/2)
		if len(j.packed) > 0 {
			solid(drawing.Visible, box(0, z, reach, z+slat))
			far := box(j.wide-reach, z, j.wide, z+slat)
			solid(drawing.Visible, far)
			right("packer", far)
		}
		z += slat
	}
	for _, y := range []length{0, j.wide - j.leg} {
		solid(drawing.Visible, box(y, z, y+j.leg, z+leg))
	}
	right("leg", box(j.wide-j.leg, z, j.wide, z+leg))
	z += leg
	over := box(0, z, j.wide, z+slat)
	solid(drawing.Visible, over)
	right("slat", over)
	z += slat
	if r.Design.Joint.Glue {
		half := assembly.CaulWide(r, j.leg) / 2
		for _, mid := range []length{j.leg / 2, j.wide - j.leg/2} {
			solid(drawing.Thin, box(mid-half, z, mid+half, z+j.caul))
		}
		right("caul", box(j.wide-j.leg/2-half, z, j.wide-j.leg/2+half, z+j.caul))
	}
	out := box(-j.caul, 0, j.wide, all)
	low := nameAll(p, names, out)
	b := dim.New(s, r.Format, drawing.Ratio{Num: 1, Den: den})
	high := coordOf(r, "slat.thickness", "leg.thickness")
	b.Overall(dim.LeftOf, coord{}.stop(fence.Max.Y, out.Min.X), high.stop(fence.Min.Y, out.Min.X), dim.Options{})
	b.Draw(fence)
	p.caption(drawing.Pt(out.Centre().X, max(out.Max.Y, low+jigRow/2)), fmt.Sprintf("From its top end, fence at the left, scale 1:%d", den))
}

// A jigName is a word for what is seen at a place at the right edge of a picture.
type jigName struct {
	word string
	at   drawing.Point
}

// nameAll sets the names in a column at the right of a picture, each as near to
// its place as the others let it, with leaders that do not cross. It returns where
// the lowest stands.
func nameAll(p *page, names []jigName, out drawing.Rect) (low drawing.Um) {
	slices.SortStableFunc(names, func(a, b jigName) int { return int(a.at.Y - b.at.Y) })
	ys := make([]drawing.Um, len(names))
	for i, n := range names {
		ys[i] = n.at.Y
		if i > 0 {
			ys[i] = max(ys[i], ys[i-1]+jigRow)
		}
	}
	var by drawing.Um // half of how far the last had to give way, shared by all
	if n := len(names) - 1; n >= 0 {
		by = (ys[n] - names[n].at.Y) / 2
	}
	x := out.Max.X + jigColumn
	for i, n := range names {
		y := ys[i] - by
		g := p.sheet.Group()
		p.sheet.Add(drawing.Line(drawing.Leader, g, n.at, drawing.Pt(x, y)))
		l := drawing.Label(drawing.NoteText, g, drawing.Point{}, drawing.FigureHeight, drawing.Left, drawing.Plain(n.word))
		p.sheet.Add(l.CentredOn(drawing.Pt(x+drawing.MM+l.Width()/2, y)))
		low = y
	}
	return low
}
