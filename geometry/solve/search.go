package solve

import (
	"container/heap"
	"encoding/binary"
	"slices"
)

// search looks through the counts for the best solution of a question: boxes
// of counts, the most promising first, each narrowed by propagation and then
// judged by those parts of the model whose counts it settles.
type search struct {
	q      *ask
	root   *box
	leaves map[string]*leaf
	best   *found
	queue  boxQueue
}

// found is a tuple of counts with its leaves and the values of the goals.
type found struct {
	counts []span
	leaves []*leaf
	values []rat
}

// boxNode is a box in the queue with lower limits of the first few goals.
type boxNode struct {
	*box
	least  []rat
	judged bool // the limits are those of the settled parts already
	seq    int
}

// boxQueue is a heap: the least limits first, the newest among equals, so that
// a question without goals goes straight down to one solution.
type boxQueue []*boxNode

func (h boxQueue) Len() int      { return len(h) }
func (h boxQueue) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h boxQueue) Less(i, j int) bool {
	if c := compare(h[i].least, h[j].least); c != 0 {
		return c < 0
	}
	return h[i].seq > h[j].seq
}
func (h *boxQueue) Push(x any) { *h = append(*h, x.(*boxNode)) }
func (h *boxQueue) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}

// compare orders lists of goal values as far as both go.
func compare(a, b []rat) int {
	for i := range min(len(a), len(b)) {
		if c := a[i].cmp(b[i]); c != 0 {
			return c
		}
	}
	return 0
}

// run answers the question. It returns nil when there is no solution.
func (q *ask) run() (*search, *found) {
	for i := range q.lengths {
		q.lengths[i] = q.lengths[i].round()
	}
	s := &search{q: q, root: &box{slices.Clone(q.lengths), slices.Clone(q.counts)}, leaves: map[string]*leaf{}}
	if !q.propagate(s.root) {
		return s, nil
	}
	seq := 0
	s.push(&boxNode{box: s.root.clone()}, nil)
	for len(s.queue) > 0 {
		n := heap.Pop(&s.queue).(*boxNode)
		if s.best != nil && !s.promises(n.least) {
			continue
		}
		if n.decided() {
			s.try(n.box)
			if s.best != nil && len(q.goals) == 0 {
				break
			}
			continue
		}
		if !n.judged {
			n.judged = true
			better, ok := s.judge(n)
			if !ok {
				continue
			}
			if better {
				heap.Push(&s.queue, n)
				continue
			}
		}
		for _, half := range n.split() {
			if q.propagate(half) {
				seq++
				s.push(&boxNode{box: half, seq: seq}, n.least)
			}
		}
	}
	return s, s.best
}

// promises reports whether limits leave room for something better than the
// best so far.
func (s *search) promises(least []rat) bool {
	c := compare(least, s.best.values)
	return c < 0 || c == 0 && len(least) < len(s.best.values)
}

// push works out the limits of a box, no lower than its parent's.
func (s *search) push(n *boxNode, parent []rat) {
	for i, g := range s.q.goals {
		v, ok := s.q.ofBox(g, n.box)
		if !ok {
			break
		}
		// A parent's limit counts only as long as the earlier ones are equal:
		// it is a limit of the whole list in order.
		if i < len(parent) && compare(n.least, parent[:i]) == 0 && v.less(parent[i]) {
			v = parent[i]
		}
		n.least = append(n.least, v)
	}
	heap.Push(&s.queue, n)
}

// judge raises the limits of a box with open counts by the exact optimum of
// the parts that hang on settled counts only. ok is false when one of them has
// no solution.
func (s *search) judge(n *boxNode) (better, ok bool) {
	leaves, ok := s.settle(n.box)
	if !ok {
		return false, false
	}
	for i, g := range s.q.goals {
		if g.kind == mostOf || g.kind == leastOf {
			break // later limits seldom decide and cost most
		}
		v := whole(s.q.m.ofCounts(g, n.counts)).add(s.ofFixed(g, n.box))
		for _, f := range leaves {
			v = v.add(f.value(i, s.root))
		}
		switch c := v.cmp(n.least[i]); {
		case c > 0:
			n.least = append(slices.Clone(n.least[:i]), v)
			return true, true
		case c < 0:
			return false, true
		}
	}
	return false, true
}

// split halves the range of the open count with the fewest values: parts that
// hang on it alone are soon settled, and raise the limits of all boxes below.
func (b *box) split() []*box {
	i := -1
	for j, c := range b.counts {
		if !c.fixed() && (i < 0 || c.hi-c.lo < b.counts[i].hi-b.counts[i].lo) {
			i = j
		}
	}
	low, high := b.clone(), b.clone()
	mid := b.counts[i].lo + (b.counts[i].hi-b.counts[i].lo)/2
	low.counts[i].hi = mid
	high.counts[i].lo = mid + 1
	return []*box{high, low}
}

// try compares a tuple of counts with the best so far, goal by goal, and
// stops where it falls behind.
func (s *search) try(b *box) {
	leaves, ok := s.settle(b)
	if !ok {
		return
	}
	f := &found{counts: b.counts, leaves: leaves}
	ahead := s.best == nil
	for i, g := range s.q.goals {
		v := whole(s.q.m.ofCounts(g, b.counts)).add(s.ofFixed(g, b))
		for _, l := range leaves {
			v = v.add(l.value(i, s.root))
		}
		f.values = append(f.values, v)
		if !ahead {
			c := v.cmp(s.best.values[i])
			if c > 0 {
				return
			}
			ahead = c < 0
		}
	}
	if ahead {
		s.best = f
	}
}

// ofFixed is what lengths without any freedom add to a goal.
func (s *search) ofFixed(g goal, b *box) rat {
	var sum rat
	add := func(w Wish) {
		if d := s.root.lengths[w.Length]; d.fixed() {
			sum = sum.add(whole(absInt(d.lo - int64(w.Want))))
		}
	}
	switch g.kind {
	case lengthSize, lengthMost:
		if d := s.root.lengths[g.i]; d.fixed() {
			sum = g.sign().mul(whole(d.lo))
		}
	case wishSum:
		for _, w := range s.q.m.Levels[g.level].Wishes {
			add(w)
		}
	case wishEach:
		add(s.q.m.Levels[g.level].Wishes[g.i])
	case leastOf:
		for _, t := range s.q.m.Levels[g.level].Least {
			v := whole(1)
			if t.Length != None {
				if v = whole(s.root.lengths[t.Length].lo); !s.root.lengths[t.Length].fixed() {
					continue
				}
			}
			if t.Count != None {
				v = v.mul(whole(b.counts[t.Count].lo + t.Plus))
			}
			sum = sum.add(v.mul(whole(t.Coef)))
		}
	}
	return sum
}

// part is a connected part of the model.
type part struct {
	lengths, relations, rules []int
	counts                    []int // that its relations, rules or cost name
}

// key names the part with its counts put in. Two boxes with equal keys have
// the same part.
func (c part) key(b *box) string {
	var k []byte
	put := func(list []int) {
		k = binary.AppendVarint(k, int64(len(list)))
		for _, i := range list {
			k = binary.AppendVarint(k, int64(i))
		}
	}
	put(c.lengths)
	put(c.relations)
	put(c.rules)
	for _, n := range c.counts {
		k = binary.AppendVarint(k, int64(n))
		k = binary.AppendVarint(k, b.counts[n].lo)
		k = binary.AppendVarint(k, b.counts[n].hi)
	}
	return string(k)
}

// settle finds or makes the leaves of a box: those parts that hang on settled
// counts only. Relations with an open count are left out, which can only make
// more points possible. ok is false when a part has no solution.
func (s *search) settle(b *box) (leaves []*leaf, ok bool) {
	parts, ok := s.parts(b)
	if !ok {
		return nil, false
	}
	for _, c := range parts {
		k := c.key(b)
		f := s.leaves[k]
		if f == nil {
			f = s.newLeaf(c, b)
			s.leaves[k] = f
		}
		if f.point == nil {
			return nil, false
		}
		leaves = append(leaves, f)
	}
	return leaves, true
}
