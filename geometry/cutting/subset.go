package cutting

import "sort"

// gatherTops lists the glued-up parts that the kinds make up, in the order of
// the job.
func (in *instance) gatherTops() {
	at := map[int]int{}
	var order []int
	for k := range in.kinds {
		for _, u := range in.kinds[k].tops {
			if _, ok := at[u.top]; !ok {
				at[u.top] = 0
				order = append(order, u.top)
			}
		}
	}
	sort.Ints(order)
	in.tops = make([]top, len(order))
	for i, t := range order {
		at[t] = i
		in.tops[i].id = t
	}
	for k := range in.kinds {
		for _, u := range in.kinds[k].tops {
			t := &in.tops[at[u.top]]
			t.parts = u.parts
			t.ways = append(t.ways, way{k, u.staves})
		}
	}
}

// chosen returns the instance with one way chosen for each of its tops, and
// without the staves of the other ways.
func (in *instance) chosen(choice []int) *instance {
	type made struct{ top, kind, staves int }
	by := map[made]bool{}
	for t, top := range in.tops {
		w := top.ways[choice[t]]
		by[made{top.id, w.kind, w.staves}] = true
	}
	out := in.subset(func(k int, w want) bool { return w.staves == 0 || by[made{w.top, k, w.staves}] })
	for k := range out.kinds {
		out.kinds[k].need = out.kinds[k].most()
		out.kinds[k].tops = nil
	}
	out.tops = nil
	return out
}

// ordered returns the part of the instance that one order asks for.
func (in *instance) ordered(job Job, order string) *instance {
	return in.subset(func(_ int, w want) bool { return job.Parts[w.part].Order == order })
}

// subset returns the instance with the wants that are kept, and without the
// kinds that nothing is wanted of. Boards and grids stay.
func (in *instance) subset(keep func(kind int, w want) bool) *instance {
	out := *in
	out.kinds, out.l, out.w, out.ids = nil, nil, nil, nil
	for k, kd := range in.kinds {
		kept := kind{size: kd.size}
		for _, w := range kd.wants {
			if !keep(k, w) {
				continue
			}
			kept.wants = append(kept.wants, w)
			if n := w.count + w.spares; w.staves == 0 {
				kept.need += n
			} else {
				kept.staves(w.top, w.staves, n/w.staves)
			}
		}
		if len(kept.wants) > 0 {
			out.kinds = append(out.kinds, kept)
			out.l, out.w, out.ids = append(out.l, in.l[k]), append(out.w, in.w[k]), append(out.ids, in.ids[k])
		}
	}
	out.gatherTops()
	return &out
}

// number returns where each kind of another part of the instance stands in
// this one, -1 where it does not.
func (in *instance) number(from *instance) []int {
	at := map[int]int{}
	for k, id := range in.ids {
		at[id] = k
	}
	out := make([]int, len(from.kinds))
	for k, id := range from.ids {
		out[k] = -1
		if to, ok := at[id]; ok {
			out[k] = to
		}
	}
	return out
}

// moved renumbers a pattern's source and kinds; pieces of a kind that has no
// number (-1) are left out.
func moved(p pattern, source int, kinds []int, total int) pattern {
	out := pattern{source: source, counts: make([]int, total)}
	for _, leaf := range p.leaves {
		var row []section
		for _, s := range leaf {
			t := section{slot: s.slot, full: -1}
			if s.full >= 0 {
				if t.full = kinds[s.full]; t.full < 0 {
					continue
				}
			}
			for _, st := range s.strips {
				var items []item
				for _, it := range st.items {
					if k := kinds[it.kind]; k >= 0 {
						items = append(items, item{k, it.n})
					}
				}
				if len(items) > 0 {
					t.strips = append(t.strips, strip{items})
				}
			}
			if t.full >= 0 || len(t.strips) > 0 {
				t.count(out.counts)
				row = append(row, t)
			}
		}
		out.leaves = append(out.leaves, row)
	}
	return out
}
