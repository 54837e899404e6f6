package rack

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/solve"
	"slatwright/specs/diag"
)

// LineText is a line of the file with what is said of it.
type LineText struct {
	Line int
	Text string
}

// Clash is the error of a design whose lines contradict each other: for each
// separate problem the fewest lines that cannot all hold, and what changing
// one of them alone would do.
type Clash struct {
	Lines    []LineText // in the order of the file within each problem
	Changes  []LineText
	messages diag.List
}

// Error returns the problems in short.
func (c *Clash) Error() string { return c.messages.Error() }

// Messages returns one message for each separate problem.
func (c *Clash) Messages() diag.List { return c.messages }

// clash puts the solver's conflict in the words of the file.
func (a *adviser) clash(c *solve.Conflict) *Clash {
	b := a.free
	var named []solve.StatementID
	for _, p := range c.Problems {
		named = append(named, p.Statements...)
	}
	rest := slices.DeleteFunc(b.all(), func(s solve.StatementID) bool { return slices.Contains(named, s) })
	out := &Clash{}
	for _, p := range c.Problems {
		on := append(slices.Clone(p.Statements), rest...) // the other problems are taken as put right
		lines := b.inFileOrder(p.Statements)
		var changes []LineText
		for _, c := range p.Changes {
			more, there := a.offers(c, on)
			if there {
				continue // what is built already is no line to change
			}
			if len(more) == 0 && len(lines) > 1 && a.idle(c.Statement, on) {
				lines = slices.DeleteFunc(lines, func(id solve.StatementID) bool { return id == c.Statement })
				continue // left out, it would be in the way as much
			}
			if len(more) == 0 {
				more = []LineText{{b.lines[c.Statement].place.Line, a.none()}}
			}
			changes = append(changes, more...)
		}
		grid, said := gridPart{}, b.linesOf(lines)
		if a.bench == nil || !a.bench.glued {
			grid = b.gridOf(p.Statements, on)
		}
		if grid.line.Line > 0 {
			said = append(said, grid.line)
			slices.SortStableFunc(said, func(x, y LineText) int { return x.Line - y.Line })
			changes = append(changes, grid.change)
		}
		if len(changes) == 0 && a.bench != nil && a.bench.glued {
			changes = []LineText{{0, nothingLeft}}
		}
		slices.SortStableFunc(changes, func(x, y LineText) int { return x.Line - y.Line })
		out.Lines, out.Changes = append(out.Lines, said...), append(out.Changes, changes...)
		out.messages = append(out.messages, b.message(lines, said, append(b.joining(p.Chain), grid.note...), changes))
	}
	return out
}

// all lists every statement.
func (b *stater) all() []solve.StatementID {
	out := make([]solve.StatementID, len(b.m.Statements))
	for i := range out {
		out[i] = solve.StatementID(i)
	}
	return out
}

func (b *stater) inFileOrder(list []solve.StatementID) []solve.StatementID {
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(x, y solve.StatementID) int { return b.lines[x].place.Start - b.lines[y].place.Start })
	return list
}

func (b *stater) linesOf(list []solve.StatementID) (out []LineText) {
	for _, id := range list {
		out = append(out, LineText{b.lines[id].place.Line, b.lines[id].text})
	}
	return out
}

// message is what is printed about one problem.
func (b *stater) message(lines []solve.StatementID, said []LineText, notes []string, changes []LineText) diag.Message {
	m := diag.Message{Place: diag.Place{Line: 1, Column: 1}, Text: "the relations of the rack contradict each other"}
	if len(lines) > 0 {
		m = diag.At(b.d.Source, b.lines[lines[0]].place, "this cannot hold")
	}
	if len(said) > 1 {
		m.Text = "these lines cannot all hold"
	}
	for _, l := range said {
		m.Notes = append(m.Notes, fmt.Sprintf("line %d: %s", l.Line, l.Text))
	}
	m.Notes = append(m.Notes, notes...)
	m.Hint = Advice(changes)
	return m
}

// NoChange is said of a line that cannot put a problem right by itself.
const NoChange = "no change of this line alone helps"

// notWorkedOut is said instead where the search for a change took too long.
const notWorkedOut = "whether a change of this line alone helps was not worked out"

// Advice says in one sentence which line to change, and to what.
func Advice(changes []LineText) string {
	var ways, none, open []string
	for _, c := range changes {
		switch c.Text {
		case nothingLeft:
			return nothingLeft
		case NoChange:
			none = append(none, strconv.Itoa(c.Line))
		case notWorkedOut:
			open = append(open, strconv.Itoa(c.Line))
		default:
			ways = append(ways, fmt.Sprintf("%s (%s)", c.Text, c.place()))
		}
	}
	text := ""
	switch len(ways) {
	case 0:
		if len(open) > 0 {
			return "no change of one of these lines alone is known to help"
		}
		return "no change of one of these lines alone helps"
	case 1:
		text = "this would do: " + ways[0]
	default:
		text = "any one of these would do: " + strings.Join(ways, "; ")
	}
	if len(none) > 0 {
		text += "; no change of line " + strings.Join(none, " or ") + " alone helps"
	}
	if len(open) > 0 {
		text += "; whether a change of line " + strings.Join(open, " or ") + " alone helps was not worked out"
	}
	return text
}

// changes says what a line would have to say; nothing where no change of it
// alone helps.
func (a *adviser) changes(c solve.Change, on []solve.StatementID) (out []LineText) {
	id := c.Statement
	a.unsure = false
	for _, m := range a.mends(c, on) {
		text := m.free
		if m.kept != "" && m.kept != m.free {
			text += ", or " + strings.TrimPrefix(m.kept, a.free.nameOf(id)+" ") + " with every default and preference kept"
		}
		out = append(out, LineText{a.free.lines[id].place.Line, text})
	}
	return out
}

// nameOf is what a line is about: what stands before its "=".
func (b *stater) nameOf(id solve.StatementID) string {
	name, _, _ := strings.Cut(b.lines[id].text, " = ")
	return name
}
