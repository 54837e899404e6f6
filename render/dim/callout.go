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
	Leaves   Leaves
}

// Leaves says which way a leader leaves an upright distance: straight towards its
// figure, or first up or down along the distance and then level, so that it
// crosses no distance beside it.
type Leaves uint8

// The ways.
const (
	Straight Leaves = iota
	Upwards
	Downwards
)

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
	bent  bool          // the leader goes up or down before it goes level
}

// leader returns the places along the leader.
func (p pointer) leader() []drawing.Point {
	if !p.bent {
		return []drawing.Point{p.start, p.end}
	}
	return []drawing.Point{p.start, drawing.Pt(p.start.X, p.end.Y), p.end}
}

// drawCallouts draws the distances and sets their figures in a column: in the
// order in which they were added, where with that no two leaders cross, else in
// one in which none do.
func (b *Board) drawCallouts(outline drawing.Rect) {
	x := outline.Max.X + calloutOff
	var all []pointer
	for _, c := range b.callouts {
		if c.From == c.To {
			continue // too small for the paper
		}
		p := pointer{Callout: c, group: b.sheet.Group()}
		p.start = b.drawGap(p.group, c.From, c.To, c.Leaves)
		all = append(all, p)
	}
	if !inOrder(all, x) {
		byHeight(all, x, outline)
	}
	for _, p := range all {
		rounded, _ := b.format.Round(p.Value)
		text := b.figure(p.Value, rounded, false)
		l := drawing.Label(drawing.FigureText, p.group, drawing.Point{}, drawing.FigureHeight, drawing.Left, drawing.Figure(p.Word+" "+text))
		b.add(drawing.Polyline(drawing.Leader, p.group, p.leader()...))
		b.add(l.CentredOn(drawing.Pt(x+drawing.MM+l.Width()/2, p.end.Y)))
		b.sheet.Dims = append(b.sheet.Dims, drawing.DimRecord{
			Role: drawing.Check, Value: p.Value, Printed: text, Times: 1, From: p.From, To: p.To,
			ScaleNum: b.scale.Num, ScaleDen: b.scale.Den,
		})
	}
}

// inOrder sets the figures in the order given: those before the first whose leader
// goes down stand level with their distances or higher, it and the others level or
// lower. It reports whether no two leaders cross, nor one another's distance.
func inOrder(all []pointer, x drawing.Um) bool {
	down := slices.IndexFunc(all, func(p pointer) bool { return p.Leaves == Downwards })
	if down < 0 {
		down = len(all)
	}
	for i := down - 1; i >= 0; i-- {
		y := all[i].start.Y
		if i+1 < down {
			y = min(y, all[i+1].end.Y-calloutRow)
		}
		all[i].end, all[i].bent = drawing.Pt(x, y), all[i].Leaves != Straight
	}
	for i := down; i < len(all); i++ {
		y := all[i].start.Y
		if i > 0 {
			y = max(y, all[i-1].end.Y+calloutRow)
		}
		all[i].end, all[i].bent = drawing.Pt(x, y), all[i].Leaves != Straight
	}
	for i, p := range all {
		for j, q := range all {
			if i != j && (j < i && meeting(p.leader(), q.leader()) || meeting(p.leader(), []drawing.Point{q.From, q.To})) {
				return false
			}
		}
	}
	return true
}

// meeting reports whether two lines through places cross.
func meeting(a, b []drawing.Point) bool {
	for i := range a[1:] {
		for j := range b[1:] {
			if drawing.Crossing(a[i], a[i+1], b[j], b[j+1]) {
				return true
			}
		}
	}
	return false
}

// byHeight sets the figures as near to their distances as they go, with straight
// leaders.
func byHeight(all []pointer, x drawing.Um, outline drawing.Rect) {
	slices.SortStableFunc(all, func(a, z pointer) int {
		return cmp.Or(cmp.Compare(a.start.Y, z.start.Y), cmp.Compare(z.start.X, a.start.X))
	})
	var slots []slot
	for _, p := range all {
		slots = append(slots, slot{want: p.start.Y, size: calloutRow})
	}
	spread(slots)
	half := calloutRow / 2
	keep(slots, outline.Min.Y-half, max(outline.Max.Y+half, outline.Min.Y-half+calloutRow*drawing.Um(len(slots))))
	for i := range all {
		all[i].end, all[i].bent = drawing.Pt(x, slots[i].at), false
	}
	uncross(all)
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
// the middle, or at the end of the tail that is farther right or higher; one that
// leaves up or down at that end.
func (b *Board) drawGap(g int, from, to drawing.Point, leaves Leaves) drawing.Point {
	d := to.Sub(from)
	long := drawing.Distance(from, to)
	if long >= arrows {
		b.sheet.Add(drawing.Line(drawing.Dimension, g, from, to), drawing.Arrow(g, from, to), drawing.Arrow(g, to, from))
		return leaving(leaves, from, to, drawing.Pt((from.X+to.X)/2, (from.Y+to.Y)/2))
	}
	beyond := func(p drawing.Point, sign drawing.Um) drawing.Point {
		return p.Add(drawing.Pt(sign*d.X*tail/long, sign*d.Y*tail/long))
	}
	a, z := beyond(from, -1), beyond(to, 1)
	b.sheet.Add(drawing.Line(drawing.Dimension, g, a, z), drawing.Arrow(g, from, a), drawing.Arrow(g, to, z))
	if a.X > z.X || a.X == z.X && a.Y < z.Y {
		return leaving(leaves, a, z, a)
	}
	return leaving(leaves, a, z, z)
}

// leaving returns the higher or the lower of two ends for a leader that leaves up
// or down, else where it starts by itself.
func leaving(leaves Leaves, a, z, own drawing.Point) drawing.Point {
	if a.Y > z.Y {
		a, z = z, a
	}
	switch leaves {
	case Upwards:
		return a
	case Downwards:
		return z
	}
	return own
}
