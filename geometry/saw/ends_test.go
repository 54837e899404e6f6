package saw_test

import (
	"fmt"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/geometry/saw"
	"slatwright/specs/unit"
)

// By hand, kerf 1/8 in. A board 48 × 3 1/2 in, an inch off its ends in all, is cut
// to 30 in, which is ripped: two strips of 1 in with a part of 20 in each leave
// ends of 9 7/8 in and, beside them, 1 in by 30 in (edges 1/8 in). 16 7/8 in are
// not cut.
func TestSmallPiecesComeFromEnds(t *testing.T) {
	const in = unit.Inch
	strip := cutting.Strip{Width: in, Parts: []cutting.Placed{{Width: in, Length: 20 * in}}}
	plan := &saw.Plan{Plan: &cutting.Plan{Boards: []cutting.BoardPlan{{
		Board: cutting.Board{Thickness: in * 3 / 4, Width: in * 7 / 2, Length: 48 * in}, Count: 1, Thickness: in * 3 / 4, Leaves: 1,
		Sections: []cutting.Section{{Length: 30 * in, Ripped: true, Strips: []cutting.Strip{strip, strip}}},
	}}}}
	plan.Job.Shop = cutting.Shop{Kerf: in / 8, EndTrim: in / 2, EdgeTrim: in / 8, MinRipLength: 12 * in}
	small := func(wide, long unit.Length, n int) saw.Small {
		return saw.Small{Thick: in * 3 / 4, Wide: wide, Long: long, Count: n}
	}
	together := small(in, 2*in, 4)
	together.Together = true
	thin := small(in, 3*in, 1)
	thin.Thick = in / 2
	for _, c := range []struct {
		name string
		list []saw.Small
		want string // boards, pieces that are bought, inches to buy
	}{
		{"an end of each strip, twice", []saw.Small{small(in, 4*in, 4)}, "[[0] 0 0]"},
		{"no end is cut when it is shorter than 6 in", []saw.Small{small(in, 3*in, 4)}, "[[0] 0 0]"},
		{"as wide as the board", []saw.Small{small(in*7/2, 16*in, 1)}, "[[0] 0 0]"},
		{"wider than the board", []saw.Small{small(4*in, 3*in, 1)}, "[[] 1 3 1/8]"},
		{"of another thickness", []saw.Small{thin}, "[[] 1 3 1/8]"},
		{"all from one: 4 × 2 1/8 and 6 to hold", []saw.Small{together}, "[[0] 0 0]"},
		{"the board's end, ripped three times, and what lies beside", []saw.Small{small(in, 16*in, 4)}, "[[0] 0 0]"},
		{"twice as many", []saw.Small{small(in, 16*in, 6)}, "[[0] 2 32 1/4]"},
		{"what one kind takes the next lacks", []saw.Small{small(in*7/2, 16*in, 1), small(in*7/2, 16*in, 2)}, "[[0] 0 0] [[] 2 32 1/4]"},
	} {
		got := ""
		for i, f := range plan.FromEnds(c.list, in/8) {
			if i > 0 {
				got += " "
			}
			got += fmt.Sprint([]any{f.Boards, f.Lack, unit.Format{System: unit.Imperial}.Text(f.Buy)})
		}
		if got != c.want {
			t.Errorf("%s: got %s, want %s", c.name, got, c.want)
		}
	}
	// The strips' ends begin behind 1/2 + 20 1/8, at 1/8 and 1 1/4 across; the board's
	// behind 1/2 + 30 1/8.
	for _, c := range []struct {
		s    saw.Small
		want saw.EndCut
	}{
		{small(in, 4*in, 1), saw.EndCut{At: in * 165 / 8, Across: in / 8, Long: 4 * in, Wide: in, Count: 1}},
		{small(in*7/2, 16*in, 1), saw.EndCut{At: in * 245 / 8, Long: 16 * in, Wide: in * 7 / 2, Count: 1}},
		{together, saw.EndCut{At: in * 245 / 8, Across: in / 8, Long: in * 67 / 8, Wide: in, Count: 4}},
	} {
		if got := plan.FromEnds([]saw.Small{c.s}, in/8)[0].Cuts; len(got) != 1 || got[0] != c.want {
			t.Errorf("%+v lies at %+v, want %+v", c.s, got, c.want)
		}
	}
	var none *saw.Plan
	if f := none.FromEnds([]saw.Small{small(in, 3*in, 4)}, in/8)[0]; f.Lack != 4 || f.Buy != 4*(3*in+in/8) {
		t.Errorf("without a plan: %+v", f)
	}
}
