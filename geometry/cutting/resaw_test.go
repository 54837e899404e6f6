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
	plan, took := weighed(t, job)
	if plan.Cost != 4000 || !plan.Proven || plan.Boards[0].Leaves != 4 {
		t.Errorf("cost %d, bound %d, %d leaves; want one board of 4 leaves, proven", plan.Cost, plan.Bound, plan.Boards[0].Leaves)
	}
	if took > 500 {
		t.Errorf("takes %d MB", took)
	}
}

// Sizes that share no grid but the finest make a board a hundred million steps
// long; the plan takes no more memory for that.
func TestFineGridsStayInMemory(t *testing.T) {
	job := cutting.Job{
		Parts: []cutting.Part{
			{Mark: "A", Name: "slat", Thickness: in2, Width: in, Length: 19*in2 + 1, Count: 10},
			{Mark: "B", Name: "leg", Thickness: in2, Width: 3 * in2, Length: 359*i16 + 1, Count: 4},
		},
		Boards: []cutting.Board{{Nominal: "1x4", Thickness: in2, Width: 7 * in2, Length: 8 * unit.Foot, Price: 400}},
		Shop:   shop,
		Effort: cutting.QuickEffort,
	}
	plan, took := weighed(t, job)
	if !plan.Proven {
		t.Errorf("cost %d, bound %d; want it proven", plan.Cost, plan.Bound)
	}
	if took > 60 {
		t.Errorf("takes %d MB", took)
	}
}

// weighed plans a job and returns the megabytes that were allocated for it.
func weighed(t *testing.T, job cutting.Job) (plan *cutting.Plan, megabytes uint64) {
	t.Helper()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	plan = mustPlan(t, job)
	runtime.ReadMemStats(&after)
	return plan, (after.TotalAlloc - before.TotalAlloc) >> 20
}
