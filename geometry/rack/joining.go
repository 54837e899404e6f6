package rack

import (
	"fmt"
	"slices"

	"slatwright/geometry/solve"
	"slatwright/specs/unit"
)

// joining tells how the lines of a problem come to contradict each other. Where
// ranges narrowed one after the other show it, each step says what it leaves;
// else the relations are named that can't all hold with the lines.
func (b *stater) joining(c solve.Chain) []string {
	if c.Joined {
		return b.steps(c.Steps)
	}
	var out []string
	for _, i := range c.Relations {
		if _, stock := b.stocks[i]; !stock {
			out = append(out, b.m.Relations[i].Name)
		}
	}
	for _, i := range c.Rules {
		out = append(out, b.m.Rules[i].Name)
	}
	out = slices.DeleteFunc(out, func(s string) bool { return s == "" })
	slices.Sort(out)
	out = slices.Compact(out)
	for i := range out {
		out[i] = "since " + out[i]
	}
	return out
}

// steps words the steps of a chain.
func (b *stater) steps(list []solve.Step) []string {
	var out []string
	for i, s := range list {
		if superseded(s, list[i+1:]) {
			continue
		}
		why := ""
		switch {
		case s.Relation >= 0:
			why = b.m.Relations[s.Relation].Name
		case s.Rule >= 0:
			why = b.m.Rules[s.Rule].Name
		}
		leaves := b.leaves(s)
		switch {
		case why == "" && leaves == "":
			continue
		case why == "":
			out = append(out, "since "+leaves)
		case leaves == "":
			continue // an upper limit that only the model's own range gives
		default:
			out = append(out, "since "+why+": "+leaves)
		}
	}
	return out
}

// superseded reports whether a later step says more about the same length or
// count.
func superseded(s solve.Step, later []solve.Step) bool {
	return (s.Length != solve.None || s.Count != solve.None) && slices.ContainsFunc(later, func(l solve.Step) bool {
		return l.Length == s.Length && l.Count == s.Count
	})
}

// leaves says what a step leaves of a range; "" where that is about nothing
// that has a name in the file.
func (b *stater) leaves(s solve.Step) string {
	switch {
	case s.Count != solve.None:
		name := b.m.Counts[s.Count].Name
		switch guard := b.m.Counts[s.Count]; {
		case s.Hi < s.Lo:
			return "no number is left for " + name
		case s.Hi == s.Lo:
			return fmt.Sprintf("%s is %d", name, s.Lo)
		case int(s.Lo) <= guard.Lo:
			return fmt.Sprintf("%s is at most %d", name, s.Hi)
		case int(s.Hi) >= guard.Hi:
			return fmt.Sprintf("%s is at least %d", name, s.Lo)
		}
		return fmt.Sprintf("%s is %d to %d", name, s.Lo, s.Hi)
	case s.Length == solve.None:
		return b.short(s)
	case b.helpers[s.Length]:
		if s.Hi < s.Lo {
			return "which cannot be"
		}
		return ""
	}
	l, f := b.m.Lengths[s.Length], b.d.Format()
	beyond := min(b.beyond(), l.Hi-l.Step+1)
	switch {
	case s.Hi < s.Lo:
		return b.noValue(l.Name, s.Lo, s.Hi)
	case s.Hi == s.Lo:
		return l.Name + " is " + f.Unit(s.Lo)
	case s.Lo <= l.Lo && s.Hi >= beyond:
		return ""
	case s.Lo <= l.Lo:
		return l.Name + " is at most " + f.Unit(s.Hi)
	case s.Hi >= beyond:
		return l.Name + " is at least " + f.Unit(s.Lo)
	}
	return l.Name + " is " + f.Text(s.Lo) + " to " + f.Unit(s.Hi)
}

// beyond is an upper limit that nothing in the file can be the cause of: ten
// times what any line states.
func (b *stater) beyond() unit.Length {
	most := unit.Length(0)
	for _, s := range b.m.Statements {
		if s.Length != solve.None {
			most = max(most, s.Hi, s.Lo)
		}
	}
	if most == 0 {
		return longest / 2
	}
	return min(10*most, largest/2)
}

// noValue says which limits leave nothing between them.
func (b *stater) noValue(name string, least, most unit.Length) string {
	f := b.d.Format()
	return fmt.Sprintf("%s would have to be at least %s and at most %s", name, f.Unit(least), f.Unit(most))
}

// short says by how much a relation or a rule cannot be met.
func (b *stater) short(s solve.Step) string {
	f := b.d.Format()
	if s.Relation >= 0 {
		r := b.m.Relations[s.Relation]
		if t := r.Terms[0]; len(r.Terms) == 1 && t.Length != solve.None && t.Count == solve.None && r.Op == solve.AtLeast {
			name := b.m.Lengths[t.Length].Name
			if t.Coef > 0 {
				return name + " would have to be at least " + f.Unit((-r.Const).Up(unit.Length(t.Coef))/unit.Length(t.Coef))
			}
			return name + " would have to be at most " + f.Unit(r.Const.Down(unit.Length(-t.Coef))/unit.Length(-t.Coef))
		}
	}
	if s.Short == 0 || s.Relation >= 0 && countsOnly(b.m.Relations[s.Relation]) {
		return "which cannot be"
	}
	return "that is " + f.Unit(s.Short) + " short"
}

// countsOnly reports whether a relation is about counts alone.
func countsOnly(r solve.Relation) bool {
	return !slices.ContainsFunc(r.Terms, func(t solve.Term) bool { return t.Length != solve.None })
}
