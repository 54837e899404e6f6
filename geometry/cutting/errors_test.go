package cutting_test

import (
	"errors"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

const mmL = unit.Millimetre

func TestErrors(t *testing.T) {
	part := cutting.Part{Order: "R-1", Mark: "A", Name: "slat", Thickness: 19 * mmL, Width: 40 * mmL, Length: 500 * mmL, Count: 4}
	board := cutting.Board{Nominal: "1x4", Thickness: 19 * mmL, Width: 89 * mmL, Length: 2400 * mmL, Price: 500}
	for _, c := range []struct {
		name string
		edit func(j *cutting.Job)
		kind error
		text string
	}{
		{"part too long", func(j *cutting.Job) { j.Parts[0].Length = 3000 * mmL }, cutting.ErrTooLong,
			"part R-1 A slat: part longer than every board: 3000 mm long, the longest board of its thickness has 2390 mm between its end trims; add a board at least 3010 mm long"},
		{"part too thick", func(j *cutting.Job) { j.Parts[0].Thickness = 25 * mmL }, cutting.ErrNoThickness,
			"part R-1 A slat: no board serves the thickness: 25 mm thick, the thickest board offered has 19 mm; add a board 25 mm thick, or thicker and planed"},
		{"planing not allowed", func(j *cutting.Job) { j.Parts[0].Thickness = 10 * mmL; j.Shop.PlaneMax = 2 * mmL }, cutting.ErrNoThickness,
			"part R-1 A slat: no board serves the thickness: 10 mm thick, the thickest board offered has 19 mm; add a board 10 mm thick, or allow planing or resawing of the thicker ones"},
		{"negative price", func(j *cutting.Job) { j.Boards[0].Price = -1 }, cutting.ErrPrice,
			"board 1x4 of 2400 mm: negative price; state a price of 0 or more"},
		{"a price out of all proportion", func(j *cutting.Job) { j.Boards[0].Price = 1 << 40 }, cutting.ErrBadBoard,
			"board 1x4 of 2400 mm: bad board: a price above 10 million; state the price of one board in cents"},
		{"no boards", func(j *cutting.Job) { j.Boards = nil }, cutting.ErrNoBoards,
			"no boards; list a board that may be bought, or one on hand"},
		{"stock runs out", func(j *cutting.Job) { j.Boards[0].OnHand = 1; j.Parts[0].Count = 20 }, cutting.ErrStockOut,
			"part R-1 A slat: boards on hand run out; add 2 of 1x4 of 2400 mm, or one that can be bought"},
		{"too wide for boards that may not be ripped", func(j *cutting.Job) {
			j.Parts[0].Width = 120 * mmL
			j.Shop.MinRipLength = 3000 * mmL
			j.Shop.JointAllowance = 89 * mmL
		}, cutting.ErrTooWide,
			"part R-1 A slat: part wider than every board: 120 mm wide, and no board long enough can be ripped or glued up to it; add a board at least 510 mm long (ends included) that may be ripped, or one just 120 mm wide"},
		{"size of zero", func(j *cutting.Job) { j.Parts[0].Width = 0 }, cutting.ErrBadPart,
			"part R-1 A slat: bad part: a size is not above zero or a count is negative; state three sizes above zero and counts of 0 or more"},
		{"negative kerf", func(j *cutting.Job) { j.Shop.Kerf = -1 }, cutting.ErrBadShop,
			"bad shop figure: negative; state 0 or more"},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := cutting.Job{Parts: []cutting.Part{part}, Boards: []cutting.Board{board}, Shop: cutting.Shop{Kerf: 3 * mmL, EndTrim: 5 * mmL}}
			c.edit(&job)
			_, err := cutting.Make(job)
			if !errors.Is(err, c.kind) {
				t.Fatalf("got %v, want %v", err, c.kind)
			}
			if err.Error() != c.text {
				t.Errorf("got  %s\nwant %s", err, c.text)
			}
		})
	}
}

func TestNothingWanted(t *testing.T) {
	plan, err := cutting.Make(cutting.Job{})
	if err != nil || plan.Cost != 0 || !plan.Proven || len(plan.Boards) != 0 {
		t.Errorf("got %+v, %v", plan, err)
	}
}
