package sheet

import (
	"fmt"
	"slices"
	"strconv"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
)

// cautions stand on the order sheet. They are the usual ones of the trade and
// leave the word to whoever knows the tool, the building or the law.
var cautions = []string{
	"Sawing, planing: guards on, push sticks, eyes and ears protected, as the machine's maker says; rip no blank shorter than he allows.",
	"Fastening: bore for nails near ends, protect the eyes, keep hands out of the nail's way. Dust: draw it off and wear a mask.",
	"Finish: air the room as the tin says. Rags wet with oil can catch fire by themselves: dry them flat outdoors or keep them in a closed metal can with water.",
	"A loaded rack is heavy and can tip: anchor it to the wall's structure before loading, and load from the bottom up. Have floor, wall and fixings judged by licensed people where local codes ask for it.",
	"Makers' instructions and local codes go before this sheet. The figures are computed, not tested; no standard is claimed to be met.",
}

// order returns the order sheet: how the checks came out, the rack with its
// bottles, what was solved, what was asked, the checks, and the cautions. Lists
// that are longer than their room go on on further sheets. Checks that fail or
// ask for caution come before the cautions of the trade: those stand on the next
// sheet where both do not go on the first.
func order(in Input) []*page {
	p, rest, written := orderPage(in, true)
	if written >= pressing(in.Findings) {
		return append([]*page{p}, continued(in, rest, false)...)
	}
	p, rest, _ = orderPage(in, false)
	return append([]*page{p}, continued(in, rest, true)...)
}

// orderPage fills the first sheet, with the cautions of the trade at its foot or
// without. It returns what is left of the lists and how many checks are written.
func orderPage(in Input, foot bool) (p *page, rest []list, written int) {
	p = in.newPage("order", "Order")
	const gap = 5 * drawing.MM
	body := statusLine(p, p.area)
	if foot {
		body = tradeCautions(p, body)
	}
	left, middle, right := body, body, body
	left.Max.X = body.Min.X + body.W()*31/100
	middle.Min.X = left.Max.X + gap
	middle.Max.X = middle.Min.X + body.W()*29/100
	right.Min.X = middle.Max.X + gap

	orderView(p, left)
	const on = "continued on the next sheet"
	w := newScribe(p.sheet, middle)
	rest = []list{solved(in).write(w, on)}
	w.skip(2 * drawing.MM)
	all := checks(in)
	unwritten := all.write(newScribe(p.sheet, right), on)
	return p, append(rest, asked(in).write(w, on), unwritten), len(all.rows) - len(unwritten.rows)
}

// tradeCautions writes the cautions of the trade at the foot of a box and
// returns what is left over them.
func tradeCautions(p *page, box drawing.Rect) drawing.Rect {
	const gap = 5 * drawing.MM
	foot := box
	box.Max.Y -= needed(cautions, box.W(), gap) + 8*drawing.MM
	foot.Min.Y = box.Max.Y + 2*drawing.MM
	w := newScribe(p.sheet, foot)
	w.heading("Cautions")
	for _, c := range cautions {
		w.note(c, gap)
	}
	return box
}

// continued returns the sheets that lists go on on, in two columns each; the
// first of them with the cautions of the trade where they are still to come.
func continued(in Input, rest []list, cautions bool) []*page {
	var out []*page
	unwritten := func(l list) bool { return len(l.rows) == 0 }
	for rest = slices.DeleteFunc(rest, unwritten); len(rest) > 0 || cautions; rest = slices.DeleteFunc(rest, unwritten) {
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
			for i := range rest {
				if rest[i] = rest[i].write(w, "continued"); len(rest[i].rows) > 0 {
					break
				}
				w.skip(4 * drawing.MM)
			}
		}
		out = append(out, p)
	}
	return out
}

// orderView draws the rack with its bottles.
func orderView(p *page, box drawing.Rect) {
	s, bottles := withBottles(p.in.Rack), len(p.in.Rack.Pieces)
	box.Max.Y -= 8 * drawing.MM
	v := filling(s, view.Isometric, box)
	v.draw(p.sheet, view.Visible(view.Lines(s, view.Isometric)), func(l view.Line) (drawing.Class, bool) {
		if l.ID < bottles {
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
// as the file has them, each with its line.
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
	slices.SortStableFunc(all, func(a, b said) int { return a.line - b.line })
	var rows [][]string
	for _, s := range all {
		rows = append(rows, []string{strconv.Itoa(s.line), s.text})
	}
	return list{"What was asked", []tableColumn{
		{title: "line", width: 9 * drawing.MM, right: true}, {title: "statement, as written"},
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
	if len(l.rows) == 0 || !w.heading(l.heading) {
		return l
	}
	w.box.Max.Y -= rowPitch
	n := w.table(l.columns, l.rows, nil)
	w.box.Max.Y += rowPitch
	l.rows = l.rows[n:]
	if len(l.rows) > 0 {
		w.row([]tableColumn{{}}, []drawing.Um{w.box.Min.X, w.box.Max.X}, []string{on}, false, nil)
	}
	return l
}

// solved lists the sizes and counts that people ask for first.
func solved(in Input) list {
	r, f := in.Rack, in.Rack.Format
	c := r.Counts
	rows := [][]string{
		{"bottles", bottlesText(r)},
		{"parts", fmt.Sprintf("%d ladders: %d legs, %d slats; %d aprons", c.Ladders, c.Legs, c.Slats, c.Aprons)},
	}
	for _, l := range []struct{ name, words string }{
		{"rack.width", "width over all"}, {"rack.depth", "depth over all"}, {"rack.height", "height over all"},
		{"carcase.width", "carcase width"}, {"carcase.depth", "carcase depth"},
	} {
		if r.Has(l.name) {
			rows = append(rows, []string{l.words, f.Both(r.Len(l.name))})
		}
	}
	for _, k := range r.Kinds {
		name := ""
		if k.Name != "" {
			name = k.Name + " "
		}
		rows = append(rows, []string{name + "gap", f.Unit(k.Gap)}, []string{name + "pitch", f.Unit(k.Pitch)})
		if len(k.Rises) > 0 && !slices.ContainsFunc(k.Rises, func(l length) bool { return l != k.Rises[0] }) {
			rows = append(rows, []string{name + "rise", f.Unit(k.Rises[0])})
		}
	}
	return list{"What was solved", []tableColumn{{title: "", width: 26 * drawing.MM}, {title: "figure"}}, rows}
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

// checks lists the findings, the worst first.
func checks(in Input) list {
	rank := func(f check.Finding) int {
		switch f.Status {
		case check.Fail:
			return 0
		case check.Caution:
			return 1
		}
		return 2
	}
	all := slices.Clone(in.Findings)
	slices.SortStableFunc(all, func(a, b check.Finding) int { return rank(a) - rank(b) })
	var rows [][]string
	for _, f := range all {
		rows = append(rows, []string{f.Status.Word(), findingText(f)})
	}
	return list{"Checks", []tableColumn{
		{title: "status", width: 18 * drawing.MM}, {title: "check, where, and what it says"},
	}, rows}
}

// findingText is a finding in a table: which check, where, what it says, and
// what to change.
func findingText(f check.Finding) string {
	text := f.Name
	if f.Where != "" {
		text += ", " + f.Where
	}
	if f.Says != "" {
		text += ": " + f.Says
	}
	if f.Change != "" {
		text += ". To change: " + f.Change
	}
	return text
}
