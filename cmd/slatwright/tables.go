package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"slatwright/specs/diag"
	"slatwright/specs/table"
)

// newTables returns the command that prints the tables.
func newTables() *cobra.Command {
	var units string
	c := &cobra.Command{
		Use:   "tables [" + strings.Join(table.Names(), "|") + "]",
		Short: "print the tables, each figure with its source",
		Long: "Tables prints the figures that come with the program, one table or all of them, and for each figure\n" +
			"whether it was published and where, is common practice, or was written from memory.",
		Example: "  slatwright tables bottles\n  slatwright tables lumber --units mm",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			sys, err := system(units)
			if err != nil {
				return err
			}
			name := strings.Join(args, "")
			if err := known(name, len(args)); err != nil {
				return err
			}
			var b bytes.Buffer
			if err := table.Print(&b, name, sys); err != nil {
				return err
			}
			_, err = c.OutOrStdout().Write(b.Bytes())
			return err
		},
	}
	c.Flags().StringVar(&units, "units", "in", "in or mm")
	return c
}

// known sees that there is a table of the name.
func known(name string, given int) error {
	names := table.Names()
	if given == 0 || slices.Contains(names, name) {
		return nil
	}
	text := fmt.Sprintf("there is no table %q", name)
	if hint := diag.DidYouMean(name, names); hint != "" {
		return fmt.Errorf("%s; %s", text, hint)
	}
	return fmt.Errorf("%s; the tables are %s", text, strings.Join(names, ", "))
}
