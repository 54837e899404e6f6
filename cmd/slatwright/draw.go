package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"slatwright/geometry/check"
	"slatwright/render/report"
)

// newDraw returns the command that writes the packet.
func newDraw() *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "draw DESIGN [-o DIR]",
		Short: "solve, check, and write the whole packet",
		Long: "Draw solves a design, checks it and writes the packet:\n\n" +
			"  drawings.pdf     all scaled sheets, one a page\n" +
			"  template.pdf     full-size templates, to be printed at 100 %\n" +
			"  labels.pdf       a label for every part\n" +
			"  svg/NN-name.svg  each sheet by itself\n" +
			"  parts.csv        the cut list\n" +
			"  boards.csv       the shopping list\n" +
			"  report.json      all solved lengths, parts and checks, for other programs\n\n" +
			"Nothing is written where the design cannot be read or contradicts itself.",
		Example: "  slatwright draw rack.toml -o out",
		Args:    exactly("a design file"),
		RunE: func(c *cobra.Command, args []string) error {
			return draw(c, args[0], out)
		},
	}
	c.Flags().StringVarP(&out, "out", "o", "out", "folder to write into")
	return c
}

func draw(c *cobra.Command, path, out string) error {
	_, r, err := load(path)
	if err != nil {
		return err
	}
	findings := check.All(r)
	in, err := contents(r, findings, report.Mark(r))
	if err != nil {
		return err
	}
	files, err := packet(in)
	if err != nil {
		return err
	}
	if err := writeAll(out, files); err != nil {
		return err
	}
	fmt.Fprintf(c.OutOrStdout(), "%s: %s\n", path, report.Summary(r))
	printMeasured(c.OutOrStdout(), r)
	printWorse(c.OutOrStdout(), findings, false)
	if in.Uncut != "" {
		fmt.Fprintf(c.OutOrStdout(), "  no cutting plan: %s\n", in.Uncut)
	}
	fmt.Fprintf(c.OutOrStdout(), "%d files written into %s\n", len(files), out)
	if check.Worst(findings) == check.Fail {
		return errFails
	}
	return nil
}
