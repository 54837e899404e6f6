package rack

import (
	"slices"

	"slatwright/geometry/solve"
	"slatwright/specs/unit"
)

// Remedy is what would put right a check that the maker's own figures fail:
// for each line that could be changed alone, what it would have to say. None:
// more than one line has to change.
type Remedy struct {
	Check   string // "fit.side"
	Kind    int    // into Kinds
	Changes []LineText
}

// demanded is what one check asks of one kind of column, demanded although the
// maker's own figures decide it.
type demanded struct {
	check string
	group int  // into groups
	rest  bool // and that bottles rest, for a line that names other bottles
}

// insists reports whether a requirement is demanded although the maker's own
// figures decide it.
func (b *stater) insists(c choiceMade) bool {
	d := b.forced
	return d != nil && d.group == c.group && (d.check == c.code() || d.rest && c.code() == "fit.rest")
}

// remedies looks for what would put right the requirements that the maker's
// own figures do not meet.
func (a attempt) remedies() ([]Remedy, error) {
	var out []Remedy
	for _, c := range a.b.own {
		if a.meets(c.requirement) || seen(out, c) || c.gap != "" && a.falls(c.group) {
			continue
		}
		r := Remedy{Check: c.code(), Kind: c.group}
		forced := stateForced(a.b.d, a.b.settled, &demanded{check: c.code(), group: c.group})
		conflict, err := forced.m.Explain()
		if err != nil {
			return nil, err
		}
		v := &adviser{free: forced, drawn: forced, bench: a.bench}
		r.Changes = v.clash(conflict).Changes
		out = append(out, r)
	}
	return out, nil
}

func seen(list []Remedy, c choiceMade) bool {
	for _, r := range list {
		if r.Check == c.code() && r.Kind == c.group {
			return true
		}
	}
	return false
}

// falls reports whether a bottle of a kind of column falls through its gap. Then
// the gap is to be put right first: nothing else that hangs on it can be.
func (a attempt) falls(group int) bool {
	g := a.b.groups[group]
	gap := a.s.Length(a.b.length[g.name("gap")])
	return slices.ContainsFunc(a.b.kinds(g), func(x bottle) bool {
		return root(x.kind.Diameter.Min, gap, a.b.settled.eased).Sign() < 0
	})
}

// meets reports whether a solution meets a requirement.
func (a attempt) meets(r requirement) bool {
	have := a.b.sum(a.s, r.terms) + r.add
	for _, t := range r.terms {
		if t.Length == solve.None {
			have += unit.Length(multiple(a.s, t))
		}
	}
	if r.gap == "" {
		return have >= 0
	}
	return have >= r.bound(a.s.Length(a.b.length[r.gap]))
}
