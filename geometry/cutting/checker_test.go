package cutting_test

import (
	"fmt"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// A cutPiece is what a plan cuts or a job wants, told apart by all that marks it.
type cutPiece struct {
	order, mark, name    string
	thick, width, length unit.Length
	spare, glued         bool
}

// audit re-adds every board of a plan from the job alone: sizes, kerfs, trims,
// rips, thickness, stock, price, and every part wanted. It shares no code with
// the planner and says what is wrong, nil when nothing is.
func audit(job cutting.Job, plan *cutting.Plan) error {
	var cost int64
	used := make([]int, len(job.Boards))
	have := map[cutPiece]int{}
	for i, b := range plan.Boards {
		if b.Board != job.Boards[b.Index] || b.Count < 1 {
			return fmt.Errorf("board %d is not the job's, or is cut %d times", i, b.Count)
		}
		cost += b.Board.Price * int64(b.Count)
		used[b.Index] += b.Count
		if err := auditBoard(job.Shop, b); err != nil {
			return fmt.Errorf("board %d: %w", i, err)
		}
		for _, s := range b.Sections {
			for _, t := range s.Strips {
				for _, p := range t.Parts {
					have[cutPiece{p.Order, p.Mark, p.Name, b.Thickness, p.Width, p.Length, p.Spare, p.Staves > 0}] += b.Count
				}
			}
		}
	}
	if cost != plan.Cost {
		return fmt.Errorf("boards cost %d, the plan says %d", cost, plan.Cost)
	}
	if plan.Bound > plan.Cost || plan.Proven != (plan.Bound == plan.Cost) {
		return fmt.Errorf("cost %d, bound %d, proven %v", plan.Cost, plan.Bound, plan.Proven)
	}
	for i, n := range used {
		if on := job.Boards[i].OnHand; on > 0 && n > on {
			return fmt.Errorf("%d of board %d used, %d on hand", n, i, on)
		}
	}
	want, err := wantedPieces(job, plan)
	if err != nil {
		return err
	}
	for p, n := range want {
		if have[p] != n {
			return fmt.Errorf("part %+v: %d cut, %d wanted", p, have[p], n)
		}
	}
	for p, n := range have {
		if want[p] != n {
			return fmt.Errorf("part %+v: %d cut, %d wanted", p, n, want[p])
		}
	}
	return nil
}

// wantedPieces lists what a job wants, with the staves of its plan's glue-ups.
func wantedPieces(job cutting.Job, plan *cutting.Plan) (map[cutPiece]int, error) {
	glued := map[[3]string]cutting.GlueUp{}
	for _, g := range plan.GlueUps {
		glued[[3]string{g.Order, g.Mark, g.Name}] = g
	}
	want := map[cutPiece]int{}
	for _, p := range job.Parts {
		w := cutPiece{p.Order, p.Mark, p.Name, p.Thickness, p.Width, p.Length, false, false}
		n := 1
		if g, ok := glued[[3]string{p.Order, p.Mark, p.Name}]; ok && g.Width == p.Width && g.Length == p.Length {
			if got := unit.Length(g.Staves) * (g.StaveWidth - job.Shop.JointAllowance); got < p.Width {
				return nil, fmt.Errorf("part %s: staves make up %d of %d", p.Mark, got, p.Width)
			}
			if g.Count != p.Count+p.Spares || g.StaveLength != p.Length+job.Shop.GlueLength {
				return nil, fmt.Errorf("part %s: glue-up %+v", p.Mark, g)
			}
			n, w.width, w.length, w.glued = g.Staves, g.StaveWidth, g.StaveLength, true
		}
		if p.Count > 0 {
			want[w] += n * p.Count
		}
		if w.spare = true; p.Spares > 0 {
			want[w] += n * p.Spares
		}
	}
	return want, nil
}

// auditBoard adds up one board.
func auditBoard(shop cutting.Shop, b cutting.BoardPlan) error {
	if err := auditThickness(shop, b); err != nil {
		return err
	}
	room := b.Board.Length
	if !b.Board.CleanEnds {
		room -= shop.EndTrim + shop.EndTrim
	}
	for leaf := range b.Leaves {
		var length unit.Length
		n := 0
		for _, s := range b.Sections {
			if s.Leaf == leaf {
				length += s.Length
				n++
			}
		}
		if n > 0 && length+unit.Length(n-1)*shop.Kerf > room {
			return fmt.Errorf("leaf %d: %d sections of %d in all do not fit %d", leaf, n, length, room)
		}
	}
	for i, s := range b.Sections {
		if s.Leaf < 0 || s.Leaf >= b.Leaves {
			return fmt.Errorf("section %d on leaf %d of %d", i, s.Leaf, b.Leaves)
		}
		if err := auditSection(shop, b.Board, s); err != nil {
			return fmt.Errorf("section %d: %w", i, err)
		}
	}
	return nil
}

func auditThickness(shop cutting.Shop, b cutting.BoardPlan) error {
	off := b.Board.Thickness - b.Thickness
	switch b.Process {
	case cutting.AsIs:
		if off != 0 || b.Leaves != 1 {
			return fmt.Errorf("thickness %d from %d as it is", b.Thickness, b.Board.Thickness)
		}
	case cutting.Planed:
		if off <= 0 || b.Leaves != 1 || (shop.PlaneMax > 0 && off > shop.PlaneMax) {
			return fmt.Errorf("planed by %d", off)
		}
	case cutting.Resawn:
		kerf := shop.ResawKerf
		if kerf == 0 {
			kerf = shop.Kerf
		}
		n := unit.Length(b.Leaves)
		if n*(b.Thickness+shop.ResawAllowance)+(n-1)*kerf > b.Board.Thickness || b.Board.Width > shop.ResawHeight {
			return fmt.Errorf("resawn into %d leaves of %d", b.Leaves, b.Thickness)
		}
	}
	return nil
}

func auditSection(shop cutting.Shop, b cutting.Board, s cutting.Section) error {
	var width unit.Length
	for j, t := range s.Strips {
		width += t.Width
		if len(t.Parts) == 0 {
			return fmt.Errorf("strip %d is empty", j)
		}
		length := -shop.Kerf
		for _, p := range t.Parts {
			length += p.Length + shop.Kerf
			if p.Width != t.Width {
				return fmt.Errorf("part %s of width %d in a strip of %d", p.Mark, p.Width, t.Width)
			}
		}
		if length > s.Length {
			return fmt.Errorf("strip %d: %d in %d", j, length, s.Length)
		}
	}
	if !s.Ripped {
		if len(s.Strips) != 1 || s.Strips[0].Width != b.Width || len(s.Strips[0].Parts) != 1 {
			return fmt.Errorf("not ripped, yet not one part as wide as the board")
		}
		return nil
	}
	if s.Length < shop.MinRipLength {
		return fmt.Errorf("%d is too short to be ripped", s.Length)
	}
	if room := b.Width - 2*shop.EdgeTrim; width+unit.Length(len(s.Strips)-1)*shop.Kerf > room {
		return fmt.Errorf("%d strips of %d in all do not fit %d", len(s.Strips), width, room)
	}
	return nil
}
