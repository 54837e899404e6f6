package sheet

import (
	"fmt"

	"slatwright/geometry/assembly"
	"slatwright/geometry/fixing"
	"slatwright/geometry/space"
	"slatwright/geometry/wood"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/word"
)

// Room on the sheets that show how the top is fitted.
const (
	topSide  = 26 * drawing.MM // for dimensions beside a picture
	topLine  = 6 * drawing.MM  // for a line of its caption over it
	topDims  = 24 * drawing.MM // for dimensions over the block
	topBelow = 40 * drawing.MM // and under the section
	topUnder = 30 * drawing.MM // and under the block
	topApart = 8 * drawing.MM  // between pictures
)

// topSheets return the sheets that show how the top is held behind: a block in
// section and from above with its screws, then the places of all blocks and how
// they are made. A top that is glued all round needs none, nor does a rack
// without a top.
func topSheets(in Input) []*page {
	t, ok := fixing.Of(in.Rack)
	if !ok || t.Glued {
		return nil
	}
	f := flow{in: in, name: "top", title: "Fitting the top"}
	turn := func(about string) {
		f.turn()
		f.pages[len(f.pages)-1].about = []string{about}
	}
	turn(assembly.Screws)
	fit := fitNotes(in, t)
	box := f.w.box
	box.Max.Y -= needed(fit, box.W(), 5*drawing.MM) + drawing.MM
	newDetail(in, t, box).draw(f.pages[0], box)
	f.w.y = box.Max.Y
	f.notes(fit...)
	turn(assembly.Places)
	f.w.y = topPlan(f.pages[len(f.pages)-1], t, f.w.box) + 6*drawing.MM
	f.notes(placeNotes(in, t)...)
	f.block("where the screws go into the top, by the wood's moisture", moistureLedger(in, t))
	turn(assembly.Blocks)
	f.w.heading(fmt.Sprintf("Making the %s %s", word.Count(len(t.Middles), "block"), assembly.BlockMark(in.Rack)))
	list, box := makeNotes(in, t), f.w.rest()
	box.Max.Y -= needed(list, box.W(), 5*drawing.MM) + 4*drawing.MM
	f.w.y = stripPicture(f.pages[len(f.pages)-1], t, box) + 3*drawing.MM
	f.notes(list...)
	return f.pages
}

// fitNotes say how the top is fixed.
func fitNotes(in Input, t fixing.Top) []string {
	r, f := in.Rack, in.Rack.Format
	bits, washer := fixing.BitsOf(r), fixing.WasherOf(r)
	nails := "no nails"
	if t.Nails > 0 {
		nails = fmt.Sprintf("%d nails from above", t.Nails)
	}
	return []string{
		fmt.Sprintf("In front: glue along the front upper apron, %s. Behind: no glue, no nails; the blocks' slots let the top swell and shrink.", nails),
		screwNote(in, t),
		fmt.Sprintf("Block to top: a screw %s with round head and a washer %s thick up through the slot: %s of it goes into the top, bored %s wide and no deeper. Draw it so that it still slides.",
			assembly.ScrewText(r, t.Up), f.Unit(washer.Thick), f.Unit(t.Up.Into), f.Unit(bits.Pilot)),
	}
}

// screwNote says where in its slot a screw stands now, and where it is told for
// other moistures.
func screwNote(in Input, t fixing.Top) string {
	a := wood.AirOf(in.Rack.Design.Wood)
	today := "reckoned: measure it"
	if a.Measured {
		today = "as measured"
	}
	return fmt.Sprintf("Cross: the screw in its slot, %s from the slot's front end with the wood at %s %% moisture (%s); where a meter reads otherwise, the table on %s has its place. It goes back as the wood swells, to the front as it dries; the slot has room for both.",
		in.Rack.Format.Unit(t.Place), moistureText(a.Today), today, partRef("top", assembly.Places))
}

// makeNotes say where blocks stand, how they are made and how they are fixed.
func makeNotes(in Input, t fixing.Top) []string {
	r, f := in.Rack, in.Rack.Format
	mark, bits := assembly.BlockMark(r), fixing.BitsOf(r)
	from := ""
	for _, a := range aidsFound(in) {
		if a.By == assembly.StepBlocks {
			from = ": " + a.source() + " (" + sheetRef("hardware") + ")"
		}
	}
	s := t.Strip(r)
	return []string{
		fmt.Sprintf("Block %s: %s high × %s deep × %s along the rack and the grain. All from one piece, %s long at the least with what is held at the last cut%s.", mark, f.Text(t.Block.Z), f.Text(t.Block.Y), f.Unit(t.Block.X), f.Unit(roundly(in, s.Long)), from),
		fmt.Sprintf("Bore all while it is long. Slots: two holes %s wide through the height, middles as drawn, cleared between with a chisel. Back edge, at half its height: holes for the apron's screws, %s wide, the stop at %s.",
			f.Unit(s.Slot), f.Unit(s.Pilot), f.Unit(s.Deep)),
		fmt.Sprintf("Then cut block after block off from START on, %s of saw cut between, each %s further on; the piece clamped or on a sled: no short piece is held by hand at a blade or a bit.",
			f.Unit(s.Kerf), f.Unit(t.Block.X+s.Kerf)),
		fmt.Sprintf("Block to apron: %d countersunk screws %s from behind, %s under the apron's top edge; bore the apron %s, countersink it.",
			fixing.PerBlock, assembly.ScrewText(r, t.Through), f.Unit(t.Block.Z/2), f.Unit(bits.Clear)),
	}
}

// placeNotes say where blocks stand along the rack.
func placeNotes(in Input, t fixing.Top) []string {
	r, f := in.Rack, in.Rack.Format
	out := []string{"LEFT is the left end of the apron, seen from the front. The top ends flush with it: the same figures hold from the top's left end."}
	if side := r.Len("overhang.side"); side > 0 {
		out[0] = fmt.Sprintf("LEFT is the left end of the apron, seen from the front. The top's left end lies %s further left: from there every figure is %s more.", f.Unit(side), f.Unit(side))
	}
	if n := len(t.Middles); n > 1 && n < len(r.Columns) {
		out = append(out, fmt.Sprintf("%d blocks serve %d columns: none is further from the next than a clamp may be, and they lie alike from both ends.", n, len(r.Columns)))
	} else if n > 1 {
		out = append(out, "A block in every column: fewer would lie lopsided or too far apart.")
	}
	return out
}

// A topDetail is a block in section and the same block from above, at one scale.
type topDetail struct {
	in     Input
	t      fixing.Top
	den    int64
	before length // of the top, drawn in front of the block
	high   length // of the apron, as far as it is drawn
}

// newDetail picks full size, or the next scale at which both pictures have room
// in the box.
func newDetail(in Input, t fixing.Top, box drawing.Rect) topDetail {
	r := in.Rack
	d := topDetail{in: in, t: t, before: t.Block.Y / 3, high: min(r.Len("apron.height"), t.Block.Z*3/2)}
	for _, d.den = range shopScales(in) {
		wide := 4*topSide + topApart + d.um(d.wide()) + d.um(t.Block.X)
		tall := max(d.um(r.Len("top.thickness")+d.high)+topBelow, topDims+d.um(t.Block.Y)+topUnder) + d.caption()
		if wide <= box.W() && tall <= box.H() {
			break
		}
	}
	return d
}

// um returns a length on paper.
func (d topDetail) um(l length) drawing.Um { return onPaper(l, d.den) }

// wide is the section from front to back.
func (d topDetail) wide() length {
	r := d.in.Rack
	return d.before + d.t.Block.Y + r.Len("apron.thickness") + max(0, r.Len("overhang.back"))
}

// captions are the pictures' titles, broken into lines as wide as the pictures
// with their dimensions.
func (d topDetail) captions() (section, block []string) {
	broken := func(text string, l length) []string {
		return breakLines(fmt.Sprintf("%s, 1:%d", text, d.den), 2*topSide+d.um(l), drawing.FigureHeight)
	}
	return broken("Cut through a block's middle, front at the left", d.wide()),
		broken(fmt.Sprintf("Block %s from above, its back at the top", assembly.BlockMark(d.in.Rack)), d.t.Block.X)
}

// caption is the room for them.
func (d topDetail) caption() drawing.Um {
	section, block := d.captions()
	return topLine*drawing.Um(max(len(section), len(block))) + 2*drawing.MM
}

// draw draws both pictures side by side, in the middle of the box, under their
// titles.
func (d topDetail) draw(p *page, box drawing.Rect) {
	left := 2*topSide + d.um(d.wide())
	right := 2*topSide + d.um(d.t.Block.X)
	from := box.Min.X + max(0, (box.W()-left-topApart-right)/2)
	y := box.Min.Y + d.caption()
	d.section(p, drawing.Pt(from+topSide, y))
	d.above(p, drawing.Pt(from+left+topApart+topSide, y+topDims))
	section, block := d.captions()
	for _, c := range []struct {
		middle drawing.Um
		lines  []string
	}{{from + left/2, section}, {from + left + topApart + right/2, block}} {
		for i, text := range c.lines {
			captionBelow(p.sheet, drawing.Pt(c.middle, box.Min.Y+topLine*drawing.Um(i)-2*drawing.MM), text)
		}
	}
}

// section draws the back upper corner cut through the middle of a block, seen
// from the left, front at the left, with the top's upper front corner at a place.
func (d topDetail) section(p *page, corner drawing.Point) {
	r, t := d.in.Rack, d.t
	thick, apron, deep := r.Len("top.thickness"), r.Len("apron.thickness"), t.Block.Y
	slot := (deep - t.Slot) / 2
	at := func(y, z length) drawing.Point { // y from the block's front, z down from the apron's top edge
		return drawing.Pt(corner.X+d.um(d.before+y), corner.Y+d.um(thick+z))
	}
	between := func(y0, z0, y1, z1 length) drawing.Rect { return drawing.Rect{Min: at(y0, z0), Max: at(y1, z1)} }
	s := p.sheet
	cut := func(b drawing.Rect, h drawing.Hatching) {
		s.Add(h.Hatch(0, b)...)
		s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, b))
	}
	top := between(-d.before, -thick, deep+apron+r.Len("overhang.back"), 0)
	board, upright := drawing.Hatching{Pitch: 3 * drawing.MM}, drawing.Hatching{Pitch: 2 * drawing.MM, Falling: true}
	block := drawing.Hatching{Pitch: 14 * drawing.MM / 10}
	cut(top, board)
	cut(between(deep, 0, deep+apron, d.high), upright)
	cut(between(0, 0, slot, t.Block.Z), block)
	cut(between(slot+t.Slot, 0, deep, t.Block.Z), block)
	s.Add(drawing.Line(drawing.Visible, 0, at(slot, t.Block.Z), at(slot+t.Slot, t.Block.Z)))
	if d.high < r.Len("apron.height") { // the apron goes on below
		foot := between(deep, d.high, deep+apron, d.high)
		s.Add(drawing.Rectangle(drawing.Solid, 0, drawing.White, drawing.Box(foot.Min.X, foot.Min.Y-drawing.MM/2, foot.W(), drawing.MM)))
		s.Add(drawing.BreakLine(0, drawing.Pt(foot.Min.X-drawing.MM, foot.Min.Y), drawing.Pt(foot.Max.X+drawing.MM, foot.Min.Y)))
	}
	head := d.screws(p, at)
	b := dim.New(s, r.Format, drawing.Ratio{Num: 1, Den: d.den})
	across := func(y length) dim.Stop {
		return dim.Stop{At: at(y, 0).X, Value: y, From: at(0, t.Block.Z).Y + head}
	}
	b.Chain(dim.Below, []dim.Stop{across(slot), across(slot + t.Place)}, dim.Options{})
	b.Chain(dim.Below, []dim.Stop{across(0), across(slot), across(slot + t.Slot), across(deep)}, dim.Options{})
	b.Overall(dim.Below, across(0), across(deep), dim.Options{})
	down := func(z length, x drawing.Um) dim.Stop { return dim.Stop{At: at(0, z).Y, Value: z, From: x} }
	b.Chain(dim.LeftOf, []dim.Stop{down(-t.Up.Into, top.Min.X), down(0, top.Min.X), down(t.Block.Z, at(0, 0).X)}, dim.Options{})
	b.Chain(dim.RightOf, []dim.Stop{down(0, top.Max.X), down(t.Block.Z/2, at(deep+apron, 0).X)}, dim.Options{})
	b.Draw(drawing.Rect{Min: top.Min, Max: drawing.Pt(max(top.Max.X, at(deep+apron, 0).X), at(deep, d.high).Y)}) // figures under the apron, not on it
}

// screws draws the screw in the slot with its washer and, behind the cut, one
// through the apron. It returns how far the head stands out below, on paper.
func (d topDetail) screws(p *page, at func(y, z length) drawing.Point) drawing.Um {
	r, t, s := d.in.Rack, d.t, p.sheet
	washer := fixing.WasherOf(r)
	half, middle := t.SlotWide*2/5, (t.Block.Y-t.Slot)/2+t.Place
	bits := fixing.BitsOf(r)
	box := func(y, reach, z0, z1 length) drawing.Rect {
		return drawing.Rect{Min: at(y-reach, z0), Max: at(y+reach, z1)}
	}
	low := t.Block.Z + washer.Thick
	s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.White, box(middle, half, -t.Up.Into, t.Block.Z)))
	s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.White, box(middle, washer.Wide/2, t.Block.Z, low)))
	head, radius := at(middle, low), d.um(washer.Wide*3/8) // round
	s.Add(drawing.Arc(drawing.Visible, 0, head, radius, 180, 180), drawing.Line(drawing.Visible, 0, head.Sub(drawing.Pt(radius, 0)), head.Add(drawing.Pt(radius, 0))))
	below := low + max(washer.Wide*3/8, half*2) + half
	s.Add(drawing.Line(drawing.Centre, 0, at(middle, -t.Up.Into-half*2), at(middle, below)))
	// The bores for the screws through the apron stand before and behind the cut.
	face, mid := t.Block.Y, t.Block.Z/2
	tip := face - t.Through.Into
	for _, side := range []length{-1, 1} {
		pilot, clear := mid+side*bits.Pilot/2, mid+side*bits.Clear/2
		s.Add(drawing.Line(drawing.Hidden, 0, at(tip, pilot), at(face, pilot)), drawing.Line(drawing.Hidden, 0, at(face, clear), at(face+r.Len("apron.thickness"), clear)))
	}
	s.Add(drawing.Line(drawing.Hidden, 0, at(tip, mid-bits.Pilot/2), at(tip, mid+bits.Pilot/2)))
	return d.um(below - t.Block.Z)
}

// above draws the block from above, its back edge at the top of the picture, with
// its left back corner at a place.
func (d topDetail) above(p *page, corner drawing.Point) {
	t, s := d.t, p.sheet
	at := func(x, y length) drawing.Point { return drawing.Pt(corner.X+d.um(x), corner.Y+d.um(y)) } // y from the back
	long, deep := t.Block.X, t.Block.Y
	out := drawing.Rect{Min: corner, Max: at(long, deep)}
	s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.White, out))
	slot := drawing.Rect{Min: at((long-t.SlotWide)/2, (deep-t.Slot)/2), Max: at((long+t.SlotWide)/2, (deep+t.Slot)/2)}
	s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, slot))
	half := fixing.BitsOf(d.in.Rack).Pilot / 2
	for _, x := range []length{long / 4, long - long/4} {
		for _, side := range []length{x - half, x + half} {
			s.Add(drawing.Line(drawing.Hidden, 0, at(side, 0), at(side, t.Through.Into)))
		}
		s.Add(drawing.Line(drawing.Hidden, 0, at(x-half, t.Through.Into), at(x+half, t.Through.Into)))
		s.Add(drawing.Line(drawing.Centre, 0, at(x, -half), at(x, t.Through.Into+half*2)))
	}
	b := dim.New(s, d.in.Rack.Format, drawing.Ratio{Num: 1, Den: d.den})
	across := func(x length, from drawing.Um) dim.Stop {
		return dim.Stop{At: at(x, 0).X, Value: x, From: from}
	}
	b.Chain(dim.Above, []dim.Stop{across(0, out.Min.Y), across(long/4, out.Min.Y), across(long-long/4, out.Min.Y), across(long, out.Min.Y)}, dim.Options{})
	b.Chain(dim.Below, []dim.Stop{across((long-t.SlotWide)/2, slot.Max.Y), across((long+t.SlotWide)/2, slot.Max.Y)}, dim.Options{})
	b.Overall(dim.Below, across(0, out.Max.Y), across(long, out.Max.Y), dim.Options{})
	down := func(y length, x drawing.Um) dim.Stop { return dim.Stop{At: at(0, y).Y, Value: y, From: x} }
	wall := (deep - t.Slot) / 2
	screw := wall + t.Slot - t.Place
	s.Add(drawing.Cross(drawing.Thin, 0, at(long/2, screw), d.um(t.SlotWide/2))...)
	// Where the screw stands is told in the section: here its figure would lie among the bores'.
	b.Chain(dim.RightOf, []dim.Stop{down(0, out.Max.X), down(t.Through.Into, at(long-long/4, 0).X+d.um(half))}, dim.Options{})
	b.Chain(dim.LeftOf, []dim.Stop{down(0, out.Min.X), down(wall, slot.Min.X), down(wall+t.Slot, slot.Min.X), down(deep, out.Min.X)}, dim.Options{})
	b.Draw(out)
}

// topPlan draws the back upper apron with its blocks from above, the rack's left
// end at the left, with running dimensions to the blocks' middles. It returns
// where it ends.
func topPlan(p *page, t fixing.Top, box drawing.Rect) drawing.Um {
	r := p.in.Rack
	long, apron := r.Len("carcase.width"), r.Len("apron.thickness")
	den := int64(1)
	for _, den = range shopScales(p.in) {
		if onPaper(long, den) <= box.W()-2*topSide {
			break
		}
	}
	for onPaper(long, den) > box.W()-2*topSide {
		den += 50
	}
	um := func(l length) drawing.Um { return onPaper(l, den) }
	corner := drawing.Pt(box.Min.X+(box.W()-um(long))/2, box.Min.Y)
	stops := func(out drawing.Rect) []dim.Stop {
		list := []dim.Stop{{At: out.Min.X, From: out.Min.Y}}
		shown := max(1, int(out.W()/dim.RunningRow)-2)
		for i, x := range t.Middles {
			if i < shown || i == len(t.Middles)-1 {
				list = append(list, dim.Stop{At: out.Min.X + um(x), Value: x, From: out.Min.Y})
			}
		}
		return list
	}
	board := func(out drawing.Rect) *dim.Board {
		b := dim.New(p.sheet, r.Format, drawing.Ratio{Num: 1, Den: den})
		b.Running(dim.Above, "LEFT", stops(out), dim.Options{})
		return b
	}
	out := drawing.Rect{Min: corner, Max: corner.Add(drawing.Pt(um(long), um(apron+t.Block.Y)))}
	down := drawing.Pt(0, board(out).Room(dim.Above)+5*drawing.MM)
	out.Min, out.Max = out.Min.Add(down), out.Max.Add(down)
	at := func(q space.Point) drawing.Point { return drawing.Pt(out.Min.X+um(q.X), out.Min.Y+um(q.Y)) } // y from the apron's back face
	draw := func(c drawing.Class, x0, y0, x1, y1 length) {
		p.sheet.Add(drawing.Rectangle(c, 0, drawing.NoFill, drawing.Rect{Min: at(space.Point{X: x0, Y: y0}), Max: at(space.Point{X: x1, Y: y1})}))
	}
	draw(drawing.Visible, 0, 0, long, apron)
	for _, x := range t.Middles {
		half := t.Block.X / 2
		draw(drawing.Visible, x-half, apron, x+half, apron+t.Block.Y)
		from := apron + (t.Block.Y-t.Slot)/2 // as the slot lies in the block's middle
		draw(drawing.Thin, x-t.SlotWide/2, from, x+t.SlotWide/2, from+t.Slot)
	}
	board(out).Draw(out)
	caption := fmt.Sprintf("Back upper apron with its blocks from above, the top off; its back edge is at the top of the picture, 1:%d", den)
	p.caption(drawing.Pt(out.Centre().X, out.Max.Y+2*drawing.MM), caption)
	return p.inked(0).Max.Y
}
