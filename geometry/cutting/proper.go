package cutting

// proper walks back to the layout of greatest value of a source, leaves out
// what is more than needed, and fills the room with other parts that fit.
func (p *pricer) proper(g *priceGroup, f *profile, source int, v []int64, need []int) pattern {
	left := append([]int(nil), need...)
	raw := p.layout(g, f, source)
	for i, leaf := range raw.leaves {
		var row []section
		for _, s := range leaf {
			if s.full >= 0 {
				if left[s.full] > 0 {
					left[s.full]--
					row = append(row, s)
				}
				continue
			}
			if t := p.refill(g, s, v, left); len(t.strips) > 0 {
				row = append(row, t)
			}
		}
		raw.leaves[i] = row
	}
	return newPattern(p.in, source, raw.leaves)
}

// refill clips a section's strips to what is left and fills them up with the
// parts of their width that are worth most for their length.
func (p *pricer) refill(g *priceGroup, s section, v []int64, left []int) section {
	out := section{slot: s.slot, full: -1}
	for _, t := range s.strips {
		room := s.slot
		var items []item
		for _, it := range t.items {
			if n := min(it.n, left[it.kind]); n > 0 {
				items = append(items, item{it.kind, n})
				left[it.kind] -= n
				room -= n * p.l[it.kind]
			}
		}
		for _, c := range g.classes {
			if c.w == p.in.w[t.items[0].kind] {
				items = p.topUp(c, items, room, v, left)
			}
		}
		if len(items) > 0 {
			out.strips = append(out.strips, strip{items})
		}
	}
	return out
}

func (p *pricer) topUp(c *priceClass, items []item, room int, v []int64, left []int) []item {
	for {
		best := -1
		for _, k := range c.active {
			if left[k] > 0 && p.l[k] <= room && (best < 0 || v[k]*int64(p.l[best]) > v[best]*int64(p.l[k])) {
				best = k
			}
		}
		if best < 0 {
			return items
		}
		n := min(left[best], room/p.l[best])
		items = append(items, item{best, n})
		left[best] -= n
		room -= n * p.l[best]
	}
}

// careful builds a source's layout section by section: what exceeds the needs
// is left out and the length it frees is planned anew for what is still wanted.
// The tables of the board's width are lost.
func (p *pricer) careful(g *priceGroup, f *profile, source int, v []int64, need []int) pattern {
	left := append([]int(nil), need...)
	src := p.in.sources[source]
	leaves := make([][]section, src.leaves)
	profiles := []*profile{f}
	for i := range leaves {
		for room := src.capL / p.q; room > 0; {
			p.runGroup(g, profiles, room, v, left)
			if f.value[room] == 0 {
				break
			}
			took := 0
			for _, s := range p.row(g, f, room) {
				if took > 0 && !within(s, left) {
					continue
				}
				if s.full >= 0 {
					left[s.full]--
				} else {
					s = p.refill(g, s, v, left)
				}
				took += s.slot
				leaves[i] = append(leaves[i], s)
			}
			room -= took
		}
	}
	return newPattern(p.in, source, leaves)
}

// within reports whether a section holds no more than is left.
func within(s section, left []int) bool {
	if s.full >= 0 {
		return left[s.full] > 0
	}
	counts := map[int]int{}
	for _, t := range s.strips {
		for _, it := range t.items {
			if counts[it.kind] += it.n; counts[it.kind] > left[it.kind] {
				return false
			}
		}
	}
	return true
}
