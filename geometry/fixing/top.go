// Package fixing decides how the top of a rack is held and how big a hole a
// nail asks for: glue in front, blocks with slots for screws behind, so that the
// top can swell and shrink. A solved rack goes in; sizes, places and counts come
// out, which the checks, the steps of assembly and the sheets read, so that all
// of them speak of the same slot. Movement is floating point; every size that
// comes of it is rounded to what a shop can mark out.
package fixing

import (
	"math"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/wood"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Top is how the top is held.
type Top struct {
	Glued bool // on all upper aprons; else on the front one, with blocks behind
	Nails int  // from above, 0 unless the design states joint.top_nail
	Rows  int  // aprons that are nailed: both, or the front one alone

	// The rest is zero where the top is glued all round. A block stands behind
	// the back upper apron's top edge, its grain along the rack, flush with that
	// edge. A screw goes up through its slot into the top.
	Block    space.Point   // its size along x, y and z
	Middles  []unit.Length // of the blocks, from the left end of the carcase, ascending
	Slot     unit.Length   // from front to back, in the middle of the block
	SlotWide unit.Length
	Place    unit.Length // of the screw's middle from the slot's front end, with the wood as today
	Up       Screw       // through the slot into the top, round head and washer, one to a block
	Through  Screw       // through the apron into the block, PerBlock to a block
	Back     float64     // mm that the top moves back at the screws when the wood is moist
	Ahead    float64     // mm that it moves to the front when it is dry
}

// PerBlock is how many screws hold a block to the apron.
const PerBlock = 2

// Screw is a wood screw by its length, with how much of it is in the piece that
// it draws.
type Screw struct{ Length, Into unit.Length }

// Sizes of blocks and screws (common practice, no source).
const (
	blockLong = 2 * unit.Inch     // along the rack, where the channel allows
	blockDeep = 3 * unit.Inch / 2 // from front to back, at least
	blockWall = 3 * unit.Inch / 8 // left before and behind a slot
	beside    = unit.Inch / 8     // between a block and a leg
	topMargin = unit.Inch / 8     // left over a screw's point
	drawn     = 3 * unit.Inch / 4 // of a screw in a block
	nailsStep = 6 * unit.Inch     // between nails along an apron, at most

	// ScrewLeast is the least that a screw is to go into the top.
	ScrewLeast = 3 * unit.Inch / 8

	// slotSpare is added to a slot, half at either end, so that the screw does
	// not touch: 1/32 in at each. In mm.
	slotSpare = 2 * 25.4 / 32
)

// steps are how finely the unit's sizes are marked out, and in what lengths
// screws are sold.
func steps(r *rack.Rack) (size, sold unit.Length) {
	if r.Design.Units == unit.Metric {
		return unit.Millimetre, 5 * unit.Millimetre
	}
	return unit.Inch / 16, unit.Inch / 4
}

// Of returns how the rack's top is held; ok is false where it has none.
func Of(r *rack.Rack) (t Top, ok bool) {
	if !r.HasTop() {
		return t, false
	}
	t.Glued = r.Design.Joint.TopGlued
	if !r.Design.Joint.TopNail.Place.None() {
		t.Rows = 1
		if t.Glued {
			t.Rows = 2
		}
		t.Nails = t.Rows * (1 + int((r.Len("carcase.width")+nailsStep-1)/nailsStep))
	}
	if t.Glued {
		return t, true
	}
	t.blocks(r)
	t.screws(r)
	return t, true
}

// blocks sizes the blocks and their slots and sets them in the middle of
// columns: the first, the last, and those between that keep screws as near to
// each other as clamps are.
func (t *Top) blocks(r *rack.Rack) {
	size, _ := steps(r)
	t.Block = space.Point{X: blockLong.Down(size), Y: blockDeep.Up(size), Z: min(r.Len("apron.thickness"), r.Len("apron.height"))}
	var middles []unit.Length
	for _, c := range r.Columns {
		middles = append(middles, c.Left+(c.Right-c.Left)/2)
		t.Block.X = min(t.Block.X, (c.Right - c.Left - 2*beside).Down(size))
	}
	for _, i := range Spread(middles) {
		t.Middles = append(t.Middles, middles[i])
	}
	w := r.Design.Wood
	a := wood.AirOf(w)
	// From the middle of the glued apron to the middle of the blocks.
	free := r.Len("slat.length") + r.Len("apron.thickness")/2 - t.Block.Y/2
	t.Back = max(0, wood.Movement(free.MM(), wood.Across(w), a.Today, a.Moist))
	t.Ahead = max(0, wood.Movement(free.MM(), wood.Across(w), a.Dry, a.Today))
	shank := table.Value("move.screw")
	t.Slot = nearest(shank + t.Back + t.Ahead + slotSpare).Up(size)
	t.SlotWide = nearest(shank).Up(size)
	t.Place = nearest(shank/2 + t.Ahead + slotSpare/2).Nearest(size / 2)
	t.Block.Y = max(t.Block.Y, (t.Slot + 2*blockWall).Up(size))
}

// screws picks the lengths of both kinds of screw.
func (t *Top) screws(r *rack.Rack) {
	_, sold := steps(r)
	t.Up.Length = (t.Block.Z + r.Len("top.thickness") - topMargin).Down(sold)
	t.Up.Into = max(0, t.Up.Length-t.Block.Z)
	t.Through.Length = (r.Len("apron.thickness") + drawn).Down(sold)
	t.Through.Into = t.Through.Length - r.Len("apron.thickness")
}

// nearest returns the length nearest to so many millimetres.
func nearest(mm float64) unit.Length { return unit.Length(math.Round(mm * float64(unit.Millimetre))) }

// Spread returns which of the places, in ascending order, to use: the first, the
// last, and between them the fewest that stand no further apart than clamps may,
// or the next place where even that is further.
func Spread(at []unit.Length) []int {
	most := unit.Length(table.ClampsApart().Greatest) * unit.Inch
	out := []int{0}
	for i := 0; i < len(at)-1; {
		n := i + 1
		for n+1 < len(at) && at[n+1]-at[i] <= most {
			n++
		}
		out = append(out, n)
		i = n
	}
	return out
}
