package cutting_test

import (
	"testing"

	"slatwright/geometry/cutting"
)

// mustPlan plans a job and audits the plan.
func mustPlan(t testing.TB, job cutting.Job) *cutting.Plan {
	t.Helper()
	plan, err := cutting.Make(job)
	if err != nil {
		t.Fatal(err)
	}
	if err := audit(job, plan); err != nil {
		t.Fatal(err)
	}
	return plan
}

func TestOneOrderIsProven(t *testing.T) {
	for v := range 12 {
		job := cutting.Job{Parts: rackParts("R-001", 2+v%3, 2+v%4, v), Boards: yard(), Shop: shop}
		plan := mustPlan(t, job)
		if !plan.Proven {
			t.Errorf("order %d: cost %d, bound %d", v, plan.Cost, plan.Bound)
		}
		t.Logf("order %d: cost %d, %d settings", v, plan.Cost, len(plan.Settings))
	}
}

func BenchmarkOneOrder(b *testing.B) {
	job := cutting.Job{Parts: rackParts("R-001", 4, 5, 7)[:3], Boards: yard(), Shop: shop}
	for b.Loop() {
		if plan := mustPlan(b, job); !plan.Proven {
			b.Fatalf("cost %d, bound %d", plan.Cost, plan.Bound)
		}
	}
}

func BenchmarkOneOrderGluedTop(b *testing.B) {
	job := cutting.Job{Parts: rackParts("R-001", 4, 5, 7), Boards: yard(), Shop: shop}
	for b.Loop() {
		if plan := mustPlan(b, job); !plan.Proven {
			b.Fatalf("cost %d, bound %d", plan.Cost, plan.Bound)
		}
	}
}
