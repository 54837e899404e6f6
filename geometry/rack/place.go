package rack

import (
	"fmt"
	"slices"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// place sets every piece and bottle of a solved rack in space. It reads the
// lengths and the kinds of column and fills everything else; it decides no size.
func (r *Rack) place() {
	r.placeColumns()
	r.nameShapes()
	r.listParts()
	r.placeLadders()
	r.placeAprons()
	r.placeTop()
	r.joinFaces()
	r.layBottles()
	r.count()
}

// placeColumns sets columns side by side from the left face of the first leg.
func (r *Rack) placeColumns() {
	leg := r.Len("leg.thickness")
	x := unit.Length(0)
	for k, kind := range r.Kinds {
		for range kind.Count {
			r.Columns = append(r.Columns, Column{Kind: k, Left: x + leg, Right: x + leg + kind.Channel})
			x += kind.Pitch
		}
	}
}

// nameShapes finds the kinds of ladder: two ladders are alike where they have
// the same role and the same slats on both faces.
func (r *Rack) nameShapes() {
	leg := r.Len("leg.thickness")
	last := len(r.Columns)
	for i := 0; i <= last; i++ {
		s := Shape{Role: Inner}
		x := unit.Length(0)
		if i > 0 {
			s.Left = r.Kinds[r.Columns[i-1].Kind].Under
			x = r.Columns[i-1].Right
		}
		if i < last {
			s.Right = r.Kinds[r.Columns[i].Kind].Under
			x = r.Columns[i].Left - leg
		}
		switch i {
		case 0:
			s.Role = LeftEnd
		case last:
			s.Role = RightEnd
		}
		r.Ladders = append(r.Ladders, Ladder{Shape: r.shapeOf(s), X: x})
	}
}

// shapeOf returns the index of s in Shapes, adding it where it is new.
func (r *Rack) shapeOf(s Shape) int {
	same := 1
	for i := range r.Shapes {
		t := &r.Shapes[i]
		if t.Role != s.Role {
			continue
		}
		if slices.Equal(t.Left, s.Left) && slices.Equal(t.Right, s.Right) {
			t.Count++
			return i
		}
		same++
	}
	s.Name, s.Count = s.Role.String(), 1
	if same > 1 {
		s.Name = fmt.Sprintf("%s %d", s.Name, same)
	}
	r.Shapes = append(r.Shapes, s)
	return len(r.Shapes) - 1
}

// listParts gives each kind of part its mark, in the order in which the rack is
// built: slats, legs, aprons, top.
func (r *Rack) listParts() {
	add := func(name string, thickness, width, length unit.Length) {
		r.Parts = append(r.Parts, Part{
			Mark: string(rune('A' + len(r.Parts))), Name: name,
			Thickness: thickness, Width: width, Length: length, Stock: r.stockOf(name),
		})
	}
	add("slat", r.Len("slat.thickness"), r.Len("slat.height"), r.Len("slat.length"))
	add("leg", r.Len("leg.thickness"), r.Len("leg.width"), r.Len("leg.length"))
	add("apron", r.Len("apron.thickness"), r.Len("apron.height"), r.Len("apron.length"))
	if r.HasTop() {
		add("top", r.Len("top.thickness"), r.Len("top.width"), r.Len("top.length"))
	}
}

// stockOf returns the nominal size the design names for a part.
func (r *Rack) stockOf(part string) string {
	for _, s := range r.Design.Stocks {
		if s.Part == part {
			return s.Nominal.Name
		}
	}
	return ""
}

// add puts a piece of the named part in place and counts it.
func (r *Rack) add(part, name string, ladder int, grain space.Axis, at, size space.Point) {
	i := slices.IndexFunc(r.Parts, func(p Part) bool { return p.Name == part })
	r.Parts[i].Count++
	r.Pieces = append(r.Pieces, Piece{
		Part: i, Name: name, Ladder: ladder, Grain: grain,
		Box: space.Box{Min: at, Max: at.Add(size)},
	})
}

// placeLadders stands up the legs and fixes the slats across them.
func (r *Rack) placeLadders() {
	var (
		front = r.Len("apron.thickness")
		deep  = r.Len("slat.length")
		leg   = space.Point{X: r.Len("leg.thickness"), Y: r.Len("leg.width"), Z: r.Len("leg.length")}
		slat  = space.Point{X: r.Len("slat.thickness"), Y: deep, Z: r.Len("slat.height")}
	)
	for i, l := range r.Ladders {
		n := i + 1
		r.add("leg", fmt.Sprintf("leg, ladder %d front", n), i, space.Z, space.Point{X: l.X, Y: front}, leg)
		r.add("leg", fmt.Sprintf("leg, ladder %d back", n), i, space.Z, space.Point{X: l.X, Y: front + deep - leg.Y}, leg)
		s := r.Shapes[l.Shape]
		for k, z := range s.Left {
			r.add("slat", fmt.Sprintf("slat, ladder %d left row %d", n, k+1), i, space.Y, space.Point{X: l.X - slat.X, Y: front, Z: z}, slat)
		}
		for k, z := range s.Right {
			r.add("slat", fmt.Sprintf("slat, ladder %d right row %d", n, k+1), i, space.Y, space.Point{X: l.X + leg.X, Y: front, Z: z}, slat)
		}
	}
}

// placeAprons ties the ladders front and back, at the foot and under the top.
func (r *Rack) placeAprons() {
	size := space.Point{X: r.Len("apron.length"), Y: r.Len("apron.thickness"), Z: r.Len("apron.height")}
	low := r.Len("apron.lift")
	high := r.Len("leg.length") - size.Z
	back := size.Y + r.Len("slat.length")
	for _, a := range []struct {
		name string
		y, z unit.Length
	}{{"apron, front lower", 0, low}, {"apron, front upper", 0, high}, {"apron, back lower", back, low}, {"apron, back upper", back, high}} {
		r.add("apron", a.name, -1, space.X, space.Point{Y: a.y, Z: a.z}, size)
	}
}

// placeTop lays the top over all, where there is one.
func (r *Rack) placeTop() {
	if !r.HasTop() {
		return
	}
	at := space.Point{X: -r.Len("overhang.side"), Y: -r.Len("overhang.front"), Z: r.Len("leg.length")}
	r.add("top", "top", -1, space.X, at, space.Point{X: r.Len("top.length"), Y: r.Len("top.width"), Z: r.Len("top.thickness")})
}

// joinFaces records which faces are fixed to each other: slats and boards to
// legs, the top to aprons. Slat ends stand against aprons but are not fixed to
// them. Legs come first in their ladder and boards last of all, so each leg is
// compared with its own ladder and the boards only.
func (r *Rack) joinFaces() {
	boards := slices.IndexFunc(r.Pieces, func(p Piece) bool { return p.Ladder < 0 })
	for i, p := range r.Pieces[:boards] {
		if r.Parts[p.Part].Name != "leg" {
			continue
		}
		for j := i + 1; j < boards && r.Pieces[j].Ladder == p.Ladder; j++ {
			r.join(i, j)
		}
		for j := boards; j < len(r.Pieces); j++ {
			r.join(i, j)
		}
	}
	for i := boards; i < len(r.Pieces); i++ {
		for j := i + 1; j < len(r.Pieces); j++ {
			r.join(i, j)
		}
	}
}

// join records the contact of two pieces, where they touch.
func (r *Rack) join(i, j int) {
	a, b := &r.Pieces[i], &r.Pieces[j]
	if axis, far, patch, ok := touch(a.Box, b.Box); ok {
		a.Fixed = append(a.Fixed, Contact{Piece: j, Axis: axis, Far: far, Patch: patch})
		b.Fixed = append(b.Fixed, Contact{Piece: i, Axis: axis, Far: !far, Patch: patch})
	}
}

// touch reports whether a and b share a patch of a face, seen from a.
func touch(a, b space.Box) (axis space.Axis, far bool, patch space.Box, ok bool) {
	patch = space.Box{
		Min: space.Point{X: max(a.Min.X, b.Min.X), Y: max(a.Min.Y, b.Min.Y), Z: max(a.Min.Z, b.Min.Z)},
		Max: space.Point{X: min(a.Max.X, b.Max.X), Y: min(a.Max.Y, b.Max.Y), Z: min(a.Max.Z, b.Max.Z)},
	}
	flat := 0
	for _, ax := range []space.Axis{space.X, space.Y, space.Z} {
		switch d := patch.Max.On(ax) - patch.Min.On(ax); {
		case d < 0:
			return 0, false, patch, false
		case d == 0:
			axis, flat = ax, flat+1
			far = patch.Min.On(ax) == a.Max.On(ax)
		}
	}
	return axis, far, patch, flat == 1
}

// neckRadius is the radius of a bottle's neck as drawn: about the outside of a
// cork finish (common practice, no source). It is ink only; no fit hangs on it.
const neckRadius = 15 * unit.Millimetre

// layBottles lays the shown bottle of each row in its cells, base flush with
// the back of the carcase.
func (r *Rack) layBottles() {
	back := r.Len("carcase.depth")
	eased := r.Len("slat.eased")
	for c, col := range r.Columns {
		kind := r.Kinds[col.Kind]
		x := col.Left + (col.Right-col.Left)/2
		for row, under := range kind.Under {
			b := kind.Shown[row]
			h, ok := AxisAbove(b.Diameter.Nominal, kind.Gap, eased)
			if !ok {
				continue // falls through: fit.rest says so
			}
			z := under + r.Len("slat.height") + h
			body := space.Cylinder{X: x, Z: z, Y1: back, Y0: back - b.Body.Nominal, Radius: b.Diameter.Nominal / 2}
			neck := space.Cylinder{X: x, Z: z, Y1: body.Y0, Y0: back - b.Height.Nominal, Radius: min(neckRadius, body.Radius/2)}
			r.Bottles = append(r.Bottles, Bottle{Column: c, Row: row, Kind: b, Body: body, Neck: neck})
		}
	}
}

// count adds up what there is.
func (r *Rack) count() {
	c := &r.Counts
	c.Columns, c.Ladders = len(r.Columns), len(r.Ladders)
	for _, col := range r.Columns {
		rows := r.Kinds[col.Kind].Rows
		c.Bottles += rows
		c.Rows = max(c.Rows, rows)
	}
	for _, p := range r.Parts {
		switch p.Name {
		case "leg":
			c.Legs = p.Count
		case "slat":
			c.Slats = p.Count
		case "apron":
			c.Aprons = p.Count
		}
	}
}
