package cutting

import (
	"sort"

	"slatwright/specs/unit"
)

// settle chooses among equal ways to cut each kind of board the one that rips
// the fewest pieces which are shorter than they need be, then asks for the fewest
// settings over the whole plan, then leaves the longest offcuts.
// Boards are taken in turn until none changes, so that the choice is a good
// one and never worse than the first, but not proven to be the best.
func settle(ls []layout) {
	uses := map[Setting]int{}
	variants := make([][]layout, len(ls))
	for i := range ls {
		variants[i] = ls[i].variants()
		count(uses, ls[i].settings(), 1)
	}
	for changed := true; changed; {
		changed = false
		for i := range ls {
			count(uses, ls[i].settings(), -1)
			best := ls[i]
			for _, v := range variants[i] {
				if better(uses, v, best) {
					best, changed = v, true
				}
			}
			ls[i] = best
			count(uses, best.settings(), 1)
		}
	}
}

func count(uses map[Setting]int, settings []Setting, n int) {
	for _, s := range settings {
		uses[s] += n
	}
}

// better compares two layouts of a board, the other boards' settings given.
func better(uses map[Setting]int, a, b layout) bool {
	if sa, sb := a.needlesslyShort(), b.needlesslyShort(); sa != sb {
		return sa < sb
	}
	na, nb := added(uses, a.settings()), added(uses, b.settings())
	if na != nb {
		return na < nb
	}
	oa, ob := a.offcuts(), b.offcuts()
	for i := range min(len(oa), len(ob)) {
		if oa[i] != ob[i] {
			return oa[i] > ob[i]
		}
	}
	if len(oa) != len(ob) {
		return len(oa) > len(ob)
	}
	return len(a.rows) < len(b.rows)
}

// needlesslyShort counts the sections too short to be fed past a saw by hand that
// are ripped on leaves with a rest which nobody would keep: uncut, it makes the
// last of them longer for nothing.
func (l *layout) needlesslyShort() int {
	n := 0
	for _, c := range l.rows {
		if left := l.left(c.leaf); c.ripped && c.length <= below("saw.short") && left > 0 && left < l.in.shop.KeepOffcut {
			n++
		}
	}
	return n
}

func added(uses map[Setting]int, settings []Setting) int {
	n := 0
	for _, s := range settings {
		if uses[s] == 0 {
			n++
		}
	}
	return n
}

// settings lists what has to be set for a layout, each once.
func (l *layout) settings() []Setting {
	var out []Setting
	add := func(k SettingKind, at unit.Length) {
		for _, s := range out {
			if s.Kind == k && s.At == at {
				return
			}
		}
		out = append(out, Setting{k, at})
	}
	switch l.source.process {
	case Planed:
		add(Thickness, l.source.thick)
	case Resawn:
		add(ResawFence, l.source.thick+l.in.shop.ResawAllowance)
		if l.in.shop.ResawAllowance > 0 {
			add(Thickness, l.source.thick)
		}
	}
	for _, c := range l.rows {
		if !c.rest {
			add(Stop, c.length)
		}
		for _, s := range c.strips {
			if c.ripped {
				add(Fence, l.in.kinds[s[0]].width)
			}
			for _, k := range s {
				if l.in.kinds[k].length != c.length {
					add(Stop, l.in.kinds[k].length)
				}
			}
		}
	}
	return out
}

// offcuts lists what is left at the end of each leaf in full width, longest
// first.
func (l *layout) offcuts() []unit.Length {
	var out []unit.Length
	for leaf := range l.source.leaves {
		rest := false
		for _, c := range l.rows {
			rest = rest || (c.leaf == leaf && c.rest)
		}
		if left := l.left(leaf); !rest && left > 0 {
			out = append(out, left)
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i] > out[j] })
	return out
}

// variants lists other ways to cut the same parts from the board: sections
// with the same rips made one, and the last section of each leaf left as long
// as the board goes on.
func (l *layout) variants() []layout {
	merged := l.merged()
	out := []layout{merged}
	for _, v := range []layout{*l, merged} {
		if r, ok := v.withRest(); ok {
			out = append(out, r)
		}
	}
	return out
}

// merged joins sections that are ripped alike, end to end.
func (l *layout) merged() layout {
	m := layout{in: l.in, plan: l.plan, source: l.source}
	for _, c := range l.rows {
		at := -1
		for i := range m.rows {
			if c.ripped && m.rows[i].ripped && m.rows[i].leaf == c.leaf && l.in.sameWidths(m.rows[i].strips, c.strips) {
				at = i
				break
			}
		}
		if at < 0 {
			c.strips = append([][]int(nil), c.strips...)
			m.rows = append(m.rows, c)
			continue
		}
		for i, s := range c.strips {
			m.rows[at].strips[i] = append(append([]int(nil), m.rows[at].strips[i]...), s...)
		}
	}
	m.tighten()
	return m
}

func (in *instance) sameWidths(a, b [][]int) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if in.kinds[a[i][0]].width != in.kinds[b[i][0]].width {
			return false
		}
	}
	return true
}

// withRest leaves the last ripped section of each leaf uncut at its far end,
// and drops the stop of a last section that is as long as the board.
func (l *layout) withRest() (layout, bool) {
	v := layout{in: l.in, plan: l.plan, source: l.source, rows: append([]cut(nil), l.rows...)}
	changed := false
	for leaf := range l.source.leaves {
		last := -1
		for i, c := range v.rows {
			if c.leaf == leaf && (c.ripped || c.length == l.source.usable) {
				last = i
			}
		}
		if last < 0 {
			continue
		}
		v.rows[last].length += v.left(leaf) + l.in.shop.Kerf
		v.rows[last].rest = true
		for ; last+1 < len(v.rows) && v.rows[last+1].leaf == leaf; last++ {
			v.rows[last], v.rows[last+1] = v.rows[last+1], v.rows[last]
		}
		changed = true
	}
	return v, changed
}
