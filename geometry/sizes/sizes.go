// Package sizes makes a chart of sizes: one design solved, checked, cut and
// priced for every number of columns and rows in a range. A design goes in;
// sizes in a fixed order come out, those that cannot be built marked with the
// reason. The sizes command prints them.
package sizes

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/quote"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/parallel"
)

// Effort is what the cutting plan of one size may take (see cutting.Job): a
// tenth of saw.Quick, with which racks of a hundred bottles are mostly proven.
// Where a plan is not proven its price may be a little higher than that of the
// quote command.
const Effort = saw.Quick / 10

// Most is how many sizes a chart can have.
const Most = 1000

// Span is a range of a count, ends included.
type Span struct{ Least, Most int }

// Len returns how many counts there are in the span.
func (s Span) Len() int { return s.Most - s.Least + 1 }

// Outcome is what becomes of a size.
type Outcome string

// The outcomes.
const (
	Fits  Outcome = "fits"
	Fails Outcome = "fails a check"
	NoFit Outcome = "does not fit"    // the design's own lines forbid it
	Uncut Outcome = "no cutting plan" // its boards do not reach
)

// Size is one size of the chart. Rack is nil where the size does not fit, Quote
// also where it cannot be cut.
type Size struct {
	Columns, Rows int
	Outcome       Outcome
	Why           string // where the outcome is not Fits
	Rack          *rack.Rack
	Quote         *quote.Quote
	Findings      []check.Finding
}

// Proven reports whether no cutting plan of the size costs less.
func (s Size) Proven() bool { return s.Quote != nil && s.Quote.Cuts.Proven }

// Around returns spans around the design's own counts: two below to three
// above. The design must have an answer.
func Around(r *rack.Rack) (columns, rows Span) {
	near := func(n, most int) Span { return Span{max(1, n-2), min(n+3, most)} }
	return near(r.Counts.Columns, design.MaxColumns), near(r.Counts.Rows, design.MaxRows)
}

// Chart returns the sizes, rows after rows: all columns of the least number of
// rows first. A size is what design.Design.Resized says. The error is a
// diag.List where rows are to vary and every column of every size states its
// own, or what kept a size from being solved though the design does not forbid
// it.
func Chart(d *design.Design, columns, rows Span) ([]Size, error) {
	if m, still := stillRows(d, columns, rows); still {
		return nil, diag.List{m}
	}
	out := make([]Size, 0, columns.Len()*rows.Len())
	for r := rows.Least; r <= rows.Most; r++ {
		for c := columns.Least; c <= columns.Most; c++ {
			out = append(out, Size{Columns: c, Rows: r})
		}
	}
	return out, work(d, out)
}

// work fills in the sizes side by side. The largest are begun first, so that
// none is left over at the end. Of several errors the first in the chart's order
// is returned; a panic is raised again here.
func work(d *design.Design, sizes []Size) error {
	errs := make([]error, len(sizes))
	parallel.Each(len(sizes), func(i int) {
		i = len(sizes) - 1 - i
		errs[i] = sizes[i].fill(d)
	})
	if i := slices.IndexFunc(errs, func(err error) bool { return err != nil }); i >= 0 {
		return errs[i]
	}
	return nil
}

// stillRows returns what to say where the rows of a chart could not vary.
func stillRows(d *design.Design, columns, rows Span) (m diag.Message, still bool) {
	if rows.Len() == 1 {
		return m, false
	}
	var own []design.Count
	for n := columns.Least; n <= columns.Most; n++ {
		if own = d.Resized(n, rows.Least).OwnRows(); own == nil {
			return m, false
		}
	}
	m = diag.At(d.Source, own[0].Place, "the rows of the chart cannot vary: every column states its own")
	for _, c := range own[1:] {
		m.Notes = append(m.Notes, fmt.Sprintf("so does line %d, %s", c.Place.Line, c.Text))
	}
	m.Hint = "ask for one number of rows, that of the tallest column, or for more columns than the [[column]]s are; or take out `rows`, in a copy of the design"
	return m, true
}

// fill solves, checks, cuts and prices one size.
func (s *Size) fill(d *design.Design) error {
	r, err := rack.Build(d.Resized(s.Columns, s.Rows))
	var clash *rack.Clash
	if errors.As(err, &clash) {
		s.Outcome, s.Why = NoFit, forbids(clash)
		return nil
	}
	if err != nil {
		return err
	}
	if own := r.Design.OwnRows(); own != nil && r.Counts.Rows != s.Rows {
		s.Outcome, s.Why = NoFit, "every column states its rows: "+quoted(own)
		return nil
	}
	s.Rack, s.Outcome, s.Findings = r, Fits, check.All(r)
	failed := failing(s.Findings)
	if failed != "" {
		s.Outcome, s.Why = Fails, failed
	}
	cuts, err := saw.Make([]*rack.Rack{r}, Effort)
	var fault *saw.Fault
	if errors.As(err, &fault) {
		s.Outcome, s.Why = Uncut, fault.Message.Text
		if failed != "" {
			s.Why += "; besides it " + string(Fails) + ": " + failed
		}
		return nil
	}
	if err != nil {
		return err
	}
	s.Quote = quote.Make(r, cuts)
	return nil
}

// quoted names the lines of statements.
func quoted(list []design.Count) string {
	var lines []string
	for _, c := range list {
		lines = append(lines, fmt.Sprintf("line %d, %s", c.Place.Line, c.Text))
	}
	return strings.Join(lines, "; ")
}

// forbids names the lines of the design that a size clashes with.
func forbids(c *rack.Clash) string {
	var lines []string
	for _, l := range c.Lines {
		if l.Line > 0 {
			lines = append(lines, fmt.Sprintf("line %d, %s", l.Line, l.Text))
		}
	}
	if len(lines) == 0 {
		return "the relations of the rack"
	}
	return strings.Join(lines, "; ")
}

// failing names the checks that fail.
func failing(findings []check.Finding) string {
	var names []string
	for _, f := range findings {
		if f.Status == check.Fail && !slices.Contains(names, f.Name) {
			names = append(names, f.Name)
		}
	}
	return strings.Join(names, ", ")
}
