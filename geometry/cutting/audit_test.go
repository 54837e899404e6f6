package cutting_test

import (
	"testing"

	"slatwright/geometry/cutting"
)

// The auditor must find each of these faults in a plan that is otherwise right.
func TestAuditCanFail(t *testing.T) {
	job := cutting.Job{Parts: rackParts("R-001", 2, 2, 0), Boards: yard(), Shop: shop}
	ripped := func(p *cutting.Plan) *cutting.Section {
		for i := range p.Boards {
			for j := range p.Boards[i].Sections {
				if s := &p.Boards[i].Sections[j]; s.Ripped && len(s.Strips[0].Parts) > 1 {
					return s
				}
			}
		}
		t.Fatal("no ripped section of two parts")
		return nil
	}
	for _, c := range []struct {
		name  string
		spoil func(p *cutting.Plan)
	}{
		{"cost", func(p *cutting.Plan) { p.Cost++ }},
		{"bound above cost", func(p *cutting.Plan) { p.Bound = p.Cost + 1 }},
		{"proven with a gap", func(p *cutting.Plan) { p.Bound-- }},
		{"another board", func(p *cutting.Plan) { p.Boards[0].Board.Length += in }},
		{"board left out", func(p *cutting.Plan) { p.Cost -= p.Boards[0].Board.Price; p.Bound = p.Cost; p.Boards[0].Count-- }},
		{"section too long", func(p *cutting.Plan) { p.Boards[0].Sections[0].Length += 12 * 12 * in }},
		{"section too short for its strips", func(p *cutting.Plan) { ripped(p).Length = 12 * in }},
		{"ripped shorter than allowed", func(p *cutting.Plan) { ripped(p).Length = 11 * in }},
		{"strips too wide", func(p *cutting.Plan) {
			s := ripped(p)
			s.Strips = append(s.Strips, s.Strips...)
			s.Strips = append(s.Strips, s.Strips...)
		}},
		{"part of another width", func(p *cutting.Plan) { ripped(p).Strips[0].Parts[0].Width++ }},
		{"part missing", func(p *cutting.Plan) { s := ripped(p); s.Strips[0].Parts = s.Strips[0].Parts[1:] }},
		{"part twice", func(p *cutting.Plan) {
			s := ripped(p)
			s.Strips[0].Parts[1] = s.Strips[0].Parts[0]
			s.Strips[0].Parts[0].Mark = "Z"
		}},
		{"staves too narrow", func(p *cutting.Plan) { p.GlueUps[0].StaveWidth -= in }},
		{"not the thickness", func(p *cutting.Plan) { p.Boards[0].Thickness -= in8 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan := mustPlan(t, job)
			c.spoil(plan)
			if audit(job, plan) == nil {
				t.Error("not found")
			}
		})
	}
}
