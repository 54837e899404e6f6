package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/word"
)

// A step has its number, its setting in a box, large enough for a glance from
// the saw, what comes of it, and a box to tick.
const (
	stepNumber = 14 * drawing.MM
	stepBox    = 48 * drawing.MM
	stepHigh   = 15 * drawing.MM
	stepTick   = 6 * drawing.MM
	stepGap    = 2 * drawing.MM
)

// beforeCutting stands over the settings. Common practice, no source; the word
// is left to whoever knows the machine.
const beforeCutting = "Guards and riving knife in place, eyes and ears protected, dust drawn off. Long stock is cut first; hands stay out of the blade's line. " +
	"The instructions of the saw's maker go before this sheet."

// operations says what is set for each operation.
var operations = map[cutting.Operation]string{
	"resaw": "Resaw: fence to blade, board on edge", "plane": "Plane: thickness", "trim ends": "Trim ends",
	"crosscut": "Crosscut: stop to blade", "rip": "Rip: fence to blade", "cut to length": "Cut to length: stop to blade", "glue up": "Glue up",
}

// stepSheets writes the settings in their order, one a step, on as many pages as
// they take, filled about alike.
func (c *cutter) stepSheets() {
	pages := func(high drawing.Um) int {
		waste := *c
		waste.high, waste.page, waste.pages = high, nil, nil
		waste.writeSteps()
		return len(waste.pages)
	}
	c.groups = c.setGroups()
	full, least := pages(0), drawing.Um(0)
	for high := c.page.area.H() - 5*drawing.MM; full > 1 && high > c.page.area.H()/3 && pages(high) == full; high -= 5 * drawing.MM {
		least = high
	}
	c.high = least
	c.writeSteps()
	c.high = 0
}

// writeSteps writes the settings.
func (c *cutter) writeSteps() {
	const title = "Cutting plan: settings"
	c.columns = 1
	if c.box.W() > 320*drawing.MM { // a wide sheet
		c.columns = 2
	}
	c.turn(title)
	c.notes(append(append([]string{beforeCutting, c.p.Losses() + "."}, c.p.LeftLong()...), c.lookOut()...), "Before the first cut", title)
	for _, g := range c.groups {
		c.group(g, title)
	}
	c.leftOver(title)
}

// group writes settings of one kind under their heading.
func (c *cutter) group(g setGroup, title string) {
	head := 9*drawing.MM + needed(g.common, c.box.W(), 4*drawing.MM)
	for k, r := range g.rows {
		h := c.rowHeight(r)
		if k == 0 && !c.room(head+h) || k > 0 && !c.room(h) {
			c.turn(title)
			if k > 0 {
				c.heading(g.heading + ", continued")
			}
		}
		if k == 0 {
			c.notes(g.common, g.heading, title)
		}
		c.row(r)
		c.y += h + stepGap
	}
	c.y += 2 * drawing.MM
}

// lookOut lists the plan's knife edges, and what it has for knots and splits.
func (c *cutter) lookOut() []string {
	knots := "No spare is cut and nothing is reckoned for knots: turn each board so that they fall into the hatched waste; where they cannot, take another board of its size."
	if c.spares() {
		knots = "For knots and splits there are the spares of the parts list alone, marked + on the boards; turn each board so that knots fall into them or into the hatched waste."
	}
	out := []string{knots}
	for _, x := range c.p.Cautions() {
		text := x.Text
		if len(x.Boards) > 0 {
			text = word.Capital(saw.Named(x.Boards)) + ": " + text
		}
		out = append(out, text+".")
	}
	return out
}

// heading writes a title over what follows.
func (c *cutter) heading(text string) {
	w := newScribe(c.page.sheet, c.rest())
	w.line(drawing.HeadingText, drawing.FigureHeight, 0, true, drawing.Plain(text))
	c.y = w.y + drawing.MM
}

// notes writes texts under a heading, on further sheets where they are many.
func (c *cutter) notes(list []string, heading, title string) {
	const indent = 4 * drawing.MM
	c.heading(heading)
	for _, s := range list {
		if !c.room(needed([]string{s}, c.box.W(), indent)) {
			c.turn(title)
			c.heading(heading + ", continued")
		}
		w := newScribe(c.page.sheet, c.rest())
		w.note(s, indent)
		c.y = w.y
	}
	c.y += 2 * drawing.MM
}

// stepText is where the words of a step stand.
func (c *cutter) stepText() drawing.Rect {
	box := c.rest()
	box.Min.X += stepNumber + stepBox + 4*drawing.MM
	box.Max.X -= stepTick + 4*drawing.MM
	return box
}

func (c *cutter) rowHeight(r setRow) drawing.Um {
	wide := c.stepText().W()
	high := drawing.Um(len(breakBold(r.gives, wide))) * (drawing.HeadingHeight*5/4 + betweenLines)
	return max(stepHigh, high+needed(r.notes, wide, 0))
}

// row draws one setting.
func (c *cutter) row(r setRow) {
	sheet := c.page.sheet
	area := c.box
	number := drawing.Label(drawing.ItemText, sheet.Group(), drawing.Pt(area.Min.X, c.y+stepHigh/2+drawing.HeadingHeight/2), drawing.HeadingHeight, drawing.Left, drawing.Plain(r.name))
	number.Bold = true
	sheet.Add(number)
	c.setting(drawing.Box(area.Min.X+stepNumber, c.y, stepBox, stepHigh), r)
	tick := drawing.Box(area.Max.X-stepTick, c.y+(stepHigh-stepTick)/2, stepTick, stepTick)
	sheet.Add(drawing.Rectangle(drawing.Symbol, 0, drawing.NoFill, tick))

	w := newScribe(sheet, c.stepText())
	switch len(r.notes) {
	case 0:
		w.skip((stepHigh - drawing.HeadingHeight) / 2)
	case 1:
		w.skip(drawing.MM)
	}
	for _, part := range breakBold(r.gives, w.box.W()) {
		w.line(drawing.NoteText, drawing.HeadingHeight, 0, true, drawing.Plain(part))
	}
	for _, t := range r.notes {
		w.note(t, 0)
	}
}

// breakBold is breakLines for the bold lettering of a step.
func breakBold(s string, width drawing.Um) []string {
	return breakBy(s, func(t string) bool { return typeface.Width(drawing.Plain(t), drawing.HeadingHeight, true) <= width })
}

// setting draws a setting in its box; a heavy one, with the word CARE, where the
// cut needs more than ordinary care.
func (c *cutter) setting(box drawing.Rect, r setRow) {
	sheet := c.page.sheet
	class := drawing.FrameThin
	if r.care {
		class = drawing.Frame
	}
	sheet.Add(drawing.Rectangle(class, 0, drawing.NoFill, box))
	middle := box.Centre()
	if r.care {
		care := drawing.Label(drawing.NoteText, sheet.Group(), drawing.Pt(box.Min.X+2*drawing.MM, middle.Y+drawing.FigureHeight/2), drawing.FigureHeight, drawing.Left, drawing.Plain("CARE"))
		care.Bold = true
		sheet.Add(care)
		middle.X += 8 * drawing.MM
	}
	text, height := r.word, drawing.Um(drawing.FigureHeight)
	if r.word == "" {
		text, height = c.text(r.at), drawing.TitleHeight
		sheet.Dims = append(sheet.Dims, drawing.DimRecord{Role: drawing.Note, Value: r.at, Printed: text, From: middle, To: middle, ScaleNum: 1, ScaleDen: 1})
	}
	l := drawing.Label(drawing.FigureText, sheet.Group(), drawing.Point{}, height, drawing.Middle, drawing.Figure(text)).CentredOn(middle)
	l.Bold = true
	sheet.Add(l)
}

// leftOver lists the offcuts worth keeping.
func (c *cutter) leftOver(title string) {
	var list []string
	for _, o := range c.p.Leftovers() {
		list = append(list, fmt.Sprintf("%d × %s: %s × %s × %s", o.Count, o.Nominal, c.text(o.Thickness), c.text(o.Width), c.text(o.Length)))
	}
	if len(list) == 0 {
		return
	}
	if !c.room(20 * drawing.MM) {
		c.turn(title)
	}
	heading := "Left over, worth keeping"
	if len(c.p.Orders) == 1 && slices.ContainsFunc(aidsFound(c.in), func(a aidFound) bool { return len(a.Boards) > 0 }) {
		heading += ", before the shop aids are cut from it"
	}
	c.notes(list, heading, title)
}
