package sheet

import (
	"fmt"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/geometry/inspect"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
)

// spacerRoom is the height in which a spacer meets no slat, below the lowest ones and
// above the highest ones alike; not above nought where there is none.
func spacerRoom(r *rack.Rack) length {
	room := r.Len("leg.length")
	for _, k := range r.Kinds {
		room = min(room, k.Under[0], r.Len("leg.length")-k.Under[k.Rows-1]-r.Len("slat.height"))
	}
	return room
}

// spacersDrawn reports whether spacers as wide as a slat have room where they are
// drawn.
func spacersDrawn(r *rack.Rack) bool { return spacerRoom(r) >= r.Len("slat.height") }

// drawSpacers draws the spacers of every column, at the feet and at the top.
func drawSpacers(p *page, v picture) {
	r := p.in.Rack
	high, top := r.Len("slat.height"), r.Len("leg.length")
	if !spacersDrawn(r) {
		return
	}
	for _, c := range r.Columns {
		for _, z := range []length{0, top - high} {
			a, b := v.point(space.Point{X: c.Left, Z: z + high}), v.point(space.Point{X: c.Right, Z: z})
			p.sheet.Add(drawing.Rectangle(drawing.Phantom, 0, drawing.NoFill, drawing.Rect{Min: a, Max: b}))
		}
	}
}

// spacerText says how to make spacers and where they stand: slats are in the way
// but below the lowest and above the highest.
func spacerText(in Input) string {
	r := in.Rack
	room := spacerRoom(r)
	if room <= 0 {
		return fmt.Sprintf("Spacers as long as the clear way (%s) go between the legs where no slat is in the way.", spacersWithin(in))
	}
	drawn := ""
	if spacersDrawn(r) {
		drawn = ", drawn dash-dotted"
	}
	return fmt.Sprintf("Spacers%s: as long as the clear way (%s), less than %s wide, as thick as a slat; two to a column, between facing legs, below the lowest slats and above the highest: for the front aprons in front, for the back ones behind.",
		drawn, spacersWithin(in), r.Format.Unit(room))
}

// spacersWithin says how close the spacers are: to the shop's tolerance, and within
// what the fit bears of the way between the legs.
func spacersWithin(in Input) string {
	r, f, tol := in.Rack, in.Rack.Format, in.Rack.Design.Shop.Tolerance
	var list []string
	all := assembly.Spacers(r)
	for _, s := range all {
		least, greatest := s.Long-tol, s.Long+tol
		for _, d := range in.dimensions() {
			if d.Name != inspect.Channel || d.Drawn != s.Long {
				continue
			}
			if d.Least > 0 {
				least = max(least, d.Least)
			}
			if d.Greatest > 0 {
				greatest = min(greatest, d.Greatest)
			}
		}
		where := ""
		if len(all) > 1 {
			where = rack.Places("column", s.Columns) + ": "
		}
		list = append(list, fmt.Sprintf("%s%s to %s", where, f.Text(least), f.Unit(greatest)))
	}
	return strings.Join(list, "; ")
}
