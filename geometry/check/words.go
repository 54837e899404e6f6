package check

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Words and figures of physics. They are rounded to the nearest, since physics
// is floating point here and none of it decides a fit.

const (
	gravity = 9.80665 // m/s², standard gravity
)

// figure prints a physical quantity with three decimals at most.
func figure(v float64) string { return plain(v, 3) }

// plain prints v with so many decimals at most.
func plain(v float64, places int) string {
	text := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// force prints newtons in the design's own unit.
func force(r *rack.Rack, newton float64) string {
	if r.Design.Units == unit.Metric {
		return plain(newton, 0) + " N"
	}
	return plain(newton/unit.PoundForce, 1) + " lbf"
}

// mass prints kilograms in the design's own unit.
func mass(r *rack.Rack, kg float64) string {
	if r.Design.Units == unit.Metric {
		return plain(kg, 0) + " kg"
	}
	return plain(kg/unit.Pound, 0) + " lb"
}

// massOf prints the mass of one bottle.
func massOf(r *rack.Rack, kg float64) string {
	if r.Design.Units == unit.Metric {
		return plain(kg, 1) + " kg"
	}
	return plain(kg/unit.Pound, 1) + " lb"
}

// slight prints a small length in mm in decimals of the design's own unit.
func slight(r *rack.Rack, mm float64) string {
	if r.Design.Units == unit.Metric {
		return plain(mm, 1) + " mm"
	}
	return plain(mm/25.4, 3) + " in"
}

// percent prints a moisture content.
func percent(v float64) string { return plain(v, 1) + " %" }

// lengthOf returns a constant in mm as a length.
func lengthOf(id string) unit.Length { return lengthMM(table.Value(id)) }

// lengthMM returns the length nearest to so many millimetres.
func lengthMM(mm float64) unit.Length {
	return unit.Length(math.Round(mm * float64(unit.Millimetre)))
}

// named returns the name of a length, and the line that states it.
func named(r *rack.Rack, name string) string {
	if l, ok := r.Find(name); ok && l.Line > 0 {
		return fmt.Sprintf("%s (line %d)", name, l.Line)
	}
	return name
}

// stated returns the name of a key, and the line it stands on.
func stated(name string, at diag.Place) string {
	if at.None() {
		return name
	}
	return fmt.Sprintf("%s (line %d)", name, at.Line)
}

// sources joins where the constants are from, for a finding.
func sources(ids ...string) string {
	var list []string
	for _, id := range ids {
		o := table.FindConstant(id).Origin
		text := string(o.Standing) + ", " + o.Source
		if !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return strings.Join(list, "; ")
}
