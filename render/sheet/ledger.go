package sheet

import (
	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// A ledger is a ruled table in lettering for the bench, with stacked fractions
// and, where wanted, blanks to write in. What goes on a sheet to be read at the
// desk is in the smaller tables of scribe.
type ledger struct {
	columns []ledgerColumn
	rows    [][]string
	least   drawing.Um // height of a row, where its cells need no more
}

// A ledgerColumn is one column of a ledger.
type ledgerColumn struct {
	title string
	width drawing.Um // one column may take what is left, with 0
	right bool       // figures stand to the right
	bold  bool
	small bool // in the lettering of tables: for reference, not for the bench
	blank bool // to be written in: nothing but lines at its sides
}

// Distances in a ledger.
const (
	ledgerPad   = 13 * drawing.MM / 10 // over and under the lines of a row
	ledgerGap   = 4 * drawing.MM       // between columns
	ledgerTitle = 6 * drawing.MM
	lineLead    = betweenLines // between lines of a cell
)

// letter is the height of the column's lettering.
func (c ledgerColumn) letter() drawing.Um {
	if c.small {
		return drawing.TableHeight
	}
	return drawing.FigureHeight
}

// runs is a text as the column has it: small digits are not stacked.
func (c ledgerColumn) runs(s string) []drawing.Run {
	if c.small {
		return drawing.Plain(s)
	}
	return drawing.Figure(s)
}

// cellLine is one line of a cell with how far its ink reaches from the base line.
type cellLine struct {
	runs     []drawing.Run
	up, down drawing.Um
}

// ledgerRow is a row broken into lines.
type ledgerRow struct {
	cells  [][]cellLine
	up     drawing.Um // of the first lines
	height drawing.Um
}

// left returns where each column begins, and where the last one ends.
func (l ledger) left(box drawing.Rect) []drawing.Um {
	rest := box.W()
	for _, c := range l.columns {
		rest -= c.width
	}
	at := []drawing.Um{box.Min.X}
	for _, c := range l.columns {
		wide := c.width
		if wide == 0 {
			wide = rest
		}
		at = append(at, at[len(at)-1]+wide)
	}
	return at
}

// broken breaks the cells of a row into lines.
func (l ledger) broken(cells []string, left []drawing.Um) ledgerRow {
	r := ledgerRow{cells: make([][]cellLine, len(cells))}
	for i, text := range cells {
		c := l.columns[i]
		room, high := left[i+1]-left[i]-ledgerGap, c.letter()
		fits := func(s string) bool { return typeface.Width(c.runs(s), high, c.bold) <= room }
		for _, s := range breakBy(text, fits) {
			ink := typeface.Layout(c.runs(s), high, c.bold).Ink
			r.cells[i] = append(r.cells[i], cellLine{c.runs(s), max(high, -ink.Min.Y), max(high/4, ink.Max.Y)})
		}
		if len(r.cells[i]) > 0 {
			r.up = max(r.up, r.cells[i][0].up)
		}
	}
	for _, lines := range r.cells {
		tall := drawing.Um(0)
		for k, line := range lines {
			if k == 0 {
				tall = r.up + line.down
			} else {
				tall += lineLead + line.up + line.down
			}
		}
		r.height = max(r.height, tall)
	}
	r.height = max(r.height+2*ledgerPad, l.least)
	return r
}

// height is what the whole ledger takes in a box of the width.
func (l ledger) height(width drawing.Um) drawing.Um {
	left := l.left(drawing.Box(0, 0, width, 0))
	sum := ledgerTitle
	for _, cells := range l.rows {
		sum += l.broken(cells, left).height
	}
	return sum
}

// write writes as many rows as fit under their titles, and returns how many.
// Nothing is written where not even one fits.
func (l ledger) write(w *scribe) int {
	left := l.left(w.box)
	if len(l.rows) == 0 || w.room() < ledgerTitle+l.broken(l.rows[0], left).height {
		return 0
	}
	top := w.y
	for i, c := range l.columns {
		if c.title == "" {
			continue
		}
		t := drawing.Label(drawing.CellText, 0, drawing.Pt(left[i], w.y+drawing.TableHeight+drawing.MM), drawing.TableHeight, drawing.Left, drawing.Plain(c.title))
		if c.right {
			t.At.X, t.Align = left[i+1]-ledgerGap, drawing.Right
		}
		t.Table = true
		if c.blank {
			t.At.X += drawing.MM
		}
		w.sheet.Add(t)
	}
	w.y += ledgerTitle
	l.rule(w, left, drawing.Frame)
	for i, cells := range l.rows {
		r := l.broken(cells, left)
		if w.room() < r.height {
			l.sides(w, left, top)
			return i
		}
		l.row(w, left, r)
		w.y += r.height
		l.rule(w, left, drawing.FrameThin)
	}
	l.sides(w, left, top)
	return len(l.rows)
}

// rule draws a line across.
func (l ledger) rule(w *scribe, left []drawing.Um, c drawing.Class) {
	w.sheet.Add(drawing.Line(c, 0, drawing.Pt(left[0], w.y), drawing.Pt(left[len(left)-1], w.y)))
}

// sides draws the lines beside the blanks, from the titles down.
func (l ledger) sides(w *scribe, left []drawing.Um, top drawing.Um) {
	for i, c := range l.columns {
		if !c.blank {
			continue
		}
		for k, x := range []drawing.Um{left[i], left[i+1]} {
			if k == 0 && i > 0 && l.columns[i-1].blank {
				continue
			}
			w.sheet.Add(drawing.Line(drawing.FrameThin, 0, drawing.Pt(x, top+ledgerTitle), drawing.Pt(x, w.y)))
		}
	}
}

// row writes the lines of a row, first lines on one base line, and alone in a
// high row in its middle.
func (l ledger) row(w *scribe, left []drawing.Um, r ledgerRow) {
	for i, c := range l.columns {
		y := w.y + ledgerPad + r.up
		if l.single(r) {
			y = w.y + (r.height+c.letter())/2
		}
		for k, line := range r.cells[i] {
			if k > 0 {
				y += lineLead + line.up
			}
			t := drawing.Label(drawing.NoteText, 0, drawing.Pt(left[i], y), c.letter(), drawing.Left, line.runs)
			t.Table = c.small
			if c.right {
				t.At.X, t.Align = left[i+1]-ledgerGap, drawing.Right
			}
			t.Bold = c.bold
			w.sheet.Add(t)
			y += line.down
		}
	}
}

// single reports whether no cell of the row has more than one line.
func (l ledger) single(r ledgerRow) bool {
	for _, lines := range r.cells {
		if len(lines) > 1 {
			return false
		}
	}
	return true
}

// paged writes a ledger over as many pages as it needs, under a heading on
// each, and returns the pages, the last with its scribe for what comes below. A
// row that fits on no page is left to overrun its own, where the legibility
// check reports it.
func (l ledger) paged(start func(n int) (*page, *scribe)) (pages []*page, last *scribe) {
	rest := l
	for n := 0; ; n++ {
		p, w := start(n)
		pages = append(pages, p)
		done := rest.write(w)
		if done == 0 && n > 0 {
			w.box.Max.Y += p.sheet.H
			done = rest.write(w)
		}
		if rest.rows = rest.rows[done:]; len(rest.rows) == 0 {
			return pages, w
		}
	}
}
