package sheet

import (
	"strings"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// A scribe writes lettering into a box from the top down. It never leaves the
// box: what does not fit is left over, and whoever writes says so.
type scribe struct {
	sheet *drawing.Sheet
	box   drawing.Rect
	y     drawing.Um // top of what comes next
}

const (
	betweenLines = 3 * drawing.MM / 2
	betweenCells = 2 * drawing.MM
	rowPitch     = 4200 * drawing.MM / 1000
)

func newScribe(s *drawing.Sheet, box drawing.Rect) *scribe {
	return &scribe{sheet: s, box: box, y: box.Min.Y}
}

// room returns how much of the box is left below.
func (w *scribe) room() drawing.Um { return w.box.Max.Y - w.y }

// rest is the box that is left.
func (w *scribe) rest() drawing.Rect {
	box := w.box
	box.Min.Y = w.y
	return box
}

// skip leaves room free.
func (w *scribe) skip(d drawing.Um) { w.y += d }

// line writes one line of runs and reports whether it fitted.
func (w *scribe) line(c drawing.Class, height, indent drawing.Um, bold bool, runs []drawing.Run) bool {
	ink := typeface.Layout(runs, height, bold).Ink
	up, down := upAndDown(ink, height)
	if w.room() < up+down {
		return false
	}
	t := drawing.Label(c, 0, drawing.Pt(w.box.Min.X+indent, w.y+up), height, drawing.Left, runs)
	t.Bold = bold
	w.sheet.Add(t)
	w.y += up + down + betweenLines
	return true
}

// heading writes a block's title, as high whatever its letters, so that what
// stands below titles side by side is level.
func (w *scribe) heading(s string) bool {
	if w.room() < 14*drawing.MM {
		return false
	}
	foot := w.y + drawing.FigureHeight + drawing.MM/2
	t := drawing.Label(drawing.HeadingText, 0, drawing.Pt(w.box.Min.X, foot), drawing.FigureHeight, drawing.Left, drawing.Plain(s))
	t.Bold = true
	w.sheet.Add(t)
	w.y = foot + drawing.MM + betweenLines
	return true
}

// note writes text to be read at the bench, broken between words, with later
// lines hung by indent. It reports whether all of it fitted.
func (w *scribe) note(s string, indent drawing.Um) bool {
	hang := drawing.Um(0)
	for _, part := range breakLines(s, w.box.W()-indent, drawing.FigureHeight) {
		if !w.line(drawing.NoteText, drawing.FigureHeight, hang, false, drawing.Figure(part)) {
			return false
		}
		hang = indent
	}
	return true
}

// needed returns the height that notes take, each as note writes it.
func needed(notes []string, width, indent drawing.Um) drawing.Um {
	var sum drawing.Um
	for _, s := range notes {
		for _, part := range breakLines(s, width-indent, drawing.FigureHeight) {
			ink := typeface.Layout(drawing.Figure(part), drawing.FigureHeight, false).Ink
			up, down := upAndDown(ink, drawing.FigureHeight)
			sum += up + down + betweenLines
		}
	}
	return sum
}

// upAndDown returns how far a line of lettering reaches above and below its base
// line. Stacked fractions have a little more, so that also the boxes that readers
// of a PDF put around words keep apart.
func upAndDown(ink drawing.Rect, height drawing.Um) (up, down drawing.Um) {
	const stack = 150
	return max(height, -ink.Min.Y+stack), max(height/4, ink.Max.Y)
}

// breakLines breaks s between words into lines no wider than width, but not
// within a figure and its unit. A word wider than that is broken within.
func breakLines(s string, width, height drawing.Um) []string {
	return breakBy(s, func(t string) bool { return typeface.Width(drawing.Figure(t), height, false) <= width })
}

// breakCell is breakLines for the rows of a table, whose fractions run along
// the line.
func breakCell(s string, width drawing.Um) []string {
	return breakBy(s, func(t string) bool { return typeface.Width(drawing.Plain(t), drawing.TableHeight, false) <= width })
}

// breakBy breaks s where lines would not fit any more; sheets whose numbers are not
// known yet count as the widest numbers that they may have.
func breakBy(s string, measured func(string) bool) []string {
	fits := measured
	if strings.Contains(s, "{sheets.") {
		fits = func(t string) bool { return measured(sheetRefs.ReplaceAllString(t, widestRef)) }
	}
	words := unbroken(strings.Fields(s))
	if whole := strings.Join(words, " "); whole != "" && fits(whole) {
		return []string{whole} // as most are
	}
	var lines []string
	var line string
	for _, word := range words {
		if line != "" && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for line = word; !fits(line); {
			n := cutWord(line, fits)
			lines = append(lines, strings.TrimSpace(line[:n]))
			line = strings.TrimSpace(line[n:])
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// A tableColumn is one column of a table.
type tableColumn struct {
	title string
	width drawing.Um // the last column may take what is left, with 0
	right bool       // figures stand to the right
}

// table writes rows under their titles, each cell broken into as many lines as
// it needs, and returns how many rows fitted. after is called with the place
// of each row's first cell.
func (w *scribe) table(columns []tableColumn, rows [][]string, after func(row int, at drawing.Point)) int {
	left := make([]drawing.Um, len(columns)+1)
	left[0] = w.box.Min.X
	for i, c := range columns {
		wide := c.width
		if wide == 0 {
			wide = w.box.Max.X - left[i]
		}
		left[i+1] = left[i] + wide
	}
	titles := make([]string, len(columns))
	for i, c := range columns {
		titles[i] = c.title
	}
	if w.room() < 3*rowPitch || !w.row(columns, left, titles, true, nil) {
		return 0
	}
	rule := w.y - rowPitch + drawing.TableHeight + 3*drawing.MM/2 // clear of the titles' descenders
	w.y = rule
	w.sheet.Add(drawing.Line(drawing.FrameThin, 0, drawing.Pt(left[0], rule), drawing.Pt(left[len(columns)], rule)))
	w.y += drawing.MM
	for i, r := range rows {
		if !w.row(columns, left, r, false, func(at drawing.Point) {
			if after != nil {
				after(i, at)
			}
		}) {
			return i
		}
	}
	return len(rows)
}

// row writes one row and reports whether it fitted.
func (w *scribe) row(columns []tableColumn, left []drawing.Um, cells []string, bold bool, at func(drawing.Point)) bool {
	texts := make([][]string, len(columns))
	most := 1
	for i := range columns {
		texts[i] = breakCell(cells[i], left[i+1]-left[i]-betweenCells)
		most = max(most, len(texts[i]))
	}
	if w.room() < rowPitch*drawing.Um(most) {
		return false
	}
	foot := w.y + drawing.TableHeight
	if at != nil {
		at(drawing.Pt(left[0], foot))
	}
	for i, c := range columns {
		for k, s := range texts[i] {
			p, align := drawing.Pt(left[i], foot+rowPitch*drawing.Um(k)), drawing.Left
			if c.right {
				p.X, align = left[i+1]-betweenCells, drawing.Right
			}
			t := drawing.Label(drawing.CellText, 0, p, drawing.TableHeight, align, drawing.Plain(s))
			t.Table, t.Bold = true, bold
			w.sheet.Add(t)
		}
	}
	w.y += rowPitch * drawing.Um(most)
	return true
}
