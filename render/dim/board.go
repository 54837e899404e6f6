// Package dim places dimensions round a view: chains of links on the tracks
// nearest the outline, overall figures outermost, running dimensions from a
// named end. What goes in are stops, each a place on paper with its length in
// the model; what comes out are marks on a sheet and a record of each figure,
// so that a reader of marks can add the chains up again. The sheets come next.
//
// No figure stands on a line and none breaks one. A figure stands over its own
// link where it fits; that of an outermost link beyond the end of the line; any
// other a row further out, with a leader. Links too short for arrowheads have
// them from outside, and dots between them and short neighbours. A run of equal
// links whose figures do not fit is drawn as one: "12 × 4 7/8 (= 58 1/2)".
package dim

import (
	"slices"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// Side is a side of the outline that dimensions stand on.
type Side uint8

// The sides.
const (
	Above Side = iota
	Below
	LeftOf
	RightOf
)

// upright reports whether dimension lines on the side run up and down.
func (s Side) upright() bool { return s == LeftOf || s == RightOf }

// Edge is an outline's coordinate on the side.
func (s Side) Edge(outline drawing.Rect) drawing.Um {
	switch s {
	case Above:
		return outline.Min.Y
	case Below:
		return outline.Max.Y
	case LeftOf:
		return outline.Min.X
	}
	return outline.Max.X
}

// away is the direction off the outline: +1 towards larger coordinates.
func (s Side) away() drawing.Um {
	if s == Below || s == RightOf {
		return 1
	}
	return -1
}

// Stop is a place that a dimension reaches: At along the measured direction on
// paper, Value along it in the model, From across it, where the extension line
// starts. Sum says how Value is made of the model's lengths, where it is; the
// figure between two stops then says so of their difference.
type Stop struct {
	At    drawing.Um
	Value unit.Length
	From  drawing.Um
	Sum   drawing.Sum
}

// Options says more about a dimension.
type Options struct {
	Brackets bool // figures in brackets: for checking, not for making

	// Broken says that the view is broken between the first two stops of a
	// running dimension, or between the ends of an overall one: the line bears
	// a break, and its length on paper says nothing.
	Broken bool

	// Alike says of each link how many there are like it in the rack, of which
	// this one alone is drawn: its figure then begins with "5 × ". A link of
	// Skip is left out.
	Alike []int
}

// Skip stands in Options.Alike for a way between two stops without a dimension.
const Skip = -1

// Distances from the outline and between tracks. A stacked fraction is nearly
// twice as high as its figure, so tracks stand wider apart than usual.
const (
	firstTrack = 11 * drawing.MM
	nextTrack  = 11 * drawing.MM
	secondRow  = 15 * drawing.MM / 2 // further out for figures that do not fit
	gap        = 3 * drawing.MM / 2  // between outline and extension line
	overrun    = 2 * drawing.MM
	lift       = 9 * drawing.MM / 2 // middle of a figure over its line
	stackHalf  = 7 * drawing.MM / 2 // half the height of a stacked fraction
	jog        = 4 * drawing.MM     // from an extension line to its running figure
	pad        = drawing.MM         // kept free at each end of a figure
	arrows     = 8 * drawing.MM     // the least length that holds two arrowheads
	tail       = 5 * drawing.MM     // of a line beyond its end, with an arrowhead from outside
)

// RunningRow is what one running figure takes beside the next.
const RunningRow = 7 * drawing.MM

// track is one line of dimensions on a side.
type track struct {
	side    Side
	stops   []Stop
	options Options
	role    drawing.Role
	running bool
	origin  string
}

// Board collects the dimensions of one view and draws them all at once.
type Board struct {
	sheet    *drawing.Sheet
	format   unit.Format
	scale    drawing.Ratio
	tracks   []track
	callouts []Callout
	chain    int
	chains   map[ends]int   // the number of the links between two ends
	taken    []drawing.Rect // by figures and lines drawn so far
	figures  []drawing.Rect // drawn so far
	leaders  [][2]drawing.Point
}

// New starts a board for a view on s, drawn at the scale.
func New(s *drawing.Sheet, f unit.Format, scale drawing.Ratio) *Board {
	b := &Board{sheet: s, format: f, scale: scale, chains: map[ends]int{}}
	for _, r := range s.Dims {
		b.chain = max(b.chain, r.Chain+1)
	}
	return b
}

// Chain puts the links between neighbouring stops on one track. Stops are in
// ascending order on paper.
func (b *Board) Chain(side Side, stops []Stop, o Options) {
	b.tracks = append(b.tracks, track{side: side, stops: stops, options: o, role: drawing.Link})
}

// Overall puts one figure outside all others.
func (b *Board) Overall(side Side, a, z Stop, o Options) {
	b.tracks = append(b.tracks, track{side: side, stops: []Stop{a, z}, options: o, role: drawing.Overall})
}

// Running puts figures from a named end, the first stop, at the extension line
// of each other stop. A side with running figures has no overall figure, whose
// extension lines would cross them.
func (b *Board) Running(side Side, origin string, stops []Stop, o Options) {
	b.tracks = append(b.tracks, track{side: side, stops: stops, options: o, role: drawing.Running, running: true, origin: origin})
}

// Keep keeps figures out of a box on the sheet where something else stands.
func (b *Board) Keep(r drawing.Rect) { b.taken = append(b.taken, r) }

// Room is how much a side's dimensions take off the outline.
func (b *Board) Room(side Side) drawing.Um {
	n, last := drawing.Um(0), track{}
	for _, t := range b.ordered(side) {
		n += b.depth(t)
		last = t
	}
	switch {
	case n == 0:
		return 0
	case side.away() < 0 && !last.running: // its figures stand over the outermost line
		return n + firstTrack - nextTrack + lift + stackHalf
	}
	return n + firstTrack - nextTrack + overrun
}

// depth is what one track takes, figures included.
func (b *Board) depth(t track) drawing.Um {
	switch {
	case t.running:
		return b.runningDepth(t)
	case b.crowded(t):
		return nextTrack + secondRow
	}
	return nextTrack
}

// Draw places all dimensions round the outline and draws them.
func (b *Board) Draw(outline drawing.Rect) {
	b.taken = append(b.taken, outline)
	for _, side := range b.sides() {
		at := side.Edge(outline) + side.away()*(firstTrack-nextTrack)
		all := b.ordered(side)
		for i, t := range all {
			line := at + side.away()*nextTrack
			depth := b.depth(t)
			if t.running {
				b.drawRunning(t, line)
			} else {
				depth = nextTrack + secondRow*drawing.Um(b.drawChain(t, line, walls(all[i+1:])))
			}
			at += side.away() * depth
		}
	}
	b.drawCallouts(outline)
}

// sides returns the sides in the order in which they are drawn: first those with
// running figures, which cannot give way; then the upright ones; figures that are
// drawn later keep off what is there.
func (b *Board) sides() []Side {
	running := func(s Side) int {
		if slices.ContainsFunc(b.tracks, func(t track) bool { return t.side == s && t.running }) {
			return 0
		}
		return 1
	}
	all := []Side{LeftOf, RightOf, Above, Below}
	slices.SortStableFunc(all, func(x, y Side) int { return running(x) - running(y) })
	return all
}

// walls are the places of the extension lines of the tracks further out, which
// pass all tracks within.
func walls(outer []track) []drawing.Um {
	var out []drawing.Um
	for _, t := range outer {
		for _, s := range t.stops {
			out = append(out, s.At)
		}
	}
	return out
}

// ordered returns a side's tracks from the outline outwards: chains, running
// dimensions, overall figures, each in the order given.
func (b *Board) ordered(side Side) []track {
	var out []track
	for _, role := range []drawing.Role{drawing.Link, drawing.Running, drawing.Overall} {
		for _, t := range b.tracks {
			if t.side == side && t.role == role {
				out = append(out, t)
			}
		}
	}
	return out
}

// add puts marks on the sheet and takes note of where they are.
func (b *Board) add(marks ...drawing.Mark) {
	b.sheet.Add(marks...)
	for _, m := range marks {
		if t, ok := m.(drawing.Text); ok {
			b.figures = append(b.figures, t.Bounds())
		}
		b.taken = append(b.taken, m.Bounds())
	}
}

// free reports whether nothing drawn so far reaches into r, no leader either.
func (b *Board) free(r drawing.Rect) bool {
	for _, l := range b.leaders {
		if drawing.Crosses(l[0], l[1], r) {
			return false
		}
	}
	for _, t := range b.taken {
		if r.Min.X < t.Max.X && t.Min.X < r.Max.X && r.Min.Y < t.Max.Y && t.Min.Y < r.Max.Y {
			return false
		}
	}
	return true
}

// place turns a coordinate along the measured direction and one across it into
// a point.
func place(side Side, along, across drawing.Um) drawing.Point {
	if side.upright() {
		return drawing.Pt(across, along)
	}
	return drawing.Pt(along, across)
}
