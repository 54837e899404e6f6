package assembly

import (
	"fmt"

	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// An Aid is a piece that the shop makes itself: the blocks, which stay in the
// rack, and what only helps to build it. Its grain runs along Long.
type Aid struct {
	Name              string
	Count             int
	Thick, Wide, Long unit.Length
	From              string // what it is cut from
	For               string
}

// packerLong is how long a packer is (common practice, no source).
func packerLong(r *rack.Rack) unit.Length {
	if r.Design.Units == unit.Metric {
		return 75 * unit.Millimetre
	}
	return 3 * unit.Inch
}

// Aids returns what the shop makes itself, the blocks first. Sizes of what only
// helps are the least that serve; those of blocks, spacers and packers are to be
// kept.
func Aids(r *rack.Rack, top finish.Panel) []Aid {
	var list []Aid
	thick, high := r.Len("slat.thickness"), r.Len("slat.height")
	if t, ok := fixing.Of(r); ok && !t.Glued {
		from := "a spare board"
		if t.FromLegs {
			from = "leg stock, no rip"
		}
		list = append(list, Aid{"block " + BlockMark(r), len(t.Middles), t.Block.Z, t.Block.Y, t.Block.X, from, "behind, under the top: it stays"})
	}
	for _, s := range Spacers(r) {
		where := "between facing legs, at aprons"
		if len(Spacers(r)) > 1 {
			where += ", " + rack.Places("column", s.Columns)
		}
		list = append(list, Aid{"spacer", 2 * len(s.Columns), thick, high, s.Long, "slat stock", where})
	}
	leg, wide := r.Len("leg.length"), r.Len("slat.length")
	caul := Caul(r)
	list = append(list,
		Aid{"jig board", 1, caul, wide + caul, leg + caul, "sheet stock", "under a ladder; fence and stop stand on two of its edges"},
		Aid{"jig fence", 1, caul, thick + r.Len("leg.thickness"), leg, "sheet stock", "along one leg"},
		Aid{"jig stop", 1, caul, thick + r.Len("leg.thickness"), wide, "sheet stock", "at the feet"})
	if n := Packers(r); n > 0 {
		list = append(list, Aid{"packer", n, thick, high, packerLong(r), "slat stock", "under the legs of a turned ladder"})
	}
	if r.Design.Joint.Glue {
		list = append(list, Aid{"caul", 2, caul, CaulWide(r, r.Len("leg.width")), leg, "sheet stock", "along both legs, over the slats' ends"})
		list = append(list, Aid{"caul", 4, caul, CaulWide(r, r.Len("apron.height")), r.Len("carcase.width"), "sheet stock", "along both aprons, front and back; again over the top"})
	}
	if n := topCauls(r); n > 0 && !r.Design.Joint.Glue {
		list = append(list, Aid{"caul", n, caul, CaulWide(r, r.Len("apron.height")), r.Len("carcase.width"), "sheet stock", "over the top and under the apron"})
	}
	if top.GluedUp() {
		list = append(list,
			Aid{"caul", 2, caul, r.Len("top.thickness"), top.Length, "sheet stock", "along the edges of the glued top"},
			Aid{"batten", 4, caul, 2 * caul, unit.Length(top.Staves) * top.StaveWidth, "sheet stock", "across its ends, both faces; wax"})
	}
	return list
}

// CaulWide is the width of a caul over pieces so wide: three quarters of it.
func CaulWide(r *rack.Rack, over unit.Length) unit.Length {
	step := unit.Inch / 8
	if r.Design.Units == unit.Metric {
		step = unit.Millimetre
	}
	return max(step, (over * 3 / 4).Down(step))
}

// topCauls is how many cauls the top takes when it goes on.
func topCauls(r *rack.Rack) int {
	switch {
	case !r.HasTop():
		return 0
	case r.Design.Joint.TopGlued:
		return 4
	}
	return 2
}

// Size prints an aid's size, along the grain last.
func (a Aid) Size(f unit.Format) string {
	return fmt.Sprintf("%s × %s × %s", f.Text(a.Thick), f.Text(a.Wide), f.Unit(a.Long))
}
