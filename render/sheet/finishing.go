package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/finish"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// finishing returns the finishing sheets: what stays bare for glue, then areas
// and quantities.
func finishing(in Input) []*page { return append(bareSheets(in), quantities(in)...) }

// Room for one row of parts to be taped: its title, running dimensions over the
// picture, the width at its left.
const (
	bareTitle   = 6 * drawing.MM // what follows it hangs on its lines
	bareLeft    = 34 * drawing.MM
	bareSides   = 12 * drawing.MM // more at the right of a top, for words at its edges
	bareRight   = 10 * drawing.MM
	bareHigh    = 32 * drawing.MM // of the picture, as a rule
	bareAlone   = 92 * drawing.MM // of a wide board by itself
	bareNear    = 10 * drawing.MM // figures nearer than this are hard to tell apart
	bareFew     = 2               // parts that a row shows at least, where there are as many
	bareMost    = 6               // and at most
	bareBetween = 3 * drawing.MM  // from one row to the next at the least
	bareApart   = 9 * drawing.MM  // more, where there is room
	bareLeast   = 10 * drawing.MM // of the picture, so that figures of a narrow part keep apart
	bareSpread  = 20 * drawing.MM // how far figures may spread beyond the picture, both sides together
	tapeOver    = 2 * drawing.MM  // how far tape reaches over the outer parts
)

// room is the free area of a sheet of the design's paper.
func (in Input) room() drawing.Rect { return in.newPage("", "").area }

// bareSheets draw each row of parts with its strips of tape, to scale.
func bareSheets(in Input) []*page {
	var groups [][]bareBlock
	blank := in.newPage("", "")
	for _, row := range finish.Rows(in.Rack) {
		b := newBareBlock(in, row)
		n := len(groups)
		if n > 0 {
			if g := fewer(blank, append(slices.Clone(groups[n-1]), b)); g != nil {
				groups[n-1] = g
				continue
			}
		}
		groups = append(groups, []bareBlock{b})
	}
	var pages []*page
	for i, g := range groups {
		p := in.newPage(fmt.Sprintf("bare-%d", i+1), "")
		var list []int
		for _, b := range g {
			list = append(list, b.row.Part)
		}
		p.tell("Bare for glue: part", list)
		box, apart := p.area, drawing.Um(0)
		if n := drawing.Um(len(g) - 1); n > 0 {
			apart = min((p.area.H()-piled(p, g))/n, bareApart)
		}
		for _, b := range g {
			box.Max.Y = box.Min.Y + b.height(p)
			b.draw(p, box)
			box.Min.Y = box.Max.Y + bareBetween + apart
		}
		pages = append(pages, p)
	}
	return pages
}

// fewer returns the blocks with as many of each row's parts drawn as let them go
// on one sheet; nil where they do not even with the fewest.
func fewer(p *page, blocks []bareBlock) []bareBlock {
	for {
		most := -1 // shows most of those that can show fewer
		for i, b := range blocks {
			if b.shown > bareFew && (most < 0 || b.drawn() > blocks[most].drawn()) {
				most = i
			}
		}
		switch {
		case piled(p, blocks) <= p.area.H():
			return blocks
		case most < 0:
			return nil
		}
		blocks[most].shown--
	}
}

// piled is what the blocks take one below the other, nearest together.
func piled(p *page, blocks []bareBlock) drawing.Um {
	high := bareBetween * drawing.Um(len(blocks)-1)
	for _, b := range blocks {
		high += b.height(p)
	}
	return high
}

// A bareBlock draws one row of parts side by side, grain from left to right.
type bareBlock struct {
	in    Input
	row   finish.Row
	shown int   // parts drawn
	den   int64 // scale 1 : den
}

// newBareBlock picks the largest scale at which the row's length fits, and as
// many parts as the usual height takes.
func newBareBlock(in Input, row finish.Row) bareBlock {
	b := bareBlock{in: in, row: row}
	room := in.room().W() - bareLeft - bareRight
	if b.top() {
		room -= bareSides
	}
	high, most := drawing.Um(bareHigh), drawing.Um(2*bareHigh)
	if row.Count == 1 {
		high, most = bareAlone, bareAlone
	}
	for _, den := range shopScales(in) {
		b.den = den
		if b.um(row.Length) <= room && b.um(row.Across)*drawing.Um(min(row.Count, bareFew)) <= high {
			break
		}
	}
	for b.um(row.Length) > room || b.um(row.Across) > most {
		b.den = nextScale(in, b.den)
	}
	b.shown = max(1, min(row.Count, bareMost, int(bareHigh/max(b.um(row.Across), 1))))
	return b
}

// um returns a length on paper.
func (b bareBlock) um(l length) drawing.Um {
	return onPaper(l, b.den)
}

// height returns the room the block takes.
func (b bareBlock) height(p *page) drawing.Um {
	if b.edgeToEnd() {
		return b.head(p)
	}
	d := b.board(p, drawing.Rect{})
	return b.head(p) + d.Room(dim.Above) + max(b.drawn(), bareLeast) + max(tapeOver, d.Room(dim.Below))
}

// drawn is what the parts drawn take across the grain.
func (b bareBlock) drawn() drawing.Um { return b.um(b.row.Across) * drawing.Um(b.shown) }

// head is what the title and the line under it take.
func (b bareBlock) head(p *page) drawing.Um {
	return bareTitle + needed([]string{b.says()}, p.area.W(), 0)
}

// draw draws the block at the top of the box.
func (b bareBlock) draw(p *page, box drawing.Rect) {
	w := newScribe(p.sheet, box)
	w.line(drawing.HeadingText, drawing.FigureHeight, 0, true, drawing.Figure(b.title()))
	w.note(b.says(), 0) // as head reckons it
	if b.edgeToEnd() {
		return
	}
	out := drawing.Box(box.Min.X+bareLeft, box.Min.Y+b.head(p), b.um(b.row.Length), b.drawn())
	down := drawing.Pt(0, b.board(p, out).Room(dim.Above))
	out.Min, out.Max = out.Min.Add(down), out.Max.Add(down)
	b.strips(p.sheet, out)
	for i := range b.shown {
		at := out.Min.Y + b.um(b.row.Across)*drawing.Um(i)
		p.sheet.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, drawing.Box(out.Min.X, at, out.W(), b.um(b.row.Across))))
	}
	b.board(p, out).Draw(out)
	b.sides(p, out)
}

// top reports whether this is the top, whose ends and edges say nothing by
// themselves.
func (b bareBlock) top() bool { return b.in.Rack.Parts[b.row.Part].Name == "top" }

// sides letters which edges of a top are its front and its back, where there is room
// for both.
func (b bareBlock) sides(p *page, out drawing.Rect) {
	if !b.top() || out.H() < 3*drawing.FigureHeight {
		return
	}
	note(p, "FRONT", drawing.Pt(out.Max.X+3*drawing.MM, out.Min.Y+drawing.FigureHeight))
	note(p, "BACK", drawing.Pt(out.Max.X+3*drawing.MM, out.Max.Y))
}

// edgeToEnd reports whether the whole face stays bare, which needs no picture.
func (b bareBlock) edgeToEnd() bool {
	s := b.row.Strips
	return len(s) == 1 && b.row.Whole() && s[0].From == 0 && s[0].To == b.row.Length
}

// stripWidth returns how wide strips are, and whether all are alike.
func (b bareBlock) stripWidth() (wide length, same bool) {
	wide = b.row.Strips[0].To - b.row.Strips[0].From
	return wide, !slices.ContainsFunc(b.row.Strips, func(s finish.Strip) bool { return s.To-s.From != wide })
}

// strips hatches the tape, over the outer parts a little where it goes from
// edge to edge.
func (b bareBlock) strips(s *drawing.Sheet, out drawing.Rect) {
	for _, t := range b.row.Strips {
		x, wide := out.Min.X+b.um(t.From), b.um(t.To)-b.um(t.From)
		patches := []drawing.Rect{drawing.Box(x, out.Min.Y-tapeOver, wide, out.H()+2*tapeOver)}
		if t.Low != 0 || t.High != b.row.Across {
			patches = nil
			for i := range b.shown {
				y := out.Min.Y + b.um(b.row.Across)*drawing.Um(i)
				patches = append(patches, drawing.Box(x, y+b.um(t.Low), wide, b.um(t.High)-b.um(t.Low)))
			}
		}
		for _, r := range patches {
			s.Add(drawing.Hatching{Pitch: 3 * drawing.MM / 2}.Hatch(0, r)...)
			s.Add(drawing.Rectangle(drawing.Thin, 0, drawing.NoFill, r))
		}
	}
}

// board returns the dimensions of the block: running ones to the strips from
// the marked end, the width of a part at the left.
func (b bareBlock) board(p *page, out drawing.Rect) *dim.Board {
	d := dim.New(p.sheet, b.in.Rack.Format, drawing.Ratio{Num: 1, Den: b.den})
	above, below, _ := b.running()
	run := func(side dim.Side, places []length, from drawing.Um) {
		if len(places) == 0 {
			return
		}
		stops := []dim.Stop{{At: out.Min.X, From: from}}
		for _, l := range places {
			stops = append(stops, dim.Stop{At: out.Min.X + b.um(l), Value: l, From: from})
		}
		d.Running(side, b.row.From, stops, dim.Options{})
	}
	run(dim.Above, above, out.Min.Y-tapeOver)
	run(dim.Below, below, out.Max.Y+tapeOver)
	across := func(l length) dim.Stop { return dim.Stop{At: out.Min.Y + b.um(l), Value: l, From: out.Min.X} }
	var edges []dim.Stop
	for _, l := range b.edges() {
		edges = append(edges, across(l))
	}
	d.Chain(dim.LeftOf, edges, dim.Options{})
	return d
}

// running are the places that the figures over and under the picture show: the
// ends of all strips and of the part. Where these would not go side by side it
// is the beginnings alone, since the block says how wide strips are; where
// these would not either, every other one stands below. Where even that is too
// many, some are left out, and the block says so.
func (b bareBlock) running() (above, below []length, thinned bool) {
	fits := func(n int, over drawing.Um) bool { return drawing.Um(n+1)*dim.RunningRow <= b.um(b.row.Length)+over }
	list := b.places(true)
	_, same := b.stripWidth()
	if fits(len(list), 0) && !(same && len(b.row.Strips) > 1 && b.near(list)) {
		return list, nil, false
	}
	if same {
		list = b.places(false)
	}
	if fits(len(list), bareSpread) {
		if n := len(list) - 1; n > 0 && b.near(list[n-1:]) {
			return list[:n], list[n:], false
		}
		return list, nil, false
	}
	every := 1
	for !fits((len(list)/every+3)/2, bareSpread) {
		every++
	}
	for i, l := range list {
		switch {
		case i%every != 0 && i != len(list)-1:
			thinned = true
		case i/every%2 == 0:
			above = append(above, l)
		default:
			below = append(below, l)
		}
	}
	return above, below, thinned
}

// near reports whether any two neighbouring places are near each other on paper.
func (b bareBlock) near(list []length) bool {
	for i := 1; i < len(list); i++ {
		if b.um(list[i])-b.um(list[i-1]) < bareNear {
			return true
		}
	}
	return false
}

// places are the beginnings of all strips, their ends too where ends is set, and
// the part's length, ascending from above zero.
func (b bareBlock) places(ends bool) []length {
	var all []length
	add := func(l length) {
		if l > 0 && (len(all) == 0 || l > all[len(all)-1]) {
			all = append(all, l)
		}
	}
	for _, s := range b.row.Strips {
		add(s.From)
		if ends {
			add(s.To)
		}
	}
	add(b.row.Length)
	return all
}

// edges are the places across one part that its strips reach, its own edges
// among them.
func (b bareBlock) edges() []length {
	s := b.row.Strips[0]
	out := []length{0}
	for _, l := range []length{s.Low, s.High, b.row.Across} {
		if l > out[len(out)-1] {
			out = append(out, l)
		}
	}
	return out
}
