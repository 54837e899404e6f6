package rack

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/solve"
	"slatwright/specs/diag"
	"slatwright/specs/unit"
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
func (b *stater) clash(c *solve.Conflict) *Clash {
	out := &Clash{}
	for _, p := range c.Problems {
		m := diag.Message{Place: diag.Place{Line: 1, Column: 1}, Text: "the relations of the rack contradict each other"}
		ordered := slices.Clone(p.Statements)
		slices.SortStableFunc(ordered, func(x, y solve.StatementID) int { return b.lines[x].place.Start - b.lines[y].place.Start })
		for i, id := range ordered {
			l := b.lines[id]
			out.Lines = append(out.Lines, LineText{l.place.Line, l.text})
			if i == 0 {
				m = diag.At(b.d.Source, l.place, "this cannot hold")
				if len(p.Statements) > 1 {
					m.Text = "these lines cannot all hold"
				}
			}
			m.Notes = append(m.Notes, fmt.Sprintf("line %d: %s", l.place.Line, l.text))
		}
		for _, r := range b.joining(p.Chain) {
			m.Notes = append(m.Notes, "since "+r)
		}
		changes := b.changes(p.Changes)
		out.Changes = append(out.Changes, changes...)
		m.Hint = hint(changes)
		out.messages = append(out.messages, m)
	}
	return out
}

// hint says what to do in one sentence.
func hint(changes []LineText) string {
	if len(changes) == 0 {
		return "no change of one of these lines alone helps"
	}
	var parts []string
	for _, c := range changes {
		parts = append(parts, fmt.Sprintf("%s (line %d)", c.Text, c.Line))
	}
	return "any one of these would do: " + strings.Join(parts, "; ")
}

// joining lists the relations that join the lines of a problem, each once.
func (b *stater) joining(c solve.Chain) []string {
	var out []string
	for _, i := range c.Relations {
		if _, stock := b.stocks[i]; stock {
			continue
		}
		out = append(out, b.m.Relations[i].Name)
	}
	for _, i := range c.Rules {
		out = append(out, b.m.Rules[i].Name)
	}
	out = slices.DeleteFunc(out, func(s string) bool { return s == "" })
	slices.Sort(out)
	return slices.Compact(out)
}

// changes says, for each line that helps, what it would have to say.
func (b *stater) changes(list []solve.Change) []LineText {
	var out []LineText
	for _, c := range list {
		if !c.Helps {
			continue
		}
		l := b.lines[c.Statement]
		for _, text := range b.changeTexts(c) {
			out = append(out, LineText{l.place.Line, text})
		}
	}
	slices.SortStableFunc(out, func(x, y LineText) int { return x.Line - y.Line })
	return out
}

// changeTexts gives one text for each way to change a line.
func (b *stater) changeTexts(c solve.Change) []string {
	st := b.m.Statements[c.Statement]
	l := b.lines[c.Statement]
	name, _, _ := strings.Cut(l.text, " = ")
	if st.Length == solve.None && st.Count == solve.None {
		return []string{name + " said differently, or left out"}
	}
	up, down := "at least ", "at most "
	if st.HasLo && st.HasHi && st.Lo == st.Hi {
		up, down = "", ""
	}
	print := func(v unit.Length) string {
		if st.Count != solve.None {
			return fmt.Sprint(int64(v))
		}
		return unit.Format{System: l.unit}.Unit(v)
	}
	var out []string
	add := func(way string, v, kept unit.Length, hasKept bool) {
		text := name + " " + way + print(v)
		if hasKept && kept != v {
			text += ", or " + print(kept) + " with every default and preference kept"
		}
		out = append(out, text)
	}
	if c.Free.HasBelow {
		add(down, c.Free.Below, c.Kept.Below, c.Kept.HasBelow)
	}
	if c.Free.HasAbove {
		add(up, c.Free.Above, c.Kept.Above, c.Kept.HasAbove)
	}
	return out
}
