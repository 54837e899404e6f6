package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"slatwright/geometry/rack"
	"slatwright/geometry/sizes"
	"slatwright/render/pdf"
	"slatwright/render/report"
	"slatwright/render/sheet"
	"slatwright/specs/design"
)

// newSizes returns the command that prints a chart of sizes.
func newSizes() *cobra.Command {
	var asJSON, asCSV bool
	var columns, rows, out string
	c := &cobra.Command{
		Use:   "sizes DESIGN [--columns 1-10] [--rows 1-12] [--csv] [--json] [-o DIR]",
		Short: "a chart of sizes: columns by rows, with bottles, size, boards, price",
		Long: "Sizes solves a design for every number of columns and rows in a range, in place of its own, and prints\n" +
			"bottles, overall size, boards, weight, labour and price of each. Unsaid, the ranges lie around the design's\n" +
			"own counts. A size that the design's lines forbid, that its boards do not reach for, or that fails a\n" +
			"check is marked, with the reason below. Status 1: no size of the chart fits.\n\n" +
			"Columns are counted from the left: those of the [[column]]s first, then columns as the rest of the file\n" +
			"has them. A [[column]] that states its rows keeps them, whatever the rows of the chart.\n\n" +
			"With -o it also writes sizes.pdf, a chart to print, and sizes.csv.",
		Example: "  slatwright sizes rack.toml\n  slatwright sizes rack.toml --columns 1-10 --rows 1-12 --csv > sizes.csv",
		Args:    exactly("a design file"),
		RunE: func(c *cobra.Command, args []string) error {
			d, err := design.Load(args[0])
			if err != nil {
				if d != nil {
					err = &designError{d.Source, err}
				}
				return err
			}
			across, down, err := spans(d, columns, rows)
			if err != nil {
				return err
			}
			list, err := sizes.Chart(d, across, down)
			if err != nil {
				return &designError{d.Source, err}
			}
			t := sizes.Table{Sizes: list, Columns: across, Rows: down}
			if out != "" {
				files, err := chartFiles(t)
				if err != nil {
					return err
				}
				if err := writeAll(out, files); err != nil {
					return err
				}
			}
			text, err := chartText(t, asJSON, asCSV)
			if err != nil {
				return err
			}
			if _, err := c.OutOrStdout().Write(text); err != nil {
				return err
			}
			for _, s := range list {
				if s.Outcome == sizes.Fits {
					return nil
				}
			}
			return errFails
		},
	}
	c.Flags().StringVar(&columns, "columns", "", "numbers of columns, such as 1-10 or 4")
	c.Flags().StringVar(&rows, "rows", "", "numbers of rows, such as 1-12 or 5")
	c.Flags().BoolVar(&asJSON, "json", false, "print the chart for other programs")
	c.Flags().BoolVar(&asCSV, "csv", false, "print a table of one row a size")
	c.Flags().StringVarP(&out, "out", "o", "", "folder to write the chart into")
	c.MarkFlagsMutuallyExclusive("json", "csv")
	return c
}

// spans reads the ranges; where one is not given the design is solved, and the
// range lies around its own count.
func spans(d *design.Design, columns, rows string) (across, down sizes.Span, err error) {
	if columns == "" || rows == "" {
		r, err := rack.Build(d)
		if err != nil {
			return across, down, &designError{d.Source, err}
		}
		across, down = sizes.Around(r)
	}
	if columns != "" {
		if across, err = span("--columns", columns, design.MaxColumns); err != nil {
			return across, down, err
		}
	}
	if rows != "" {
		if down, err = span("--rows", rows, design.MaxRows); err != nil {
			return across, down, err
		}
	}
	if n := across.Len() * down.Len(); n > sizes.Most {
		return across, down, fmt.Errorf("%d sizes are too many for a chart: at most %d", n, sizes.Most)
	}
	return across, down, nil
}

// span reads "4", "1-10" or "1..10".
func span(flag, text string, most int) (sizes.Span, error) {
	lo, hi, ranged := strings.Cut(strings.ReplaceAll(text, "..", "-"), "-")
	if !ranged {
		hi = lo
	}
	least, err1 := strconv.Atoi(strings.TrimSpace(lo))
	greatest, err2 := strconv.Atoi(strings.TrimSpace(hi))
	if err1 != nil || err2 != nil || least < 1 || greatest < least || greatest > most {
		return sizes.Span{}, fmt.Errorf("%s %q is no range such as 1-10, from 1 to %d", flag, text, most)
	}
	return sizes.Span{Least: least, Most: greatest}, nil
}

// chartText returns what the command prints.
func chartText(t sizes.Table, asJSON, asCSV bool) ([]byte, error) {
	switch {
	case asJSON:
		return report.SizesJSON(t.Sizes)
	case asCSV:
		return report.SizesCSV(t.Sizes)
	}
	return report.SizesText(t), nil
}

// chartFiles makes the files of a chart: the sheets only where some size can be
// built.
func chartFiles(t sizes.Table) ([]outFile, error) {
	jobs := []job{{"sizes.csv", func() ([]byte, error) { return report.SizesCSV(t.Sizes) }}}
	i := slices.IndexFunc(t.Sizes, func(s sizes.Size) bool { return s.Rack != nil })
	if i < 0 {
		return all(jobs)
	}
	r := t.Sizes[i].Rack
	sheets, err := sheet.Sizes(sheet.Input{Rack: r, Mark: report.Mark(r)}, t)
	if err != nil {
		return nil, &bugError{err}
	}
	return all(append(jobs, job{"sizes.pdf", func() ([]byte, error) { return pdf.Encode(document(r, "sizes", sheets, false)) }}))
}
