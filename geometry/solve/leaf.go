package solve

import "slices"

// leaf is a connected part of the model with its counts put in. It is brought
// through the goals one after the other and remembers how far it has come, so
// that all the tuples of counts that share it share its work.
type leaf struct {
	q       *ask
	lengths []int // of the model, ascending; unknown i is lengths[i]
	counts  []span
	p       *problem
	values  []rat       // of the goals reached so far
	dist    map[int]lin // wish of the present level -> its distance
	point   []rat       // a solution of p; nil: there is none
	final   bool        // the lengths have their least values
}

// newLeaf puts the counts of the box into the given relations and rules.
func (s *search) newLeaf(c part, b *box) *leaf {
	f := &leaf{q: s.q, lengths: c.lengths, counts: b.counts}
	in := s.root.clone()
	for _, n := range c.counts {
		in.counts[n] = b.counts[n]
	}
	if !s.q.propagate(in) {
		return f
	}
	f.p = &problem{}
	for _, l := range c.lengths {
		d := in.lengths[l]
		f.p.unknowns = append(f.p.unknowns, unknown{whole(d.lo), whole(d.hi), d.step})
	}
	for _, i := range c.relations {
		r := &s.q.m.Relations[i]
		f.p.conditions = append(f.p.conditions, condition{f.sum(r.Terms, int64(r.Const), s.root), r.Op == Equal})
	}
	for _, i := range c.rules {
		r := &s.q.m.Rules[i]
		sum := f.sum(r.Terms, int64(r.Const), s.root)
		if on := s.root.lengths[r.On]; on.fixed() {
			sum.k = sum.k.sub(whole(s.q.tables[i].at(on.lo)))
			f.p.conditions = append(f.p.conditions, condition{sum, false})
			continue
		}
		f.p.rules = append(f.p.rules, sideRule{sum, f.local(int(r.On)), s.q.tables[i]})
	}
	f.seek(lin{})
	return f
}

func (f *leaf) local(length int) int {
	i, ok := slices.BinarySearch(f.lengths, length)
	if !ok {
		return -1
	}
	return i
}

// sum puts counts and fixed lengths into the terms of a relation.
func (f *leaf) sum(terms []Term, k int64, root *box) lin {
	var out []term
	c := whole(k)
	for _, t := range terms {
		n := whole(t.Coef)
		if t.Count != None {
			n = n.mul(whole(f.counts[t.Count].lo + t.Plus))
		}
		switch {
		case t.Length == None:
			c = c.add(n)
		case f.local(int(t.Length)) >= 0:
			out = append(out, term{f.local(int(t.Length)), n})
		default:
			c = c.add(n.mul(whole(root.lengths[t.Length].lo)))
		}
	}
	return sorted(out, c)
}

// seek finds the least value of a sum over the unknowns and keeps the point.
func (f *leaf) seek(sum lin) (rat, bool) {
	r := f.p.reduce()
	if r == nil {
		f.point = nil
		return rat{}, false
	}
	least, point, ok := r.minimise(sum, f.q.nodeLimit())
	f.point = point
	return least, ok
}

// mustSeek is seek where a solution is known to exist.
func (f *leaf) mustSeek(sum lin) rat {
	least, ok := f.seek(sum)
	if !ok {
		panic("solve: a solution was lost between two levels")
	}
	return least
}

// keep adds sum = v to the problem.
func (f *leaf) keep(sum lin, v rat) {
	sum.k = sum.k.sub(v)
	f.p.conditions = append(slices.Clip(f.p.conditions), condition{sum, true})
}

// value returns what the lengths of the leaf add to goal number i, at its
// least while all earlier goals keep theirs.
func (f *leaf) value(i int, root *box) rat {
	for len(f.values) <= i {
		f.values = append(f.values, f.advance(f.q.goals[len(f.values)], root))
	}
	return f.values[i]
}

func (f *leaf) advance(g goal, root *box) rat {
	switch g.kind {
	case wishSum:
		return f.bringNear(f.q.m.Levels[g.level].Wishes)
	case wishEach:
		d, ok := f.dist[g.i]
		if !ok {
			return rat{}
		}
		return f.bringDown(d)
	case leastOf:
		var own []Term
		for _, t := range f.q.m.Levels[g.level].Least {
			if t.Length != None && f.local(int(t.Length)) >= 0 {
				own = append(own, t)
			}
		}
		return f.bringDown(f.sum(own, 0, root))
	case lengthSize, lengthMost:
		v := f.local(g.i)
		if v < 0 {
			return rat{}
		}
		return f.bringDown(lin{terms: []term{{v, g.sign()}}})
	}
	return rat{}
}

// bringDown minimises a sum and keeps it there.
func (f *leaf) bringDown(sum lin) rat {
	if len(sum.terms) == 0 {
		return sum.k
	}
	v := f.mustSeek(sum)
	f.keep(sum, v)
	return v
}

// bringNear minimises the sum of distances. Mostly all wishes can be had, and
// trying that first is cheap: each fixed length makes the system smaller.
func (f *leaf) bringNear(wishes []Wish) rat {
	f.dist = map[int]lin{}
	var total rat
	var open []int
	pinned := f.p.clone()
	can := true
	for i, w := range wishes {
		v := f.local(int(w.Length))
		if v < 0 {
			continue
		}
		u, want := f.p.unknowns[v], whole(int64(w.Want))
		if u.fixed() {
			f.dist[i] = constant(u.lo.sub(want).abs())
			total = total.add(f.dist[i].k)
			continue
		}
		open = append(open, i)
		can = can && pinned.fix(v, want)
	}
	if len(open) == 0 {
		return total
	}
	if can {
		was, point := f.p, f.point
		f.p = pinned
		if _, ok := f.seek(lin{}); ok {
			for _, i := range open {
				f.dist[i] = lin{}
			}
			return total
		}
		f.p, f.point = was, point
	}
	return total.add(f.leastDistance(wishes, open))
}

// leastDistance minimises the distances of the open wishes, which cannot all be
// nought. A wish beyond the end of a range needs no absolute value; the others
// get an unknown that is at least the distance on either side.
func (f *leaf) leastDistance(wishes []Wish, open []int) rat {
	r := f.p.reduce()
	var all lin
	var least rat
	some := true // all the distances have a spacing
	for _, i := range open {
		v := f.local(int(wishes[i].Length))
		u, want := f.p.unknowns[v], whole(int64(wishes[i].Want))
		apart := r.spacing(v, want)
		some, least = some && !apart.isZero(), gcdRat(least, apart).abs()
		var d lin
		switch {
		case !u.lo.less(want):
			d = lin{[]term{{v, whole(1)}}, want.neg()}
		case !want.less(u.hi):
			d = lin{[]term{{v, whole(-1)}}, want}
		default:
			d = f.distance(v, want, apart)
		}
		f.dist[i] = d
		all = all.plus(whole(1), d)
	}
	if some {
		f.p.conditions = append(slices.Clip(f.p.conditions), condition{all.plus(whole(-1), constant(least)), false})
	}
	return f.bringDown(all)
}

func (f *leaf) distance(v int, want, apart rat) lin {
	u := f.p.unknowns[v]
	most := u.hi.sub(want)
	if down := want.sub(u.lo); most.less(down) {
		most = down
	}
	n := len(f.p.unknowns)
	d := unknown{hi: most}
	if step, ok := apart.int(); ok {
		d.step = step
	}
	f.p.unknowns = append(slices.Clip(f.p.unknowns), d)
	f.p.conditions = append(slices.Clip(f.p.conditions),
		condition{lin{[]term{{v, whole(-1)}, {n, whole(1)}}, want}, false},
		condition{lin{[]term{{v, whole(1)}, {n, whole(1)}}, want.neg()}, false})
	return lin{terms: []term{{n, whole(1)}}}
}

// finish gives each length in turn its least value.
func (f *leaf) finish() {
	if f.final {
		return
	}
	f.final = true
	r := f.p.reduce()
	for v := range f.lengths {
		e := r.expr[v]
		if len(e.terms) == 0 {
			f.p.fix(v, e.k)
			continue
		}
		x, point, _ := r.minimise(lin{terms: []term{{v, whole(1)}}}, f.q.nodeLimit())
		f.p.fix(v, x)
		f.point = point
		r = f.p.reduce()
	}
}
