package sheet

import (
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// A part so long that its width would hardly show is drawn broken: both ends,
// larger, without what is between.

// A gapped part lacks what is between from and to along its grain; what is
// beyond is drawn nearer, a gap apart.
type gapped struct {
	from, to, gap length
}

const (
	leastWidth = 5 * drawing.MM // of a part's face, else it is broken
	breakGap   = 6 * drawing.MM
)

// none reports whether the part is whole.
func (g gapped) none() bool { return g.to <= g.from }

// shift returns where a coordinate along the grain is drawn, and whether it is.
func (g gapped) shift(at length) (length, bool) {
	switch {
	case g.none() || at <= g.from:
		return at, true
	case at >= g.to:
		return at - (g.to - g.from) + g.gap, true
	}
	return 0, false
}

// broken breaks a block where at its largest scale its face is too narrow, at a
// scale at which it is wide enough. It is broken off between two of the patches
// where others are fixed to it.
func (b partBlock) broken(p *page) partBlock {
	b.scale = b.largest(p)
	size := b.piece.Box.Size()
	paperOf := func(l length, den int64) drawing.Um { return drawing.Um((l / length(den)).Micrometres()) }
	if paperOf(size.On(b.width), b.scale) >= leastWidth {
		return b
	}
	den := smallestScale(p.in, func(den int64) bool { return paperOf(size.On(b.width), den) >= leastWidth })
	lo, hi := b.piece.Box.Min.On(b.piece.Grain), b.piece.Box.Max.On(b.piece.Grain)
	shown := length(p.area.W()-partLeft-partEnd-breakGap) * unit.Micrometre * length(den)
	g := gapped{from: b.between(lo+shown*6/10, -1), to: b.between(hi-shown*4/10, 1), gap: length(breakGap) * unit.Micrometre * length(den)}
	if g.from <= lo || g.to >= hi || g.to-g.from <= g.gap {
		return b
	}
	b.scale, b.gap = den, g
	first, second := b.piece.Box, b.piece.Box
	first.Max = first.Max.With(b.piece.Grain, g.from)
	start, _ := g.shift(g.to)
	end, _ := g.shift(hi)
	second.Min = second.Min.With(b.piece.Grain, start)
	second.Max = second.Max.With(b.piece.Grain, end)
	id := b.scene.Boxes[0].ID
	b.scene = view.Scene{Boxes: []view.Solid{{ID: id, Box: first}, {ID: id, Box: second}}}
	return b
}

// between returns the place nearest to at, in the direction of step, that no
// patch of the part has in it.
func (b partBlock) between(at length, step length) length {
	for moved := true; moved; {
		moved = false
		for _, c := range b.piece.Fixed {
			lo, hi := c.Patch.Min.On(b.piece.Grain), c.Patch.Max.On(b.piece.Grain)
			margin := (hi - lo) / 4
			if c.Axis != b.thick || at <= lo-margin || at >= hi+margin {
				continue
			}
			if at, moved = lo-margin, true; step > 0 {
				at = hi + margin
			}
		}
	}
	return at
}

// shifted returns a patch of the part where it is drawn, and whether it is.
func (b partBlock) shifted(c rack.Contact) (space.Box, bool) {
	box := c.Patch
	lo, ok := b.gap.shift(box.Min.On(b.piece.Grain))
	hi, too := b.gap.shift(box.Max.On(b.piece.Grain))
	box.Min = box.Min.With(b.piece.Grain, lo)
	box.Max = box.Max.With(b.piece.Grain, hi)
	return box, ok && too
}

// atBreak reports whether a line of the view runs along the break.
func (b partBlock) atBreak(l view.Line) bool {
	at := l.From.On(b.piece.Grain)
	start, _ := b.gap.shift(b.gap.to)
	return !b.gap.none() && at == l.To.On(b.piece.Grain) && (at == b.gap.from || at == start)
}

// breaks draws the lines along which the part is broken off.
func (b partBlock) breaks(s *drawing.Sheet, v picture, out drawing.Rect) {
	if b.gap.none() {
		return
	}
	start, _ := b.gap.shift(b.gap.to)
	const over = 3 * drawing.MM
	for _, at := range []length{b.gap.from, start} {
		q := b.piece.Box.Min
		q = q.With(b.piece.Grain, at)
		x := v.point(q).X
		s.Add(drawing.BreakLine(0, drawing.Pt(x, out.Min.Y-over), drawing.Pt(x, out.Max.Y+over)))
	}
}

// missing is the room of the gap, which is none where the part is whole.
func (b partBlock) missing(v picture) []drawing.Rect {
	if b.gap.none() {
		return nil
	}
	box := b.piece.Box
	start, _ := b.gap.shift(b.gap.to)
	box.Min = box.Min.With(b.piece.Grain, b.gap.from)
	box.Max = box.Max.With(b.piece.Grain, start)
	return []drawing.Rect{v.around(box).Inset(-2 * drawing.MM)}
}
