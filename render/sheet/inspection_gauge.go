package sheet

import (
	"fmt"
	"strings"

	"slatwright/geometry/inspect"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/word"
)

// A gauge is drawn as a stepped stick: the go end, then the no-go end. How long
// it is does not matter; its widths are to scale.
const (
	gaugeEnd   = 27 * drawing.MM // of either end, on paper
	gaugeSides = 22 * drawing.MM // for the dimensions at either side
	gaugeTitle = 11 * drawing.MM
	gaugeGap   = 9 * drawing.MM
)

// snug reports whether a gauge's go end is no less than the place is drawn: on a
// rack made exactly to the drawing it enters with nothing to spare.
func snug(g inspect.Gauge) bool { return g.Go > 0 && g.Go >= g.Drawn }

// gaugeSheets draw the gauges, as many to a sheet as fit. They are
// full size where they all go on one, else half size. Without says which gaps
// have none.
func gaugeSheets(in Input, list []inspect.Gauge, without string) []*page {
	if len(list) == 0 {
		return nil
	}
	area := in.room()
	note := "Cut gauges from stiff waste, corners square, and mark their ends. GO enters every place of its name without force, NO-GO enters none. Sideways gap: between facing slats; upright gap: from a slat up to the one above."
	if names := tooNear(in, list); len(names) > 0 {
		note += " " + word.Capital(word.List(names)) + ": GO and NO-GO are nearer than the shop works to, so measure with a calliper too."
	}
	for _, g := range list {
		if snug(g) {
			note += " TIGHT: its GO is the drawn size itself, with nothing to spare, and may enter snugly."
			break
		}
	}
	note += without
	top := needed([]string{note}, area.W(), 0) + 4*drawing.MM
	den := int64(1)
	if len(gaugePlaces(area, top, list, den)) > 1 {
		den = nextScale(in, den)
	}
	var pages []*page
	for n, spots := range gaugePlaces(area, top, list, den) {
		p := in.newPage(fmt.Sprintf("gauges-%d", n+1), "Gap gauges")
		p.scale = fmt.Sprintf("1:%d", den)
		newScribe(p.sheet, p.area).note(note, 0)
		for _, s := range spots {
			drawGauge(p, s.gauge, s.at, den)
		}
		pages = append(pages, p)
	}
	return pages
}

// tooNear names the gauges whose two ends differ by less than the shop can be off.
func tooNear(in Input, list []inspect.Gauge) (names []string) {
	for _, g := range list {
		if g.Go > 0 && g.NoGo > 0 && g.NoGo-g.Go < 2*in.Rack.Design.Shop.Tolerance {
			names = append(names, gaugeName(g))
		}
	}
	return names
}

// ungauged says which gaps have no gauge, and what to do about them.
func ungauged(in Input, list []inspect.Dimension) string {
	var names []string
	for _, d := range list {
		name := d.Name + " " + in.Rack.Format.Unit(d.Drawn)
		if d.Where != "" {
			name = d.Where + ": " + name
		}
		names = append(names, name)
	}
	if len(names) == 0 {
		return ""
	}
	return " No gauge for " + strings.Join(names, "; ") + ": the fit leaves less than " + in.Rack.Format.Unit(in.Rack.Format.System.Finest()) +
		" on either side. Set these by a spacer of that size and measure them with a calliper."
}

// A gaugeSpot is a gauge with the left top corner of its room.
type gaugeSpot struct {
	gauge inspect.Gauge
	at    drawing.Point
}

// gaugePlaces sets gauges in rows, page by page.
func gaugePlaces(area drawing.Rect, top drawing.Um, list []inspect.Gauge, den int64) [][]gaugeSpot {
	const wide = 2*gaugeEnd + 2*gaugeSides
	perRow := max(1, int(area.W()/wide))
	pages := [][]gaugeSpot{nil}
	y := area.Min.Y + top
	for i := 0; i < len(list); i += perRow {
		row := list[i:min(i+perRow, len(list))]
		high := drawing.Um(0)
		for _, g := range row {
			high = max(high, gaugeTitle+onPaper(max(g.Go, g.NoGo), den)+gaugeGap)
		}
		if y+high > area.Max.Y && len(pages[len(pages)-1]) > 0 {
			pages = append(pages, nil)
			y = area.Min.Y + top
		}
		for k, g := range row {
			at := drawing.Pt(area.Min.X+area.W()/drawing.Um(perRow)*drawing.Um(k), y)
			pages[len(pages)-1] = append(pages[len(pages)-1], gaugeSpot{g, at})
		}
		y += high
	}
	return pages
}

// gaugeName is a gauge with the columns that it is of.
func gaugeName(g inspect.Gauge) string {
	if g.Where == "" {
		return g.Name
	}
	return g.Where + ": " + g.Name
}

// drawGauge draws one gauge with its widths.
func drawGauge(p *page, g inspect.Gauge, at drawing.Point, den int64) {
	name := gaugeName(g)
	if snug(g) {
		name += ": TIGHT"
	}
	title := drawing.Label(drawing.HeadingText, 0, drawing.Pt(at.X, at.Y+drawing.FigureHeight), drawing.FigureHeight, drawing.Left, drawing.Plain(name))
	title.Bold = true
	p.sheet.Add(title)
	tall := onPaper(max(g.Go, g.NoGo), den)
	out := drawing.Box(at.X+gaugeSides, at.Y+gaugeTitle, 2*gaugeEnd, tall)
	end := func(x drawing.Um, l length, word string) drawing.Rect {
		high := onPaper(l, den)
		r := drawing.Box(x, out.Max.Y-high, gaugeEnd, high)
		p.sheet.Add(drawing.Label(drawing.NoteText, 0, drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Plain(word)).CentredOn(r.Centre()))
		return r
	}
	b := dim.New(p.sheet, p.in.Rack.Format, drawing.Ratio{Num: 1, Den: den})
	wide := func(side dim.Side, r drawing.Rect, l length, from drawing.Um) {
		b.Overall(side, dim.Stop{At: r.Min.Y, Value: 0, From: from}, dim.Stop{At: r.Max.Y, Value: l, From: from}, dim.Options{})
	}
	switch {
	case g.Go > 0 && g.NoGo > 0:
		l, r := end(out.Min.X, g.Go, "GO"), end(out.Min.X+gaugeEnd, g.NoGo, "NO-GO")
		p.sheet.Add(drawing.Polygon(drawing.Visible, 0, drawing.NoFill, drawing.Pt(l.Min.X, l.Max.Y), l.Min, drawing.Pt(l.Max.X, l.Min.Y),
			r.Min, drawing.Pt(r.Max.X, r.Min.Y), r.Max))
		wide(dim.LeftOf, l, g.Go, l.Min.X)
		wide(dim.RightOf, r, g.NoGo, r.Max.X)
	case g.Go > 0:
		out.Max.X = out.Min.X + gaugeEnd
		r := end(out.Min.X, g.Go, "GO")
		p.sheet.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, r))
		wide(dim.LeftOf, r, g.Go, r.Min.X)
	default:
		out.Max.X = out.Min.X + gaugeEnd
		r := end(out.Min.X, g.NoGo, "NO-GO")
		p.sheet.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, r))
		wide(dim.RightOf, r, g.NoGo, r.Max.X)
	}
	b.Draw(out)
}
