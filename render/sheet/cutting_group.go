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

// A setRow is a setting with its box.
type setRow struct {
	name  string // of the step
	at    length // what is set; of no account where a word stands in the box
	word  string // what stands in the box where nothing is set
	care  bool
	gives string   // what comes of it
	notes []string // where from, and what to look out for
}

// A setGroup is settings of one kind, with what goes for all of them.
type setGroup struct {
	heading string
	common  []string
	rows    []setRow
}

// setGroups lists all settings in their order: those of the plan, then what is sawn
// when the glue of the top has cured, the shop aids last.
func (c *cutter) setGroups() []setGroup {
	var out []setGroup
	rested := false
	for i := 0; i < len(c.p.Steps); {
		n := 1
		for i+n < len(c.p.Steps) && c.p.Steps[i+n].Operation == c.p.Steps[i].Operation {
			n++
		}
		steps := c.p.Steps[i : i+n]
		g := setGroup{heading: operations[steps[0].Operation], common: commonCautions(steps)}
		for k, s := range steps {
			g.rows = append(g.rows, c.stepRow(i+k, s, g.common))
		}
		switch op := steps[0].Operation; {
		case op == cutting.Crosscutting:
			g.rows, rested = append(g.rows, c.restRows()...), true
		case op == cutting.GluingUp:
			g = c.glueGroup(g)
		case !rested && slices.Index(cutting.Operations(), op) > slices.Index(cutting.Operations(), cutting.Crosscutting):
			out, rested = append(out, setGroup{heading: "Rest: no crosscut", rows: c.restRows()}), true
		}
		out = append(out, g)
		i += n
	}
	if !rested {
		out = append(out, setGroup{heading: "Rest: no crosscut", rows: c.restRows()})
	}
	out = append(out, c.trimGroup())
	out = append(out, c.aidGroups()...)
	out = slices.DeleteFunc(out, func(g setGroup) bool { return len(g.rows) == 0 })
	next := len(c.p.Steps)
	for i := range out {
		for k := range out[i].rows {
			if r := &out[i].rows[k]; r.name == "" {
				r.name = saw.StepName(next)
				next++
			}
		}
	}
	return out
}

// stepRow is a step of the plan.
func (c *cutter) stepRow(i int, s cutting.Step, common []string) setRow {
	r := setRow{name: saw.StepName(i), at: s.Setting.At, care: s.Critical, gives: c.p.Yields(s)}
	if !s.HasStop {
		r.word = string(s.Operation)
	}
	if from := c.source(s); from != "" {
		r.notes = append(r.notes, from)
	}
	for _, t := range s.Cautions {
		if !slices.Contains(common, t) {
			r.notes = append(r.notes, t)
		}
	}
	return r
}

// restRows is about the sections that nobody sets a stop for: what is left of a
// board between its trimmed ends. The boards' bars call them so.
func (c *cutter) restRows() []setRow {
	var list []string
	n := 0
	for i, b := range c.p.Boards {
		for _, s := range b.Sections {
			if !s.Whole {
				continue
			}
			text := fmt.Sprintf("%s: %s", saw.Named([]int{i}), c.text(s.Length))
			if !s.Ripped {
				text += ", is " + word.List(contents(c.p, s))
			}
			if n += b.Count; !slices.Contains(list, text) {
				list = append(list, text)
			}
		}
	}
	if n == 0 {
		return nil
	}
	return []setRow{{name: "rest", word: "no stop", gives: word.Count(n, "section") + ": what is left between the end trims",
		notes: []string{strings.Join(list, "; ") + ". Measure it before the next cut."}}}
}

// contents lists what stands in the strips of a section, each once.
func contents(p *saw.Plan, s cutting.Section) []string {
	var out []string
	for _, t := range s.Strips {
		if text := p.Content(t); !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}

// worked returns what the steps of the order of work are called: a step with a name and
// those before it; "" where the packet has no such step.
func (c *cutter) worked(name string) (step, after string) {
	if len(c.p.Orders) > 1 {
		return "", ""
	}
	steps := stepsOf(c.in)
	i := slices.IndexFunc(steps, func(s assembly.Step) bool { return s.Name == name })
	if i < 0 {
		return "", ""
	}
	return "step " + stepName(i), afterText(steps[i].After)
}

// glueGroup ends the work at the saw with the jointing of the staves: the order of
// work tells how they are glued.
func (c *cutter) glueGroup(g setGroup) setGroup {
	step, _ := c.worked(assembly.StepGlueTop)
	if step == "" {
		return g
	}
	g.common = []string{c.p.Jointing() + ", then glue up: " + step + " of the order of work, " + sheetRef("work")}
	for i := range g.rows {
		g.rows[i].word = step
	}
	return g
}

// trimGroup is the trimming of what is glued up.
func (c *cutter) trimGroup() setGroup {
	when, after := c.worked(assembly.StepTrimTop)
	g := setGroup{heading: "Trim what is glued up", common: []string{"only when the glue has cured; one edge and one end are cut straight and square first"}}
	if when != "" {
		g.heading = "Trim the top: " + when + ", after step " + after
	}
	for _, x := range c.p.GlueUps {
		text := word.Count(x.Count, "piece") + ": " + c.p.Label(cutting.Placed{Order: x.Order, Mark: x.Mark})
		g.rows = append(g.rows,
			setRow{at: x.Width, gives: text + ", to its width", notes: []string{"rip: fence to blade, the straight edge to the fence"}},
			setRow{at: x.Length, gives: text + ", to its length", notes: []string{"crosscut: stop to blade, on a sled or with a guide"}})
	}
	return g
}

// commonCautions are those of every step.
func commonCautions(steps []cutting.Step) []string {
	out := slices.Clone(steps[0].Cautions)
	for _, s := range steps[1:] {
		out = slices.DeleteFunc(out, func(t string) bool { return !slices.Contains(s.Cautions, t) })
	}
	return out
}

// source says which boards a step's pieces are from, and how many are cut at
// once.
func (c *cutter) source(s cutting.Step) string {
	text := ""
	for _, g := range c.p.GlueUps {
		if s.Operation == cutting.GluingUp && slices.Contains(s.Pieces, g.Yield()) {
			return fmt.Sprintf("from %d staves of %s × %s", g.Staves, c.text(g.StaveWidth), c.text(g.StaveLength))
		}
	}
	if len(s.Boards) > 0 {
		text = "from " + saw.Named(s.Boards)
	}
	if s.Gang > 1 {
		text += fmt.Sprintf("; up to %d side by side", s.Gang)
	}
	return text
}
