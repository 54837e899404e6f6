package dim

import (
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// runningFigures prints the stops of a running dimension, measured from the
// first.
func (b *Board) runningFigures(t track) (texts []string, values []unit.Length) {
	for _, s := range t.stops[1:] {
		v := (s.Value - t.stops[0].Value).Abs()
		rounded, _ := b.format.Round(v)
		texts = append(texts, b.figure(v, rounded, t.options.Brackets))
		values = append(values, v)
	}
	return texts, values
}

// runningDepth is what a running track takes: its figures stand beyond it, at
// the ends of the extension lines.
func (b *Board) runningDepth(t track) drawing.Um {
	widest := typeface.Width(drawing.Plain(t.origin), drawing.FigureHeight, false)
	texts, _ := b.runningFigures(t)
	for _, text := range texts {
		widest = max(widest, typeface.Width(drawing.Figure(text), drawing.FigureHeight, false))
	}
	return widest + overrun + jog + 2*pad
}

// drawRunning draws one line from the named end through all stops, with an
// origin mark, an arrowhead at each stop, and the figures beyond the line.
func (b *Board) drawRunning(t track, at drawing.Um) {
	b.chain++
	g := b.sheet.Group()
	first, last := t.stops[0], t.stops[len(t.stops)-1]
	b.sheet.Add(drawing.OriginMark(g, place(t.side, first.At, at)))
	b.sheet.Add(drawing.Line(drawing.Dimension, g, place(t.side, first.At, at), place(t.side, last.At, at)))
	texts, values := b.runningFigures(t)
	slots := []slot{{want: first.At, size: RunningRow, runs: drawing.Plain(t.origin)}}
	for i, s := range t.stops {
		b.extend(g, t.side, s, at)
		if i == 0 {
			continue
		}
		b.sheet.Add(drawing.Arrow(g, place(t.side, s.At, at), place(t.side, first.At, at)))
		slots = append(slots, slot{want: s.At, size: RunningRow, runs: drawing.Figure(texts[i-1])})
		b.record(b.chain, drawing.Running, name(t.options.Names, i-1), values[i-1], texts[i-1], place(t.side, first.At, at), place(t.side, s.At, at))
	}
	spread(slots)
	out := t.side.away()
	for _, s := range slots {
		if s.at != s.want {
			b.sheet.Add(drawing.Line(drawing.Leader, g, place(t.side, s.want, at+out*overrun), place(t.side, s.at, at+out*(overrun+jog-pad))))
		}
		align := drawing.Left
		if out < 0 {
			align = drawing.Right
		}
		b.figures = append(b.figures, figureText{group: g, side: t.side, along: s.at, over: at + out*(overrun+jog), runs: s.runs, align: align, flat: true})
	}
}

func name(names []string, i int) []string {
	if i < len(names) && names[i] != "" {
		return []string{names[i]}
	}
	return nil
}
