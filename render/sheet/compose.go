package sheet

import (
	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// inked is the box round the marks of a page from the given one on; empty where
// there are none.
func (p *page) inked(from int) drawing.Rect {
	var out drawing.Rect
	for i, m := range p.sheet.Marks[from:] {
		r := m.Bounds()
		if i == 0 {
			out = r
			continue
		}
		out.Min = drawing.Pt(min(out.Min.X, r.Min.X), min(out.Min.Y, r.Min.Y))
		out.Max = drawing.Pt(max(out.Max.X, r.Max.X), max(out.Max.Y, r.Max.Y))
	}
	return out
}

// centre moves all that is on a page to the middle of its area.
func (p *page) centre() {
	by := p.area.Centre().Sub(p.inked(0).Centre())
	p.sheet.Marks = drawing.Translate(p.sheet.Marks, by)
	for i := range p.sheet.Dims {
		d := &p.sheet.Dims[i]
		d.From, d.To = d.From.Add(by), d.To.Add(by)
	}
}

// caption writes a view's title under it, its middle as near to the view's as
// the area's sides allow.
func (p *page) caption(at drawing.Point, text string) {
	half := typeface.Width(drawing.Plain(text), drawing.FigureHeight, false)/2 + 1
	at.X = min(max(at.X, p.area.Min.X+half), p.area.Max.X-half)
	captionBelow(p.sheet, at, text)
}

// captionOff is from the lowest of a view's dimensions to its title's room.
const captionOff = 2 * drawing.MM
