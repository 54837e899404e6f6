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
	Sheet             bool // cut from sheet stock, as thick as a caul
	Together          bool // all from one piece, which is worked before it is cut up
	For               string
	By                string // name of the step that needs it first
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
		list = append(list, Aid{Name: "block " + BlockMark(r), Count: len(t.Middles), Thick: t.Block.Z, Wide: t.Block.Y, Long: t.Block.X,
			Together: true, For: "behind, under the top: it stays", By: StepBlocks})
	}
	for _, s := range Spacers(r) {
		where := "between facing legs"
		if len(Spacers(r)) > 1 {
			where = rack.Places("column", s.Columns)
		}
		list = append(list, Aid{Name: "spacer", Count: 2 * len(s.Columns), Thick: thick, Wide: high, Long: s.Long, For: where, By: stepDry})
	}
	leg, wide := r.Len("leg.length"), r.Len("slat.length")
	caul := Caul(r)
	sheet := func(count int, name string, w, long unit.Length, by, why string) {
		list = append(list, Aid{Name: name, Count: count, Thick: caul, Wide: w, Long: long, Sheet: true, For: why, By: by})
	}
	sheet(1, "jig board", wide+caul, leg+caul, stepJig, "bears fence and stop")
	sheet(1, "jig fence", thick+r.Len("leg.thickness"), leg, stepJig, "along one leg")
	sheet(1, "jig stop", thick+r.Len("leg.thickness"), wide, stepJig, "at the feet")
	if n := Packers(r); n > 0 {
		list = append(list, Aid{Name: "packer", Count: n, Thick: thick, Wide: high, Long: packerLong(r), For: "under the legs of a turned ladder", By: stepSecond})
	}
	across := CaulWide(r, r.Len("apron.height"))
	if r.Design.Joint.Glue {
		sheet(2, "caul", CaulWide(r, r.Len("leg.width")), leg, stepFirst, "along both legs, over the slats' ends")
		sheet(4, "caul", across, r.Len("carcase.width"), stepFront, "along the aprons; again over the top")
	}
	if n := topCauls(r); n > 0 && !r.Design.Joint.Glue {
		sheet(n, "caul", across, r.Len("carcase.width"), stepTop, "over the top and under the apron")
	}
	if top.GluedUp() {
		sheet(2, "caul", r.Len("top.thickness"), top.Length, StepGlueTop, "along the edges of the glued top")
		sheet(4, "batten", 2*caul, unit.Length(top.Staves)*top.StaveWidth, StepGlueTop, "across its ends, both faces; wax")
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
