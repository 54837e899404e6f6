package cutting

import "sort"

// The enumerator lists every pattern worth having for the kinds of one
// thickness. It works inside out: strips of one width, sections as rows of
// strips across the width, boards as rows of sections along the length. At
// each stage tables over a box keep only what no other choice dominates. A
// section that two shorter ones replace is never used as a piece of a board,
// which leaves few.
type enumerator struct {
	in      *instance
	box     *box
	guide   *guide
	work    *effort
	classes []widthClass
	slots   []int // lengths that a ripped section may have, ascending
	wids    []int // widths that rows of strips may have, ascending, from 0
	ripped  []slotTables
	listed  int // patterns of the boards so far
}

// A widthClass holds the kinds of one width (as indices of the box).
type widthClass struct {
	w     int
	kinds []int
}

// slotTables are the tables of one section length, by width position.
type slotTables struct {
	strips []boxStrip
	at     []layer
}

// A boxStrip is a strip that may go into a section of one length.
type boxStrip struct {
	w     int
	v     vec
	shift []int32
}

const mostPositions = 20000

// enumerate returns the patterns of the sources that cut the box's kinds, or
// ok == false when the effort runs out.
func enumerate(in *instance, b *box, sources []int, g *guide, work *effort) (found []pattern, ok bool) {
	e := &enumerator{in: in, box: b, guide: g, work: work}
	if !e.prepare(sources) {
		return nil, false
	}
	for _, slot := range e.slots {
		e.ripped = append(e.ripped, e.sectionTables(slot))
		if work.out() {
			return nil, false
		}
	}
	byWidth := map[int64][]int{}
	var widths []int64
	for _, s := range sources {
		w := int64(in.sources[s].width)
		if byWidth[w] == nil {
			widths = append(widths, w)
		}
		byWidth[w] = append(byWidth[w], s)
	}
	for _, w := range widths {
		ps, ok := e.boards(byWidth[w])
		if !ok {
			return nil, false
		}
		found = append(found, ps...)
	}
	return found, true
}

// prepare finds the width classes and the positions that can occur.
func (e *enumerator) prepare(sources []int) bool {
	maxL, maxW := 0, 0
	for _, s := range sources {
		maxL, maxW = max(maxL, e.in.sources[s].capL), max(maxW, e.in.sources[s].capW)
	}
	for i, k := range e.box.kinds {
		e.addToClass(i, e.in.w[k], maxW)
	}
	sort.Slice(e.classes, func(i, j int) bool { return e.classes[i].w < e.classes[j].w })
	slots := map[int]bool{}
	widths := make([]int, 0, len(e.classes))
	for _, c := range e.classes {
		widths = append(widths, c.w)
		if !e.contents(c, maxL, slots) {
			return false
		}
	}
	for _, s := range sorted(slots) {
		if e.guide.ripped(e.in, sources, s) {
			e.slots = append(e.slots, s)
		}
	}
	e.wids = reach(widths, maxW)
	return e.wids != nil
}

func (e *enumerator) addToClass(i, w, maxW int) {
	if w > maxW {
		return
	}
	for c := range e.classes {
		if e.classes[c].w == w {
			e.classes[c].kinds = append(e.classes[c].kinds, i)
			return
		}
	}
	e.classes = append(e.classes, widthClass{w, []int{i}})
}

// contents adds to slots every length that a strip of the class can take up.
func (e *enumerator) contents(c widthClass, maxL int, slots map[int]bool) bool {
	sums := map[int]bool{0: true}
	for _, i := range c.kinds {
		l := e.in.l[e.box.kinds[i]]
		for _, s := range sorted(sums) {
			for n := 1; n <= e.box.need[i] && s+n*l <= maxL; n++ {
				sums[s+n*l] = true
			}
		}
		if len(sums) > mostPositions {
			return false
		}
	}
	delete(sums, 0)
	for s := range sums {
		if s = max(s, e.in.ripMin); s <= maxL {
			slots[s] = true
		}
	}
	return true
}

func sorted(set map[int]bool) []int {
	out := make([]int, 0, len(set))
	for s := range set {
		out = append(out, s)
	}
	sort.Ints(out)
	return out
}

// reach lists every sum of the steps up to most, from 0; nil if there are too
// many.
func reach(steps []int, most int) []int {
	seen := map[int]bool{0: true}
	todo := []int{0}
	for len(todo) > 0 {
		at := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		for _, s := range steps {
			if to := at + s; to <= most && !seen[to] {
				seen[to] = true
				todo = append(todo, to)
			}
		}
		if len(seen) > mostPositions {
			return nil
		}
	}
	return sorted(seen)
}

// floor returns the index of the largest position not above x.
func floor(positions []int, x int) int { return sort.SearchInts(positions, x+1) - 1 }

// sectionTables fills the tables of the ripped sections of one length.
func (e *enumerator) sectionTables(slot int) slotTables {
	t := slotTables{}
	for _, c := range e.classes {
		v := make(vec, len(e.box.kinds))
		t.strips = e.fill(t.strips, c, 0, slot, v)
	}
	b := e.box
	for i, w := range e.wids {
		if i == 0 {
			t.at = append(t.at, layer{at: b.fresh(), live: []int32{0}})
			continue
		}
		last := t.at[i-1]
		var at []entry // a copy of the last table as soon as something is gained
		for k := range t.strips {
			s := &t.strips[k]
			if s.w > w {
				continue
			}
			from := t.at[floor(e.wids, w-s.w)]
			at = b.add(at, last.at, from, k, s.shift, s.v[b.pivot()])
			e.work.spend(len(from.live))
		}
		if at == nil {
			t.at = append(t.at, last.asBefore())
			continue
		}
		b.close(at)
		e.work.spend(2 * b.size)
		t.at = append(t.at, layer{at: at, live: b.maximal(at)})
	}
	return t
}

// fill lists the strips of one width whose contents fit the slot and leave no
// room for another piece.
func (e *enumerator) fill(out []boxStrip, c widthClass, at, room int, v vec) []boxStrip {
	i := c.kinds[at]
	l := e.in.l[e.box.kinds[i]]
	most := min(room/l, e.box.need[i])
	least := 0
	if at == len(c.kinds)-1 {
		least = most
	}
	for n := most; n >= least; n-- {
		v[i] = n
		if at < len(c.kinds)-1 {
			out = e.fill(out, c, at+1, room-n*l, v)
		} else if w := append(vec(nil), v...); !zero(w) {
			out = append(out, boxStrip{c.w, w, e.box.shift(w)})
			e.work.spend(e.box.size)
		}
	}
	v[i] = 0
	return out
}

func zero(v vec) bool {
	for _, n := range v {
		if n != 0 {
			return false
		}
	}
	return true
}
