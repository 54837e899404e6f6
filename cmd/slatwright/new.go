package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// newNew returns the command that prints a design to start from.
func newNew() *cobra.Command {
	var units string
	c := &cobra.Command{
		Use:     "new [--units in|mm]",
		Short:   "print a commented design to start from",
		Long:    "New prints a design with every section of the language in comments, to be put into a file.",
		Example: "  slatwright new > rack.toml\n  slatwright new --units mm > rack.toml",
		Args:    exactly(),
		RunE: func(c *cobra.Command, _ []string) error {
			sys, err := system(units)
			if err != nil {
				return err
			}
			_, err = io.WriteString(c.OutOrStdout(), design.Starter(sys))
			return err
		},
	}
	c.Flags().StringVar(&units, "units", "in", "in or mm")
	return c
}

// system reads the value of a --units flag.
func system(s string) (unit.System, error) {
	switch s {
	case "in":
		return unit.Imperial, nil
	case "mm":
		return unit.Metric, nil
	}
	return 0, fmt.Errorf("--units is in or mm, not %q", s)
}
