package sheet

import (
	"fmt"
	"strconv"

	"slatwright/geometry/cutting"
	"slatwright/geometry/quote"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// cuttings returns the cutting plan: what boards there are and how each is cut,
// in cutting order, and then the settings of the saw one after the other. Where
// there is no plan the one sheet says why.
func cuttings(in Input) []*page {
	if in.Cutting == nil {
		return uncut(in)
	}
	c := cutter{in: in, p: in.Cutting}
	c.pickScales()
	c.boardSheets()
	c.stepSheets()
	return c.pages
}

// Cutting composes the cutting sheets alone, of one plan or of several one
// after the other, and numbers them. Each input's rack lends its design to the
// title blocks.
func Cutting(inputs ...Input) ([]*drawing.Sheet, error) {
	var pages []*page
	for _, in := range inputs {
		pages = append(pages, cuttings(in)...)
	}
	return numbered(pages)
}

// uncut is the sheet of a rack that cannot be cut from the boards it has.
func uncut(in Input) []*page {
	if in.Uncut == "" {
		return nil
	}
	p := in.newPage("cutting", "Cutting plan")
	w := newScribe(p.sheet, p.area)
	w.heading("No cutting plan")
	w.note(in.Uncut, 0)
	return []*page{p}
}

// A cutter fills the cutting sheets.
type cutter struct {
	in      Input
	p       *saw.Plan
	pages   []*page
	page    *page
	columns drawing.Um   // of a page
	column  drawing.Um   // the one that is being filled, from 0
	box     drawing.Rect // of that column
	y       drawing.Um   // of what comes next in it
	found   []aidFound   // the shop aids, of one order
	groups  []setGroup   // the settings, found once
	high    drawing.Um   // of columns that are not to be filled; 0 for those that are

	long, wide int64 // how many times smaller boards are drawn along and across
}

const (
	blockGap  = 5 * drawing.MM
	columnGap = 10 * drawing.MM
)

// turn goes on to the next column, on a page of that title, or to a new page.
func (c *cutter) turn(title string) {
	c.column++
	if c.page == nil || c.page.sheet.Title != title || c.column >= c.columns {
		c.page = c.in.newPage(fmt.Sprintf("cutting-%d", len(c.pages)+1), title)
		c.pages = append(c.pages, c.page)
		c.column = 0
	}
	area := c.page.area
	wide := (area.W() - (c.columns-1)*columnGap) / c.columns
	high := area.H()
	if c.high > 0 {
		high = c.high
	}
	c.box = drawing.Box(area.Min.X+c.column*(wide+columnGap), area.Min.Y, wide, high)
	c.y = c.box.Min.Y
}

// room reports whether the column has so much left.
func (c *cutter) room(h drawing.Um) bool { return c.y+h <= c.box.Max.Y }

// rest returns what is left of the column.
func (c *cutter) rest() drawing.Rect {
	box := c.box
	box.Min.Y = c.y
	return box
}

// text prints a length in the unit of the drawings.
func (c *cutter) text(l unit.Length) string { return c.p.Text(l) }

// cuttingTables writes the boards and the parts side by side at the top of the
// first sheet; lists that are longer go on on further ones.
func (c *cutter) cuttingTables(title string) {
	const mm = drawing.MM
	boards := list{"Boards to take, in " + c.p.Format.System.Name(), []tableColumn{
		{title: "count", width: 12 * mm, right: true}, {title: "board", width: 23 * mm}, {title: "T × W × L", width: 44 * mm},
		{title: "price each", width: 20 * mm, right: true}, {title: "used", width: 13 * mm, right: true}, {title: "cut as"},
	}, c.boardRows()}
	counts := drawing.Um(13 * mm)
	if c.spares() {
		counts = 27 * mm
	}
	parts := list{"Parts", []tableColumn{
		{title: "mark", width: c.markRoom()}, {title: "part", width: 17 * mm}, {title: "count", width: counts, right: true},
		{title: "T × W × L"},
	}, c.partRows()}
	text := c.costText()
	for {
		left, right := c.rest(), c.rest()
		left.Max.X = left.Min.X + left.W()*54/100
		right.Min.X = left.Max.X + 6*mm
		a, b := newScribe(c.page.sheet, left), newScribe(c.page.sheet, right)
		boards, parts = boards.write(a, "continued"), parts.write(b, "continued")
		a.skip(drawing.MM)
		for len(boards.rows) == 0 && len(text) > 0 && a.row([]tableColumn{{}}, []drawing.Um{left.Min.X, left.Max.X}, text[:1], false, nil) {
			text = text[1:]
		}
		c.y = max(a.y, b.y) + blockGap
		if len(boards.rows)+len(parts.rows)+len(text) == 0 {
			return
		}
		c.turn(title)
	}
}

// markRoom is how wide the marks of the parts are in the table.
func (c *cutter) markRoom() drawing.Um {
	if len(c.p.Orders) > 1 {
		return 28 * drawing.MM
	}
	return 16 * drawing.MM
}

func (c *cutter) boardRows() [][]string {
	var rows [][]string
	for _, n := range c.p.Needs() {
		b := n.Board
		price := "on hand"
		if b.OnHand == 0 {
			price = quote.Hundredths(b.Price)
		}
		rows = append(rows, []string{strconv.Itoa(n.Count), b.Nominal, c.text(b.Thickness) + " × " + c.text(b.Width) + " × " + c.text(b.Length),
			price, strconv.Itoa(n.Yield) + " %", saw.Numbers(n.Layouts)})
	}
	return rows
}

// costText says what the boards cost, whether less would do, and what they weigh.
func (c *cutter) costText() []string {
	cost := "Cost " + quote.Hundredths(c.p.Cost)
	if c.p.Examples() {
		cost += " at example prices"
	}
	if c.p.Proven {
		cost += ": no plan costs less, which is proven."
	} else {
		cost += ": " + quote.Gap(c.p) + "."
	}
	if grams := c.p.BoardGrams(); grams > 0 {
		cost += fmt.Sprintf(" %s, %s in all.", word.Capital(c.p.Species.Name), c.p.Mass(grams))
	}
	out := []string{cost}
	if saved := quote.Saved(c.p); saved != "" {
		out = append(out, word.Capital(saved)+".")
	}
	for _, o := range c.p.Orders {
		if o.Short != "" && o.Short != o.Name {
			out = append(out, o.Short+": "+o.Name)
		}
	}
	if text := besidesPlan(c.in); text != "" {
		out = append(out, text)
	}
	return append(out, c.p.Notes...)
}

func (c *cutter) partRows() [][]string {
	var rows [][]string
	for _, x := range c.p.Job.Parts {
		mark := c.p.Label(cutting.Placed{Order: x.Order, Mark: x.Mark})
		count := strconv.Itoa(x.Count)
		if x.Spares > 0 {
			count = saw.Counted(x.Count+x.Spares, x.Spares, "")
		}
		rows = append(rows, []string{mark, x.Name, count, c.text(x.Thickness) + " × " + c.text(x.Width) + " × " + c.text(x.Length)})
		for _, g := range c.p.GlueUps {
			if g.Order == x.Order && g.Mark == x.Mark {
				rows = append(rows, []string{"", "stave", strconv.Itoa(g.Count * g.Staves), c.text(x.Thickness) + " × " + c.text(g.StaveWidth) + " × " + c.text(g.StaveLength)})
			}
		}
	}
	for _, a := range aidsFound(c.in) {
		if mark, ok := blockMark(a); ok && len(c.p.Orders) == 1 {
			rows = append(rows, []string{mark, "block", strconv.Itoa(a.Count), c.text(a.Thick) + " × " + c.text(a.Wide) + " × " + c.text(a.Long) + " (shop aid)"})
		}
	}
	return rows
}
