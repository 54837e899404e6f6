package sheet

import (
	"fmt"

	"slatwright/geometry/fixing"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// moistureLedger says where the screws into the top go for what a meter reads.
func moistureLedger(in Input, t fixing.Top) ledger {
	r, f := in.Rack, in.Rack.Format
	l := ledger{columns: []ledgerColumn{
		{title: "the meter reads, %", width: 45 * drawing.MM, right: true, bold: true},
		{title: "from the slot's front end, " + f.System.String(), width: 60 * drawing.MM, right: true},
		{title: "in the top, from its front edge, " + f.System.String(), width: 72 * drawing.MM, right: true, bold: true}, {title: ""},
	}}
	for _, m := range t.Readings() {
		at := t.ScrewAt(r, m)
		reads := moistureText(m)
		if m == t.Today() {
			reads = "drawn: " + reads
		}
		l.rows = append(l.rows, []string{reads, f.Text(at), f.Text(slotFront(in, t) + at), ""})
	}
	return l
}

// slotFront is how far the front ends of the slots lie behind the top's front edge.
func slotFront(in Input, t fixing.Top) length {
	r := in.Rack
	slot, _ := t.SlotAt(r, t.Middles[0])
	return r.Len("overhang.front") + slot.Min.Y
}

// stripShown is how many blocks are drawn of the piece that all are cut from.
const stripShown = 2

// stripBelow is what stands over and under its picture: dimensions and the caption.
const stripBelow = 42 * drawing.MM

// stripPicture draws the piece that the blocks are bored in and cut from, from
// above, its back edge at the top: its first blocks, the saw cuts behind them and
// the beginning of the next. It returns where it ends.
func stripPicture(p *page, t fixing.Top, box drawing.Rect) drawing.Um {
	r := p.in.Rack
	s := t.Strip(r)
	blocks := s.Blocks[:min(stripShown, len(s.Blocks))]
	end := blocks[len(blocks)-1].To + s.Kerf + t.Block.X/4
	den := int64(1)
	for _, den = range shopScales(p.in) {
		if onPaper(end, den) <= box.W()-2*topSide && onPaper(t.Block.Y, den)+stripBelow <= box.H() {
			break
		}
	}
	um := func(l length) drawing.Um { return onPaper(l, den) }
	left := box.Min.X + (box.W()-um(end))/2
	at := func(along, across length) drawing.Point { // across from the back edge
		return drawing.Pt(left+um(along), box.Min.Y+3*drawing.MM+um(across))
	}
	line := func(c drawing.Class, a, b drawing.Point) { p.sheet.Add(drawing.Line(c, 0, a, b)) }
	deep := t.Block.Y
	line(drawing.Visible, at(0, 0), at(end, 0))
	line(drawing.Visible, at(0, deep), at(end, deep))
	line(drawing.Visible, at(0, 0), at(0, deep))
	over := drawing.Pt(0, drawing.MM)
	p.sheet.Add(drawing.BreakLine(0, at(end, 0).Sub(over), at(end, deep).Add(over)))
	for _, b := range blocks {
		line(drawing.Visible, at(b.To, 0), at(b.To, deep))
		line(drawing.Visible, at(b.To+s.Kerf, 0), at(b.To+s.Kerf, deep))
		for _, x := range b.Holes {
			for _, side := range []length{x - s.Pilot/2, x + s.Pilot/2} {
				line(drawing.Hidden, at(side, 0), at(side, s.Deep))
			}
			line(drawing.Hidden, at(x-s.Pilot/2, s.Deep), at(x+s.Pilot/2, s.Deep))
		}
		for _, side := range []length{b.Slot - s.Slot/2, b.Slot + s.Slot/2} {
			line(drawing.Thin, at(side, s.Across[0]), at(side, s.Across[1]))
		}
		for _, y := range s.Across {
			p.sheet.Add(drawing.Disc(drawing.Visible, 0, drawing.NoFill, at(b.Slot, y), um(s.Slot/2)))
		}
	}
	out := drawing.Rect{Min: at(0, 0), Max: at(end, deep)}
	dims := dim.New(p.sheet, r.Format, drawing.Ratio{Num: 1, Den: den})
	stop := func(l length) dim.Stop { return dim.Stop{At: at(l, 0).X, Value: l, From: out.Max.Y} }
	stops := []dim.Stop{stop(0)}
	for _, b := range blocks {
		stops = append(stops, stop(b.Holes[0]), stop(b.Slot), stop(b.Holes[1]), stop(b.To))
	}
	dims.Running(dim.Below, "START", stops, dim.Options{})
	down := func(l length) dim.Stop { return dim.Stop{At: at(0, l).Y, Value: l, From: out.Min.X} }
	dims.Chain(dim.LeftOf, []dim.Stop{down(0), down(s.Across[0]), down(s.Across[1]), down(deep)}, dim.Options{})
	before := len(p.sheet.Marks)
	dims.Draw(out)
	captionBelow(p.sheet, drawing.Pt(out.Centre().X, p.inked(before).Max.Y+drawing.MM), fmt.Sprintf("The piece for the blocks from above, its back edge at the top, broken off, 1:%d", den))
	return p.inked(before).Max.Y
}
