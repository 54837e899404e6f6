package fixing

import (
	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// A Strip is the long piece that the blocks are bored in and then cut from, one
// after the other from its START end, which is square. Its grain runs along it,
// its back edge is that of the blocks. Lengths along it count from START, those
// across it from the back edge.
type Strip struct {
	Blocks []StripBlock
	Across [2]unit.Length // the middles of the holes that begin and end a slot: the one nearer the back edge first
	Slot   unit.Length    // how wide those holes are, bored through
	Pilot  unit.Length    // how wide the holes in the back edge are
	Deep   unit.Length    // and how deep: where the stop on the bit stands
	Up     unit.Length    // of these holes' middles from either face
	Kerf   unit.Length    // of each saw cut, beyond the block
	Long   unit.Length    // at least, with what is held at the last cut
}

// A StripBlock is one block on the strip.
type StripBlock struct {
	From, To unit.Length           // its ends; the saw cuts beyond To
	Slot     unit.Length           // the slot's middle
	Holes    [PerBlock]unit.Length // the middles of the holes for the apron's screws, ascending
}

// Strip returns the piece that the blocks are cut from with the shop's saw.
func (t Top) Strip(r *rack.Rack) Strip {
	kerf := r.Design.Shop.Kerf
	wall := (t.Block.Y - t.Slot) / 2
	s := Strip{
		Across: [2]unit.Length{wall + t.SlotWide/2, wall + t.Slot - t.SlotWide/2},
		Slot:   t.SlotWide, Pilot: BitsOf(r).Pilot, Deep: t.Through.Into, Up: t.Block.Z / 2, Kerf: kerf,
		Long: unit.Length(len(t.Middles))*(t.Block.X+kerf) + table.Length("saw.crosscut"),
	}
	for i := range t.Middles {
		b := StripBlock{From: unit.Length(i) * (t.Block.X + kerf)}
		b.To, b.Slot = b.From+t.Block.X, b.From+t.Block.X/2
		for k := range b.Holes {
			b.Holes[k] = b.From + t.Block.X*unit.Length(2*k+1)/(2*PerBlock)
		}
		s.Blocks = append(s.Blocks, b)
	}
	return s
}
