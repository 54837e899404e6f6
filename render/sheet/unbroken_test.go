package sheet

import (
	"slices"
	"strings"
	"testing"
)

// Lines once ended in the middle of a figure: "3" on one, "5/8 in" on the next.
func TestFiguresAreNotBroken(t *testing.T) {
	wide := func(n int) func(string) bool { return func(s string) bool { return len([]rune(s)) <= n } }
	for _, c := range []struct {
		text  string
		width int
		want  []string
	}{
		{"then one every 3 5/8 in.", 16, []string{"then one every", "3 5/8 in."}},
		{"then one every 3 5/8 in.", 19, []string{"then one every", "3 5/8 in."}},
		{"out up to ≈1 63/64 in", 14, []string{"out up to", "≈1 63/64 in"}},
		{"at least 1/8 in", 12, []string{"at least", "1/8 in"}},
		{"(1 1/2) 3/4 in", 9, []string{"(1 1/2)", "3/4 in"}},
		{"places 3, 5/8 over", 9, []string{"places 3,", "5/8 over"}},
		{"clamped 30 to 60 min, no load", 15, []string{"clamped 30 to", "60 min, no load"}},
		{"12 1/2 in", 4, []string{"12", "1/2", "in"}},
		{"moves 0.106 in at", 11, []string{"moves", "0.106 in at"}},
		{"bottles in rows", 9, []string{"bottles", "in rows"}},
	} {
		if got := breakBy(c.text, wide(c.width)); !slices.Equal(got, c.want) {
			t.Errorf("%q in %d: %q; want %q", c.text, c.width, got, c.want)
		}
		if got := strings.Join(breakBy(c.text, wide(c.width)), " "); got != c.text {
			t.Errorf("%q came out as %q", c.text, got)
		}
	}
}
