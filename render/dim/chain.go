package dim

import (
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// printed are the figures of a chain: stops are rounded from the first on, and
// each link is the difference of two rounded stops, so that the links add up
// to the overall figure as printed.
func (b *Board) printed(stops []Stop) []unit.Length {
	base := stops[0].Value
	var out []unit.Length
	last := unit.Length(0)
	for _, s := range stops[1:] {
		at, _ := b.format.Round((s.Value - base).Abs())
		out = append(out, at-last)
		last = at
	}
	return out
}

// figure prints a length that is rounded to the second.
func (b *Board) figure(exact, rounded unit.Length, check bool) string {
	text := b.format.Text(rounded)
	if exact != rounded {
		text = unit.About + text
	}
	if check {
		text = "(" + text + ")"
	}
	return text
}

// figureText is a figure that waits to be drawn over all lines.
type figureText struct {
	group int
	side  Side
	along drawing.Um // its middle along the track
	over  drawing.Um // its middle across
	runs  []typeface.Run
	align drawing.Align
	flat  bool // reads from below even where the track is upright
}

// extend draws the extension line from an outline to a track.
func (b *Board) extend(g int, side Side, s Stop, at drawing.Um) {
	from := s.From + side.away()*gap
	to := at + side.away()*overrun
	if (to-from)*side.away() > 0 {
		b.sheet.Add(drawing.Line(drawing.Extension, g, place(side, s.At, from), place(side, s.At, to)))
	}
}

// drawChain draws a chain or an overall figure on its track.
func (b *Board) drawChain(t track, at drawing.Um) {
	chain := b.chainOf(t)
	rounded := b.printed(t.stops)
	g := b.sheet.Group()
	for _, s := range t.stops {
		b.extend(g, t.side, s, at)
	}
	role := t.role
	if t.options.Brackets {
		role = drawing.Check
	}
	for i := range rounded {
		a, z := t.stops[i], t.stops[i+1]
		exact := (z.Value - a.Value).Abs()
		var names []string
		if i < len(t.options.Names) && t.options.Names[i] != "" {
			names = []string{t.options.Names[i]}
		}
		b.dimensionLine(g, t.side, a.At, z.At, at)
		b.record(chain, role, names, exact, b.figure(exact, rounded[i], t.options.Brackets), place(t.side, a.At, at), place(t.side, z.At, at))
	}
	b.setFigures(g, t, at)
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
	if t.role == drawing.Link && !t.options.Brackets {
		b.chains[key] = b.chain
	}
	return b.chain
}

// ends is where a chain begins and ends on one side.
type ends struct {
	side Side
	a, z drawing.Um
}

// record keeps what a figure says, for readers of marks.
func (b *Board) record(chain int, role drawing.Role, names []string, v unit.Length, text string, from, to drawing.Point) {
	b.sheet.Dims = append(b.sheet.Dims, drawing.DimRecord{
		Chain: chain, Role: role, Names: names, Value: v, Printed: text, Times: 1,
		From: from, To: to, ScaleNum: b.scale.Num, ScaleDen: b.scale.Den,
	})
}

// dimensionLine draws a line with arrowheads, or with strokes where it is too
// short for them.
func (b *Board) dimensionLine(g int, side Side, a, z, at drawing.Um) {
	from, to := place(side, a, at), place(side, z, at)
	if from == to {
		return
	}
	b.sheet.Add(drawing.Line(drawing.Dimension, g, from, to))
	if (z - a).Abs() >= arrows {
		b.sheet.Add(drawing.Arrow(g, from, to), drawing.Arrow(g, to, from))
		return
	}
	b.sheet.Add(drawing.Tick(g, from, to), drawing.Tick(g, to, from))
}

// setFigures places a track's figures: over their own links where they fit,
// the others a step further off, spread along the track, each with a line back
// to its link.
func (b *Board) setFigures(g int, t track, at drawing.Um) {
	var pulled []slot
	for i, text := range b.texts(t) {
		a, z := min(t.stops[i].At, t.stops[i+1].At), max(t.stops[i].At, t.stops[i+1].At)
		runs := drawing.Figure(text)
		wide := typeface.Width(runs, drawing.FigureHeight, false)
		if wide+2*pad <= z-a {
			b.figures = append(b.figures, figureText{group: g, side: t.side, along: (a + z) / 2, over: at - lift, runs: runs, align: drawing.Middle})
			continue
		}
		pulled = append(pulled, slot{want: (a + z) / 2, size: wide + 2*pad, runs: runs})
	}
	spread(pulled)
	for _, s := range pulled {
		b.figures = append(b.figures, figureText{group: g, side: t.side, along: s.at, over: at - lift - secondRow, runs: s.runs, align: drawing.Middle})
		low, high := at-lift-stackHalf, at-lift-secondRow+stackHalf
		b.sheet.Add(drawing.Polyline(drawing.Leader, g, corners(
			place(t.side, s.want, at), place(t.side, s.want, low), place(t.side, s.at, high))...))
	}
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

// texts prints all links of a track.
func (b *Board) texts(t track) []string {
	var out []string
	for i, rounded := range b.printed(t.stops) {
		out = append(out, b.figure((t.stops[i+1].Value-t.stops[i].Value).Abs(), rounded, t.options.Brackets))
	}
	return out
}

// crowded reports whether some figure of a track has to be pulled out.
func (b *Board) crowded(t track) bool {
	for i, text := range b.texts(t) {
		if typeface.Width(drawing.Figure(text), drawing.FigureHeight, false)+2*pad > (t.stops[i+1].At - t.stops[i].At).Abs() {
			return true
		}
	}
	return false
}
