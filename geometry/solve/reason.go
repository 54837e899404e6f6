package solve

import "slices"

// ReasonKind tells what settled a length.
type ReasonKind uint8

// The kinds of reason, in the order in which they are looked for.
const (
	Stated   ReasonKind = iota // an exact statement, or a limit it lies at
	Follows                    // an equality in which all else is known
	Wished                     // a wish, kept or as nearly as the rest allows
	AtLimit                    // an inequality that leaves no less (or more)
	ByRule                     // a side rule that leaves no less (or more)
	AtBound                    // the end of its range in the model
	Smallest                   // the least that the rest allows, for want of any wish
)

// Reason says where a length has its value from. Read in Rank order the
// reasons form a proof: each rests only on lengths of lower rank.
type Reason struct {
	Kind      ReasonKind
	Rank      int
	Statement StatementID // Stated
	Relation  int         // Follows, AtLimit: into Model.Relations
	Rule      int         // ByRule: into Model.Rules
	Level     int         // Wished: the level and the number of the wish in it
	Wish      int
	From      []LengthID // the other lengths in the relation or rule
}

// teller works out the reasons of a solution.
type teller struct {
	m      *Model
	s      *Solution
	tables []*ruleTable
	known  []bool
	out    []Reason
	rank   int
}

func (e *engine) reasons(s *Solution) []Reason {
	t := &teller{m: e.m, s: s, tables: e.tables, known: make([]bool, len(e.m.Lengths)), out: make([]Reason, len(e.m.Lengths))}
	for i, st := range t.m.Statements {
		if st.Length != None && st.HasLo && st.HasHi && st.Lo == st.Hi {
			t.tell(st.Length, Reason{Kind: Stated, Statement: StatementID(i)})
		}
	}
	for i, l := range t.m.Lengths {
		if l.Lo == l.Hi {
			t.tell(LengthID(i), Reason{Kind: AtBound})
		}
	}
	for t.follow() || t.wished(true) || t.atLimit() || t.statedLimit() || t.wished(false) || t.rest() {
	}
	return t.out
}

// tell settles a length unless it is settled already.
func (t *teller) tell(l LengthID, r Reason) bool {
	if t.known[l] {
		return false
	}
	t.known[l] = true
	r.Rank = t.rank
	t.rank++
	t.out[l] = r
	return true
}

// unknown returns the one length of the terms that is not known and takes part
// with a coefficient other than nought, and the others; ok is false if there
// are none or several.
func (t *teller) unknown(terms []Term, on LengthID) (one LengthID, others []LengthID, ok bool) {
	one = None
	all := slices.Clone(terms)
	if on != None {
		all = append(all, Term{Coef: 1, Count: None, Length: on})
	}
	for _, x := range all {
		switch {
		case x.Length == None || t.factor(x) == 0 || x.Length == one:
		case t.known[x.Length]:
			if !slices.Contains(others, x.Length) {
				others = append(others, x.Length)
			}
		case one != None:
			return None, nil, false
		default:
			one = x.Length
		}
	}
	return one, others, one != None
}

func (t *teller) factor(x Term) int64 {
	if x.Count == None {
		return x.Coef
	}
	return x.Coef * (int64(t.s.Counts[x.Count]) + x.Plus)
}

// sum is the value of the terms of a relation or rule.
func (t *teller) sum(terms []Term, k int64) rat {
	v := whole(k)
	for _, x := range terms {
		c := whole(t.factor(x))
		if x.Length != None {
			c = c.mul(t.s.values[x.Length])
		}
		v = v.add(c)
	}
	return v
}

func (t *teller) follow() bool {
	for i, r := range t.m.Relations {
		if r.Op != Equal {
			continue
		}
		if l, from, ok := t.unknown(r.Terms, None); ok {
			return t.tell(l, Reason{Kind: Follows, Relation: i, From: from})
		}
	}
	return false
}

// wished looks for the first wish for an unknown length: one that came true,
// or any.
func (t *teller) wished(kept bool) bool {
	for i, level := range t.m.Levels {
		for j, w := range level.Wishes {
			if kept && !t.s.values[w.Length].eq(whole(int64(w.Want))) {
				continue
			}
			if t.tell(w.Length, Reason{Kind: Wished, Level: i, Wish: j}) {
				return true
			}
		}
	}
	return false
}

// atLimit looks for an inequality or rule that leaves one unknown length no
// room to spare.
func (t *teller) atLimit() bool {
	for i, r := range t.m.Relations {
		if r.Op != AtLeast {
			continue
		}
		if l, from, ok := t.unknown(r.Terms, None); ok && t.tight(t.sum(r.Terms, int64(r.Const)), r.Terms, l) {
			return t.tell(l, Reason{Kind: AtLimit, Relation: i, From: from})
		}
	}
	for i, r := range t.m.Rules {
		l, from, ok := t.unknown(r.Terms, r.On)
		if !ok {
			continue
		}
		on, _ := t.s.values[r.On].int() // has a grid, so is whole
		spare := t.sum(r.Terms, int64(r.Const)).sub(whole(t.tables[i].at(on)))
		if t.tight(spare, r.Terms, l) {
			return t.tell(l, Reason{Kind: ByRule, Rule: i, From: from})
		}
	}
	return false
}

// tight reports whether one step of its grid would take a length past what is
// to spare. A length without a grid must leave nothing.
func (t *teller) tight(spare rat, terms []Term, l LengthID) bool {
	c := rat{}
	for _, x := range terms {
		if x.Length == l {
			c = c.add(whole(t.factor(x)))
		}
	}
	return spare.isZero() || spare.less(whole(int64(t.m.Lengths[l].Step)).mul(c.abs()))
}

// statedLimit looks for a statement whose limit an unknown length lies at.
func (t *teller) statedLimit() bool {
	for i, s := range t.m.Statements {
		if s.Length == None || t.known[s.Length] {
			continue
		}
		v := t.s.values[s.Length]
		if s.HasLo && v.eq(whole(int64(s.Lo))) || s.HasHi && v.eq(whole(int64(s.Hi))) {
			return t.tell(s.Length, Reason{Kind: Stated, Statement: StatementID(i)})
		}
	}
	return false
}

// rest settles the first length that is still unknown.
func (t *teller) rest() bool {
	for i, l := range t.m.Lengths {
		kind := Smallest
		if v := t.s.values[i]; v.eq(whole(int64(l.Lo))) || v.eq(whole(int64(l.Hi))) {
			kind = AtBound
		}
		if t.tell(LengthID(i), Reason{Kind: kind}) {
			return true
		}
	}
	return false
}
