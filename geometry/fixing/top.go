// Package fixing decides how the top of a rack is held and how big a hole a
// nail asks for: glue in front, blocks with slots for screws behind, so that the
// top can swell and shrink. A solved rack goes in; sizes, places and counts come
// out, which the checks, the steps of assembly and the sheets read, so that all
// of them speak of the same slot. Movement is floating point; every size that
// comes of it is rounded to what a shop can mark out.
package fixing

import (
	"cmp"
	"math"
	"slices"

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
	FromLegs bool          // whether its section is that of the legs, so that it is cut from one's end
	Middles  []unit.Length // of the blocks, from the left end of the carcase, ascending
	Slot     unit.Length   // from front to back, in the middle of the block
	SlotWide unit.Length
	Place    unit.Length // of the screw's middle from the slot's front end, with the wood as today; ScrewAt says it for another
	Up       Screw       // through the slot into the top, round head and washer, one to a block
	Through  Screw       // through the apron into the block, PerBlock to a block
	Back     float64     // mm that the top moves back at the screws when the wood is moist
	Ahead    float64     // mm that it moves to the front when it is dry

	moves float64  // mm a percent of moisture at the screws, to the back when the wood gets moister
	air   wood.Air // of the room
}

// Least is the least thickness of the top over the blocks at which the screws that
// were picked for it still leave the wood over their points that they are to
// leave: never more than the thickness as drawn. It is zero where the top is glued
// all round: nothing sets a limit there.
func (t Top) Least() unit.Length {
	if t.Glued {
		return 0
	}
	return t.Up.Into + topMargin
}

// PerBlock is how many screws hold a block to the apron.
const PerBlock = 2

// Sizes of blocks (common practice, no source).
const (
	blockLong = 2 * unit.Inch     // along the rack, where the channel allows
	blockDeep = 3 * unit.Inch / 2 // from front to back, at least, where it is not cut from a leg
	blockWall = 3 * unit.Inch / 8 // left before and behind a slot
	beside    = unit.Inch / 8     // between a block and a leg
	nailsStep = 6 * unit.Inch     // between nails along an apron, at most

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
// columns. A block has the legs' section where that leaves wood round the slot
// and is clear of the bottles, since it is then cut off a leg board's end
// without a rip.
func (t *Top) blocks(r *rack.Rack) {
	size, _ := steps(r)
	t.Block.X = blockLong.Down(size)
	var middles []unit.Length
	for _, c := range r.Columns {
		middles = append(middles, c.Left+(c.Right-c.Left)/2)
		t.Block.X = min(t.Block.X, (c.Right - c.Left - 2*beside).Down(size))
	}
	for _, i := range Spread(middles) {
		t.Middles = append(t.Middles, middles[i])
	}
	if leg := r.Len("leg.thickness"); leg <= r.Len("apron.height") {
		t.slot(r, r.Len("leg.width"), leg)
		if t.FromLegs = t.Block.Y >= (t.Slot+2*blockWall).Up(size) && t.clear(r); t.FromLegs {
			return
		}
	}
	t.slot(r, blockDeep.Up(size), min(r.Len("apron.thickness"), r.Len("apron.height")))
	t.Block.Y = max(t.Block.Y, (t.Slot + 2*blockWall).Up(size))
}

// slot works out the slot of a block so deep and so high.
func (t *Top) slot(r *rack.Rack, deep, high unit.Length) {
	size, _ := steps(r)
	t.Block.Y, t.Block.Z = deep, high
	w := r.Design.Wood
	a := wood.AirOf(w)
	// From the middle of the glued apron to the middle of the blocks.
	free := r.Len("slat.length") + r.Len("apron.thickness")/2 - deep/2
	t.Back = max(0, wood.Movement(free.MM(), wood.Across(w), a.Today, a.Moist))
	t.Ahead = max(0, wood.Movement(free.MM(), wood.Across(w), a.Dry, a.Today))
	t.moves, t.air = wood.Movement(free.MM(), wood.Across(w), 0, 1), a
	shank := table.Value("move.screw")
	t.Slot = nearest(shank + t.Back + t.Ahead + slotSpare).Up(size)
	t.SlotWide = nearest(shank).Up(size)
	t.Place = t.ScrewAt(r, a.Today)
}

// clear reports whether a block in the middle of a column stands in none of its
// bottles, asked once of each kind of column, which are many alike in a wall.
func (t *Top) clear(r *rack.Rack) bool {
	asked := make([]bool, len(r.Kinds))
	for i, c := range r.Columns {
		if asked[c.Kind] {
			continue
		}
		asked[c.Kind] = true
		box := t.BlockAt(r, c.Left+(c.Right-c.Left)/2)
		first, _ := slices.BinarySearchFunc(r.Bottles, i, func(b rack.Bottle, column int) int { return cmp.Compare(b.Column, column) })
		for _, b := range r.Bottles[first:] {
			if b.Column != i {
				break
			}
			if !box.Meet(b.Body.Bounds()).Empty() {
				return false
			}
		}
	}
	return true
}

// BlockAt returns the block whose middle is so far from the left end of the
// carcase, in the rack's room.
func (t *Top) BlockAt(r *rack.Rack, middle unit.Length) space.Box {
	back, top := r.Len("apron.thickness")+r.Len("slat.length"), r.Len("leg.length")
	low := space.Point{X: middle - t.Block.X/2, Y: back - t.Block.Y, Z: top - t.Block.Z}
	return space.Box{Min: low, Max: low.Add(t.Block)}
}

// SlotAt returns the slot of that block, open above and below, and where its
// screw goes into the top.
func (t *Top) SlotAt(r *rack.Rack, middle unit.Length) (slot space.Box, screw space.Point) {
	slot = t.BlockAt(r, middle)
	slot.Min.X, slot.Max.X = middle-t.SlotWide/2, middle-t.SlotWide/2+t.SlotWide
	slot.Min.Y += (t.Block.Y - t.Slot) / 2
	slot.Max.Y = slot.Min.Y + t.Slot
	return slot, space.Point{X: middle, Y: slot.Min.Y + t.Place, Z: slot.Max.Z}
}

// HolesAt returns where the screws that hold that block go into the outer face
// of the back upper apron, from the left.
func (t *Top) HolesAt(r *rack.Rack, middle unit.Length) (at [PerBlock]space.Point) {
	block := t.BlockAt(r, middle)
	for i := range at {
		at[i] = space.Point{
			X: block.Min.X + t.Block.X*unit.Length(2*i+1)/(2*PerBlock),
			Y: block.Max.Y + r.Len("apron.thickness"), Z: block.Max.Z - t.Block.Z/2,
		}
	}
	return at
}

// nearest returns the length nearest to so many millimetres.
func nearest(mm float64) unit.Length { return unit.Length(math.Round(mm * float64(unit.Millimetre))) }

// Spread returns which of the places, in ascending order, to use: the first, the
// last, and between them the fewest that lie the same way from both ends and
// stand no further apart than clamps may. Neighbouring places are used both
// where even they are further apart.
func Spread(at []unit.Length) []int {
	if len(at) == 1 {
		return []int{0}
	}
	most := unit.Length(table.ClampsApart().Greatest) * unit.Inch
	for n := 2; ; n++ {
		if out, ok := even(len(at), n); ok && near(at, out, most) {
			return out
		}
	}
}

// even picks n of so many places, as evenly as the places allow and alike from
// both ends; it reports false where an odd n would need a middle one that an even
// number of places does not have.
func even(places, n int) ([]int, bool) {
	if n%2 == 1 && places%2 == 0 {
		return nil, false
	}
	out := make([]int, n)
	for i := range (n + 1) / 2 {
		k := (2*i*(places-1) + n - 1) / (2 * (n - 1)) // i (places - 1) / (n - 1), rounded
		out[i], out[n-1-i] = k, places-1-k
	}
	return out, true
}

// near reports whether neighbours among the chosen places stand no further apart
// than most, or are neighbours among all.
func near(at []unit.Length, chosen []int, most unit.Length) bool {
	for i, k := range chosen[1:] {
		if before := chosen[i]; k != before+1 && at[k]-at[before] > most {
			return false
		}
	}
	return true
}
