package rack

import (
	"slices"
	"strconv"

	"slatwright/geometry/solve"
)

// equal says that the terms add up to nought, always. Text is the relation in
// the words of the documentation.
func (b *stater) equal(text string, terms ...solve.Term) {
	b.m.Relate(solve.Relation{Name: text, Op: solve.Equal, Terms: terms})
}

// atLeast says that the terms add up to nought or more, always.
func (b *stater) atLeast(text string, terms ...solve.Term) {
	b.m.Relate(solve.Relation{Name: text, Op: solve.AtLeast, Terms: terms})
}

// times is coef × (count + plus) × length.
func (b *stater) times(coef int64, count solve.CountID, plus int64, name string) solve.Term {
	t := b.term(coef, name)
	t.Count, t.Plus = count, plus
	return t
}

// relate states how the lengths of a rack hang together.
func (b *stater) relate() {
	for _, g := range b.groups {
		gap, channel, pitch := g.name("gap"), g.name("channel"), g.name("pitch")
		b.equal(channel+" = "+gap+" + 2 slat.thickness", b.term(1, channel), b.term(-1, gap), b.term(-2, "slat.thickness"))
		b.equal(pitch+" = "+channel+" + leg.thickness", b.term(1, pitch), b.term(-1, channel), b.term(-1, "leg.thickness"))
		b.shareCellSizes(g)
	}
	b.relateCarcase()
	b.relateTop()
	b.relateHeights()
}

// shareCellSizes makes a column take a size stated for all cells, unless it has
// its own.
func (b *stater) shareCellSizes(g group) {
	if g.number == 0 {
		return
	}
	for _, s := range [...]struct{ what, all string }{{"gap", "cell.gap"}, {"channel", "cell.channel"}, {"pitch", "ladder.pitch"}, {"rise", "cell.rise"}} {
		_, shared := b.length[s.all]
		_, own := b.d.Length(g.name(s.what))
		if shared && !own {
			b.equal(g.name(s.what)+" = "+s.all, b.term(1, g.name(s.what)), b.term(-1, s.all))
		}
	}
}

// relateCarcase sums up the carcase's width and depth.
func (b *stater) relateCarcase() {
	width := []solve.Term{b.term(1, "carcase.width"), b.term(-1, "leg.thickness")}
	text := "carcase.width = rack.columns × ladder.pitch + leg.thickness"
	if b.groups[0].number > 0 {
		text = "carcase.width = the pitches of all columns + leg.thickness"
	}
	for _, g := range b.groups {
		width = append(width, b.times(-1, g.count, 0, g.name("pitch")))
	}
	b.equal(text, width...)
	b.equal("apron.length = carcase.width", b.term(1, "apron.length"), b.term(-1, "carcase.width"))
	b.equal("carcase.depth = slat.length + 2 apron.thickness", b.term(1, "carcase.depth"), b.term(-1, "slat.length"), b.term(-2, "apron.thickness"))
	b.equal("carcase.height = leg.length", b.term(1, "carcase.height"), b.term(-1, "leg.length"))
	b.atLeast("slat.length >= 2 leg.width", b.term(1, "slat.length"), b.term(-2, "leg.width"))
}

// relateTop sums up the top and the rack's overall sizes.
func (b *stater) relateTop() {
	if !b.d.TopPresent {
		b.equal("rack.width = carcase.width", b.term(1, "rack.width"), b.term(-1, "carcase.width"))
		b.equal("rack.depth = carcase.depth", b.term(1, "rack.depth"), b.term(-1, "carcase.depth"))
		b.equal("rack.height = leg.length", b.term(1, "rack.height"), b.term(-1, "leg.length"))
		return
	}
	b.equal("top.length = carcase.width + 2 overhang.side", b.term(1, "top.length"), b.term(-1, "carcase.width"), b.term(-2, "overhang.side"))
	b.equal("top.width = carcase.depth + overhang.front + overhang.back", b.term(1, "top.width"), b.term(-1, "carcase.depth"), b.term(-1, "overhang.front"), b.term(-1, "overhang.back"))
	// An overhang is never negative, so the top is the larger of the two.
	b.equal("rack.width = top.length", b.term(1, "rack.width"), b.term(-1, "top.length"))
	b.equal("rack.depth = top.width", b.term(1, "rack.depth"), b.term(-1, "top.width"))
	b.equal("rack.height = leg.length + top.thickness", b.term(1, "rack.height"), b.term(-1, "leg.length"), b.term(-1, "top.thickness"))
}

// climb is coef times the height from the lowest slat's underside to that of
// the highest: the rises of the described rows, then those of the others.
func (b *stater) climb(g group, coef int64) []solve.Term {
	rise := g.name("rise")
	if g.own == 0 {
		return []solve.Term{b.times(coef, g.rows, -1, rise)}
	}
	var out []solve.Term
	for j := 1; j < g.own; j++ {
		out = append(out, b.term(coef, b.rowRise(g, j)))
	}
	// The last described row has a rise above it only where a row follows.
	return append(out,
		b.times(coef, g.extra, 0, b.rowRise(g, g.own)),
		b.times(coef, g.rows, -int64(g.own), rise),
		b.times(-coef, g.extra, 0, rise))
}

// rowRise names the rise above row j, counted from 1.
func (b *stater) rowRise(g group, j int) string {
	return g.name("row." + strconv.Itoa(j) + ".rise")
}

// relateHeights keeps slats clear of each other and within the legs, and the
// upper aprons above the lower.
func (b *stater) relateHeights() {
	for _, g := range b.groups {
		b.atLeast(g.name("rise")+" >= slat.height", b.term(1, g.name("rise")), b.term(-1, "slat.height"))
		for j := 1; j <= g.own; j++ {
			own := b.rowRise(g, j)
			b.atLeast(own+" >= slat.height", b.term(1, own), b.term(-1, "slat.height"))
			if _, said := b.d.Length(own); !said && b.sameFit(g, j) {
				b.equal(own+" = "+g.name("rise"), b.term(1, own), b.term(-1, g.name("rise")))
			}
		}
		b.atLeast("leg.length >= the highest slat's upper edge",
			append(b.climb(g, -1), b.term(1, "leg.length"), b.term(-1, "slat.first"), b.term(-1, "slat.height"))...)
	}
	b.atLeast("upper aprons above lower ones: leg.length >= apron.lift + 2 apron.height",
		b.term(1, "leg.length"), b.term(-1, "apron.lift"), b.term(-2, "apron.height"))
}

// sameFit reports whether row j and the one above it hold what the column's
// other rows hold, so that its rise is theirs too.
func (b *stater) sameFit(g group, j int) bool {
	others := bottleNames(g.fits[g.own])
	return slices.Equal(bottleNames(g.fits[j-1]), others) && slices.Equal(bottleNames(g.fits[min(j, g.own)]), others)
}

func bottleNames(list []bottle) []string {
	var out []string
	for _, x := range list {
		out = append(out, x.name)
	}
	return out
}

// relateSite keeps the rack within the room it goes in.
func (b *stater) relateSite() {
	for _, s := range []struct {
		site, rack, text string
		fits             int64
	}{
		{"site.width", "rack.width", "rack.width + 2 site.fit <= site.width", 2},
		{"site.depth", "rack.depth", "rack.depth + site.fit <= site.depth", 1},
		{"site.height", "rack.height", "rack.height + site.fit <= site.height", 1},
	} {
		if _, ok := b.length[s.site]; ok {
			b.atLeast(s.text, b.term(1, s.site), b.term(-1, s.rack), b.term(-s.fits, "site.fit"))
		}
	}
}
