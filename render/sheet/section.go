package sheet

import (
	"fmt"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// sections are the sections through two rows of cells, a page for each kind of
// column: legs and slats cut, the largest and the smallest bottle in thin
// outline, and every clearance beside them.
func sections(in Input) []*page {
	var out []*page
	for k := range in.Rack.Kinds {
		out = append(out, section(in, k))
	}
	return out
}

// section draws the cells of one kind of column.
func section(in Input, kind int) *page {
	r := in.Rack
	k := r.Kinds[kind]
	name, title := "section", "Section through cells"
	if len(r.Kinds) > 1 {
		name = fmt.Sprintf("section-%d", kind+1)
		title = "Section, " + k.Name
	}
	p := in.newPage(name, title)
	left, right := p.area, p.area
	left.Max.X = left.Min.X + left.W()*3/5
	right.Min.X = left.Max.X + 6*drawing.MM

	c, v := roomyCells(in, k, left)
	for _, b := range c.boxes.Boxes {
		box := v.around(b.Box)
		g := p.sheet.Group()
		p.sheet.Add(drawing.Hatching{Pitch: 2 * drawing.MM}.Hatch(g, box)...)
		p.sheet.Add(drawing.Rectangle(drawing.Visible, g, drawing.NoFill, box))
	}
	e := p.elevation(v, v.extent(c.boxes))
	for row := range c.rows {
		e.restingBottles(k, row, c.left+k.Channel/2)
	}
	e.cellSizes(k, c)
	e.dim.Draw(e.out)
	captionBelow(p.sheet, drawing.Pt(left.Min.X+left.W()/2, p.area.Max.Y-viewTitle), "From the front, legs broken off, "+scaleText(v))
	clearances(in, k, kind, newScribe(p.sheet, right))
	return p
}

// cells is what a section shows of a column.
type cells struct {
	boxes view.Scene
	rows  int         // of bottles shown
	left  unit.Length // the column's left leg face
}

// roomyCells shows two rows, or one where only that leaves the picture at half
// size or larger.
func roomyCells(in Input, k rack.Kind, area drawing.Rect) (cells, picture) {
	m := margins{34 * drawing.MM, 36 * drawing.MM, 30 * drawing.MM, 30*drawing.MM + viewTitle}
	for rows := min(k.Rows, 2); ; rows-- {
		c := cellScene(in.Rack, k, rows)
		v := pictured(in, c.boxes, view.Front, false, m.within(area))
		if v.proj.Den <= 2 || rows == 1 {
			return c, v
		}
	}
}

// cellScene is the legs and slats of one column about its lowest rows.
func cellScene(r *rack.Rack, k rack.Kind, rows int) cells {
	leg, slatT, slatH := r.Len("leg.thickness"), r.Len("slat.thickness"), r.Len("slat.height")
	shown := min(rows+1, k.Rows)
	low := k.Under[0] - min(slatH/2, k.Under[0])
	high := k.Under[shown-1] + slatH*3/2
	if shown == rows { // no slats above the last bottle
		large, _ := extremes(k.Fit[rows-1])
		high = k.Under[rows-1] + slatH + large
	}
	high = min(high, r.Len("leg.length"))
	box := func(x, w, z, h unit.Length) view.Solid {
		return view.Solid{Box: space.Box{Min: space.Point{X: x, Z: z}, Max: space.Point{X: x + w, Y: r.Len("slat.length"), Z: z + h}}}
	}
	c := cells{rows: rows, left: leg}
	c.boxes.Boxes = []view.Solid{box(0, leg, low, high-low), box(leg+k.Channel, leg, low, high-low)}
	for _, z := range k.Under[:shown] {
		c.boxes.Boxes = append(c.boxes.Boxes, box(leg, slatT, z, slatH), box(leg+k.Channel-slatT, slatT, z, slatH))
	}
	return c
}

// restingBottles draws the largest and the smallest bottle of a row.
func (e *elevation) restingBottles(k rack.Kind, row int, centre unit.Length) {
	r := e.p.in.Rack
	large, small := extremes(k.Fit[row])
	sizes := []unit.Length{large, small}
	if large == small {
		sizes = sizes[:1]
	}
	for _, d := range sizes {
		h, ok := rack.AxisAbove(d, k.Gap, r.Len("slat.eased"))
		if !ok {
			continue // falls through: the check says so
		}
		at := e.v.point(space.Point{X: centre, Z: k.Under[row] + r.Len("slat.height") + h})
		radius := (d / 2 * unit.Length(e.v.proj.Num) / unit.Length(e.v.proj.Den)).Micrometres()
		e.p.sheet.Add(drawing.Disc(drawing.Thin, e.p.sheet.Group(), drawing.NoFill, at, drawing.Um(radius)))
	}
}

// extremes are the largest and the smallest diameter that a row must hold.
func extremes(list []table.Bottle) (large, small unit.Length) {
	small = list[0].Diameter.Min
	for _, b := range list {
		large, small = max(large, b.Diameter.Max), min(small, b.Diameter.Min)
	}
	return large, small
}

// cellSizes puts on the gap, the channel and the pitch across, rises and slats
// upwards.
func (e *elevation) cellSizes(k rack.Kind, c cells) {
	r := e.p.in.Rack
	slat, leg, high := r.Len("slat.thickness"), r.Len("leg.thickness"), r.Len("slat.height")
	x := func(l unit.Length) dim.Stop { return e.x(l, dim.Below) }
	faces := []dim.Stop{x(0), x(c.left), x(c.left + slat), x(c.left + k.Channel - slat), x(c.left + k.Channel), x(c.left + k.Channel + leg)}
	e.dim.Chain(dim.Below, faces, dim.Options{})
	e.dim.Overall(dim.Below, faces[0], faces[5], dim.Options{})
	e.dim.Chain(dim.Above, []dim.Stop{e.x(c.left, dim.Above), e.x(c.left+k.Channel, dim.Above)}, dim.Options{})
	var under, edges []dim.Stop
	for _, z := range k.Under[:min(c.rows+1, k.Rows)] {
		under = append(under, e.z(z, dim.LeftOf))
		edges = append(edges, e.z(z, dim.RightOf), e.z(z+high, dim.RightOf))
	}
	if len(under) > 1 {
		e.dim.Chain(dim.LeftOf, under, dim.Options{})
	}
	e.dim.Chain(dim.RightOf, edges, dim.Options{})
}

// clearances writes beside the section how the bottles lie and what is left
// round them.
func clearances(in Input, k rack.Kind, kind int, w *scribe) {
	r := in.Rack
	f := r.Format
	w.heading("How the bottles lie")
	large, small := extremes(k.Fit[0])
	w.note("Drawn: the largest bottle, "+f.Unit(large)+" across, and the smallest, "+f.Unit(small)+".", 0)
	for _, d := range []struct {
		name string
		size unit.Length
	}{{"largest", large}, {"smallest", small}} {
		if s, ok := rack.Sag(d.size, k.Gap, r.Len("slat.eased")); ok {
			w.note("The "+d.name+" hangs "+f.Unit(s)+" below the slat tops and stands "+f.Unit(d.size-s)+" above them.", 0)
		}
	}
	w.note("Slats: underside of the lowest "+f.Unit(k.Under[0])+" above the foot; then one every "+risesText(f, k)+".", 0)
	w.skip(3 * drawing.MM)
	var rows [][]string
	for _, x := range in.Findings {
		if strings.HasPrefix(x.Name, "fit.") && findingOf(x.Where, r, kind) {
			rows = append(rows, []string{x.Name, statusWord(x), x.Says})
		}
	}
	list{"What the checks found", []tableColumn{
		{title: "check", width: 30 * drawing.MM}, {title: "status", width: 15 * drawing.MM}, {title: "what it says"},
	}, rows}.write(w, "more on the order sheet")
}

// risesText prints the rises of a column: one figure where all are alike.
func risesText(f unit.Format, k rack.Kind) string {
	var all []string
	for _, rise := range k.Rises {
		if text := f.Unit(rise); len(all) == 0 || all[len(all)-1] != text {
			all = append(all, text)
		}
	}
	if len(all) == 0 {
		return "row alone"
	}
	return strings.Join(all, ", ")
}

// findingOf reports whether a finding about columns is about this kind: it
// names the first of the kind's columns.
func findingOf(where string, r *rack.Rack, kind int) bool {
	first := 1
	for _, k := range r.Kinds[:kind] {
		first += k.Count
	}
	n := strings.TrimLeft(strings.TrimPrefix(strings.TrimPrefix(where, "columns"), "column"), " ")
	return len(r.Kinds) == 1 || n == fmt.Sprint(first) || strings.HasPrefix(n, fmt.Sprintf("%d-", first))
}
