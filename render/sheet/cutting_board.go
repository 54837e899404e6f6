package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// A board's bar has a line over it, and the lengths of its sections below.
const (
	barTitle = 10 * drawing.MM
	barBelow = 12 * drawing.MM
	barGap   = 3 * drawing.MM
	leastRow = 11 * drawing.MM / 2 // of a strip, so that its mark can be read
	tallest  = 90 * drawing.MM
)

// pickScales chooses the scales of the bars: along, so that the longest board
// goes across the sheet; across, larger, so that the narrowest strip holds its
// mark.
func (c *cutter) pickScales() {
	across := unit.Length(c.in.newPage("", "").area.W()) * unit.Micrometre
	var long, wide unit.Length
	thin := unit.Length(0)
	for _, b := range c.p.Boards {
		long, wide = max(long, b.Board.Length), max(wide, b.Board.Width)
		for _, s := range b.Sections {
			for _, t := range s.Strips {
				if thin == 0 || t.Width < thin {
					thin = t.Width
				}
			}
		}
	}
	c.long = max(int64((long+across-1)/across), 1)
	for _, n := range []int64{1, 2, 4, 5, 6, 8, 10, 12, 15, 16, 18, 20, 24, 25, 30, 32, 40, 48, 50, 60, 64, 80, 100} {
		if long <= unit.Length(n)*across {
			c.long = n
			break
		}
	}
	c.wide = 1
	for _, n := range []int64{2, 3, 4, 5, 6, 8, 10} {
		if onPaper(thin, n) >= leastRow || onPaper(wide, c.wide) > tallest {
			c.wide = n
		}
	}
	highest := unit.Length(tallest) * unit.Micrometre
	c.wide = max(c.wide, int64((wide+highest-1)/highest))
}

// onPaper returns a length drawn so many times smaller.
func onPaper(l unit.Length, times int64) drawing.Um {
	return drawing.Ratio{Num: 1, Den: times * int64(unit.Micrometre)}.Of(drawing.Um(l))
}

// boardSheets draws every layout, each leaf of a resawn board as a bar of its
// own.
func (c *cutter) boardSheets() {
	title := "Cutting plan: boards"
	c.columns = 1
	c.turn(title)
	c.cuttingTables(title)
	key := fmt.Sprintf("Boards in cutting order: lengths 1:%d, widths 1:%d. Hatched: waste. %s. Rest: what is left between the trimmed ends, not crosscut.", c.long, c.wide, c.p.Losses())
	if c.spares() {
		key += " +: a spare."
	}
	c.found = nil
	if len(c.p.Orders) == 1 {
		c.found = aidsFound(c.in)
	}
	head := func() { // the whole key on the first sheet, what is needed to read a bar on the others
		w := newScribe(c.page.sheet, c.rest())
		w.note(key, 0)
		c.y = w.y + drawing.MM
		key = fmt.Sprintf("Boards, continued: lengths 1:%d, widths 1:%d. Hatched: waste. Rest: not crosscut.", c.long, c.wide)
	}
	head()
	for i, b := range c.p.Boards {
		for leaf := range b.Leaves {
			h := barTitle + onPaper(b.Board.Width, c.wide) + barBelow + c.restsHigh(i, leaf)
			if !c.room(h) {
				c.turn(title)
				head()
			}
			c.bar(i, leaf)
			c.y += barBelow
			c.restNote(i, leaf)
			c.y += barGap
		}
	}
}

func (c *cutter) spares() bool {
	return slices.ContainsFunc(c.p.Job.Parts, func(p cutting.Part) bool { return p.Spares > 0 })
}

// bar draws one board, or one leaf of it.
func (c *cutter) bar(i, leaf int) {
	b := c.p.Boards[i]
	s := c.page.sheet
	c.barCaption(i, leaf)
	c.y += barTitle
	left, top := c.box.Min.X, c.y
	board := drawing.Box(left, top, onPaper(b.Board.Length, c.long), onPaper(b.Board.Width, c.wide))
	s.Add(drawing.Hatching{Pitch: 3 * drawing.MM / 2}.Hatch(0, board)...)
	s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, board))
	at := unit.Length(0)
	if !b.Board.CleanEnds {
		at = c.p.Job.Shop.EndTrim
	}
	var runs []sectionRun
	for _, x := range b.Sections {
		if x.Leaf != leaf {
			continue
		}
		box := drawing.Rect{Min: drawing.Pt(left+onPaper(at, c.long), top), Max: drawing.Pt(left+onPaper(at+x.Length, c.long), board.Max.Y)}
		c.section(box, at, x)
		runs = addRun(runs, box, x)
		at += x.Length + c.p.Job.Shop.Kerf
	}
	if !c.cutBehind(i, leaf, at) {
		c.keep(board, b.Board, at)
	}
	c.rests(board, i, leaf)
	c.y = board.Max.Y
	c.lengthsBelow(runs)
}

// keep marks what is left of a board behind its last section, from a length on,
// where it is worth keeping.
func (c *cutter) keep(bar drawing.Rect, b cutting.Board, from unit.Length) {
	end := b.Length
	if !b.CleanEnds {
		end -= c.p.Job.Shop.EndTrim
	}
	if end-from < c.p.Job.Shop.KeepOffcut || end <= from {
		return
	}
	s := c.page.sheet
	box := drawing.Rect{Min: drawing.Pt(bar.Min.X+onPaper(from, c.long), bar.Min.Y), Max: drawing.Pt(bar.Min.X+onPaper(end, c.long), bar.Max.Y)}
	s.Add(drawing.Rectangle(drawing.Thin, 0, drawing.White, box))
	s.Add(drawing.Line(drawing.Visible, 0, box.Min, drawing.Pt(box.Max.X, box.Min.Y)), drawing.Line(drawing.Visible, 0, drawing.Pt(box.Min.X, box.Max.Y), box.Max))
	for _, text := range []string{"keep " + c.text(end-from), "keep"} {
		l := drawing.Label(drawing.NoteText, s.Group(), drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Figure(text)).CentredOn(box.Centre())
		if box.Inset(drawing.MM).Holds(l.Bounds()) {
			s.Add(l)
			return
		}
	}
}

// barTitleText is the board's number, how many are cut alike, what it is, and what
// is done to it before it is cut.
func (c *cutter) barTitleText(i, leaf int) string {
	b := c.p.Boards[i]
	text := fmt.Sprintf("Board %d: %s, %s × %s, %s long", i+1, b.Board.Nominal, c.text(b.Board.Thickness), c.text(b.Board.Width), c.p.Unit(b.Board.Length))
	if b.Count > 1 {
		text += fmt.Sprintf("; %d alike", b.Count)
	}
	if b.Board.OnHand > 0 {
		text += ", on hand"
	}
	switch b.Process {
	case cutting.Planed:
		text += fmt.Sprintf("; plane to %s first", c.text(b.Thickness))
	case cutting.Resawn:
		text += fmt.Sprintf("; resaw into %d leaves, plane to %s; leaf %d", b.Leaves, c.text(b.Thickness), leaf+1)
	}
	return text
}

// barCaption writes the title of a bar, and at its right how much is used and, where
// there is room, which shop aids come from the rest.
func (c *cutter) barCaption(i, leaf int) {
	s := c.page.sheet
	l := drawing.Label(drawing.HeadingText, s.Group(), drawing.Pt(c.box.Min.X, c.y+balloonR+drawing.FigureHeight/2), drawing.FigureHeight, drawing.Left, drawing.Figure(c.barTitleText(i, leaf)))
	l.Bold = true
	s.Add(l)
	text := c.usedText(i)
	if c.besideTitle(i, leaf) {
		text = c.restText(i, leaf) + " " + text
	}
	s.Add(drawing.Label(drawing.NoteText, s.Group(), drawing.Pt(c.box.Max.X, l.At.Y), drawing.FigureHeight, drawing.Right, drawing.Plain(text)))
}

// usedText says how much of a board becomes parts.
func (c *cutter) usedText(i int) string { return fmt.Sprintf("%d %% used", c.p.Yield(i)) }

// section draws the strips and parts of a section whose left edge lies at a
// length from the board's end.
func (c *cutter) section(box drawing.Rect, at unit.Length, x cutting.Section) {
	s := c.page.sheet
	s.Add(drawing.Line(drawing.Visible, 0, box.Min, drawing.Pt(box.Min.X, box.Max.Y)), drawing.Line(drawing.Visible, 0, drawing.Pt(box.Max.X, box.Min.Y), box.Max))
	across := unit.Length(0)
	if x.Ripped {
		across = c.p.Job.Shop.EdgeTrim
	}
	for _, t := range x.Strips {
		c.strip(box.Min.Y, at, across, t)
		across += t.Width + c.p.Job.Shop.Kerf
	}
}

// strip draws the parts of a strip from a length and a width of the board on.
// Equal parts that are too short on paper for a mark each are drawn as one, with
// their count.
func (c *cutter) strip(top drawing.Um, at, across unit.Length, t cutting.Strip) {
	kerf := c.p.Job.Shop.Kerf
	head, foot := top+onPaper(across, c.wide), top+onPaper(across+t.Width, c.wide)
	for i := 0; i < len(t.Parts); {
		p := t.Parts[i]
		reach := func(n int) drawing.Rect {
			return drawing.Rect{
				Min: drawing.Pt(c.box.Min.X+onPaper(at, c.long), head),
				Max: drawing.Pt(c.box.Min.X+onPaper(at+unit.Length(n)*(p.Length+kerf)-kerf, c.long), foot),
			}
		}
		n, text := 1, c.partMark(p)
		if _, ok := c.lettered(reach(1), text); !ok {
			for i+n < len(t.Parts) && t.Parts[i+n].Length == p.Length && c.partMark(t.Parts[i+n]) == text {
				n++
			}
			long := fmt.Sprintf("%d × %s", n, text)
			if _, ok := c.lettered(reach(n), long); ok {
				text = long
			} else if n > 1 {
				text = fmt.Sprintf("%d%s", n, text)
			}
		}
		c.part(reach(n), text)
		at += unit.Length(n) * (p.Length + kerf)
		i += n
	}
}

// partMark is what stands in a part: its mark, with a + for a spare.
func (c *cutter) partMark(p cutting.Placed) string {
	if p.Spare {
		return c.p.Label(p) + "+"
	}
	return c.p.Label(p)
}

// part draws a part with its mark, where that has room.
func (c *cutter) part(box drawing.Rect, mark string) {
	c.page.sheet.Add(drawing.Rectangle(drawing.Thin, 0, drawing.White, box))
	if l, ok := c.lettered(box, mark); ok {
		c.page.sheet.Add(l)
	}
}

// lettered returns a mark in the middle of a box, as large as it has room for.
func (c *cutter) lettered(box drawing.Rect, mark string) (drawing.Text, bool) {
	const clear = 6 * drawing.MM / 10 // half a pen and the gap, on either side
	for _, h := range []drawing.Um{drawing.HeadingHeight, drawing.FigureHeight, drawing.TableHeight} {
		l := drawing.Label(drawing.ItemText, 0, drawing.Point{}, h, drawing.Middle, drawing.Plain(mark)).CentredOn(box.Centre())
		l.Bold, l.Table = true, h == drawing.TableHeight
		room := box.Inset(clear)
		if h != drawing.TableHeight {
			room.Min.X, room.Max.X = room.Min.X+drawing.MM, room.Max.X-drawing.MM
		}
		// The highest accent and the lowest tail of a letter stay in its box, so
		// that a reader of the file's text keeps marks over each other apart.
		if room.Holds(l.Bounds()) && box.H() >= h*16/10 {
			return l, true
		}
	}
	return drawing.Text{}, false
}
