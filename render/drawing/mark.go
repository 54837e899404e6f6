package drawing

import "slatwright/render/typeface"

// A Mark is one thing on a sheet: a Path, a Circle or a Text, each by value.
type Mark interface {
	// Bounds returns the least box around the mark, the width of its pen
	// left out; for a text, around its glyphs.
	Bounds() Rect
	base() (Class, int, bool)
}

// A Path is a line of straight and curved segments from Start.
type Path struct {
	Class  Class
	Group  int  // see Sheet.Group
	Margin bool // may stand outside the frame, as centring and trimming marks do
	Start  Point
	Segs   []Seg
	Closed bool // a straight line joins the end to Start
	Fill   Fill
}

// A Seg is one segment of a path: a straight line to To, or a cubic Bézier
// curve to To with the control points C1 and C2.
type Seg struct {
	Curve  bool
	C1, C2 Point
	To     Point
}

// A Circle is a full circle.
type Circle struct {
	Class  Class
	Group  int
	Margin bool
	Centre Point
	R      Um
	Fill   Fill
}

// Align says which part of a text stands at its point.
type Align uint8

// The alignments, along the direction of reading.
const (
	Left Align = iota
	Middle
	Right
)

var alignNames = [...]string{"left", "middle", "right"}

// String returns the alignment's name.
func (a Align) String() string { return name(alignNames[:], int(a)) }

// A Text is one line of lettering.
type Text struct {
	Class  Class
	Group  int
	Margin bool
	At     Point // on the foot of the capitals
	Height Um    // of the capitals
	Turn   int   // quarter turns counter-clockwise, 0 .. 3; 1 reads from the right
	Align  Align
	Runs   []Run
	Bold   bool
	Table  bool // stands in a table, where smaller lettering is allowed
}

func (p Path) base() (Class, int, bool)   { return p.Class, p.Group, p.Margin }
func (c Circle) base() (Class, int, bool) { return c.Class, c.Group, c.Margin }
func (t Text) base() (Class, int, bool)   { return t.Class, t.Group, t.Margin }

// Bounds returns the least box around the path's points, control points
// included: a curve lies within it but may not reach it.
func (p Path) Bounds() Rect {
	r := Rect{Min: p.Start, Max: p.Start}
	for _, s := range p.Segs {
		if s.Curve {
			r = r.Join(Rect{Min: s.C1, Max: s.C1}).Join(Rect{Min: s.C2, Max: s.C2})
		}
		r = r.Join(Rect{Min: s.To, Max: s.To})
	}
	return r
}

// Empty reports whether the path has no extent. Views drop such paths: an edge
// seen end on, or one that is shorter on paper than a micrometre.
func (p Path) Empty() bool {
	r := p.Bounds()
	return r.Min == r.Max
}

// Bounds returns the box around the circle.
func (c Circle) Bounds() Rect {
	return Rect{Min: Pt(c.Centre.X-c.R, c.Centre.Y-c.R), Max: Pt(c.Centre.X+c.R, c.Centre.Y+c.R)}
}

// Bounds returns the box around the text's glyphs, fraction bars included.
func (t Text) Bounds() Rect {
	ink := t.Layout().Ink
	a, b := t.Place(ink.Min), t.Place(ink.Max)
	return Rect{
		Min: Pt(min(a.X, b.X), min(a.Y, b.Y)),
		Max: Pt(max(a.X, b.X), max(a.Y, b.Y)),
	}
}

// Layout sets the text's runs in type, from the left end of its base line at
// 0, 0 and unturned; Place takes a point from there to the sheet.
func (t Text) Layout() typeface.Line {
	return typeface.Layout(t.Runs, t.Height, t.Bold)
}

// Origin returns where the left end of the base line comes to stand on the
// sheet.
func (t Text) Origin() Point { return t.Place(Point{}) }

// Place returns where a point of the text's own layout comes to stand on the
// sheet.
func (t Text) Place(p Point) Point {
	switch t.Align {
	case Middle:
		p.X -= t.Width() / 2
	case Right:
		p.X -= t.Width()
	}
	switch t.Turn & 3 {
	case 1:
		p = Pt(p.Y, -p.X)
	case 2:
		p = Pt(-p.X, -p.Y)
	case 3:
		p = Pt(-p.Y, p.X)
	}
	return t.At.Add(p)
}

// Width returns how far the text reaches along its base line, the advance of
// its last glyph included.
func (t Text) Width() Um { return typeface.Width(t.Runs, t.Height, t.Bold) }

// String returns the text as a person would read it aloud: "38 7/16\"".
func (t Text) String() string { return typeface.Readable(t.Runs) }
