package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// length is short for a length of the model.
type length = unit.Length

// leastExploded is the largest divisor of a scale at which parts of an exploded
// view can still be told apart; past it one ladder is shown apart for all.
const leastExploded = 16

// exploded returns the exploded view with item marks, trails and the parts
// list.
func exploded(in Input) *page {
	p := in.newPage("06-exploded", "Exploded view")
	list := p.area
	rows := drawing.Um(len(in.Rack.Parts) + 4)
	list.Min.Y = list.Max.Y - rows*rowPitch - 6*drawing.MM
	box := p.area
	box.Max.Y = list.Min.Y - 8*drawing.MM
	inner := box
	inner.Min.X += 2*balloonR + 6*drawing.MM
	inner.Max.X -= 2*balloonR + 6*drawing.MM

	whole, moved := apart(in.Rack, true)
	v := pictured(in, moved, view.Isometric, false, inner)
	note := "all ladders apart"
	if v.proj.Den > leastExploded {
		whole, moved = apart(in.Rack, false)
		v = pictured(in, moved, view.Isometric, false, inner)
		note = "one ladder apart; the others are made up alike, inner ones with slats on both faces"
	}
	lines := view.Visible(view.Lines(moved, view.Isometric))
	v.draw(p.sheet, lines, func(l view.Line) (drawing.Class, bool) {
		if l.Kind != view.Way {
			return drawing.Visible, true
		}
		return drawing.Trail, farApart(v.point(l.From), v.point(l.To), 3*drawing.MM)
	})
	balloons(p.sheet, tagged(in.Rack, v, lines, whole), box)
	captionBelow(p.sheet, drawing.Pt(box.Centre().X, box.Max.Y),
		fmt.Sprintf("Isometric, %s along the axes; %s", scaleText(v), note))
	partsList(p, list)
	return p
}

// farApart reports whether two points are at least d apart in one direction of
// the sheet.
func farApart(a, b drawing.Point, d drawing.Um) bool {
	return max((a.X-b.X).Abs(), (a.Y-b.Y).Abs()) >= d
}

// apart returns the rack's pieces taken apart, with trails, and which pieces
// were moved away from their neighbours. With all, each ladder stands by
// itself; else the right end one only, which is nearest to the eye. A group
// is named parents first, so that who moves takes along who is fixed to it.
func apart(r *rack.Rack, all bool) (loose map[int]bool, moved view.Scene) {
	s := sceneOf(r, func(rack.Piece) bool { return true })
	last := len(r.Ladders) - 1
	var groups []view.Group
	add := func(g view.Group, which func(p rack.Piece) bool) int {
		for i, p := range r.Pieces {
			if which(p) {
				g.IDs = append(g.IDs, i)
			}
		}
		groups = append(groups, g)
		return len(groups) - 1
	}
	first := last - 1
	if all {
		first = 0
	}
	core := add(view.Group{Parent: -1}, func(p rack.Piece) bool { return p.Ladder >= 0 && p.Ladder <= first })
	for i := first + 1; i < last; i++ {
		core = add(view.Group{Parent: core, Axis: space.X, Sign: 1}, func(p rack.Piece) bool { return p.Ladder == i })
	}
	slats := add(view.Group{Parent: core, Axis: space.X, Sign: 1}, func(p rack.Piece) bool {
		return p.Ladder == last && r.Parts[p.Part].Name == "slat"
	})
	add(view.Group{Parent: slats, Axis: space.X, Sign: 1}, func(p rack.Piece) bool {
		return p.Ladder == last && r.Parts[p.Part].Name == "leg"
	})
	top := add(view.Group{Parent: 0, Axis: space.Z, Sign: 1}, func(p rack.Piece) bool { return r.Parts[p.Part].Name == "top" })
	gap := r.Len("slat.length") / 4
	offsets, err := view.Explode(s, groups, view.Isometric, gap)
	if err != nil {
		panic("sheet: " + err.Error()) // the groups above move along x and z, parents first
	}
	aprons := len(groups)
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name != "apron" {
			continue
		}
		g := view.Group{IDs: []int{i}, Axis: space.Y, Sign: 1}
		// Parted by a fixed way: to clear it of all ladders a board would have
		// to go as far as they are high.
		way := space.Point{Y: r.Len("slat.length") * 3 / 4}
		if p.Box.Min.Y < r.Len("apron.thickness") {
			g.Sign, way.Y = -1, -way.Y
		}
		groups, offsets = append(groups, g), append(offsets, way)
	}
	loose = map[int]bool{}
	for i, g := range groups {
		for _, id := range g.IDs {
			loose[id] = i == slats || i == slats+1 || i == top || i >= aprons
		}
	}
	moved = s.Moved(view.Moves(groups, offsets))
	moved.Trails = fewTrails(r, view.Trails(s, groups, offsets))
	return loose, moved
}

// fewTrails keeps of the trails that end on legs and slats the lowest and the
// highest, and of those that end on a board the first and the last.
func fewTrails(r *rack.Rack, trails []view.Trail) []view.Trail {
	var out []view.Trail
	for i := 0; i < len(trails); {
		j := i
		for j < len(trails) && r.Pieces[trails[j].ID].Part == r.Pieces[trails[i].ID].Part {
			j++
		}
		run := trails[i:j]
		if n := len(run); n > 4 {
			run = []view.Trail{run[0], run[1], run[n-2], run[n-1]}
		}
		out = append(out, run...)
		i = j
	}
	return out
}

// tagged returns a tag for each kind of part, on the middle of its longest
// visible edge; pieces that stand apart go first.
func tagged(r *rack.Rack, v picture, lines []view.Line, loose map[int]bool) []tag {
	var tags []tag
	for k, part := range r.Parts {
		var best view.Line
		var found bool
		score := func(l view.Line) length {
			d := l.To.Sub(l.From)
			n := max(d.X.Abs(), d.Y.Abs(), d.Z.Abs())
			if loose[l.ID] {
				n += 1 << 40 // longer than any edge
			}
			return n
		}
		for _, l := range lines {
			if l.Kind == view.Way || l.Arc || r.Pieces[l.ID].Part != k {
				continue
			}
			if !found || cmp.Compare(score(l), score(best)) > 0 {
				best, found = l, true
			}
		}
		if found {
			sum := best.From.Add(best.To)
			tags = append(tags, tag{mark: part.Mark, at: v.point(space.Point{X: sum.X / 2, Y: sum.Y / 2, Z: sum.Z / 2})})
		}
	}
	return tags
}

// partsList writes the list of parts with their sizes.
func partsList(p *page, box drawing.Rect) {
	w := newScribe(p.sheet, box)
	f := p.in.Rack.Format
	w.heading("Parts list, thickness × width × length in " + f.System.String())
	var rows [][]string
	for _, part := range p.in.Rack.Parts {
		stock := part.Stock
		if stock == "" {
			stock = "to size"
		}
		rows = append(rows, []string{part.Mark, part.Name, strconv.Itoa(part.Count), sizeText(f, part), stock, "along the length"})
	}
	cols := []tableColumn{
		{title: "mark", width: 14 * drawing.MM}, {title: "part", width: 24 * drawing.MM},
		{title: "count", width: 16 * drawing.MM, right: true}, {title: "T × W × L", width: 62 * drawing.MM},
		{title: "stock", width: 26 * drawing.MM}, {title: "grain"},
	}
	w.table(cols, rows, func(i int, at drawing.Point) {
		p.sheet.Items = append(p.sheet.Items, drawing.ItemRecord{Mark: p.in.Rack.Parts[i].Mark, Where: at, Kind: drawing.ListRow})
	})
}

// sizeText returns a part's size, thickness first.
func sizeText(f unit.Format, p rack.Part) string {
	return f.Text(p.Thickness) + " × " + f.Text(p.Width) + " × " + f.Text(p.Length)
}

// shopScales returns the divisors of the scales in use, the largest picture
// first: for inches those of the shop's foot rules (full size, 6, 3, 1 1/2, 1,
// 3/4, 1/2 in to the foot and down), for millimetres those of ISO 5455, its
// intermediate steps included.
func shopScales(in Input) []int64 {
	if in.Rack.Format.System == unit.Imperial {
		return slices.Clone([]int64{1, 2, 4, 8, 12, 16, 24, 32, 48, 96})
	}
	return slices.Clone([]int64{1, 2, 5, 10, 20, 50, 100})
}
