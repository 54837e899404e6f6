package solve

import (
	"slices"

	"slatwright/specs/unit"
)

// Change is what changing one statement alone would do.
type Change struct {
	Statement StatementID
	// Helps says that the rest holds once this statement is gone, with what
	// hangs on it. If it does not, no change of this statement alone helps.
	Helps bool
	// Free are the least changes that do, whatever becomes of the wishes; Kept
	// those that do with every wish kept that can be kept without this
	// statement ("as drawn").
	Free, Kept Nearest
}

// Nearest are the nearest values that will do on either side. For an exact
// statement they are values of its length or count; for a limit, only Above is
// a new upper limit and only Below a new lower one. Values of lengths are
// whole multiples of the statement's RepairStep. Not Has: no value will do, or
// the statement is about no length or count.
type Nearest struct {
	Below, Above       unit.Length // plain numbers for a count
	HasBelow, HasAbove bool
}

// change works out what a statement would have to give for the rest to hold.
// keep fixes the soft values in a question as far as that can be, all but the
// statement's own.
func (e *engine) change(s StatementID, rest []StatementID, vary asker, keep func(*ask, Statement)) Change {
	c := Change{Statement: s}
	if _, f := vary(e.m, e.m.only(rest)).run(); f == nil {
		return c
	}
	c.Helps = true
	st := e.m.Statements[s]
	if st.Length == None && st.Count == None {
		return c
	}
	// With another value the statement still stands, and so does what hangs
	// on it.
	q := vary(e.m.unbound(s), e.m.only(append(slices.Clone(rest), s)))
	drawn := q.clone()
	keep(drawn, st)
	c.Kept = nearest(drawn, st, Nearest{})
	c.Free = nearest(q, st, c.Kept)
	return c
}

// unbound is the model with a statement that no longer limits anything.
func (m *Model) unbound(s StatementID) *Model {
	c := *m
	c.Statements = slices.Clone(m.Statements)
	c.Statements[s].HasLo, c.Statements[s].HasHi, c.Statements[s].LiftsGrid = false, false, false
	return &c
}

// nearest finds the nearest values for a statement that limits nothing in the
// question. Known are values that will do: only nearer ones are searched for,
// which is much less work where soft values left little to search before.
func nearest(q *ask, st Statement, known Nearest) (n Nearest) {
	exact := st.HasLo && st.HasHi && st.Lo == st.Hi
	step := st.repairStep()
	if exact || st.HasHi {
		n.Above, n.HasAbove = known.Above, known.HasAbove
		v, ok := extreme(q, st, false, func(d *span) {
			switch {
			case exact:
				d.lo = max(d.lo, int64(st.Lo)+1)
			case st.HasLo:
				d.lo = max(d.lo, int64(st.Lo))
			}
			if known.HasAbove {
				d.hi = min(d.hi, int64(known.Above)-step)
			}
		}, exact)
		if ok && (exact || v > st.Hi) {
			n.Above, n.HasAbove = v, true
		}
	}
	if exact || st.HasLo {
		n.Below, n.HasBelow = known.Below, known.HasBelow
		v, ok := extreme(q, st, true, func(d *span) {
			switch {
			case exact:
				d.hi = min(d.hi, int64(st.Hi)-1)
			case st.HasHi:
				d.hi = min(d.hi, int64(st.Hi))
			}
			if known.HasBelow {
				d.lo = max(d.lo, int64(known.Below)+step)
			}
		}, exact)
		if ok && (exact || v < st.Lo) {
			n.Below, n.HasBelow = v, true
		}
	}
	return n
}

// repairStep is the step of the values to suggest: 1 for a count.
func (st Statement) repairStep() int64 {
	if st.Length == None {
		return 1
	}
	return max(1, int64(st.RepairStep))
}

// extreme finds the least or greatest value of a statement's length or count
// after cut has narrowed its range. An exact figure must itself be a multiple
// of the repair step; a limit is rounded to one on the far side.
func extreme(q *ask, st Statement, greatest bool, cut func(*span), exact bool) (unit.Length, bool) {
	q = q.clone()
	g := goal{kind: lengthSize, i: int(st.Length)}
	step := st.repairStep()
	var d *span
	if st.Length == None {
		g = goal{kind: countSize, i: int(st.Count)}
		d = &q.counts[st.Count]
	} else {
		d = &q.lengths[st.Length]
		if st.LiftsGrid && d.step > 1 {
			d.step = 1
		}
		if exact {
			d.step = commonMultiple(d.step, step)
		}
	}
	cut(d)
	if greatest {
		g.kind++ // countSize to countMost, lengthSize to lengthMost
	}
	q.goals = []goal{g}
	_, f := q.run()
	if f == nil {
		return 0, false
	}
	v := f.values[0].quo(whole(step)).ceil() // a greatest value comes negated: this rounds it down
	if greatest {
		v = v.neg()
	}
	n, ok := v.mul(whole(step)).int()
	return unit.Length(n), ok
}

// commonMultiple of two steps, where 0 stands for no grid.
func commonMultiple(a, b int64) int64 {
	if a == 0 {
		return b
	}
	if m, ok := mulInt(a/gcd(a, b), b); ok {
		return m
	}
	return far // no multiple but nought is in reach
}

// soft is a wish for a length or a count, taken as a fixed value.
type soft struct {
	length LengthID
	count  CountID
	at     unit.Length
}

// asWished fixes the wishes of all levels in their order, each where it can be
// had together with those before it.
func (e *engine) asWished(q *ask, st Statement) { q.keepAll(notOf(st, e.m.softs())) }

// softs lists the wishes of all levels in their order. What is wished between
// two lines of a length's grid is taken as had on the nearer one.
func (m *Model) softs() []soft {
	var all []soft
	for _, l := range m.Levels {
		for _, w := range l.CountWishes {
			all = append(all, soft{None, w.Count, unit.Length(w.Want)})
		}
		for _, w := range l.Wishes {
			at := w.Want
			if step := m.Lengths[w.Length].Step; step > 1 {
				at = at.Nearest(step)
			}
			all = append(all, soft{w.Length, None, at})
		}
	}
	return all
}

// notOf leaves out the soft values of what a statement is about.
func notOf(st Statement, list []soft) []soft {
	return slices.DeleteFunc(slices.Clone(list), func(s soft) bool {
		return s.length == st.Length && s.count == st.Count
	})
}

// keepAll fixes soft values in order as far as a solution remains, in halves,
// so that a list that can be kept whole costs one question.
func (q *ask) keepAll(list []soft) {
	if len(list) == 0 {
		return
	}
	try := q.clone()
	ok := true
	for _, s := range list {
		ok = ok && try.fix(s)
	}
	if ok {
		if _, f := try.clone().run(); f != nil {
			*q = *try
			return
		}
	}
	if half := len(list) / 2; half > 0 {
		q.keepAll(slices.Clone(list[:half]))
		q.keepAll(list[half:])
	}
}

// fix gives a soft value to its length or count; false when the range or the
// grid forbids it.
func (q *ask) fix(s soft) bool {
	if s.length == None {
		d := &q.counts[s.count]
		if int64(s.at) < d.lo || int64(s.at) > d.hi {
			return false
		}
		d.lo, d.hi = int64(s.at), int64(s.at)
		return true
	}
	return q.pin([]Wish{{s.length, s.at}})
}
