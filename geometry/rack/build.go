package rack

import (
	"fmt"
	"slices"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/table"
)

// Build solves a design and sets the rack in space. The error is a diag.List
// where the design asks for something without an answer, such as a count that
// nothing limits, and a *Clash where its lines contradict each other. A design
// with measured lengths is solved twice (measured.go).
func Build(d *design.Design) (*Rack, error) {
	if len(d.Measured) > 0 {
		return buildMeasured(d)
	}
	return build(d)
}

// build solves a design as it stands.
func build(d *design.Design) (*Rack, error) { return buildOn(d, nil) }

// buildOn is build for a design of which something may be measured already.
func buildOn(d *design.Design, on *bench) (*Rack, error) {
	a, err := solveDesign(d)
	a.bench = on
	switch {
	case err != nil:
		return nil, err
	case a.s == nil:
		return nil, a.clash()
	}
	if faults := a.b.unlimited(a.s); len(faults) > 0 {
		return nil, faults
	}
	r := a.b.rack(a.s)
	r.place()
	if r.Remedies, err = a.remedies(); err != nil {
		return nil, err
	}
	r.Nexts, err = a.nexts()
	return r, err
}

// unlimited tells which counts nothing limits.
func (b *stater) unlimited(s *solve.Solution) diag.List {
	var out diag.List
	for _, id := range s.AtGuard {
		ours := func(g group) bool { return g.extra == id } // not a count of the file's
		if !b.isOpen(id) || slices.ContainsFunc(b.groups, ours) {
			continue
		}
		name := b.m.Counts[id].Name
		at := diag.Place{Line: 1, Column: 1}
		if c, said := b.d.Count(b.countSource(id)); said {
			at = c.Place
		}
		size := "width"
		for _, g := range b.groups {
			if g.rows == id {
				size = "height"
			}
		}
		m := diag.Message{Place: at, Text: "nothing limits " + name, Hint: fmt.Sprintf("state the count, or a rack.%s or site.%s", size, size)}
		if at.End > at.Start {
			m = diag.At(b.d.Source, at, m.Text)
			m.Hint = fmt.Sprintf("state the count, or a rack.%s or site.%s", size, size)
		}
		out = append(out, m)
	}
	return out
}

// rack reads the solution back as lengths with their proofs and kinds of
// column.
func (b *stater) rack(s *solve.Solution) *Rack {
	r := &Rack{Design: b.d, Format: b.d.Format(), index: map[string]int{}}
	for i, l := range b.m.Lengths {
		if b.helpers[solve.LengthID(i)] {
			continue
		}
		r.index[l.Name] = len(r.Lengths)
		r.Lengths = append(r.Lengths, b.proof(s, solve.LengthID(i)))
	}
	for _, g := range b.groups {
		r.Kinds = append(r.Kinds, b.kind(r, s, g))
	}
	return r
}

// kind reads back one kind of column.
func (b *stater) kind(r *Rack, s *solve.Solution, g group) Kind {
	k := Kind{
		Count: s.Counts[g.count], Rows: s.Counts[g.rows],
		Gap: r.Len(g.name("gap")), Channel: r.Len(g.name("channel")), Pitch: r.Len(g.name("pitch")),
	}
	if g.number > 0 {
		k.Name = fmt.Sprintf("column %d", g.number)
	}
	under := r.Len("slat.first")
	for row := 1; row <= k.Rows; row++ {
		k.Under = append(k.Under, under)
		kinds := plainKinds(g.fits[min(row-1, g.own)])
		k.Fit = append(k.Fit, kinds)
		k.Shown = append(k.Shown, kinds[0])
		if row < k.Rows {
			rise := r.Len(b.riseAbove(g, row))
			k.Rises = append(k.Rises, rise)
			under += rise
		}
	}
	return k
}

func plainKinds(list []bottle) []table.Bottle {
	var out []table.Bottle
	for _, x := range list {
		out = append(out, x.kind)
	}
	return out
}
