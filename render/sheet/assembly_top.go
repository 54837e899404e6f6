package sheet

import (
	"fmt"

	"slatwright/geometry/assembly"
	"slatwright/geometry/fixing"
	"slatwright/geometry/space"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// Room on the sheet that shows how the top is fitted.
const (
	topLeft  = 40 * drawing.MM // for dimensions beside a picture
	topAbove = 16 * drawing.MM // and over it
	topBelow = 24 * drawing.MM // and under it, with its caption
	topWide  = 95 * drawing.MM // of the section, its dimensions included
)

// topSheets return the sheet that shows how the top is held behind: a block in
// section, and the places of all blocks. A top that is glued all round needs
// none, nor does a rack without a top.
func topSheets(in Input) []*page {
	t, ok := fixing.Of(in.Rack)
	if !ok || t.Glued {
		return nil
	}
	p := in.newPage("top", "Fitting the top")
	notes := topNotes(in, t)
	box := p.area
	box.Min.Y = box.Max.Y - needed(notes, box.W(), 5*drawing.MM)
	w := newScribe(p.sheet, box)
	for _, n := range notes {
		w.note(n, 5*drawing.MM)
	}
	left, right := p.area, p.area
	left.Max.Y, right.Max.Y = box.Min.Y, box.Min.Y
	left.Max.X = left.Min.X + topWide
	right.Min.X = left.Max.X + 8*drawing.MM
	topSection(p, t, left)
	topPlan(p, t, right)
	return []*page{p}
}

// topNotes say what the pictures don't.
func topNotes(in Input, t fixing.Top) []string {
	f := in.Rack.Format
	nails := "no nails"
	if t.Nails > 0 {
		nails = fmt.Sprintf("%d nails from above", t.Nails)
	}
	return []string{
		fmt.Sprintf("In front: glue along the front upper apron, %s. Behind: no glue, no nails; %d blocks with a slot each, so that the top can swell and shrink.", nails, len(t.Middles)),
		fmt.Sprintf("Block: %s high, %s deep, %s along the rack, grain along the rack, from waste. Slot through its height, in the middle: %s from front to back, %s wide.",
			f.Text(t.Block.Z), f.Text(t.Block.Y), f.Unit(t.Block.X), f.Text(t.Slot), f.Unit(t.SlotWide)),
		fmt.Sprintf("Fix each block to the inner face of the back upper apron, flush with its top edge, with %d countersunk screws %s from behind, a quarter of its length from either end.",
			fixing.PerBlock, assembly.ScrewText(in.Rack, t.Through)),
		fmt.Sprintf("Then one screw %s with round head and washer up through each slot, its middle %s from the slot's front end, %s into the top: bore the top no deeper. Draw it so that it still slides.",
			assembly.ScrewText(in.Rack, t.Up), f.Unit(t.Place), f.Unit(t.Up.Into)),
	}
}

// topSection draws the back upper corner cut through a block, seen from the
// left, front at the left, at full size or the next scale that has room.
func topSection(p *page, t fixing.Top, box drawing.Rect) {
	r := p.in.Rack
	apron, high := r.Len("apron.thickness"), r.Len("apron.height")
	before := t.Block.Y / 2 // of the top, drawn before the block
	wide := before + t.Block.Y + apron + max(0, r.Len("overhang.back"))
	tall := r.Len("top.thickness") + high
	den := largestScale(p.in, func(den int64) bool {
		return onPaper(wide, den) <= box.W()-topLeft && onPaper(tall, den) <= box.H()-topAbove-topBelow
	})
	um := func(l length) drawing.Um { return onPaper(l, den) }
	at := func(y, z length) drawing.Point { // y from the block's front, z down from the apron's top edge
		return drawing.Pt(box.Min.X+topLeft/2+um(before+y), box.Min.Y+topAbove+um(r.Len("top.thickness")+z))
	}
	between := func(y0, z0, y1, z1 length) drawing.Rect { return drawing.Rect{Min: at(y0, z0), Max: at(y1, z1)} }
	deep, slot := t.Block.Y, (t.Block.Y-t.Slot)/2
	cut := func(b drawing.Rect) {
		p.sheet.Add(drawing.Hatching{Pitch: 2 * drawing.MM}.Hatch(0, b)...)
		p.sheet.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, b))
	}
	top := between(-before, -r.Len("top.thickness"), deep+apron+r.Len("overhang.back"), 0)
	cut(top)
	cut(between(deep, 0, deep+apron, high))
	cut(between(0, 0, slot, t.Block.Z))
	cut(between(slot+t.Slot, 0, deep, t.Block.Z))
	p.sheet.Add(drawing.Line(drawing.Visible, 0, at(slot, t.Block.Z), at(slot+t.Slot, t.Block.Z)))
	half, middle := t.SlotWide*2/5, slot+t.Place
	screw := between(middle-half, -t.Up.Into, middle+half, t.Block.Z)
	p.sheet.Add(drawing.Rectangle(drawing.Visible, 0, drawing.White, screw))
	head := between(middle-2*half, t.Block.Z, middle+2*half, t.Block.Z+half)
	p.sheet.Add(drawing.Rectangle(drawing.Visible, 0, drawing.White, head))

	b := dim.New(p.sheet, r.Format, drawing.Ratio{Num: 1, Den: den})
	across := func(y length) dim.Stop {
		return dim.Stop{At: at(y, 0).X, Value: y, From: at(0, t.Block.Z).Y + um(half)}
	}
	b.Chain(dim.Below, []dim.Stop{across(0), across(slot), across(slot + t.Slot), across(deep)}, dim.Options{})
	b.Overall(dim.Below, across(slot), across(middle), dim.Options{})
	down := func(z length) dim.Stop { return dim.Stop{At: at(0, z).Y, Value: z, From: at(0, 0).X} }
	b.Chain(dim.LeftOf, []dim.Stop{down(0), down(t.Block.Z)}, dim.Options{})
	b.Draw(drawing.Rect{Min: top.Min, Max: at(deep, high)}) // figures under the apron, not on it
	newScribe(p.sheet, box).note(fmt.Sprintf("Cut through a block, front at the left, 1:%d", den), 0)
}

// topPlan draws the back upper apron with its blocks from below, the rack's left
// end at the left, with running dimensions to the blocks' middles.
func topPlan(p *page, t fixing.Top, box drawing.Rect) {
	r := p.in.Rack
	long, apron := r.Len("carcase.width"), r.Len("apron.thickness")
	den := largestScale(p.in, func(den int64) bool { return onPaper(long, den) <= box.W()-topLeft })
	um := func(l length) drawing.Um { return onPaper(l, den) }
	out := drawing.Box(box.Min.X+topLeft/2, box.Min.Y+topAbove+12*drawing.MM, um(long), um(apron+t.Block.Y))
	at := func(q space.Point) drawing.Point { return drawing.Pt(out.Min.X+um(q.X), out.Min.Y+um(q.Y)) } // y from the apron's back face
	draw := func(c drawing.Class, x0, y0, x1, y1 length) {
		p.sheet.Add(drawing.Rectangle(c, 0, drawing.NoFill, drawing.Rect{Min: at(space.Point{X: x0, Y: y0}), Max: at(space.Point{X: x1, Y: y1})}))
	}
	draw(drawing.Visible, 0, 0, long, apron)
	b := dim.New(p.sheet, r.Format, drawing.Ratio{Num: 1, Den: den})
	stops := []dim.Stop{{At: out.Min.X, From: out.Min.Y}}
	shown := max(1, int(out.W()/dim.RunningRow)-2)
	for i, x := range t.Middles {
		half := t.Block.X / 2
		draw(drawing.Visible, x-half, apron, x+half, apron+t.Block.Y)
		from := apron + (t.Block.Y-t.Slot)/2 // as the slot lies in the block's middle
		draw(drawing.Thin, x-t.SlotWide/2, from, x+t.SlotWide/2, from+t.Slot)
		if i < shown || i == len(t.Middles)-1 {
			stops = append(stops, dim.Stop{At: out.Min.X + um(x), Value: x, From: out.Min.Y})
		}
	}
	b.Running(dim.Above, "LEFT", stops, dim.Options{})
	b.Draw(out)
	captionBelow(p.sheet, drawing.Pt(out.Centre().X, out.Max.Y+2*drawing.MM), fmt.Sprintf("Back upper apron from above, top off, its back up, 1:%d", den))
}
