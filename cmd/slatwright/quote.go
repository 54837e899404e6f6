package main

import (
	"github.com/spf13/cobra"

	"slatwright/geometry/check"
	"slatwright/geometry/quote"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/render/pdf"
	"slatwright/render/report"
	"slatwright/render/sheet"
)

// newQuote returns the command that reckons what a rack costs.
func newQuote() *cobra.Command {
	var asJSON, customer bool
	var out string
	c := &cobra.Command{
		Use:   "quote DESIGN [--json] [--customer] [-o DIR]",
		Short: "materials, labour, price, weight, carton",
		Long: "Quote prints two pages. The inner page is the maker's: boards by the cutting plan, supplies by areas and\n" +
			"counts, labour by operation, overhead, markup or margin, weight, cartons and their chargeable weight.\n" +
			"The customer page bears the price and no costs; --customer prints it alone. Where the design states no\n" +
			"figure of its own an example stands in, marked EXAMPLE: slatwright tables prices, tables labour.\n\n" +
			"With --json every line has its quantity, rate and their sources: its amount is quantity * rate / per to\n" +
			"the cent, halves up, and all sums are sums of amounts.\n\n" +
			"With -o it also writes\n\n" +
			"  quote.pdf        the sheet for the customer\n" +
			"  quote-inner.pdf  the maker's sheets, with all costs\n" +
			"  quote.json       the quote, for other programs",
		Example: "  slatwright quote rack.toml\n  slatwright quote rack.toml --customer\n  slatwright quote rack.toml --json",
		Args:    exactly("a design file"),
		RunE: func(c *cobra.Command, args []string) error {
			_, r, err := load(args[0])
			if err != nil {
				return err
			}
			cuts, err := saw.Make([]*rack.Rack{r}, saw.EffortFor(1))
			if err != nil {
				return unplanned(err)
			}
			q, findings := quote.Make(r, cuts), check.All(r)
			if out != "" {
				files, err := quoteFiles(q, findings)
				if err != nil {
					return err
				}
				if err := writeAll(out, files); err != nil {
					return err
				}
			}
			text, err := quotePages(q, findings, asJSON, customer)
			if err != nil {
				return err
			}
			if _, err := c.OutOrStdout().Write(text); err != nil {
				return err
			}
			if check.Worst(findings) == check.Fail {
				return errFails
			}
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the quote for other programs")
	c.Flags().BoolVar(&customer, "customer", false, "print the customer page alone")
	c.Flags().StringVarP(&out, "out", "o", "", "folder to write the sheets into")
	return c
}

// quoteFiles makes the sheets. The customer's are a file of their own, so that
// no cost is sent along by mistake.
func quoteFiles(q *quote.Quote, findings []check.Finding) ([]outFile, error) {
	in := sheet.Input{Rack: q.Rack, Findings: findings, Mark: report.Mark(q.Rack), Cutting: q.Cuts}
	page, err := sheet.CustomerQuote(in, q)
	if err != nil {
		return nil, &bugError{err}
	}
	inner, err := sheet.InnerQuote(in, q)
	if err != nil {
		return nil, &bugError{err}
	}
	return all([]job{
		{"quote.pdf", func() ([]byte, error) { return pdf.Encode(document(q.Rack, "quote", page, false)) }},
		{"quote-inner.pdf", func() ([]byte, error) { return pdf.Encode(document(q.Rack, "inner quote", inner, false)) }},
		{"quote.json", func() ([]byte, error) { return report.QuoteJSON(q, findings) }},
	})
}

// quotePages returns what the command prints.
func quotePages(q *quote.Quote, findings []check.Finding, asJSON, customer bool) ([]byte, error) {
	page := report.CustomerPage(q, findings)
	switch {
	case asJSON:
		return report.QuoteJSON(q, findings)
	case customer:
		return page, nil
	}
	inner := append(report.InnerPage(q, findings), "\n"...)
	return append(inner, page...), nil
}
