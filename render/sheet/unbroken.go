package sheet

import (
	"slices"
	"strings"
)

// units are what stands after a figure and must not begin a line without it.
var units = []string{"leg", "legs", "slat", "slats", "in", "mm", "lb", "lbf", "kg", "N", "kN", "psi", "MPa", "h", "min", "day", "days", "%", "°F", "°C"}

// unbroken joins the words that no line may part: whole inches with their
// fraction, as in 3 5/8, a figure with its unit, and a size, as in 20 × 25 × 240.
func unbroken(words []string) []string {
	var out []string
	figure := false // the last word ends in a figure
	for _, w := range words {
		bare := strings.TrimRight(w, ".,;:)")
		fraction := isFraction(bare)
		n := len(out) - 1
		times := w == "×" || n >= 0 && strings.HasSuffix(out[n], " ×")
		if n >= 0 && (times || figure && (fraction || slices.Contains(units, bare))) {
			out[n] += " " + w
		} else {
			out = append(out, w)
		}
		// After "3," comes another figure, not its fraction.
		figure = bare == w && (fraction || isNumber(strings.TrimLeft(w, "≈±(=-")))
	}
	return out
}

// isNumber reports whether s is digits, with or without a decimal point.
func isNumber(s string) bool {
	return s != "" && strings.Trim(s, "0123456789.") == "" && s[0] != '.' && strings.Count(s, ".") < 2
}

// isFraction reports whether s is a fraction such as 5/8.
func isFraction(s string) bool {
	over, under, ok := strings.Cut(strings.TrimLeft(s, "≈±(=-"), "/")
	return ok && isNumber(over) && isNumber(under)
}

// cutWord returns the length of the longest beginning of s that fits, at least
// one character, so that breaking always goes on; up to the last space in it,
// where there is one.
func cutWord(s string, fits func(string) bool) int {
	n := 0
	for i, r := range s {
		end := i + len(string(r))
		if n > 0 && !fits(s[:end]) {
			if space := strings.LastIndex(s[:n], " "); space > 0 {
				return space
			}
			return n
		}
		n = end
	}
	return n
}
