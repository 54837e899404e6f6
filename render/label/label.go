// Package label lays out a label for every piece of a rack, or for every bundle
// of a ladder where pieces are many, on sheets of labels: its mark and order, what
// it is and where it goes, which of how many, its size, and an arrow to the end
// that comes first. Solved racks go in; sheets come out, for the pdf writer.
package label

import (
	"fmt"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

const mm = drawing.MM

// A Batch is a cutting plan with the content marks of its orders' packets, in
// their order.
type Batch struct {
	Plan  *saw.Plan
	Marks []string
}

// Sheets returns the labels of all pieces in the order of the rack: ladder by
// ladder, then aprons, the top, and the blocks under it. Mark is the content mark
// of the packet, on every label. An error says that no label of the design's
// sheets can hold the lettering.
func Sheets(r *rack.Rack, mark string) ([]*drawing.Sheet, error) {
	return sheets(r, bundled(inPlace(r, r.Design.Order, mark)))
}

// InCuttingOrder returns the labels of plans, one after the other without a
// break, in the order in which the parts come off the saw, those of spares
// included. The sheets of the first plan's first order hold for all.
func InCuttingOrder(batches ...Batch) ([]*drawing.Sheet, error) {
	var entries []entry
	for _, b := range batches {
		entries = append(entries, bundled(asCut(b.Plan, b.Marks))...)
	}
	return sheets(batches[0].Plan.Orders[0].Rack, entries)
}

func sheets(r *rack.Rack, entries []entry) ([]*drawing.Sheet, error) {
	d := r.Design
	g := d.Labels.Grid
	if g.Each() == 0 {
		return nil, fmt.Errorf("no grid of labels for paper %q", d.Paper.Labels)
	}
	lay, err := arrange(size(g), entries)
	if err != nil {
		return nil, err
	}
	var sheets []*drawing.Sheet
	for i, e := range entries {
		place := (d.Labels.First - 1 + i) % g.Each()
		if i == 0 || place == 0 {
			sheets = append(sheets, blank(g, len(sheets)+1, d.Units))
		}
		s := sheets[len(sheets)-1]
		outline := box(g, place)
		f := face{sheet: s, room: room(g, outline), arranged: lay}
		f.draw(e)
		if g.Cut {
			ticks(s, outline)
			cuts(s, outline)
		}
	}
	return sheets, nil
}

// blank returns sheet n of a grid without its labels.
func blank(g table.LabelGrid, n int, units unit.System) *drawing.Sheet {
	w, h := um(g.PaperWidth), um(g.PaperHeight)
	return &drawing.Sheet{
		Name: fmt.Sprintf("%02d-labels", n), Title: fmt.Sprintf("Labels %d", n),
		W: w, H: h, Frame: drawing.Box(0, 0, w, h), Units: units, FullSize: true,
	}
}

func um(l unit.Length) drawing.Um { return drawing.Um(l.Micrometres()) }

// box returns the outline of label i of a sheet.
func box(g table.LabelGrid, i int) drawing.Rect {
	x, y := g.Corner(i)
	return drawing.Box(um(x), um(y), um(g.Width), um(g.Height))
}

// room returns where lettering may stand in a label.
func room(g table.LabelGrid, outline drawing.Rect) drawing.Rect {
	x, y := g.Keep()
	return drawing.Rect{Min: outline.Min.Add(drawing.Pt(um(x), um(y))), Max: outline.Max.Sub(drawing.Pt(um(x), um(y)))}
}

// size returns the size of the room of every label.
func size(g table.LabelGrid) drawing.Point {
	w, h := g.Room()
	return drawing.Pt(um(w), um(h))
}

// reach is the edge of the paper that printers do not reach, at the least: a line
// that some printers cut off is still worth its ink.
const reach = 4 * mm

// cuts draws the lines to cut a label out along, those that it shares with a
// neighbour once.
func cuts(s *drawing.Sheet, box drawing.Rect) {
	paper := drawing.Box(0, 0, s.W, s.H).Inset(reach)
	const clear = 3 * mm // of the crosses at the corners
	add := func(a, b drawing.Point) {
		l := drawing.Line(drawing.FrameThin, 0, a, b)
		same := func(m drawing.Mark) bool {
			p, ok := m.(drawing.Path)
			return ok && p.Class == l.Class && p.Bounds() == l.Bounds()
		}
		if !slices.ContainsFunc(s.Marks, same) {
			s.Add(l)
		}
	}
	for _, x := range []drawing.Um{box.Min.X, box.Max.X} {
		if x >= paper.Min.X && x <= paper.Max.X {
			add(drawing.Pt(x, max(box.Min.Y, paper.Min.Y)+clear), drawing.Pt(x, min(box.Max.Y, paper.Max.Y)-clear))
		}
	}
	for _, y := range []drawing.Um{box.Min.Y, box.Max.Y} {
		if y >= paper.Min.Y && y <= paper.Max.Y {
			add(drawing.Pt(max(box.Min.X, paper.Min.X)+clear, y), drawing.Pt(min(box.Max.X, paper.Max.X)-clear, y))
		}
	}
}

// ticks marks the corners of a label that the printer reaches, to cut by.
func ticks(s *drawing.Sheet, box drawing.Rect) {
	paper := drawing.Box(0, 0, s.W, s.H).Inset(reach)
	for _, p := range []drawing.Point{box.Min, drawing.Pt(box.Max.X, box.Min.Y), box.Max, drawing.Pt(box.Min.X, box.Max.Y)} {
		if p.In(paper) {
			s.Add(drawing.Cross(drawing.Register, 0, p, 2*mm)...)
		}
	}
}
