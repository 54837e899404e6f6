package template

import (
	"strconv"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// A scale is one side of a ruler: its ticks and the distance of its figures.
type scale struct {
	unit   unit.Length // what the figures count
	step   unit.Length // from tick to tick
	half   int         // every so many ticks a longer one
	whole  int         // every so many ticks a figure
	name   string
	strong int // the figure to be measured to: 100 mm, 4 in
}

var (
	millimetres = scale{unit.Millimetre, unit.Millimetre, 5, 10, "mm", 100}
	inches      = scale{unit.Inch, unit.Inch / 8, 4, 8, "in", 4}
)

// Heights of ticks and the distance of figures from a ruler's line.
const (
	tick      = 2 * mm
	halfTick  = 3 * mm
	wholeTick = 4 * mm
	figureGap = 700
)

// level returns a ruler along the page: its zero at origin, ticks rising by
// up (1 rises, -1 hangs) over length.
func (s scale) level(origin drawing.Point, length drawing.Um, up drawing.Um) []drawing.Mark {
	return s.ruler(length, func(along, aside drawing.Um) drawing.Point {
		return drawing.Pt(origin.X+along, origin.Y-up*aside)
	}, func(t drawing.Text, along drawing.Um) drawing.Text {
		y := origin.Y - wholeTick - figureGap
		if up < 0 {
			y = origin.Y + wholeTick + figureGap + t.Height
		}
		t.At = drawing.Pt(origin.X+along, y)
		return t
	})
}

// upright returns a ruler across the page: zero at origin, running down, ticks
// to the right, or to the left where right is -1. Figures read from the right.
func (s scale) upright(origin drawing.Point, length drawing.Um, right drawing.Um) []drawing.Mark {
	return s.ruler(length, func(along, aside drawing.Um) drawing.Point {
		return drawing.Pt(origin.X+right*aside, origin.Y+along)
	}, func(t drawing.Text, along drawing.Um) drawing.Text {
		x := origin.X + wholeTick + figureGap + t.Height
		if right < 0 {
			x = origin.X - wholeTick - figureGap
		}
		t.Turn = 1
		t.At = drawing.Pt(x, origin.Y+along)
		return t
	})
}

// ruler draws ticks and figures by way of two placings.
func (s scale) ruler(length drawing.Um, place func(along, aside drawing.Um) drawing.Point, figure func(drawing.Text, drawing.Um) drawing.Text) []drawing.Mark {
	var out []drawing.Mark
	last := 0
	for i := 0; um(unit.Length(i)*s.step) <= length; i++ {
		last = i
		x := um(unit.Length(i) * s.step)
		reach := tick
		switch {
		case i%s.whole == 0:
			reach = wholeTick
			n := i / s.whole * s.whole / int(s.unit/s.step)
			text := strconv.Itoa(n)
			if i == s.whole { // once is enough, and leaves the others apart
				text += " " + s.name
			}
			t := drawing.Label(drawing.FigureText, 0, drawing.Point{}, drawing.TableHeight, drawing.Middle, drawing.Plain(text))
			t.Table, t.Bold = true, n == s.strong
			out = append(out, inward(figure(t, x), i == 0))
		case i%s.half == 0:
			reach = halfTick
		}
		out = append(out, drawing.Line(drawing.Register, 0, place(x, 0), place(x, reach)))
	}
	return append(out, drawing.Line(drawing.Register, 0, place(0, 0), place(um(unit.Length(last)*s.step), 0)))
}

// inward sets the figure at a ruler's zero so that it does not reach past the
// ruler's end. Upright rulers run down and their figures read upward.
func inward(t drawing.Text, zero bool) drawing.Text {
	if zero {
		t.Align = drawing.Left
		if t.Turn == 1 {
			t.Align = drawing.Right
		}
	}
	return t
}
