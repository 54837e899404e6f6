package revision

import (
	"slatwright/specs/unit"
)

// recut finds larger old parts for what is still missing: the most that can be
// had, at the least cost. It sends one path of parts after the other from old
// lots that have some to new ones that need some, each the cheapest that there
// is; a path may take back what an earlier one sent. With every path at its
// cheapest the whole is at its cheapest too (successive shortest paths; common
// practice, no source).
func (m *matching) recut(minRip unit.Length) {
	f := &flow{m: m, sent: make([][]int, len(m.old)), step: make([][]*cost, len(m.old))}
	for i := range m.old {
		f.sent[i] = make([]int, len(m.new))
		f.step[i] = make([]*cost, len(m.new))
		for j := range m.new {
			// Lots that need nothing or have none left can be of no use.
			if m.old[i].Count > 0 && m.new[j].Count > 0 && (m.old[i].Name != panel || m.new[j].Name == panel) && fits(m.old[i].Size, m.new[j].Size, minRip) {
				f.step[i][j] = &cost{len(cuts(m.old[i].Size, m.new[j].Size)), volume(m.old[i].Size) - volume(m.new[j].Size)}
			}
		}
	}
	has, need := make([]int, len(m.old)), make([]int, len(m.new))
	for i := range m.old {
		has[i] = m.old[i].Count
	}
	for j := range m.new {
		need[j] = m.new[j].Count
	}
	for f.path(has, need) {
	}
	for j := range m.new {
		for i := range m.old {
			if f.sent[i][j] > 0 {
				m.move(Recut, i, j, f.sent[i][j])
			}
		}
	}
}

// fits reports whether an old part can be cut down to a new one's size. A part
// shorter than minRip is neither ripped nor planed.
func fits(old, new Size, minRip unit.Length) bool {
	return old.Small >= new.Small && old.Large >= new.Large && old.Length >= new.Length && old.Eased <= new.Eased &&
		(old.Length >= minRip || old.Small == new.Small && old.Large == new.Large)
}

// cuts lists what has to be cut.
func cuts(old, new Size) []Cut {
	var out []Cut
	for _, c := range []struct {
		cut      Cut
		old, new unit.Length
	}{
		{ToThickness, old.Small, new.Small}, {ToWidth, old.Large, new.Large},
		{ToLength, old.Length, new.Length}, {Edges, old.Eased, new.Eased},
	} {
		if c.old != c.new {
			out = append(out, c.cut)
		}
	}
	return out
}

// volume returns the wood in a part in whole cubic millimetres, rounded down.
func volume(s Size) int64 {
	v := unit.Volume(s.Small, s.Large, s.Length)
	return v.Div(v, unit.Volume(unit.Millimetre, unit.Millimetre, unit.Millimetre)).Int64()
}

// cost is what a recut takes: cuts first, then wood in cubic millimetres.
type cost struct {
	cuts  int
	waste int64
}

func (c cost) plus(d cost) cost  { return cost{c.cuts + d.cuts, c.waste + d.waste} }
func (c cost) minus(d cost) cost { return cost{c.cuts - d.cuts, c.waste - d.waste} }
func (c cost) less(d cost) bool {
	return c.cuts < d.cuts || c.cuts == d.cuts && c.waste < d.waste
}

// flow is how many parts of each old lot become each new one.
type flow struct {
	m    *matching
	sent [][]int
	step [][]*cost // nil where the old part will not do
}

// reach is how a lot is reached from an old lot that has parts to give.
type reach struct {
	known bool
	far   cost
	from  int // the lot on the other side, -1 at the beginning
}

// path sends parts along the cheapest path and reports whether there was one.
func (f *flow) path(has, need []int) bool {
	olds, news := f.search(has)
	end := -1
	for j := range news {
		if need[j] > 0 && news[j].known && (end < 0 || news[j].far.less(news[end].far)) {
			end = j
		}
	}
	if end < 0 {
		return false
	}
	n := need[end]
	for j := end; ; {
		i := news[j].from
		if olds[i].from < 0 {
			n = min(n, has[i])
			break
		}
		j = olds[i].from
		n = min(n, f.sent[i][j])
	}
	need[end] -= n
	for j := end; ; {
		i := news[j].from
		f.sent[i][j] += n
		if olds[i].from < 0 {
			has[i] -= n
			return true
		}
		j = olds[i].from
		f.sent[i][j] -= n
	}
}

// search finds the cheapest way to every lot, relaxing every step until nothing
// improves.
func (f *flow) search(has []int) (olds, news []reach) {
	olds, news = make([]reach, len(f.m.old)), make([]reach, len(f.m.new))
	for i := range olds {
		olds[i] = reach{known: has[i] > 0, from: -1}
	}
	for better := true; better; {
		better = false
		for i := range olds {
			for j := range news {
				if f.step[i][j] == nil {
					continue
				}
				if far := olds[i].far.plus(*f.step[i][j]); olds[i].known && (!news[j].known || far.less(news[j].far)) {
					news[j], better = reach{true, far, i}, true
				}
				if f.sent[i][j] == 0 || !news[j].known {
					continue
				}
				if far := news[j].far.minus(*f.step[i][j]); !olds[i].known || far.less(olds[i].far) {
					olds[i], better = reach{true, far, j}, true
				}
			}
		}
	}
	return olds, news
}
