package cutting

// large plans an instance by diving into the linear program.
func (s *search) large() {
	s.rootWithin((s.work.limit - s.work.used) / 3)
	s.dives(0, firstDives)
	if s.onePrice() { // a few boards less one is rarely enough
		s.dives(firstDives, mostDives)
	}
	s.improve()
}

func (s *search) onePrice() bool {
	for _, src := range s.in.sources {
		if src.cost != s.in.sources[0].cost {
			return false
		}
	}
	return true
}
