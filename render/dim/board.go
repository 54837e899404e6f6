// Package dim places dimensions round a view: chains of links on the tracks
// nearest the outline, overall figures outermost, running dimensions from a
// named end. What goes in are stops, each a place on paper with its length in
// the model; what comes out are marks on a sheet and a record of each figure,
// so that a reader of marks can add the chains up again. The sheets come next.
package dim

import (
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

// away is the direction off the outline: +1 towards larger coordinates.
func (s Side) away() drawing.Um {
	if s == Below || s == RightOf {
		return 1
	}
	return -1
}

// Stop is a place that a dimension reaches: At along the measured direction on
// paper, Value along it in the model, From across it, where the extension line
// starts.
type Stop struct {
	At    drawing.Um
	Value unit.Length
	From  drawing.Um
}

// Options says more about a dimension.
type Options struct {
	Names    []string // the model's lengths that the links show, where they have names
	Brackets bool     // figures in brackets: for checking, not for making
}

// Distances from the outline and between tracks. A stacked fraction is nearly
// twice as high as its figure, so tracks stand wider apart than usual.
const (
	firstTrack = 12 * drawing.MM
	nextTrack  = 11 * drawing.MM
	secondRow  = 15 * drawing.MM / 2 // further out for figures that do not fit
	gap        = 3 * drawing.MM / 2  // between outline and extension line
	overrun    = 2 * drawing.MM
	lift       = 9 * drawing.MM / 2 // middle of a figure over its line
	stackHalf  = 7 * drawing.MM / 2 // half the height of a stacked fraction
	jog        = 4 * drawing.MM     // from an extension line to its running figure
	pad        = drawing.MM         // kept free at each end of a figure
	arrows     = 8 * drawing.MM     // the least length that holds two arrowheads
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
	sheet  *drawing.Sheet
	format unit.Format
	scale  drawing.Ratio
	tracks []track
	chain  int
	chains map[ends]int // the number of the links between two ends

	figures []figureText
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
// of each other stop.
func (b *Board) Running(side Side, origin string, stops []Stop, o Options) {
	b.tracks = append(b.tracks, track{side: side, stops: stops, options: o, role: drawing.Running, running: true, origin: origin})
}

// Room is how much a side's dimensions take off the outline.
func (b *Board) Room(side Side) drawing.Um {
	n := drawing.Um(0)
	for _, t := range b.tracks {
		if t.side == side {
			n += b.depth(t)
		}
	}
	if n > 0 {
		n += firstTrack - nextTrack + overrun
	}
	return n
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

// Draw places all dimensions round the outline and draws them, the figures over
// all lines: a line that passes under a figure is broken there.
func (b *Board) Draw(outline drawing.Rect) {
	for _, side := range []Side{Above, Below, LeftOf, RightOf} {
		at := b.edge(side, outline) + side.away()*(firstTrack-nextTrack)
		for _, t := range b.ordered(side) {
			depth := b.depth(t)
			switch {
			case t.running:
				b.drawRunning(t, at+side.away()*nextTrack)
			case side.away() > 0:
				// Figures stand over the line, on the outline's side of it.
				b.drawChain(t, at+depth)
			default:
				b.drawChain(t, at-nextTrack)
			}
			at += side.away() * depth
		}
	}
	b.drawFigures()
}

// drawFigures sets the figures, each on a white ground.
func (b *Board) drawFigures() {
	for _, f := range b.figures {
		l := drawing.Label(drawing.FigureText, f.group, drawing.Point{}, drawing.FigureHeight, f.align, f.runs)
		at := place(f.side, f.along, f.over)
		if f.flat == f.side.upright() {
			l = l.CentredOn(at)
			if f.flat && f.align == drawing.Left {
				l = l.CentredOn(drawing.Pt(at.X+l.Width()/2, at.Y))
			} else if f.flat {
				l = l.CentredOn(drawing.Pt(at.X-l.Width()/2, at.Y))
			}
		} else {
			l.Turn = 1
			switch {
			case !f.flat:
				l = l.CentredOn(at)
			case f.align == drawing.Left:
				l = l.CentredOn(drawing.Pt(at.X, at.Y+l.Width()/2))
			default:
				l = l.CentredOn(drawing.Pt(at.X, at.Y-l.Width()/2))
			}
		}
		ground := l.Bounds().Inset(-drawing.MM / 2)
		b.sheet.Add(drawing.Path{
			Class: drawing.Solid, Group: f.group, Closed: true, Fill: drawing.White,
			Start: ground.Min, Segs: drawing.Rectangle(drawing.Solid, 0, drawing.White, ground).Segs,
		}, l)
	}
}

// edge is the outline's coordinate on a side.
func (b *Board) edge(side Side, r drawing.Rect) drawing.Um {
	switch side {
	case Above:
		return r.Min.Y
	case Below:
		return r.Max.Y
	case LeftOf:
		return r.Min.X
	}
	return r.Max.X
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

// place turns a coordinate along the measured direction and one across it into
// a point.
func place(side Side, along, across drawing.Um) drawing.Point {
	if side.upright() {
		return drawing.Pt(across, along)
	}
	return drawing.Pt(along, across)
}
