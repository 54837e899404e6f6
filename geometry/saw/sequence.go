package saw

import (
	"cmp"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// Piece is one part as it comes off the saw.
type Piece struct {
	Step        int // into Plan.Steps: the one that finishes it; -1 where nothing has to be set
	Order, Mark string
	Name        string
	Spare       bool
}

// Sequence lists every part in the order in which the steps finish them, each
// board of a layout by itself, spares included. A part that is glued up stands
// where it is glued, its staves are not listed.
func (p *Plan) Sequence() []Piece {
	var out []Piece
	for _, b := range p.Boards {
		for range b.Count {
			for _, s := range b.Sections {
				for _, t := range s.Strips {
					for _, x := range t.Parts {
						if x.Staves == 0 {
							out = append(out, Piece{p.finishedBy(s, t, x), x.Order, x.Mark, x.Name, x.Spare})
						}
					}
				}
			}
		}
	}
	for _, g := range p.GlueUps {
		step := p.step(cutting.GluingUp, 0)
		for n := range g.Count {
			out = append(out, Piece{step, g.Order, g.Mark, g.Name, n >= p.wanted(g)})
		}
	}
	slices.SortStableFunc(out, func(a, b Piece) int { return cmp.Compare(a.Step, b.Step) })
	return out
}

// finishedBy returns the step after which a part needs no more cut.
func (p *Plan) finishedBy(s cutting.Section, t cutting.Strip, x cutting.Placed) int {
	switch {
	case x.Length != s.Length:
		return p.step(cutting.CuttingToLength, x.Length)
	case s.Ripped:
		return p.step(cutting.Ripping, t.Width)
	case s.Whole:
		return p.step(cutting.TrimmingEnds, 0)
	}
	return p.step(cutting.Crosscutting, s.Length)
}

// step returns the index of the first step of an operation at a setting, -1
// where there is none.
func (p *Plan) step(operation cutting.Operation, at unit.Length) int {
	return slices.IndexFunc(p.Steps, func(s cutting.Step) bool {
		return s.Operation == operation && (!s.HasStop || s.Setting.At == at)
	})
}

// wanted returns how many of a glued-up part its order needs, spares left out.
func (p *Plan) wanted(g cutting.GlueUp) int {
	for _, part := range p.Job.Parts {
		if part.Order == g.Order && part.Mark == g.Mark {
			return part.Count
		}
	}
	return g.Count
}
