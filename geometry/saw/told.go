package saw

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// Losses says what the saw takes that no setting shows: its kerf, and what comes
// off ends and edges first.
func (p *Plan) Losses() string {
	s := p.Job.Shop
	text := "Saw kerf " + p.Unit(s.Kerf)
	if s.EndTrim > 0 {
		text += fmt.Sprintf("; %s off each end of a board", p.Unit(s.EndTrim))
	}
	if s.EdgeTrim > 0 {
		text += fmt.Sprintf("; %s off each edge of what is ripped: the first edge is jointed, the other falls off at the last rip", p.Unit(s.EdgeTrim))
	}
	return text
}

// jointing is what the steps say of it that know no figures.
const jointing = "joint both edges of each stave"

// Jointing says how staves are made ready for their glue.
func (p *Plan) Jointing() string {
	text := jointing
	if take := p.Job.Shop.JointAllowance; take > 0 {
		text += ", " + p.Unit(take) + " off its width in all"
	}
	return text
}

// tell adds to the steps' cautions what the plan alone knows: what is jointed
// first, what is cut after measuring; and puts feet into the unit of the orders.
func (p *Plan) tell() {
	for i := range p.Steps {
		s := &p.Steps[i]
		s.Cautions = slices.Clone(s.Cautions)
		for k, c := range s.Cautions {
			if p.Format.System == unit.Metric {
				c = strings.ReplaceAll(c, "the last foot", "the last 300 mm")
				s.Cautions[k] = strings.ReplaceAll(c, "a foot or less", "305 mm or less")
			}
		}
		switch {
		case s.Operation == cutting.Ripping && p.Job.Shop.EdgeTrim > 0:
			s.Cautions = append([]string{"joint the first edge: it goes to the fence; " + p.Unit(p.Job.Shop.EdgeTrim) + " is reckoned for it, and as much for the far edge, which falls off at the last rip"}, s.Cautions...)
		case s.Operation == cutting.TrimmingEnds:
			s.Cautions = append(s.Cautions, fmt.Sprintf("%s is reckoned for each end; tick for the near end, the far end comes off after the board's last crosscut", p.Unit(p.Job.Shop.EndTrim)))
		case s.Operation == cutting.GluingUp:
			for k, c := range s.Cautions {
				s.Cautions[k] = strings.Replace(c, jointing, p.Jointing(), 1)
			}
		case s.Operation == cutting.Crosscutting || s.Operation == cutting.CuttingToLength:
			s.Cautions = append(s.Cautions, p.leftLong(s.Setting.At)...)
		}
	}
}

// leftLong lists the parts of a length that are cut after measuring.
func (p *Plan) leftLong(at unit.Length) []string {
	var out []string
	for _, o := range p.Orders {
		for _, part := range o.Rack.Parts {
			waits := o.Rack.Awaits(part)
			if part.Length != at || len(waits) == 0 {
				continue
			}
			out = append(out, fmt.Sprintf("%s: leave long: cut to length after measuring %s",
				p.Label(cutting.Placed{Order: o.Name, Mark: part.Mark}), strings.Join(waits, ", ")))
		}
	}
	return out
}

// LeftLong says of every part that is cut after measuring what is still to be measured.
func (p *Plan) LeftLong() []string {
	var out []string
	for _, o := range p.Orders {
		for _, part := range o.Rack.Parts {
			for _, t := range p.leftLong(part.Length) {
				if !slices.Contains(out, t) {
					out = append(out, t)
				}
			}
		}
	}
	return out
}

// Mass prints grams for people to carry by, in the unit of the orders first.
func (p *Plan) Mass(grams float64) string {
	kg, lb := fmt.Sprintf("%.1f kg", grams/1000), fmt.Sprintf("%.0f lb", grams/1000/unit.Pound)
	if p.Format.System == unit.Imperial {
		return lb + " (" + kg + ")"
	}
	return kg + " (" + lb + ")"
}

// boardName is what a sentence calls a board.
func boardName(b cutting.Board) string {
	if b.Nominal == "as measured" {
		return "measured board"
	}
	return b.Nominal
}
