package cutting_test

import (
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// drawShop draws a shop's allowances on a coarse grid.
func drawShop(t *rapid.T) cutting.Shop {
	small := func(most int, name string) unit.Length { return unit.Length(rapid.IntRange(0, most).Draw(t, name)) }
	return cutting.Shop{Kerf: small(3, "kerf"), EndTrim: small(1, "end trim"), EdgeTrim: small(1, "edge trim"), MinRipLength: 9 * small(2, "rip length")}
}

// drawParts draws a few kinds of part.
func drawParts(t *rapid.T, order string) []cutting.Part {
	var out []cutting.Part
	for i := range rapid.IntRange(1, 4).Draw(t, "kinds of "+order) {
		out = append(out, cutting.Part{Order: order, Mark: string(rune('A' + i)), Thickness: 1,
			Width: unit.Length(rapid.IntRange(3, 9).Draw(t, "width")), Length: unit.Length(rapid.IntRange(8, 36).Draw(t, "length")),
			Count: rapid.IntRange(1, 5).Draw(t, "count"), Spares: rapid.IntRange(0, 1).Draw(t, "spares")})
	}
	return out
}

// drawBoards draws boards; the first, when it is to reach for everything, is
// long and wide and can be bought.
func drawBoards(t *rapid.T, reaching, limited bool) []cutting.Board {
	var out []cutting.Board
	if reaching {
		out = append(out, cutting.Board{Nominal: "all", Thickness: 1, Width: 11, Length: 40, Price: int64(rapid.IntRange(80, 140).Draw(t, "price"))})
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "boards") {
		w, l := rapid.IntRange(5, 13).Draw(t, "board width"), rapid.IntRange(30, 54).Draw(t, "board length")
		b := cutting.Board{Nominal: fmt.Sprint("b", i), Thickness: 1, Width: unit.Length(w), Length: unit.Length(l), Price: int64(w*l/4 + rapid.IntRange(0, 30).Draw(t, "price"))}
		if limited && rapid.IntRange(0, 2).Draw(t, "limited") == 0 {
			b.OnHand, b.Price = rapid.IntRange(1, 2).Draw(t, "on hand"), int64(20*rapid.IntRange(0, 1).Draw(t, "own price"))
		}
		out = append(out, b)
	}
	return out
}

// provenCost plans a small job, audits the plan and returns its proven cost.
func provenCost(t *rapid.T, job cutting.Job) int64 {
	plan, err := cutting.Make(job)
	if err != nil {
		t.Fatal(err)
	}
	if err := audit(job, plan); err != nil {
		t.Fatal(err)
	}
	if !plan.Proven {
		t.Fatalf("small order not proven: cost %d, bound %d", plan.Cost, plan.Bound)
	}
	return plan.Cost
}

func TestMoreBoardsNeverCostMore(t *testing.T) {
	less := 0
	rapid.Check(t, func(t *rapid.T) {
		job := cutting.Job{Shop: drawShop(t), Parts: drawParts(t, "R"), Boards: drawBoards(t, true, true)}
		cost := provenCost(t, job)
		job.Boards = append(append([]cutting.Board(nil), job.Boards...), drawBoards(t, false, true)...)
		got := provenCost(t, job)
		if got > cost {
			t.Fatalf("%d with more boards, %d without", got, cost)
		}
		if got < cost {
			less++
		}
	})
	if less == 0 {
		t.Error("more boards never cost less: the test shows nothing")
	}
}

func TestLargerKerfNeverCostsLess(t *testing.T) {
	more := 0
	rapid.Check(t, func(t *rapid.T) {
		job := cutting.Job{Shop: drawShop(t), Parts: drawParts(t, "R"), Boards: drawBoards(t, true, true)}
		cost := provenCost(t, job)
		job.Shop.Kerf += unit.Length(rapid.IntRange(1, 3).Draw(t, "more kerf"))
		got := provenCost(t, job)
		if got < cost {
			t.Fatalf("%d with a larger kerf, %d without", got, cost)
		}
		if got > cost {
			more++
		}
	})
	if more == 0 {
		t.Error("a larger kerf never cost more: the test shows nothing")
	}
}

func TestPoolingNeverCostsMore(t *testing.T) {
	saved := 0
	rapid.Check(t, func(t *rapid.T) {
		job := cutting.Job{Shop: drawShop(t), Boards: drawBoards(t, true, false)}
		a, b := drawParts(t, "R-1"), drawParts(t, "R-2")
		job.Parts = a
		apart := provenCost(t, job)
		job.Parts = b
		apart += provenCost(t, job)
		job.Parts, job.Effort = append(a, b...), 100_000_000
		plan, err := cutting.Make(job)
		if err != nil {
			t.Fatal(err)
		}
		if err := audit(job, plan); err != nil {
			t.Fatal(err)
		}
		if plan.Cost > apart {
			t.Fatalf("%d together, %d apart", plan.Cost, apart)
		}
		if plan.Cost < apart {
			saved++
		}
	})
	if saved == 0 {
		t.Error("pooling never saved anything: the test shows nothing")
	}
}

// Two real racks whose tops are glued up, with hardly any effort: the orders
// apart are the plan that pooling may not fall behind.
func TestPoolingOfRacks(t *testing.T) {
	a, b := rackParts("R-1", 2, 2, 3), rackParts("R-2", 3, 2, 4)
	apart := mustPlan(t, cutting.Job{Parts: a, Boards: yard(), Shop: shop}).Cost + mustPlan(t, cutting.Job{Parts: b, Boards: yard(), Shop: shop}).Cost
	plan := mustPlan(t, cutting.Job{Parts: append(a, b...), Boards: yard(), Shop: shop, Effort: 1})
	if plan.Cost > apart {
		t.Errorf("%d together, %d apart", plan.Cost, apart)
	}
}

func TestSameJobSamePlan(t *testing.T) {
	job := cutting.Job{Parts: batch(3), Boards: yard(), Shop: shop, Effort: 300_000_000}
	a, b := mustPlan(t, job), mustPlan(t, job)
	if !reflect.DeepEqual(a, b) {
		t.Error("two runs gave two plans")
	}
}

// Orders planned apart, alike board by board but for the length of a slat,
// must not be taken for one another.
func TestOrdersApartKeepTheirParts(t *testing.T) {
	a, b := rackParts("R-1", 2, 2, 3), rackParts("R-2", 2, 2, 3)
	b[0].Length += i16
	mustPlan(t, cutting.Job{Parts: append(a, b...), Boards: yard(), Shop: shop, Effort: 1})
}
