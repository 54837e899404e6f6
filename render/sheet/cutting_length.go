package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// sectionRun is equal sections side by side.
type sectionRun struct {
	from, to drawing.Um
	n        int
	section  cutting.Section
}

func addRun(runs []sectionRun, box drawing.Rect, x cutting.Section) []sectionRun {
	if k := len(runs) - 1; k >= 0 && runs[k].section.Length == x.Length && !x.Whole && slices.Equal(rips(runs[k].section), rips(x)) {
		runs[k].n++
		runs[k].to = box.Max.X
		return runs
	}
	return append(runs, sectionRun{box.Min.X, box.Max.X, 1, x})
}

// rips lists the fence settings of a section, each once.
func rips(x cutting.Section) []unit.Length {
	var out []unit.Length
	for _, t := range x.Strips {
		if x.Ripped && !slices.Contains(out, t.Width) {
			out = append(out, t.Width)
		}
	}
	return out
}

// settings says what is set for a run of sections: the stop, and the fence where
// it is ripped.
func (c *cutter) settings(r sectionRun, fence bool) string {
	text := c.text(r.section.Length)
	switch {
	case r.section.Whole:
		text = "rest " + text
	case r.n > 1:
		text = fmt.Sprintf("%d × %s", r.n, text)
	}
	if widths := rips(r.section); fence && len(widths) > 0 {
		text += ", rip"
		for i, w := range widths {
			if i > 0 {
				text += ","
			}
			text += " " + c.text(w)
		}
	}
	return text
}

// lengthsBelow writes the settings under the sections, those of equal neighbours
// once: a line from end to end, and the figures below it.
func (c *cutter) lengthsBelow(runs []sectionRun) {
	s := c.page.sheet
	line := c.y + 5*drawing.MM/2
	foot := line + 7*drawing.MM
	labels := c.settingLabels(runs, foot)
	for i, l := range labels {
		r := runs[i]
		s.Add(drawing.Line(drawing.Dimension, 0, drawing.Pt(r.from, line), drawing.Pt(r.to, line)))
		for _, x := range []drawing.Um{r.from, r.to} {
			s.Add(drawing.Line(drawing.Dimension, 0, drawing.Pt(x, line-drawing.MM), drawing.Pt(x, line+drawing.MM)))
		}
		middle := (r.from + r.to) / 2
		if top := drawing.Pt(l.At.X, l.Bounds().Min.Y-drawing.MM/2); (l.At.X-middle).Abs() > 2*drawing.MM && top.Y > line {
			s.Add(drawing.Line(drawing.Leader, l.Group, drawing.Pt(middle, line), top))
		}
		s.Add(l)
		if !r.section.Whole {
			s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Note, Value: r.section.Length, Printed: c.text(r.section.Length),
				From: l.At, To: l.At, ScaleNum: 1, ScaleDen: c.long})
		}
	}
}

// settingLabels letters the settings side by side, without the fence's or
// smaller where they would not all fit.
func (c *cutter) settingLabels(runs []sectionRun, foot drawing.Um) []drawing.Text {
	for _, try := range []struct {
		fence  bool
		height drawing.Um
	}{{true, drawing.FigureHeight}, {false, drawing.FigureHeight}, {true, drawing.TableHeight}, {false, drawing.TableHeight}} {
		var labels []drawing.Text
		sum := drawing.Um(0)
		for _, r := range runs {
			say := drawing.Figure(c.settings(r, try.fence))
			if try.height == drawing.TableHeight {
				say = drawing.Plain(c.settings(r, try.fence))
			}
			l := drawing.Label(drawing.FigureText, c.page.sheet.Group(), drawing.Pt((r.from+r.to)/2, foot), try.height, drawing.Middle, say)
			l.Table = try.height == drawing.TableHeight
			labels = append(labels, l)
			sum += 2 * halfLabel(l)
		}
		if sum <= c.box.W() {
			c.apart(labels)
			return labels
		}
	}
	return nil // not even the stops can be lettered: the settings' own sheets have them
}

// halfLabel is half of what a label takes along its line.
func halfLabel(l drawing.Text) drawing.Um {
	return typeface.Width(l.Runs, l.Height, l.Bold)/2 + 2*drawing.MM
}

// apart moves labels along their line until none meets the next, each as little
// as can be: those that touch move as one, so that their shifts even out. None
// leaves the sheet.
func (c *cutter) apart(labels []drawing.Text) {
	type block struct {
		first, n int
		size     drawing.Um // of all its labels
		sum      drawing.Um // of the left ends that its labels wish for it
	}
	left := func(b block) drawing.Um { return b.sum / drawing.Um(b.n) }
	var blocks []block
	for i, l := range labels {
		half := halfLabel(l)
		blocks = append(blocks, block{i, 1, 2 * half, l.At.X - half})
		for len(blocks) > 1 {
			a, z := blocks[len(blocks)-2], blocks[len(blocks)-1]
			if left(a)+a.size <= left(z) {
				break
			}
			blocks = append(blocks[:len(blocks)-2], block{a.first, a.n + z.n, a.size + z.size, a.sum + z.sum - a.size*drawing.Um(z.n)})
		}
	}
	for _, b := range blocks {
		at := left(b)
		for i := b.first; i < b.first+b.n; i++ {
			half := halfLabel(labels[i])
			labels[i].At.X = at + half
			at += 2 * half
		}
	}
	c.within(labels)
}

// within moves labels that lie beyond the sheet's ends back onto it, and others
// out of their way.
func (c *cutter) within(labels []drawing.Text) {
	least := c.box.Min.X
	for i := range labels {
		l := &labels[i]
		l.At.X = max(l.At.X, least+halfLabel(*l))
		least = l.At.X + halfLabel(*l)
	}
	most := c.box.Max.X
	for i := len(labels) - 1; i >= 0; i-- {
		l := &labels[i]
		l.At.X = min(l.At.X, most-halfLabel(*l))
		most = l.At.X - halfLabel(*l)
	}
}
