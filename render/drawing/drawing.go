// Package drawing is a sheet as a flat list of marks, in whole micrometres on
// paper. The packages that compose sheets put marks in; the svg and pdf
// writers walk the list and take them out; Fprint writes it one mark a line,
// for reading and for goldens. Nothing here knows what a rack is.
//
// A mark carries a class (visible edge, hidden edge, centre line, dimension
// line ...), never a pen or a colour: one table, read by both writers, says
// how a class is inked. Whatever a drawing is made of, arrowheads, hatching,
// break lines, item marks, is spread out here into lines, curves, circles and
// lettering, so that a writer has three kinds of mark to draw and nothing to
// work out.
//
// Besides its marks a sheet keeps what they mean: a record of each printed
// dimension and of each item mark. Legible reads both and reports what a
// person at the bench could misread.
package drawing

import (
	"slatwright/render/drawing/paper"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// The lengths, points and boxes of a sheet are those of package paper.
type (
	// Um is a length on paper in whole micrometres.
	Um = paper.Um
	// Point is a place on the sheet, from its top left corner, Y down.
	Point = paper.Point
	// Rect is a box with its sides along the sheet's.
	Rect = paper.Rect
	// Run is a stretch of lettering: plain text, or a stacked fraction.
	Run = typeface.Run
)

// MM is one millimetre on paper.
const MM = paper.MM

// Pt returns the point at x, y.
func Pt(x, y Um) Point { return paper.Pt(x, y) }

// Box returns the box with its top left corner at x, y, w wide and h high.
func Box(x, y, w, h Um) Rect { return paper.Box(x, y, w, h) }

// A Sheet is one page: its size, its frame, its marks in the order in which
// they are inked (a later one covers an earlier), and what they mean.
type Sheet struct {
	Name  string // names the file: "02-front"
	Title string // for people: "Front elevation"
	W, H  Um     // trimmed size
	Frame Rect   // nothing but margin marks may leave it
	Marks []Mark
	Dims  []DimRecord
	Items []ItemRecord

	// Units is the system of the figures that name none.
	Units unit.System

	// Second is how each figure of a dimension is printed once more, in square
	// brackets and rounded, in the other unit; nil where it is not.
	Second *unit.Format

	// FullSize says that the sheet measures what it shows, so that it must be
	// printed without scaling.
	FullSize bool

	groups int
}

// Add appends marks to the sheet.
func (s *Sheet) Add(marks ...Mark) { s.Marks = append(s.Marks, marks...) }

// Group returns a group number not yet used on this sheet, from 1 up. Marks of
// one group may touch each other: a figure and its own dimension line; a
// balloon's circle, leader and number. Marks of group 0 belong to no group.
func (s *Sheet) Group() int {
	s.groups++
	return s.groups
}

// Role says what a printed dimension does.
type Role uint8

// The roles of a dimension.
const (
	Link    Role = iota // one link of a chain
	Overall             // the whole of a chain; its links add up to it
	Running             // from a common origin
	Check               // repeats a length so that it can be measured, as a diagonal
	Note                // a figure without a line of its own, as in a note or a table
)

var roleNames = [...]string{"link", "overall", "running", "check", "note"}

// String returns the role's name.
func (r Role) String() string { return name(roleNames[:], int(r)) }

// DimRecord says what one printed dimension means.
type DimRecord struct {
	Chain   int         // number of its chain on this sheet; 0 for a dimension by itself
	Role    Role        // what it does, in its chain or alone
	Sum     Sum         // of which of the model's lengths it is made, where it is
	Value   unit.Length // the length shown, exact
	Printed string      // as it stands on the paper, for one of Times: "38 7/16\"", "≈ 4 7/64"
	Second  string      // the same in the sheet's second unit, lettered where it has room; "" without one
	Times   int         // how often the length is repeated between From and To; 0 means once

	From, To           Point // ends of the dimension line on paper; equal for a Note
	ScaleNum, ScaleDen int64 // paper : model, 1 : 5 is 1, 5

	// Broken says that the view is broken between From and To, or not to
	// scale, so that the distance on paper says nothing.
	Broken bool
}

// ItemKind says where an item mark stands.
type ItemKind uint8

// The kinds of item record.
const (
	Balloon ItemKind = iota // at a part in a view
	ListRow                 // in a parts list
)

var itemKindNames = [...]string{"balloon", "list row"}

// String returns the kind's name.
func (k ItemKind) String() string { return name(itemKindNames[:], int(k)) }

// ItemRecord says that an item mark is printed at a place.
type ItemRecord struct {
	Mark  string
	Where Point
	Kind  ItemKind
}

// name returns names[i], or the number where there is no such name.
func name(names []string, i int) string {
	if i < 0 || i >= len(names) {
		return "unknown"
	}
	return names[i]
}
