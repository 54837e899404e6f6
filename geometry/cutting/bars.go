package cutting

import "slatwright/specs/unit"

// Bar is stock of one dimension: rails, dowels, anything that is only cut to
// length.
type Bar struct {
	Length unit.Length
	Price  int64 // 0 or more
	OnHand int   // 0: any number can be bought
}

// Piece is a length wanted from bars.
type Piece struct {
	Length unit.Length
	Count  int
}

// BarPlan is a plan of one dimension.
type BarPlan struct {
	Cost   int64
	Bound  int64 // no plan costs less
	Proven bool
	Bars   []BarCut
}

// BarCut is one way to cut a bar, and how many bars are cut that way.
type BarCut struct {
	Bar    int // index into the bars given
	Count  int
	Pieces []unit.Length // long ones first
}

// CutBars plans how bars are cut into pieces at least cost, a kerf lost
// between neighbours. It is Make with boards and parts of one width: nothing
// is ripped. Effort is as in Job. Errors are those of Make.
func CutBars(bars []Bar, pieces []Piece, kerf unit.Length, effort int64) (*BarPlan, error) {
	job := Job{Shop: Shop{Kerf: kerf}, Effort: effort}
	for _, b := range bars {
		job.Boards = append(job.Boards, Board{Nominal: "bar", Thickness: 1, Width: 1, Length: b.Length, Price: b.Price, OnHand: b.OnHand})
	}
	for _, p := range pieces {
		job.Parts = append(job.Parts, Part{Name: "piece", Thickness: 1, Width: 1, Length: p.Length, Count: p.Count})
	}
	plan, err := Make(job)
	if err != nil {
		return nil, err
	}
	out := &BarPlan{Cost: plan.Cost, Bound: plan.Bound, Proven: plan.Proven}
	for _, b := range plan.Boards {
		c := BarCut{Bar: b.Index, Count: b.Count}
		for _, s := range b.Sections {
			c.Pieces = append(c.Pieces, s.Strips[0].Parts[0].Length)
		}
		out.Bars = append(out.Bars, c)
	}
	return out, nil
}
