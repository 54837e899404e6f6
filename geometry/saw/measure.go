package saw

import (
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// Yield returns how much of a board's face becomes parts, in percent to the
// nearest whole one; a resawn board has a face for each leaf. Staves count as they are cut.
func (p *Plan) Yield(board int) int {
	return percent(faces(p.Boards[board]))
}

// TotalYield is the yield of all boards together.
func (p *Plan) TotalYield() int {
	var used, all int64
	for _, b := range p.Boards {
		u, a := faces(b)
		used += u * int64(b.Count)
		all += a * int64(b.Count)
	}
	return percent(used, all)
}

// percent is a part of a whole in percent, to the nearest whole one; nought of
// nothing.
func percent(part, whole int64) int {
	if whole == 0 {
		return 0
	}
	return int((200*part + whole) / (2 * whole))
}

// faces returns the faces of a board's parts and of the board, in tenths of
// square millimetres, far from overflow for anything that a saw takes.
func faces(b cutting.BoardPlan) (used, all int64) {
	const tenth = unit.Millimetre / 10
	area := func(a, b unit.Length) int64 { return int64(a/tenth) * int64(b/tenth) / 10 }
	for _, s := range b.Sections {
		for _, t := range s.Strips {
			for _, x := range t.Parts {
				used += area(x.Width, x.Length)
			}
		}
	}
	return used, max(area(b.Board.Width, b.Board.Length)*int64(b.Leaves), 1)
}

// Leftovers lists what is left and worth keeping: ends of boards in their full
// width, ends of strips, and what remains beside the strips where it is as wide
// as the narrowest part. All are as long as an offcut must be to be kept. The
// longest come first.
func (p *Plan) Leftovers() []cutting.Offcut {
	shop := p.Job.Shop
	out := slices.Clone(p.Offcuts)
	add := func(b cutting.BoardPlan, width, length unit.Length) {
		if length < shop.KeepOffcut || width < p.narrowest() {
			return
		}
		out = addOffcut(out, cutting.Offcut{Nominal: b.Board.Nominal, Thickness: b.Thickness, Width: width, Length: length, Count: b.Count})
	}
	for _, b := range p.Boards {
		for _, s := range b.Sections {
			if !s.Ripped {
				continue
			}
			beside := b.Board.Width - 2*shop.EdgeTrim
			for _, t := range s.Strips {
				run := unit.Length(0)
				for _, x := range t.Parts {
					run += x.Length + shop.Kerf
				}
				add(b, t.Width, s.Length-run)
				beside -= t.Width + shop.Kerf
			}
			add(b, beside, s.Length)
		}
	}
	slices.SortFunc(out, cutting.Offcut.Compare)
	return out
}

// narrowest is the least width of any part.
func (p *Plan) narrowest() unit.Length {
	least := p.Job.Parts[0].Width
	for _, x := range p.Job.Parts {
		least = min(least, x.Width)
	}
	return least
}

// Grams returns what a piece of the orders' wood weighs at 12 % moisture, in
// grams; 0 where the table does not know the wood's density. It is physics, and
// decides nothing.
func (p *Plan) Grams(thickness, width, length unit.Length) float64 {
	return p.Species.Density() * thickness.MM() * width.MM() * length.MM() / 1e6
}

// BoardGrams returns what all the boards weigh, PartGrams what the parts of one
// order weigh, spares included.
func (p *Plan) BoardGrams() float64 {
	sum := 0.0
	for _, b := range p.Boards {
		sum += float64(b.Count) * p.Grams(b.Board.Thickness, b.Board.Width, b.Board.Length)
	}
	return sum
}

// PartGrams returns what the parts of an order weigh, spares included.
func (p *Plan) PartGrams(order string) float64 {
	sum := 0.0
	for _, x := range p.Job.Parts {
		if x.Order == order {
			sum += float64(x.Count+x.Spares) * p.Grams(x.Thickness, x.Width, x.Length)
		}
	}
	return sum
}
