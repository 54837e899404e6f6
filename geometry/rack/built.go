package rack

import (
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// What can still change where something was measured. A figure of [measured] is
// what the wood has: no advice changes it. Once glued work was measured, legs,
// slats and their places are there too; aprons and top are not cut yet, and what
// they are to become instead is said under [measured], beside what the rest is
// already: said elsewhere it would move what is glued.

// nothingLeft is said where everything that is in the way is there already.
const nothingLeft = "nothing that is still to be cut can put this right"

// bench is a design with measured lengths as it was and as it is.
type bench struct {
	d      *design.Design // the file's
	before *Rack          // as it was drawn before anything was measured
	glued  bool           // glued work was measured, not only stock
}

// isGlued reports whether glued work was measured: a length that is no size of
// the stock, with its figure.
func isGlued(d *design.Design) bool {
	return slices.ContainsFunc(d.Measured, func(m design.Measured) bool { return !m.Later && !isSection(m.Name) })
}

// uncut reports whether a length is one of parts that are cut after the ladders
// are glued, and can be said under [measured].
func uncut(name string) bool {
	return name == "apron.thickness" || name == "apron.height" || name == "apron.lift" || name == "top.thickness"
}

// offers says what a line would have to say; there is set where what it speaks
// of is there already, so that no change of it is worth a word.
func (a *adviser) offers(c solve.Change, on []solve.StatementID) (list []LineText, there bool) {
	id := c.Statement
	st, text := a.free.m.Statements[id], a.free.lines[id].text
	held := strings.HasSuffix(text, asBefore)
	switch {
	case a.bench == nil:
		return a.changes(c, on), false
	case strings.HasPrefix(text, "measured."), held && !a.bench.glued:
		return nil, true
	case !a.bench.glued:
		return a.changes(c, on), false
	case st.Length == solve.None, a.free.isNamed(id), a.free.wheres[id]:
		return nil, true // counts are glued; what else it is would move what is glued
	}
	name := a.free.m.Lengths[st.Length].Name
	for _, to := range []struct {
		has   bool
		v     unit.Length
		above bool
	}{{c.Free.HasBelow, c.Free.Below, false}, {c.Free.HasAbove, c.Free.Above, true}} {
		switch {
		case !to.has:
		case uncut(name):
			list = append(list, LineText{0, "measured." + name + " " + a.free.figure(id, to.v)})
		case !held && a.bench.stays(st, a.free.lines[id], to.v, to.above):
			list = append(list, LineText{a.free.lines[id].place.Line, a.free.says(id, to.v, to.above)})
		}
	}
	return list, len(list) == 0
}

// stays reports whether the glued work would be drawn as it is with another
// limit on a line of the file.
func (w *bench) stays(st solve.Statement, l line, v unit.Length, above bool) bool {
	again := *w.d
	again.Measured, again.Lengths = nil, slices.Clone(w.d.Lengths)
	found := false
	for i := range again.Lengths {
		s := &again.Lengths[i]
		if s.Place != l.place {
			continue
		}
		found = true
		switch {
		case st.HasLo && st.HasHi && st.Lo == st.Hi:
			s.Lo, s.Hi = v, v
		case above:
			s.Hi = v
		default:
			s.Lo = v
		}
	}
	if !found {
		return false
	}
	r, err := Build(&again)
	if err != nil || r.Counts != w.before.Counts {
		return false
	}
	return !slices.ContainsFunc(w.before.Lengths, func(l Solved) bool { return isLadder(l.Name) && r.Len(l.Name) != l.Value })
}

// isLadder reports whether a length is one that ladders are glued by.
func isLadder(name string) bool {
	part, size, _ := strings.Cut(name, ".")
	return part == "leg" || part == "slat" || name == "cell.rise" || part == "column" && strings.HasSuffix(size, ".rise")
}

// place says where a suggested line stands in the file.
func (l LineText) place() string {
	if l.Line == 0 {
		return "a line to add: not cut yet"
	}
	return "line " + strconv.Itoa(l.Line)
}
