package solve

import "slices"

// sets is a union-find over the lengths of a model.
type sets []int

func newSets(n int) sets {
	s := make(sets, n)
	for i := range s {
		s[i] = i
	}
	return s
}

func (s sets) find(i int) int {
	for s[i] != i {
		s[i] = s[s[i]]
		i = s[i]
	}
	return i
}

// join keeps the smaller number as the name of the set.
func (s sets) join(a, b int) {
	a, b = s.find(a), s.find(b)
	s[max(a, b)] = min(a, b)
}

// parts splits what a box settles into connected parts, in the order of their
// first lengths. A length with one possible value connects nothing. Relations
// between such lengths alone are checked on the spot; ok is false when one of
// them does not hold.
func (s *search) parts(b *box) (out []part, ok bool) {
	q := s.q
	sets := newSets(len(q.lengths))
	free := func(l LengthID) bool { return l != None && !s.root.lengths[l].fixed() }
	// link joins the free lengths of some terms and returns one of them, -1
	// when there is none.
	link := func(terms []Term, on LengthID) int {
		first := -1
		for _, t := range append(slices.Clip(terms), Term{Length: on}) {
			if !free(t.Length) {
				continue
			}
			if first >= 0 {
				sets.join(first, int(t.Length))
			}
			first = int(t.Length)
		}
		return first
	}
	type item struct{ id, at int }
	var relations, rules []item
	ground := leaf{q: q, counts: b.counts}
	for _, i := range q.relations {
		r := &q.m.Relations[i]
		if b.open(r.Terms) {
			continue
		}
		at := link(r.Terms, None)
		if at < 0 {
			if v := ground.sum(r.Terms, int64(r.Const), s.root).k.sign(); v < 0 || r.Op == Equal && v > 0 {
				return nil, false
			}
			continue
		}
		relations = append(relations, item{i, at})
	}
	for _, i := range q.rules {
		r := &q.m.Rules[i]
		if b.open(r.Terms) {
			continue
		}
		at := link(r.Terms, r.On)
		if at < 0 {
			need := q.tables[i].at(s.root.lengths[r.On].lo)
			if need == nothing || ground.sum(r.Terms, int64(r.Const), s.root).k.less(whole(need)) {
				return nil, false
			}
			continue
		}
		rules = append(rules, item{i, at})
	}
	index := map[int]int{}
	for l := range q.lengths {
		if !free(LengthID(l)) {
			continue
		}
		root := sets.find(l)
		i, ok := index[root]
		if !ok {
			i = len(out)
			index[root] = i
			out = append(out, part{})
		}
		out[i].lengths = append(out[i].lengths, l)
	}
	for _, r := range relations {
		c := &out[index[sets.find(r.at)]]
		c.relations = append(c.relations, r.id)
		c.name(q.m.Relations[r.id].Terms)
	}
	for _, r := range rules {
		c := &out[index[sets.find(r.at)]]
		c.rules = append(c.rules, r.id)
		c.name(q.m.Rules[r.id].Terms)
	}
	s.nameCosts(out, index, sets)
	return out, true
}

// open reports whether some term has a count that the box leaves open.
func (b *box) open(terms []Term) bool {
	return slices.ContainsFunc(terms, func(t Term) bool { return t.Count != None && !b.counts[t.Count].fixed() })
}

// name adds the counts of some terms, each once, in order.
func (c *part) name(terms []Term) {
	for _, t := range terms {
		if t.Count == None {
			continue
		}
		if i, ok := slices.BinarySearch(c.counts, int(t.Count)); !ok {
			c.counts = slices.Insert(c.counts, i, int(t.Count))
		}
	}
}

// nameCosts adds the counts by which the objective multiplies a part's lengths.
func (s *search) nameCosts(out []part, index map[int]int, sets sets) {
	for _, level := range s.q.m.Levels {
		for _, t := range level.Least {
			if t.Length == None || s.root.lengths[t.Length].fixed() {
				continue
			}
			c := &out[index[sets.find(int(t.Length))]]
			c.name([]Term{t})
		}
	}
}
