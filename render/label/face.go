package label

import (
	"strings"

	"slatwright/render/drawing"
)

// A face is one label being lettered.
type face struct {
	arranged
	sheet *drawing.Sheet
	room  drawing.Rect
}

// mostLoose is the most that rows are set farther apart than they need be.
const mostLoose = 2 * mm

// draw letters the label of an entry. What the room has free stands between the
// rows, and then above and below them.
func (f *face) draw(e entry) {
	w := e.words()
	waits := e.rack.Waits(e.part)
	free := f.room.H() - f.tall()
	loose := min(free/drawing.Um(len(f.rows)-1), mostLoose)
	y := f.room.Min.Y + f.above() + (free-loose*drawing.Um(len(f.rows)-1))/2
	for i, r := range f.rows {
		if i >= beside && w[r.left] == "" && w[r.right] == "" {
			continue // the rows below close up
		}
		if i > 0 {
			y += f.leading(i) + loose
		}
		y += f.high[i]
		if i == beside-1 {
			f.mark(e.part.Mark, y-loose/2+(f.high[i]-f.markHigh())*below/100)
		}
		left, wide := f.span(i)
		f.line(drawing.Pt(f.room.Min.X+left, y), wide, f.high[i], r, w, waits)
	}
	printed := e.rack.Format.Unit(e.part.Length)
	f.sheet.Dims = append(f.sheet.Dims, drawing.DimRecord{Role: drawing.Note, Value: e.part.Length, Printed: printed,
		From: f.room.Min, To: f.room.Min, ScaleNum: 1, ScaleDen: 1})
}

// mark letters the part's mark beside the first rows, its foot at y.
func (f *face) mark(text string, y drawing.Um) {
	high := f.markHigh()
	m := bold(drawing.Label(drawing.ItemText, 0, drawing.Pt(f.room.Min.X, y), high, drawing.Left, drawing.Plain(text)))
	for m.Width() > f.markWide()-markGap && m.Height > drawing.TableHeight {
		m.Height -= mm / 4
	}
	m.At.Y -= (high - m.Height) / 2
	m.Table = true
	f.sheet.Add(m)
}

// line letters a row, its foot at the point. The right end has what the left end
// does not need in full, and is shortened where that is too little; the left end
// has what is left then.
func (f *face) line(at drawing.Point, wide, high drawing.Um, r row, w [slots]string, waits bool) {
	if w[r.right] != "" {
		need := width(r.left, w[r.left], high, waits)
		if r.left == order {
			need = min(need, leastOrder(high))
		}
		right := f.text(r.right, w, high, wide-gap-need, waits)
		if right.At = drawing.Pt(at.X+wide, at.Y); right.Width() > 0 {
			right.Align = drawing.Right
			f.sheet.Add(right)
			wide -= gap + right.Width()
		}
	}
	if w[r.left] == "" {
		return
	}
	if r.left == way {
		f.arrow(at, high)
		at.X += arrowLong(high)
		wide -= arrowLong(high)
	}
	left := cutOff(f.text(r.left, w, high, wide, waits), wide)
	left.At = at
	f.sheet.Add(left)
}

// text returns the lettering of a slot, shortened as far as it can be where it is
// wider than its room.
func (f *face) text(s slot, w [slots]string, high, wide drawing.Um, waits bool) drawing.Text {
	t := styled(s, w[s], high, waits)
	if s == order {
		if both := plain(join(" · ", w[order], w[title]), high); both.Width() <= wide {
			return both
		}
		return cutOff(t, max(wide, leastOrder(high)))
	}
	for _, pair := range shorter {
		if t.Width() <= wide {
			break
		}
		t.Runs = drawing.Plain(strings.ReplaceAll(t.String(), pair[0], pair[1]))
	}
	if s == sized && t.Width() > wide { // the unit is that of every sheet
		text := t.String()
		t.Runs = drawing.Plain(text[:strings.LastIndexByte(text, ' ')])
	}
	return t
}

// leastOrder is how wide an order is allowed to be at the least, twelve figures;
// a longer one may be cut off.
func leastOrder(high drawing.Um) drawing.Um { return plain("000000000000", high).Width() }

// cutOff leaves out the end of a text that is wider than its room.
func cutOff(t drawing.Text, wide drawing.Um) drawing.Text {
	for text := []rune(t.String()); t.Width() > wide && len(text) > 1; {
		text = text[:len(text)-1]
		t.Runs = drawing.Plain(strings.TrimRight(string(text), " ,·") + "...")
	}
	return t
}

// arrow draws an arrow to the left before a word of the height.
func (f *face) arrow(at drawing.Point, high drawing.Um) {
	tip, tail := drawing.Pt(at.X, at.Y-high/2), drawing.Pt(at.X+arrowLong(high)-high/2, at.Y-high/2)
	f.sheet.Add(drawing.Line(drawing.Symbol, 0, tip, tail), drawing.Arrow(0, tip, tail))
}

// arrowLong is how much an arrow takes in front of its word.
func arrowLong(high drawing.Um) drawing.Um { return 3 * high }

// plain returns lettering of labels, which have no room for higher.
func plain(s string, high drawing.Um) drawing.Text {
	t := drawing.Label(drawing.CellText, 0, drawing.Point{}, high, drawing.Left, drawing.Plain(s))
	t.Table = true
	return t
}

// styled returns lettering of a slot: bold are what the part is, the way of the
// arrow, and where a part goes that waits to be cut.
func styled(s slot, text string, high drawing.Um, waits bool) drawing.Text {
	t := plain(text, high)
	t.Bold = s == what || s == way || waits && (s == where || s == side)
	return t
}

func bold(t drawing.Text) drawing.Text {
	t.Bold = true
	return t
}
