package drawing

import (
	"fmt"
	"slices"
)

// How near marks may come, and how small lettering may be, on paper. The least
// heights are those of the shop's own sheets: 3.5 mm to be read at the bench,
// 2.5 mm in a table. The rest is our own, after the one rule found, that lines
// keep twice the wider line apart (ISO 128-20:1996, 4.4, quoted in a public
// repository).
const (
	textGap     = 300  // between two texts
	lineGap     = 250  // between a text and the edge of a line
	benchHeight = 3500 // of lettering
	tableHeight = 2500 // of lettering in tables, and of the digits of a stacked fraction
	stackSlack  = 100  // by which the digits of a stack may fall short of that
)

// legibility gathers the faults of one sheet.
type legibility struct {
	sheet  *Sheet
	labels []label
	grid   grid
	masks  []mask
	faults []Fault
}

// A label is a text with the box around its ink.
type label struct {
	mark int
	text Text
	box  Rect
}

// A mask is a filled shape that hides what was drawn before it.
type mask struct {
	mark   int
	circle bool
	box    Rect
}

func newLegibility(s *Sheet) *legibility {
	l := &legibility{sheet: s, grid: newGrid(s.W, s.H)}
	for i, m := range s.Marks {
		switch m := m.(type) {
		case Text:
			box := m.Bounds()
			l.grid.add(box.Inset(-textGap), len(l.labels))
			l.labels = append(l.labels, label{i, m, box})
		case Circle:
			if m.Fill != NoFill && m.Fill != Black {
				l.masks = append(l.masks, mask{i, true, m.Bounds()})
			}
		case Path:
			if m.Fill != NoFill && m.Fill != Black && upright(m) {
				l.masks = append(l.masks, mask{i, false, m.Bounds()})
			}
		}
	}
	return l
}

// upright reports whether a path is the outline of a box.
func upright(p Path) bool {
	r := p.Bounds()
	if len(p.Segs) != 3 || !p.Closed {
		return false
	}
	corner := func(q Point) bool {
		return (q.X == r.Min.X || q.X == r.Max.X) && (q.Y == r.Min.Y || q.Y == r.Max.Y)
	}
	from := p.Start
	for _, s := range p.Segs {
		if s.Curve || !corner(s.To) || (s.To.X != from.X) == (s.To.Y != from.Y) {
			return false
		}
		from = s.To
	}
	return corner(p.Start)
}

// hidden reports whether a shape between the marks below and above hides the
// lower one under the whole of a box.
func (l *legibility) hidden(below, above int, box Rect) bool {
	return slices.ContainsFunc(l.masks, func(m mask) bool {
		return below < m.mark && m.mark < above && m.covers(box)
	})
}

func (m mask) covers(r Rect) bool {
	if !m.box.Holds(r) {
		return false
	}
	if !m.circle {
		return true
	}
	c, radius := m.box.Centre(), m.box.W()/2
	dx := max((r.Min.X - c.X).Abs(), (r.Max.X - c.X).Abs())
	dy := max((r.Min.Y - c.Y).Abs(), (r.Max.Y - c.Y).Abs())
	return dx*dx+dy*dy <= radius*radius
}

// report adds a fault.
func (l *legibility) report(k FaultKind, where Point, a, b int, format string, args ...any) {
	l.faults = append(l.faults, Fault{Sheet: l.sheet.Name, Kind: k, Where: where, Marks: [2]int{a, b}, Says: fmt.Sprintf(format, args...)})
}

// texts finds texts that meet. Even those of one group may not, but need not
// keep the gap.
func (l *legibility) texts() {
	for i, a := range l.labels {
		for _, k := range l.grid.near(a.box.Inset(-textGap)) {
			if k <= i {
				continue
			}
			b := l.labels[k]
			gap := Um(textGap)
			if a.text.Group != 0 && a.text.Group == b.text.Group {
				gap = 0
			}
			if a.box.Inset(-gap).Meets(b.box) {
				l.report(TextOnText, b.box.Centre(), a.mark, b.mark, "%q meets %q", a.text.String(), b.text.String())
			}
		}
	}
}

// frame finds marks that leave the frame; a sheet without one has its edge.
func (l *legibility) frame() {
	frame := l.sheet.Frame
	if frame == (Rect{}) {
		frame = Box(0, 0, l.sheet.W, l.sheet.H)
	}
	for i, m := range l.sheet.Marks {
		if _, _, margin := m.base(); margin {
			continue
		}
		r := m.Bounds()
		if p, ok := m.(Path); ok && !frame.Holds(r) {
			r = around(flatten(p)) // a curve may keep within what its control points leave
		}
		if !frame.Holds(r) {
			l.report(OutsideFrame, r.Centre(), i, -1, "%s reaches %s .. %s", nameOf(m), at(r.Min), at(r.Max))
		}
	}
}

func around(pts []Point) Rect {
	r := Rect{Min: pts[0], Max: pts[0]}
	for _, p := range pts[1:] {
		r = r.Join(Rect{Min: p, Max: p})
	}
	return r
}

// nameOf says what a mark is, a text by its words.
func nameOf(m Mark) string {
	if t, ok := m.(Text); ok {
		return fmt.Sprintf("%q", t.String())
	}
	c, _, _ := m.base()
	return fmt.Sprintf("%s %s", c, kind(m))
}

// heights finds lettering that is too small.
func (l *legibility) heights() {
	for _, a := range l.labels {
		least := Um(benchHeight)
		if a.text.Table {
			least = tableHeight
		}
		if a.text.Height < least {
			l.report(TextTooSmall, a.box.Centre(), a.mark, -1, "%q is %s high, least is %s", a.text.String(), mm(a.text.Height), mm(least))
			continue
		}
		for _, p := range a.text.Layout().Pieces {
			if p.Height < a.text.Height && p.Height < tableHeight-stackSlack {
				l.report(TextTooSmall, a.box.Centre(), a.mark, -1, "%q has a fraction %s high, least is %s",
					a.text.String(), mm(p.Height), mm(tableHeight))
				break
			}
		}
	}
}
