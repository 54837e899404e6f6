package sheet

import (
	"fmt"
	"strings"

	"slatwright/geometry/assembly"
)

// numbersOf tells which numbers the sheets of a kind will have among the pages,
// which are all those of a packet up to the last that is asked for, in order.
func numbersOf(pages []*page) assembly.Numbers {
	return func(kind assembly.Sheet) string {
		first, last := 0, 0
		for i, p := range pages {
			if name := p.sheet.Name; name == string(kind) || strings.HasPrefix(name, string(kind)+"-") {
				if first == 0 {
					first = i + 1
				}
				last = i + 1
			}
		}
		switch {
		case first == 0:
			return ""
		case first == last:
			return fmt.Sprintf("sheet %d", first)
		case first+1 == last:
			return fmt.Sprintf("sheets %d and %d", first, last)
		}
		return fmt.Sprintf("sheets %d to %d", first, last)
	}
}

// referring composes pages that speak of other sheets by their numbers: after
// those before, in front of those behind. How many pages they take may hang on
// the numbers; where that comes to no rest, sheets are named instead.
func referring(before, behind []*page, compose func(assembly.Numbers) []*page) []*page {
	const tries = 4
	own := compose(nil)
	for range tries {
		all := append(append(append([]*page(nil), before...), own...), behind...)
		next := compose(numbersOf(all))
		if len(next) == len(own) {
			return next
		}
		own = next
	}
	return compose(nil)
}
