package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/geometry/cutting"
	"slatwright/geometry/saw"
	"slatwright/specs/word"
)

// A sawStep is a step at the saw with what it yields and from what, in words.
type sawStep struct {
	cutting.Step
	yields, source string
}

// A stepGroup is steps of one kind under their heading.
type stepGroup struct {
	heading string
	steps   []sawStep
}

// operations says what is set for each operation.
var operations = map[cutting.Operation]string{
	cutting.Resawing: "Resaw: fence to blade, board on edge", cutting.Planing: "Plane: thickness", cutting.TrimmingEnds: "Trim ends",
	cutting.Crosscutting: "Crosscut: stop to blade", cutting.Ripping: "Rip: fence to blade", cutting.CuttingToLength: "Cut to length: stop to blade", cutting.GluingUp: "Glue up",
}

// stepGroups are the steps of the plan by operation, then what the saw does when
// these are done: it trims what was glued up and cuts the small shop aids.
func (c *cutter) stepGroups() []stepGroup {
	var out []stepGroup
	for i, s := range c.p.Steps {
		if i == 0 || s.Operation != c.p.Steps[i-1].Operation {
			out = append(out, stepGroup{heading: operations[s.Operation]})
		}
		if s.Operation == cutting.GluingUp {
			s.Cautions = c.glueWords(s.Cautions)
		}
		g := &out[len(out)-1]
		g.steps = append(g.steps, sawStep{s, c.p.Yields(s), c.source(s)})
	}
	for _, g := range []stepGroup{c.trims(), c.aids()} {
		if len(g.steps) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// alone reports whether the plan is that of one order, whose order of work goes with
// it.
func (c *cutter) alone() bool { return len(c.p.Orders) <= 1 }

// workStep is what a step of the order of work is called; "" where there is none.
func (c *cutter) workStep(name string) string {
	i := slices.IndexFunc(stepsOf(c.in), func(s assembly.Step) bool { return s.Name == name })
	if !c.alone() || i < 0 {
		return ""
	}
	return stepName(i)
}

// glueWords say how staves are glued up: the order of work does, where there is one.
func (c *cutter) glueWords(cautions []string) []string {
	if w := c.workStep(assembly.StepGlueTop); w != "" {
		return []string{"the saw's part is done: step " + w + " of the order of work says how"}
	}
	return cautions
}

// trims are the cuts that bring what was glued up to its size.
func (c *cutter) trims() stepGroup {
	g := stepGroup{heading: "Trim what is glued up, when the glue has cured"}
	if w := c.workStep(assembly.StepTrimTop); w != "" {
		g.heading = "Trim the top, at step " + w + " of the order of work"
	}
	caution := "a wide panel: fence for the long edges, a sled or a guide across; the far side held up, as the saw's maker says"
	for _, x := range c.p.GlueUps {
		yields := word.Count(x.Count, "piece") + ": " + c.p.Label(cutting.Placed{Order: x.Order, Mark: x.Mark})
		add := func(s cutting.Step, source string) {
			s.HasStop, s.Count, s.Gang, s.Cautions = true, x.Count, 1, []string{caution}
			g.steps = append(g.steps, sawStep{s, yields, source})
		}
		add(cutting.Step{Operation: cutting.Ripping, Setting: cutting.Setting{Kind: cutting.Fence, At: x.Width}}, "fence: to width, one edge straight first, the other side off the last")
		add(cutting.Step{Operation: cutting.CuttingToLength, Setting: cutting.Setting{Kind: cutting.Stop, At: x.Length}}, "stop: to length, one end square first")
	}
	return g
}

// aids are the cuts of the shop aids that come from the boards' ends, of one order.
func (c *cutter) aids() stepGroup {
	g := stepGroup{heading: "Small pieces for the shop, from ends that are kept or bought pieces: stop to blade"}
	if !c.alone() {
		return g
	}
	for _, a := range aidsFound(c.in) {
		if a.Sheet {
			continue
		}
		s := cutting.Step{
			Operation: cutting.CuttingToLength, Setting: cutting.Setting{Kind: cutting.Stop, At: a.Long}, HasStop: true, Count: a.Count, Gang: 1, Boards: a.Boards,
			Cautions: []string{"rip to width first, while the end is long; no piece shorter than " + c.p.Unit(saw.Held()) + " is cut without a clamp"},
		}
		section := fmt.Sprintf("%s × %s, from %s", c.text(a.Thick), c.text(a.Wide), a.source())
		kind, mark, _ := strings.Cut(a.Name, " ")
		text := strings.TrimSpace(word.Count(a.Count, kind) + " " + mark)
		if a.Together {
			long := c.p.Unit(roundly(c.in, a.whole(c.p.Job.Shop.Kerf)))
			section = fmt.Sprintf("%s; all from one piece %s long, bored before it is cut up: step %s", section, long, c.workStep(a.By))
		}
		g.steps = append(g.steps, sawStep{s, text, section})
	}
	return g
}

// aidsOf names the shop aids that are cut from what a board leaves.
func (c *cutter) aidsOf(board int) string {
	if !c.alone() {
		return ""
	}
	var names []string
	for _, a := range aidsFound(c.in) {
		if name := kindOf(a) + "s"; slices.Contains(a.Boards, board) && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return word.List(names)
}

// source says which boards a step's pieces are from, and how many are cut at
// once.
func (c *cutter) source(s cutting.Step) string {
	if s.Operation == cutting.GluingUp {
		for _, g := range c.p.GlueUps {
			if slices.Contains(s.Pieces, g.Yield()) {
				return fmt.Sprintf("from %d staves of %s × %s", g.Staves, c.text(g.StaveWidth), c.text(g.StaveLength))
			}
		}
	}
	var all []string
	if len(s.Boards) > 0 {
		all = append(all, "from "+saw.Named(s.Boards))
	}
	if s.Gang > 1 {
		all = append(all, fmt.Sprintf("up to %d side by side", s.Gang))
	}
	return strings.Join(all, "; ")
}
