package rack

import (
	"math/big"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// The two lengths that stand inside the bounds of rules, under a square root.
// The solver takes them as given, so what they are is sought around it.
const (
	topClearance = "cell.top_clearance"
	slatEased    = "slat.eased"
)

// settings are the values that these two have while the rest is solved.
type settings struct{ topClear, eased unit.Length }

// choice is what a file allows such a length to be: values from Lo to Hi on the
// grid, the one sought first, and those further off only where it won't do.
type choice struct {
	lo, hi, sought unit.Length
	unsaid         bool // a default, which gives way only where nothing else helps
	near           bool // sought by a "~" statement
	step           unit.Length
}

// choiceOf reads what the file says about a length. A range takes the value
// nearest to the default; the clearance need not be more than that, since less
// of it never stands in the way of anything.
func choiceOf(d *design.Design, name string) choice {
	def := standing(d, name)
	l, said := d.Length(name)
	if !said {
		return choice{hi: def, sought: def, unsaid: true, step: d.Grid}
	}
	c := choice{lo: l.Lo, hi: l.Hi, step: d.Grid}
	switch l.Kind {
	case design.AtMost:
		c.lo = 0
	case design.AtLeast:
		c.hi = max(def, l.Lo)
	case design.Near:
		c.lo, c.near = 0, true
		c.hi = l.Hi
		c.sought = l.Lo
		return c
	}
	c.sought = max(c.lo, min(def, c.hi))
	return c
}

// values lists the values on the grid from the one sought down to the least,
// then those above it. The first is the one sought, be it on the grid or not.
func (c choice) values() []unit.Length {
	out := []unit.Length{c.sought}
	for v := (c.sought - 1).Down(c.step); v >= c.lo; v -= c.step {
		out = append(out, v)
	}
	for v := (c.sought + 1).Up(c.step); v <= c.hi; v += c.step {
		out = append(out, v)
	}
	return out
}

// attempt is a design stated with some settings and its best solution, nil
// where it has none.
type attempt struct {
	b *stater
	s *solve.Solution
}

func try(d *design.Design, with settings) (a attempt, err error) {
	a.b = state(d, with)
	a.s, err = a.b.m.Best()
	return a, err
}

// solveDesign states and solves a design. The easing is the first value of its
// choice that holds, with the clearance as small as need be; then the clearance
// is settled.
func solveDesign(d *design.Design) (attempt, error) {
	clear, eased := choiceOf(d, topClearance), choiceOf(d, slatEased)
	if eased.lo < eased.hi && !eased.unsaid {
		for _, e := range eased.values() {
			if state(d, settings{clear.lo, e}).holds() {
				return settleClearance(d, e, clear)
			}
		}
	}
	return settleClearance(d, eased.sought, clear)
}

// settleClearance finds the clearance. Less of it allows all that more does, so
// an unsaid one gives way by one grid step after the other until the design
// holds, and a stated range or "~" until the design loses nothing that ranks
// before it: no default and no bottle.
func settleClearance(d *design.Design, eased unit.Length, clear choice) (attempt, error) {
	first, err := try(d, settings{clear.sought, eased})
	if err != nil || clear.lo == clear.sought || clear.unsaid && first.s != nil {
		return first, err
	}
	least, err := try(d, settings{clear.lo, eased})
	if err != nil || least.s == nil {
		return first, err
	}
	best, lost := least, (*big.Rat)(nil)
	for _, v := range clear.values() {
		off := new(big.Rat).SetInt64(int64((v - clear.sought).Abs()))
		if lost != nil && off.Cmp(lost) >= 0 {
			break
		}
		a, err := try(d, settings{v, eased})
		switch {
		case err != nil:
			return a, err
		case a.s == nil || !clear.unsaid && !a.ranks(least):
			continue
		case !clear.near:
			return a, nil
		}
		// The other "~" statements share one sum of distances with this one.
		if sum := off.Add(off, a.sought()); lost == nil || sum.Cmp(lost) < 0 {
			best, lost = a, sum
		}
	}
	return best, nil
}

// loosest states the design with the least clearance that its file allows,
// which is the same where nothing is left to give way.
func (a attempt) loosest() *stater {
	clear := choiceOf(a.b.d, topClearance)
	if clear.lo == a.b.settled.topClear {
		return a.b
	}
	return state(a.b.d, settings{clear.lo, a.b.settled.eased})
}

// clash explains a design without a solution.
func (a attempt) clash() error {
	v := &adviser{free: a.loosest(), drawn: a.b}
	c, err := v.free.m.Explain()
	if err != nil {
		return err
	}
	return v.clash(c)
}

// ranks reports whether the solution keeps as many defaults and holds as many
// bottles as another's.
func (a attempt) ranks(other attempt) bool {
	for i, l := range a.b.m.Levels {
		switch l.Name {
		case levelStock, levelDefaults, levelBottles:
			if a.s.Optima[i].Cmp(other.s.Optima[i]) != 0 {
				return false
			}
		}
	}
	return true
}

// sought is how far the solution is off the file's "~" statements, all told.
func (a attempt) sought() *big.Rat {
	sum := new(big.Rat)
	for i, l := range a.b.m.Levels {
		if l.Name == levelSought {
			if a.s.Optima[i] != nil {
				sum.Add(sum, a.s.Optima[i])
			}
			sum.Add(sum, new(big.Rat).SetInt64(a.s.CountOptima[i]))
		}
	}
	return sum
}
