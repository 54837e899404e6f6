package cutting

// large plans an instance by diving into the linear program.
func (s *search) large() {
	s.rootWithin((s.work.limit - s.work.used) / 3)
	s.dives(0, firstDives)
	if s.onePrice() { // a few boards less one is rarely enough
		s.dives(firstDives, mostDives)
		s.improve()
		return
	}
	s.improve()
	for n := firstDives; n < firstDives+mostStarts && s.best != nil && s.best.cost > s.bound && !s.work.out(); n++ {
		s.startAgain(n)
	}
}

// mostStarts is how many dives are improved besides the first ones.
const mostStarts = 24

// startAgain works on the plan of another dive and keeps it where it gets
// cheaper than the best one: what a plan can be improved to depends on where
// it starts.
func (s *search) startAgain(n int) {
	best := s.best
	s.best = nil
	s.dives(n, n+1)
	if s.improve(); s.best == nil || s.best.cost >= best.cost {
		s.best = best
	}
}

func (s *search) onePrice() bool {
	for _, src := range s.in.sources {
		if src.cost != s.in.sources[0].cost {
			return false
		}
	}
	return true
}
