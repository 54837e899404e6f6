package cutting

import "math/bits"

// A lengthSet is a set of whole lengths above zero and up to a greatest. Only
// stretches that hold one take memory: sizes that share no coarse grid make a
// board some hundred million steps long, and few of them are sums of sections.
type lengthSet struct{ pages []*[pageWords]uint64 }

// A page holds the lengths of a stretch, one bit each.
const (
	pageWords = 64
	pageSteps = 64 * pageWords
)

func newLengthSet(greatest int) *lengthSet {
	return &lengthSet{make([]*[pageWords]uint64, greatest/pageSteps+1)}
}

func (s *lengthSet) add(l int) {
	p := &s.pages[l/pageSteps]
	if *p == nil {
		*p = new([pageWords]uint64)
	}
	(*p)[l%pageSteps/64] |= 1 << (l % 64)
}

// next returns the least length of the set above l, or -1.
func (s *lengthSet) next(l int) int {
	l++
	for l < len(s.pages)*pageSteps {
		p := s.pages[l/pageSteps]
		if p == nil {
			l = (l/pageSteps + 1) * pageSteps
			continue
		}
		if w := p[l%pageSteps/64] >> (l % 64); w != 0 {
			return l + bits.TrailingZeros64(w)
		}
		l = (l/64 + 1) * 64
	}
	return -1
}
