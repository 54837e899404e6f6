package main

import (
	"io"

	"github.com/spf13/cobra"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/revision"
	"slatwright/render/report"
	"slatwright/render/reprint"
	"slatwright/specs/design"
)

// newCompare returns the command that tells what a change of a design means.
func newCompare() *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "compare OLD NEW [--json]",
		Short: "what changed, which cut parts still serve, which sheets to reprint",
		Long: "Compare solves two designs and says what the new one changes: lines, counts, solved lengths, checks;\n" +
			"what becomes of the parts that were cut for the old one, so that the fewest are made new; and which\n" +
			"printed sheets no longer show what is built. Date, revision, sheet numbers and the content mark alone\n" +
			"are no reason to reprint. One old part becomes at most one new one; one shorter than shop.min_rip_length\n" +
			"is only cut to length.\n\n" +
			"Exit status: 0 both designs solve, 1 both solve and the new one fails a check, 2 one cannot be read as\n" +
			"written, 3 the lines of one contradict each other.",
		Example: "  slatwright compare rack.toml rack-b.toml",
		Args:    exactly("the old design file", "the new design file"),
		RunE: func(c *cobra.Command, args []string) error {
			return compare(c.OutOrStdout(), args[0], args[1], asJSON)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the comparison for other programs")
	return c
}

func compare(w io.Writer, oldPath, newPath string, asJSON bool) error {
	_, old, err := load(oldPath)
	if err != nil {
		return err
	}
	_, new, err := load(newPath)
	if err != nil {
		return err
	}
	before, after := check.All(old), check.All(new)
	c := report.Comparison{
		OldPath: oldPath, NewPath: newPath, Old: old, New: new, Status: check.Worst(after),
		Statements: revision.Statements(old.Design, new.Design),
		Counts:     revision.Counts(old, new),
		Lengths:    revision.Lengths(old, new),
		Checks:     revision.Checks(before, after),
		Parts:      revision.CompareParts(old, new),
	}
	if c.Sheets, err = sheetsToReprint(old, new, before, after); err != nil {
		return err
	}
	text := c.Text()
	if asJSON {
		if text, err = c.JSON(); err != nil {
			return err
		}
	}
	if _, err := w.Write(text); err != nil {
		return err
	}
	if c.Status == check.Fail {
		return errFails
	}
	return nil
}

// sheetsToReprint composes both packets with one mark, date and revision, so
// that only what the sheets show makes a difference.
func sheetsToReprint(old, new *rack.Rack, before, after []check.Finding) ([]reprint.Sheet, error) {
	const mark = "00000000"
	composed := func(r *rack.Rack, findings []check.Finding) (reprint.Packet, error) {
		in, err := contents(r, findings, mark)
		if err != nil {
			return reprint.Packet{}, err
		}
		return compose(in)
	}
	was, err := composed(dated(old, new.Design), before)
	if err != nil {
		return nil, err
	}
	is, err := composed(new, after)
	if err != nil {
		return nil, err
	}
	return reprint.Compare(was, is), nil
}

// dated returns a rack with the date and the revision of another design.
func dated(r *rack.Rack, like *design.Design) *rack.Rack {
	d, out := *r.Design, *r
	d.Date, d.Revision = like.Date, like.Revision
	out.Design = &d
	return &out
}
