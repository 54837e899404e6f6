package rack

import (
	"math/big"
	"slices"
	"sort"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/table"
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
	freely         bool // a relation of the file speaks of it: more may help as well as less
	near           bool // sought by a "~" statement
	step           unit.Length
}

// choiceOf reads what the file says about a length. A range takes the value
// nearest to the default; the clearance need not be more than that, since less
// of it never stands in the way of anything.
func choiceOf(d *design.Design, name string) choice {
	c := stated(d, name)
	if !related(d, name) || !c.unsaid && c.lo == c.hi {
		return c
	}
	c.freely = true
	if l, said := d.Length(name); !said || l.Kind == design.AtLeast || l.Kind == design.Near {
		c.hi = max(c.hi, roomiest)
	}
	return c
}

// roomiest is the most that is tried of a setting which a relation speaks of.
const roomiest = 2 * unit.Inch

// related reports whether a relation of the file speaks of the length.
func related(d *design.Design, name string) bool {
	return slices.ContainsFunc(d.Where, func(w design.Where) bool {
		return slices.ContainsFunc(w.Terms, func(t design.Term) bool { return t.Name == name })
	})
}

// stated is the choice by what the file says about the length itself.
func stated(d *design.Design, name string) choice {
	def := standing(d, name)
	l, said := d.Length(name)
	if !said {
		return choice{lo: least(d, name), hi: def, sought: def, unsaid: true, step: d.Grid}
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

// least is what an unsaid length gives way to.
func least(d *design.Design, name string) unit.Length {
	def, _ := table.FindDefault(name)
	return def.Least(d.Units)
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
	b     *stater
	s     *solve.Solution
	bench *bench // what is there already; nil where nothing was measured
}

func try(d *design.Design, with settings) (a attempt, err error) {
	a.b = state(d, with)
	a.s, err = a.b.m.Best()
	return a, err
}

// solveDesign states and solves a design and settles the two settings, each
// nearest to what is sought of it, without losing anything that ranks before.
func solveDesign(d *design.Design) (attempt, error) {
	clear, eased := choiceOf(d, topClearance), choiceOf(d, slatEased)
	if clear.freely || eased.freely || eased.lo < eased.hi {
		return bestOf(d, clear, eased)
	}
	return settleClearance(d, eased.sought, clear)
}

// settleClearance finds the clearance. Less of it allows all that more does, so
// that halving finds the most that will do: of an unsaid one, the most with
// which the design holds; of a stated range or "~", the most with which the
// design loses nothing that ranks before it, no default and no bottle.
func settleClearance(d *design.Design, eased unit.Length, clear choice) (attempt, error) {
	first, err := try(d, settings{clear.sought, eased})
	if err != nil || clear.lo == clear.sought || clear.unsaid && first.s != nil {
		return first, err
	}
	least, err := try(d, settings{clear.lo, eased})
	if err != nil || least.s == nil {
		return first, err
	}
	if clear.near && wishes(d) {
		return bestOf(d, clear, choice{lo: eased, hi: eased, sought: eased, step: d.Grid})
	}
	values := clear.values()
	best, failed := least, error(nil)
	sort.Search(len(values)-1, func(i int) bool {
		a, err := try(d, settings{values[i], eased})
		if err != nil {
			failed = err
		}
		ok := a.s != nil && (clear.unsaid || slices.EqualFunc(a.rank()[:beforeWishes], least.rank()[:beforeWishes], same))
		if ok {
			best = a // each success lies nearer than the one before
		}
		return ok
	})
	return best, failed
}

// bestOf tries every value of both settings and keeps the best by all that is
// sought, in its order; without a solution, the attempt with what is sought.
func bestOf(d *design.Design, clear, eased choice) (attempt, error) {
	var best attempt
	var rank []*big.Rat
	for _, e := range eased.values() {
		for _, c := range clear.values() {
			a, err := try(d, settings{c, e})
			if err != nil {
				return a, err
			}
			if best.b == nil {
				best = a // the values sought
			}
			if a.s == nil {
				continue
			}
			r := a.rank()
			clear.count(r, c)
			eased.count(r, e)
			if rank == nil || slices.CompareFunc(r, rank, (*big.Rat).Cmp) < 0 {
				best, rank = a, r
			}
		}
	}
	return best, nil
}

// ranked are the levels in the order in which an attempt's rank lists them; the
// empty one is how far a setting is off what its range would have it.
var ranked = []string{levelStock, levelDefaults, levelCounts, levelBottles, levelSought, "", levelGap, levelRise, levelReveals, levelLeastWood}

// beforeWishes is how many of them rank before the file's "~" statements.
const beforeWishes = 4

// rank lists what each level came to, nought for one that the design lacks.
func (a attempt) rank() []*big.Rat {
	out := make([]*big.Rat, len(ranked))
	for i, name := range ranked {
		out[i] = new(big.Rat)
		for k, l := range a.b.m.Levels {
			if l.Name != name {
				continue
			}
			out[i].SetInt64(a.s.CountOptima[k])
			if v := a.s.Optima[k]; v != nil && len(l.Most) > 0 {
				out[i].Neg(v)
			} else if v != nil {
				out[i].Add(out[i], v)
			}
		}
	}
	return out
}

func same(a, b *big.Rat) bool { return a.Cmp(b) == 0 }

// count adds to a rank how far a setting is off what is sought of it: of an
// unsaid one among the defaults, of a range after the file's "~" statements,
// among which a "~" setting has been counted already.
func (c choice) count(rank []*big.Rat, at unit.Length) {
	level := ""
	switch {
	case c.unsaid:
		level = levelDefaults
	case c.near:
		return
	}
	sum := rank[slices.Index(ranked, level)]
	sum.Add(sum, new(big.Rat).SetInt64(int64((at - c.sought).Abs())))
}

// wishes reports whether the file has "~" statements beside those about settings.
func wishes(d *design.Design) bool {
	return slices.ContainsFunc(d.Lengths, func(l design.Length) bool {
		return l.Kind == design.Near && l.Name != topClearance && l.Name != slatEased
	}) || slices.ContainsFunc(d.Where, func(w design.Where) bool { return w.Op == "~" })
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
	v := &adviser{free: a.loosest(), drawn: a.b, bench: a.bench}
	c, err := v.free.m.Explain()
	if err != nil {
		return err
	}
	return v.clash(c)
}
