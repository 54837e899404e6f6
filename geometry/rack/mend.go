package rack

import (
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/solve"
	"slatwright/specs/diag"
	"slatwright/specs/unit"
)

// adviser works out what one line alone would have to say. It sees a design
// twice, for an unsaid top clearance stands in the bounds of rules: with
// everything soft let go, and as drawn.
type adviser struct {
	free, drawn *stater
	least       []int           // what each count may not fall below; nil: anything goes
	kept        *solve.Solution // the soft values as drawn; nil: as wished
	bench       *bench          // what is there already; nil where nothing was measured
	unsure      bool            // a question about the present line was too hard
}

// answered reports whether the solver answered a question about the present
// line, and takes note where it did not.
func (a *adviser) answered(err error) bool {
	a.unsure = a.unsure || err != nil
	return err == nil
}

// none is what is said of the present line where no way to change it was found.
func (a *adviser) none() string {
	if a.unsure {
		return notWorkedOut
	}
	return NoChange
}

// mend is one way to change a line: what it would say with everything soft let
// go, and with every soft value kept; "" where nothing of that kind helps.
type mend struct{ free, kept string }

// mends lists the ways to change a line such that the lines on hold with it.
// None: no change of the line alone helps. Given is what the solver said of the
// line with everything soft let go.
func (a *adviser) mends(given solve.Change, on []solve.StatementID) []mend {
	id := given.Statement
	if a.free.isNamed(id) {
		return a.namedMends(id, on)
	}
	kept := a.keptOf(given, on)
	var out []mend
	if given.Free.HasBelow {
		out = append(out, mend{a.free.says(id, given.Free.Below, false), a.free.saysIf(kept.HasBelow, id, kept.Below, false)})
	}
	if given.Free.HasAbove {
		out = append(out, mend{a.free.says(id, given.Free.Above, true), a.free.saysIf(kept.HasAbove, id, kept.Above, true)})
	}
	return out
}

// keptOf is what a line would have to be as drawn.
func (a *adviser) keptOf(given solve.Change, on []solve.StatementID) solve.Nearest {
	if a.drawn == a.free {
		return given.Kept
	}
	drawn, err := a.drawn.m.Change(given.Statement, solve.Question{Statements: on, Least: a.least}, a.kept)
	if !a.answered(err) {
		return solve.Nearest{}
	}
	return drawn.Kept
}

// says words a line with another limit.
func (b *stater) says(id solve.StatementID, v unit.Length, above bool) string {
	st, l := b.m.Statements[id], b.lines[id]
	if b.wheres[id] {
		// left − right >= −v is left >= right − v, and likewise above.
		sign := " + "
		if v < 0 {
			sign = " - "
		}
		return l.text + sign + unit.Format{System: l.unit}.Unit(v.Abs())
	}
	name, _, _ := strings.Cut(l.text, " = ")
	way := " at most "
	switch {
	case st.HasLo && st.HasHi && st.Lo == st.Hi:
		way = " "
	case st.HasLo && st.HasHi && above:
		way = " up to "
	case st.HasLo && st.HasHi:
		way = " from "
	case above:
		way = " at least "
	}
	return name + way + b.figure(id, v)
}

func (b *stater) saysIf(ok bool, id solve.StatementID, v unit.Length, above bool) string {
	if !ok {
		return ""
	}
	return b.says(id, v, above)
}

// figure prints a limit of a line in the line's unit.
func (b *stater) figure(id solve.StatementID, v unit.Length) string {
	if b.m.Statements[id].Count != solve.None {
		return strconv.FormatInt(int64(v), 10)
	}
	return unit.Format{System: b.lines[id].unit}.Unit(v)
}

// namedMends tries the variants of a line that bounds nothing.
func (a *adviser) namedMends(id solve.StatementID, on []solve.StatementID) []mend {
	keep := a.keepable(id, on)
	ways, resort := a.free.ways(id)
	var out []mend
	for _, way := range ways {
		if m := a.along(way, on, keep); m.free != "" {
			out = append(out, m)
		}
	}
	if len(out) == 0 {
		if m := a.along(resort, on, keep); m.free != "" {
			out = append(out, m)
		}
	}
	return out
}

// along finds the first variants of a way that hold, free and as drawn.
func (a *adviser) along(way []variant, on []solve.StatementID, keep []solve.Wish) (m mend) {
	for _, v := range way {
		if m.free == "" && a.holds(v, on, nil) {
			m.free = v.says
		}
		if m.free == "" {
			continue
		}
		if v.with.topClear == a.free.settled.topClear {
			v.with.topClear = a.drawn.settled.topClear
		}
		if a.holds(v, on, keep) {
			m.kept = v.says
			break
		}
	}
	return m
}

// keepable lists the soft values that can be kept without the line.
func (a *adviser) keepable(id solve.StatementID, on []solve.StatementID) []solve.Wish {
	rest := slices.DeleteFunc(slices.Clone(on), func(s solve.StatementID) bool { return s == id })
	q, err := a.drawn.m.Keepable(solve.Question{Statements: rest, Least: a.least})
	if !a.answered(err) {
		return nil
	}
	return q.Keep
}

// holds reports whether the lines on hold with a variant. Of the wishes those
// count that the variant has as well: another bottle wishes for another gap.
func (a *adviser) holds(v variant, on []solve.StatementID, keep []solve.Wish) bool {
	forced := a.free.forced
	if forced != nil && v.bottles {
		forced = &demanded{forced.check, forced.group, true}
	}
	t := stateForced(v.design, v.with, forced)
	places := map[diag.Place]bool{}
	for _, id := range on {
		places[a.free.lines[id].place] = true
	}
	q := solve.Question{Least: a.least}
	for i, l := range t.lines {
		if places[l.place] {
			q.Statements = append(q.Statements, solve.StatementID(i))
		}
	}
	for _, w := range keep {
		if t.wishes(w) {
			q.Keep = append(q.Keep, w)
		}
	}
	ok, err := t.m.Feasible(q)
	return a.answered(err) && ok
}

// wishes reports whether some level has the wish.
func (b *stater) wishes(w solve.Wish) bool {
	return slices.ContainsFunc(b.m.Levels, func(l solve.Level) bool {
		return slices.ContainsFunc(l.Wishes, func(x solve.Wish) bool {
			step := max(1, b.m.Lengths[x.Length].Step)
			return x.Length == w.Length && x.Want.Nearest(step) == w.Want.Nearest(step)
		})
	})
}
