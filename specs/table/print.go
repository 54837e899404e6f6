package table

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"slatwright/specs/unit"
)

// Print writes the table of the name (one of Names), or all where name is "",
// with lengths in the system's unit and with the origin beside each figure.
// The error is that of w, or says that there is no such table.
func Print(w io.Writer, name string, sys unit.System) error {
	names := Names()
	if name != "" {
		names = []string{name}
	}
	out := bufio.NewWriter(w)
	for i, n := range names {
		l, ok := List(n, sys)
		if !ok {
			return fmt.Errorf("no table %q; the tables are %s", n, strings.Join(Names(), ", "))
		}
		if i > 0 {
			fmt.Fprintln(out)
		}
		l.print(out)
	}
	return out.Flush()
}

// print writes the listing: each row's name on a line, below it its figures,
// in columns. Errors stay with w, whose Flush reports them.
func (l Listing) print(w *bufio.Writer) {
	label, text := l.widths()
	fmt.Fprintln(w, l.Title)
	for _, row := range l.Rows {
		fmt.Fprintln(w, strings.TrimRight(row.Name+"  "+row.Text, " "))
		for _, c := range row.Cells {
			fmt.Fprintf(w, "  %s  %s  %s: %s\n", pad(c.Label, label), pad(c.Text, text), c.Origin.Standing, c.Origin.Source)
		}
		if row.Note != "" {
			fmt.Fprintf(w, "  %s  %s\n", pad("note", label), row.Note)
		}
	}
	if len(l.Sources) > 0 {
		fmt.Fprintln(w, "sources")
	}
	for _, s := range l.Sources {
		fmt.Fprintf(w, "  %s  %s\n", pad(s.Key, 3), s.Ref)
	}
}

// widths returns the widths of the first two columns.
func (l Listing) widths() (label, text int) {
	for _, row := range l.Rows {
		for _, c := range row.Cells {
			label = max(label, utf8.RuneCountInString(c.Label))
			text = max(text, utf8.RuneCountInString(c.Text))
		}
	}
	return label, text
}

func pad(s string, width int) string {
	return s + strings.Repeat(" ", max(width-utf8.RuneCountInString(s), 0))
}
