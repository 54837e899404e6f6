package main

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
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
	printStock(w, r)
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

// printStock tells which other parts and boards were of the thickness that stock
// was drawn with: a planer seldom thins the legs alone.
func printStock(w io.Writer, r *rack.Rack) {
	known := func(name string) bool {
		return slices.ContainsFunc(r.Measured, func(m rack.Measured) bool { return m.Name == name })
	}
	told := map[unit.Length]bool{}
	for _, m := range r.Measured {
		if m.Later || m.Value == m.Designed || !strings.HasSuffix(m.Name, ".thickness") || told[m.Designed] {
			continue
		}
		told[m.Designed] = true
		var same []string
		for _, part := range []string{"leg", "slat", "apron", "top"} {
			if l, ok := r.Find(part + ".thickness"); ok && l.Value == m.Designed && !known(l.Name) {
				same = append(same, l.Name)
			}
		}
		var lines []string
		for _, b := range r.Design.Boards {
			if b.Thickness == m.Designed {
				lines = append(lines, strconv.Itoa(b.Place.Line))
			}
		}
		if len(lines) > 0 {
			same = append(same, "what [[board]] states in line "+strings.Join(lines, ", "))
		}
		if len(same) > 0 {
			fmt.Fprintf(w, "  still %s as drawn: %s; where the whole stock came out at %s state them too\n",
				r.Format.Unit(m.Designed), strings.Join(same, ", "), r.Format.Unit(m.Value))
		}
	}
}
