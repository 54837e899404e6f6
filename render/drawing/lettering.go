package drawing

import "slatwright/render/typeface"

// Heights of lettering on a sheet, from the series of ISO 3098 (1.8 2.5 3.5 5
// 7 10 mm; read in a table reproduced from NF EN ISO 3098-0).
const (
	TableHeight   = 2500 * MM / 1000 // rows of tables
	FigureHeight  = 3500 * MM / 1000 // dimension figures and notes
	HeadingHeight = 5 * MM           // view titles and item marks
	TitleHeight   = 7 * MM           // the drawing's title
)

// Plain returns s as it stands, with any fraction written along the line. It is
// for tables, where the digits of a stack would be too small.
func Plain(s string) []Run { return typeface.Plain(s) }

// Figure returns s with its inch fractions stacked: 38, 7 over 16, inch mark.
func Figure(s string) []Run { return typeface.Figure(s) }

// Label returns one line of lettering, height high, its point on the foot of
// the capitals. Turn it, embolden it or move it by setting its fields.
func Label(c Class, group int, at Point, height Um, align Align, runs []Run) Text {
	return Text{Class: c, Group: group, At: at, Height: height, Align: align, Runs: runs}
}

// CentredOn returns t with the middle of its capitals on p.
func (t Text) CentredOn(p Point) Text {
	t.Align = Middle
	t.At = Point{}
	t.At = p.Add(t.Place(Point{X: t.Width() / 2, Y: t.Height / 2}))
	return t
}
