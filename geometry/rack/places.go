package rack

import (
	"fmt"
	"slices"

	"slatwright/specs/word"
)

// LaddersOf lists the ladders of a shape by their numbers, counted from 1 at the
// left.
func (r *Rack) LaddersOf(shape int) []int {
	var out []int
	for i, l := range r.Ladders {
		if l.Shape == shape {
			out = append(out, i+1)
		}
	}
	return out
}

// Places names things of a row by their numbers, which rise: "ladder 2",
// "ladders 3 and 4", "ladders 2, 5 to 8 and 11".
func Places(what string, numbers []int) string {
	var runs []string
	for i := 0; i < len(numbers); {
		j := i
		for j+1 < len(numbers) && numbers[j+1] == numbers[j]+1 {
			j++
		}
		switch {
		case j > i+1:
			runs = append(runs, fmt.Sprintf("%d to %d", numbers[i], numbers[j]))
		case j == i+1:
			runs = append(runs, fmt.Sprint(numbers[i]), fmt.Sprint(numbers[j]))
		default:
			runs = append(runs, fmt.Sprint(numbers[i]))
		}
		i = j + 1
	}
	if len(numbers) != 1 {
		what += "s"
	}
	return what + " " + word.List(runs)
}

// FromOne counts from 1, as words do, what is counted from 0.
func FromOne(list []int) []int {
	out := slices.Clone(list)
	for i := range out {
		out[i]++
	}
	return out
}
