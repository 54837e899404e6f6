package cutting_test

import (
	"fmt"
	"os"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

func gap(plan *cutting.Plan) float64 {
	return 100 * float64(plan.Cost-plan.Bound) / float64(plan.Bound)
}

// BenchmarkBatch plans invented batches and reports the proven gap in percent.
func BenchmarkBatch(b *testing.B) {
	for _, n := range []int{5, 20, 100} {
		b.Run(fmt.Sprintf("%d orders", n), func(b *testing.B) {
			job := cutting.Job{Parts: batch(n), Boards: yard(), Shop: shop}
			for b.Loop() {
				plan := mustPlan(b, job)
				b.ReportMetric(gap(plan), "%gap")
				b.ReportMetric(float64(plan.Cost), "cents")
			}
		})
	}
}

// TestBatches holds the gaps that batches of 5, 20 and 100 orders have reached,
// so that no change makes them worse unseen. Few boards are bought for the
// small ones, and the bound, which lets boards be bought in part, is weak there.
func TestBatches(t *testing.T) {
	if os.Getenv("SLATWRIGHT_LONG") != "1" {
		t.Skip("takes minutes: set SLATWRIGHT_LONG=1")
	}
	for _, c := range []struct {
		orders int
		gap    float64 // percent
	}{{5, 2.0}, {20, 1.4}, {100, 0.65}} {
		plan := mustPlan(t, cutting.Job{Parts: batch(c.orders), Boards: yard(), Shop: shop})
		t.Logf("%d orders: cost %d, bound %d, gap %.2f %%", c.orders, plan.Cost, plan.Bound, gap(plan))
		if gap(plan) > c.gap {
			t.Errorf("%d orders: gap %.2f %%, want at most %.2f %%", c.orders, gap(plan), c.gap)
		}
	}
}

// retail is a yard of eight widths in six lengths, at invented prices.
func retail() []cutting.Board {
	var out []cutting.Board
	for _, b := range []struct {
		nominal string
		width   unit.Length
		cents   int64 // a foot
	}{
		{"1x2", 3 * in2, 62}, {"1x3", 5 * in2, 88}, {"1x4", 7 * in2, 117}, {"1x5", 9 * in2, 152},
		{"1x6", 11 * in2, 183}, {"1x8", 29 * in4, 251}, {"1x10", 37 * in4, 342}, {"1x12", 45 * in4, 451},
	} {
		for _, feet := range []int64{4, 6, 8, 10, 12, 16} {
			out = append(out, cutting.Board{Nominal: b.nominal, Thickness: 3 * in4, Width: b.width, Length: unit.Length(feet) * unit.Foot,
				Price: b.cents*feet + 7*max(0, 12-feet)})
		}
	}
	return out
}

// large is one order for n bottles, in racks of 20 columns by 25 rows.
func large(n int) []cutting.Part {
	parts := rackParts("R-001", 20, 25, 7)
	for i := range parts {
		parts[i].Count *= n / 500
		parts[i].Length = min(parts[i].Length, 8*unit.Foot)
	}
	return parts
}

// A large order with little effort: a good plan and an honest bound.
func TestQuickEffort(t *testing.T) {
	for _, n := range []int{500, 5000} {
		plan := mustPlan(t, cutting.Job{Parts: large(n), Boards: retail(), Shop: shop, Effort: cutting.QuickEffort})
		t.Logf("%d bottles: cost %d, bound %d, gap %.2f %%", n, plan.Cost, plan.Bound, gap(plan))
		if gap(plan) > 1 {
			t.Errorf("%d bottles: gap %.2f %%, want at most 1 %%", n, gap(plan))
		}
	}
}

func BenchmarkQuickEffort(b *testing.B) {
	job := cutting.Job{Parts: large(5000), Boards: retail(), Shop: shop, Effort: cutting.QuickEffort}
	for b.Loop() {
		b.ReportMetric(gap(mustPlan(b, job)), "%gap")
	}
}
