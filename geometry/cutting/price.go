package cutting

import "sort"

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
	rough  bool // values may be too low: for plans, never for bounds
	size   int  // longest board on the pricer's grid
	l      []int
	groups []*priceGroup
	work   *effort
}

// A priceGroup holds the kinds and boards of one thickness.
type priceGroup struct {
	classes  []*priceClass
	active   []int // classes of the run
	strip    []priceStrip
	wids     []int
	back     [][]int32 // by class and width position: position left beside a strip
	profiles []*profile
	ripMin   int
	slots    []int     // of the run: lengths of sections worth having
	value    [][]int64 // by slot and width position
	choice   [][]int16
}

// A priceStrip is the best strip of a class in one length.
type priceStrip struct {
	value int64
	back  []int32
	class int16
}

// A priceClass holds the kinds of one width.
type priceClass struct {
	w      int
	kinds  []int
	value  []int64 // by length: best content of a strip
	chosen [][]int32
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

// The most length positions a table has, where boards are ripped and where they
// are only cut to length.
const (
	finestGrid = 6144
	finestBars = 1 << 18
)

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
	finest := finestBars
	if ripped {
		finest = finestGrid
	}
	p.q = 1 + (longest-1)/finest
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
	work.spend(8 * p.size * len(p.groups))
	return p
}

// newRoughPricer returns a pricer for plans, which is quicker and may miss the
// layout of greatest value: batches have come out cheaper with it than with an
// exact one, which finds more patterns of the same worth.
func newRoughPricer(in *instance, work *effort) *pricer {
	p := newPricer(in, false, work)
	p.rough = true
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
		back := make([]int32, len(g.wids))
		for i, w := range g.wids {
			back[i] = int32(floor(g.wids, w-c.w))
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
	sort.Slice(g.classes, func(i, j int) bool { return g.classes[i].w < g.classes[j].w })
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
	leaves := make([][]section, p.in.sources[source].leaves)
	row := p.row(g, f, p.in.sources[source].capL/p.q)
	for i := range leaves {
		leaves[i] = row
	}
	return newPattern(p.in, source, leaves)
}

// row walks back to the sections of greatest value in a length.
func (p *pricer) row(g *priceGroup, f *profile, x int) (row []section) {
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
	return row
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
		wid = int(g.back[c][wid])
	}
	return out
}
