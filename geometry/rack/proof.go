package rack

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// proof tells where a solved length comes from.
func (b *stater) proof(s *solve.Solution, id solve.LengthID) Solved {
	why := s.Reasons[id]
	out := Solved{Name: b.m.Lengths[id].Name, Value: s.Length(id), From: Follows}
	for _, from := range why.From {
		if b.helpers[from] {
			continue
		}
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
		r := b.m.Relations[why.Relation]
		out.Because = r.Name
		if why.Kind == solve.AtLimit {
			out.Sum = b.limitSum(s, r)
		}
	case solve.ByRule:
		r := b.m.Rules[why.Rule]
		out.Because, out.Sum = r.Name, b.ruleSum(s, r, b.formulas[why.Rule])
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

// limitSum puts figures to an inequality that leaves a length no less: what
// stands on its greater side, and what that must come to.
func (b *stater) limitSum(s *solve.Solution, r solve.Relation) string {
	var scale int64
	for _, t := range r.Terms {
		scale = gcd(scale, t.Coef)
	}
	var more, less []solve.Term
	for _, t := range r.Terms {
		t.Coef /= scale
		if t.Coef > 0 {
			more = append(more, t)
		} else {
			t.Coef = -t.Coef
			less = append(less, t)
		}
	}
	k := r.Const / unit.Length(scale)
	f := b.d.Format()
	switch {
	case len(more) == 0:
		return fmt.Sprintf("%s = %s, at most %s", b.worded(s, less), f.Unit(b.sum(s, less)), f.Unit(k))
	case len(less) == 0:
		return fmt.Sprintf("%s = %s, at least %s", b.worded(s, more), f.Unit(b.sum(s, more)), f.Unit(-k))
	case k == 0:
		return fmt.Sprintf("%s = %s, at least %s = %s", b.worded(s, more), f.Unit(b.sum(s, more)), b.worded(s, less), f.Unit(b.sum(s, less)))
	}
	return fmt.Sprintf("%s = %s, at least %s + %s = %s", b.worded(s, more), f.Unit(b.sum(s, more)),
		b.worded(s, less), f.Text(-k), f.Unit(b.sum(s, less)-k))
}

// ruleSum puts figures to a rule: what its sum comes to, what it takes at the
// present gap, and by which formula.
func (b *stater) ruleSum(s *solve.Solution, r solve.Rule, formula string) string {
	f := b.d.Format()
	at := s.Length(r.On)
	return fmt.Sprintf("%s = %s; with %s = %s it takes %s (%s)", b.worded(s, r.Terms), f.Unit(b.sum(s, r.Terms)+r.Const),
		b.m.Lengths[r.On].Name, f.Unit(at), f.Unit(r.Bound(at)), formula)
}

// worded writes a sum of lengths in words, counts as figures; what is added
// comes first.
func (b *stater) worded(s *solve.Solution, terms []solve.Term) string {
	var out strings.Builder
	terms = slices.Clone(terms)
	slices.SortStableFunc(terms, func(x, y solve.Term) int { return cmp.Compare(multiple(s, y), 0) - cmp.Compare(multiple(s, x), 0) })
	for _, t := range terms {
		n := multiple(s, t)
		if t.Length == solve.None || n == 0 {
			continue
		}
		switch {
		case out.Len() == 0 && n < 0:
			out.WriteString("-")
		case n < 0:
			out.WriteString(" - ")
		case out.Len() > 0:
			out.WriteString(" + ")
		}
		if n > 1 || n < -1 {
			fmt.Fprintf(&out, "%d ", max(n, -n))
		}
		out.WriteString(b.m.Lengths[t.Length].Name)
	}
	return out.String()
}

// sum is what lengths come to in a solution.
func (b *stater) sum(s *solve.Solution, terms []solve.Term) (out unit.Length) {
	for _, t := range terms {
		if t.Length != solve.None {
			out += unit.Length(multiple(s, t)) * s.Length(t.Length)
		}
	}
	return out
}

// multiple is how many times a term takes its length.
func multiple(s *solve.Solution, t solve.Term) int64 {
	if t.Count == solve.None {
		return t.Coef
	}
	return t.Coef * (int64(s.Counts[t.Count]) + t.Plus)
}
