package sheet

import (
	"slices"

	"slatwright/specs/parallel"
)

// together composes pages side by side and returns them in the order of their
// composers, which share nothing but the input and only read it.
func together(in Input, composers ...func(Input) []*page) []*page {
	made := make([][]*page, len(composers))
	parallel.Each(len(composers), func(i int) { made[i] = composers[i](in) })
	return slices.Concat(made...)
}
