package cutting

// A pricer finds the layout of greatest value for every source, each kind of
// part having a value of its own. It works in the stages of the plan: strips,
// sections, boards; a kind is used no more often than needed within a strip
// (and among the parts as wide as the board), but strips and sections repeat
// as often as they fit. The values are therefore upper bounds on what a board
// can hold, which is what a bound needs, and layouts may hold more than needed.
type pricer struct {
	in     *instance
	q      int // steps of the instance's length grid to one of the pricer's
	down   bool
	size   int // longest board on the pricer's grid
	l      []int
	groups []*priceGroup
	work   *effort
}

// A priceGroup holds the kinds and boards of one thickness.
type priceGroup struct {
	classes  []*priceClass
	wids     []int
	back     [][]int // by class and width position: position left beside a strip
	profiles []*profile
	ripMin   int
	slots    []int     // of the run: lengths of sections worth having
	value    [][]int64 // by slot and width position
	choice   [][]int16
}

// A priceClass holds the kinds of one width.
type priceClass struct {
	w      int
	kinds  []int
	value  []int64 // by length: best content of a strip
	chosen [][]uint8
	active []int // kinds of the run
}

// A profile is the boards of one thickness and width.
type profile struct {
	sources []int
	wid     int
	longest int
	full    priceClass // parts as wide as the board
	value   []int64
	choice  []int32
	pieces  []pricePiece
}

type pricePiece struct {
	slot, at int // length; index among the group's slots
	value    int64
}

// Choices of a profile's table besides a piece.
const (
	asBefore = -1
	onlyFull = -2
)

// finestGrid is the most length positions a table has where rips matter.
const finestGrid = 6144

// newPricer returns a pricer. With down set, sizes are rounded so that no
// layout is missed; otherwise so that every layout found can be cut. The two
// are the same unless the sizes share too fine a grid.
func newPricer(in *instance, down bool, work *effort) *pricer {
	p := &pricer{in: in, q: 1, down: down, work: work}
	longest, ripped := 0, false
	for _, s := range in.sources {
		longest = max(longest, s.capL)
		for _, k := range in.kinds {
			ripped = ripped || (k.thick == s.thick && k.width != s.width)
		}
	}
	if ripped && longest > finestGrid {
		p.q = (longest + finestGrid - 1) / finestGrid
	}
	p.size = longest / p.q
	for _, l := range in.l {
		if down {
			p.l = append(p.l, max(1, l/p.q))
		} else {
			p.l = append(p.l, (l+p.q-1)/p.q)
		}
	}
	done := map[int64]bool{}
	for _, k := range in.kinds {
		if !done[int64(k.thick)] {
			done[int64(k.thick)] = true
			p.groups = append(p.groups, p.newGroup(k))
		}
	}
	return p
}

func (p *pricer) exactGrid() bool { return p.q == 1 }

func (p *pricer) newGroup(first kind) *priceGroup {
	g := &priceGroup{ripMin: p.in.ripMin / p.q}
	if !p.down {
		g.ripMin = (p.in.ripMin + p.q - 1) / p.q
	}
	widest := 0
	byWidth := map[int64]*profile{}
	for i, s := range p.in.sources {
		if s.thick != first.thick {
			continue
		}
		widest = max(widest, s.capW)
		f := byWidth[int64(s.width)]
		if f == nil {
			f = &profile{}
			for k := range p.in.kinds {
				if p.in.kinds[k].thick == s.thick && p.in.kinds[k].width == s.width {
					f.full.kinds = append(f.full.kinds, k)
				}
			}
			byWidth[int64(s.width)] = f
			g.profiles = append(g.profiles, f)
		}
		f.sources = append(f.sources, i)
		f.longest = max(f.longest, s.capL/p.q)
	}
	g.addClasses(p.in, first, widest)
	var steps []int
	for _, c := range g.classes {
		steps = append(steps, c.w)
	}
	g.wids = p.widths(steps, widest)
	for _, c := range g.classes {
		back := make([]int, len(g.wids))
		for i, w := range g.wids {
			back[i] = floor(g.wids, w-c.w)
		}
		g.back = append(g.back, back)
	}
	for _, f := range g.profiles {
		f.wid = floor(g.wids, p.in.sources[f.sources[0]].capW)
	}
	return g
}

// widths lists the width positions: sums of the strips' widths.
func (p *pricer) widths(steps []int, widest int) []int {
	if out := reach(steps, widest); out != nil {
		return out
	}
	out := make([]int, widest+1) // every one of them: exact, and slow
	for i := range out {
		out[i] = i
	}
	return out
}

func (g *priceGroup) addClasses(in *instance, first kind, widest int) {
	at := map[int]*priceClass{}
	for k := range in.kinds {
		if in.kinds[k].thick != first.thick || in.w[k] > widest {
			continue
		}
		c := at[in.w[k]]
		if c == nil {
			c = &priceClass{w: in.w[k]}
			at[in.w[k]] = c
			g.classes = append(g.classes, c)
		}
		c.kinds = append(c.kinds, k)
	}
}

// run fills the tables for values v and the needs given.
func (p *pricer) run(v []int64, need []int) {
	for _, g := range p.groups {
		for _, c := range g.classes {
			p.fill(c, p.size, v, need)
		}
		p.sections(g)
		for _, f := range g.profiles {
			p.boards(g, f, v, need)
		}
	}
}

// fill computes the best content of a row of a class's kinds for each length.
func (p *pricer) fill(c *priceClass, size int, v []int64, need []int) {
	if len(c.value) <= size {
		c.value = make([]int64, size+1)
	}
	val := c.value
	clear(val)
	c.active = c.active[:0]
	for _, k := range c.kinds {
		if v[k] <= 0 || need[k] == 0 || p.l[k] > size {
			continue
		}
		i := len(c.active)
		c.active = append(c.active, k)
		if len(c.chosen) <= i {
			c.chosen = append(c.chosen, make([]uint8, p.size+1))
		}
		chosen := c.chosen[i]
		l, most := p.l[k], min(need[k], 255)
		for x := size; x >= l; x-- {
			best, n := val[x], uint8(0)
			for j, at, add := 1, x-l, v[k]; j <= most && at >= 0; j, at, add = j+1, at-l, add+v[k] {
				if w := val[at] + add; w > best {
					best, n = w, uint8(j)
				}
			}
			val[x], chosen[x] = best, n
		}
		clear(chosen[:l])
		p.work.spend(size * (1 + min(most, size/l)/2))
	}
}

// content walks back to what fills a row of length x.
func (p *pricer) content(c *priceClass, x int) []item {
	var out []item
	for i := len(c.active) - 1; i >= 0; i-- {
		if n := int(c.chosen[i][x]); n > 0 {
			out = append(out, item{c.active[i], n})
			x -= n * p.l[c.active[i]]
		}
	}
	return out
}

// sections computes the best section of every length that is worth having.
func (p *pricer) sections(g *priceGroup) {
	g.slots = g.slots[:0]
	for x := max(1, g.ripMin); x <= p.size; x++ {
		gain := x == g.ripMin
		for _, c := range g.classes {
			gain = gain || c.value[x] > c.value[x-1]
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
		value, choice := g.value[i], g.choice[i]
		value[0], choice[0] = 0, asBefore
		for w := 1; w < len(g.wids); w++ {
			best, by := value[w-1], int16(asBefore)
			for c, class := range g.classes {
				if b := g.back[c][w]; b >= 0 {
					if t := value[b] + class.value[x]; t > best {
						best, by = t, int16(c)
					}
				}
			}
			value[w], choice[w] = best, by
		}
		p.work.spend(len(g.wids) * len(g.classes))
	}
}

// boards computes the best row of sections for every length of one width.
func (p *pricer) boards(g *priceGroup, f *profile, v []int64, need []int) {
	p.fill(&f.full, f.longest, v, need)
	if f.value == nil {
		f.value = make([]int64, f.longest+1)
		f.choice = make([]int32, f.longest+1)
	}
	f.pieces = f.pieces[:0]
	next := 0
	for x := 1; x <= f.longest; x++ {
		best, by := f.value[x-1], int32(asBefore)
		if f.full.value[x] > best {
			best, by = f.full.value[x], onlyFull
		}
		for i, piece := range f.pieces {
			if t := f.value[x-piece.slot] + piece.value; t > best {
				best, by = t, int32(i)
			}
		}
		if next < len(g.slots) && g.slots[next] == x {
			if t := g.value[next][f.wid]; t > best {
				best, by = t, int32(len(f.pieces))
				f.pieces = append(f.pieces, pricePiece{x, next, t})
			}
			next++
		}
		f.value[x], f.choice[x] = best, by
		p.work.spend(len(f.pieces))
	}
}

// each calls fn for every source with the greatest value a board holds.
func (p *pricer) each(fn func(g *priceGroup, f *profile, source int, value int64)) {
	for _, g := range p.groups {
		for _, f := range g.profiles {
			for _, s := range f.sources {
				src := p.in.sources[s]
				fn(g, f, s, f.value[src.capL/p.q]*int64(src.leaves))
			}
		}
	}
}

// layout walks back to the layout of greatest value of a source.
func (p *pricer) layout(g *priceGroup, f *profile, source int) pattern {
	x := p.in.sources[source].capL / p.q
	var row []section
	for x > 0 && f.value[x] > 0 {
		switch by := f.choice[x]; by {
		case asBefore:
			x--
		case onlyFull:
			for _, it := range p.content(&f.full, x) {
				for range it.n {
					row = append(row, section{slot: p.l[it.kind], full: it.kind})
				}
			}
			x = 0
		default:
			piece := f.pieces[by]
			row = append(row, section{slot: piece.slot, full: -1, strips: p.strips(g, piece.at, f.wid)})
			x -= piece.slot
		}
	}
	leaves := make([][]section, p.in.sources[source].leaves)
	for i := range leaves {
		leaves[i] = row
	}
	return newPattern(p.in, source, leaves)
}

func (p *pricer) strips(g *priceGroup, slot, wid int) []strip {
	var out []strip
	for wid > 0 {
		c := g.choice[slot][wid]
		if c == asBefore {
			wid--
			continue
		}
		out = append(out, strip{p.content(g.classes[c], g.slots[slot])})
		wid = g.back[c][wid]
	}
	return out
}
