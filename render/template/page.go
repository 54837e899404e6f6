package template

import (
	"fmt"
	"strconv"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/render/drawing"
	"slatwright/specs/word"
)

// note returns a line of bench lettering.
func note(at drawing.Point, s string) drawing.Text {
	return drawing.Label(drawing.NoteText, 0, at, drawing.FigureHeight, drawing.Left, drawing.Plain(s))
}

// Words about the rulers in the heads of pages: of the first, and of the others.
const (
	measureWords = "Print at 100 %. Measure first: along ________ across ________ of 100 mm or 4 in"
	rulersWords  = "Print at 100 %, rulers true as on page 1."
)

// head letters the top of a page: what it is, whose, and what to do with it.
func (p *packet) head(s *drawing.Sheet, origin drawing.Point, title string, number int, how string) {
	h := drawing.Label(drawing.HeadingText, 0, origin.Add(drawing.Pt(0, headLine)), drawing.HeadingHeight, drawing.Left, drawing.Plain(title))
	h.Bold = true
	s.Add(h)
	s.Add(note(drawing.Pt(origin.X+h.Width()+6*mm, origin.Y+headLine), fmt.Sprintf("page %d of %d", number, p.pages)))
	s.Add(p.fit(note(origin.Add(drawing.Pt(0, identityLine)), p.identity()), headWidth))
	s.Add(note(origin.Add(drawing.Pt(0, measureLine)), how))
}

// The feet of the three lines of the head.
const (
	headLine     = 5500
	identityLine = 12300
	measureLine  = 19300
)

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

// The page map: a box for each tile with the number of its page, this one heavy. Where there are too many
// it shows those around this one.
const (
	mapRoom = 64 * mm
	mapW    = 8 * mm
	mapH    = 4900
	mapCols = 8
	mapRows = 3

	mapDigits = 3 * mm // what is read at the bench is no lower
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
	var here []drawing.Mark
	for r := r0; r < r1; r++ {
		for c := c0; c < min(c1, p.groups[r].tiles); c++ {
			box := drawing.Box(right-mapW*drawing.Um(c1-c), origin.Y+mapH*drawing.Um(r-r0), mapW, mapH)
			number := note(drawing.Point{}, strconv.Itoa(p.groups[r].first+c))
			number.Height, number.Table = mapDigits, true
			if r == row && c == k {
				number.Bold = true
				here = append(here, drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, box))
			}
			s.Add(drawing.Rectangle(drawing.FrameThin, 0, drawing.NoFill, box), number.CentredOn(box.Centre()))
		}
	}
	s.Add(here...)
}

// windowOf returns the stretch of 0 .. n of at most size around i.
func windowOf(i, n, size int) (from, to int) {
	from = max(0, min(i-size/2, n-size))
	return from, min(n, from+size)
}

// rulers draws the rulers of a page: along below the strips, across in the
// overlaps to the left and right of the seams.
func (f format) rulers(s *drawing.Sheet, origin drawing.Point) {
	left, right := drawing.Um(0), f.net()
	down := f.bodyHeight
	y := headSpace + down + footSpace/2
	var marks []drawing.Mark
	marks = append(marks, millimetres.level(drawing.Pt(2*mm, y), right-9*mm, 1)...)
	marks = append(marks, inches.level(drawing.Pt(2*mm, y), right-9*mm, -1)...)
	top := drawing.Um(headSpace)
	marks = append(marks, millimetres.upright(drawing.Pt(left, top), down-2*mm, 1)...)
	marks = append(marks, inches.upright(drawing.Pt(right, top), down-2*mm, -1)...)
	s.Add(f.correct(marks, origin)...)
}

// lineStep is from line to line of the instructions; textInset keeps them off
// the rulers across.
const (
	lineStep  = 6 * mm
	textInset = 14 * mm
)

// instructions returns the lines of the first pages, page by page.
func (p *packet) instructions() [][]string {
	f := p.f.short()
	var lines []string
	for _, s := range append(p.advice(), p.joining()...) {
		lines = append(lines, wrap(s, f.net()-2*textInset-2*mm)...)
	}
	room := max(1, int((f.bodyHeight-4*mm)/lineStep))
	var pages [][]string
	for len(lines) > room {
		pages, lines = append(pages, lines[:room]), lines[room:]
	}
	return append(pages, lines)
}

// wrap breaks a line between words where it is wider than the room; what
// follows is set in as deep as the line, and a little more.
func wrap(s string, room drawing.Um) []string {
	deep := s[:len(s)-len(strings.TrimLeft(s, " "))]
	var lines []string
	line := deep
	for _, word := range strings.Fields(s) {
		longer := line + " " + word
		if strings.TrimSpace(line) == "" {
			longer = line + word
		} else if note(drawing.Point{}, longer).Width() > room {
			lines, longer = append(lines, line), deep+"    "+word
		}
		line = longer
	}
	return append(lines, line)
}

// advice says how to print, measure and use the pages.
func (p *packet) advice() []string {
	lines := []string{
		`1. Print all pages at 100 % ("actual size", not "fit to page"), on one printer, the same way round.`,
		"2. Measure the rulers of this page with a steel rule: 100 mm or 4 in along the long side of the page, and the same across it. " + word.Capital(assembly.OutOfScale) + ". Nails by the parts' sheets.",
	}
	if c := corrected(p.rack.Design); c != "" {
		lines = append(lines, "    These pages are corrected ("+c+"), so their rulers must measure true.")
	}
	lines = append(lines,
		"3. Join each row in the order of its page numbers (map at the upper right): trim the later page along its left dash-dot line, lay it over the page before, ringed crosses on ringed crosses, tape. A figure beside a mark is its distance from the strip's left end. Check the last with a tape before marking wood: paper swells.",
		"4. Cut strips and cards out on the heavy lines. Lay a strip's end flush with the wood's, and the edge that its arrow points to (FRONT, LOWER EDGE) flush with that edge of the wood. Mark the thin lines: a part sits between them, on the X. Make one trial joint first.",
		"5. A small ringed cross on a strip is where a nail's point comes into the leg. Nails are started from the other side: lay the nail cards on the slat's or the apron's outer face and prick through the ringed crosses.",
	)
	return lines
}

// joining lists the rows of pages and what each strip is laid on.
func (p *packet) joining() []string {
	lines := []string{"Rows, joined from left to right:"}
	for i, g := range p.groups {
		line := fmt.Sprintf("    Row %d, %s:", i+1, pagesText(g.first, g.first+g.tiles-1))
		if g.tiles == 1 {
			line = fmt.Sprintf("    Row %d, page %d alone:", i+1, g.first)
		}
		for k, s := range g.strips {
			if k > 0 {
				line += ";"
			}
			line += fmt.Sprintf(" %d.%d %s%s", i+1, k+1, s.name, p.f.inPart(s, p.rack.Format))
		}
		lines = append(lines, line)
	}
	lines = append(append(lines, p.sticks()...), "Left and right are as seen from the front. Ladders and columns count from the left.")
	if s := p.groups[len(p.groups)-1].strips; s[len(s)-1].start == "END" {
		lines = append(lines, "The legs stand on the aprons alike from either end: one strip serves all four.")
	}
	return lines
}

// compose draws the pages of instructions.
func (p *packet) compose(pages [][]string) []*drawing.Sheet {
	var out []*drawing.Sheet
	f := p.f.short()
	for i, lines := range pages {
		const title = "Templates at full size"
		s, origin := f.page(fmt.Sprintf("%02d-instructions", i+1), title)
		p.head(s, origin, title, i+1, measureWords)
		p.pageMap(s, origin, 0, -1)
		for k, line := range lines {
			text := strings.TrimLeft(line, " ")
			in := drawing.Um(len(line)-len(text)) * mm
			at := origin.Add(drawing.Pt(textInset+in, headSpace+6*mm+lineStep*drawing.Um(k)))
			s.Add(p.fit(note(at, text), f.net()-2*textInset-in))
		}
		f.rulers(s, origin)
		out = append(out, s)
	}
	return out
}
