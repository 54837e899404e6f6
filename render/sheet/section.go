package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/inspect"
	"slatwright/geometry/rack"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
	"slatwright/specs/table"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// sections are the sections through the lowest and the highest row of cells,
// for each kind of column: legs, slats and top cut, aprons behind them, the
// largest and the smallest bottle in thin outline, and every clearance.
func sections(in Input) []*page {
	var out []*page
	for k := range in.Rack.Kinds {
		out = append(out, section(in, k)...)
	}
	return out
}

// The least room round one picture of a section.
const (
	sectionLeft  = 35 * drawing.MM
	sectionRight = 55 * drawing.MM // the column of clearances
	sectionAbove = 8 * drawing.MM
	sectionBelow = 38 * drawing.MM // of a picture with sizes across
	sectionBare  = 6 * drawing.MM  // of one without
	sectionText  = 66 * drawing.MM // the least width for text
)

// section draws the cells of one kind of column: in one picture where the whole
// column goes on a sheet at half size, else the lowest and the highest row, on
// one sheet where they go side by side.
func section(in Input, kind int) []*page {
	r := in.Rack
	name, title := "section", "Section through cells"
	if len(r.Kinds) > 1 {
		name = fmt.Sprintf("section-%d", kind+1)
		title = "Section, " + inspect.Columns(r, kind)
	}
	in = in.turned(func(blank *page) int64 { return sectionScale(in, blank.area, kind) })
	p := in.newPage(name, title)
	if cuts, den := sectionCuts(in, p.area, kind); len(cuts) > 0 {
		p.sections(cuts, den)
		return []*page{p}
	}
	var out []*page
	for i, c := range rowCuts(r, kind) {
		if c.oneRow() {
			p.sections(c.fitting(in, p.area))
			return []*page{p}
		}
		which := [...]string{"lowest", "highest"}[i]
		p := in.newPage(name+"-"+which, strings.Replace(title, " through cells", "", 1)+", "+which+" row")
		p.sections(c.fitting(in, p.area))
		out = append(out, p)
	}
	return out
}

// sectionScale is the divisor of the scale of the sections on sheets with an area.
func sectionScale(in Input, area drawing.Rect, kind int) int64 {
	if _, den := sectionCuts(in, area, kind); den > 0 {
		return den
	}
	most := int64(0)
	for _, c := range rowCuts(in.Rack, kind) {
		_, den := c.fitting(in, area)
		most = max(most, den)
	}
	return most
}

// sectionCuts returns the cuts that go on one sheet beside some text, and their
// scale: the largest of full and half size. There are none where neither does.
func sectionCuts(in Input, area drawing.Rect, kind int) ([]cut, int64) {
	r := in.Rack
	whole := cut{r: r, kind: kind, hi: r.Len("rack.height"), sizes: true}
	for _, cuts := range [][]cut{{whole}, rowCuts(r, kind)} {
		for _, den := range []int64{1, 2} {
			var w, h drawing.Um
			for _, c := range cuts {
				size := c.size(in, den)
				w, h = w+size.X, max(h, size.Y)
			}
			if w <= area.W()-sectionText && h <= area.H() {
				return cuts, den
			}
		}
	}
	return nil, 0
}

// fitting returns the cut at the largest scale at which it goes on a sheet by
// itself, its foot broken off where that saves a step.
func (c cut) fitting(in Input, area drawing.Rect) (cuts []cut, den int64) {
	short := c
	if c.lo == 0 {
		short.lo = c.r.Len("apron.lift") + c.r.Len("apron.height")/2
	}
	for den := int64(1); ; den = nextScale(in, den) {
		for _, x := range []cut{c, short} {
			if s := x.size(in, den); s.Y <= area.H() && s.X <= area.W() {
				return []cut{x}, den
			}
		}
	}
}

// sections draws cuts side by side from the left, and text in what is left.
func (p *page) sections(cuts []cut, den int64) {
	box := p.area
	box.Max.X = box.Min.X
	var middles []drawing.Um
	for _, c := range cuts {
		size := c.size(p.in, den)
		box.Min.X, box.Max.X = box.Max.X, box.Max.X+size.X
		middles = append(middles, p.section(c, den, box))
	}
	foot := p.inked(0).Max.Y + captionOff // the same for all
	for i, c := range cuts {
		p.caption(drawing.Pt(middles[i], foot), fmt.Sprintf("%s, scale 1:%d", c.title(), den))
	}
	rest := p.area
	rest.Min.X = box.Max.X + 8*drawing.MM
	if rest.W() >= sectionText-8*drawing.MM {
		clearances(p.in, cuts, newScribe(p.sheet, rest))
	}
}

// section draws one cut into a box and returns where its middle is.
func (p *page) section(c cut, den int64, box drawing.Rect) drawing.Um {
	m := c.round(p.in, den)
	m.below += viewTitle
	v := picture{proj: view.Projection{Direction: view.Front, Num: 1, Den: den}}.centred(c.scene(), m.within(box))
	c.draw(p.sheet, v)
	e := p.elevation(v, v.extent(c.scene()))
	c.measure(e)
	e.dim.Draw(e.out)
	return e.out.Centre().X
}

// extremes are the largest and the smallest diameter that a row must hold.
func extremes(list []table.Bottle) (large, small unit.Length) {
	small = list[0].Diameter.Min
	for _, b := range list {
		large, small = max(large, b.Diameter.Max), min(small, b.Diameter.Min)
	}
	return large, small
}

// headingRow is more than a heading takes.
const headingRow = 8 * drawing.MM

// clearances writes beside the cuts what they show, and what the checks found
// about it, small only where it is much.
func clearances(in Input, cuts []cut, w *scribe) {
	r := in.Rack
	f, kind := r.Format, cuts[0].kind
	k := r.Kinds[kind]
	low, high := cuts[0].rowShown(0), cuts[len(cuts)-1].toTop()
	row := 0
	if !low {
		row = k.Rows - 1
	}
	w.heading("How the bottles lie")
	large, small := extremes(k.Fit[row])
	w.note("Drawn: the largest bottle, "+f.Unit(large)+" across, and the smallest, "+f.Unit(small)+".", 0)
	if low {
		w.note("Slats: underside of the lowest "+f.Unit(k.Under[0])+" above the foot"+risesText(f, k)+".", 0)
	}
	if low {
		w.note("Side, corner: from the largest bottle. Above: from the largest to the smallest in the row above, which sinks deepest. Lower apron: from the smallest.", 0)
	}
	w.note("Cut through the front legs; the back aprons are seen between them.", 0)
	w.skip(3 * drawing.MM)
	found(in, cellFindings(in, kind, low, high), w)
}

// cellFindings are those about the cells of a kind of column that a sheet shows.
func cellFindings(in Input, kind int, low, high bool) (out []check.Finding) {
	for _, x := range in.Findings {
		atTop := x.Name == "fit.upper_apron" || x.Name == "fit.depth"
		if strings.HasPrefix(x.Name, "fit.") && findingOf(x.Where, in.Rack, kind) && (atTop && high || !atTop && low) {
			out = append(out, x)
		}
	}
	return out
}

// found says what checks found: in full where that is anything but good, small only
// where it is much; of those in order the bench needs no more than that they are.
func found(in Input, findings []check.Finding, w *scribe) {
	const heading = "What the checks found"
	var good []string
	var rows [][]string
	var lines, all []string
	for _, x := range findings {
		if x.Status == check.OK {
			if name := plainly(x.Name); !slices.Contains(good, name) {
				good = append(good, name)
			}
			continue
		}
		says := plainly(x.Name) + ": " + x.Says
		rows = append(rows, []string{x.Status.Word(), says})
		lines = append(lines, word.Capital(says)+": "+x.Status.Word()+".")
	}
	if all = lines; len(good) > 0 {
		all = append(slices.Clone(lines), "In order: "+strings.Join(good, "; ")+" (figures and limits: "+sheetRef("order")+").")
	}
	for _, says := range [][]string{all, lines} {
		if len(says) > 0 && needed(says, w.box.W(), 5*drawing.MM)+headingRow <= w.room() {
			w.heading(heading)
			for _, s := range says {
				w.note(s, 5*drawing.MM)
			}
			return
		}
	}
	list{heading, []tableColumn{
		{title: "status", width: 18 * drawing.MM}, {title: "check, and what it says"},
	}, rows}.write(w, "more: "+sheetRef("order"))
}

// risesText prints the rises of a column, if it has any: one figure where all
// are alike.
func risesText(f unit.Format, k rack.Kind) string {
	var all []string
	for _, rise := range k.Rises {
		if text := f.Unit(rise); len(all) == 0 || all[len(all)-1] != text {
			all = append(all, text)
		}
	}
	if len(all) == 0 {
		return ""
	}
	return "; then one every " + strings.Join(all, ", ")
}

// findingOf reports whether a finding about columns is about this kind: it
// names the first of the kind's columns.
func findingOf(where string, r *rack.Rack, kind int) bool {
	first := 1
	for _, k := range r.Kinds[:kind] {
		first += k.Count
	}
	n := strings.TrimLeft(strings.TrimPrefix(strings.TrimPrefix(where, "columns"), "column"), " ")
	return len(r.Kinds) == 1 || n == fmt.Sprint(first) || strings.HasPrefix(n, fmt.Sprintf("%d-", first))
}
