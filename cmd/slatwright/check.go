package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/render/report"
)

// newCheck returns the command that solves and checks only.
func newCheck() *cobra.Command {
	var asJSON, sources bool
	c := &cobra.Command{
		Use:   "check DESIGN [--json]",
		Short: "solve and check only; print the findings",
		Long: "Check solves a design and prints what each check finds: its figure, its limit and what they mean.\n" +
			"It writes no file. With --json it prints the report that draw writes as report.json.\n\n" +
			"The checks:\n\n" + checkList(),
		Example: "  slatwright check rack.toml\n  slatwright check rack.toml --json",
		Args:    exactly("a design file"),
		RunE: func(c *cobra.Command, args []string) error {
			return runCheck(c.OutOrStdout(), args[0], asJSON, sources)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the report for other programs")
	c.Flags().BoolVar(&sources, "sources", false, "print where each limit is from")
	return c
}

// checkList lists the checks for the help text.
func checkList() string {
	var b bytes.Buffer
	for _, c := range check.Checks() {
		fmt.Fprintf(&b, "  %-16s %s\n", c.Code, c.Title)
	}
	return b.String()
}

func runCheck(w io.Writer, path string, asJSON, sources bool) error {
	d, r, err := load(path)
	var clash *rack.Clash
	if asJSON && errors.As(err, &clash) {
		text, failed := report.Contradiction(d, clash)
		if failed != nil {
			return failed
		}
		w.Write(text)
	}
	if err != nil {
		return err
	}
	findings := check.All(r)
	if asJSON {
		text, err := report.JSON(r, findings)
		if err != nil {
			return err
		}
		w.Write(text)
	} else {
		fmt.Fprintf(w, "%s: %s\n", path, report.Summary(r))
		printMeasured(w, r)
		printWorse(w, findings, sources)
		for _, f := range findings {
			if f.Status == check.OK {
				printFinding(w, f, sources)
			}
		}
		printNext(w, r)
	}
	if check.Worst(findings) == check.Fail {
		return errFails
	}
	return nil
}

// printFinding prints a finding on one line, and below it what to change where
// it is not OK, and on request where its limit is from.
func printFinding(w io.Writer, f check.Finding, sources bool) {
	fmt.Fprintf(w, "  %-7s  %-15s  %s: %s\n", f.Status, f.Name, f.Where, f.Says)
	if f.Status != check.OK && f.Change != "" {
		fmt.Fprintf(w, "           to change: %s\n", f.Change)
	}
	if sources && f.Source != "" {
		fmt.Fprintf(w, "           limit from: %s\n", f.Source)
	}
}

// printWorse prints the findings that somebody has to know, what fails first.
func printWorse(w io.Writer, list []check.Finding, sources bool) {
	for _, status := range []check.Status{check.Fail, check.Caution} {
		for _, f := range list {
			if f.Status == status {
				printFinding(w, f, sources)
			}
		}
	}
}

// printNext prints why an open count is not one more.
func printNext(w io.Writer, r *rack.Rack) {
	for _, n := range r.Nexts {
		fmt.Fprintf(w, "  %s = %d is stopped by\n", n.Count, n.Value)
		for _, s := range n.StoppedBy {
			text := s.Text
			if s.Line > 0 {
				text = fmt.Sprintf("line %d, %s", s.Line, s.Text)
			}
			fmt.Fprintf(w, "    %s: %s\n", text, s.Needs)
		}
	}
}
