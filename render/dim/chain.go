package dim

import (
	"slices"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// extend draws the extension line from an outline to a track.
func (b *Board) extend(g int, side Side, s Stop, at drawing.Um) {
	from := s.From + side.away()*gap
	to := at + side.away()*overrun
	if (to-from)*side.away() > 0 {
		b.add(drawing.Line(drawing.Extension, g, place(side, s.At, from), place(side, s.At, to)))
	}
}

// drawChain draws a chain or an overall figure on its track, and returns how many
// rows further out its figures reach. Extension lines of tracks further out pass
// it at the outer places.
func (b *Board) drawChain(t track, at drawing.Um, outer []drawing.Um) (rows int) {
	chain := b.chainOf(t)
	links := b.links(t)
	g := b.sheet.Group()
	b.extend(g, t.side, links[0].a, at)
	for _, l := range links {
		b.extend(g, t.side, l.z, at)
		if !l.skip {
			b.recordLink(chain, t, l, at)
		}
	}
	tails := b.drawLines(g, t, links, at)
	rows = b.setFigures(g, t, links, at, outer)
	b.taken = append(b.taken, tails...) // a figure may stand over its own
	return rows
}

// chainOf numbers a track. An overall figure takes the number of the links on
// its side between the same two ends, so that a reader of marks can compare the
// printed whole with the sum of its printed links.
func (b *Board) chainOf(t track) int {
	key := ends{t.side, t.stops[0].At, t.stops[len(t.stops)-1].At}
	if key.a > key.z {
		key.a, key.z = key.z, key.a
	}
	if t.role == drawing.Overall {
		if n, ok := b.chains[key]; ok {
			return n
		}
	}
	b.chain++
	if t.role == drawing.Link && !t.options.Brackets && len(t.options.Alike) == 0 {
		b.chains[key] = b.chain
	}
	return b.chain
}

// ends is where a chain begins and ends on one side.
type ends struct {
	side Side
	a, z drawing.Um
}

// drawLines draws the lines of a track with their arrowheads. At each stop the
// long links have theirs inside; a short link next to a long one shares that
// one's, which is its own from outside; between two short ones stands a dot; at
// an end of the chain a short link has its arrowhead on a tail. It returns where
// the tails are.
func (b *Board) drawLines(g int, t track, links []link, at drawing.Um) (tails []drawing.Rect) {
	pt := func(along drawing.Um) drawing.Point { return place(t.side, along, at) }
	outside := func(tip, end drawing.Um) {
		// Where a figure of another side stands in the way, only the arrowhead.
		room := drawing.Line(drawing.Dimension, 0, pt(tip+(end-tip)/4), pt(end)).Bounds().Inset(-drawing.MM / 2)
		if !b.free(room) {
			end = tip + (end-tip)*(drawing.ArrowLength+drawing.MM/5)/tail
		}
		line := drawing.Line(drawing.Dimension, g, pt(tip), pt(end))
		b.sheet.Add(line, drawing.Arrow(g, pt(tip), pt(end)))
		tails = append(tails, line.Bounds())
	}
	for i, l := range links {
		a, z := l.a.At, l.z.At
		if a == z || l.skip {
			continue // too short for the paper; its neighbours' lines meet here
		}
		b.line(g, t, pt(a), pt(z))
		if l.arrows() {
			b.sheet.Add(drawing.Arrow(g, pt(a), pt(z)), drawing.Arrow(g, pt(z), pt(a)))
			continue
		}
		out := tail
		if z < a {
			out = -tail
		}
		switch {
		case begins(links, i):
			outside(a, a-out)
		case !links[i-1].arrows():
			b.sheet.Add(drawing.Dot(g, pt(a)))
		}
		if finishes(links, i) {
			outside(z, z+out)
		}
	}
	return tails
}

// begins and finishes report whether a link is the first or the last of its
// chain, or stands beside a way without a dimension.
func begins(links []link, i int) bool   { return i == 0 || links[i-1].skip }
func finishes(links []link, i int) bool { return i == len(links)-1 || links[i+1].skip }

// line draws a dimension line, with a break in it where the view is broken.
func (b *Board) line(g int, t track, from, to drawing.Point) {
	if !t.options.Broken {
		b.add(drawing.Line(drawing.Dimension, g, from, to))
		return
	}
	zigzag := drawing.BreakLine(g, from, to)
	zigzag.Class = drawing.Dimension
	b.sheet.Add(zigzag)
	b.taken = append(b.taken, drawing.Line(drawing.Dimension, g, from, to).Bounds()) // figures keep off the break itself
}

// setFigures places the figures of a track, in the second unit too where they fit
// over their links with it: over their own links where they
// fit; at an end of the chain beyond it, over a longer tail; the others a row
// further off, spread along the track, each with a leader to its link.
func (b *Board) setFigures(g int, t track, links []link, at drawing.Um, outer []drawing.Um) (rows int) {
	var pulled []slot
	for i, l := range links {
		if l.skip {
			continue
		}
		over := at - lift
		if c, ok := b.overLink(t, l, over, outer); ok {
			b.set(g, t.side, c, over, l.text)
			continue
		}
		l = l.inOneUnit()
		if c, ok := b.overLink(t, l, over, outer); ok {
			b.set(g, t.side, c, over, l.text)
			continue
		}
		if c, edge, ok := b.beyond(t, links, i, over, outer); ok {
			b.set(g, t.side, c, over, l.text)
			b.add(drawing.Line(drawing.Dimension, g, place(t.side, edge, at), place(t.side, farther(c, edge, l.wide), at)))
			continue
		}
		pulled = append(pulled, slot{want: l.mid(), size: l.wide + 2*pad, runs: drawing.Figure(l.text)})
	}
	if len(pulled) == 0 {
		return 0
	}
	spreadBetween(pulled, outer)
	rows = b.freeRow(t.side, pulled, at)
	for _, s := range pulled {
		b.pull(g, t.side, s, at, rows)
	}
	return rows
}

// mostRows is how many rows further out a figure goes for a free place.
const mostRows = 4

// freeRow returns the nearest row beyond a track in which all pulled figures
// find their places free and their leaders meet no other figure; the last where
// there is none.
func (b *Board) freeRow(side Side, pulled []slot, at drawing.Um) int {
	for row := 1; row < mostRows; row++ {
		if !slices.ContainsFunc(pulled, func(s slot) bool {
			text := b.lettered(0, side, s.at, rowAt(side, at, row), typeface.Readable(s.runs))
			_, low, end := leaderOf(side, s, at, row)
			return !b.free(text.Bounds().Inset(-drawing.MM/2)) || b.meetsFigure(low, end)
		}) {
			return row
		}
	}
	return mostRows
}

// meetsFigure reports whether a line passes through a figure drawn so far.
func (b *Board) meetsFigure(from, to drawing.Point) bool {
	return slices.ContainsFunc(b.figures, func(r drawing.Rect) bool {
		return drawing.Crosses(from, to, r.Inset(-drawing.MM/2))
	})
}

// leaderOf is the way of a leader from a link to its figure in a row beyond.
func leaderOf(side Side, s slot, at drawing.Um, row int) (from, low, end drawing.Point) {
	knee := at - lift - stackHalf
	if side.away() > 0 {
		knee = at + overrun
	}
	return place(side, s.want, at), place(side, s.want, knee), place(side, s.at, rowAt(side, at, row)-side.away()*stackHalf)
}

// rowAt is the middle of the figures in a row beyond a track, which is on the far
// side of its line from the outline, so that its own extension lines end before.
func rowAt(side Side, at drawing.Um, row int) drawing.Um {
	further := secondRow * drawing.Um(row-1)
	if side.away() > 0 {
		return at + overrun + drawing.MM + stackHalf + further
	}
	return at - lift - secondRow - further
}

// farther is the end of a figure of the given width about c, on the side away
// from edge.
func farther(c, edge, wide drawing.Um) drawing.Um {
	if c < edge {
		return c - wide/2
	}
	return c + wide/2
}

// overLink finds a place for a link's figure over its line, in the middle or as
// near to it as the extension lines of outer tracks allow.
func (b *Board) overLink(t track, l link, over drawing.Um, outer []drawing.Um) (c drawing.Um, ok bool) {
	half := l.wide/2 + pad
	lo, hi := l.lo()+half, l.hi()-half
	if lo > hi {
		return 0, false
	}
	tries := []drawing.Um{l.mid()}
	if t.options.Broken { // beside the break in the line
		tries[0] -= (hi - lo) / 4
	}
	for _, w := range outer {
		tries = append(tries, w-half, w+half)
	}
	for _, x := range tries {
		if x >= lo && x <= hi && clear(outer, x-half, x+half) && (!ok || (x-l.mid()).Abs() < (c-l.mid()).Abs()) && b.free(b.ground(t.side, x, over, l)) {
			c, ok = x, true
		}
	}
	return c, ok
}

// beyond finds a place for the figure of the first or the last link beyond its
// end of the chain, and returns that end.
func (b *Board) beyond(t track, links []link, i int, over drawing.Um, outer []drawing.Um) (c, edge drawing.Um, ok bool) {
	l := links[i]
	const off = 3 * drawing.MM / 2 // from the extension line
	try := func(edge, inner drawing.Um) bool {
		c = edge + off + l.wide/2
		if edge < inner {
			c = edge - off - l.wide/2
		}
		end := farther(c, edge, l.wide)
		line := drawing.Rect{Min: place(t.side, min(edge, end)+1, over+lift-1), Max: place(t.side, max(edge, end)-1, over+lift+1)}
		return clear(outer, c-l.wide/2-pad, c+l.wide/2+pad) && b.free(b.ground(t.side, c, over, l)) && b.free(line)
	}
	if finishes(links, i) && try(l.z.At, l.a.At) {
		return c, l.z.At, true
	}
	if begins(links, i) && try(l.a.At, l.z.At) {
		return c, l.a.At, true
	}
	return 0, 0, false
}

// clear reports whether no wall stands between lo and hi.
func clear(walls []drawing.Um, lo, hi drawing.Um) bool {
	for _, w := range walls {
		if lo < w && w < hi {
			return false
		}
	}
	return true
}

// ground is the room of a link's figure with its middle at c and over.
func (b *Board) ground(side Side, c, over drawing.Um, l link) drawing.Rect {
	r := b.lettered(0, side, c, over, l.text).Bounds()
	return r.Inset(-drawing.MM / 2)
}

// lettered is a figure along a track, its middle at along and across.
func (b *Board) lettered(g int, side Side, along, across drawing.Um, text string) drawing.Text {
	l := drawing.Label(drawing.FigureText, g, drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Figure(text))
	if side.upright() {
		l.Turn = 1
	}
	return l.CentredOn(place(side, along, across))
}

// set letters a figure.
func (b *Board) set(g int, side Side, along, across drawing.Um, text string) {
	b.add(b.lettered(g, side, along, across, text))
}

// pull letters a figure in a row beyond the track, with a leader from its link.
func (b *Board) pull(g int, side Side, s slot, at drawing.Um, rows int) {
	from, low, end := leaderOf(side, s, at, rows)
	b.sheet.Add(drawing.Polyline(drawing.Leader, g, corners(from, low, end)...))
	b.leaders = append(b.leaders, [2]drawing.Point{low, end})
	b.set(g, side, s.at, rowAt(side, at, rows), typeface.Readable(s.runs))
}

// corners leaves out points that repeat.
func corners(pts ...drawing.Point) []drawing.Point {
	out := pts[:1]
	for _, p := range pts[1:] {
		if p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	return out
}

// crowded reports whether some figure of a track may have to be pulled out: one
// that does not fit over its link and is at neither end of the chain.
func (b *Board) crowded(t track) bool {
	links := b.links(t)
	for i, l := range links {
		if !l.skip && !l.fits() && !begins(links, i) && !finishes(links, i) {
			return true
		}
	}
	return false
}
