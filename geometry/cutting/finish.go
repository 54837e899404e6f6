package cutting

import (
	"slices"
	"sort"

	"slatwright/specs/unit"
)

// A group is a layout and the number of boards cut to it.
type group struct {
	layout
	n int
}

// gather puts equal layouts together: long parts first, then board by board
// in the order of the job.
func gather(ls []layout) []group {
	sort.SliceStable(ls, func(i, j int) bool { return compareLayouts(&ls[i], &ls[j]) < 0 })
	var out []group
	for i := range ls {
		if i > 0 && compareLayouts(&ls[i-1], &ls[i]) == 0 {
			out[len(out)-1].n++
			continue
		}
		out = append(out, group{ls[i], 1})
	}
	return out
}

func compareLayouts(a, b *layout) int {
	if c := compareLengths(b.source.thick, a.source.thick); c != 0 {
		return c
	}
	if c := compareLengths(longest(b), longest(a)); c != 0 {
		return c
	}
	if a.source.board != b.source.board {
		return a.source.board - b.source.board
	}
	if a.source.process != b.source.process {
		return int(a.source.process - b.source.process)
	}
	if len(a.rows) != len(b.rows) {
		return len(a.rows) - len(b.rows)
	}
	if a.plan != b.plan {
		return a.plan - b.plan
	}
	for i := range a.rows {
		x, y := a.rows[i], b.rows[i]
		if x.leaf != y.leaf {
			return x.leaf - y.leaf
		}
		if c := compareLengths(y.length, x.length); c != 0 {
			return c
		}
		if c := compareStrips(x.strips, y.strips); c != 0 {
			return c
		}
	}
	return 0
}

func compareLengths(a, b unit.Length) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

func longest(l *layout) unit.Length {
	var most unit.Length
	for _, c := range l.rows {
		for _, s := range c.strips {
			for _, k := range s {
				most = max(most, l.in.kinds[k].length)
			}
		}
	}
	return most
}

// finish turns the layouts of all instances into a plan.
func finish(job Job, ls []layout, plan *Plan) {
	groups := gather(ls)
	single := make([]layout, len(groups))
	for i := range groups {
		single[i] = groups[i].layout
	}
	settle(single)
	var all []layout
	for i := range groups {
		for range groups[i].n {
			all = append(all, single[i])
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return compareLayouts(&all[i], &all[j]) < 0 })
	a := assigner{job: job, next: map[*kind]*queue{}}
	plan.Cost = 0
	for i := range all {
		b := a.board(&all[i])
		plan.Cost += b.Board.Price
		if n := len(plan.Boards); n > 0 && sameBoards(plan.Boards[n-1], b) {
			plan.Boards[n-1].Count++
			continue
		}
		plan.Boards = append(plan.Boards, b)
	}
	plan.Offcuts = offcuts(job, all)
	plan.Steps = steps(job, plan)
	plan.Settings = settingsOf(plan)
	plan.Warnings = warnings(job, plan)
}

// An assigner hands out the pieces of each kind, order by order.
type assigner struct {
	job  Job
	next map[*kind]*queue
}

type queue struct{ want, taken int }

// place returns the next piece of a kind.
func (a *assigner) place(k *kind) Placed {
	q := a.next[k]
	if q == nil {
		q = &queue{}
		a.next[k] = q
	}
	for q.taken == k.wants[q.want].count+k.wants[q.want].spares {
		q.want++
		q.taken = 0
	}
	w := k.wants[q.want]
	p := a.job.Parts[w.part]
	out := Placed{Order: p.Order, Mark: p.Mark, Name: p.Name, Width: k.width, Length: k.length, Spare: q.taken >= w.count}
	if w.staves > 0 {
		out.Stave, out.Staves = q.taken%w.staves+1, w.staves
	}
	q.taken++
	return out
}

func (a *assigner) board(l *layout) BoardPlan {
	src := l.source
	b := BoardPlan{Board: a.job.Boards[src.board], Index: src.board, Count: 1, Process: src.process, Thickness: src.thick, Leaves: src.leaves}
	for _, c := range l.rows {
		s := Section{Leaf: c.leaf, Length: c.length, Ripped: c.ripped, Whole: c.rest}
		for _, parts := range c.strips {
			t := Strip{Width: l.in.kinds[parts[0]].width}
			for _, k := range parts {
				t.Parts = append(t.Parts, a.place(&l.in.kinds[k]))
			}
			s.Strips = append(s.Strips, t)
		}
		b.Sections = append(b.Sections, s)
	}
	return b
}

// sameBoards reports whether two boards are cut alike for the same orders.
func sameBoards(a, b BoardPlan) bool {
	if a.Index != b.Index || a.Process != b.Process || a.Thickness != b.Thickness || len(a.Sections) != len(b.Sections) {
		return false
	}
	for i := range a.Sections {
		x, y := a.Sections[i], b.Sections[i]
		if x.Leaf != y.Leaf || x.Length != y.Length || x.Whole != y.Whole || x.Ripped != y.Ripped || len(x.Strips) != len(y.Strips) {
			return false
		}
		for j := range x.Strips {
			if !samePlaced(x.Strips[j].Parts, y.Strips[j].Parts) {
				return false
			}
		}
	}
	return true
}

func samePlaced(a, b []Placed) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

func offcuts(job Job, ls []layout) []Offcut {
	count := map[Offcut]int{}
	var out []Offcut
	for i := range ls {
		for _, left := range ls[i].offcuts() {
			o := Offcut{Nominal: job.Boards[ls[i].source.board].Nominal, Thickness: ls[i].source.thick, Width: ls[i].source.width, Length: left}
			if left < job.Shop.KeepOffcut {
				continue
			}
			if count[o] == 0 {
				out = append(out, o)
			}
			count[o]++
		}
	}
	for i := range out {
		out[i].Count = count[out[i]]
	}
	slices.SortFunc(out, Offcut.Compare)
	return out
}
