package sheet

import (
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// A partBlock draws one part, lying with its grain from left to right.
type partBlock struct {
	part  int
	name  string // of the part
	pair  string // "front pair": which of the aprons, where they differ
	off   int    // how many are made
	piece rack.Piece
	scene view.Scene
	face  view.Direction // at the wide face that is fixed to others
	other bool           // the face's nails stand on the other diagonal
	width space.Axis
	thick space.Axis
	scale int64      // divisor of the picture
	gap   gapped     // what a broken part lacks
	hold  fixing.Top // of the top and of the apron that is bored for its blocks: how it is held; zero of others
}

// newPartBlock draws a piece, n into Pieces.
func newPartBlock(in Input, n int) partBlock {
	r := in.Rack
	piece := r.Pieces[n]
	part := r.Parts[piece.Part]
	b := partBlock{part: piece.Part, name: part.Name, off: part.Count, piece: piece,
		scene: view.Scene{Boxes: []view.Solid{{ID: n, Box: piece.Box}}}}
	switch b.name {
	case "slat": // seen at the face that sits on the legs
		b.width, b.thick, b.face = space.Z, space.X, view.Left
		if piece.Box.Min.X < r.Ladders[piece.Ladder].X {
			b.face = view.Right
		} else {
			b.other = true
		}
	case "leg": // at a face that carries slats
		b.width, b.thick, b.face, b.other = space.Y, space.X, view.Right, true
		if len(r.Shapes[r.Ladders[piece.Ladder].Shape].Right) == 0 {
			b.face, b.other = view.Left, false
		}
	case "apron": // at the face that sits on the legs
		b.width, b.thick, b.face = space.Z, space.Y, view.Back
		if piece.Box.Min.Y > 0 {
			b.face = view.Front
		}
	default: // the top, from below
		b.width, b.thick, b.face = space.Y, space.Z, view.Bottom
		b.hold, _ = fixing.Of(r)
	}
	return b
}

// lies reports whether the view must be turned for the grain to run from left
// to right.
func (b partBlock) lies() bool { return b.piece.Grain == space.Z }

// left is the room at the left of the view.
func (b partBlock) left() drawing.Um {
	switch {
	case b.slotted():
		return partLeft + partFront
	case b.bored():
		return partLeft + partHoles
	}
	return partLeft
}

// picture returns the part's view at its scale.
func (b partBlock) picture(p *page) picture {
	return picture{proj: view.Projection{Direction: b.face, Num: 1, Den: b.scale}, lies: b.lies()}
}

// largest returns the scale of the largest picture that a sheet has room for.
func (b partBlock) largest(p *page) int64 {
	box := p.area
	box.Min.X += b.left()
	box.Max.X -= partEnd
	box.Max.Y -= partTitle + 25*drawing.MM + partBelow
	return pictured(p.in, b.scene, b.face, b.lies(), box).proj.Den
}

// height returns how much room the block takes.
func (b partBlock) height(p *page) drawing.Um {
	v := b.picture(p)
	return partTitle + b.above(p, v) + v.extent(b.scene).H() + b.second(p, v) + b.under(v) + b.below(p)
}

// second returns how much room the figures under the view take, and the view of
// the outer face with its own.
func (b partBlock) second(p *page, v picture) drawing.Um {
	high := b.outsideAt(p, v)
	if b.nailed() {
		out := v.extent(b.scene)
		high += out.H() + max(nailFigure, b.nailBoard(p, b.outside(v, out.Min)).Room(dim.Below))
	}
	return high
}

// outsideAt returns how far below the view that of the outer face begins.
func (b partBlock) outsideAt(p *page, v picture) drawing.Um {
	out := v.extent(b.scene)
	face, _ := b.boards(p, v, out, b.end(p, v, out))
	high := max(face.Room(dim.Below), b.beside(p.in.Rack, v, out))
	if b.nailed() {
		high += partSecond
	}
	return high
}

// under returns how far below the view its note starts: clear of the arrowhead
// that a narrow part's width has outside, and of the lines of a break.
func (b partBlock) under(v picture) drawing.Um {
	if v.extent(b.scene).H() < partNarrow || !b.gap.none() {
		return 6 * drawing.MM
	}
	return 2 * drawing.MM
}

// partNarrow is a view so narrow that its width's arrowheads stand outside.
const partNarrow = 8 * drawing.MM

// above returns how much room the dimensions over the view take.
func (b partBlock) above(p *page, v picture) drawing.Um {
	out := v.extent(b.scene)
	face, end := b.boards(p, v, out, b.end(p, v, out))
	least := 3 * drawing.MM
	switch {
	case out.H() < partNarrow: // its width's figure may stand over it
		least = 12 * drawing.MM
	case b.bored():
		least = holeFigure
	case b.name == "leg" || b.slotted():
		least = frontEdge
	}
	return max(least, face.Room(dim.Above), end.Room(dim.Above), b.beside(p.in.Rack, v, out))
}
