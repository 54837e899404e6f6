package cutting

import "sort"

// Sizes of the groups of boards that are planned anew together, and how many
// groups of one size are tried in vain before the size changes.
const (
	fewestRedone = 3
	mostRedone   = 10
	triesRedone  = 12
)

// improve takes a few boards of the best plan at a time and plans what they
// hold anew, until the bound is met or the effort is used up. Boards whose
// contents are worth little for their price come first.
func (s *search) improve() {
	if s.best == nil {
		return
	}
	find := newRoughPricer(s.in, s.work)
	draw := lottery(1)
	for size, vain, turn := fewestRedone, 0, 0; s.best.cost > s.bound && !s.work.out(); turn++ {
		n := len(s.best.patterns)
		loads := s.loads()
		group := s.poor(loads, min(size, n), &draw)
		if s.redo(find, loads, group, turn) {
			vain = 0
			continue
		}
		if vain++; size >= n && vain > 4*triesRedone {
			return
		}
		if vain%triesRedone == 0 {
			if size++; size > mostRedone {
				size = fewestRedone
			}
		}
	}
}

// A lottery draws numbers, the same in every run.
type lottery uint64

func (l *lottery) below(n int64) int64 {
	*l = *l*6364136223846793005 + 1442695040888963407
	return int64(uint64(*l) >> 33 % uint64(n))
}

// poor draws boards of the best plan, each the more likely the less its load
// is worth for its price.
func (s *search) poor(loads [][]int, size int, draw *lottery) []int {
	loss := make([]int64, len(loads))
	total := int64(0)
	for i, load := range loads {
		src := s.in.sources[s.best.patterns[i].source]
		worth := int64(0)
		for k, n := range load {
			worth += s.v[k] * int64(n)
		}
		loss[i] = max(0, src.cost-worth/s.in.scale) + 1 + src.cost/50
		total += loss[i]
	}
	var out []int
	for range size {
		at := draw.below(total)
		for i, l := range loss {
			if at < l {
				out = append(out, i)
				total -= l
				loss[i] = 0
				break
			}
			at -= l
		}
	}
	sort.Ints(out)
	return out
}

// redo plans the boards of a group of the best plan anew and puts the result
// in their place when it costs less.
func (s *search) redo(find *pricer, loads [][]int, group []int, turn int) bool {
	d := &dive{search: s, find: find, astray: -1, open: make([]int, len(s.need)), left: append([]int(nil), s.limits...)}
	chosen := map[int]bool{}
	for _, i := range group {
		chosen[i] = true
		d.below += s.in.sources[s.best.patterns[i].source].cost
		for k, n := range loads[i] {
			d.open[k] += n
		}
	}
	var others []pattern
	for i, p := range s.best.patterns {
		if chosen[i] {
			continue
		}
		others = append(others, p)
		if r := s.in.sources[p.source].limitRow; r >= 0 {
			d.left[r]--
		}
	}
	d.pool = s.fitting(d.open)
	if turn%2 == 1 {
		d.astray, d.second = turn/2%3, 1+turn%3
	}
	sol := d.run()
	if sol == nil || sol.cost >= d.below {
		return false
	}
	s.best = &solution{cost: s.best.cost - d.below + sol.cost, patterns: append(others, sol.patterns...)}
	return true
}

// fitting lists the patterns of the pool that are worth most of their price
// when what exceeds the demand left is taken off.
func (s *search) fitting(open []int) []pattern {
	var out []pattern
	for _, p := range s.pool {
		worth := int64(0)
		for k, n := range p.counts {
			worth += s.v[k] * int64(min(n, open[k]))
		}
		if worth >= s.in.sources[p.source].cost*s.in.scale/10*9 {
			out = append(out, p)
		}
	}
	return out
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
