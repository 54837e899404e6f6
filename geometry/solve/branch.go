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

// branching is a depth-first branch and bound over the whole parameters and
// over the ranges of the side rules. It works on one tableau, whose limits it
// narrows on the way down and takes back on the way up.
type branching struct {
	*reduced
	obj    int  // variable of the tableau; -1: any solution will do
	allInt bool // the objective takes whole values only
	found  bool
	best   rat
	point  []rat // values of the parameters at the best
	near   bool  // a split goes to the nearer whole number first
	nodes  int
	limit  int  // of nodes
	out    bool // the limit was reached: nothing is proven
}

// minimise finds the least value of a sum over parameters among the exact
// solutions, and the unknowns there. ok is false when there is no solution.
// It uses up the tableau: reduce again before asking again.
func (r *reduced) minimise(sum lin, limit int) (least rat, values []rat, ok bool) {
	s := branching{reduced: r, obj: -1, point: make([]rat, len(r.whole))}
	scale := whole(1)
	if len(sum.terms) > 0 {
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
	return s.best.mul(scale).add(sum.k), values, true
}

// firstNodes is how many nodes the first pass may take.
const firstNodes = 64

// search goes over the tree in passes, each with four times the nodes of the
// one before last, until one of them sees it to the end. They take turns at
// which side of a split comes first: the farther one fails or proves good
// sooner where defaults have to bend, the nearer one soon comes upon a solution
// where much is open, and either can go astray for good where the other takes a
// few dozen nodes. What one pass finds cuts the next.
func (s *branching) search(limit int) {
	for size := firstNodes; ; size *= 4 {
		for _, s.near = range []bool{false, true} {
			s.nodes, s.limit, s.out = 0, min(size, limit), false
			s.visit()
			if !s.out || s.found && s.obj < 0 {
				return
			}
			if limit -= s.nodes; limit <= 0 {
				panic(ErrTooHard)
			}
		}
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
	}
	if s.beaten(val) {
		return
	}
	for p, whole := range s.whole {
		if x := t.vars[p].val; whole && !x.isWhole() {
			s.splitWhole(p, x)
			return
		}
	}
	for _, rule := range s.rules {
		x, ok := s.ons[rule.on].at.value(t).int()
		if !ok {
			panic("solve: the length of a side rule is off its grid")
		}
		if need := rule.at(x); need == nothing || rule.sum.value(t).less(whole(need)) {
			s.splitRule(rule, x, val)
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
	return s.found && (s.obj < 0 || !val.less(s.best))
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
