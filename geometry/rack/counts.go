package rack

import (
	"strconv"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// The most of each count that the solver may try. Reaching one means that
// nothing in the design limits the count.
const (
	mostColumns = 400
	mostRows    = 200
)

// defaultBottle is what cells must hold where the file names no bottle.
const defaultBottle = "claret-750"

// declareCounts declares how many columns and rows there are, and which
// bottles each kind of column must hold.
func (b *stater) declareCounts() {
	whole := b.fit(&b.d.Fit, "bottles.fit")
	if len(b.d.Columns) == 0 {
		b.groups = []group{{
			count: b.declareCount("rack.columns", 1, mostColumns),
			rows:  b.declareCount("rack.rows", 1, mostRows),
			extra: solve.None, fits: [][]bottle{whole},
		}}
		return
	}
	for i, c := range b.d.Columns {
		own := "column." + strconv.Itoa(i+1)
		g := group{number: i + 1, own: len(c.Rows), extra: solve.None}
		most := mostColumns
		if _, said := b.d.Count(own + ".count"); !said {
			most = 1
		}
		g.count = b.declareCount(own+".count", 1, most)
		g.rows = b.declareCount(own+".rows", max(1, g.own), mostRows)
		column := whole
		if c.Fit != nil {
			column = b.fit(c.Fit, own+".fit")
		}
		for j, r := range c.Rows {
			row := column
			if r.Fit != nil {
				row = b.fit(r.Fit, own+".row."+strconv.Itoa(j+1)+".fit")
			}
			g.fits = append(g.fits, row)
		}
		g.fits = append(g.fits, column)
		if g.own > 0 {
			g.extra = b.declareCount(own+".extra", 0, 1)
			b.bindExtra(g)
		}
		b.groups = append(b.groups, g)
	}
	b.addUpColumns()
}

func (b *stater) declareCount(name string, lo, hi int) solve.CountID {
	id := b.m.AddCount(solve.Count{Name: name, Lo: lo, Hi: hi})
	b.count[name] = id
	return id
}

// tally is coef × (count + plus), a term about a count alone.
func tally(coef int64, c solve.CountID, plus int64) solve.Term {
	return solve.Term{Coef: coef, Count: c, Plus: plus, Length: solve.None}
}

// bindExtra makes extra 1 exactly where there are more rows than are described
// one by one.
func (b *stater) bindExtra(g group) {
	b.m.Relate(solve.Relation{Op: solve.AtLeast, Terms: []solve.Term{tally(1, g.rows, -int64(g.own)), tally(-1, g.extra, 0)}})
	b.m.Relate(solve.Relation{Op: solve.AtLeast, Terms: []solve.Term{tally(mostRows, g.extra, 0), tally(-1, g.rows, -int64(g.own))}})
}

// addUpColumns ties the counts of the rack to those of its columns, where the
// file states them.
func (b *stater) addUpColumns() {
	if _, said := b.d.Count("rack.columns"); said {
		all := b.declareCount("rack.columns", 1, mostColumns)
		terms := []solve.Term{tally(-1, all, 0)}
		for _, g := range b.groups {
			terms = append(terms, tally(1, g.count, 0))
		}
		b.m.Relate(solve.Relation{Name: "rack.columns = the counts of all columns", Op: solve.Equal, Terms: terms})
	}
	rows, said := b.d.Count("rack.rows")
	if !said || rows.Kind == design.Most {
		return // as many as fit, in each kind of column
	}
	all := b.declareCount("rack.rows", 1, mostRows)
	for _, g := range b.groups {
		if _, own := b.d.Count(g.name("rows")); !own {
			b.m.Relate(solve.Relation{Name: g.name("rows") + " = rack.rows", Op: solve.Equal, Terms: []solve.Term{tally(1, g.rows, 0), tally(-1, all, 0)}})
		}
	}
}

// stateCounts hands every statement about a count to the solver.
func (b *stater) stateCounts() {
	for _, c := range b.d.Counts {
		id, ok := b.count[c.Name]
		if !ok || c.Kind == design.Near || c.Kind == design.Most {
			continue
		}
		b.add(solve.Statement{
			Name: c.Text, Length: solve.None, Count: id,
			HasLo: c.Kind != design.AtMost, HasHi: c.Kind != design.AtLeast,
			Lo: unit.Length(c.Lo), Hi: unit.Length(c.Hi),
		}, line{c.Text, c.Place, b.d.Units})
	}
}

// fit returns the bottles of a list, each with the lines that ask for it.
func (b *stater) fit(f *design.Fit, name string) []bottle {
	if f.Place.None() {
		kind, _ := b.d.Bottle(defaultBottle)
		return []bottle{{name: defaultBottle, kind: kind}}
	}
	list := b.name(line{f.Text, f.Place, b.d.Units})
	var out []bottle
	for _, ref := range f.Bottles {
		kind, ok := b.d.Bottle(ref.Name)
		if !ok {
			panic("rack: no bottle named " + ref.Name + " in " + name)
		}
		owners := []solve.StatementID{list}
		for _, own := range b.d.Bottles {
			if own.Name == ref.Name {
				owners = append(owners, b.name(line{own.Text, own.Place, b.d.Units}))
			}
		}
		out = append(out, bottle{ref.Name, kind, owners})
	}
	return out
}
