// Package revision compares two racks, an old one and the new one that takes
// its place: what the files say otherwise, which counts, lengths and checks
// changed (this file), and what becomes of the parts that were cut for the old
// one (lot.go, match.go). Two solved racks go in; plain lists come out, always
// in the same order. The program prints them next.
package revision

import (
	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
)

// Statement is a key of the design file that changed. Old is nil where it was
// added, New where it was left out.
type Statement struct {
	Old, New *design.Said
}

// Statements lists what the files say otherwise: changed and added keys in the
// order of the new file, then those left out in the order of the old one. Place
// and comments are no change.
func Statements(old, new *design.Design) []Statement {
	was, is := map[string]*design.Said{}, map[string]*design.Said{}
	before, after := old.Said(), new.Said()
	for i, s := range before {
		was[s.Name] = &before[i]
	}
	var out []Statement
	for i, s := range after {
		is[s.Name] = &after[i]
		if o := was[s.Name]; o == nil || o.Value != s.Value {
			out = append(out, Statement{Old: o, New: &after[i]})
		}
	}
	for i, s := range before {
		if is[s.Name] == nil {
			out = append(out, Statement{Old: &before[i]})
		}
	}
	return out
}

// Count is a count that changed.
type Count struct {
	Name     string // "columns", as reports name it
	Old, New int
}

// Counts lists the counts that changed.
func Counts(old, new *rack.Rack) []Count {
	a, b := old.Counts, new.Counts
	var out []Count
	for _, c := range []Count{
		{"columns", a.Columns, b.Columns}, {"rows", a.Rows, b.Rows}, {"bottles", a.Bottles, b.Bottles}, {"ladders", a.Ladders, b.Ladders},
		{"legs", a.Legs, b.Legs}, {"slats", a.Slats, b.Slats}, {"aprons", a.Aprons, b.Aprons},
	} {
		if c.Old != c.New {
			out = append(out, c)
		}
	}
	return out
}

// Length is a solved length that changed. Old is nil where only the new rack
// has it, New where only the old one has.
type Length struct {
	Name     string
	Old, New *rack.Solved
}

// Lengths lists the solved lengths that changed: in the order of the new rack,
// then those that only the old one has.
func Lengths(old, new *rack.Rack) []Length {
	var out []Length
	for i, l := range new.Lengths {
		o, ok := old.Find(l.Name)
		switch {
		case !ok:
			out = append(out, Length{Name: l.Name, New: &new.Lengths[i]})
		case o.Value != l.Value:
			out = append(out, Length{Name: l.Name, Old: &o, New: &new.Lengths[i]})
		}
	}
	for i, l := range old.Lengths {
		if !new.Has(l.Name) {
			out = append(out, Length{Name: l.Name, Old: &old.Lengths[i]})
		}
	}
	return out
}

// Check is a check whose outcome changed at one place. Old is nil where it was
// not judged before, New where it no longer is.
type Check struct {
	Old, New *check.Finding
}

// Checks lists the outcomes that changed, in the order of the new findings and
// then of the old ones that have no peer. Findings are peers where they judge
// the same place; of those left, where they come in the same turn of their
// check, since "columns 1-4" may have become "columns 1-5". A finding without a
// peer is listed unless it is good.
func Checks(old, new []check.Finding) []Check {
	peer := peers(old, new)
	taken := make([]bool, len(old))
	var out []Check
	for i := range new {
		j := peer[i]
		switch {
		case j >= 0:
			taken[j] = true
			if old[j].Status != new[i].Status {
				out = append(out, Check{&old[j], &new[i]})
			}
		case new[i].Status != check.OK:
			out = append(out, Check{New: &new[i]})
		}
	}
	for j := range old {
		if !taken[j] && old[j].Status != check.OK {
			out = append(out, Check{Old: &old[j]})
		}
	}
	return out
}

// peers returns for each new finding the number of its old peer, -1 for none.
func peers(old, new []check.Finding) []int {
	peer, taken := make([]int, len(new)), make([]bool, len(old))
	for i := range peer {
		peer[i] = -1
	}
	for _, like := range []func(a, b check.Finding) bool{
		func(a, b check.Finding) bool { return a.Name == b.Name && a.Where == b.Where },
		func(a, b check.Finding) bool { return a.Name == b.Name && a.Name != "default.kept" }, // that one's place is a length
	} {
		for i := range new {
			for j := 0; j < len(old) && peer[i] < 0; j++ {
				if !taken[j] && like(old[j], new[i]) {
					peer[i], taken[j] = j, true
				}
			}
		}
	}
	return peer
}
