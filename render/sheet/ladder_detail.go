package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/check"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// The detail of a ladder's sheet shows one crossing large: a slat's end on the
// leg that lies uppermost on the sheet, its nails with their distances, and where
// the nails of the other face come, seen through the leg.

// Room round the crossing in its detail.
const (
	detailStub  = 7 * drawing.MM  // of leg and slat beyond the crossing
	detailLeft  = 24 * drawing.MM // dimensions across the leg
	detailRight = 12 * drawing.MM // the word at the top, a figure beyond its dimension's end
)

// detailAbove is the room for the dimensions along the leg, whose figures go a row
// further out where the crossing is small on paper.
func detailAbove(den int64) drawing.Um {
	if den == 1 {
		return 23 * drawing.MM
	}
	return 30 * drawing.MM
}

// detailSize is what the detail of a shape's crossings takes at a scale.
func detailSize(in Input, shape int, den int64) drawing.Point {
	r := in.Rack
	paper := func(name string) drawing.Um { return onPaper(r.Len(name), den) }
	wide := detailLeft + 2*detailStub + paper("slat.height") + detailRight
	wide = max(wide, 64*drawing.MM) // its words
	high := detailAbove(den) + paper("leg.width") + detailStub + drawing.MM
	words := drawing.Um(0)
	for _, right := range []bool{false, true} { // so that mirrored ladders have one layout
		words = max(words, needed([]string{detailWords(in, ladderFace{shape: shape, right: right}, den)}, wide, 0))
	}
	return drawing.Pt(wide, high+3*drawing.MM+words)
}

// detailWords say what the detail shows.
func detailWords(in Input, f ladderFace, den int64) string {
	text := fmt.Sprintf("Detail, scale 1:%d: slat's end on the %s leg, seen from the %s.", den, f.upperLeg(), handed(f.right))
	own, other := in.Rack.Shapes[f.shape].Left, in.Rack.Shapes[f.shape].Right
	if f.right {
		own, other = other, own
	}
	if len(own) == 0 { // asked for its size, of a mirrored ladder's face
		return text
	}
	shown, through := f.detailed(in)
	if len(through) == 0 {
		return text
	}
	text += " Dashed: nails of the other face"
	if slices.ContainsFunc(own, func(z length) bool { return !slices.Contains(other, z) }) {
		text += fmt.Sprintf(", as they come in row %d, not in every row", slices.Index(own, shown.Patch.Min.Z)+1)
	}
	return text + "."
}

// upperLeg names the leg that lies uppermost on the sheet.
func (f ladderFace) upperLeg() string {
	if f.right {
		return "front"
	}
	return "back"
}

// detailed returns the crossing that the detail shows, the lowest on the upper
// leg whose nails are where all others are, and the nails of the other face in it.
func (f ladderFace) detailed(in Input) (shown check.Crossing, through []space.Point) {
	r := in.Rack
	all := slices.DeleteFunc(check.Crossings(r), func(c check.Crossing) bool {
		front := r.Pieces[c.Leg].Box.Min.Y == r.Len("apron.thickness")
		return r.Ladders[c.Ladder].Shape != f.shape || front != f.right
	})
	pick := func(ok func(check.Crossing) bool) int { return slices.IndexFunc(all, ok) }
	i := pick(func(c check.Crossing) bool { return c.Right == f.right && !c.Meets })
	if i < 0 {
		i = pick(func(c check.Crossing) bool { return c.Right == f.right })
	}
	shown = all[i]
	for _, c := range all {
		if c.Right != f.right && c.Patch.Min.Z == shown.Patch.Min.Z {
			through = append(through, c.Nails...)
		}
	}
	return shown, through
}

// detail draws the detail into its box.
func (f ladderFace) detail(p *page, l ladderLayout) {
	r := p.in.Rack
	c, through := f.detailed(p.in)
	words := detailWords(p.in, f, l.den)
	v := picture{proj: view.Projection{Direction: f.from(), Num: 1, Den: l.den}, lies: true}
	at := v.around(c.Patch)
	v.at = drawing.Pt(l.detail.Min.X+detailLeft+detailStub, l.detail.Min.Y+detailAbove(l.den)).Sub(at.Min)
	at = v.around(c.Patch)
	out := drawing.Rect{Min: at.Min.Sub(drawing.Pt(detailStub, 0)), Max: at.Max.Add(drawing.Pt(detailStub, detailStub))}

	visible := func(a, b drawing.Point) { p.sheet.Add(drawing.Line(drawing.Visible, 0, a, b)) }
	cut := func(a, b drawing.Point) { p.sheet.Add(drawing.BreakLine(0, a, b)) }
	for _, y := range []drawing.Um{at.Min.Y, at.Max.Y} { // the leg, on either side of the slat
		visible(drawing.Pt(out.Min.X, y), drawing.Pt(at.Min.X, y))
		visible(drawing.Pt(at.Max.X, y), drawing.Pt(out.Max.X, y))
	}
	visible(at.Min, drawing.Pt(at.Max.X, at.Min.Y)) // the slat
	visible(at.Min, drawing.Pt(at.Min.X, out.Max.Y))
	visible(drawing.Pt(at.Max.X, at.Min.Y), drawing.Pt(at.Max.X, out.Max.Y))
	const over = 2 * drawing.MM
	cut(drawing.Pt(out.Min.X, at.Min.Y-over), drawing.Pt(out.Min.X, at.Max.Y+over))
	cut(drawing.Pt(out.Max.X, at.Min.Y-over), drawing.Pt(out.Max.X, at.Max.Y+over))
	cut(drawing.Pt(at.Min.X-over, out.Max.Y), drawing.Pt(at.Max.X+over, out.Max.Y))
	reach := min(2*nailCross, at.W()/4, at.H()/4)
	for _, n := range c.Nails {
		p.sheet.Add(drawing.Cross(drawing.Visible, 0, v.point(n), reach)...)
	}
	for _, n := range through {
		p.sheet.Add(drawing.Disc(drawing.Hidden, 0, drawing.NoFill, v.point(n), reach*3/8))
	}
	top := drawing.Label(drawing.NoteText, 0, drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Plain("TOP"))
	top.Turn, top.Bold = 1, true
	p.sheet.Add(top.CentredOn(drawing.Pt(out.Max.X+5*drawing.MM, at.Centre().Y)))

	b := dim.New(p.sheet, r.Format, drawing.Ratio{Num: 1, Den: l.den})
	twice := dim.Options{Alike: []int{2, 1, dim.Skip}} // from either edge
	b.Chain(dim.Above, nailStops(c, space.Z, at.Min.Y, func(q space.Point) drawing.Um { return v.point(q).X }), twice)
	b.Chain(dim.LeftOf, nailStops(c, space.Y, out.Min.X, func(q space.Point) drawing.Um { return v.point(q).Y }), twice)
	b.Draw(out)
	foot := l.detail
	foot.Min.Y = out.Max.Y + over + drawing.MM
	newScribe(p.sheet, foot).note(words, 0)
}

// nailStops are an edge of a crossing, its nails and the other edge along an
// axis, ascending on paper.
func nailStops(c check.Crossing, axis space.Axis, from drawing.Um, paper func(space.Point) drawing.Um) []dim.Stop {
	at := []unit.Length{c.Patch.Min.On(axis), c.Patch.Max.On(axis)}
	for _, n := range c.Nails {
		at = append(at, n.On(axis))
	}
	slices.Sort(at)
	var out []dim.Stop
	for _, l := range at {
		q := c.Patch.Min
		q = q.With(axis, l)
		out = append(out, dim.Stop{At: paper(q), Value: l - at[0], From: from})
	}
	slices.SortFunc(out, func(a, b dim.Stop) int { return int(a.At - b.At) })
	return out
}
