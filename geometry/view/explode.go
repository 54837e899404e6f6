package view

import (
	"cmp"
	"fmt"
	"slices"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Group is a set of solids that stay together in an exploded view. Parent is
// the index of an earlier group, or -1. A group moves along Axis, towards
// greater coordinates if Sign is 1 and towards lesser if it is -1; one with
// Sign 0 stays where its parent, or the room, has it.
type Group struct {
	IDs    []int
	Parent int
	Axis   space.Axis
	Sign   int
}

// Offset is how far a group moves from where it is when assembled.
type Offset = space.Point

// Explode returns how far each group moves so that none shows on another seen
// from d. In the order given, each group moves with its parent and then on
// along its own axis until it has gone past the parent, and on past every group
// already placed that it would show on, with gap in hand along the axis in each
// case. Offsets are the least that do so, to the base unit; rounds count as the
// boxes around them. A group that stays, or that has no solids, is not cleared
// of others.
//
// The error is that a group moves along the sight line, along which nothing can
// be parted, or names a parent that does not come before it.
func Explode(s Scene, groups []Group, d Direction, gap unit.Length) ([]Offset, error) {
	d.mustBeValid(false)
	f := newFrame(d)
	boxes := boxesOf(s, groups)
	offsets := make([]Offset, len(groups))
	for i, g := range groups {
		if g.Parent < -1 || g.Parent >= i {
			return nil, fmt.Errorf("group %d of the exploded view has group %d for a parent, which does not come before it", i, g.Parent)
		}
		if g.Parent >= 0 {
			offsets[i] = offsets[g.Parent]
		}
		if g.Sign == 0 {
			continue
		}
		if !f.showsAs(int(g.Axis)) {
			return nil, fmt.Errorf("group %d of the exploded view moves along %s, straight at the eye", i, g.Axis)
		}
		m := mover{frame: &f, group: g, gap: int64(gap) * f.k, own: f.lanes(boxes[i], offsets[i], int(g.Axis))}
		var e int64
		for j := range i {
			before := len(m.taken)
			m.meet(boxes[j], offsets[j])
			if j == g.Parent {
				e = m.past(before)
			}
		}
		offsets[i] = offsets[i].Add(step(g, m.free(e), f.k))
	}
	return offsets, nil
}

// step returns a way along g's axis, given in units of 1/k and rounded up.
func step(g Group, e, k int64) space.Point {
	l := unit.Length((e + k - 1) / k * int64(g.Sign))
	switch g.Axis {
	case space.X:
		return space.Point{X: l}
	case space.Y:
		return space.Point{Y: l}
	default:
		return space.Point{Z: l}
	}
}

// boxesOf returns the boxes around the solids of each group, in the scene's order.
func boxesOf(s Scene, groups []Group) [][]space.Box {
	in := map[int]int{}
	for i, g := range groups {
		for _, id := range g.IDs {
			in[id] = i
		}
	}
	out := make([][]space.Box, len(groups))
	add := func(id int, b space.Box) {
		if i, ok := in[id]; ok && !b.Empty() {
			out[i] = append(out[i], b)
		}
	}
	for _, b := range s.Boxes {
		add(b.ID, b.Box)
	}
	for _, r := range s.Rounds {
		add(r.ID, r.Bounds())
	}
	return out
}

// mover looks for a place for one group. It holds, for each pair of one of the
// group's boxes and one placed box, the open stretch of the way along the axis
// on which the one shows on the other, widened by the gap, in units of 1/k. Pairs
// whose lanes keep apart never do and are not looked at.
type mover struct {
	frame *frame
	group Group
	gap   int64
	own   []lane // of the group's boxes
	taken []span
}

// meet notes the stretches for the boxes of a placed group.
//
// Box F moved along the axis shows on box G when F's lower corner lies, along
// some sight line, in G grown by F's size: the same question as which part of an
// edge a box covers.
func (m *mover) meet(placed []space.Box, at Offset) {
	f, d := m.frame, int(m.group.Axis)
	back := f.sign[d]*int64(m.group.Sign) < 0
	sharing(m.own, f.lanes(placed, at, d), func(p, q *lane) {
		lo := q.lo
		for i := range lo {
			lo[i] -= p.hi[i] - p.lo[i]
		}
		e0, e1, ok := f.shadow(p.lo, d, lo, q.hi, false)
		if !ok {
			return
		}
		if back {
			e0, e1 = -e1, -e0
		}
		m.taken = append(m.taken, span{e0 - m.gap, e1 + m.gap})
	})
}

// past returns the least way that is beyond all stretches from the given index on.
func (m *mover) past(from int) int64 {
	var e int64
	for _, s := range m.taken[from:] {
		e = max(e, s.t1)
	}
	return e
}

// free returns the least way, at least e, that lies inside no stretch and whose
// rounding up to base units does not either.
func (m *mover) free(e int64) int64 {
	slices.SortFunc(m.taken, func(p, q span) int {
		return cmp.Or(cmp.Compare(p.t0, q.t0), cmp.Compare(p.t1, q.t1))
	})
	k := m.frame.k
	for _, s := range m.taken {
		e = (e + k - 1) / k * k
		if s.t0 < e && e < s.t1 {
			e = s.t1
		}
	}
	return (e + k - 1) / k * k
}

// Moves returns the offset of each solid for [Scene.Moved]; solids in no group
// stay.
func Moves(groups []Group, offsets []Offset) func(id int) space.Point {
	by := map[int]Offset{}
	for i, g := range groups {
		for _, id := range g.IDs {
			by[id] = offsets[i]
		}
	}
	return func(id int) space.Point { return by[id] }
}

// Trails returns the ways that groups have gone from their parents: for each
// box of a group that touches a box of the parent's when assembled, a line from
// the middle of the face they share on the parent to its place on the group.
// Where some of these faces lie square to the group's axis, only those count.
// The trail carries the ID of the group's box. Lines draws the trails once they
// are put into the moved scene; the shortest are the caller's to leave out.
func Trails(s Scene, groups []Group, offsets []Offset) []Trail {
	in := map[int]int{}
	for i, g := range groups {
		for _, id := range g.IDs {
			in[id] = i
		}
	}
	members := make([][]Solid, len(groups))
	for _, b := range s.Boxes {
		if i, ok := in[b.ID]; ok && !b.Box.Empty() {
			members[i] = append(members[i], b)
		}
	}
	var out []Trail
	for i, g := range groups {
		if g.Parent < 0 || offsets[i] == offsets[g.Parent] {
			continue
		}
		var square, other []Trail
		for _, pair := range beside(members[i], members[g.Parent]) {
			b, p := members[i][pair[0]], members[g.Parent][pair[1]]
			middle, normal, ok := contact(b.Box, p.Box)
			if !ok {
				continue
			}
			t := Trail{b.ID, middle.Add(offsets[g.Parent]), middle.Add(offsets[i])}
			if normal == g.Axis {
				square = append(square, t)
			} else {
				other = append(other, t)
			}
		}
		if len(square) == 0 {
			square = other
		}
		out = append(out, square...)
	}
	return out
}

// contact returns the middle of the face that a and b share and the axis it lies
// square to.
func contact(a, b space.Box) (middle space.Point, normal space.Axis, ok bool) {
	m := a.Meet(b)
	flat := 0
	for _, x := range [...]space.Axis{space.X, space.Y, space.Z} {
		switch l := m.Size().On(x); {
		case l < 0:
			return middle, normal, false
		case l == 0:
			normal = x
			flat++
		}
	}
	sum := m.Min.Add(m.Max)
	return space.Point{X: sum.X / 2, Y: sum.Y / 2, Z: sum.Z / 2}, normal, flat == 1
}
