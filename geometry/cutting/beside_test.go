package cutting_test

import (
	"os/exec"
	"testing"

	"slatwright/geometry/cutting"
)

// BenchmarkBeside plans the same small orders by the planner and by CBC, which
// is handed every layout ready made: writing them out is not timed.
func BenchmarkBeside(b *testing.B) {
	solver, err := exec.LookPath("cbc")
	if err != nil {
		b.Skip("cbc is not installed (Debian: coinor-cbc)")
	}
	var jobs []cutting.Job
	var programs []string
	for seed := 0; len(jobs) < 20; seed++ {
		job := randomOrder(seed)
		if plan, err := cutting.Make(job); err != nil || len(plan.GlueUps) > 0 {
			continue
		}
		r := &referee{job: job}
		for _, p := range job.Parts {
			r.need = append(r.need, p.Count)
		}
		jobs, programs = append(jobs, job), append(programs, r.program())
	}
	b.Run("planner, 20 orders", func(b *testing.B) {
		for b.Loop() {
			for _, job := range jobs {
				mustPlan(b, job)
			}
		}
	})
	b.Run("cbc, 20 orders", func(b *testing.B) {
		for b.Loop() {
			for _, p := range programs {
				judge(b, solver, p)
			}
		}
	})
}
