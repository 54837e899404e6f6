package solve

// Determined reports, for each length, whether exact statements and equalities
// alone leave it one value, by LengthID. Grids, limits, rules and wishes take
// no part, and neither do equalities with a count that no exact statement
// gives, or that rest on statements which contradict others before them.
func (m *Model) Determined() ([]bool, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	r := &reduced{}
	for range m.Lengths {
		r.expr = append(r.expr, lin{terms: []term{{len(r.whole), whole(1)}}})
		r.whole = append(r.whole, false)
	}
	for i, l := range m.Lengths {
		if l.Lo == l.Hi {
			r.eliminate(r.substitute(lin{[]term{{i, whole(1)}}, whole(-int64(l.Lo))}))
		}
	}
	counts := make([]span, len(m.Counts))
	for i, c := range m.Counts {
		counts[i] = span{int64(c.Lo), int64(c.Hi), 1}
	}
	for _, s := range m.Statements {
		if !s.HasLo || !s.HasHi || s.Lo != s.Hi {
			continue
		}
		if s.Length != None {
			// A contradiction is not this question's to tell: eliminate then
			// changes nothing.
			r.eliminate(r.substitute(lin{[]term{{int(s.Length), whole(1)}}, whole(-int64(s.Lo))}))
		}
		if s.Count != None {
			counts[s.Count] = span{int64(s.Lo), int64(s.Lo), 1}
		}
	}
	b := box{counts: counts}
	for _, rel := range m.Relations {
		if rel.Op == Equal && !b.open(rel.Terms) {
			r.eliminate(r.substitute(b.put(rel)))
		}
	}
	out := make([]bool, len(m.Lengths))
	for i, e := range r.expr {
		out[i] = len(e.terms) == 0
	}
	return out, nil
}

// put puts settled counts into a relation; the unknowns are its lengths.
func (b *box) put(r Relation) lin {
	var terms []term
	k := whole(int64(r.Const))
	for _, t := range r.Terms {
		n := whole(t.Coef)
		if t.Count != None {
			n = n.mul(whole(b.counts[t.Count].lo + t.Plus))
		}
		if t.Length == None {
			k = k.add(n)
		} else {
			terms = append(terms, term{int(t.Length), n})
		}
	}
	return sorted(terms, k)
}
