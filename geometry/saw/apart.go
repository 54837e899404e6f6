package saw

import (
	"cmp"
	"slices"

	"slatwright/geometry/cutting"
)

// offers reports whether all boards that another plan takes are on offer here
// too, so that what both cost can be compared.
func (p *Plan) offers(one *Plan) bool {
	return !slices.ContainsFunc(one.Boards, func(b cutting.BoardPlan) bool { return p.offered(b.Board) < 0 })
}

// offered returns the index of a board among those on offer; a board on hand is
// the same however many there are.
func (p *Plan) offered(b cutting.Board) int {
	return slices.IndexFunc(p.Job.Boards, func(have cutting.Board) bool {
		if have.OnHand > 0 && b.OnHand > 0 {
			have.OnHand = b.OnHand
		}
		return have == b
	})
}

// takeApart makes the plan of those of its orders alone, where that is cheaper:
// the search for a common plan of many orders is not exhaustive. It keeps the
// common plan where the orders' shops differ or boards on hand would not reach.
func (p *Plan) takeApart(alone []*Plan) {
	if p.Doubled {
		return
	}
	for _, one := range alone {
		one.Job.Shop.StaveGrid = p.Job.Shop.StaveGrid
		if one.Job.Shop != p.Job.Shop {
			return
		}
	}
	p.Plan = p.joined(alone)
}

// joined puts plans one beside the other, every setting of the saw once.
func (p *Plan) joined(alone []*Plan) *cutting.Plan {
	out := &cutting.Plan{Bound: p.Bound}
	for _, one := range alone {
		first := len(out.Boards)
		for _, b := range one.Boards {
			b.Index = p.offered(b.Board)
			b.Board = p.Job.Boards[b.Index]
			out.Boards = append(out.Boards, b)
		}
		out.Cost += one.Cost
		out.GlueUps = append(out.GlueUps, one.GlueUps...)
		for _, o := range one.Offcuts {
			out.Offcuts = addOffcut(out.Offcuts, o)
		}
		for _, w := range one.Warnings {
			if w.Board >= 0 {
				w.Board += first
			}
			out.Warnings = append(out.Warnings, w)
		}
		for _, s := range one.Steps {
			out.Steps = addStep(out.Steps, s, first)
		}
	}
	out.Proven = out.Cost == out.Bound
	slices.SortStableFunc(out.Steps, func(a, b cutting.Step) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(b.Setting.At, a.Setting.At))
	})
	for _, s := range out.Steps {
		if s.HasStop && !slices.Contains(out.Settings, s.Setting) {
			out.Settings = append(out.Settings, s.Setting)
		}
	}
	slices.SortFunc(out.Offcuts, cutting.Offcut.Compare)
	return out
}

// rank puts operations in their order.
func rank(s cutting.Step) int {
	return slices.Index(cutting.Operations(), s.Operation)
}

// addStep adds a step of a plan whose boards begin at first, to one of the same
// setting where there is one. Every glue-up stays by itself.
func addStep(list []cutting.Step, s cutting.Step, first int) []cutting.Step {
	boards := make([]int, len(s.Boards))
	for i, b := range s.Boards {
		boards[i] = b + first
	}
	s.Boards = boards
	for i := range list {
		have := &list[i]
		if have.Operation != s.Operation || have.Setting != s.Setting || have.HasStop != s.HasStop || s.Operation == cutting.GluingUp {
			continue
		}
		have.Count += s.Count
		have.Boards = append(have.Boards, boards...)
		have.Gang = max(have.Gang, s.Gang)
		have.Critical = have.Critical || s.Critical
		for _, x := range s.Pieces {
			if !slices.Contains(have.Pieces, x) {
				have.Pieces = append(slices.Clone(have.Pieces), x)
			}
		}
		slices.SortFunc(have.Pieces, cutting.Yield.Compare)
		for _, c := range s.Cautions {
			if !slices.Contains(have.Cautions, c) {
				have.Cautions = append(slices.Clone(have.Cautions), c)
			}
		}
		return list
	}
	return append(list, s)
}

// addOffcut adds an offcut, to those of its size where there are some.
func addOffcut(list []cutting.Offcut, o cutting.Offcut) []cutting.Offcut {
	for i := range list {
		same := list[i]
		same.Count = o.Count
		if same == o {
			list[i].Count += o.Count
			return list
		}
	}
	return append(list, o)
}
