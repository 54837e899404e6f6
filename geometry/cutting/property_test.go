package cutting_test

import (
	"reflect"
	"testing"

	"slatwright/geometry/cutting"
)

const propertyRuns = 40

// costOf plans a job and returns its proven cost; ok is false when it has none.
func costOf(t *testing.T, job cutting.Job) (int64, bool) {
	t.Helper()
	plan, err := cutting.Make(job)
	if err != nil {
		return 0, false
	}
	if err := audit(job, plan); err != nil {
		t.Fatal(err)
	}
	if !plan.Proven {
		t.Fatalf("small order not proven: cost %d, bound %d", plan.Cost, plan.Bound)
	}
	return plan.Cost, true
}

func TestMoreBoardsNeverCostMore(t *testing.T) {
	compared := 0
	for seed := range propertyRuns {
		job := randomOrder(seed)
		if cost, ok := costOf(t, job); ok {
			more := job
			more.Boards = append(append([]cutting.Board(nil), job.Boards...), randomOrder(seed+1000).Boards...)
			if got, ok := costOf(t, more); !ok || got > cost {
				t.Errorf("order %d: %d with more boards, %d without", seed, got, cost)
			}
			compared++
		}
	}
	if compared < propertyRuns/2 {
		t.Errorf("only %d orders compared", compared)
	}
}

func TestLargerKerfNeverCostsLess(t *testing.T) {
	compared := 0
	for seed := range propertyRuns {
		job := randomOrder(seed)
		if cost, ok := costOf(t, job); ok {
			job.Shop.Kerf++
			if got, ok := costOf(t, job); ok && got < cost {
				t.Errorf("order %d: %d with a larger kerf, %d without", seed, got, cost)
			}
			compared++
		}
	}
	if compared < propertyRuns/2 {
		t.Errorf("only %d orders compared", compared)
	}
}

// Pooling: two orders from boards that can be bought.
func TestPoolingNeverCostsMore(t *testing.T) {
	saved := 0
	for seed := range propertyRuns / 8 {
		a, b := rackParts("R-1", 2+seed%3, 2, seed)[:3], rackParts("R-2", 2, 2+seed%2, seed+1)[:3]
		ca, _ := costOf(t, cutting.Job{Parts: a, Boards: yard(), Shop: shop})
		cb, _ := costOf(t, cutting.Job{Parts: b, Boards: yard(), Shop: shop})
		plan := mustPlan(t, cutting.Job{Parts: append(a, b...), Boards: yard(), Shop: shop, Effort: 200_000_000})
		if plan.Cost > ca+cb {
			t.Errorf("orders %d: %d together, %d + %d apart", seed, plan.Cost, ca, cb)
		}
		if plan.Cost < ca+cb {
			saved++
		}
	}
	if saved == 0 {
		t.Error("pooling never saved anything: the test shows nothing")
	}
}

func TestSameJobSamePlan(t *testing.T) {
	job := cutting.Job{Parts: batch(3), Boards: yard(), Shop: shop, Effort: 300_000_000}
	a, b := mustPlan(t, job), mustPlan(t, job)
	if !reflect.DeepEqual(a, b) {
		t.Error("two runs gave two plans")
	}
}
