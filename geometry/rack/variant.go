package rack

import (
	"fmt"
	"slices"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// variant is the design with one line said differently.
type variant struct {
	design *design.Design
	with   settings
	says   string // what the line says now, its name included

	bottles bool // the line names other bottles
}

// ways lists the ways to say differently a line that bounds no length of the
// solver's: a bottle, a stock, a clearance that rules stand on. Each way runs
// from the least change on; resort is one more, for want of anything else.
func (b *stater) ways(id solve.StatementID) (ways [][]variant, resort []variant) {
	at := b.lines[id].place
	for _, name := range []string{topClearance, slatEased} {
		if l, ok := b.d.Length(name); ok && l.Place == at {
			return b.settingWays(l), nil
		}
	}
	for i, own := range b.d.Bottles {
		if own.Place == at {
			return b.diameterWays(i), nil
		}
	}
	for i, s := range b.d.Stocks {
		if s.Place == at {
			return b.stockWays(i), nil
		}
	}
	return b.fitWays(at)
}

// isNamed reports whether a line says something that the solver has no range for.
func (b *stater) isNamed(id solve.StatementID) bool {
	st := b.m.Statements[id]
	if st.Length == solve.None {
		return st.Count == solve.None
	}
	name := b.m.Lengths[st.Length].Name
	return name == topClearance || name == slatEased
}

// settingWays says less of a clearance, and less or more of an easing.
func (b *stater) settingWays(l design.Length) [][]variant {
	step := b.repairStep(l.Unit)
	say := func(v unit.Length, word string) variant {
		d := *b.d
		d.Lengths = slices.Clone(b.d.Lengths)
		for i := range d.Lengths {
			if d.Lengths[i].Name == l.Name {
				d.Lengths[i].Kind, d.Lengths[i].Lo, d.Lengths[i].Hi = design.Exact, v, v
			}
		}
		with := b.settled
		if l.Name == topClearance {
			with.topClear = v
		} else {
			with.eased = v
		}
		return variant{design: &d, with: with, says: l.Name + " " + word + unit.Format{System: l.Unit}.Unit(v)}
	}
	down, up := "", ""
	if l.Kind != design.Exact {
		down, up = "from ", "up to "
	}
	var less, more []variant
	for v := (l.Lo - 1).Down(step); v >= 0; v -= step {
		less = append(less, say(v, down))
	}
	for v := (l.Hi + 1).Up(step); l.Name == slatEased && v <= unit.Inch; v += step {
		more = append(more, say(v, up))
	}
	return [][]variant{less, more}
}

// diameterWays says a smaller and a larger diameter of an own bottle, down to a
// half of it and up to twice as much.
func (b *stater) diameterWays(i int) [][]variant {
	own := b.d.Bottles[i]
	was := own.Kind.Diameter
	step := b.repairStep(own.Unit)
	say := func(r table.Range, word string, v unit.Length) variant {
		d := *b.d
		d.Bottles = slices.Clone(b.d.Bottles)
		r.Nominal = r.Min + (r.Max-r.Min)/2
		r.Origin, r.Spread = was.Origin, was.Spread
		d.Bottles[i].Kind.Diameter = r
		return variant{design: &d, with: b.settled, says: "bottle." + own.Name + ".diameter " + word + unit.Format{System: own.Unit}.Unit(v), bottles: true}
	}
	var less, more []variant
	if was.Min < was.Max {
		for v := (was.Max - 1).Down(step); v >= was.Min; v -= step {
			less = append(less, say(table.Range{Min: was.Min, Max: v}, "at most ", v))
		}
		for v := (was.Min + 1).Up(step); v <= was.Max; v += step {
			more = append(more, say(table.Range{Min: v, Max: was.Max}, "at least ", v))
		}
		return [][]variant{less, more}
	}
	for v := (was.Min - 1).Down(step); v >= was.Min/2; v -= step {
		less = append(less, say(table.Range{Min: v, Max: v}, "", v))
	}
	for v := (was.Min + 1).Up(step); v <= 2*was.Min; v += step {
		more = append(more, say(table.Range{Min: v, Max: v}, "", v))
	}
	return [][]variant{less, more}
}

// stockWays says another size of the same lumber, the nearest first.
func (b *stater) stockWays(i int) [][]variant {
	was := b.d.Stocks[i].Nominal
	var sizes []table.Nominal
	for _, n := range table.Nominals() {
		if n.Kind == was.Kind && n.Name != was.Name {
			sizes = append(sizes, n)
		}
	}
	off := func(n table.Nominal) unit.Length {
		return (n.Thickness - was.Thickness).Abs() + (n.Width - was.Width).Abs()
	}
	slices.SortStableFunc(sizes, func(x, y table.Nominal) int { return int(off(x) - off(y)) })
	var out []variant
	for _, n := range sizes {
		d := *b.d
		d.Stocks = slices.Clone(b.d.Stocks)
		d.Stocks[i].Nominal = n
		out = append(out, variant{design: &d, with: b.settled, says: fmt.Sprintf("%s.stock %q", d.Stocks[i].Part, n.Name)})
	}
	return [][]variant{out}
}

// fitWays leaves one bottle out of a list, each of them a way of its own; the
// resort puts another in the place of all of them, the nearest in size first.
func (b *stater) fitWays(at diag.Place) (ways [][]variant, resort []variant) {
	was, name := fitAt(b.d, at)
	if was == nil {
		return nil, nil
	}
	say := func(list []design.BottleRef, says string) variant {
		d := b.copyFits()
		f, _ := fitAt(d, at)
		f.Bottles = list
		return variant{d, b.settled, name + " " + says, true}
	}
	if len(was.Bottles) > 1 {
		for i, x := range was.Bottles {
			ways = append(ways, []variant{say(slices.Delete(slices.Clone(was.Bottles), i, i+1), "without "+x.Name)})
		}
	}
	for _, k := range b.others(was.Bottles) {
		resort = append(resort, say([]design.BottleRef{{Name: k.ID, Place: at}}, fmt.Sprintf("[%q]", k.ID)))
	}
	return ways, resort
}

// idle reports whether a list of bottles could as well be left out: what cells
// hold then is in the way as much.
func (a *adviser) idle(id solve.StatementID, on []solve.StatementID) bool {
	d := a.free.withoutFit(a.free.lines[id].place)
	return d != nil && !a.holds(variant{design: d, with: a.free.settled, bottles: true}, on, nil) && !a.unsure
}

// withoutFit is the design without the list of bottles at a place; nil where
// there is none.
func (b *stater) withoutFit(at diag.Place) *design.Design {
	if f, _ := fitAt(b.d, at); f == nil {
		return nil
	}
	d := b.copyFits()
	if d.Fit.Place == at {
		d.Fit = design.Fit{}
		return d
	}
	for i := range d.Columns {
		c := &d.Columns[i]
		if c.Fit != nil && c.Fit.Place == at {
			c.Fit = nil
		}
		for j := range c.Rows {
			if f := c.Rows[j].Fit; f != nil && f.Place == at {
				c.Rows[j].Fit = nil
			}
		}
	}
	return d
}

// others lists the bottles of the table that a list lacks: those that hold about
// as much as its largest come first, since who has wine in bottles of one content
// can seldom do with those of another, and of either the nearest in size.
func (b *stater) others(list []design.BottleRef) []table.Bottle {
	var largest unit.Length
	var content int64
	for _, x := range list {
		if k, _ := b.d.Bottle(x.Name); k.Diameter.Nominal > largest {
			largest, content = k.Diameter.Nominal, k.Millilitres
		}
	}
	out := slices.DeleteFunc(table.Bottles(), func(k table.Bottle) bool {
		return slices.ContainsFunc(list, func(x design.BottleRef) bool { return x.Name == k.ID })
	})
	off := func(k table.Bottle) unit.Length { return (k.Diameter.Nominal - largest).Abs() }
	slices.SortStableFunc(out, func(x, y table.Bottle) int {
		switch a, z := alike(x.Millilitres, content), alike(y.Millilitres, content); {
		case a && !z:
			return -1
		case z && !a:
			return 1
		}
		return int(off(x) - off(y))
	})
	return out
}

// alike reports whether two contents are within a tenth of each other, as 700
// and 750 ml are (the project's own figure).
func alike(a, b int64) bool { return 10*max(a-b, b-a) <= max(a, b) && a > 0 }

// fitAt finds the list of bottles that stands at a place.
func fitAt(d *design.Design, at diag.Place) (*design.Fit, string) {
	if d.Fit.Place == at {
		return &d.Fit, "bottles.fit"
	}
	for i := range d.Columns {
		c := &d.Columns[i]
		if c.Fit != nil && c.Fit.Place == at {
			return c.Fit, fmt.Sprintf("column.%d.fit", i+1)
		}
		for j := range c.Rows {
			if f := c.Rows[j].Fit; f != nil && f.Place == at {
				return f, fmt.Sprintf("column.%d.row.%d.fit", i+1, j+1)
			}
		}
	}
	return nil, ""
}

// copyFits copies the design down to its lists of bottles.
func (b *stater) copyFits() *design.Design {
	own := func(f *design.Fit) *design.Fit {
		if f == nil {
			return nil
		}
		c := *f
		return &c
	}
	d := *b.d
	d.Columns = slices.Clone(b.d.Columns)
	for i := range d.Columns {
		d.Columns[i].Fit = own(d.Columns[i].Fit)
		d.Columns[i].Rows = slices.Clone(d.Columns[i].Rows)
		for j := range d.Columns[i].Rows {
			d.Columns[i].Rows[j].Fit = own(d.Columns[i].Rows[j].Fit)
		}
	}
	return &d
}
