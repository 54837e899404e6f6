package sheet

import (
	"strconv"
	"strings"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// The title block stands at the bottom right and is 180 mm wide, which fits an
// A4 sheet on its short side (memory, believed ISO 7200:2004). Its fields are
// those of ISO 7200 that a shop has a use for; the heights are our own.
const (
	blockWidth  = 180 * drawing.MM
	blockHeight = 26 * drawing.MM
)

// How the note beside the title block stands, over it where the paper is too
// narrow: then the block takes the whole width.
const (
	noteWidth = 60 * drawing.MM
	noteDrop  = 2 * drawing.MM // from the note's foot to the block
	noteRow   = 4 * drawing.MM
)

// cell is one field of the title block, in mm from the block's left top corner.
type cell struct {
	x, y, w, h  drawing.Um
	label, text string
	height      drawing.Um
	bold        bool
}

// finish draws the frame and the title block. It comes last, when the sheets
// have been counted.
func (p *page) finish(n, of int) {
	s := p.sheet
	g := s.Group()
	s.Add(drawing.Rectangle(drawing.Frame, g, drawing.NoFill, s.Frame))
	spare := s.Frame.W() - blockWidth
	beside := spare >= noteWidth
	if beside {
		spare = 0
	}
	block := drawing.Rect{Min: drawing.Pt(s.Frame.Max.X-blockWidth, s.Frame.Max.Y-blockHeight), Max: s.Frame.Max}
	s.Add(drawing.Rectangle(drawing.Frame, g, drawing.White, drawing.Rect{Min: block.Min.Sub(drawing.Pt(spare, 0)), Max: block.Max}))
	for _, c := range p.fields(n, of) {
		if c.x == 0 { // the first of a row takes what is to spare
			c.x, c.w = -spare, c.w+spare
		}
		p.field(block.Min, c)
	}
	p.projection(drawing.Pt(block.Max.X-65*drawing.MM/10, block.Min.Y+20*drawing.MM))
	left := s.Frame.Min.X + inner
	if !beside {
		note(p, "Work to the figures; do not scale the drawing.", drawing.Pt(left, block.Min.Y-noteDrop))
		return
	}
	note(p, "Work to the figures;", drawing.Pt(left, s.Frame.Max.Y-10*drawing.MM))
	note(p, "do not scale the drawing.", drawing.Pt(left, s.Frame.Max.Y-3*drawing.MM))
}

// fields lists the cells of the title block.
func (p *page) fields(n, of int) []cell {
	const (
		mm    = drawing.MM
		upper = 133 * mm / 10
		lower = 127 * mm / 10 // room for two lines under a name
	)
	d := p.in.Rack.Design
	scale := p.scale
	if scale == "" {
		scale = "as noted"
	}
	return []cell{
		{0, 0, 100 * mm, upper, "title", d.Title, drawing.HeadingHeight, true},
		{100 * mm, 0, 80 * mm, upper, "sheet", p.sheet.Title, drawing.HeadingHeight, true},
		{0, upper, 39 * mm, lower, "customer", d.Customer, drawing.TableHeight, false},
		{39 * mm, upper, 19 * mm, lower, "order", d.Order, drawing.TableHeight, false},
		{58 * mm, upper, 29 * mm, lower, "date, revision", spaced(d.Date, d.Revision), drawing.TableHeight, false},
		{87 * mm, upper, 17 * mm, lower, "scale", scale, drawing.TableHeight, false},
		{104 * mm, upper, 21 * mm, lower, "unit", p.units(), drawing.TableHeight, false},
		{125 * mm, upper, 22 * mm, lower, "design mark", p.in.Mark, drawing.TableHeight, false},
		{147 * mm, upper, 20 * mm, lower, "sheet no.", strconv.Itoa(n) + " of " + strconv.Itoa(of), drawing.TableHeight, false},
		{167 * mm, upper, 13 * mm, lower, "", "", drawing.TableHeight, false},
	}
}

// units names the unit of the figures, and the second one in its brackets.
func (p *page) units() string {
	name := p.in.Rack.Design.Units.Name()
	if p.sheet.Second != nil {
		name += " [" + p.sheet.Second.System.String() + "]"
	}
	return name
}

func spaced(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// field draws one cell: its name small above what stands in it.
func (p *page) field(at drawing.Point, c cell) {
	s := p.sheet
	g := s.Group()
	box := drawing.Box(at.X+c.x, at.Y+c.y, c.w, c.h)
	s.Add(drawing.Rectangle(drawing.FrameThin, g, drawing.NoFill, box))
	pad := 3 * drawing.MM / 2
	lines, height := lettered(c.text, c.w-2*pad, c.height, c.bold)
	top, foot := pad, box.Max.Y-2*drawing.MM
	if len(lines) > 1 { // closer together
		top, foot = drawing.MM*6/10, box.Max.Y-14*drawing.MM/10-twoLines
	}
	if c.label != "" {
		l := drawing.Label(drawing.NoteText, g, drawing.Pt(box.Min.X+pad, box.Min.Y+top+drawing.TableHeight), drawing.TableHeight, drawing.Left, drawing.Plain(c.label))
		l.Table = true
		s.Add(l)
	}
	for _, text := range lines {
		l := drawing.Label(drawing.NoteText, g, drawing.Pt(box.Min.X+pad, foot), height, drawing.Left, drawing.Plain(text))
		l.Bold, l.Table = c.bold, height < drawing.FigureHeight
		s.Add(l)
		foot += twoLines
	}
}

// twoLines is from one line of the least height to the next.
const twoLines = 41 * drawing.MM / 10

// lettered sets a text within a width: on one line, smaller where it has to be,
// but not under the height of notes; then on two lines of the least height; and
// only where those do not hold it, shortened with an ellipsis.
func lettered(s string, room, height drawing.Um, bold bool) (lines []string, h drawing.Um) {
	s = printable(s)
	if s == "" {
		return nil, height
	}
	for _, h := range []drawing.Um{height, drawing.FigureHeight} {
		if h <= height && typeface.Width(drawing.Plain(s), h, bold) <= room {
			return []string{s}, h
		}
	}
	const least = drawing.TableHeight
	lines = breakBy(s, func(t string) bool { return typeface.Width(drawing.Plain(t), least, bold) <= room })
	if len(lines) > 2 {
		rest := s[strings.Index(s, lines[0])+len(lines[0]):]
		lines = []string{lines[0], shortened(strings.TrimSpace(rest), room, least, bold)}
	}
	return lines, least
}

// printable leaves out what has no glyph.
func printable(s string) string {
	var clean []rune
	for _, r := range s {
		if len(typeface.Unprintable(string(r))) == 0 {
			clean = append(clean, r)
		}
	}
	return strings.Join(strings.Fields(string(clean)), " ")
}

// shortened ends a text that is wider than its room with an ellipsis.
func shortened(s string, room, height drawing.Um, bold bool) string {
	all := []rune(s)
	for n := len(all); n > 0; n-- {
		try := string(all[:n])
		if n < len(all) {
			try += "…"
		}
		if typeface.Width(drawing.Plain(try), height, bold) <= room {
			return try
		}
	}
	return "…"
}

// projection draws the symbol of the method of projection: a cone's frustum and
// its end view; third angle for inch designs, first angle for metric ones
// (which side the circles stand on: read in a textbook excerpt; proportions:
// memory, believed ISO 5456-2). Its middle is at the point.
func (p *page) projection(at drawing.Point) {
	const mm = drawing.MM
	s := p.sheet
	g := s.Group()
	const apart = 5 * mm / 2 // each is 4 mm wide, with 1 mm between them
	circles, cone := at.X+apart, at.X-apart
	if p.in.Rack.Design.Units == unit.Imperial {
		circles, cone = cone, circles
	}
	s.Add(drawing.Disc(drawing.Symbol, g, drawing.NoFill, drawing.Pt(circles, at.Y), 2*mm))
	s.Add(drawing.Disc(drawing.Symbol, g, drawing.NoFill, drawing.Pt(circles, at.Y), mm))
	l, r := cone-2*mm, cone+2*mm
	s.Add(drawing.Polygon(drawing.Symbol, g, drawing.NoFill,
		drawing.Pt(l, at.Y-mm), drawing.Pt(r, at.Y-2*mm), drawing.Pt(r, at.Y+2*mm), drawing.Pt(l, at.Y+mm)))
}
