package dim

import (
	"cmp"
	"slices"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// A Callout is a distance inside a view, whose figure stands in a column at the
// right of the outline: a word for what it is, and the figure. A side with
// callouts has no other dimensions.
type Callout struct {
	From, To drawing.Point
	Value    unit.Length
	Word     string
}

// calloutRow is what one callout takes under the next; calloutOff is from the
// outline to the column.
const (
	calloutRow = 9 * drawing.MM
	calloutOff = 14 * drawing.MM
)

// Callout adds a distance inside the view.
func (b *Board) Callout(c Callout) { b.callouts = append(b.callouts, c) }

// pointer is a callout with its leader.
type pointer struct {
	Callout
	group int
	start drawing.Point // on the dimension line
	end   drawing.Point // before the figure
}

// drawCallouts draws the distances and sets their figures in a column, in an
// order in which no two leaders cross.
func (b *Board) drawCallouts(outline drawing.Rect) {
	x := outline.Max.X + calloutOff
	var all []pointer
	var slots []slot
	for _, c := range b.callouts {
		if c.From == c.To {
			continue // too small for the paper
		}
		p := pointer{Callout: c, group: b.sheet.Group()}
		p.start = b.drawGap(p.group, c.From, c.To)
		all = append(all, p)
	}
	slices.SortStableFunc(all, func(a, z pointer) int {
		return cmp.Or(cmp.Compare(a.start.Y, z.start.Y), cmp.Compare(z.start.X, a.start.X))
	})
	for _, p := range all {
		slots = append(slots, slot{want: p.start.Y, size: calloutRow})
	}
	spread(slots)
	half := calloutRow / 2
	keep(slots, outline.Min.Y-half, max(outline.Max.Y+half, outline.Min.Y-half+calloutRow*drawing.Um(len(slots))))
	for i := range all {
		all[i].end = drawing.Pt(x, slots[i].at)
	}
	uncross(all)
	for _, p := range all {
		rounded, _ := b.format.Round(p.Value)
		text := b.figure(p.Value, rounded, false)
		l := drawing.Label(drawing.FigureText, p.group, drawing.Point{}, drawing.FigureHeight, drawing.Left, drawing.Figure(p.Word+" "+text))
		b.add(drawing.Line(drawing.Leader, p.group, p.start, p.end))
		b.add(l.CentredOn(drawing.Pt(x+drawing.MM+l.Width()/2, p.end.Y)))
		b.sheet.Dims = append(b.sheet.Dims, drawing.DimRecord{
			Role: drawing.Check, Value: p.Value, Printed: text, Times: 1, From: p.From, To: p.To,
			ScaleNum: b.scale.Num, ScaleDen: b.scale.Den,
		})
	}
}

// uncross swaps the ends of leaders until no two cross. Each swap shortens them
// together, so that this ends.
func uncross(all []pointer) {
	for swapped := true; swapped; {
		swapped = false
		for i := range all {
			for j := range i {
				p, q := &all[i], &all[j]
				if drawing.Crossing(p.start, p.end, q.start, q.end) {
					p.end, q.end = q.end, p.end
					swapped = true
				}
			}
		}
	}
}

// drawGap draws the line of a distance inside a view, its arrowheads inside
// where they fit and else from outside, and returns where a leader starts: in
// the middle, or at the end of the tail that is farther right or higher.
func (b *Board) drawGap(g int, from, to drawing.Point) drawing.Point {
	d := to.Sub(from)
	long := drawing.Distance(from, to)
	if long >= arrows {
		b.sheet.Add(drawing.Line(drawing.Dimension, g, from, to), drawing.Arrow(g, from, to), drawing.Arrow(g, to, from))
		return drawing.Pt((from.X+to.X)/2, (from.Y+to.Y)/2)
	}
	beyond := func(p drawing.Point, sign drawing.Um) drawing.Point {
		return p.Add(drawing.Pt(sign*d.X*tail/long, sign*d.Y*tail/long))
	}
	a, z := beyond(from, -1), beyond(to, 1)
	b.sheet.Add(drawing.Line(drawing.Dimension, g, a, z), drawing.Arrow(g, from, a), drawing.Arrow(g, to, z))
	if a.X > z.X || a.X == z.X && a.Y < z.Y {
		return a
	}
	return z
}
