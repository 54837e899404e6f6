package drawing

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"slatwright/specs/unit"
)

// A Term is a whole number of times a named length of the model.
type Term struct {
	Times int64
	Name  string
}

// A Sum says how a length follows from named ones: "2 ladder.pitch +
// leg.thickness". Its terms are sorted by name, each name once, none nought
// times. The empty Sum says nothing.
type Sum []Term

// Of returns the sum that is one named length.
func Of(name string) Sum { return Sum{{1, name}} }

// Plus returns s and n times t.
func (s Sum) Plus(n int64, t Sum) Sum {
	out := slices.Clone(s)
	for _, x := range t {
		i, found := slices.BinarySearchFunc(out, x, func(a, b Term) int { return cmp.Compare(a.Name, b.Name) })
		if !found {
			out = slices.Insert(out, i, Term{Name: x.Name})
		}
		out[i].Times += n * x.Times
	}
	return slices.DeleteFunc(out, func(x Term) bool { return x.Times == 0 })
}

// Value adds the sum up, of giving each name its length.
func (s Sum) Value(of func(name string) unit.Length) unit.Length {
	var all unit.Length
	for _, t := range s {
		all += unit.Length(t.Times) * of(t.Name)
	}
	return all
}

// String returns the sum as one would write it.
func (s Sum) String() string {
	var b strings.Builder
	for i, t := range s {
		n := t.Times
		switch {
		case i > 0 && n < 0:
			b.WriteString(" - ")
			n = -n
		case i > 0:
			b.WriteString(" + ")
		case n < 0:
			b.WriteString("-")
			n = -n
		}
		if n != 1 {
			b.WriteString(strconv.FormatInt(n, 10) + " ")
		}
		b.WriteString(t.Name)
	}
	return b.String()
}
