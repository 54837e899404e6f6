package view

import (
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Kind says what a line is of.
type Kind uint8

// The kinds of line.
const (
	Edge    Kind = iota // where two faces of a box meet
	Outline             // where a round turns away from the eye
	Cap                 // the rim of a round's end
	Way                 // a trail of an exploded view
)

// String returns the kind's name in lower case.
func (k Kind) String() string { return [...]string{"edge", "outline", "cap", "way"}[k] }

// Line is a stretch of one line of a drawing, visible from end to end or hidden
// from end to end. Its ends are true places rounded to whole base units.
//
// An arc lies in a plane of one y and runs from From to To counterclockwise as
// seen from the front, x to the right and z up. An arc whose ends are the same
// place is a full circle; a straight line never has equal ends.
type Line struct {
	ID       int // of the solid it belongs to, or of the trail
	Kind     Kind
	Hidden   bool
	From, To space.Point
	Arc      bool
	Centre   space.Point // of an arc
	Radius   unit.Length // of an arc
}

// Lines returns the lines of s seen from d, visible and hidden. No two of them
// lie on each other in the picture: where lines coincide a visible one stands
// for all, the nearest to the eye among several, and a hidden one shows only
// where none is visible. The order is that of the scene: boxes, rounds, trails.
//
// It panics if d cannot be looked along; see [Direction].
func Lines(s Scene, d Direction) []Line {
	d.mustBeValid(len(s.Rounds) > 0)
	f := newFrame(d)
	solids, curves := f.build(s)
	order := grouped(&f, curves)
	f.skip(curves, order)
	hidden := make([][]span, len(curves))
	newGrid(&f, solids).hideAll(curves, hidden)
	drawn := closeRings(curves, merge(&f, curves, order, hidden))
	lines := make([]Line, 0, len(drawn))
	for _, p := range drawn {
		if l, ok := f.line(&curves[p.curve], p); ok {
			lines = append(lines, l)
		}
	}
	return lines
}

// Visible returns the visible ones among lines.
func Visible(lines []Line) []Line {
	out := make([]Line, 0, len(lines)/2)
	for _, l := range lines {
		if !l.Hidden {
			out = append(out, l)
		}
	}
	return out
}
