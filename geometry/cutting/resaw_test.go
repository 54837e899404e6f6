package cutting_test

import (
	"runtime"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// A thick board gives several leaves, and their layouts may be combined in
// millions of ways; listing them all would fill the memory. One board
// is enough here, found by the dives, and no plan costs less.
func TestManyLeavesStayInMemory(t *testing.T) {
	job := cutting.Job{
		Parts: []cutting.Part{
			{Mark: "A", Name: "slat", Thickness: in2, Width: in, Length: 19 * in2, Count: 40},
			{Mark: "B", Name: "leg", Thickness: in2, Width: 3 * in2, Length: 359 * i16, Count: 10},
			{Mark: "C", Name: "apron", Thickness: in2, Width: 5 * in2, Length: 129 * in8, Count: 4},
			{Mark: "D", Name: "top", Thickness: in2, Width: 11 * in, Length: 71 * in4, Count: 1},
		},
		Boards: []cutting.Board{{Nominal: "12/4", Thickness: 11 * in4, Width: 11 * in2, Length: 8 * unit.Foot, Price: 4000}},
		Shop:   shop,
		Effort: cutting.QuickEffort,
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	plan := mustPlan(t, job)
	runtime.ReadMemStats(&after)
	if plan.Cost != 4000 || !plan.Proven || plan.Boards[0].Leaves != 4 {
		t.Errorf("cost %d, bound %d, %d leaves; want one board of 4 leaves, proven", plan.Cost, plan.Bound, plan.Boards[0].Leaves)
	}
	if took := (after.TotalAlloc - before.TotalAlloc) >> 20; took > 500 {
		t.Errorf("takes %d MB", took)
	}
}
