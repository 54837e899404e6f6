package rack

import (
	"fmt"
	"slices"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
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
func build(d *design.Design) (*Rack, error) {
	b, s, c, err := solveDesign(d)
	switch {
	case err != nil:
		return nil, err
	case c != nil:
		return nil, b.clash(c)
	}
	if faults := b.unlimited(s); len(faults) > 0 {
		return nil, faults
	}
	r := b.rack(s)
	r.place()
	r.Nexts, err = b.nexts(s)
	return r, err
}

// solveDesign states and solves a design. Where it has no answer and leaves
// cell.top_clearance unsaid, that default gives way by one grid step after the
// other: it stands in the rules' bounds, so the solver itself cannot bend it.
func solveDesign(d *design.Design) (*stater, *solve.Solution, *solve.Conflict, error) {
	const name = "cell.top_clearance"
	full := standing(d, name)
	b := state(d, full)
	s, c, err := b.m.Solve()
	if _, said := d.Length(name); said || c == nil || err != nil {
		return b, s, c, err
	}
	if tight := state(d, 0); !tight.holds() {
		return b, nil, c, nil
	}
	for clear := (full - 1).Down(d.Grid); clear >= 0; clear -= d.Grid {
		if b := state(d, clear); b.holds() {
			s, c, err := b.m.Solve()
			return b, s, c, err
		}
	}
	return b, nil, c, nil
}

// holds reports whether the design has an answer at all.
func (b *stater) holds() bool {
	all := make([]solve.StatementID, len(b.m.Statements))
	for i := range all {
		all[i] = solve.StatementID(i)
	}
	ok, err := b.m.Feasible(all)
	return err == nil && ok
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
		if _, aux := b.d.Length(l.Name); !aux && len(l.Name) > 6 && l.Name[:6] == "where." {
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

// proof tells where a solved length comes from.
func (b *stater) proof(s *solve.Solution, id solve.LengthID) Solved {
	why := s.Reasons[id]
	out := Solved{Name: b.m.Lengths[id].Name, Value: s.Length(id), From: Follows}
	for _, from := range why.From {
		out.Needs = append(out.Needs, b.m.Lengths[from].Name)
	}
	stated, said := b.d.Length(out.Name)
	switch why.Kind {
	case solve.Stated:
		b.cite(&out, why.Statement)
	case solve.Follows, solve.AtLimit:
		if owner, ok := b.stocks[why.Relation]; ok {
			b.cite(&out, owner)
			break
		}
		out.Because = b.m.Relations[why.Relation].Name
	case solve.ByRule:
		out.Because = b.m.Rules[why.Rule].Name
	case solve.Wished:
		b.proveWish(&out, b.m.Levels[why.Level], why)
	case solve.AtBound:
		b.proveSettled(&out, stated, said)
	default:
		out.Because = "the least that the rest allows"
	}
	b.proveDefault(&out)
	return out
}

// proveDefault names the default of a length that the file and the stock leave
// unsaid, also where a relation settled it: kept, or what it gave way to.
func (b *stater) proveDefault(out *Solved) {
	def, ok := table.FindDefault(out.Name)
	if !ok || out.From == Stated || b.said(out.Name) {
		return
	}
	want := def.Value(b.d.Units)
	because := "default " + b.d.Format().Text(want)
	switch {
	case out.Value == want:
		out.Needs = nil
	case out.From == Follows && len(out.Needs) > 0:
		because += ", gave way: " + out.Because
	default:
		because += ", as near as the rest allows"
	}
	out.From, out.Because = Default, because
}

// cite makes a statement the proof.
func (b *stater) cite(out *Solved, id solve.StatementID) {
	out.From, out.Line, out.Because, out.Needs = Stated, b.lines[id].place.Line, b.lines[id].text, nil
}

// proveWish tells which wish settled a length, and whether it was had in full.
func (b *stater) proveWish(out *Solved, l solve.Level, why solve.Reason) {
	short := ""
	if why.Wish < len(l.Wishes) && l.Wishes[why.Wish].Want != out.Value {
		short = ", as near as the rest allows"
	}
	switch l.Name {
	case levelStock, levelDefaults:
		out.From = Default // proveDefault says the rest
	case levelSought:
		stated, _ := b.d.Length(out.Name)
		out.From, out.Line, out.Because = Stated, stated.Place.Line, stated.Text+short
	case levelGap:
		out.Because = "nearest to 0.75 of the nominal bottle (" + unit.Format{System: b.d.Units}.Text(l.Wishes[why.Wish].Want) + ") on the grid"
	case levelRise:
		out.Because = "the least that lets the bottles lie above one another"
	default:
		out.Because = "the least that clears the aprons"
	}
}

// proveSettled tells about the lengths settled before solving.
func (b *stater) proveSettled(out *Solved, stated design.Length, said bool) {
	if said {
		out.From, out.Line, out.Because = Stated, stated.Place.Line, stated.Text
		return
	}
	out.Because = "the least that the rest allows"
}
