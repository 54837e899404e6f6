package cutting_test

import (
	"errors"
	"testing"

	"slatwright/geometry/cutting"
)

// The lifted bound is never above the cost of a proven plan, which the exact
// method finds without it, nor below the bound of the linear program; and it is
// higher often enough to be worth its effort. TestReferee holds the costs
// against a solver that shares no code.
func TestLiftedBound(t *testing.T) {
	compared, higher, met := 0, 0, 0
	for seed := range 400 {
		job := randomOrder(seed)
		plan, err := cutting.Make(job)
		if errors.Is(err, cutting.ErrTooLong) || errors.Is(err, cutting.ErrTooWide) {
			continue
		}
		if err != nil {
			t.Fatalf("order %d: %v", seed, err)
		}
		root, lifted, err := cutting.Bounds(job)
		if err != nil {
			t.Fatalf("order %d: %v", seed, err)
		}
		if !plan.Proven || lifted > plan.Cost || lifted < root {
			t.Errorf("order %d: bound %d lifted to %d, cheapest plan %d\n%+v", seed, root, lifted, plan.Cost, job)
		}
		compared++
		if lifted > root {
			higher++
		}
		if lifted == plan.Cost {
			met++
		}
	}
	t.Logf("%d orders: %d bounds lifted, %d to the cost", compared, higher, met)
	if compared < 300 || higher < compared/4 {
		t.Errorf("%d bounds of %d orders lifted", higher, compared)
	}
}
