package solve

// goalKind tells how one number of the objective is worked out.
type goalKind uint8

const (
	countSum   goalKind = iota // distances of counts, together
	countEach                  // distance of one count
	wishSum                    // distances of lengths, together
	wishEach                   // distance of one length
	mostOf                     // sum of products of counts, greatest first
	leastOf                    // sum of terms
	countSize                  // a count itself
	countMost                  // a count, greatest first
	lengthSize                 // a length itself
	lengthMost                 // a length, greatest first
)

// goal is one number of the objective: the levels taken apart, and after them
// the counts. The lengths come last and are no goals: once the counts are
// settled each is brought to its least value in turn.
type goal struct {
	kind  goalKind
	level int
	i     int
}

func (m *Model) goals() []goal {
	var out []goal
	for l, level := range m.Levels {
		if len(level.CountWishes) > 0 {
			out = append(out, goal{countSum, l, 0})
			for i := range level.CountWishes {
				if level.InOrder && len(level.CountWishes) > 1 {
					out = append(out, goal{countEach, l, i})
				}
			}
		}
		if len(level.Wishes) > 0 {
			out = append(out, goal{wishSum, l, 0})
			for i := range level.Wishes {
				if level.InOrder && len(level.Wishes) > 1 {
					out = append(out, goal{wishEach, l, i})
				}
			}
		}
		if len(level.Most) > 0 {
			out = append(out, goal{mostOf, l, 0})
		}
		if len(level.Least) > 0 {
			out = append(out, goal{leastOf, l, 0})
		}
	}
	for c := range m.Counts {
		out = append(out, goal{countSize, 0, c})
	}
	return out
}

// ofCounts is the part of a goal that the counts decide: its least value where
// they have ranges. What lengths add to it is left out.
func (m *Model) ofCounts(g goal, counts []span) int64 {
	switch g.kind {
	case countSum:
		var sum int64
		for i := range m.Levels[g.level].CountWishes {
			sum += m.ofCounts(goal{countEach, g.level, i}, counts)
		}
		return sum
	case countEach:
		w := m.Levels[g.level].CountWishes[g.i]
		return spanDistance(counts[w.Count], int64(w.Want))
	case countSize:
		return counts[g.i].lo
	case countMost:
		return -counts[g.i].hi
	case mostOf:
		var sum int64
		for _, p := range m.Levels[g.level].Most {
			lo, hi := p.Coef, p.Coef
			for _, c := range p.Counts {
				lo, hi = lo*counts[c].lo, hi*counts[c].hi // counts are never below nought
			}
			sum += max(lo, hi) // lo is the greater where Coef is negative
		}
		return -sum
	}
	return 0
}

// spanDistance is how far a value lies outside a range.
func spanDistance(s span, want int64) int64 {
	return max(0, s.lo-want, want-s.hi)
}

// ofBox is a lower limit of a goal over a box, ok false where none is known.
func (q *ask) ofBox(g goal, b *box) (rat, bool) {
	switch g.kind {
	case wishSum:
		var sum int64
		for _, w := range q.m.Levels[g.level].Wishes {
			sum += spanDistance(b.lengths[w.Length], int64(w.Want))
		}
		return whole(sum), true
	case wishEach:
		w := q.m.Levels[g.level].Wishes[g.i]
		return whole(spanDistance(b.lengths[w.Length], int64(w.Want))), true
	case lengthSize:
		return whole(b.lengths[g.i].lo), true
	case lengthMost:
		return whole(-b.lengths[g.i].hi), true
	case leastOf:
		return rat{}, false
	}
	return whole(q.m.ofCounts(g, b.counts)), true
}

// sign is the factor under which a length is minimised.
func (g goal) sign() rat {
	if g.kind == lengthMost {
		return whole(-1)
	}
	return whole(1)
}
