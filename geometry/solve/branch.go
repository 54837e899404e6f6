package solve

import "errors"

// ErrTooHard is returned when the search has looked at so many cases that
// something must be wrong with the model. It is a count of steps, not of
// seconds, so the same model always meets it or never does.
var ErrTooHard = errors.New("the design leaves too many cases to search")

// maxNodes bounds one leaf's branch and bound. Rack models need 1 to 50.
const maxNodes = 200_000

// nodeLimit is how many nodes one branch and bound of the question may take.
func (q *ask) nodeLimit() int {
	if q.nodes > 0 {
		return q.nodes
	}
	return maxNodes
}

// branching is a depth-first branch and bound over the whole parameters,
// over sums of them and over the ranges of the side rules. It works on one tableau, whose limits it
// narrows on the way down and takes back on the way up.
type branching struct {
	*reduced
	obj    int  // variable of the tableau; -1: none
	any    bool // any solution will do
	allInt bool // the objective takes whole values only
	found  bool
	best   rat
	point  []rat // values of the parameters at the best

	sums []int // see wholeSums

	// of the present pass
	near   bool  // a split goes to the nearer whole number first
	reach  *rat  // how far the objective may be above the relaxation; nil: as far as it likes
	root   rat   // the relaxation: the objective without any split
	splits []int // sums that are split before the parameters
	nodes  int
	limit  int  // of nodes
	out    bool // the limit was reached: nothing is proven
	cut    bool // a node beyond reach was left out
}

// minimise finds the least value of a sum over parameters among the exact
// solutions, and the unknowns there. ok is false when there is no solution.
// It uses up the tableau: reduce again before asking again.
func (r *reduced) minimise(sum lin, limit int) (least rat, values []rat, ok bool) {
	s := branching{reduced: r, obj: -1, any: len(sum.terms) == 0, point: make([]rat, len(r.whole))}
	scale := whole(1)
	if !s.any {
		s.allInt = r.allWhole(sum)
		unit := sum
		if s.allInt {
			if unit = coprime(sum); unit.terms[0].c.sign() != sum.terms[0].c.sign() {
				unit = unit.times(whole(-1))
			}
			scale = sum.terms[0].c.quo(unit.terms[0].c)
		}
		s.obj = r.tab.addRow(unit.terms)
	}
	s.search(limit)
	if !s.found {
		return rat{}, nil, false
	}
	for _, e := range r.expr {
		x := e.k
		for _, t := range e.terms {
			x = x.add(t.c.mul(s.point[t.v]))
		}
		values = append(values, x)
	}
	if s.any {
		return sum.k, values, true // a search for any solution may have brought in a sum of its own
	}
	return s.best.mul(scale).add(sum.k), values, true
}

// firstNodes is how many nodes the first passes may take.
const firstNodes = 64

// search goes over the tree in passes until one of them sees it to the end.
// They take turns at which side of a split comes first: the farther one fails
// or proves good sooner where defaults have to bend, the nearer one soon comes
// upon a solution where much is open. Either can follow an unknown without
// limits for ever, so that every other pair of passes lets the objective be no
// more than so far above the relaxation, and farther only when nothing was
// found there. Every other four split sums before rules and single parameters,
// which ends circles and makes detours elsewhere. What one pass finds cuts the next.
func (s *branching) search(limit int) {
	size, reach := firstNodes, rat{}
	for pass := 0; ; pass++ {
		s.near, s.reach = pass%2 == 1, nil
		if s.splits = nil; pass%8 >= 4 {
			s.splits = s.wholeSums()
		}
		if pass%4 >= 2 {
			s.seekSmall()
			s.reach = &reach
		}
		s.nodes, s.limit, s.out, s.cut = 0, min(size, limit), false, false
		s.visit()
		switch limit -= s.nodes; {
		case s.found && s.any, !s.out && !s.cut, !s.out && s.found && !s.root.add(reach).less(s.best):
			return // in the last case what is beyond reach is no better than the best
		case limit <= 0:
			panic(ErrTooHard)
		case !s.out:
			reach = s.farther(reach)
		}
		if pass%8 == 7 {
			size *= 4
		}
	}
}

// farther is the next reach after one in which nothing was found: at first some
// hundredth of the relaxation.
func (s *branching) farther(reach rat) rat {
	if reach.isZero() {
		return s.root.abs().mul(ratio(1, 128)).ceil().add(whole(1))
	}
	return reach.mul(whole(4))
}

// seekSmall gives a search for any solution an objective to be reined in by:
// the sum of the parameters' distances from their nearer limits.
func (s *branching) seekSmall() {
	if s.obj >= 0 {
		return
	}
	var sum []term
	for p, whole := range s.whole {
		if c := s.tab.vars[p]; whole && c.lo.set {
			sum = append(sum, term{p, ratio(1, 1)})
		} else if whole && c.hi.set {
			sum = append(sum, term{p, ratio(-1, 1)})
		}
	}
	if len(sum) > 0 {
		s.obj = s.tab.addRow(sum)
		s.allInt = true
	}
}

func (s *branching) visit() {
	if s.nodes++; s.nodes > s.limit {
		s.out = true
		return
	}
	t := s.tab
	if !t.check() {
		return
	}
	var val rat
	if s.obj >= 0 {
		if !t.minimise(s.obj) {
			panic("solve: an unknown without limits")
		}
		if val = t.vars[s.obj].val; s.allInt {
			val = val.ceil()
		}
		if s.nodes == 1 {
			s.root = val
		}
	}
	if s.beaten(val) {
		return
	}
	if s.reach != nil && s.root.add(*s.reach).less(val) {
		s.cut = true
		return
	}
	for _, v := range s.splits {
		if x := t.vars[v].val; !x.isWhole() {
			s.splitWhole(v, x)
			return
		}
	}
	for _, rule := range s.rules {
		if x, ok := s.broken(rule); ok {
			s.splitRule(rule, x, val)
			return
		}
	}
	for p, whole := range s.whole {
		if x := t.vars[p].val; whole && !x.isWhole() {
			s.splitWhole(p, x)
			return
		}
	}
	s.found, s.best = true, val
	for p := range s.point {
		s.point[p] = t.vars[p].val
	}
}

// beaten reports whether a node that can reach val at best is of no use.
func (s *branching) beaten(val rat) bool {
	return s.found && (s.any || !val.less(s.best))
}

// broken reports whether a rule is broken where the relaxation lies, and the
// value of its length on which that rests. A length between two grid lines is
// judged by the one that asks for less: where even that is too much, it is the
// rule that has to be settled, and whole numbers after it, since a narrower
// range of that length makes all the bounds on it tighter.
func (s *branching) broken(rule ruleRow) (int64, bool) {
	o := s.ons[rule.on]
	at := o.at.value(s.tab)
	steps := at.sub(whole(o.lo)).quo(whole(o.step))
	if rule.falling {
		steps = steps.ceil()
	} else {
		steps = steps.floor()
	}
	n, ok := steps.int()
	if !ok {
		panic("solve: the length of a side rule is out of its range")
	}
	x := o.lo + n*o.step
	need := rule.at(x)
	return x, need == nothing || rule.sum.value(s.tab).less(whole(need))
}

// splitWhole cuts off what lies between two whole numbers.
func (s *branching) splitWhole(p int, x rat) {
	mark := s.tab.mark()
	up := x.sub(x.floor()).less(ratio(1, 2)) != s.near
	for range 2 {
		if up && s.tab.atLeast(p, x.ceil()) || !up && s.tab.atMost(p, x.floor()) {
			s.visit()
		}
		s.tab.undo(mark)
		if s.out {
			return
		}
		up = !up
	}
}

// splitRule halves the range between the end whose bound is in force and the
// value that breaks the true bound. The half with that value comes first: the
// objective wants it.
func (s *branching) splitRule(rule ruleRow, x int64, val rat) {
	o := s.ons[rule.on]
	near, far := o, o
	if rule.falling {
		near.hi = x + (o.hi-x)/o.step/2*o.step
		far.lo = near.hi + o.step
	} else {
		far.hi = o.lo + (x-o.lo-1)/o.step/2*o.step
		near.lo = far.hi + o.step
	}
	for _, half := range []onRange{near, far} {
		if !s.out && !s.beaten(val) {
			s.visitRange(rule.on, half)
		}
	}
}

// visitRange visits the part of a node where the length of a rule lies in a
// narrower range, with the bounds of the rules that follow from that.
func (s *branching) visitRange(on int, narrow onRange) {
	was, mark := s.ons[on], s.tab.mark()
	s.ons[on] = narrow
	if s.bind(on) {
		s.visit()
	}
	s.ons[on] = was
	s.tab.undo(mark)
}

// bind puts the range of a rule's length, and what follows, into the tableau.
func (s *branching) bind(on int) bool {
	o := s.ons[on]
	if !o.at.atLeast(s.tab, whole(o.lo)) || !o.at.atMost(s.tab, whole(o.hi)) {
		return false
	}
	for _, rule := range s.rules {
		if rule.on != on {
			continue
		}
		least := rule.easiest(o.lo, o.hi)
		if least == nothing || !rule.sum.atLeast(s.tab, whole(least)) {
			return false
		}
	}
	return true
}
