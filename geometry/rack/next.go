package rack

import (
	"errors"
	"fmt"
	"slices"

	"slatwright/geometry/solve"
	"slatwright/specs/unit"
)

// nexts tells, for each count that the file leaves open, what stops one more.
func (b *stater) nexts(s *solve.Solution) ([]Next, error) {
	var ids []solve.CountID
	for _, g := range b.groups {
		for _, id := range []solve.CountID{g.count, g.rows} {
			if b.isOpen(id) && !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	var out []Next
	for _, id := range ids {
		n, err := b.m.OneMore(id, s)
		switch {
		case errors.Is(err, solve.ErrTooHard):
			// The rack itself is proven; only this piece of advice is not found.
			out = append(out, Next{Count: b.m.Counts[id].Name, Value: s.Counts[id] + 1})
		case err != nil:
			return nil, err
		default:
			out = append(out, b.next(n))
		}
	}
	return out, nil
}

// next puts the solver's answer in the words of the file.
func (b *stater) next(n solve.Next) Next {
	out := Next{Count: b.m.Counts[n.Count].Name, Value: n.Value}
	for _, p := range n.Problems {
		for _, c := range p.Changes {
			l := b.lines[c.Statement]
			needs := b.needs(c)
			if n.SoftOnly {
				needs = b.needsKept(c)
			}
			out.StoppedBy = append(out.StoppedBy, Stop{Line: l.place.Line, Text: l.text, Needs: needs})
		}
	}
	if n.BentUnknown {
		out.StoppedBy = append(out.StoppedBy, Stop{Text: "defaults and preferences", Needs: "which of them would have to give way was not worked out"})
	}
	for _, bent := range n.Bent {
		from, to := fromRat(bent.From.Num().Int64(), bent.From.Denom().Int64()), fromRat(bent.To.Num().Int64(), bent.To.Denom().Int64())
		f := b.d.Format()
		out.StoppedBy = append(out.StoppedBy, Stop{
			Text:  b.m.Lengths[bent.Length].Name + " kept at " + f.Text(from),
			Needs: "would become " + f.Text(to),
		})
	}
	return out
}

func fromRat(num, den int64) unit.Length { return unit.Length(num / den) }

// needs says how much a line would have to give, twice: with everything soft
// let go, and with every soft value kept.
func (b *stater) needs(c solve.Change) string {
	if !c.Helps {
		return "no change of this line alone helps"
	}
	free, ok := b.give(c, c.Free)
	if !ok {
		return "said differently, or left out"
	}
	if kept, ok := b.give(c, c.Kept); ok && kept != free {
		return free + "; " + kept + " as drawn"
	}
	return free
}

// needsKept says how much a line would have to give as drawn.
func (b *stater) needsKept(c solve.Change) string {
	if kept, ok := b.give(c, c.Kept); ok {
		return kept + " as drawn; nothing if defaults and preferences give way"
	}
	return "nothing if defaults and preferences give way"
}

// give returns the lesser of the ways to move a line.
func (b *stater) give(c solve.Change, n solve.Nearest) (string, bool) {
	st, l := b.m.Statements[c.Statement], b.lines[c.Statement]
	print := func(v unit.Length) string {
		if st.Count != solve.None {
			return fmt.Sprint(int64(v))
		}
		return unit.Format{System: l.unit}.Text(v)
	}
	switch {
	case n.HasAbove && (!n.HasBelow || n.Above-st.Hi <= st.Lo-n.Below):
		return print(n.Above-st.Hi) + " more", true
	case n.HasBelow:
		return print(st.Lo-n.Below) + " less", true
	}
	return "", false
}
