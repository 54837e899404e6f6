package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/inspect"
	"slatwright/render/drawing"
)

// inspectionSheets returns what to measure on the finished rack, with limits and
// blanks, and the gauges to make for it.
func inspectionSheets(in Input) []*page {
	dims := in.dimensions()
	pages := measureSheets(in, dims)
	return append(pages, gaugeSheets(in, inspect.Gauges(dims), ungauged(in, inspect.Ungauged(dims)))...)
}

// inspectionRow is high enough to write in.
const inspectionRow = 8 * drawing.MM

// measureSheets list the dimensions, then the diagonals, then the line to sign.
func measureSheets(in Input, dims []inspect.Dimension) []*page {
	l := measureLedger(in, dims)
	pages, w := l.paged(func(n int) (*page, *scribe) {
		p := in.newPage(fmt.Sprintf("inspection-%d", n+1), "Inspection")
		w := newScribe(p.sheet, p.area)
		if n == 0 {
			note := measureNote(in, dims)
			if len(inspect.Gauges(dims)) == 0 { // else the gauges' own sheet says so
				note += ungauged(in, inspect.Ungauged(dims))
			}
			w.note(note, 0)
			w.skip(drawing.MM)
		}
		return p, w
	})
	pages, w = squareSheets(in, len(dims), pages, w)
	sign(w)
	return pages
}

// measureNote says how to read the limits.
func measureNote(in Input, dims []inspect.Dimension) string {
	tol := in.Rack.Design.Shop.Tolerance
	text := "Places: both ends, front and back, of every cell or column, and both of two facing slats; write the worst figure. Least, greatest: what the fit bears " +
		"of this one figure alone, and in the column beside them what a bottle meets, or comes off, beyond; a bar: no limit near."
	if slices.ContainsFunc(dims, func(d inspect.Dimension) bool { return d.Tight(tol) }) {
		text += " TIGHT: a limit nearer than ±" + in.Rack.Format.Unit(tol) + "."
	}
	return text
}

// measureLedger lists the dimensions.
func measureLedger(in Input, dims []inspect.Dimension) ledger {
	f := in.Rack.Format
	unit := ", " + f.System.String()
	l := ledger{least: inspectionRow, columns: []ledgerColumn{
		{title: "no.", width: 11 * drawing.MM}, {title: "measure, between"}, {title: "places", width: 14 * drawing.MM, right: true},
		{title: "drawn" + unit, width: 22 * drawing.MM, right: true},
		{title: "least", width: 20 * drawing.MM, right: true}, {title: "greatest", width: 21 * drawing.MM, right: true},
		{title: "limited by", width: 41 * drawing.MM, small: true}, {title: "measured", width: 23 * drawing.MM, blank: true},
	}}
	for i, d := range dims {
		l.rows = append(l.rows, []string{
			strconv.Itoa(i + 1), placeName(d) + ": " + d.Between, strconv.Itoa(d.Count), f.Text(d.Drawn),
			limitText(in, d.Least), limitText(in, d.Greatest), limitedBy(in, d), "",
		})
	}
	return l
}

// limitText prints a limit, or the bar for none.
func limitText(in Input, l length) string {
	if l == 0 {
		return "–"
	}
	return in.Rack.Format.Text(l)
}

// short are the checks of the fit by what the bottle comes near to.
var short = map[string]string{
	"fit.rest": "rest in the gap", "fit.side": "legs", "fit.above": "above", "fit.lower_apron": "lower apron",
	"fit.upper_apron": "upper apron", "fit.depth": "lie on the slats",
}

// shortly names a check of the fit, or a statement, in a narrow column.
func shortly(code string) string {
	if code == "" {
		return ""
	}
	if s, ok := short[code]; ok {
		return s
	}
	return inWords(code) + " stated"
}

// limitedBy names what sets the limits: checks of the fit in plain words,
// statements by what they are about.
func limitedBy(in Input, d inspect.Dimension) string {
	if d.Fails != "" {
		return "FAILS as drawn: " + shortly(d.Fails)
	}
	tol := in.Rack.Design.Shop.Tolerance
	below, above := shortly(d.LeastBy), shortly(d.GreatestBy)
	tight := func(near bool) string {
		if near {
			return " TIGHT"
		}
		return ""
	}
	low, high := tight(d.TightBelow(tol)), tight(d.TightAbove(tol))
	switch {
	case below == "" && above == "":
		return ""
	case below == above && low == high:
		return strings.TrimSpace(below + low)
	case above == "":
		return "least: " + below + low
	case below == "":
		return "greatest: " + above + high
	}
	return "least: " + below + low + "; greatest: " + above + high
}

// signHigh is what the line to sign takes.
const signHigh = 12 * drawing.MM

// sign draws the lines for the date and the initials of who measured.
func sign(w *scribe) {
	foot := w.y + signHigh - 3*drawing.MM
	at := w.box.Min.X
	for _, f := range []struct {
		name       string
		text, line drawing.Um
	}{{"Accepted", 22 * drawing.MM, 16 * drawing.MM}, {"Date", 12 * drawing.MM, 44 * drawing.MM}, {"Initials", 18 * drawing.MM, 32 * drawing.MM}} {
		w.sheet.Add(drawing.Label(drawing.NoteText, 0, drawing.Pt(at, foot), drawing.FigureHeight, drawing.Left, drawing.Plain(f.name)))
		at += f.text
		w.sheet.Add(drawing.Line(drawing.FrameThin, 0, drawing.Pt(at, foot+drawing.MM), drawing.Pt(at+f.line, foot+drawing.MM)))
		at += f.line + 8*drawing.MM
	}
	w.y += signHigh
}
