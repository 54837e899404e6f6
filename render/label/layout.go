package label

import (
	"fmt"
	"slices"

	"slatwright/render/drawing"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// A row is a line of a label: one slot at its left, one at its right end.
type row struct{ left, right slot }

// A layout is a way to set a label: rows below each other, the first two beside
// the part's mark.
type layout struct {
	rows []row
	room *design.Room // the least that holds any part's words, shortened; nil where words may be too long
}

// beside is how many rows stand beside the mark.
const beside = 2

// layouts are the ways to set a label, those tried first that read best.
var layouts = []layout{
	{[]row{{order, count}, {what, nothing}, {where, nothing}, {sized, nothing}, {way, content}}, &design.LabelRooms[0]},
	{[]row{{what, count}, {where, order}, {sized, nothing}, {way, content}}, &design.LabelRooms[1]},
	{[]row{{count, nothing}, {what, nothing}, {where, nothing}, {sized, nothing}, {way, nothing}, {order, content}}, nil},
	{[]row{{count, nothing}, {what, nothing}, {ladder, nothing}, {side, nothing}, {section, nothing}, {length, nothing}, {way, nothing}, {order, content}}, &design.LabelRooms[2]},
}

// heights are those that lettering can have, and gap is how far the two ends of a
// row stay apart; markGap is right of the mark.
var heights = []drawing.Um{drawing.TableHeight, drawing.FigureHeight, drawing.HeadingHeight, drawing.TitleHeight}

const (
	gap     = 3 * mm
	markGap = 2 * mm
)

// arranged is a layout with the heights of its rows.
type arranged struct {
	layout
	high []drawing.Um
	room drawing.Point
	wide widths
}

// widths are the greatest that each slot takes in any label, at the least
// height; and the greatest of the marks.
type widths struct {
	slots [slots]drawing.Um
	mark  drawing.Um
}

// arrange chooses the layout in which every label of one size says all it has to
// say in full; else one in which words are shortened. All labels are set alike.
// The error says that the room is less than the reader of designs lets pass.
func arrange(room drawing.Point, entries []entry) (arranged, error) {
	w := measure(entries)
	for _, l := range layouts {
		if a, full := l.set(room, w); full {
			return a, nil
		}
	}
	for _, l := range layouts {
		if l.room != nil && room.X >= um(l.room.Width) && room.Y >= um(l.room.Height) {
			a, _ := l.set(room, w)
			return a, nil
		}
	}
	text := func(v drawing.Um) string { return (unit.Length(v) * unit.Millimetre / 1000).Decimal() }
	return arranged{}, fmt.Errorf("labels leave %s x %s mm for lettering, which is too little", text(room.X), text(room.Y))
}

// measure returns the widths of what the labels say. An order may be any text:
// no more of it counts than the least it is allowed.
func measure(entries []entry) widths {
	var w widths
	for _, e := range entries {
		waits := e.rack.Waits(e.part)
		for s, text := range e.words() {
			w.slots[s] = max(w.slots[s], width(slot(s), text, heights[0], waits))
		}
		w.mark = max(w.mark, bold(plain(e.part.Mark, heights[0])).Width())
	}
	w.slots[order] = min(w.slots[order], leastOrder(heights[0]))
	return w
}

// width returns how wide a slot's text is, its arrow included.
func width(s slot, text string, high drawing.Um, waits bool) drawing.Um {
	if text == "" {
		return 0
	}
	wide := styled(s, text, high, waits).Width()
	if s == way {
		wide += arrowLong(high)
	}
	return wide
}

// set gives the layout's rows the greatest heights that the room allows, the
// words that matter most first; full is whether nothing needs to be shortened
// even at the least.
func (l layout) set(room drawing.Point, w widths) (a arranged, full bool) {
	a = arranged{layout: l, room: room, wide: w}
	for range l.rows {
		a.high = append(a.high, heights[0])
	}
	var rising []int // rows, those that matter most first
	for i := range l.rows {
		if a.fits(i) {
			rising = append(rising, i)
		}
	}
	full = len(rising) == len(l.rows) && a.tall() <= room.Y
	first := slices.IndexFunc(l.rows, func(r row) bool { return r.left == what })
	slices.SortStableFunc(rising, func(i, k int) int { return int(l.rows[i].left) - int(l.rows[k].left) })
	for step := 1; step < len(heights); step++ {
		for _, i := range rising {
			was := a.high[i]
			if was != heights[step-1] || i != first && a.high[first] == was {
				continue // nothing is higher than what the part is
			}
			a.high[i] = heights[step]
			if a.tall() > room.Y || slices.ContainsFunc(rising, func(k int) bool { return !a.fits(k) }) {
				a.high[i] = was
			}
		}
	}
	return a, full
}

// The typefaces reach so far below and above capitals, in hundredths of their
// height, accents and tails included: measured in the PDF by poppler as 29.2 and
// 30.7.
const (
	below = 30
	over  = 31
)

// leading returns the least distance from the foot of the row before row i to the
// head of row i.
func (a arranged) leading(i int) drawing.Um { return (below*a.high[i-1] + over*a.high[i]) / 100 }

// above is what letters reach beyond the height of capitals in the first row.
func (a arranged) above() drawing.Um { return a.high[0] / 10 }

// tall returns how high all rows are, with what hangs below the last.
func (a arranged) tall() drawing.Um {
	sum := a.above() + a.high[len(a.high)-1]*below/100
	for i, h := range a.high {
		if sum += h; i > 0 {
			sum += a.leading(i)
		}
	}
	return sum
}

// markHigh returns the height of the mark beside the first rows, markWide that of
// its column. A mark that is wider is set lower. It reaches no higher and no
// lower than the rows do.
func (a arranged) markHigh() drawing.Um {
	rows := (100+over)*a.high[0] + 100*a.leading(1) + (100+below)*a.high[1]
	return rows / (below + 100 + over)
}

func (a arranged) markWide() drawing.Um {
	return min(a.wide.mark*a.markHigh()/heights[0], a.room.X*3/10) + markGap
}

// span returns the left end and the width of a row, from the room's left.
func (a arranged) span(i int) (left, wide drawing.Um) {
	if i < beside {
		left = a.markWide()
	}
	return left, a.room.X - left
}

// fits reports whether a row holds its words in full in every label.
func (a arranged) fits(i int) bool {
	const slack = mm / 10 // widths of letters are rounded
	need := slack + a.wide.slots[a.rows[i].left]*a.high[i]/heights[0]
	if right := a.wide.slots[a.rows[i].right]; right > 0 {
		need += gap + right*a.high[i]/heights[0]
	}
	_, wide := a.span(i)
	return need <= wide
}
