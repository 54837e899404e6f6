package solve

import (
	"slices"

	"slatwright/specs/unit"
)

// Chain is the arithmetic that joins the statements of a problem: relations
// and rules none of which can be left out, and, where narrowing ranges is
// enough to show the contradiction, the steps that lead to it.
type Chain struct {
	Relations []int // into Model.Relations, ascending
	Rules     []int // into Model.Rules, ascending
	// Steps narrow one length or count after the other. If Joined, the last
	// one leaves it no value. Otherwise the contradiction needs several of the
	// relations at once, or several counts tried, and the steps say only what
	// they say.
	Steps  []Step
	Joined bool
}

// Step is what one relation or rule, or a range by itself, says about one
// length or count, given the steps before.
type Step struct {
	Relation int      // into Model.Relations; -1: none
	Rule     int      // into Model.Rules; -1: none
	Length   LengthID // None where it is about a count, or about neither
	Count    CountID
	Lo, Hi   unit.Length // the range it leaves; Hi < Lo: no value
	Short    unit.Length // about nothing: by how much the sum cannot be what it must, 0 where that is not known
	from     []int       // earlier steps it rests on
}

// chain tells how a question that has no solution contradicts itself.
func (e *engine) chain(q *ask) Chain {
	for i := range q.lengths {
		q.lengths[i] = q.lengths[i].round()
	}
	narrow := func(q *ask) bool { return q.propagate(&box{slices.Clone(q.lengths), slices.Clone(q.counts)}) }
	solve := func(q *ask) bool {
		_, f := q.clone().run()
		return f != nil
	}
	c := Chain{Joined: !narrow(q)}
	holds := solve
	if c.Joined {
		holds = narrow
	}
	q = q.leanest(holds)
	c.Relations, c.Rules = q.relations, q.rules
	c.Steps = q.trace()
	return c
}

// leanest drops rules and relations, the last first, as long as what is left
// does not hold.
func (q *ask) leanest(holds func(*ask) bool) *ask {
	for i := len(q.rules) - 1; i >= 0; i-- {
		less := q.clone()
		if less.rules = slices.Delete(slices.Clone(q.rules), i, i+1); !holds(less) {
			q = less
		}
	}
	for i := len(q.relations) - 1; i >= 0; i-- {
		less := q.clone()
		if less.relations = slices.Delete(slices.Clone(q.relations), i, i+1); !holds(less) {
			q = less
		}
	}
	return q
}

// tracer narrows a box and writes down each step.
type tracer struct {
	q          *ask
	b          *box
	steps      []Step
	ofL, ofC   []int // latest step about a length or count, -1 for none
	contradict bool
}

// trace narrows ranges relation by relation and keeps those steps that the
// last one rests on; all of them if there is no contradiction.
func (q *ask) trace() []Step {
	t := &tracer{q: q, b: &box{slices.Clone(q.lengths), slices.Clone(q.counts)}}
	t.ofL = slices.Repeat([]int{-1}, len(q.lengths))
	t.ofC = slices.Repeat([]int{-1}, len(q.counts))
	t.run()
	if !t.contradict {
		return t.steps
	}
	need := make([]bool, len(t.steps))
	need[len(need)-1] = true
	var out []Step
	for i := len(t.steps) - 1; i >= 0; i-- {
		if !need[i] {
			continue
		}
		for _, f := range t.steps[i].from {
			need[f] = true
		}
		out = append(out, t.steps[i])
	}
	slices.Reverse(out)
	return out
}

func (t *tracer) run() {
	for i, d := range t.b.lengths {
		if d.empty() {
			t.add(Step{Relation: -1, Rule: -1, Length: LengthID(i), Count: None, Lo: unit.Length(d.lo), Hi: unit.Length(d.hi)}, true)
			return
		}
	}
	for i, d := range t.b.counts {
		if d.empty() {
			t.add(Step{Relation: -1, Rule: -1, Length: None, Count: CountID(i), Lo: unit.Length(d.lo), Hi: unit.Length(d.hi)}, true)
			return
		}
	}
	for range maxRounds {
		before := len(t.steps)
		for _, i := range t.q.relations {
			r := &t.q.m.Relations[i]
			if !t.apply(i, -1, r.Terms, None, func(changed *bool) bool {
				return t.b.narrowBy(r.Terms, int64(r.Const), r.Op == Equal, changed)
			}) {
				return
			}
		}
		for _, i := range t.q.rules {
			r := &t.q.m.Rules[i]
			if !t.apply(-1, i, r.Terms, r.On, func(changed *bool) bool {
				return t.b.narrowByRule(r, t.q.tables[i], changed)
			}) {
				return
			}
		}
		if len(t.steps) == before {
			return
		}
	}
}

func (t *tracer) add(s Step, last bool) {
	t.steps = append(t.steps, s)
	t.contradict = last
}

// apply narrows by one relation or rule and writes down what changed. It
// returns false at a contradiction.
func (t *tracer) apply(relation, rule int, terms []Term, on LengthID, narrow func(*bool) bool) bool {
	var from []int
	rest := func(i int) {
		if i >= 0 && !slices.Contains(from, i) {
			from = append(from, i)
		}
	}
	names := append(slices.Clone(terms), Term{Length: on, Count: None})
	for _, n := range names {
		if n.Length != None {
			rest(t.ofL[n.Length])
		}
		if n.Count != None {
			rest(t.ofC[n.Count])
		}
	}
	was := t.b.clone()
	var changed bool
	ok := narrow(&changed)
	step := Step{Relation: relation, Rule: rule, Length: None, Count: None, Hi: -1, from: from}
	wrote := false
	write := func(now span, last *int) {
		step.Lo, step.Hi = unit.Length(now.lo), unit.Length(now.hi)
		*last = len(t.steps)
		t.add(step, now.empty())
		wrote = wrote || now.empty()
	}
	for _, n := range names {
		if wrote {
			break // the contradiction is the last step
		}
		if l := n.Length; l != None && was.lengths[l] != t.b.lengths[l] {
			was.lengths[l] = t.b.lengths[l]
			step.Length, step.Count = l, None
			write(t.b.lengths[l], &t.ofL[l])
		}
		if c := n.Count; c != None && was.counts[c] != t.b.counts[c] {
			was.counts[c] = t.b.counts[c]
			step.Length, step.Count = None, c
			write(t.b.counts[c], &t.ofC[c])
		}
	}
	if !ok && !wrote {
		step.Length, step.Count, step.Lo, step.Hi = None, None, 0, -1
		step.Short = t.short(was, relation, rule)
		t.add(step, true)
	}
	return ok
}

// short is by how much the sum of a relation or a rule fails at its best.
func (t *tracer) short(b *box, relation, rule int) unit.Length {
	if relation >= 0 {
		r := &t.q.m.Relations[relation]
		lo, hi, ok := b.sumRange(r.Terms, int64(r.Const))
		switch {
		case ok && hi < 0:
			return unit.Length(-hi)
		case ok && r.Op == Equal && lo > 0:
			return unit.Length(lo)
		}
		return 0
	}
	r, on := &t.q.m.Rules[rule], b.lengths[t.q.m.Rules[rule].On]
	least := t.q.tables[rule].easiest(on.lo, on.hi)
	_, hi, ok := b.sumRange(r.Terms, int64(r.Const))
	if !ok || least == nothing || hi >= least {
		return 0
	}
	return unit.Length(least - hi)
}
