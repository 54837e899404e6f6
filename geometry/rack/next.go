package rack

import (
	"errors"
	"math/big"
	"slices"
	"strings"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// nexts tells, for each count that the file leaves open, what stops one more.
func (a attempt) nexts() ([]Next, error) {
	b := a.b
	var ids []solve.CountID
	columns, said := b.d.Count("rack.columns")
	given := said && columns.Kind == design.Exact && len(b.d.Columns) > 0 // then no column may be one more
	for _, g := range b.groups {
		for _, id := range []solve.CountID{g.count, g.rows} {
			if b.isOpen(id) && !slices.Contains(ids, id) && !(given && id == g.count) {
				ids = append(ids, id)
			}
		}
	}
	var out []Next
	for _, id := range ids {
		n, err := a.next(id)
		switch {
		case errors.Is(err, solve.ErrTooHard):
			// The rack itself is proven; only this piece of advice is not found.
			n = Next{StoppedBy: []Stop{{Text: "the design", Needs: "what stops it was not worked out"}}}
		case err != nil:
			return nil, err
		}
		n.Count, n.Value = b.m.Counts[id].Name, a.s.Counts[id]+1
		out = append(out, n)
	}
	return out, nil
}

// next asks for one more of a count: with the least clearance that the file
// allows, and as drawn.
func (a attempt) next(id solve.CountID) (Next, error) {
	free := a.loosest()
	n, err := free.m.OneMore(id, a.s)
	if err != nil {
		return Next{}, err
	}
	least := slices.Clone(a.s.Counts)
	least[id]++
	v := &adviser{free: free, drawn: a.b, least: least, kept: a.s, bench: a.bench}
	if n.SoftOnly && free != a.b {
		// What stops it as drawn is to be told of the rack as drawn.
		drawn, err := a.b.m.OneMore(id, a.s)
		if err != nil {
			return Next{}, err
		}
		v.free = a.b
		if !drawn.SoftOnly {
			return Next{StoppedBy: append(v.stops(drawn.Problems, true), a.clearanceStop(least)...)}, nil
		}
		n = drawn
	}
	out := Next{StoppedBy: v.stops(n.Problems, n.SoftOnly)}
	if n.BentUnknown {
		out.StoppedBy = append(out.StoppedBy, Stop{Text: "defaults and preferences", Needs: "which of them would have to give way was not worked out"})
	}
	f := a.b.d.Format()
	for _, bent := range n.Bent {
		if a.b.helpers[bent.Length] {
			continue // how far off a "~" relation is; the file's line is named above
		}
		out.StoppedBy = append(out.StoppedBy, Stop{
			Text:  a.b.m.Lengths[bent.Length].Name + " kept at " + f.Text(nearestWhole(bent.From)),
			Needs: "would become " + f.Text(nearestWhole(bent.To)),
		})
	}
	return out, nil
}

// clearanceStop names the default clearance that stands in the way of one more.
func (a attempt) clearanceStop(least []int) []Stop {
	f, was := a.b.d.Format(), a.b.settled
	for _, v := range choiceOf(a.b.d, topClearance).values() {
		b := state(a.b.d, settings{v, was.eased})
		ok, err := b.m.Feasible(solve.Question{Statements: b.all(), Least: least})
		if err == nil && ok {
			return []Stop{{Text: topClearance + " kept at " + f.Text(was.topClear), Needs: "would become " + f.Text(v)}}
		}
	}
	return nil
}

// nearestWhole rounds to a whole base unit.
func nearestWhole(x *big.Rat) unit.Length {
	n := new(big.Int).Mul(x.Num(), big.NewInt(2))
	n.Add(n, x.Denom())
	return unit.Length(n.Div(n, new(big.Int).Lsh(x.Denom(), 1)).Int64())
}

// stops says of each line that stops one more what it would have to give.
func (a *adviser) stops(problems []solve.Problem, softOnly bool) (out []Stop) {
	var named []solve.StatementID
	for _, p := range problems {
		named = append(named, p.Statements...)
	}
	rest := slices.DeleteFunc(a.free.all(), func(s solve.StatementID) bool { return slices.Contains(named, s) })
	for _, p := range problems {
		on := append(slices.Clone(p.Statements), rest...)
		for _, c := range p.Changes {
			l := a.free.lines[c.Statement]
			out = append(out, Stop{Line: l.place.Line, Text: l.text, Needs: a.needs(c, on, softOnly)})
		}
	}
	return out
}

// needs says how much a line would have to give, twice: with everything soft
// let go, and with every soft value kept.
func (a *adviser) needs(c solve.Change, on []solve.StatementID, softOnly bool) string {
	free, kept, id := "", "", c.Statement
	a.unsure = false
	if a.free.isNamed(id) {
		var frees, kepts []string
		for _, m := range a.namedMends(id, on) {
			frees = append(frees, m.free)
			if m.kept != "" {
				kepts = append(kepts, m.kept)
			}
		}
		free, kept = strings.Join(frees, ", or "), strings.Join(kepts, ", or ")
	} else {
		free, kept = a.free.give(id, c.Free), a.free.give(id, a.keptOf(c, on))
	}
	switch {
	case softOnly && kept == "" && a.unsure:
		return notWorkedOut
	case softOnly && kept == "":
		return "no change of this line alone is enough while defaults and preferences are kept"
	case softOnly:
		return kept + " as drawn; nothing if defaults and preferences give way"
	case free == "":
		return a.none()
	case kept == "" || kept == free:
		return free
	}
	return free + "; " + kept + " as drawn"
}

// give returns the lesser of the ways to move a line, "" where there is none.
func (b *stater) give(id solve.StatementID, n solve.Nearest) string {
	st := b.m.Statements[id]
	figure := func(v unit.Length) string { return strings.TrimSuffix(b.figure(id, v), " "+b.lines[id].unit.String()) }
	switch {
	case n.HasAbove && (!n.HasBelow || n.Above-st.Hi <= st.Lo-n.Below):
		return figure(n.Above-st.Hi) + " more"
	case n.HasBelow:
		return figure(st.Lo-n.Below) + " less"
	}
	return ""
}
