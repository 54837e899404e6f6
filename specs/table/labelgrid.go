package table

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"slatwright/specs/unit"
)

// LabelGrid is a sheet of labels: so many across and down, each of one size, set
// off from the top left corner of the paper and from each other.
type LabelGrid struct {
	ID, Name                string // "" for a sheet of the maker's own
	Paper                   string // id that FindPaper knows; "" for a size of the maker's own
	PaperWidth, PaperHeight unit.Length
	Columns, Rows           int
	Width, Height           unit.Length // of one label
	Left, Top               unit.Length // from the paper's edge to the first label
	AcrossGap, DownGap      unit.Length // from one label to the next
	Cut                     bool        // plain paper, cut apart along printed lines
	Origin                  Origin
}

// What printers do not reach is 4 to 7 mm at the paper's edge (printers'
// manuals), and labels shift under the feed: lettering keeps EdgeKeep from the
// paper's edge and LabelKeep from the label's.
const (
	EdgeKeep  = 7 * unit.Millimetre
	LabelKeep = 2 * unit.Millimetre
)

//go:embed labelgrids.toml
var labelGridsText []byte

var labelGrids = sync.OnceValue(func() []LabelGrid {
	var file struct {
		Grid []struct {
			ID, Name, Paper string
			Columns, Rows   int
			Width, Height   length
			Left, Top       length
			AcrossGap       length `toml:"across_gap"`
			DownGap         length `toml:"down_gap"`
			Cut             bool
			origin
		}
	}
	decode("labels", labelGridsText, &file)
	var list []LabelGrid
	for _, g := range file.Grid {
		p, ok := FindPaper(g.Paper)
		if !ok {
			panic("table: labels: no paper " + g.Paper)
		}
		list = append(list, LabelGrid{
			ID: g.ID, Name: g.Name, Paper: g.Paper, PaperWidth: p.Width, PaperHeight: p.Height,
			Columns: g.Columns, Rows: g.Rows, Width: unit.Length(g.Width), Height: unit.Length(g.Height),
			Left: unit.Length(g.Left), Top: unit.Length(g.Top),
			AcrossGap: unit.Length(g.AcrossGap), DownGap: unit.Length(g.DownGap), Cut: g.Cut, Origin: g.origin.value(),
		})
	}
	return list
})

// LabelGrids returns the grids in the order of the table.
func LabelGrids() []LabelGrid { return slices.Clone(labelGrids()) }

// FindLabelGrid returns the grid with the id.
func FindLabelGrid(id string) (LabelGrid, bool) {
	for _, g := range labelGrids() {
		if g.ID == id {
			return g, true
		}
	}
	return LabelGrid{}, false
}

// PlainLabels returns the grid for plain sheets of a paper, "letter" or "a4",
// that are cut apart.
func PlainLabels(paper string) (LabelGrid, bool) { return FindLabelGrid(paper + "-cut") }

// Each returns how many labels a sheet holds.
func (g LabelGrid) Each() int { return g.Columns * g.Rows }

// Corner returns the top left corner of label i of a sheet, from 0, row by row,
// measured from the top left corner of the paper.
func (g LabelGrid) Corner(i int) (x, y unit.Length) {
	x = g.Left + unit.Length(i%g.Columns)*(g.Width+g.AcrossGap)
	y = g.Top + unit.Length(i/g.Columns)*(g.Height+g.DownGap)
	return x, y
}

// Used returns how much of the paper the labels take with the gaps between them.
func (g LabelGrid) Used() (width, height unit.Length) {
	return unit.Length(g.Columns)*(g.Width+g.AcrossGap) - g.AcrossGap, unit.Length(g.Rows)*(g.Height+g.DownGap) - g.DownGap
}

// Keep returns how far lettering keeps from the sides, and from the top and the
// foot, of a label. It is the same in every label, so that a sheet looks of a
// piece.
func (g LabelGrid) Keep() (x, y unit.Length) {
	width, height := g.Used()
	x = max(LabelKeep, EdgeKeep-min(g.Left, g.PaperWidth-g.Left-width))
	y = max(LabelKeep, EdgeKeep-min(g.Top, g.PaperHeight-g.Top-height))
	return x, y
}

// Room returns the size of what lettering may take of a label; it is not
// positive where there is none.
func (g LabelGrid) Room() (width, height unit.Length) {
	x, y := g.Keep()
	return g.Width - 2*x, g.Height - 2*y
}

func listLabelGrids(f unit.Format) Listing {
	l := Listing{Name: "labels", Title: "labels: grids of labels on a sheet, columns x rows, width x height; print one on plain paper and hold it against yours"}
	for _, g := range labelGrids() {
		l.Rows = append(l.Rows, Row{Name: g.ID, Text: g.Name, Cells: []Cell{
			{"grid", fmt.Sprintf("%d x %d", g.Columns, g.Rows), g.Origin},
			{"label", f.Text(g.Width) + " x " + f.Unit(g.Height), g.Origin},
			{"margin, left and top", f.Text(g.Left) + ", " + f.Unit(g.Top), g.Origin},
			{"gap, across and down", f.Text(g.AcrossGap) + ", " + f.Unit(g.DownGap), g.Origin},
		}})
	}
	return l
}
