package rack

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/solve"
	"slatwright/specs/unit"
)

// requirement is one thing that a bottle asks of its cell: a linear relation,
// or a rule whose bound hangs on the gap.
type requirement struct {
	name    string
	terms   []solve.Term
	add     unit.Length // constant beside the terms
	gap     string      // the length the bound hangs on; "" for a relation
	formula string      // what the bound is, in words and figures, for explanations
	falling bool
	bound   func(gap unit.Length) unit.Length
	owners  []solve.StatementID
}

// Where a bottle's centre of gravity lies along the slats it has this much in
// hand at either end (common practice, no source).
const gravityMargin = 20 * unit.Millimetre

// require states what the bottles ask for. A requirement whose lengths are all
// fixed by exact figures is the maker's own choice: the check judges it, and
// the drawing still comes.
func (b *stater) require() {
	fixed, err := b.m.Determined()
	if err != nil {
		panic("rack: " + err.Error())
	}
	for i, g := range b.groups {
		for _, r := range b.requirements(g) {
			if own := (choiceMade{i, r}); b.settledBy(fixed, r) && !b.insists(own) {
				b.own = append(b.own, own)
			} else {
				b.demand(r)
			}
		}
	}
}

// choiceMade is a requirement that the maker's own figures decide.
type choiceMade struct {
	group int // into groups
	requirement
}

// code names the check that judges the requirement.
func (r requirement) code() string {
	code, _, _ := strings.Cut(r.name, ":")
	return code
}

// settledBy reports whether exact figures fix every length of r. A clearance
// that the file leaves unsaid is the check's own figure and does not count.
func (b *stater) settledBy(fixed []bool, r requirement) bool {
	ids := []solve.LengthID{}
	if r.gap != "" {
		ids = append(ids, b.length[r.gap])
	}
	for _, t := range r.terms {
		if t.Length != solve.None {
			ids = append(ids, t.Length)
		}
	}
	return !slices.ContainsFunc(ids, func(id solve.LengthID) bool { return !fixed[id] && !b.soft[id] })
}

// demand hands a requirement to the solver.
func (b *stater) demand(r requirement) {
	if r.gap == "" {
		b.m.Relate(solve.Relation{Name: r.name, Terms: r.terms, Const: r.add, Op: solve.AtLeast, Owners: r.owners})
		return
	}
	b.formulas[len(b.m.Rules)] = r.formula
	b.m.Rules = append(b.m.Rules, solve.Rule{
		Name: r.name, Terms: r.terms, Const: r.add, On: b.length[r.gap],
		Falling: r.falling, Bound: r.bound, Owners: r.owners,
	})
}

// requirements lists what the bottles of one kind of column ask for.
func (b *stater) requirements(g group) []requirement {
	var out []requirement
	for _, x := range b.kinds(g) {
		out = append(out, b.rest(g, x)...)
		out = append(out, b.depth(x)...)
	}
	out = append(out, b.lowerApron(g)...)
	for row := 1; row <= g.own+1; row++ {
		out = append(out, b.above(g, row)...)
		out = append(out, b.upperApron(g, row)...)
	}
	return out
}

// kinds lists every bottle of a column once.
func (b *stater) kinds(g group) []bottle {
	var out []bottle
	for _, row := range g.fits {
		for _, x := range row {
			if !slices.ContainsFunc(out, func(y bottle) bool { return y.name == x.name }) {
				out = append(out, x)
			}
		}
	}
	return out
}

// rest: a bottle neither rolls out of its gap nor wedges in it, and passes
// between the legs.
func (b *stater) rest(g group, x bottle) []requirement {
	gap, channel := g.name("gap"), g.name("channel")
	least, most := x.kind.Diameter.Min, x.kind.Diameter.Max
	return []requirement{
		{name: "fit.rest: " + gap + " >= 0.50 of the largest " + x.name, terms: []solve.Term{b.term(100, gap)}, add: -50 * most, owners: x.owners},
		{name: "fit.rest: " + gap + " <= 0.90 of the smallest " + x.name, terms: []solve.Term{b.term(-100, gap)}, add: 90 * least, owners: x.owners},
		{name: "fit.side: " + channel + " >= the largest " + x.name + " + 2 cell.side_clearance",
			terms: []solve.Term{b.term(1, channel), b.term(-2, "cell.side_clearance")}, add: -most, owners: x.owners},
	}
}

// depth: with the bottle's base flush with the back of the carcase, its centre
// of gravity lies over the slats with something in hand.
func (b *stater) depth(x bottle) []requirement {
	high := x.kind.Height.Max
	far := (high*unit.Length(x.kind.Centre.Thousandths) + 999) / 1000
	near := x.kind.Height.Min * unit.Length(x.kind.Centre.Thousandths) / 1000
	return []requirement{
		{name: "fit.depth: the centre of gravity of " + x.name + " is behind the slats' front ends",
			terms: []solve.Term{b.term(1, "slat.length"), b.term(1, "apron.thickness")}, add: -far - gravityMargin, owners: x.owners},
		{name: "fit.depth: the centre of gravity of " + x.name + " is before the slats' rear ends",
			terms: []solve.Term{b.term(-1, "apron.thickness")}, add: near - gravityMargin, owners: x.owners},
	}
}

// hang is the owners of two bottles together, with those of the lengths that
// stand in the bounds.
func (b *stater) hang(lists ...[]solve.StatementID) []solve.StatementID {
	lists = append(lists, b.statementOf(slatEased), b.statementOf(topClearance))
	all := slices.Concat(lists...)
	slices.Sort(all)
	return slices.Compact(all)
}

// riseAbove names the rise above a row, counted from 1; the rows after the
// described ones share theirs.
func (b *stater) riseAbove(g group, row int) string {
	if row <= g.own {
		return b.rowRise(g, row)
	}
	return g.name("rise")
}

// above: a bottle clears the one above it, and the slats that carry that one.
func (b *stater) above(g group, row int) []requirement {
	rise, gap, eased := b.riseAbove(g, row), g.name("gap"), b.settled.eased
	upper := g.fits[min(row, g.own)]
	var out []requirement
	for _, lo := range g.fits[min(row-1, g.own)] {
		large := lo.kind.Diameter.Max
		for _, up := range upper {
			small := up.kind.Diameter.Min
			out = append(out, requirement{
				name:  "fit.above: " + rise + " leaves cell.top_clearance between " + lo.name + " and " + up.name + " above it",
				terms: []solve.Term{b.term(1, rise), b.term(-1, "cell.top_clearance")}, gap: gap,
				formula: b.across(lo.name, large) + "; " + strings.Replace(b.across(up.name+" above it", small), ", R half", ", r half", 1) + ": R + √(R² − (gap/2)²) + r − √(r² − (gap/2)²)",
				falling: large < small, owners: b.hang(lo.owners, up.owners),
				bound: func(x unit.Length) unit.Length { return stackBound(large, small, x, eased) },
			})
		}
		clear := b.settled.topClear
		out = append(out, requirement{
			name:  "fit.above: " + rise + " leaves cell.top_clearance between " + lo.name + " and the slats above it",
			terms: []solve.Term{b.term(1, rise), b.term(-1, "slat.height")}, gap: gap, falling: true, owners: b.hang(lo.owners),
			formula: b.across(lo.name, large) + ": √(R² − (gap/2)²) + √((R + cell.top_clearance)² − (gap/2)²)",
			bound:   func(x unit.Length) unit.Length { return cornerBound(large, clear, x, eased) },
		})
	}
	return out
}

// across names a bottle with half its diameter, as the formulas have it. Easing
// is left out of them: it is added to R and to half the gap.
func (b *stater) across(name string, diameter unit.Length) string {
	return fmt.Sprintf("%s is %s across, R half of it", name, b.d.Format().Unit(diameter))
}

// lowerApron: bottles of the lowest row slide in over the lower aprons.
func (b *stater) lowerApron(g group) []requirement {
	eased := b.settled.eased
	var out []requirement
	for _, x := range g.fits[0] {
		small := x.kind.Diameter.Min
		out = append(out, requirement{
			name: "fit.lower_apron: slat.first lifts " + x.name + " over the lower aprons",
			terms: []solve.Term{
				b.term(1, "slat.first"), b.term(1, "slat.height"), b.term(-1, "apron.lift"),
				b.term(-1, "apron.height"), b.term(-1, "cell.apron_clearance"),
			},
			gap: g.name("gap"), owners: b.hang(x.owners),
			formula: b.across(x.name, small) + ": R − √(R² − (gap/2)²)",
			bound:   func(gap unit.Length) unit.Length { return sagBound(small, gap, eased) },
		})
	}
	return out
}

// upperApron: bottles of the highest row slide in under the upper aprons. Which
// described row is the highest hangs on whether other rows follow; where it is
// not, far makes its requirement empty.
func (b *stater) upperApron(g group, row int) []requirement {
	if row < g.own {
		return nil // never the highest
	}
	const far = int64(longest)
	eased := b.settled.eased
	var out []requirement
	for _, x := range g.fits[min(row-1, g.own)] {
		large := x.kind.Diameter.Max
		r := requirement{
			name: "fit.upper_apron: leg.length lets " + x.name + " in under the upper aprons",
			terms: append(b.climb(g, -1), b.term(1, "leg.length"), b.term(-1, "apron.height"),
				b.term(-1, "cell.apron_clearance"), b.term(-1, "slat.first"), b.term(-1, "slat.height")),
			gap: g.name("gap"), falling: true, owners: b.hang(x.owners),
			formula: b.across(x.name, large) + ": R + √(R² − (gap/2)²)",
			bound:   func(gap unit.Length) unit.Length { return standBound(large, gap, eased) },
		}
		switch {
		case g.own > 0 && row == g.own:
			r.terms = append(r.terms, tally(far, g.extra, 0))
		case g.own > 0:
			r.terms = append(r.terms, tally(-far, g.extra, -1))
		}
		out = append(out, r)
	}
	return out
}
