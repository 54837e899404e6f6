package main

import (
	"fmt"
	"io"
	"strings"

	"slatwright/geometry/rack"
)

// printMeasured prints what is measured at the bench, what it takes the place
// of, and the parts that are cut after it.
func printMeasured(w io.Writer, r *rack.Rack) {
	for _, m := range r.Measured {
		text := fmt.Sprintf("%s = %s (line %d), drawn as %s", m.Name, r.Format.Unit(m.Value), m.Line, r.Format.Unit(m.Designed))
		if m.Later {
			text = fmt.Sprintf("%s is still to be measured (line %d), drawn as %s", m.Name, m.Line, r.Format.Unit(m.Designed))
		}
		for _, l := range m.Aside {
			text += fmt.Sprintf("; it counts in place of line %d: %s", l.Line, l.Text)
		}
		fmt.Fprintf(w, "  measured  %s\n", text)
	}
	for _, p := range r.Parts {
		if len(p.After) > 0 {
			says, names := "follows from what was measured of", p.After
			if waits := r.Awaits(p); len(waits) > 0 {
				says, names = "cut after measuring", waits
			}
			fmt.Fprintf(w, "  %s %s: %s %s\n", p.Mark, p.Name, says, strings.Join(names, ", "))
		}
	}
}
