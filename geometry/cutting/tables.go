package cutting

// run fills the tables for values v and the needs given.
func (p *pricer) run(v []int64, need []int) {
	for _, g := range p.groups {
		p.runGroup(g, g.profiles, p.size, v, need)
	}
}

// runGroup fills the tables of some boards of a group up to a length.
func (p *pricer) runGroup(g *priceGroup, profiles []*profile, size int, v []int64, need []int) {
	g.active = g.active[:0]
	for i, c := range g.classes {
		if p.fill(c, size, v, need); len(c.active) > 0 {
			g.active = append(g.active, i)
		}
	}
	widest := 0
	for _, f := range profiles {
		widest = max(widest, f.wid)
	}
	p.sections(g, size, widest)
	for _, f := range profiles {
		p.boards(g, f, min(size, f.longest), v, need)
	}
}

// fill computes the best content of a row of a class's kinds for each length.
func (p *pricer) fill(c *priceClass, size int, v []int64, need []int) {
	c.active = c.active[:0]
	for _, k := range c.kinds {
		if v[k] > 0 && need[k] > 0 && p.l[k] <= size {
			c.active = append(c.active, k)
		}
	}
	if len(c.active) == 0 {
		return
	}
	if len(c.value) <= size {
		c.value = make([]int64, p.size+1)
	}
	clear(c.value[:size+1])
	for i, k := range c.active {
		if len(c.chosen) <= i {
			c.chosen = append(c.chosen, make([]int32, p.size+1))
		}
		clear(c.chosen[i][:p.l[k]])
		if need[k] >= size/p.l[k] {
			unbounded(c.value[:size+1], c.chosen[i], p.l[k], v[k])
			p.work.spend(size)
		} else {
			bounded(c.value[:size+1], c.chosen[i], p.l[k], v[k], need[k])
			p.work.spend(size * (1 + min(need[k], size/p.l[k])/2))
		}
	}
}

// unbounded improves the best values with any number of one kind.
func unbounded(val []int64, chosen []int32, l int, v int64) {
	for x := l; x < len(val); x++ {
		n := int32(0)
		if w := val[x-l] + v; w > val[x] {
			val[x], n = w, 1+chosen[x-l]
		}
		chosen[x] = n
	}
}

// bounded improves the best values with no more than most of one kind.
func bounded(val []int64, chosen []int32, l int, v int64, most int) {
	for x := len(val) - 1; x >= l; x-- {
		best, n := val[x], int32(0)
		for j, at, add := 1, x-l, v; j <= most && at >= 0; j, at, add = j+1, at-l, add+v {
			if w := val[at] + add; w > best {
				best, n = w, int32(j)
			}
		}
		val[x], chosen[x] = best, n
	}
}

// sections computes the best section of every length that is worth having, for
// the width positions up to the widest.
func (p *pricer) sections(g *priceGroup, size, widest int) {
	g.slots = g.slots[:0]
	for x := max(1, g.ripMin); x <= size; x++ {
		gain := x == g.ripMin
		for _, c := range g.active {
			gain = gain || g.classes[c].value[x] > g.classes[c].value[x-1]
		}
		if !gain {
			continue
		}
		i := len(g.slots)
		g.slots = append(g.slots, x)
		if len(g.value) <= i {
			g.value = append(g.value, make([]int64, len(g.wids)))
			g.choice = append(g.choice, make([]int16, len(g.wids)))
		}
		value, choice := g.value[i][:widest+1], g.choice[i][:widest+1]
		value[0], choice[0] = 0, asBefore
		g.worthwhile(x)
		for w := 1; w <= widest; w++ {
			best, by := value[w-1], int16(asBefore)
			for i := range g.strip {
				s := &g.strip[i]
				if b := s.back[w]; b < 0 {
					break // the others are wider still
				} else if t := value[b] + s.value; t > best {
					best, by = t, s.class
				}
			}
			value[w], choice[w] = best, by
		}
		p.work.spend(widest * len(g.strip) / 2)
	}
}

// worthwhile lists the strips of one length, narrow ones first, that no
// narrower one is worth as much as.
func (g *priceGroup) worthwhile(length int) {
	g.strip = g.strip[:0]
	best := int64(0)
	for _, c := range g.active {
		if v := g.classes[c].value[length]; v > best {
			best = v
			g.strip = append(g.strip, priceStrip{v, g.back[c], int16(c)})
		}
	}
}

// boards computes the best row of sections for every length of one width. Parts
// as wide as the board come in last: there are only so many of them, so that a
// section worth no more than they are may still be wanted beside them. A rough
// pricer passes such sections over.
func (p *pricer) boards(g *priceGroup, f *profile, size int, v []int64, need []int) {
	p.fill(&f.full, size, v, need)
	if f.value == nil {
		f.value = make([]int64, f.longest+1)
		f.choice = make([]int32, f.longest+1)
	}
	f.pieces = f.pieces[:0]
	next := 0
	for x := 1; x <= size; x++ {
		f.extend(x)
		if p.rough {
			f.wholeWidth(x)
		}
		if next < len(g.slots) && g.slots[next] == x {
			if t := g.value[next][f.wid]; t > f.value[x] {
				f.value[x], f.choice[x] = t, int32(len(f.pieces))
				f.pieces = append(f.pieces, pricePiece{x, next, t})
			}
			next++
		}
	}
	p.work.spend(size * (1 + len(f.pieces)/2))
	if len(f.full.active) == 0 || p.rough {
		return
	}
	for x := 1; x <= size; x++ {
		f.extend(x)
		f.wholeWidth(x)
	}
	p.work.spend(size * (1 + len(f.pieces)/2))
}

// wholeWidth fills a length with parts as wide as the board where that is better.
func (f *profile) wholeWidth(x int) {
	if len(f.full.active) > 0 && f.full.value[x] > f.value[x] {
		f.value[x], f.choice[x] = f.full.value[x], onlyFull
	}
}

// extend makes the best row of a length from those of lesser lengths.
func (f *profile) extend(x int) {
	best, by := f.value[x-1], int32(asBefore)
	for i := range f.pieces {
		piece := &f.pieces[i]
		if piece.slot > x {
			break
		}
		if t := f.value[x-piece.slot] + piece.value; t > best {
			best, by = t, int32(i)
		}
	}
	f.value[x], f.choice[x] = best, by
}
