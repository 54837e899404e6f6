package revision

import (
	"cmp"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// Use is what becomes of a part that was cut for the old rack, or what the new
// rack does for one.
type Use string

// The uses, best first.
const (
	Serves Use = "serves"   // same size and same seats
	Remark Use = "mark out" // same size, fixed to others at other places
	Recut  Use = "recut"    // larger: cut down to the new size
	Make   Use = "make"     // no old part will do
	Spare  Use = "left over"
)

// Cut is a cut that brings an old part to its new size.
type Cut string

// The cuts, in the order in which they are made.
const (
	ToThickness Cut = "thickness" // the small side of the section
	ToWidth     Cut = "width"     // the large side
	ToLength    Cut = "length"
	Edges       Cut = "edges" // eased further
)

// Move says what becomes of Count parts. Old is nil where Use is Make, New
// where Use is Spare.
type Move struct {
	Use      Use
	Count    int
	Old, New *Lot
	Cuts     []Cut // where Use is Recut
}

// Parts is what becomes of the parts cut for an old rack.
type Parts struct {
	Moves       []Move // by the parts of the new rack; what is left over comes last
	WoodChanged bool   // the species is another one, so that no old part serves
}

// CompareParts matches the parts cut for the old rack with those that the new
// one needs, so that as few as can be are made new. What the new rack measured
// of the stock the old parts were cut from is how large they are.
func CompareParts(old, new *rack.Rack) Parts {
	if old.Design.Wood.Species.ID != new.Design.Wood.Species.ID {
		m := &matching{}
		m.rest(alreadyCut(old, nil), lots(new))
		return Parts{Moves: merged(m.moves), WoodChanged: true}
	}
	return Parts{Moves: match(alreadyCut(old, found(old, new)), lots(new), new.Design.Shop.MinRipLength)}
}

// match finds a use for old parts. One old part becomes at most one new one. Of
// all ways to match, the one returned serves the most new parts; then leaves the
// most as they are; then the most that are only marked out anew; then takes the
// fewest cuts and turns the least wood to waste, to the cubic millimetre. A part
// shorter than minRip is cut to length only. A top is glued up, so that nothing but
// another top is made out of one.
//
// Parts of the same size are paired first. That costs nothing: where x and y
// are alike and x was to become z and w to become y, w is at least as large as
// z and can become z instead. What is left is a flow of least cost between
// sizes (flow.go).
func match(old, new []Lot, minRip unit.Length) []Move {
	m := &matching{old: slices.Clone(old), new: slices.Clone(new)}
	same := func(a, b *Lot) bool { return a.Size == b.Size && a.Seats == b.Seats }
	sized := func(a, b *Lot) bool { return a.Size == b.Size }
	named := func(like func(a, b *Lot) bool) func(a, b *Lot) bool {
		return func(a, b *Lot) bool { return a.Name == b.Name && like(a, b) }
	}
	m.pair(Serves, named(same))
	m.pair(Serves, whole(same))
	m.pair(Remark, named(sized))
	m.pair(Remark, whole(sized))
	m.recut(minRip)
	m.rest(m.old, m.new)
	return merged(m.moves)
}

// panel is the part that is glued up from staves: joint lines run through it.
const panel = "top"

// whole leaves out what would make another part out of a glued-up panel.
func whole(like func(a, b *Lot) bool) func(a, b *Lot) bool {
	return func(a, b *Lot) bool { return like(a, b) && (a.Name != panel || b.Name == panel) }
}

// matching is a matching being made; the counts of its lots are what is still
// without a use.
type matching struct {
	old, new []Lot
	moves    []Move
}

// rest makes what has no old part, and leaves over what has no use.
func (m *matching) rest(old, new []Lot) {
	for j := range new {
		m.add(Make, new[j].Count, nil, &new[j])
	}
	for i := range old {
		m.add(Spare, old[i].Count, &old[i], nil)
	}
}

// pair gives like parts to each other.
func (m *matching) pair(use Use, like func(a, b *Lot) bool) {
	for j := range m.new {
		for i := range m.old {
			if a, b := &m.old[i], &m.new[j]; like(a, b) {
				m.move(use, i, j, min(a.Count, b.Count))
			}
		}
	}
}

// move uses n parts of old lot i for new lot j.
func (m *matching) move(use Use, i, j, n int) {
	m.old[i].Count -= n
	m.new[j].Count -= n
	m.add(use, n, &m.old[i], &m.new[j])
}

func (m *matching) add(use Use, n int, old, new *Lot) {
	if n == 0 {
		return
	}
	move := Move{Use: use, Count: n, Old: old, New: new}
	if use == Recut {
		move.Cuts = cuts(old.Size, new.Size)
	}
	m.moves = append(m.moves, move)
}

// merged joins the moves between the same parts, whatever their seats, and puts
// them in the order of the new parts' marks, then of the uses, then of the old
// parts' marks; what is left over comes last. The lots in it have no seats and
// no count.
func merged(moves []Move) []Move {
	type key struct {
		use      Use
		old, new string
	}
	at := map[key]int{}
	var out []Move
	for _, m := range moves {
		k := key{m.Use, m.Old.mark(), m.New.mark()}
		if i, ok := at[k]; ok {
			out[i].Count += m.Count
			continue
		}
		at[k] = len(out)
		m.Old, m.New = m.Old.plain(), m.New.plain()
		out = append(out, m)
	}
	slices.SortFunc(out, func(a, b Move) int {
		return cmp.Or(
			cmp.Compare(rank(a.Use)/len(uses), rank(b.Use)/len(uses)),
			strings.Compare(a.New.mark(), b.New.mark()),
			cmp.Compare(rank(a.Use), rank(b.Use)),
			strings.Compare(a.Old.mark(), b.Old.mark()),
		)
	})
	return out
}

// uses are the uses that a part of the new rack has, in order.
var uses = []Use{Serves, Remark, Recut, Make}

// rank orders the uses; Spare, which is none of them, comes behind.
func rank(u Use) int {
	if i := slices.Index(uses, u); i >= 0 {
		return i
	}
	return len(uses)
}

func (l *Lot) mark() string {
	if l == nil {
		return ""
	}
	return l.Mark
}

func (l *Lot) plain() *Lot {
	if l == nil {
		return nil
	}
	return &Lot{Mark: l.Mark, Name: l.Name, Size: l.Size, Measured: l.Measured}
}
