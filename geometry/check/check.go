// Package check judges a solved rack: whether its bottles rest, clear each
// other and the boards, whether joints, slats and legs hold, whether it stands,
// how it moves with the seasons, whether it can be raised and carried in, and
// which defaults gave way. A rack.Rack goes in; a list of findings comes out, always
// in the same order. The order sheet, the report and the program's exit status
// read it next.
//
// The package shares no arithmetic with the solver or the rack model, so that
// it is a second opinion: every comparison is decided in whole numbers, those
// with square roots through squares (exact.go). Printed figures are rounded
// towards the worse side, so that a figure never looks better than it is. Only
// force, mass and moisture are floating point, in checks of advice (words.go).
package check

import (
	"fmt"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// Status is the outcome of a check.
type Status string

// The outcomes, from good to bad.
const (
	OK      Status = "ok"
	Caution Status = "caution" // holds, but somebody should know
	Fail    Status = "fail"
)

// Word returns the outcome in words, in capitals what must not be overlooked.
func (s Status) Word() string {
	switch s {
	case Fail:
		return "FAILS"
	case Caution:
		return "CAUTION"
	}
	return "ok"
}

// rank orders the outcomes.
func (s Status) rank() int {
	switch s {
	case Fail:
		return 2
	case Caution:
		return 1
	}
	return 0
}

// Finding is what one check says about one kind of column, or about the rack.
type Finding struct {
	Name   string // the check's code, such as "fit.side"
	Where  string // "columns 1-4", "rack", or the name of a length
	Status Status
	Figure string // a decimal, in Unit
	Limit  string // a decimal, in Unit: what the figure is held against
	Unit   string // "mm", "ratio", "N", "degrees", "kN/m2" or "joints"
	Says   string // one clause for people, in the design's own unit
	Change string // what to change, where the outcome is not OK; "" where the check has no advice
	Source string // where the limit and the equations are from
}

// Check is one thing that is looked at.
type Check struct {
	Code  string   // as findings name it
	Title string   // a few words
	Doc   string   // when it holds
	turn  []string // lengths to change where it does not hold and the finding names nothing
	run   func(r *rack.Rack) []Finding
}

// Run returns what the check finds on the rack; nothing where it does not apply.
func (c Check) Run(r *rack.Rack) []Finding {
	list := c.run(r)
	for i := range list {
		f := &list[i]
		f.Name = c.Code
		if f.Source == "" {
			f.Source = ownRule
		}
		if says := remedy(r, *f); says != "" && f.Status == Fail {
			f.Change = says
		}
		if f.Status != OK && f.Change == "" {
			f.Change = change(r, c.turn)
		}
	}
	return list
}

// remedy says which stated line would have to be changed, and to what; ""
// where the rack has no answer to that.
func remedy(r *rack.Rack, f Finding) string {
	for _, x := range r.Remedies {
		if x.Check != f.Name || where(r, x.Kind) != f.Where {
			continue
		}
		return rack.Advice(x.Changes)
	}
	return ""
}

// ownRule is the source of a limit that this program made or the file states.
const ownRule = "the project's own rule, and exact geometry"

// change names lengths to change, with the lines that state them.
func change(r *rack.Rack, names []string) string {
	var list []string
	for _, n := range names {
		list = append(list, named(r, n))
	}
	if len(list) > 0 && len(r.Design.Columns) > 0 {
		list = append(list, "or what its [[column]] states")
	}
	return strings.Join(list, ", ")
}

// Checks returns every check, in the order in which All runs them.
func Checks() []Check {
	return []Check{
		rest, side, above, lowerApron, upperApron, depth,
		nailing, endGrain, slats, thrust, tip, anchor, racking, floor, air, front, empty, raise, doorway,
		top, crossing, tolerance, saw, kept,
	}
}

// All runs every check on the rack.
func All(r *rack.Rack) []Finding {
	var list []Finding
	for _, c := range Checks() {
		list = append(list, c.Run(r)...)
	}
	return list
}

// Worst returns the worst outcome among the findings, OK where there are none.
func Worst(list []Finding) Status {
	worst := OK
	for _, f := range list {
		if f.Status.rank() > worst.rank() {
			worst = f.Status
		}
	}
	return worst
}

// eachKind runs a look at every kind of column and names the place of what it
// finds.
func eachKind(look func(r *rack.Rack, k rack.Kind) (Finding, bool)) func(*rack.Rack) []Finding {
	return func(r *rack.Rack) []Finding {
		var list []Finding
		for i, k := range r.Kinds {
			if f, ok := look(r, k); ok {
				f.Where = where(r, i)
				list = append(list, f)
			}
		}
		return list
	}
}

// where names the columns of a kind, counted from 1 at the left.
func where(r *rack.Rack, kind int) string {
	first, last := 0, 0
	for i, c := range r.Columns {
		if c.Kind == kind {
			if first == 0 {
				first = i + 1
			}
			last = i + 1
		}
	}
	if first == last {
		return fmt.Sprintf("column %d", first)
	}
	return fmt.Sprintf("columns %d-%d", first, last)
}

// clearance is one thing measured against a least value.
type clearance struct {
	enough bool        // decided exactly
	figure unit.Length // rounded down
	says   string      // what lies on either side of it
}

// tightest returns the finding on the worst of several clearances.
func tightest(r *rack.Rack, list []clearance, least unit.Length) (Finding, bool) {
	if len(list) == 0 {
		return Finding{}, false
	}
	worst := list[0]
	for _, c := range list[1:] {
		if worst.enough && !c.enough || worst.enough == c.enough && c.figure < worst.figure {
			worst = c
		}
	}
	f := Finding{Status: OK, Figure: micro(worst.figure), Limit: least.Decimal(), Unit: "mm"}
	f.Says = fmt.Sprintf("%s %s, least %s", r.Format.Unit(worst.figure), worst.says, r.Format.Unit(least))
	if !worst.enough {
		f.Status = Fail
		f.Says += ": too little"
	}
	return f, true
}

// micro prints a length in millimetres to the micrometre below.
func micro(l unit.Length) string { return l.Down(unit.Micrometre).Decimal() }
