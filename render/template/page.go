package template

import (
	"fmt"
	"strings"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// note returns a line of bench lettering.
func note(at drawing.Point, s string) drawing.Text {
	return drawing.Label(drawing.NoteText, 0, at, drawing.FigureHeight, drawing.Left, drawing.Plain(s))
}

// head letters the top of a page: what it is, whose, and what to measure.
func (p *packet) head(s *drawing.Sheet, origin drawing.Point, title string, number int) {
	h := drawing.Label(drawing.HeadingText, 0, origin.Add(drawing.Pt(0, headLine)), drawing.HeadingHeight, drawing.Left, drawing.Plain(title))
	h.Bold = true
	s.Add(h)
	s.Add(note(drawing.Pt(origin.X+h.Width()+6*mm, origin.Y+headLine), fmt.Sprintf("page %d of %d", number, p.pages)))
	s.Add(p.fit(note(origin.Add(drawing.Pt(0, 11*mm)), p.identity()), headWidth))
	s.Add(note(origin.Add(drawing.Pt(0, 17*mm)), "Print at 100 %. Measure first: along ________ across ________ of 100 mm (4 in)"))
}

// headLine is the foot of the first line of the head.
const headLine = 5500

// headWidth is what the page map leaves of the head's width.
const headWidth = netWidth - mapRoom - 4*mm

// fit shortens a text from its end until it has room.
func (p *packet) fit(t drawing.Text, room drawing.Um) drawing.Text {
	text := []rune(t.String())
	for n := len(text); t.Width() > room && n > 0; n-- {
		t.Runs = drawing.Plain(strings.TrimRight(string(text[:n-1]), " ") + " ...")
	}
	return t
}

// identity says whose template it is.
func (p *packet) identity() string {
	var parts []string
	for _, s := range []string{p.mark, p.rack.Design.Order, p.rack.Design.Title} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, " · ")
}

// The page map: a box for each tile, this one black. Where there are too many
// it shows those around this one.
const (
	mapRoom = 64 * mm
	mapW    = 5 * mm
	mapH    = 4 * mm
	mapCols = 12
	mapRows = 4
)

// pageMap draws the map in the top right corner; k is -1 for no tile.
func (p *packet) pageMap(s *drawing.Sheet, origin drawing.Point, row, k int) {
	most := 0
	for _, g := range p.groups {
		most = max(most, g.tiles)
	}
	r0, r1 := windowOf(row, len(p.groups), mapRows)
	c0, c1 := windowOf(k, most, mapCols)
	right := origin.X + netWidth
	for r := r0; r < r1; r++ {
		for c := c0; c < min(c1, p.groups[r].tiles); c++ {
			box := drawing.Box(right-mapW*drawing.Um(c1-c), origin.Y+mapH*drawing.Um(r-r0), mapW, mapH)
			fill := drawing.NoFill
			if r == row && c == k {
				fill = drawing.Black
			}
			s.Add(drawing.Rectangle(drawing.FrameThin, 0, fill, box))
		}
	}
}

// windowOf returns the stretch of 0 .. n of at most size around i.
func windowOf(i, n, size int) (from, to int) {
	from = max(0, min(i-size/2, n-size))
	return from, min(n, from+size)
}

// rulers draws the rulers of a page: along below the strips, across in the
// overlaps to the left and right of the seams.
func (p *packet) rulers(s *drawing.Sheet, origin drawing.Point) {
	left, right := drawing.Um(0), p.f.net()
	down := p.f.bodyHeight
	y := headSpace + down + footSpace/2
	var marks []drawing.Mark
	marks = append(marks, millimetres.level(drawing.Pt(2*mm, y), right-9*mm, 1)...)
	marks = append(marks, inches.level(drawing.Pt(2*mm, y), right-9*mm, -1)...)
	top := drawing.Um(headSpace)
	down = min(down, p.f.across.Of(down)) // the correction may leave less room
	marks = append(marks, millimetres.upright(drawing.Pt(left, top), down-2*mm, 1)...)
	marks = append(marks, inches.upright(drawing.Pt(right, top), down-2*mm, -1)...)
	s.Add(p.f.correct(marks, origin)...)
}

// lineStep is from line to line of the instructions.
const lineStep = 6 * mm

// A text is the instructions, broken into pages.
type text struct{ pages [][]string }

// instructions returns what the first pages say.
func (p *packet) instructions() text {
	lines := append(p.advice(), p.joining()...)
	room := max(1, int((p.f.bodyHeight-4*mm)/lineStep))
	var t text
	for len(lines) > room {
		t.pages, lines = append(t.pages, lines[:room]), lines[room:]
	}
	t.pages = append(t.pages, lines)
	return t
}

// advice says how to print, measure and use the pages.
func (p *packet) advice() []string {
	lines := []string{
		"1. Print every page at 100 % (\"actual size\"), from one printer, all the same way round. No \"fit to page\".",
		"2. Measure the rulers of this page with a steel rule: along over 100 mm or 4 in, and across likewise.",
		"    Out by more than a pencil line: write both into the design and draw again:",
		"        [printer]",
		"        along = \"99.6 mm\"      what the ruler along named 100 mm (or 4 in) measured",
		"        across = \"100.2 mm\"   the same for the ruler across",
	}
	if c := corrected(p.rack.Design); c != "" {
		lines = append(lines, "    These pages are corrected: "+c+". Their rulers must measure true.")
	}
	lines = append(lines,
		"3. Trim the right-hand page along its seam line and lay its crosses on those of the page before it.",
		"    A figure beside a mark is its distance from the "+p.groups[0].strips[0].start+" (LEFT) end. Check the last one with a tape",
		"    before marking wood: paper swells. Where paper and figure differ, the figure counts.",
		"4. Lay the strip's end flush with the end of the wood, its named edge flush with that edge.",
		"    X is the side the part sits on, a ringed cross a nail. Make one trial joint before the rest.",
	)
	return lines
}

// joining lists the rows of pages and what each strip is laid on.
func (p *packet) joining() []string {
	lines := []string{"Pages, to be joined from left to right:"}
	for i, g := range p.groups {
		what := fmt.Sprintf("C1 to C%d", g.tiles)
		if g.tiles == 1 {
			what = "C1, in one piece"
		}
		for k, s := range g.strips {
			lines = append(lines, fmt.Sprintf("    R%d%c  %s: %s, %s", i+1, 'a'+k, what, s.name, p.rack.Format.Unit(s.length)))
		}
	}
	return lines
}

// compose draws the pages of instructions.
func (p *packet) compose(t text) []*drawing.Sheet {
	var out []*drawing.Sheet
	for i, lines := range t.pages {
		name, title := fmt.Sprintf("%02d-instructions", i+1), "Templates at full size"
		s, origin := p.f.page(name, title)
		p.head(s, origin, title, i+1)
		p.pageMap(s, origin, 0, -1)
		for k, line := range lines {
			at := origin.Add(drawing.Pt(um(p.f.half)+2*mm, headSpace+6*mm+lineStep*drawing.Um(k)))
			if strings.TrimSpace(line) != "" {
				s.Add(p.fit(note(at.Add(indent(line)), strings.TrimLeft(line, " ")), p.f.net()-2*um(unit.Inch/2)-8*mm-indent(line).X))
			}
		}
		p.rulers(s, origin)
		out = append(out, s)
	}
	return out
}

// indent returns how far a line is set in: a millimetre for each leading space.
func indent(line string) drawing.Point {
	return drawing.Pt(drawing.Um(len(line)-len(strings.TrimLeft(line, " ")))*mm, 0)
}
