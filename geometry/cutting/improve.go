package cutting

// Sizes of the groups of boards that are planned anew together.
const (
	fewestRedone = 2
	mostRedone   = 7
)

// improve takes a few boards of the best plan at a time and plans what they
// hold anew, until the bound is met or the effort is used up. Groups grow
// after a round in which nothing was gained, and shrink again after one in
// which something was.
func (s *search) improve() {
	if s.best == nil {
		return
	}
	find := newPricer(s.in, false, s.work)
	size, stride := fewestRedone, 1
	for s.best.cost > s.bound && !s.work.out() {
		n := len(s.best.patterns)
		if size > n {
			size, stride = fewestRedone, stride+1
		}
		if stride > n {
			return
		}
		gained := false
		for first := 0; first < n && !s.work.out(); first++ {
			group := make([]int, 0, size)
			for i := range min(size, n) {
				at := (first + i*stride) % n
				if i > 0 && at == first {
					break
				}
				group = append(group, at)
			}
			if s.redo(find, group, first) {
				gained = true
				n = len(s.best.patterns)
			}
		}
		switch {
		case gained:
			size = fewestRedone
		case size < mostRedone && size < n:
			size++
		default:
			size, stride = fewestRedone, stride+1
		}
	}
}

// redo plans the boards of a group of the best plan anew and puts the result
// in their place when it costs less.
func (s *search) redo(find *pricer, group []int, turn int) bool {
	loads := s.loads()
	d := &dive{search: s, find: find, astray: -1, open: make([]int, len(s.need)), left: append([]int(nil), s.limits...)}
	chosen := map[int]bool{}
	for _, i := range group {
		chosen[i] = true
		d.below += s.in.sources[s.best.patterns[i].source].cost
		for k, n := range loads[i] {
			d.open[k] += n
		}
	}
	var rest []pattern
	for i, p := range s.best.patterns {
		if chosen[i] {
			continue
		}
		rest = append(rest, p)
		if r := s.in.sources[p.source].limitRow; r >= 0 {
			d.left[r]--
		}
	}
	d.pool = s.pool
	if turn%2 == 1 {
		d.astray, d.second = turn/2%3, 1+turn%3
	}
	sol := d.run()
	if sol == nil || sol.cost >= d.below {
		return false
	}
	sol.cost += s.best.cost - d.below
	// what was planned anew goes to the end, so that the next groups mix it
	// with others
	sol.patterns = append(rest, sol.patterns...)
	s.best = sol
	return true
}

// loads tells what each board of the best plan is used for: what it holds,
// without what all the boards together hold too much.
func (s *search) loads() [][]int {
	spare := make([]int, len(s.need))
	for k, n := range s.need {
		spare[k] = -n
	}
	out := make([][]int, len(s.best.patterns))
	for i, p := range s.best.patterns {
		out[i] = newPattern(s.in, p.source, p.leaves).counts
		for k, n := range out[i] {
			spare[k] += n
		}
	}
	for _, load := range out {
		for k := range load {
			n := min(spare[k], load[k])
			load[k] -= n
			spare[k] -= n
		}
	}
	return out
}
