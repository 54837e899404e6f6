package cutting

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
	wid    int // index of the widest row of strips
	pieces []piece
	at     [][]entry // by length position
}

// boards lists the patterns of the sources given, all of one width.
func (e *enumerator) boards(sources []int) ([]pattern, bool) {
	r := &row{enumerator: e, wid: floor(e.wids, e.in.sources[sources[0]].capW)}
	longest := 0
	for _, s := range sources {
		longest = max(longest, e.in.sources[s].capL)
	}
	r.fullPieces(sources[0])
	for i, at := range e.lens {
		if at > longest {
			break
		}
		r.position(i, at)
		if e.work.out() {
			return nil, false
		}
	}
	var out []pattern
	for _, s := range sources {
		out = append(out, r.patterns(s)...)
	}
	return out, true
}

// fullPieces adds a piece for each kind as wide as the board.
func (r *row) fullPieces(source int) {
	for i, k := range r.box.kinds {
		if r.in.kinds[k].width == r.in.sources[source].width {
			v := make(vec, len(r.box.kinds))
			v[i] = 1
			r.pieces = append(r.pieces, piece{slot: r.in.l[k], full: i, v: v, shift: r.box.shift(v)})
		}
	}
}

// position fills the table of one length from those of the shorter ones, and
// takes up the ripped sections of just this length that nothing shorter
// replaces.
func (r *row) position(i, at int) {
	b := r.box
	if i == 0 {
		r.at = append(r.at, b.fresh())
		return
	}
	t := inherit(r.at[i-1])
	for k, p := range r.pieces {
		if p.slot <= at {
			b.add(t, r.at[floor(r.lens, at-p.slot)], k, p.shift, p.v[b.pivot()])
			r.work.spend(b.size)
		}
	}
	b.close(t)
	if s := floor(r.slots, at); s >= 0 && r.slots[s] == at && r.wid > 0 {
		ripped := r.ripped[s].at[r.wid]
		b.maximal(ripped, func(j int) {
			if ripped[j].pivot <= t[j].pivot {
				return
			}
			v := b.vector(j, int(ripped[j].pivot))
			p := piece{slot: at, full: -1, table: s, entry: j, v: v, shift: b.shift(v)}
			b.add(t, r.at[0], len(r.pieces), p.shift, v[b.pivot()])
			r.pieces = append(r.pieces, p)
			r.work.spend(2 * b.size)
		})
		b.close(t)
	}
	r.at = append(r.at, t)
}

// patterns reads off the patterns of one source.
func (r *row) patterns(source int) []pattern {
	src := r.in.sources[source]
	pos := floor(r.lens, src.capL)
	var single [][]section
	r.box.maximal(r.at[pos], func(j int) { single = append(single, r.sections(pos, j)) })
	var out []pattern
	for _, leaves := range combine(single, src.leaves) {
		out = append(out, newPattern(r.in, source, leaves))
		r.work.spend(len(r.in.kinds))
	}
	return out
}

// combine lists every choice of n layouts, in no order.
func combine(layouts [][]section, n int) [][][]section {
	if n == 0 {
		return [][][]section{nil}
	}
	var out [][][]section
	for i := range layouts {
		for _, rest := range combine(layouts[i:], n-1) {
			out = append(out, append([][]section{layouts[i]}, rest...))
		}
	}
	return out
}

// sections walks back from an entry to the sections it was made of.
func (r *row) sections(pos, j int) []section {
	var out []section
	for pos > 0 {
		e := r.at[pos][j]
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
		e := t.at[wid][j]
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
