package dim

import (
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// runningFigures prints the stops of a running dimension, measured from the
// first: their figures, and these as they are lettered.
func (b *Board) runningFigures(t track) (figures, texts []string, values []unit.Length) {
	for _, s := range t.stops[1:] {
		v := (s.Value - t.stops[0].Value).Abs()
		rounded, _ := b.format.Round(v)
		figures = append(figures, b.figure(v, rounded, t.options.Brackets))
		texts = append(texts, b.lettering(v, rounded, t.options.Brackets))
		values = append(values, v)
	}
	return figures, texts, values
}

// runningDepth is what a running track takes: its figures stand beyond it, at
// the ends of the extension lines.
func (b *Board) runningDepth(t track) drawing.Um {
	widest := typeface.Width(drawing.Plain(t.origin), drawing.FigureHeight, false)
	_, texts, _ := b.runningFigures(t)
	for _, text := range texts {
		widest = max(widest, typeface.Width(drawing.Figure(text), drawing.FigureHeight, false))
	}
	return nextTrack + widest + overrun + jog + 2*pad
}

// drawRunning draws one line from the named end through all stops, with an
// origin mark, an arrowhead at each stop, and the figures beyond the line. Where
// the view is broken after the named end, the line bears a break instead of the
// mark, and no figure can be measured on paper.
func (b *Board) drawRunning(t track, at drawing.Um) {
	b.chain++
	g := b.sheet.Group()
	first, last := t.stops[0], t.stops[len(t.stops)-1]
	from := place(t.side, first.At, at)
	if t.options.Broken {
		b.line(g, t, from, place(t.side, t.stops[1].At, at))
		from = place(t.side, t.stops[1].At, at)
	} else {
		b.add(drawing.OriginMark(g, from))
		b.extend(g, t.side, first, at)
	}
	if end := place(t.side, last.At, at); end != from {
		b.add(drawing.Line(drawing.Dimension, g, from, end))
	}
	figures, texts, values := b.runningFigures(t)
	slots := []slot{{want: first.At, size: RunningRow, runs: drawing.Plain(t.origin)}}
	for i, s := range t.stops[1:] {
		b.extend(g, t.side, s, at)
		b.sheet.Add(drawing.Arrow(g, place(t.side, s.At, at), place(t.side, first.At, at)))
		slots = append(slots, slot{want: s.At, size: RunningRow, runs: drawing.Figure(texts[i])})
		b.sheet.Dims = append(b.sheet.Dims, drawing.DimRecord{
			Chain: b.chain, Role: drawing.Running, Sum: sumBetween(first, s), Value: values[i], Printed: figures[i], Second: b.second(values[i]), Times: 1,
			From: place(t.side, first.At, at), To: place(t.side, s.At, at),
			ScaleNum: b.scale.Num, ScaleDen: b.scale.Den, Broken: t.options.Broken,
		})
	}
	spread(slots)
	for i, s := range slots {
		b.setRunning(g, t, s, at, i == 0)
	}
}

// setRunning letters one running figure beyond the line, with a leader from its
// extension line where it had to give way.
func (b *Board) setRunning(g int, t track, s slot, at drawing.Um, origin bool) {
	out := t.side.away()
	if s.at != s.want && !(origin && t.options.Broken) {
		b.sheet.Add(drawing.Line(drawing.Leader, g, place(t.side, s.want, at+out*overrun), place(t.side, s.at, at+out*(overrun+jog-pad))))
	}
	l := drawing.Label(drawing.FigureText, g, drawing.Point{}, drawing.FigureHeight, drawing.Middle, s.runs)
	across := at + out*(overrun+jog+l.Width()/2)
	if !t.side.upright() {
		l.Turn = 1
	}
	b.add(l.CentredOn(place(t.side, s.at, across)))
}
