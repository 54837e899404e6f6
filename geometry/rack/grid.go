package rack

import (
	"fmt"

	"slatwright/geometry/solve"
	"slatwright/specs/unit"
)

// gridPart is what the grid has to do with a problem.
type gridPart struct {
	line, change LineText // where the file states the grid; the change where it alone would do
	note         []string // where it does not
}

// The grids to suggest, each a part of the one before it.
var finerGrids = map[unit.System][]unit.Length{
	unit.Imperial: {unit.Inch / 2, unit.Inch / 4, unit.Inch / 8, unit.Inch / 16, unit.Inch / 32, unit.Inch / 64, unit.Inch / 128},
	unit.Metric:   {10 * unit.Millimetre, 5 * unit.Millimetre, unit.Millimetre, unit.Millimetre / 2, unit.Millimetre / 10, unit.Millimetre / 100},
}

// gridOf finds the coarsest grid on which the lines of a problem could hold. A
// grid is no statement to the solver, since the bounds of rules need one; so
// its part in a problem is tried out. On are the lines that must hold with
// another grid for it to be a remedy.
func (b *stater) gridOf(lines, on []solve.StatementID) (out gridPart) {
	finer := b.finer()
	if len(finer) == 0 || !b.holdsOn(finer[len(finer)-1], lines) {
		return out
	}
	at := b.d.GridStmt
	for _, g := range finer {
		if !b.holdsOn(g, lines) {
			continue
		}
		switch says := b.gridFigure(g); {
		case at == nil:
			out.note = []string{fmt.Sprintf("the grid is %s for want of another; with grid = %q these lines could hold", b.gridFigure(b.d.Grid), says)}
		default:
			out.line = LineText{at.Place.Line, at.Text}
			if b.holdsOn(g, on) {
				out.change = LineText{at.Place.Line, "grid " + says}
			}
		}
		break
	}
	return out
}

// gridSystem is the unit in which the grid is said.
func (b *stater) gridSystem() unit.System {
	if at := b.d.GridStmt; at != nil {
		return at.Unit
	}
	return b.d.Units
}

func (b *stater) gridFigure(g unit.Length) string {
	return unit.Format{System: b.gridSystem(), Finest: min(g, b.gridSystem().Finest())}.Unit(g)
}

// finer lists the grids that divide the design's, the coarsest first.
func (b *stater) finer() (out []unit.Length) {
	for _, g := range finerGrids[b.gridSystem()] {
		if g < b.d.Grid && b.d.Grid%g == 0 {
			out = append(out, g)
		}
	}
	return out
}

// holdsOn reports whether the lines can hold on another grid.
func (b *stater) holdsOn(grid unit.Length, lines []solve.StatementID) bool {
	d := *b.d
	d.Grid = grid
	ok, err := stateForced(&d, b.settled, b.forced).m.Feasible(solve.Question{Statements: lines})
	return err == nil && ok
}
