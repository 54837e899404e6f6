package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
)

// order returns the order sheets: how the checks came out, the rack with its
// bottles, what is built, the index of the packet, and the cautions of the trade;
// then the parts, what to hold closely, what was asked, the checks that are in order,
// and last where the figures of finishing are from. Checks that fail or ask for caution come before all but the
// picture: the cautions of the trade stand on the next sheet where both do not go
// on the first.
func order(in Input, index []indexed) []*page {
	p, rest, whole := orderPage(in, index, true)
	if whole {
		return append([]*page{p}, continued(in, rest, false)...)
	}
	p, rest, _ = orderPage(in, index, false)
	return append([]*page{p}, continued(in, rest, true)...)
}

// orderPage fills the first sheet, with the cautions of the trade at its foot or
// without. It returns the lists that are still to be written, and whether all
// checks that are not ok are.
func orderPage(in Input, index []indexed, foot bool) (p *page, rest []list, whole bool) {
	p = in.newPage("order", "Order")
	const gap = 5 * drawing.MM
	body := statusLine(p, p.area)
	if foot {
		body = tradeCautions(p, body)
	}
	left, middle, right := body, body, body
	left.Max.X = body.Min.X + body.W()*25/100
	middle.Min.X = left.Max.X + gap
	middle.Max.X = middle.Min.X + body.W()*31/100
	right.Min.X = middle.Max.X + gap

	brief := partsBrief(in)
	if high := 20*drawing.MM + rowPitch*drawing.Um(len(brief.rows)); left.H()-high >= leastView {
		foot := left
		foot.Min.Y = left.Max.Y - high
		if brief.whole(newScribe(p.sheet, foot)) {
			left.Max.Y, brief.rows = foot.Min.Y-2*drawing.MM, nil
		}
	}
	orderView(p, left)
	w := newScribe(p.sheet, right)
	pressing := checks(in, false).write(w, "continued on the next sheet")
	if w.y > right.Min.Y {
		w.skip(2 * drawing.MM)
	}
	rest = []list{pressing}
	for _, l := range []list{indexList(index), brief} {
		if len(l.rows) > 0 && (len(pressing.rows) > 0 || !l.whole(w)) {
			rest = append(rest, l)
		}
	}
	// The sizes are never left out: they go on on the next sheet.
	built := solved(in).write(newScribe(p.sheet, middle), "continued on the next sheet")
	rest = append(rest, built, closely(in), asked(in), checks(in, true), origins(in))
	return p, rest, len(pressing.rows) == 0
}

// leastView is the least height of the picture on the order sheet.
const leastView = 44 * drawing.MM

// continued returns the sheets that lists go on on, in two columns each; the
// first of them with the cautions of the trade where they are still to come.
func continued(in Input, rest []list, cautions bool) []*page {
	var out []*page
	written := func(l list) bool { return len(l.rows) == 0 }
	for rest = slices.DeleteFunc(rest, written); len(rest) > 0 || cautions; {
		p := in.newPage(fmt.Sprintf("order-%d", len(out)+2), "Order, continued")
		area := p.area
		if cautions {
			area, cautions = tradeCautions(p, area), false
		}
		left, right := area, area
		left.Max.X = left.Min.X + left.W()/2 - 3*drawing.MM
		right.Min.X = left.Max.X + 6*drawing.MM
		for _, box := range []drawing.Rect{left, right} {
			w := newScribe(p.sheet, box)
			for len(rest) > 0 {
				if rest[0] = rest[0].write(w, "continued"); len(rest[0].rows) > 0 {
					break
				}
				rest = rest[1:]
				w.skip(4 * drawing.MM)
			}
		}
		out = append(out, p)
	}
	return out
}

// isometric returns the lines in sight of the rack with its bottles.
func isometric(r *rack.Rack) []view.Line {
	return view.Visible(view.Lines(withBottles(r, allBottles), view.Isometric))
}

// orderView draws the rack with its bottles.
func orderView(p *page, box drawing.Rect) {
	s, pieces := withBottles(p.in.Rack, allBottles), len(p.in.Rack.Pieces)
	lines := p.in.seen
	if lines == nil {
		lines = func() []view.Line { return isometric(p.in.Rack) }
	}
	box.Max.Y -= 8 * drawing.MM
	v := filling(s, view.Isometric, box)
	v.draw(p.sheet, lines(), func(l view.Line) (drawing.Class, bool) {
		if l.ID < pieces {
			return drawing.Visible, true
		}
		return drawing.Thin, true
	})
	captionBelow(p.sheet, drawing.Pt(box.Centre().X, box.Max.Y), "Isometric view, not to scale")
}

// captionBelow writes a view's title under the point.
func captionBelow(s *drawing.Sheet, at drawing.Point, text string) {
	at.Y += drawing.FigureHeight + 2*drawing.MM
	s.Add(drawing.Label(drawing.HeadingText, 0, at, drawing.FigureHeight, drawing.Middle, drawing.Plain(text)))
}

// scaleText names the scale of a picture.
func scaleText(v picture) string { return "scale " + ratioText(v) }

// ratioText is a picture's scale as the title block has it.
func ratioText(v picture) string { return fmt.Sprintf("%d:%d", v.proj.Num, v.proj.Den) }

// asked lists the statements of the design about lengths, counts and relations,
// in plain words, each with its line of the file.
func asked(in Input) list {
	d := in.Rack.Design
	type said struct {
		line int
		text string
	}
	var all []said
	add := func(line int, text string) {
		if text != "" && !slices.Contains(all, said{line, text}) {
			all = append(all, said{line, text})
		}
	}
	for _, l := range d.Lengths {
		add(l.Place.Line, l.Text)
	}
	for _, m := range d.Measured {
		add(m.Place.Line, m.Text)
	}
	for _, c := range d.Counts {
		add(c.Place.Line, c.Text)
	}
	for _, s := range d.Stocks {
		add(s.Place.Line, s.Text)
	}
	for _, r := range d.Where {
		add(r.Place.Line, r.Text)
	}
	add(d.Fit.Place.Line, d.Fit.Text)
	for _, c := range d.Columns {
		if c.Fit != nil {
			add(c.Fit.Place.Line, c.Fit.Text)
		}
		for _, r := range c.Rows {
			if r.Fit != nil {
				add(r.Fit.Place.Line, r.Fit.Text)
			}
		}
	}
	for _, b := range d.Bottles {
		add(b.Place.Line, b.Text)
	}
	for _, p := range d.Finish.Places {
		if p.Name == "finish.colour" && d.Finish.Colour != "" {
			add(p.Place.Line, "finish.colour = \""+d.Finish.Colour+"\"")
		}
	}
	slices.SortStableFunc(all, func(a, b said) int { return a.line - b.line })
	var rows [][]string
	for _, s := range all {
		rows = append(rows, []string{strconv.Itoa(s.line), inWords(s.text)})
	}
	return list{"What was asked", []tableColumn{
		{title: "line", width: 9 * drawing.MM, right: true}, {title: "as stated"},
	}, rows}
}

// list is a table with its heading.
type list struct {
	heading string
	columns []tableColumn
	rows    [][]string
}

// write writes as much of a list as goes into the room, and in its last line
// where the others are; it returns the others.
func (l list) write(w *scribe, on string) list {
	if len(l.rows) == 0 || !l.begins(w) || !w.heading(l.heading) {
		return l
	}
	reserve := rowPitch
	if waste := (scribe{sheet: &drawing.Sheet{}, box: w.box, y: w.y}); waste.table(l.columns, l.rows, nil) == len(l.rows) {
		reserve = 0
	}
	w.box.Max.Y -= reserve
	n := w.table(l.columns, l.rows, nil)
	w.box.Max.Y += reserve
	l.rows = l.rows[n:]
	if len(l.rows) > 0 {
		w.row([]tableColumn{{}}, []drawing.Um{w.box.Min.X, w.box.Max.X}, []string{on}, false, nil)
		if n > 0 && !strings.HasSuffix(l.heading, ", continued") {
			l.heading += ", continued"
		}
	}
	return l
}

// begins reports whether the heading and a first row go into the room, and a line
// that says where the others are.
func (l list) begins(w *scribe) bool {
	waste := scribe{sheet: &drawing.Sheet{}, box: w.box, y: w.y}
	if !waste.heading(l.heading) {
		return false
	}
	if len(l.rows) > 1 {
		waste.box.Max.Y -= rowPitch
	}
	return waste.table(l.columns, l.rows[:1], nil) == 1
}

// whole writes a list and room after it, or nothing where not all of it goes into
// the room.
func (l list) whole(w *scribe) bool {
	waste := *w
	waste.sheet = &drawing.Sheet{}
	if len(l.write(&waste, "").rows) > 0 {
		return false
	}
	l.write(w, "")
	w.skip(2 * drawing.MM)
	return true
}

// rowsText says how many rows the columns have.
func rowsText(r *rack.Rack) string {
	least := r.Counts.Rows
	for _, k := range r.Kinds {
		least = min(least, k.Rows)
	}
	if least == r.Counts.Rows {
		return strconv.Itoa(least)
	}
	return fmt.Sprintf("%d to %d", least, r.Counts.Rows)
}

// checks lists the findings that are ok, or those that are not, the worst first.
func checks(in Input, ok bool) list {
	rank := func(f check.Finding) int {
		if f.Status == check.Fail {
			return 0
		}
		return 1
	}
	all := slices.DeleteFunc(slices.Clone(in.Findings), func(f check.Finding) bool { return (f.Status == check.OK) != ok })
	slices.SortStableFunc(all, func(a, b check.Finding) int { return rank(a) - rank(b) })
	l := list{"Checks that are in order", []tableColumn{
		{title: "what is looked at", width: 40 * drawing.MM}, {title: "where, and what was found"},
	}, nil}
	if !ok {
		l.heading = "Read first: checks that fail or ask for care"
		l.columns = append([]tableColumn{{title: "status", width: 20 * drawing.MM}}, l.columns...)
		l.columns[1].width = 32 * drawing.MM
	}
	for _, f := range all {
		row := []string{plainly(f.Name), findingText(f)}
		if !ok {
			row = []string{f.Status.Word(), plainly(f.Name) + " (" + f.Name + ")", row[1]}
		}
		l.rows = append(l.rows, row)
	}
	return l
}

// findingText is a finding in a table: where, what it says, and what to change.
func findingText(f check.Finding) string {
	text := f.Says
	if f.Where != "" {
		text = f.Where + ": " + text
	}
	if f.Change != "" {
		text += ". To change: " + f.Change
	}
	return text
}
