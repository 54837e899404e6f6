package rack

import (
	"slices"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// The names of the objective's levels, first to last.
const (
	levelStock     = "stock"    // thicknesses come with the boards: they give way last
	levelDefaults  = "defaults" // the other standing defaults
	levelCounts    = "counts"   // "~" counts beside an open one: they are no way to more bottles
	levelBottles   = "bottles"  // as many as fit, where a count is open
	levelSought    = "sought"   // the file's "~" statements
	levelGap       = "gap"      // 0.75 of the nominal bottle
	levelRise      = "rise"     // rows as close as the bottles allow
	levelReveals   = "reveals"  // the lowest slat no higher than needed
	levelLeastWood = "least wood"
)

// rank states what is sought, in the order in which it is sought.
func (b *stater) rank() {
	b.rankDefaults()
	b.rankBottles()
	b.rankSought()
	b.rankPreferred()
	b.m.Levels = append(b.m.Levels, solve.Level{Name: levelLeastWood, Least: b.wood()})
}

// rankDefaults wishes every length that the file and the stock leave unsaid to
// be at its standing default.
func (b *stater) rankDefaults() {
	stock, rest := solve.Level{Name: levelStock}, solve.Level{Name: levelDefaults}
	for _, def := range table.Defaults() {
		id, ok := b.length[def.Name]
		if !ok || b.said(def.Name) || b.m.Lengths[id].Lo == b.m.Lengths[id].Hi {
			continue
		}
		w := solve.Wish{Length: id, Want: def.Value(b.d.Units)}
		switch def.Name {
		case "leg.thickness", "slat.thickness", "apron.thickness", "top.thickness":
			stock.Wishes = append(stock.Wishes, w)
		default:
			rest.Wishes = append(rest.Wishes, w)
		}
	}
	b.addLevels(stock, rest)
}

// addLevels adds the levels that seek anything.
func (b *stater) addLevels(levels ...solve.Level) {
	for _, l := range levels {
		if len(l.Wishes)+len(l.CountWishes)+len(l.Most) > 0 {
			b.m.Levels = append(b.m.Levels, l)
		}
	}
}

// said reports whether the file or the stock gives the length.
func (b *stater) said(name string) bool {
	if _, ok := b.d.Length(name); ok {
		return true
	}
	for i := range b.stocks {
		if b.m.Relations[i].Terms[0].Length == b.length[name] {
			return true
		}
	}
	return false
}

// rankBottles seeks the most bottles where the file leaves a count open.
func (b *stater) rankBottles() {
	open := false
	for _, g := range b.groups {
		open = open || b.isOpen(g.count) || b.isOpen(g.rows)
	}
	if !open {
		return
	}
	b.addLevels(solve.Level{Name: levelCounts, InOrder: true, CountWishes: b.soughtCounts()})
	l := solve.Level{Name: levelBottles}
	for _, g := range b.groups {
		l.Most = append(l.Most, solve.Product{Coef: 1, Counts: []solve.CountID{g.count, g.rows}})
	}
	b.addLevels(l)
}

// isOpen reports whether the file leaves a count open: it says "most", gives
// only a range, or says nothing.
func (b *stater) isOpen(id solve.CountID) bool {
	c, said := b.d.Count(b.countSource(id))
	declared := b.m.Counts[id]
	return declared.Lo < declared.Hi && (!said || c.Kind != design.Exact && c.Kind != design.Near)
}

// countSource names the statement that a count takes its value from: a
// column's rows are the rack's where it has none of its own.
func (b *stater) countSource(id solve.CountID) string {
	name := b.m.Counts[id].Name
	if _, own := b.d.Count(name); !own && len(b.d.Columns) > 0 {
		for _, g := range b.groups {
			if g.rows == id {
				return "rack.rows"
			}
		}
	}
	return name
}

// soughtCounts lists the file's "~" statements about counts.
func (b *stater) soughtCounts() (out []solve.CountWish) {
	for _, c := range b.d.Counts {
		if id, ok := b.count[c.Name]; ok && c.Kind == design.Near {
			out = append(out, solve.CountWish{Count: id, Want: c.Lo})
		}
	}
	return out
}

func (b *stater) hasLevel(name string) bool {
	return slices.ContainsFunc(b.m.Levels, func(l solve.Level) bool { return l.Name == name })
}

// rankSought seeks the file's "~" statements, in its order.
func (b *stater) rankSought() {
	l := solve.Level{Name: levelSought, InOrder: true}
	if !b.hasLevel(levelCounts) {
		l.CountWishes = b.soughtCounts()
	}
	for _, s := range b.d.Lengths {
		if id, ok := b.length[s.Name]; ok && s.Kind == design.Near {
			l.Wishes = append(l.Wishes, solve.Wish{Length: id, Want: s.Lo})
		}
	}
	for _, id := range b.whereIDs {
		l.Wishes = append(l.Wishes, solve.Wish{Length: id})
	}
	b.addLevels(l)
}

// rankPreferred seeks the preferred values of lengths that are meant to be
// solved: the gap first, since the rise hangs on it, then the rise, then the
// lower reveal at its least. The upper one follows from the wood: a leg's length
// hangs on the rows, so it is no value to keep where one more is asked for.
func (b *stater) rankPreferred() {
	gap, rise := solve.Level{Name: levelGap}, solve.Level{Name: levelRise}
	for _, g := range b.groups {
		for _, x := range b.kinds(g) {
			gap.Wishes = append(gap.Wishes, solve.Wish{Length: b.length[g.name("gap")], Want: preferredGap(x.kind)})
		}
		rise.Wishes = append(rise.Wishes, solve.Wish{Length: b.length[g.name("rise")]})
		for j := 1; j <= g.own; j++ {
			rise.Wishes = append(rise.Wishes, solve.Wish{Length: b.length[b.rowRise(g, j)]})
		}
	}
	reveals := solve.Level{Name: levelReveals, Wishes: []solve.Wish{{Length: b.length["slat.first"]}}}
	b.addLevels(gap, rise, reveals)
}

// preferredGap is the gap in which a bottle lies best: 0.75 of its nominal
// diameter (the project's own figure).
func preferredGap(x table.Bottle) unit.Length { return x.Diameter.Nominal * 3 / 4 }

// wood measures the wood by running length: legs and slats by their number,
// boards once each. It rises with every size, which is what breaks a tie.
func (b *stater) wood() []solve.Term {
	terms := []solve.Term{
		b.term(2, "leg.length"), b.term(4, "apron.length"), b.term(1, "leg.width"),
		b.term(1, "slat.height"), b.term(1, "apron.height"),
	}
	for _, g := range b.groups {
		terms = append(terms, b.times(2, g.count, 0, "leg.length"), b.times(2, g.count, 0, "slat.length"))
	}
	if b.d.TopPresent {
		terms = append(terms, b.term(1, "top.length"), b.term(1, "top.width"))
	}
	return terms
}
