package label

import (
	"slatwright/render/drawing"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// A grid is a sheet of labels: so many across and down, each of one size, set
// off from the top left corner of the paper and from each other.
type grid struct {
	paper         string // id that table.FindPaper knows
	across, down  int
	width, height unit.Length // of one label
	left, top     unit.Length // from the paper's edge to the first label
	stepX, stepY  unit.Length // from one label to the next
}

// The grids, one for each paper: 30 labels of 2 5/8 by 1 in, and 24 of 70 by
// 37 mm (common practice, no source). They serve as well on plain paper, cut
// apart at the corner ticks.
var grids = []grid{
	{
		paper: "letter", across: 3, down: 10,
		width: 2*unit.Inch + 5*unit.Inch/8, height: unit.Inch,
		left: 3 * unit.Inch / 16, top: unit.Inch / 2,
		stepX: 2*unit.Inch + 3*unit.Inch/4, stepY: unit.Inch,
	},
	{
		paper: "a4", across: 3, down: 8,
		width: 70 * unit.Millimetre, height: 37 * unit.Millimetre,
		left: 0, top: unit.Millimetre / 2,
		stepX: 70 * unit.Millimetre, stepY: 37 * unit.Millimetre,
	},
}

// gridFor returns the grid for a paper and the paper itself.
func gridFor(id string) (grid, table.Paper, bool) {
	for _, g := range grids {
		if g.paper == id {
			p, ok := table.FindPaper(id)
			return g, p, ok
		}
	}
	return grid{}, table.Paper{}, false
}

// each returns how many labels a sheet holds.
func (g grid) each() int { return g.across * g.down }

// box returns the outline of label i of a sheet, row by row.
func (g grid) box(i int) drawing.Rect {
	x := g.left + unit.Length(i%g.across)*g.stepX
	y := g.top + unit.Length(i/g.across)*g.stepY
	return drawing.Box(um(x), um(y), um(g.width), um(g.height))
}

func um(l unit.Length) drawing.Um { return drawing.Um(l.Micrometres()) }

// What printers do not reach is 4 to 7 mm at the paper's edge (printers'
// manuals), and labels shift under the feed: lettering keeps this far from the
// paper's edge and from the label's.
const (
	edgeKeep  = 7 * mm
	labelKeep = 2 * mm
)

// room returns where lettering may stand in a label. It is the same in every
// label, so that a sheet looks of a piece.
func (g grid) room(box drawing.Rect) drawing.Rect {
	x := max(labelKeep, edgeKeep-um(g.left))
	y := max(labelKeep, edgeKeep-um(g.top))
	return drawing.Rect{
		Min: drawing.Pt(box.Min.X+x, box.Min.Y+y),
		Max: drawing.Pt(box.Max.X-x, box.Max.Y-y),
	}
}
