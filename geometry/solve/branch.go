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
	sum    lin  // what is sought least, over the unknowns
	obj    int  // variable of the tableau; -1: none
	any    bool // any solution will do
	allInt bool // the objective takes whole values only
	found  bool
	best   rat   // of the objective
	scale  rat   // the sum is scale × objective + k, scale above nought
	k      rat   //
	values []rat // of the unknowns at the best

	sums  []int   // see wholeSums
	apart rat     // how far reined passes let the objective go
	next  stretch // see closeIn
	left  int     // nodes that may still be visited

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

// minimise finds the least value of a sum over unknowns among the exact
// solutions, and the unknowns there. ok is false when there is no solution.
// It uses up the tableau: reduce again before asking again.
func (r *reduced) minimise(sum lin, limit int) (least rat, values []rat, ok bool) {
	s := r.branch(sum)
	s.left = limit
	s.search()
	return s.least(), s.values, s.found
}

// branch prepares a search for the least value of a sum over unknowns.
func (r *reduced) branch(sum lin) *branching {
	e := r.substitute(sum)
	s := &branching{reduced: r, sum: sum, obj: -1, any: len(e.terms) == 0, scale: whole(1), k: e.k}
	if s.any {
		return s
	}
	unit := e
	if s.allInt = r.allWhole(e); s.allInt {
		if unit = coprime(e); unit.terms[0].c.sign() != e.terms[0].c.sign() {
			unit = unit.times(whole(-1))
		}
		s.scale = e.terms[0].c.quo(unit.terms[0].c)
	}
	s.obj = r.tab.addRow(unit.terms)
	return s
}

// least is the sum at the best found. A search for any solution may have
// brought in an objective of its own, which says nothing of the sum.
func (s *branching) least() rat {
	if s.any {
		return s.k
	}
	return s.best.mul(s.scale).add(s.k)
}

// firstNodes is how many nodes the first passes may take.
const firstNodes = 64

// search goes over the tree until it has seen it to the end: by passes, which
// mostly do, and where they do not by closing in on the best value, which costs
// more to begin with. Each may take more nodes every time.
func (s *branching) search() {
	for size := firstNodes; !s.passes(size) && !s.closeIn(size); size *= 4 {
	}
}

// spend counts nodes against the limit of all.
func (s *branching) spend(nodes int) {
	if s.left -= nodes; s.left <= 0 {
		panic(ErrTooHard)
	}
}

// passes goes over the tree several times, and reports whether one of them has seen it to the end.
// They take turns at which side of a split comes first: the farther one fails
// or proves good sooner where defaults have to bend, the nearer one soon comes
// upon a solution where much is open. Either can follow an unknown without
// limits for ever, so that every other pair of passes lets the objective be no
// more than so far above the relaxation, and farther only when nothing was
// found there. Four of them split sums before rules and single parameters,
// which ends circles and makes detours elsewhere. What one pass finds cuts the next.
func (s *branching) passes(size int) bool {
	for pass := range 8 {
		s.near, s.reach = pass%2 == 1, nil
		if s.splits = nil; pass >= 4 {
			s.splits = s.wholeSums()
		}
		if pass%4 >= 2 {
			s.seekSmall()
			s.reach = &s.apart
		}
		s.pass(min(size, s.left))
		if s.found && s.any || !s.out && !s.cut || !s.out && s.found && !s.root.add(s.apart).less(s.best) {
			return true // in the last case what is beyond reach is no better than the best
		}
		s.spend(s.nodes)
		if !s.out {
			s.apart = s.farther(s.apart)
		}
	}
	return false
}

// pass goes over the tree once, as far as a number of nodes goes.
func (s *branching) pass(limit int) {
	s.nodes, s.limit, s.out, s.cut = 0, limit, false, false
	s.visit()
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
	s.values = s.values[:0]
	for _, e := range s.expr {
		x := e.k
		for _, f := range e.terms {
			x = x.add(f.c.mul(t.vars[f.v].val))
		}
		s.values = append(s.values, x)
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
