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

// One order of some 50 parts, cut from one piece and with a glued-up top, from
// the boards of a small yard and of a large one.
func BenchmarkOneOrder(b *testing.B) {
	for _, c := range []struct {
		name   string
		parts  []cutting.Part
		boards []cutting.Board
	}{
		{"24 boards", rackParts("R-001", 4, 5, 7)[:3], yard()},
		{"48 boards", rackParts("R-001", 4, 5, 11), retail()},
		{"24 boards, top glued up", rackParts("R-001", 4, 4, 7), yard()},
		{"48 boards, top glued up", rackParts("R-001", 4, 4, 7), retail()},
	} {
		b.Run(c.name, func(b *testing.B) {
			job := cutting.Job{Parts: c.parts, Boards: c.boards, Shop: shop, Effort: cutting.QuickEffort}
			for b.Loop() {
				if plan := mustPlan(b, job); !plan.Proven {
					b.Fatalf("cost %d, bound %d", plan.Cost, plan.Bound)
				}
			}
		})
	}
}
