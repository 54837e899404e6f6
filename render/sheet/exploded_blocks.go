package sheet

import (
	"slices"

	"slatwright/geometry/assembly"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
)

// withBlocks returns the rack as the exploded view shows it: with the blocks under
// the top as pieces of one more part, where there are any.
func withBlocks(r *rack.Rack) *rack.Rack {
	t, ok := fixing.Of(r)
	if !ok || len(t.Middles) == 0 {
		return r
	}
	out := *r
	out.Parts = append(slices.Clone(r.Parts), rack.Part{Mark: assembly.BlockMark(r), Name: "block", Count: len(t.Middles)})
	out.Pieces = slices.Clone(r.Pieces)
	for _, x := range t.Middles {
		out.Pieces = append(out.Pieces, rack.Piece{Part: len(r.Parts), Name: "block", Box: t.BlockAt(r, x), Grain: space.X, Ladder: -1})
	}
	return &out
}

// holding returns the back upper apron's number and those of the blocks that it
// carries, each other apron's alone.
func holding(r *rack.Rack, apron int) []int {
	out := []int{apron}
	box := r.Pieces[apron].Box
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name == "block" && p.Box.Max.Y == box.Min.Y && p.Box.Max.Z == box.Max.Z {
			out = append(out, i)
		}
	}
	return out
}

// left reports whether a block stands where the row is not broken off.
func (w row) left(b space.Box) bool {
	return !slices.ContainsFunc(w.breaks, func(g gap) bool { return b.Max.X > g.from && b.Min.X < g.to })
}

// balloon reports whether an item mark stands beside a view of the sheet.
func balloon(s *drawing.Sheet, mark string) bool {
	return slices.ContainsFunc(s.Items, func(r drawing.ItemRecord) bool { return r.Kind == drawing.Balloon && r.Mark == mark })
}
