package cutting

// fewestRounds is how often patterns are looked for after some tops have been
// settled.
const fewestRounds = 3

// settled chooses a way for each top as the linear program makes them: the
// tops that it makes in one way alone, or nearly, are settled first, and the
// program is solved again for the others. Prices alone would not tell, because
// at the optimum most ways of a top are worth the same, and what all tops take
// together must suit the patterns.
func (s *search) settled() []int {
	m, row, needs := s.rootProgram()
	find := newPricer(s.in, false, s.work)
	choice := make([]int, len(s.in.tops))
	for i := range choice {
		choice[i] = -1
	}
	for open := len(choice); open > 0; {
		for range fewestRounds {
			m.solve()
			v, mu := s.wholePrices(m, needs)
			if s.work.out() || !s.columns(m, find, v, mu, row, needs) {
				break
			}
		}
		m.solve()
		some := s.settle(m, choice, 0.99)
		if some == 0 || some < open/10 {
			some += s.settle(m, choice, s.clearest(m, choice))
		}
		open -= some
		m.refresh()
	}
	return choice
}

// settle settles the tops of which the program makes at least that share in one
// way, and tells how many they are. The other ways become too dear to be used.
func (s *search) settle(m *master, choice []int, share float64) (some int) {
	s.eachTop(m, func(i, first, best int, level float64) {
		if choice[i] >= 0 || level < share {
			return
		}
		choice[i] = best
		some++
		for w := range s.in.tops[i].ways {
			if w != best {
				m.cols[first+w].cost = s.big
			}
		}
	})
	return some
}

// clearest is the largest share of a top not settled that is made in one way.
func (s *search) clearest(m *master, choice []int) float64 {
	most := 0.0
	s.eachTop(m, func(i, _, _ int, level float64) {
		if choice[i] < 0 {
			most = max(most, level)
		}
	})
	return most
}

// eachTop tells for each top its first column, the way used most and the share
// made in it.
func (s *search) eachTop(m *master, fn func(i, first, best int, share float64)) {
	level := make([]float64, len(m.cols))
	for r, b := range m.basis {
		if b >= 0 {
			level[b] = m.x[r]
		}
	}
	first := 0
	for i, t := range s.in.tops {
		best := 0
		for w := range t.ways {
			if level[first+w] > level[first+best] {
				best = w
			}
		}
		fn(i, first, best, level[first+best]/float64(t.parts))
		first += len(t.ways)
	}
}
