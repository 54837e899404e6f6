package main

import (
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/unit"
)

// newExplain returns the command that proves a length.
func newExplain() *cobra.Command {
	return &cobra.Command{
		Use:   "explain DESIGN NAME",
		Short: "why this length is what it is",
		Long: "Explain prints where a solved length comes from: the line that states it, the default, or the relation\n" +
			"it follows from with the lengths in it, each explained in turn.",
		Example: "  slatwright explain rack.toml ladder.pitch",
		Args:    exactly("a design file", "the name of a length, such as ladder.pitch"),
		RunE: func(c *cobra.Command, args []string) error {
			_, r, err := load(args[0])
			if err != nil {
				return err
			}
			return explain(c.OutOrStdout(), r, args[1])
		},
	}
}

func explain(w io.Writer, r *rack.Rack, name string) error {
	if n, ok := countNamed(r, name); ok {
		fmt.Fprintf(w, "%s = %d\n  %s\n", name, n, countBecause(r.Design, name))
		printNext(w, &rack.Rack{Nexts: nextOf(r, name)})
		return nil
	}
	if !r.Has(name) {
		known := []string{"rack.columns", "rack.rows"}
		for _, l := range r.Lengths {
			known = append(known, l.Name)
		}
		text := fmt.Sprintf("this rack has no length named %q", name)
		last := name[strings.LastIndexByte(name, '.')+1:]
		own := slices.DeleteFunc(slices.Clone(known), func(n string) bool { return !strings.HasSuffix(n, "."+last) })
		switch hint := diag.DidYouMean(name, known); {
		case len(own) > 0:
			text += "; there is " + strings.Join(own, ", ")
		case hint != "":
			text += "; " + hint
		}
		return fmt.Errorf("%s", text)
	}
	p := prover{w: w, r: r, seen: map[string]bool{}}
	p.prove(name, 0)
	return nil
}

// countNamed returns the count of the name.
func countNamed(r *rack.Rack, name string) (int, bool) {
	switch name {
	case "rack.columns":
		return r.Counts.Columns, true
	case "rack.rows":
		return r.Counts.Rows, true
	}
	for i, k := range r.Kinds {
		switch name {
		case fmt.Sprintf("column.%d.count", i+1):
			return k.Count, len(r.Design.Columns) > 0
		case fmt.Sprintf("column.%d.rows", i+1):
			return k.Rows, len(r.Design.Columns) > 0
		}
	}
	return 0, false
}

func countBecause(d *design.Design, name string) string {
	if c, ok := d.Count(name); ok {
		return fmt.Sprintf("stated, line %d: %s", c.Place.Line, c.Text)
	}
	return "follows: as the columns and the limits of the design say"
}

func nextOf(r *rack.Rack, name string) []rack.Next {
	var list []rack.Next
	for _, n := range r.Nexts {
		if n.Count == name {
			list = append(list, n)
		}
	}
	return list
}

// prover prints a proof, each length in it once.
type prover struct {
	w    io.Writer
	r    *rack.Rack
	seen map[string]bool
}

// prove prints a length and, indented below it, what it stands on.
func (p *prover) prove(name string, depth int) {
	l, ok := p.r.Find(name)
	if !ok {
		return // a relation's helper without a name of its own
	}
	in := strings.Repeat("  ", depth)
	fmt.Fprintf(p.w, "%s%s = %s\n", in, name, p.r.Format.Unit(l.Value))
	if p.seen[name] {
		fmt.Fprintf(p.w, "%s  as above\n", in)
		return
	}
	p.seen[name] = true
	switch {
	case l.From == rack.Stated:
		fmt.Fprintf(p.w, "%s  stated, line %d: %s\n", in, l.Line, l.Because)
	case l.From == rack.Default:
		fmt.Fprintf(p.w, "%s  %s\n", in, l.Because)
	default:
		fmt.Fprintf(p.w, "%s  follows: %s\n", in, l.Because)
		sum := l.Sum
		if sum == "" {
			sum = p.figures(l.Because)
		}
		if sum != "" {
			fmt.Fprintf(p.w, "%s           %s\n", in, sum)
		}
	}
	for _, need := range l.Needs {
		if need != name {
			p.prove(need, depth+1)
		}
	}
}

// dotted matches the name of a length or a count in a relation.
var dotted = regexp.MustCompile(`[a-z]+(\.[a-z0-9_]+)+`)

// pitches writes out the sum over columns that differ.
func pitches(r *rack.Rack) string {
	var list []string
	for i, k := range r.Kinds {
		list = append(list, fmt.Sprintf("%d column.%d.pitch", k.Count, i+1))
	}
	return strings.Join(list, " + ")
}

// coefficient matches a figure before a name.
var coefficient = regexp.MustCompile(`([0-9]+) ([a-z])`)

// compares matches what stands between the two sides of a relation.
var compares = regexp.MustCompile(` (=|<=|>=|~) `)

// figures returns a relation with figures for its names, "" where it has no
// two sides. Where a figure is off the finest mark all are given in exact
// millimetres, so that they add up.
func (p *prover) figures(relation string) string {
	if !compares.MatchString(relation) {
		return ""
	}
	relation = strings.ReplaceAll(relation, "the pitches of all columns", pitches(p.r))
	print, after := p.r.Format.Text, " "+p.r.Format.System.String()
	for _, name := range dotted.FindAllString(relation, -1) {
		if l, ok := p.r.Find(name); ok {
			if _, exact := p.r.Format.Round(l.Value); !exact {
				print, after = unit.Length.Decimal, " mm"
			}
		}
	}
	known := true
	relation = coefficient.ReplaceAllString(relation, "$1 × $2") // "2 × 3/4" is not read as two and three quarters
	sum := dotted.ReplaceAllStringFunc(relation, func(name string) string {
		if l, ok := p.r.Find(name); ok {
			return print(l.Value)
		}
		if n, ok := countNamed(p.r, name); ok {
			return fmt.Sprint(n)
		}
		known = false
		return name
	})
	if !known {
		return ""
	}
	return sum + after
}
