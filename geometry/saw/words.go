package saw

import (
	"fmt"
	"strconv"
	"strings"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// Text prints a length in the unit of the first order; one of another order's
// that is exact in the other system alone is printed in that, with its unit.
func (p *Plan) Text(l unit.Length) string {
	if other, ok := p.foreign(l); ok {
		return other.Unit(l)
	}
	return p.Format.Text(l)
}

// Unit is Text with the unit after it.
func (p *Plan) Unit(l unit.Length) string {
	if other, ok := p.foreign(l); ok {
		return other.Unit(l)
	}
	return p.Format.Unit(l)
}

// foreign returns the other system where a length is exact in that alone.
func (p *Plan) foreign(l unit.Length) (unit.Format, bool) {
	other := unit.Format{System: unit.Imperial}
	if p.Format.System == unit.Imperial {
		other.System = unit.Metric
	}
	_, own := p.Format.Round(l)
	_, its := other.Round(l)
	return other, !own && its
}

// Label is what is written on a piece: its mark, with its order before it where
// there are several. Staves of one part are alike and bear no number.
func (p *Plan) Label(x cutting.Placed) string {
	s := x.Mark
	for _, o := range p.Orders {
		if o.Name == x.Order && o.Short != "" {
			s = o.Short + " " + s
		}
	}
	if x.Staves > 0 {
		s += " stave"
	}
	return s
}

// Content says what parts stand in a strip, equal neighbours counted: "3 A, B".
func (p *Plan) Content(t cutting.Strip) string {
	var out []string
	for i := 0; i < len(t.Parts); {
		label := p.Label(t.Parts[i])
		n := 0
		for i < len(t.Parts) && p.Label(t.Parts[i]) == label {
			i, n = i+1, n+1
		}
		if n > 1 {
			label = fmt.Sprintf("%d %s", n, label)
		}
		out = append(out, label)
	}
	return strings.Join(out, ", ")
}

// Action says in words what is done at a step: "crosscut, stop at".
func Action(s cutting.Step) string {
	if !s.HasStop {
		return string(s.Operation)
	}
	at := map[cutting.SettingKind]string{cutting.ResawFence: "fence at", cutting.Thickness: "planer at", cutting.Stop: "stop at", cutting.Fence: "fence at"}
	return string(s.Operation) + ", " + at[s.Setting.Kind]
}

// fewNames is how many marks a step lists; where there are more the boards'
// layouts tell which.
const fewNames = 8

// Numbers lists boards of a plan by the numbers that people call them, from 1:
// "2, 3, 5".
func Numbers(boards []int) string {
	var out []string
	for _, n := range boards {
		out = append(out, strconv.Itoa(n+1))
	}
	return strings.Join(out, ", ")
}

// Named names boards of a plan by their numbers: "board 2", "boards 2, 3".
func Named(boards []int) string {
	if len(boards) == 1 {
		return "board " + Numbers(boards)
	}
	return "boards " + Numbers(boards)
}

// StepName is what a step at the saw, counted from 0, is called: S is the mark of no
// part and of no step of the order of work.
func StepName(i int) string { return fmt.Sprintf("S%d", i+1) }
