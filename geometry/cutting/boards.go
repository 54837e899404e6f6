package cutting

import "slices"

// A piece is a section that may stand in a row of sections.
type piece struct {
	slot  int
	full  int // index in the box of a kind as wide as the board, or -1
	table int // else the slot whose tables hold it
	entry int // and the entry there
	v     vec
	shift []int32
}

// A row is the search for rows of sections in boards of one width.
type row struct {
	*enumerator
	sources []int
	longest int
	wid     int // index of the widest row of strips
	pieces  []piece
	lens    []int      // lengths of rows found so far, ascending, from 0
	at      []layer    // one for each
	ahead   *lengthSet // lengths still to come that a row may have
	digits  []int64    // worth of the entries but for the pivot
	pivot   int64      // worth of one of the pivot
}

// boards lists the patterns of the sources given, all of one width.
func (e *enumerator) boards(sources []int) ([]pattern, bool) {
	r := &row{enumerator: e, sources: sources, wid: floor(e.wids, e.in.sources[sources[0]].capW)}
	for _, s := range sources {
		r.longest = max(r.longest, e.in.sources[s].capL)
	}
	r.digits, r.pivot = e.box.worth(e.guide.v)
	r.ahead = newLengthSet(r.longest)
	if r.wid > 0 {
		for _, s := range e.slots {
			if s <= r.longest && e.guide.ripped(e.in, sources, s) {
				r.ahead.add(s)
			}
		}
	}
	r.lens, r.at = []int{0}, []layer{{at: e.box.fresh(), live: []int32{0}}}
	r.fullPieces(sources[0])
	for at := r.ahead.next(0); at > 0; at = r.ahead.next(at) {
		r.position(at)
		if len(r.lens) > mostPositions || e.work.out() {
			return nil, false
		}
	}
	var out []pattern
	for _, s := range sources {
		ps, ok := r.patterns(s)
		if !ok {
			return nil, false
		}
		out = append(out, ps...)
	}
	return out, true
}

// fullPieces adds a piece for each kind as wide as the board.
func (r *row) fullPieces(source int) {
	for i, k := range r.box.kinds {
		if r.in.kinds[k].width == r.in.sources[source].width {
			v := make(vec, len(r.box.kinds))
			v[i] = 1
			r.put(piece{slot: r.in.l[k], full: i, v: v, shift: r.box.shift(v)})
		}
	}
}

// put takes up a piece and marks the lengths that it leads to from those
// there are.
func (r *row) put(p piece) {
	r.pieces = append(r.pieces, p)
	for _, l := range r.lens {
		if l+p.slot <= r.longest {
			r.ahead.add(l + p.slot)
		}
	}
}

// position fills the table of one length from those of the shorter ones, and
// takes up the ripped sections of just this length that nothing shorter
// replaces. A length at which nothing useful is gained gets no table.
func (r *row) position(at int) {
	b := r.box
	last := r.at[len(r.at)-1].at
	least := r.least(at)
	var t []entry // a copy of the last table as soon as something is gained
	most := int32(b.need[b.pivot()])
	for k := range r.pieces {
		p := &r.pieces[k]
		if p.slot > at {
			continue
		}
		from := r.at[floor(r.lens, at-p.slot)]
		r.work.spend(len(from.live))
		for _, j := range from.live {
			pivot := min(from.at[j].pivot+int32(p.v[b.pivot()]), most)
			to := p.shift[j]
			if pivot <= last[to].pivot || r.digits[to]+int64(pivot)*r.pivot < least {
				continue
			}
			if t == nil {
				t = b.inherit(last)
			}
			if pivot > t[to].pivot {
				t[to] = entry{pivot, int32(k), j}
			}
		}
	}
	if t != nil {
		b.close(t)
		r.work.spend(b.size)
	}
	known := len(r.pieces)
	if s, ok := slices.BinarySearch(r.slots, at); ok && r.wid > 0 {
		t = r.takeRipped(s, at, least, t)
	}
	if t == nil {
		return
	}
	if len(r.pieces) > known {
		b.close(t)
	}
	live := slices.DeleteFunc(b.maximal(t), func(j int32) bool { return r.digits[j]+int64(t[j].pivot)*r.pivot < least })
	r.work.spend(2 * b.size)
	r.lens, r.at = append(r.lens, at), append(r.at, layer{at: t, live: live})
	for _, p := range r.pieces[:known] {
		if to := at + p.slot; to <= r.longest {
			r.ahead.add(to)
		}
	}
}

// takeRipped puts the ripped sections of one length into its table, which it
// makes if there is none yet.
func (r *row) takeRipped(slot, at int, least int64, t []entry) []entry {
	b := r.box
	found := r.ripped[slot].at[r.wid]
	for _, j := range found.live {
		pivot := found.at[j].pivot
		if t == nil && pivot > r.at[len(r.at)-1].at[j].pivot {
			t = b.inherit(r.at[len(r.at)-1].at)
		}
		if t == nil || pivot <= t[j].pivot || r.digits[j]+int64(pivot)*r.pivot < least {
			continue
		}
		v := b.vector(int(j), int(pivot))
		p := piece{slot: at, full: -1, table: slot, entry: int(j), v: v, shift: b.shift(v)}
		t[j] = entry{pivot, int32(len(r.pieces)), 0}
		r.put(p)
		if 2*at <= r.longest {
			r.ahead.add(2 * at)
		}
		r.work.spend(b.size)
	}
	return t
}

// least is the least worth of a row up to a length that can be part of a
// better plan in some board.
func (r *row) least(at int) int64 {
	out := int64(never)
	for _, s := range r.sources {
		if r.in.sources[s].capL >= at {
			out = min(out, r.guide.least(r.in, s, at))
		}
	}
	return out
}

// mostListed is how many patterns an enumeration lists before it gives up: the
// leaves of a resawn board may be laid out in any choice of layouts, and those
// soon fill the memory.
const mostListed = 1 << 17

// patterns reads off the patterns of one source; ok is false when there are too
// many or the effort runs out.
func (r *row) patterns(source int) (out []pattern, ok bool) {
	src := r.in.sources[source]
	pos := floor(r.lens, src.capL)
	var single [][]section
	for _, j := range r.at[pos].live {
		if r.at[pos].at[j].pivot > 0 || j > 0 {
			single = append(single, r.sections(pos, int(j)))
		}
	}
	if r.listed += choicesOf(len(single), src.leaves, mostListed); r.listed > mostListed {
		return nil, false
	}
	leaves := make([][]section, 0, src.leaves)
	combine(single, leaves, src.leaves, func(leaves [][]section) bool {
		out = append(out, newPattern(r.in, source, leaves))
		r.work.spend(len(r.in.kinds))
		return !r.work.out()
	})
	return out, !r.work.out()
}

// choicesOf counts the choices of n out of m layouts, each as often as one
// likes, C(m+n-1, n); no further than just above most.
func choicesOf(m, n, most int) int {
	count := 1
	for i := range n {
		if count = count * (m + i) / (i + 1); count > most {
			return most + 1
		}
	}
	return count
}

// combine calls f with every choice of n more layouts behind those chosen, as
// long as f asks for more.
func combine(layouts, chosen [][]section, n int, f func([][]section) bool) bool {
	if n == 0 {
		return f(slices.Clone(chosen))
	}
	for i := range layouts {
		if !combine(layouts[i:], append(chosen, layouts[i]), n-1, f) {
			return false
		}
	}
	return true
}

// sections walks back from an entry to the sections it was made of.
func (r *row) sections(pos, j int) []section {
	var out []section
	for pos > 0 {
		e := r.at[pos].at[j]
		if e.item < 0 {
			pos, j = pos-1, int(e.prev)
			continue
		}
		p := r.pieces[e.item]
		s := section{slot: p.slot, full: -1}
		if p.full >= 0 {
			s.full = r.box.kinds[p.full]
		} else {
			s.strips = r.strips(p.table, p.entry)
		}
		out = append(out, s)
		pos, j = floor(r.lens, r.lens[pos]-p.slot), int(e.prev)
	}
	return out
}

// strips walks back from an entry of a section's tables to its strips.
func (r *row) strips(table, j int) []strip {
	t := r.ripped[table]
	var out []strip
	wid := r.wid
	for wid > 0 {
		if t.at[wid].same {
			wid--
			continue
		}
		e := t.at[wid].at[j]
		if e.item < 0 {
			wid, j = wid-1, int(e.prev)
			continue
		}
		s := strip{}
		for i, n := range t.strips[e.item].v {
			if n > 0 {
				s.items = append(s.items, item{r.box.kinds[i], n})
			}
		}
		out = append(out, s)
		wid, j = floor(r.wids, r.wids[wid]-t.strips[e.item].w), int(e.prev)
	}
	return out
}
