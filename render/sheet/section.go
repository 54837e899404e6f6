package sheet

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// sections are the sections through two rows of a column's cells, seen from the
// front, with the largest and the smallest bottle in thin outline and every
// clearance. There is a page for each kind of column.
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
	name, title := "05-section", "Section through cells"
	if len(r.Kinds) > 1 {
		name = fmt.Sprintf("05-section-%d", kind+1)
		title += ", " + k.Name
	}
	p := in.newPage(name, title)
	rows := min(k.Rows, 2)
	s, left := cellScene(r, k, rows)
	m := margins{44 * drawing.MM, 44 * drawing.MM, 30 * drawing.MM, 30*drawing.MM + viewTitle}
	v := pictured(in, s, view.Front, false, m.within(p.area))
	for _, b := range s.Boxes {
		box := v.around(b.Box)
		g := p.sheet.Group()
		p.sheet.Add(drawing.Hatching{Pitch: 2 * drawing.MM}.Hatch(g, box)...)
		p.sheet.Add(drawing.Rectangle(drawing.Visible, g, drawing.NoFill, box))
	}
	e := elevation{p, v, v.extent(s), dim.New(p.sheet, r.Format, drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den})}
	centre := left + (k.Channel / 2)
	for row := range rows {
		e.bottles(k, row, centre)
	}
	e.cellSizes(k, rows, left)
	e.dim.Draw(e.out)
	captionBelow(p.sheet, drawing.Pt(p.area.Min.X+p.area.W()/2, p.area.Max.Y-viewTitle), "Rows 1 and 2 from the front, "+scaleText(v)+cellNote(r, k))
	return p
}

// cellScene is the legs and slats of one column from the foot to above the
// given rows, and the x of the column's left leg face.
func cellScene(r *rack.Rack, k rack.Kind, rows int) (view.Scene, unit.Length) {
	leg, slatT, slatH := r.Len("leg.thickness"), r.Len("slat.thickness"), r.Len("slat.height")
	high := k.Under[rows-1] + slatH + r.Len("cell.top_clearance") + k.Fit[rows-1][0].Diameter.Max
	if rows < k.Rows {
		high = k.Under[rows] + slatH
	}
	high = min(high, r.Len("leg.length"))
	box := func(x, w, z, h unit.Length) view.Solid {
		return view.Solid{Box: space.Box{Min: space.Point{X: x, Z: z}, Max: space.Point{X: x + w, Y: r.Len("slat.length"), Z: z + h}}}
	}
	s := view.Scene{Boxes: []view.Solid{box(0, leg, 0, high), box(leg+k.Channel, leg, 0, high)}}
	for row := range min(rows+1, k.Rows) {
		s.Boxes = append(s.Boxes, box(leg, slatT, k.Under[row], slatH), box(leg+k.Channel-slatT, slatT, k.Under[row], slatH))
	}
	return s, leg
}

// bottles draws the largest and the smallest bottle of a row, resting.
func (e elevation) bottles(k rack.Kind, row int, centre unit.Length) {
	r := e.p.in.Rack
	large, small := extremes(k.Fit[row])
	for _, d := range []unit.Length{large, small} {
		h, ok := rack.AxisAbove(d, k.Gap, r.Len("slat.eased"))
		if !ok {
			continue
		}
		at := e.v.point(space.Point{X: centre, Z: k.Under[row] + r.Len("slat.height") + h})
		radius := drawing.Um((d / 2 * unit.Length(e.v.proj.Num) / unit.Length(e.v.proj.Den)).Micrometres())
		e.p.sheet.Add(drawing.Disc(drawing.Thin, e.p.sheet.Group(), drawing.NoFill, at, radius))
		if large == small {
			break
		}
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

// cellSizes puts on the gap, the channel, the pitch and the rises.
func (e elevation) cellSizes(k rack.Kind, rows int, left unit.Length) {
	r := e.p.in.Rack
	slat, leg := r.Len("slat.thickness"), r.Len("leg.thickness")
	x := func(l unit.Length) dim.Stop { return e.x(l, dim.Below) }
	e.dim.Chain(dim.Below, []dim.Stop{x(0), x(left), x(left + slat), x(left + k.Channel - slat), x(left + k.Channel), x(left + k.Channel + leg)}, dim.Options{})
	e.dim.Overall(dim.Below, x(0), x(left+k.Channel+leg), dim.Options{})
	channel := func(l unit.Length) dim.Stop { return e.x(l, dim.Above) }
	e.dim.Chain(dim.Above, []dim.Stop{channel(left), channel(left + k.Channel)}, dim.Options{Names: []string{"cell.channel"}})
	z := []dim.Stop{e.z(0, dim.LeftOf)}
	tops := []dim.Stop{e.z(0, dim.RightOf)}
	for row := range min(rows+1, k.Rows) {
		z = append(z, e.z(k.Under[row], dim.LeftOf))
		tops = append(tops, e.z(k.Under[row]+r.Len("slat.height"), dim.RightOf))
	}
	e.dim.Chain(dim.LeftOf, ascending(z...), dim.Options{})
	e.dim.Running(dim.RightOf, "FOOT", tops, dim.Options{})
}

// cellNote says how the bottles lie, in words.
func cellNote(r *rack.Rack, k rack.Kind) string {
	large, small := extremes(k.Fit[0])
	f := r.Format
	text := fmt.Sprintf("; bottles %s to %s across", about(f, small), about(f, large))
	if s, ok := rack.Sag(small, k.Gap, r.Len("slat.eased")); ok {
		text += ", the smallest hangs " + about(f, s) + " below the slat tops"
	}
	return text
}

// about prints a length that need not be on the grid.
func about(f unit.Format, l unit.Length) string { return f.Text(l) }
