package template

import (
	"slices"

	"slatwright/render/drawing"
)

// The room around a strip's words, and how far apart the places are that are tried.
const (
	nameClear = 1500
	nameStep  = 1 * mm
	lineReach = 1600
	leastName = 24 * mm // width of a block of words
)

// inside letters the strip's words between two seats, so that they are still there
// when it is cut out, where one of the gaps has room beside the figures and arrows.
func (t *tile) inside() {
	taken := t.taken()
	from, to := t.window()
	left := from
	var gaps [][2]drawing.Um
	for _, s := range t.seats {
		gaps = append(gaps, [2]drawing.Um{left, min(t.f.at(s.from, t.k), to)})
		left = max(left, t.f.at(s.to, t.k))
	}
	gaps = append(gaps, [2]drawing.Um{left, to})
	slices.SortStableFunc(gaps, func(a, b [2]drawing.Um) int { return int((b[1] - b[0]) - (a[1] - a[0])) })
	for n := len(t.words); n > 0; n-- { // a narrow strip has its name alone
		for _, g := range gaps {
			if words := t.place(t.words[:n], g[0]+nameClear, g[1]-nameClear, taken); words != nil {
				for _, w := range words {
					t.figures = append(t.figures, w)
				}
				return
			}
		}
	}
}

// taken returns the boxes of all lettering, arrows and crosses on the strip so far.
func (t *tile) taken() []drawing.Rect {
	var out []drawing.Rect
	for _, m := range append(slices.Clone(t.marks), t.figures...) {
		switch m := m.(type) {
		case drawing.Text: // with what other letters of its line would reach
			b := m.Bounds()
			out = append(out, drawing.Box(b.Min.X, b.Min.Y-lineReach, b.W(), b.H()+2*lineReach))
		case drawing.Circle:
			out = append(out, m.Bounds())
		case drawing.Path:
			if m.Class == drawing.Symbol || m.Class == drawing.Solid || m.Class == drawing.Register {
				out = append(out, m.Bounds())
			}
		}
	}
	return out
}

// place sets paragraphs between left and right where nothing is taken, in as
// few lines as it can; nil where there is no such place.
func (t *tile) place(paragraphs []string, left, right drawing.Um, taken []drawing.Rect) []drawing.Text {
	upper, lower := t.piece()
	paper := func(r drawing.Ratio, l drawing.Um) drawing.Um { // lettering is not corrected, places are
		if r.Num < r.Den {
			return drawing.Ratio{Num: r.Den, Den: r.Num}.Of(l)
		}
		return l
	}
	pitch := paper(t.f.across, cardLine)
	run := drawing.Um(0) // of all words on one line
	for _, s := range paragraphs {
		run += note(drawing.Point{}, s).Width()
	}
	for lines := len(paragraphs); lines <= 6; lines++ {
		for w := max(leastName, run*9/10/drawing.Um(lines)); w <= right-left; w += nameStep {
			words := flow(paragraphs, lines, width(w))
			if words == nil {
				continue
			}
			wide := paper(t.f.along, w)
			high := paper(t.f.across, drawing.FigureHeight+cardLast) + pitch*drawing.Um(len(words)-1)
			for y := upper + nameClear; y+high <= lower-nameClear/2; y += nameStep {
				for x := left; x+wide <= right; x += nameStep {
					box := drawing.Box(x-nameClear, y, wide+2*nameClear, high).Inset(-nameClear / 2)
					if slices.ContainsFunc(taken, box.Meets) {
						continue
					}
					for i := range words {
						words[i].At = drawing.Pt(x, y+drawing.FigureHeight+pitch*drawing.Um(i))
					}
					return words
				}
			}
			break // a wider block of as many lines finds no more room
		}
	}
	return nil
}
