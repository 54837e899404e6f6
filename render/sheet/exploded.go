package sheet

import (
	"fmt"
	"strconv"

	"slatwright/geometry/assembly"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// length is short for a length of the model.
type length = unit.Length

// mostApart is how many ladders an exploded view takes apart each by itself;
// past it, one is shown apart for all.
const mostApart = 3

// exploded returns the exploded view with item marks, trails and the parts
// list.
func exploded(in Input) *page {
	p := in.newPage("exploded", "Exploded view")
	list := p.area
	rows := drawing.Um(len(in.Rack.Parts) + 1)
	list.Min.Y = list.Max.Y - rows*rowPitch - 12*drawing.MM
	show := rowOf(withBlocks(in.Rack))
	captions := breakLines("Not to scale: "+howApart(in.Rack), p.area.W(), drawing.FigureHeight)
	if w := show.words(); w != "" {
		captions = append(captions, breakLines(w, p.area.W(), drawing.FigureHeight)...)
	}
	box := p.area
	box.Max.Y = list.Min.Y - 3*drawing.MM - captionStep*drawing.Um(len(captions))
	middle := box
	aside := typeface.Width(drawing.Plain("front upper apron"), drawing.FigureHeight, false) + balloonR + 10*drawing.MM
	middle.Min.X += aside
	middle.Max.X -= aside

	loose, moved := apart(show)
	v := filling(moved, view.Isometric, middle)
	lines := view.Visible(view.Lines(moved, view.Isometric))
	v.draw(p.sheet, lines, func(l view.Line) (drawing.Class, bool) {
		if l.Kind != view.Way {
			return drawing.Visible, !show.torn(l)
		}
		return drawing.Trail, farApart(v.point(l.From), v.point(l.To), 3*drawing.MM)
	})
	for _, l := range lines {
		if a, b := v.point(l.From), v.point(l.To); show.torn(l) && a != b {
			p.sheet.Add(drawing.BreakLine(0, a, b))
		}
	}
	beside := v.extent(moved).Inset(-2*balloonR - 6*drawing.MM)
	beside.Min.Y, beside.Max.Y = box.Min.Y, box.Max.Y
	tags := p.tagged(show, v, lines, loose, beside)
	for _, t := range tags {
		t.draw(p.sheet)
	}
	for i, c := range captions {
		captionBelow(p.sheet, drawing.Pt(box.Centre().X, box.Max.Y+captionStep*drawing.Um(i)), c)
	}
	partsList(p, list)
	return p
}

// captionStep is from one line under a view to the next.
const captionStep = drawing.FigureHeight + 3*drawing.MM

// howApart says which ladders are taken apart.
func howApart(r *rack.Rack) string {
	if len(r.Ladders) <= mostApart {
		return "all ladders apart, counted from the left"
	}
	return "right end ladder apart; ladders count from the left; inner ones have slats on both faces"
}

// farApart reports whether two points are at least d apart in one direction of
// the sheet.
func farApart(a, b drawing.Point, d drawing.Um) bool {
	return max((a.X-b.X).Abs(), (a.Y-b.Y).Abs()) >= d
}

// apart returns the pieces of a row taken apart, with trails, and which pieces
// were moved away from their neighbours. In a small rack each ladder stands by
// itself; else the right end one only, which is nearest to the eye. A group
// is named parents first, so that who moves takes along who is fixed to it.
func apart(show row) (loose map[int]bool, moved view.Scene) {
	r, s := show.rack, show.scene()
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
	if len(r.Ladders) <= mostApart {
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
	gap := r.Len("slat.length") / 8
	offsets, err := view.Explode(s, groups, view.Isometric, gap)
	if err != nil {
		panic("sheet: " + err.Error()) // the groups above move along x and z, parents first
	}
	aprons := len(groups)
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name != "apron" {
			continue
		}
		g := view.Group{IDs: holding(r, i), Axis: space.Y, Sign: 1}
		// Parted by a fixed way: to clear it of all ladders a board would have
		// to go as far as they are high.
		way := space.Point{Y: r.Len("slat.length") * 3 / 4}
		switch front := p.Box.Min.Y < r.Len("apron.thickness"); {
		case front:
			g.Sign, way.Y = -1, -way.Y
		case p.Box.Min.Z == r.Len("apron.lift"):
			way.Y = r.Len("slat.length") * 5 / 2 // from behind the right end ladder
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

// partsList writes the list of parts with their sizes.
func partsList(p *page, box drawing.Rect) {
	w := newScribe(p.sheet, box)
	f := p.in.Rack.Format
	w.heading("Parts list, " + p.in.wood() + ", thickness × width × length in " + f.System.Name())
	var rows [][]string
	for _, part := range p.in.Rack.Parts {
		rows = append(rows, []string{part.Mark, part.Name, strconv.Itoa(part.Count), sizeText(f, part), stockText(p.in, part), "along the length"})
	}
	parts := withBlocks(p.in.Rack).Parts // the block as well where the view shows it
	rows = append(rows, blockRow(p.in)...)
	cols := []tableColumn{
		{title: "mark", width: 14 * drawing.MM}, {title: "part", width: 24 * drawing.MM},
		{title: "count", width: 16 * drawing.MM, right: true}, {title: "T × W × L", width: 50 * drawing.MM},
		{title: "stock", width: 42 * drawing.MM}, {title: "grain"},
	}
	w.table(cols, rows, func(i int, at drawing.Point) {
		if i < len(p.in.Rack.Parts) || balloon(p.sheet, parts[i].Mark) {
			p.sheet.Items = append(p.sheet.Items, drawing.ItemRecord{Mark: parts[i].Mark, Where: at, Kind: drawing.ListRow})
		}
	})
}

// blockRow is the row of the blocks under the top in a list of parts, where there
// are any: they are made in the shop and are drawn with the top's fitting.
func blockRow(in Input) [][]string {
	t, ok := fixing.Of(in.Rack)
	if !ok || t.Glued {
		return nil
	}
	f := in.Rack.Format
	size := f.Text(t.Block.Z) + " × " + f.Text(t.Block.Y) + " × " + f.Text(t.Block.X)
	return [][]string{{assembly.BlockMark(in.Rack), "block", strconv.Itoa(len(t.Middles)), size, sheetRef("top"), "along the length"}}
}

// wood names the wood of all parts.
func (in Input) wood() string { return in.Rack.Design.Wood.Species.Name }

// stockText says what a part is made from.
func stockText(in Input, part rack.Part) string {
	if panel := in.Cutting.Panel(); part.Name == "top" && panel.GluedUp() {
		return fmt.Sprintf("%d staves, glued up", panel.Staves)
	}
	if part.Stock == "" {
		return "any, cut to T × W"
	}
	return part.Stock
}

// sizeText returns a part's size, thickness first.
func sizeText(f unit.Format, p rack.Part) string {
	return f.Text(p.Thickness) + " × " + f.Text(p.Width) + " × " + f.Text(p.Length)
}
