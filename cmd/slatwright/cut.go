package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/render/report"
	"slatwright/specs/diag"
)

// newCut returns the command that plans the cutting of one or several orders.
func newCut() *cobra.Command {
	var asJSON bool
	var out string
	c := &cobra.Command{
		Use:   "cut DESIGN... [--json] [-o DIR]",
		Short: "boards to buy and the cutting plan, several orders together",
		Long: "Cut prints which boards to buy, how each is cut, and the settings of the saw in their order. Several\n" +
			"designs are cut together: each part keeps its order and mark, and the plan says what that saves.\n" +
			"The plan costs the least there is, which is proven for one order and stated with its gap for many, and for\n" +
			"walls of many hundred bottles. A quote bills the boards of the same plan.\n" +
			"Boards are those of the designs' [[board]] lines, or else the usual ones at example prices.\n\n" +
			"With -o it also writes, for the bench:\n\n" +
			"  cutting.pdf         the boards as bars in cutting order, and the settings one after the other\n" +
			"  cutting-labels.pdf  a label for every part, in cutting order\n" +
			"  cutting-boards.csv  the shopping list\n" +
			"  cutting.json        the plan, for other programs",
		Example: "  slatwright cut rack.toml\n  slatwright cut rack.toml counter.toml -o friday\n  slatwright cut rack.toml counter.toml --json",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("cut needs a design file, or several; see slatwright cut --help")
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			plans, err := planAll(args)
			if err != nil {
				return err
			}
			if out != "" {
				files, err := bench(plans)
				if err != nil {
					return err
				}
				if err := writeAll(out, files); err != nil {
					return err
				}
			}
			return printPlans(c.OutOrStdout(), plans, asJSON)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the plan for other programs")
	c.Flags().StringVarP(&out, "out", "o", "", "folder to write the cutting sheets into")
	return c
}

// planAll reads and solves the designs and plans them, those of one wood
// together.
func planAll(paths []string) ([]*saw.Plan, error) {
	var racks []*rack.Rack
	for _, path := range paths {
		_, r, err := load(path)
		if err != nil {
			return nil, err
		}
		racks = append(racks, r)
	}
	var plans []*saw.Plan
	for _, batch := range saw.Batches(racks) {
		p, err := saw.Make(batch, saw.EffortFor(len(batch)))
		if err != nil {
			return nil, unplanned(err)
		}
		plans = append(plans, p)
	}
	return plans, nil
}

// planOne plans a rack for its packet. Where its boards do not reach there is no
// plan, but the reason in words: the rack is drawn all the same.
func planOne(r *rack.Rack) (cuts *saw.Plan, uncut string, err error) {
	cuts, err = saw.Make([]*rack.Rack{r}, saw.EffortFor(1))
	var f *saw.Fault
	if errors.As(err, &f) {
		m := f.Message
		uncut = fmt.Sprintf("%s:%d:%d: %s; %s", f.Source.Name, m.Place.Line, m.Place.Column, m.Text, m.Hint)
		return nil, uncut, nil
	}
	return cuts, "", err
}

// unplanned turns a fault of a plan into one of the design it is at.
func unplanned(err error) error {
	var f *saw.Fault
	if errors.As(err, &f) {
		return &designError{f.Source, diag.List{f.Message}}
	}
	return err
}

func printPlans(w io.Writer, plans []*saw.Plan, asJSON bool) error {
	if asJSON {
		text, err := report.CutJSON(plans)
		if err != nil {
			return err
		}
		_, err = w.Write(text)
		return err
	}
	for i, p := range plans {
		if i > 0 {
			fmt.Fprintln(w)
		}
		if _, err := w.Write(report.CutText(p)); err != nil {
			return err
		}
	}
	return nil
}
